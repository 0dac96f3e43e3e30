//! Static thrust of the ideal actuator disc (momentum theory, Rankine and Froude), figures derived for salt water of 1025 kg/m³;
//! thrust at speed; ISO 12215-5's acceleration (formula, bound and category factor from memory); and the load cases that
//! stand on them.

use proptest::prelude::*;

use sternknee::physics::propeller::{Drive, Pitch, PropellerError, Screw};
use sternknee::physics::strength::bolts::{Bolt, Foot, bolt_forces};
use sternknee::physics::strength::loads::{
    Acting, Case, Engine, FaceLoad, LoadError, Outfit, acceleration_at_gravity_centre, cases, disc_thrust, slamming,
    thrust_at_speed,
};
use sternknee::physics::strength::panel::Load;
use sternknee::physics::strength::panel_loads;
use sternknee::quantity::Dimensioned;
use sternknee::working::{Sheet, Term};
use uom::si::angular_velocity::revolution_per_minute;
use uom::si::f64::{Angle, AngularVelocity, Force, Length, Mass, Power, Ratio, Velocity};
use uom::si::force::pound_force;
use uom::si::velocity::{knot, mile_per_hour};
use uom::si::{angle::degree, length::inch, length::meter, mass::kilogram, power::horsepower};

#[test]
fn static_thrust_is_that_of_the_ideal_disc() {
    for (hp, kilonewtons) in [(150.0, 14.6), (300.0, 23.2)] {
        let power = Power::new::<horsepower>(hp);
        let thrust = disc_thrust(&mut Sheet::default(), power, Length::new::<inch>(15.5)).value().si();
        assert!((thrust / 1e3 / kilonewtons - 1.0).abs() < 4e-3, "{thrust}");
        let area = std::f64::consts::FRAC_PI_4 * (15.5_f64 * 0.0254).powi(2);
        let closed = (2.0 * 1025.0 * area * power.si().powi(2)).cbrt();
        assert!((thrust / closed - 1.0).abs() < 1e-12);
    }
}

#[test]
fn thrust_at_speed_is_power_over_speed_times_efficiency_and_no_more_than_at_rest() {
    // 150 hp = 111.9 kW at 40 kn = 20.58 m/s and 0.6: 3.26 kN.
    let thrust = |knots: f64, at_rest: f64| {
        let rest = Term::new("T", Force::from_si(at_rest));
        let (power, speed) = (Power::new::<horsepower>(150.0), Velocity::new::<knot>(knots));
        thrust_at_speed(&mut Sheet::default(), power, speed, 0.6, &rest).value().si()
    };
    assert!((thrust(40.0, 6e3) / 3.26e3 - 1.0).abs() < 2e-3);
    assert_eq!(thrust(7.0, 6e3), 6e3);
}

#[test]
fn the_acceleration_follows_its_formula() {
    let n = acceleration_at_gravity_centre(
        &mut Sheet::default(),
        Length::new::<meter>(6.0),
        Length::new::<meter>(2.0),
        Angle::new::<degree>(20.0),
        Velocity::new::<knot>(30.0),
        Mass::new::<kilogram>(2000.0),
    );
    // 0.32 (6/20 + 0.084) 30 · 900 · 4 / 2000 = 6.636.
    assert!((n.value().si() - 6.635_52).abs() < 1e-9, "{}", n.value().si());
}

#[test]
fn slamming_is_bounded_before_the_category_lessens_it() {
    let n = |at_centre: f64, factor: f64| {
        let at_centre = Term::new("nCG", Ratio::from_si(at_centre));
        let (speed, mass) = (Velocity::new::<knot>(30.0), Mass::new::<kilogram>(2000.0));
        slamming(&mut Sheet::default(), at_centre, speed, mass, Ratio::from_si(factor)).value().si()
    };
    // 0.5 · 30 / 2000^0.17 = 4.120.
    assert!((n(6.635_52, 1.0) - 4.120).abs() < 1e-3, "{}", n(6.635_52, 1.0));
    assert!((n(6.635_52, 0.6) - 0.6 * n(6.635_52, 1.0)).abs() < 1e-12);
    assert!((n(2.0, 0.4) - 0.8).abs() < 1e-12);
}

fn engine() -> Engine {
    Engine {
        mass: Mass::new::<kilogram>(220.0),
        drive: Drive {
            power: Power::new::<horsepower>(150.0),
            rated_speed: AngularVelocity::new::<revolution_per_minute>(5500.0),
            gear_ratio: Ratio::from_si(2.0),
            diameter: Length::new::<inch>(15.5),
        },
        screw: Screw { blades: 3, area_ratio: 0.55, pitch: Pitch::Told(Length::new::<inch>(17.0)) },
        runs: true,
        plate_to_shaft: Length::new::<inch>(8.5),
        weight_aft: Length::new::<meter>(0.35),
        tilted_aft: Length::new::<meter>(0.65),
        weight_up: Length::new::<meter>(0.1),
        shaft_down: Length::new::<meter>(0.8),
        propeller_aft: Length::new::<meter>(0.5),
        steering: Angle::new::<degree>(30.0),
    }
}

fn outfit() -> Outfit {
    Outfit { speed: Velocity::new::<knot>(40.0), slamming: Ratio::from_si(3.0), overall_efficiency: 0.6 }
}

/// What acts on an engine in a case.
fn acting(engine: &Engine, outfit: &Outfit, case: Case) -> Vec<Acting> {
    cases(&mut Sheet::default(), engine, outfit).unwrap().into_iter().find(|(c, _)| *c == case).unwrap().1
}

fn upright(acting: &[Acting]) -> FaceLoad {
    FaceLoad::of(acting, Angle::default())
}

fn of(case: Case) -> FaceLoad {
    upright(&acting(&engine(), &outfit(), case))
}

#[test]
fn weight_and_thrust_ahead_both_press_the_heel_and_pull_the_upper_bolts() {
    let weight = 220.0 * 9.80665;
    let still = of(Case::Static);
    assert!((still.force[2] + weight).abs() < 1e-9 && (still.moment[1] + weight * 0.35).abs() < 1e-9);
    let pushed = of(Case::StaticThrust);
    // 1,320 lbf, as derived for this engine and propeller.
    assert!((pushed.force[0] / 5.87e3 - 1.0).abs() < 3e-3, "{}", pushed.force[0]);
    assert!(pushed.moment[1] < still.moment[1]);
    assert!((pushed.moment[1] - still.moment[1] + 0.8 * pushed.force[0]).abs() < 1e-6);
    assert!(of(Case::Astern).moment[1] > still.moment[1]);
    let unweighted = of(Case::AsternUnweighted);
    assert!(unweighted.force[2] == 0.0 && unweighted.moment[1] > of(Case::Astern).moment[1]);
    let slam = of(Case::Slamming);
    assert!((slam.force[2] + 4.0 * weight).abs() < 1e-9 && slam.force[0] == 0.0);
    let turn = of(Case::HardOverStarboard);
    assert!(turn.force[1] != 0.0 && turn.moment[2] != 0.0);
}

/// She steers by her stern: in a turn to starboard it is pushed to port, and the push, aft of the bolts, turns her bow to starboard
/// (z up: a negative moment). Common practice, no source.
#[test]
fn a_turn_is_told_by_the_side_to_which_her_bow_goes() {
    for case in Case::ALL {
        let load = of(case);
        let sides = [case.name().contains("turn to port"), case.name().contains("turn to starboard")];
        let turns = [load.force[1] < 0.0 && load.moment[2] > 0.0, load.force[1] > 0.0 && load.moment[2] < 0.0];
        assert_eq!(sides, turns, "{}: {load:?}", case.name());
    }
}

#[test]
fn an_engine_that_does_not_run_her_only_hangs_at_full_speed() {
    let small = Engine { runs: false, ..engine() };
    let of = |case: Case| upright(&acting(&small, &outfit(), case));
    assert_eq!(of(Case::FullSpeed), of(Case::Static));
    assert_eq!(of(Case::HardOverStarboard), of(Case::Static));
    assert!(of(Case::StaticThrust).force[0] > 0.0);
}

/// Thrust at rest, thrust at speed, and along and across in a hard turn, N.
fn forces(engine: &Engine, mph: f64) -> [f64; 4] {
    let outfit = Outfit { speed: Velocity::new::<mile_per_hour>(mph), ..outfit() };
    let of = |case: Case| upright(&acting(engine, &outfit, case)).force;
    let turn = of(Case::HardOverStarboard);
    [of(Case::StaticThrust)[0], of(Case::FullSpeed)[0], turn[0], turn[1]]
}

#[test]
fn a_hard_turn_of_a_large_engine_brings_a_side_force_that_can_be_believed() {
    let mut large = engine();
    large.drive.power = Power::new::<horsepower>(250.0);
    large.drive.diameter = Length::new::<inch>(16.0);
    large.screw.pitch = Pitch::ForSpeed(Velocity::new::<mile_per_hour>(45.0));
    let side = Force::from_si(forces(&large, 45.0)[3]).get::<pound_force>();
    assert!((500.0..1500.0).contains(&side), "{side}");
}

proptest! {
    #[test]
    fn faster_is_never_kinder_in_a_hard_turn_and_never_pulls_more_than_at_rest(
        hp in 2.0..450.0_f64, mph in 5.0..80.0_f64, more in 0.0..20.0_f64, diameter in 7.5..17.0_f64,
        pitch in proptest::option::of(6.0..24.0_f64), steering in 20.0..45.0_f64,
    ) {
        let at = |mph: f64| {
            let mut engine = engine();
            engine.drive.power = Power::new::<horsepower>(hp);
            engine.drive.diameter = Length::new::<inch>(diameter);
            engine.steering = Angle::new::<degree>(steering);
            engine.screw.pitch = pitch.map_or(Pitch::ForSpeed(Velocity::new::<mile_per_hour>(mph)), |pitch| {
                Pitch::Told(Length::new::<inch>(pitch))
            });
            forces(&engine, mph)
        };
        let ([rest, running, along, across], [.., along_faster, across_faster]) = (at(mph), at(mph + more));
        prop_assert!(running <= rest && along.hypot(across) > 0.0);
        prop_assert!(along_faster >= along * (1.0 - 1e-12) && across_faster >= across * (1.0 - 1e-12));
    }

    #[test]
    fn a_small_change_of_speed_moves_every_thrust_a_little(hp in 2.0..450.0_f64, mph in 5.0..80.0_f64) {
        let at = |mph: f64| {
            let mut engine = engine();
            engine.drive.power = Power::new::<horsepower>(hp);
            engine.screw.pitch = Pitch::ForSpeed(Velocity::new::<mile_per_hour>(mph));
            forces(&engine, mph)
        };
        for (slow, fast) in at(mph).into_iter().zip(at(1.01 * mph)) {
            prop_assert!((fast / slow - 1.0).abs() < 0.021, "{slow} {fast}");
        }
    }

    #[test]
    fn more_power_never_loads_less(hp in 2.0..450.0_f64, more in 1.0..1.5_f64, mph in 5.0..80.0_f64) {
        let at = |hp: f64| {
            let mut engine = engine();
            engine.drive.power = Power::new::<horsepower>(hp);
            forces(&engine, mph)
        };
        for (less, more) in at(hp).into_iter().zip(at(hp * more)) {
            prop_assert!(more >= less * (1.0 - 1e-12), "{less} {more}");
        }
    }
}

#[test]
fn setback_lengthens_the_weights_arm_and_nothing_else_of_the_static_case() {
    let mut far = engine();
    far.weight_aft += Length::new::<inch>(10.0);
    let load = upright(&acting(&far, &outfit(), Case::Static));
    let near = of(Case::Static);
    assert_eq!(load.force, near.force);
    assert!((load.moment[1] - near.moment[1] + 220.0 * 9.80665 * 0.254).abs() < 1e-9);
}

#[test]
fn one_engine_alone_of_a_pair_turns_the_transom_and_two_do_not() {
    let [run, hang] = [Case::StaticThrust, Case::Static].map(|case| acting(&engine(), &outfit(), case));
    let both = |port: &[Acting], starboard: &[Acting]| {
        let port = port.iter().map(|one| one.moved(0.33));
        upright(&port.chain(starboard.iter().map(|one| one.moved(-0.33))).collect::<Vec<_>>())
    };
    let pair = both(&run, &run);
    assert!(pair.moment[2].abs() < 1e-9 && pair.moment[0].abs() < 1e-9);
    let single = both(&run, &hang);
    assert!((single.moment[2] + 0.33 * upright(&run).force[0]).abs() < 1e-9);
}

#[test]
fn the_foots_patches_carry_the_push_onto_the_panel() {
    let bolts: Vec<Bolt> =
        [(0.16, 0.45), (-0.16, 0.45), (0.125, 0.25), (-0.125, 0.25)].map(|(y, z)| Bolt { y, z, area: 9e-5 }).to_vec();
    let foot = Foot { bottom: 0.15, top: 0.5, starboard: -0.2, port: 0.2 };
    for case in Case::ALL {
        let load = of(case).on_bolts([0.0, 0.35]);
        let forces = bolt_forces(&bolts, foot, load).unwrap();
        let patches = panel_loads(&bolts, foot, &forces, &[[0.05, 0.05]; 4], 0.01);
        let sum: f64 = patches
            .iter()
            .map(|p| match p {
                Load::Patch { force, .. } => *force,
                other => panic!("{other:?}"),
            })
            .sum();
        assert!((sum - load.push).abs() < 1e-6 * 1e4, "{case:?}: {sum} {}", load.push);
    }
}

#[test]
fn nonsense_loads_are_errors() {
    let light = Engine { mass: Mass::new::<kilogram>(0.0), ..engine() };
    let error = cases(&mut Sheet::default(), &light, &outfit()).unwrap_err();
    assert_eq!(error, LoadError::NotPositive { what: "the engine's weight" });
    let nan = Engine { shaft_down: Length::new::<meter>(f64::NAN), ..engine() };
    assert!(cases(&mut Sheet::default(), &nan, &outfit()).is_err());
    let many = Engine { screw: Screw { blades: 9, ..engine().screw }, ..engine() };
    let error = cases(&mut Sheet::default(), &many, &outfit()).unwrap_err();
    assert_eq!(error, LoadError::Propeller(PropellerError::Blades(9)));
}
