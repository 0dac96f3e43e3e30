//! The force that blades make square to their shaft where water meets it at an angle: against the blades themselves, summed round a
//! turn, against Ribner's fin, and by its laws.

use std::f64::consts::{PI, TAU};

use proptest::prelude::*;
use sternknee::physics::propeller::{Curves, Propeller, Sized, WORKS_AT, square_to_shaft, write_square_to_shaft};
use sternknee::physics::running::{Beside, Planing, Running, ThrustLine};
use sternknee::quantity::{Dimensioned, Moment, degrees, feet};
use sternknee::working::Sheet;
use uom::si::angle::degree;
use uom::si::f64::{Angle, Force};

use super::savitsky_1964::example;

fn curves(blades: u8, area: f64, pitch: f64) -> Curves {
    Curves::of(&Propeller::new(blades, area, pitch).unwrap())
}

/// The coefficient over the sine, at this advance.
fn coefficient(curves: &Curves, advance: f64) -> f64 {
    square_to_shaft(curves.at(advance).torque, curves.torque_slope(advance), advance)
}

/// The blades one by one. Axes: the shaft ahead, up, and to port; the propeller turns right-handed, seen from astern, and water
/// comes level while the shaft leans up by `angle`, so that it crosses the disk upwards. Each blade stands at its angle, meets its own
/// speed, asks for its share of the torque of a propeller that turned as fast, and is pushed against its own motion at 0.7 R. What
/// comes back is the mean over a turn, upwards and to port, over ρ n² D⁴.
fn blades_round_a_turn(curves: &Curves, advance: f64, angle: f64) -> [f64; 2] {
    const PLACES: u32 = 720;
    let (across, along) = angle.sin_cos();
    let radius = 0.5 * WORKS_AT;
    let mut sum = [0.0; 2];
    for place in 0..PLACES {
        // Of diameter 1 and one turn a second; the angle from the top, clockwise seen from astern: to starboard.
        let (sin, cos) = (TAU * f64::from(place) / f64::from(PLACES)).sin_cos();
        // Where the blade goes, up and to port.
        let goes = [-sin, -cos];
        let met = TAU * radius - advance * across * goes[0];
        let faster = met / (TAU * radius);
        let torque = faster * faster * curves.at(advance * along / faster).torque;
        for (sum, goes) in sum.iter_mut().zip(goes) {
            *sum -= torque / radius * goes / f64::from(PLACES);
        }
    }
    sum
}

#[test]
fn the_formula_is_the_mean_of_the_blades_round_a_turn() {
    let mut worst = 0.0_f64;
    for (blades, area, pitch) in [(3, 0.55, 0.8), (3, 0.55, 1.1), (4, 0.66, 1.1), (5, 0.7, 1.35)] {
        let curves = curves(blades, area, pitch);
        for part in [0.5, 0.75, 0.9] {
            for (angle, within) in
                [(0.5_f64, 0.0005), (-0.5, 0.0005), (5.0, 0.004), (-5.0, 0.004), (10.0, 0.01), (15.0, 0.02)]
            {
                let advance = part * pitch;
                let sine = angle.to_radians().sin();
                let formula = coefficient(&curves, advance) * sine;
                let [up, port] = blades_round_a_turn(&curves, advance, angle.to_radians());
                let off = (formula / up - 1.0).abs();
                // A shaft that leans up is lifted; nothing is left to the side.
                assert!(off < within, "{blades} {area} {pitch} {part} {angle}: {formula}, {up}");
                assert!(up * sine > 0.0 && port.abs() < 1e-9 * up.abs().max(1e-9), "{up} {port}");
                worst = worst.max(off / within);
            }
        }
    }
    println!("largest part of what is allowed: {worst:.2}");
}

/// H. Ribner, "Propellers in yaw", NACA Report 820, 1943, from memory: a propeller acts as a fin of its blades' side area, of an
/// aspect ratio of about 8, in the stream with half the inflow. That was found with slender blades in air; those of a boat stand five times
/// as close and hinder each other more, so that their own series gives them a fifth to a half of it.
#[test]
fn it_is_of_the_order_of_ribners_fin_and_below_it() {
    for (blades, area) in [(3, 0.35), (3, 0.55), (4, 0.66), (5, 0.7)] {
        for pitch in [0.8, 1.0, 1.2, 1.4] {
            let curves = curves(blades, area, pitch);
            for part in [0.75, 0.88] {
                let advance = part * pitch;
                let loading = curves.at(advance).thrust / (0.5 * advance * advance * 0.25 * PI);
                let inflow = 0.5 * ((1.0 + loading).sqrt() - 1.0);
                let stream = advance * (1.0 + inflow);
                // Half of the blades' area, as each is seen from the side but half of the time, turned by the pitch's angle.
                let side = 0.5 * area * 0.25 * PI * (pitch / (WORKS_AT * PI)).atan().sin();
                let slope = TAU * 8.0 / (8.0 + 2.0);
                let fin = 0.5 * stream * stream * side * slope;
                let over = coefficient(&curves, advance) / fin;
                println!("{blades} {area} {pitch} {part}: {over:.2} of the fin");
                assert!((0.2..0.5).contains(&over), "{over}");
            }
        }
    }
}

/// A 150 hp engine's propeller at 40 mph, by hand: ρ n² D⁴ = 1026 · 46² · 0.394⁴ = 52,300 N; J = 17.88 / (46 · 0.394) = 0.987.
#[test]
fn a_propeller_by_hand() {
    let curves = curves(3, 0.55, 1.1);
    let sized = Sized { curves, diameter: 0.394, density: 1026.0, stretch: 1.0, pitch: 1.1 * 0.394 };
    let turning = sized.turning(46.0, 17.88);
    let (low, high) = (curves.at(0.986).torque, curves.at(0.987).torque);
    let slope = (high - low) / 0.001;
    let by_hand = 52_300.0 * (2.0 * high - 0.987 * slope) * 0.987 / (0.49 * PI);
    let found = sized.square_to_shaft(&turning);
    println!("{found:.0} N a unit of sine: {:.0} N at 5 deg, of {:.0} N of thrust", found * 0.0872, turning.thrust);
    assert!((found / by_hand - 1.0).abs() < 0.01, "{found}, {by_hand} by hand");
    // The sheet holds the very formula.
    let written = write_square_to_shaft(&mut Sheet::default(), &sized, &turning);
    assert!((written.value().si() / found - 1.0).abs() < 1e-12);
}

proptest! {
    #[test]
    fn it_goes_with_the_water_and_evenly_with_the_advance(
        blades in 3u8..=5, area in 0.4..0.8f64, pitch in 0.7..1.4f64, part in 0.5..0.95f64,
    ) {
        let curves = curves(blades, area, pitch);
        let advance = part * pitch;
        let here = coefficient(&curves, advance);
        prop_assert!(here > 0.0);
        prop_assert!((coefficient(&curves, advance * (1.0 + 1e-6)) / here - 1.0).abs() < 1e-4);
        let step = (curves.at(advance + 1e-6).torque - curves.at(advance - 1e-6).torque) / 2e-6;
        prop_assert!((step - curves.torque_slope(advance)).abs() < 1e-6);
    }

    /// Along the water there is none, and she runs as without; past it the force turns round, and trims her more.
    #[test]
    fn a_shaft_along_the_water_is_not_pushed(push in 1e3..4e4f64, past in 0.5..4.0f64) {
        let mut asked = example();
        asked.centre_forward = feet(23.0);
        let at = |asked: &mut Planing, angle: Angle, push: f64| {
            asked.thrust = ThrustLine { angle, below: feet(0.5), aft: feet(24.0) };
            asked.beside = Beside { blades: Force::from_si(push), ..Beside::default() };
            asked.balance().unwrap()
        };
        // The shaft's angle at which it lies along her course.
        let mut angle = -asked.balance().unwrap().trim;
        for _ in 0..20 {
            angle = -at(&mut asked, angle, 0.0).trim;
        }
        let along = at(&mut asked, angle, push);
        prop_assert!((along.trim + angle).get::<degree>().abs() < 1e-6 && along.blades.si().abs() < 1e-3);
        let down = angle - degrees(past);
        let (bare, pushed) = (at(&mut asked, down, 0.0), at(&mut asked, down, push));
        prop_assert!(pushed.blades.si() < 0.0 && pushed.trim > bare.trim);
    }

    /// Where the torque grows with blades or their area, so does this.
    #[test]
    fn more_blades_or_more_of_them_never_lift_less_where_they_ask_for_more_torque(
        blades in 3u8..=4, area in 0.4..0.6f64, pitch in 0.8..1.3f64, part in 0.6..0.9f64,
    ) {
        let advance = part * pitch;
        let own = curves(blades, area, pitch);
        for more in [curves(blades + 1, area, pitch), curves(blades, 1.2 * area, pitch), curves(blades + 1, 1.2 * area, pitch)] {
            if more.at(advance).torque > own.at(advance).torque {
                prop_assert!(coefficient(&more, advance) > coefficient(&own, advance));
            }
        }
    }

    /// The balance of trim: weight, pressure, friction, thrust and blades, summed up anew, leave nothing; a shaft that leans up is
    /// lifted, and she trims less the more its blades push and the farther aft they work.
    #[test]
    fn she_balances_with_blades_and_trims_less_by_them(push in 1e3..4e4f64, aft in 20.0..30.0f64, angle in 0.0..8.0f64) {
        let mut asked = example();
        asked.centre_forward = feet(23.0);
        asked.thrust.angle = degrees(angle);
        let bare = asked.balance().unwrap();
        let with = |push: f64, aft: f64| -> (Running, f64) {
            let mut asked = asked;
            asked.thrust.aft = feet(aft);
            asked.beside = Beside { blades: Force::from_si(push), ..Beside::default() };
            let running = asked.balance().unwrap();
            // The same force at the trim found, as one that only lifts, drags and turns.
            let meets = running.trim + asked.thrust.angle;
            let force = push * meets.si().sin();
            prop_close(force, running.blades.si());
            asked.beside = Beside {
                drag: Force::from_si(force * meets.si().sin()),
                lift: Force::from_si(force * meets.si().cos()),
                bow_down: Moment::from_si(force * asked.thrust.aft.si()),
                blades: Force::default(),
            };
            let same = asked.balance().unwrap();
            assert!((same.trim - running.trim).get::<degree>().abs() < 1e-9, "{:?} {:?}", same.trim, running.trim);
            prop_close(same.thrust.si(), running.thrust.si());
            prop_close(same.pressure.si(), running.pressure.si());
            (running, running.trim.get::<degree>())
        };
        let (running, trim) = with(push, aft);
        prop_assert!(running.residual.si().abs() < 1e-12);
        prop_assert!(trim < bare.trim.get::<degree>());
        prop_assert!(with(1.1 * push, aft).1 < trim && with(push, 1.1 * aft).1 < trim);
    }
}

fn prop_close(one: f64, other: f64) {
    assert!((one / other - 1.0).abs() < 1e-9, "{one}, {other}");
}
