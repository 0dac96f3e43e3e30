//! Engines, their way through air and time, by hand: torque and thirst over the speed, what age leaves, the wind's drag, the time
//! from rest. Newton's second law and the dynamic pressure are any handbook's; the forms of torque and thirst are common practice,
//! no source, and are held to what their own words say.

use sternknee::case::Case;
use sternknee::physics::engine::{self, Engine, Kind};
use sternknee::physics::matched::{Craft, Factors, getting_up};
use sternknee::physics::power::likely_top_speed;
use sternknee::physics::running::{AIR, Dragged};
use sternknee::quantity::{Dimensioned, horsepower, pounds};
use sternknee::working::Sheet;
use uom::si::f64::{AngularVelocity, Area, Length, MassDensity, Power, Ratio, Velocity, VolumeRate};

use crate::common;

fn near(found: f64, expected: f64, part: f64) {
    assert!((found / expected - 1.0).abs() < part, "{found} instead of {expected}");
}

#[test]
fn torque_and_thirst_at_half_speed_are_those_of_their_kind() {
    // 1 + 0.25 · 0.5 − 0.50 · 0.25, and 1 + 0.15 · 0.5 − 0.80 · 0.25.
    near(engine::torque(Kind::FourStroke, 0.5), 1.0, 1e-12);
    near(engine::torque(Kind::TwoStroke, 0.5), 0.875, 1e-12);
    near(engine::torque(Kind::Electric, 0.5), 1.0, 1e-12);
    for kind in [Kind::FourStroke, Kind::TwoStroke, Kind::Electric] {
        near(engine::torque(kind, 1.0), 1.0, 1e-12);
        near(engine::fuel(kind, 1.0, 1.0), 1.0, 1e-12);
    }
    // Half the power at half the speed: (0.5 + 0.15 · 0.25) / 1.15.
    near(engine::fuel(Kind::FourStroke, 0.5, 0.5), 0.467_391, 1e-5);
    near(engine::fuel(Kind::TwoStroke, 0.5, 0.5), 0.45, 1e-12);
}

/// A worn engine of 100 kW at 600 rad/s that has nine tenths left and 20 ml/s of thirst as new, by its kind.
fn worn(kind: Kind) -> Engine {
    Engine {
        kind,
        power: Power::from_si(1e5),
        rated: AngularVelocity::from_si(600.0),
        most: AngularVelocity::from_si(618.0),
        left: Ratio::from_si(0.9),
        fuel: VolumeRate::from_si(2e-5),
    }
}

/// Power is torque times speed. Below rated speed an electric engine keeps its torque, past it its power; past its limiter none
/// gives any.
#[test]
fn power_at_full_throttle_is_torque_times_speed() {
    for kind in [Kind::FourStroke, Kind::TwoStroke, Kind::Electric] {
        near(worn(kind).full_throttle(600.0), 9e4, 1e-12);
        assert_eq!(worn(kind).full_throttle(618.5), 0.0);
    }
    near(worn(Kind::FourStroke).full_throttle(300.0), 0.5 * 1.0 * 9e4, 1e-12);
    near(worn(Kind::TwoStroke).full_throttle(300.0), 0.5 * 0.875 * 9e4, 1e-12);
    near(worn(Kind::Electric).full_throttle(300.0), 0.5 * 9e4, 1e-12);
    near(worn(Kind::Electric).full_throttle(615.0), 9e4, 1e-12);
    // 1 + 0.15 · 0.98 − 0.80 · 0.98².
    near(worn(Kind::TwoStroke).full_throttle(12.0), 0.02 * 0.378_68 * 9e4, 1e-9);
}

/// What is left of it turns the propeller; it burns at rated speed, flat out, what it burnt as new.
#[test]
fn a_worn_engine_burns_for_the_power_that_it_was_built_for() {
    near(worn(Kind::FourStroke).fuel_at(9e4, 600.0), 2e-5, 1e-12);
    // Half of the power that is left at half the speed: (0.5 + 0.15 · 0.25) / 1.15.
    near(worn(Kind::FourStroke).fuel_at(4.5e4, 300.0), 0.467_391 * 2e-5, 1e-5);
    near(worn(Kind::TwoStroke).fuel_at(4.5e4, 300.0), 0.45 * 2e-5, 1e-12);
}

/// Crouch's formula, value from memory: 100 hp to 2,500 lb is a fifth under the root, 150 times that 30 mph. Twice the power on twice
/// the weight is as fast.
#[test]
fn crouchs_formula_by_hand() {
    let top = |hp: f64, lb: f64, constant: f64| {
        likely_top_speed(&mut Sheet::default(), horsepower(hp), pounds(lb), constant).value().si() / 0.447_04
    };
    near(top(100.0, 2500.0, 150.0), 30.0, 1e-12);
    near(top(200.0, 5000.0, 150.0), 30.0, 1e-12);
    near(top(90.0, 1000.0, 200.0), 60.0, 1e-12);
}

#[test]
fn age_takes_a_hundredth_for_five_hundred_hours_or_what_the_weakest_cylinder_lost() {
    let left = |hours, compression: Option<f64>| engine::left_by_age(hours, compression.map(Ratio::from_si)).si();
    near(left(Some(1000.0), None), 0.98, 1e-12);
    near(left(Some(50_000.0), None), 0.90, 1e-12);
    // Ten per cent of compression lost: seven of power.
    near(left(Some(1000.0), Some(0.9)), 0.93, 1e-12);
    near(left(None, None), 1.0, 1e-12);
}

#[test]
fn the_winds_drag_is_its_dynamic_pressure_on_the_area() {
    // ½ · 1.225 · 15² = 137.8 Pa on 2 m²: 275.6 N, half a metre above the centre: bow up 137.8 N·m.
    let wind = Dragged { area: Area::from_si(2.0), density: MassDensity::from_si(AIR), below: Length::from_si(-0.5) };
    let at = wind.at(Velocity::from_si(15.0));
    near(at.drag.si(), 275.625, 1e-12);
    near(at.bow_down.si(), -137.8125, 1e-12);
}

/// Along the keel (Savitsky 1964) the thrust is the bottom's part, what the blades hold back square to their shaft with it, and the
/// drag of air and lower units. The hump (Blount and Fox 1976) makes more of the bottom's part alone.
#[test]
fn the_hump_makes_more_of_the_bottoms_drag_and_not_of_the_winds() {
    let craft = craft();
    let mut bent = 0;
    for point in &craft.range().points {
        let (running, beside) = craft.running(point.speed).expect("told");
        let (trim, angle) = (running.trim.si(), craft.planing.thrust.angle.si());
        let bottom = trim.cos() * (running.drag.si() + running.blades.si() * (trim + angle).sin());
        let others = beside.drag.si() * trim.cos();
        let drag = craft.factors.drag;
        near(point.thrust.si(), drag * (point.hump.si() * bottom + others) / angle.cos(), 1e-9);
        bent += usize::from(point.hump.si() > 1.1 && others > 0.01 * bottom);
    }
    assert!(bent > 0, "no speed at the hump");
}

/// The greatest speed is the last that is held: there is thrust for it, and for a little more there is none.
#[test]
fn at_her_greatest_speed_the_engines_still_hold_her_and_a_little_faster_they_do_not() {
    let craft = craft();
    for (drag, pitch) in [(0.85, 1.0), (1.0, 1.0), (1.0, 1.05), (1.1, 0.95), (1.25, 1.0)] {
        let craft = Craft { factors: Factors { drag, pitch }, ..craft.clone() };
        let top = craft.range().top.expect("a greatest speed");
        assert!(top.is_held(), "{drag} {pitch}: {:e}", top.margin());
        assert!(top.margin() < 1e-9, "{drag} {pitch}: {:e}", top.margin());
        assert!(!craft.steady(top.speed * (1.0 + 1e-6)).expect("told").is_held());
    }
}

/// The boat below with her new engine.
fn craft() -> Craft {
    let rig = common::rig(JOB);
    let case = Case::new(&rig);
    case.running().expect("asked").after.as_ref().expect("told").built.craft.clone()
}

/// Newton's second law, integrated by the middles of many short steps in place of Simpson's rule.
#[test]
fn the_time_to_plane_is_her_mass_over_what_is_left_of_the_thrust() {
    let craft = craft();
    let range = craft.range();
    let first = range.points.first().expect("a range").speed;
    let found = getting_up(&craft, first, Velocity::from_si(20.0 * 0.447_04));
    let mass = 1.05 * craft.planing.weight.si() / 9.806_65;
    let engines = f64::from(craft.propulsion.engines);
    let slowest = craft.steady(first).expect("told").thrust.si();
    let time = |to: f64, below: f64| -> f64 {
        let steps = 4000;
        let step = to / f64::from(steps);
        let middles = (0..steps).map(|i| step * (f64::from(i) + 0.5));
        middles
            .map(|speed| {
                let at = Velocity::from_si(speed);
                let drag = if at < first { below } else { craft.steady(at).expect("told").thrust.si() };
                step * mass / (craft.full_throttle(at).thrust * engines - drag)
            })
            .sum()
    };
    let [least, most] = found.to_speed.expect("she gets there");
    // The jump of the drag where the method begins costs Simpson's rule a step of 60.
    near(least.si(), time(20.0 * 0.447_04, 0.0), 0.02);
    near(most.si(), time(20.0 * 0.447_04, slowest), 0.005);
}

/// Invented.
const JOB: &str = r#"(
    boat: (bottom: vee, length: "20 ft", beam: "8 ft", transom_width: "7 ft", deadrise: "19 deg", chine_beam: "6 ft 8 in", depth: "36 in"),
    transom: (height: "25 in", angle: "13 deg"),
    steering: remote_hydraulic,
    afloat: (water: salt),
    weights: (
        boat: (weight: "2,300 lb", forward: "8 ft", above: "20 in"), crew: 2, person: "185 lb",
        places: [(what: "helm", holds: 3, forward: "9 ft", above: "40 in")],
        tanks: [(what: "fuel tank", holds: fuel, capacity: "60 gal", forward: "7 ft", above: "10 in")],
    ),
    engines_off: [(class: "two-stroke 115 hp V4", shaft: "25 in", at: [centre], holes_up: 1)],
    engines_on: [(class: "four-stroke 150 hp inline-4", shaft: "25 in", at: [centre], holes_up: 1, propeller: (blades: 3, diameter: "14 in", pitch: "17 in"))],
    running: (),
)"#;
