//! The Wageningen B-series (Oosterveld and van Oossanen 1975; Bernitsas, Ray and Kinley 1981): points derived from the table
//! of its polynomials to the digits shown, and pulls at rest derived with it (salt water of 1025 kg/m³, the engine's rated
//! torque held, 3 % lost in the gears) to the three digits shown.

use proptest::prelude::*;
use sternknee::physics::propeller::{
    Drive, OpenWater, Pitch, Propeller, PropellerError, THROUGH_GEARS, pitches, rated_turning, thrust_at_rest,
};
use sternknee::physics::strength::loads::{disc_thrust, static_thrust};
use sternknee::quantity::Dimensioned;
use sternknee::working::{Line, Sheet};
use uom::si::angular_velocity::revolution_per_minute;
use uom::si::f64::{AngularVelocity, Length, Power, Ratio, Velocity};
use uom::si::{force::pound_force, length::inch, power::horsepower, velocity::mile_per_hour};

fn at(blades: u8, area: f64, pitch: f64, advance: f64) -> OpenWater {
    Propeller::new(blades, area, pitch).unwrap().open_water(advance).unwrap()
}

#[test]
fn coefficients_are_those_of_the_table() {
    let rest = at(4, 0.70, 1.0, 0.0);
    assert!((rest.thrust - 0.4547).abs() < 5e-5 && (10.0 * rest.torque - 0.6754).abs() < 5e-5, "{rest:?}");
    for (advance, thrust, torque, efficiency) in
        [(0.4, 0.2912, 0.4328, 0.428), (0.6, 0.2216, 0.3575, 0.592), (0.8, 0.1415, 0.2599, 0.693)]
    {
        let one = at(4, 0.40, 1.0, advance);
        assert!((one.thrust - thrust).abs() < 6e-5, "{one:?}");
        assert!((10.0 * one.torque - torque).abs() < 6e-5, "{one:?}");
        assert!((one.efficiency() - efficiency).abs() < 6e-4, "{}", one.efficiency());
    }
}

fn drive(hp: f64, rpm: f64, gears: f64, diameter: f64) -> Drive {
    Drive {
        power: Power::new::<horsepower>(hp),
        rated_speed: AngularVelocity::new::<revolution_per_minute>(rpm),
        gear_ratio: Ratio::from_si(gears),
        diameter: Length::new::<inch>(diameter),
    }
}

/// Pull at rest, lbf, and the engine's speed there, rpm.
fn at_rest(drive: &Drive, blades: u8, area: f64, pitch_ratio: f64) -> (f64, f64) {
    let mut sheet = Sheet::default();
    let turning = rated_turning(&mut sheet, drive);
    let propeller = Propeller::new(blades, area, pitch_ratio).unwrap();
    let pull = thrust_at_rest(&mut sheet, drive, &turning, &propeller);
    let part = sheet
        .lines()
        .iter()
        .find_map(|line| match line {
            Line::Step { symbol, result, .. } if symbol == "k" => Some(result.si),
            _ => None,
        })
        .unwrap();
    (pull.value().get::<pound_force>(), part * drive.rated_speed.get::<revolution_per_minute>())
}

#[test]
fn engines_at_rest_turn_and_pull_as_derived() {
    for (hp, rpm, gears, diameter, pitch, area, speed, pull) in [
        (150.0, 5500.0, 2.00, 15.5, 17.0, 0.55, 2740.0, 1320.0),
        (250.0, 5700.0, 1.75, 15.5, 19.0, 0.60, 2500.0, 1660.0),
        (90.0, 5300.0, 2.3, 13.5, 17.0, 0.55, 3300.0, 950.0),
        (9.9, 5200.0, 2.08, 9.25, 9.0, 0.50, 3200.0, 183.0),
    ] {
        let (lbf, turns) = at_rest(&drive(hp, rpm, gears, diameter), 3, area, pitch / diameter);
        println!("{hp} hp: {lbf:.1} lbf at {turns:.0} rpm");
        assert!(
            (lbf / pull - 1.0).abs() < 3e-3 && (turns / speed - 1.0).abs() < 2e-3,
            "{hp} hp: {lbf} lbf, {turns} rpm"
        );
    }
}

#[test]
fn a_propeller_so_fine_that_it_asks_little_gets_rated_power_and_no_more() {
    // 9.9 hp on 7 in of 0.5 diameters: it would turn faster than rated.
    let fine = drive(9.9, 5200.0, 2.08, 7.0);
    let (lbf, turns) = at_rest(&fine, 3, 0.55, 0.5);
    let still = at(3, 0.55, 0.5, 0.0);
    let per_second = turns / 60.0 / 2.08;
    let power = 2.0 * std::f64::consts::PI * still.torque * 1025.0 * per_second.powi(3) * fine.diameter.si().powi(5);
    assert!(turns > 5200.0 && lbf > 0.0);
    assert!((power / (THROUGH_GEARS * fine.power.si()) - 1.0).abs() < 1e-9, "{power}");
}

#[test]
fn propellers_beyond_the_series_are_errors() {
    assert_eq!(Propeller::new(1, 0.55, 1.0), Err(PropellerError::Blades(1)));
    assert_eq!(Propeller::new(8, 0.55, 1.0), Err(PropellerError::Blades(8)));
    assert_eq!(Propeller::new(3, 0.29, 1.0), Err(PropellerError::AreaRatio(0.29)));
    assert_eq!(Propeller::new(3, 1.06, 1.0), Err(PropellerError::AreaRatio(1.06)));
    assert_eq!(Propeller::new(3, 0.55, 1.41), Err(PropellerError::PitchRatio(1.41)));
    assert!(Propeller::new(3, 0.55, f64::NAN).is_err() && Propeller::new(3, f64::NAN, 1.0).is_err());
    let sound = Propeller::new(3, 0.55, 1.4).unwrap();
    assert_eq!(sound.open_water(-0.1), Err(PropellerError::Advance(-0.1)));
    assert!(sound.open_water(f64::INFINITY).is_err());
}

#[test]
fn a_pitch_beyond_the_series_is_brought_to_it_and_said() {
    let mut sheet = Sheet::default();
    let drive = drive(150.0, 5500.0, 2.0, 15.0);
    let turning = rated_turning(&mut sheet, &drive);
    let told = |pitch: f64| Pitch::Told(Length::new::<inch>(pitch));
    let within = pitches(&mut sheet, &drive, &turning, told(21.0));
    assert!((within.own.value().si() - 1.4).abs() < 1e-12);
    assert!(!sheet.lines().iter().any(|line| matches!(line, Line::Remark(_))));
    let beyond = pitches(&mut sheet, &drive, &turning, told(24.0));
    assert!((beyond.own.value().si() - 1.4).abs() < 1e-12);
    assert!(sheet.lines().iter().any(|line| matches!(line, Line::Remark(_))));
}

#[test]
fn the_pitch_for_a_speed_runs_her_at_it_with_the_slip() {
    // mph = rpm · pitch (1 − slip) / (ratio · 1056): 45 mph at 5,500 rpm through 2.00:1 asks 19.64 in.
    let mut sheet = Sheet::default();
    let drive = drive(150.0, 5500.0, 2.0, 15.25);
    let turning = rated_turning(&mut sheet, &drive);
    let speed = Pitch::ForSpeed(Velocity::new::<mile_per_hour>(45.0));
    let pitch = pitches(&mut sheet, &drive, &turning, speed).own.value().si() * 15.25;
    assert!((pitch - 45.0 * 2.0 * 1056.0 / (5500.0 * 0.88)).abs() < 1e-3, "{pitch}");
}

proptest! {
    #[test]
    fn every_propeller_of_the_series_pulls_at_rest_and_less_than_an_ideal_disc(
        blades in 2_u8..=7, area in 0.3..=1.05_f64, pitch in 0.5..=1.4_f64, hp in 1.0..600.0_f64, diameter in 7.0..20.0_f64,
    ) {
        let drive = drive(hp, 5500.0, 2.0, diameter);
        let propeller = Propeller::new(blades, area, pitch).unwrap();
        let still = propeller.open_water(0.0).unwrap();
        prop_assert!(still.thrust > 0.0 && still.torque > 0.0);
        let mut sheet = Sheet::default();
        let turning = rated_turning(&mut sheet, &drive);
        let pull = static_thrust(&mut sheet, &drive, &turning, &propeller).value();
        prop_assert!(pull <= disc_thrust(&mut sheet, drive.power, drive.diameter).value());
    }

    #[test]
    fn more_power_never_pulls_less_nor_does_a_finer_pitch_below_rated_speed(
        area in 0.3..=1.05_f64, pitch in 0.5..=1.4_f64, hp in 1.0..600.0_f64, more in 1.0..2.0_f64, finer in 0.5..=1.0_f64,
    ) {
        let (less, _) = at_rest(&drive(hp, 5500.0, 2.0, 14.0), 3, area, pitch);
        let (stronger, _) = at_rest(&drive(hp * more, 5500.0, 2.0, 14.0), 3, area, pitch);
        prop_assert!(stronger >= less);
        // Where its torque is held; past rated speed the pull is level to some percent.
        let (fine, turns) = at_rest(&drive(hp, 5500.0, 2.0, 14.0), 3, area, (pitch * finer).max(0.5));
        prop_assert!(turns > 5500.0 || fine >= less * (1.0 - 1e-9), "{fine} {less}");
    }
}
