//! Engines, their way through air and time, by hand: torque and thirst over the speed, what age leaves, the wind's drag, the time
//! from rest. Newton's second law and the dynamic pressure are any handbook's; the forms of torque and thirst are common practice,
//! no source, and are held to what their own words say.

use sternknee::case::Case;
use sternknee::physics::engine::{self, Kind};
use sternknee::physics::matched::getting_up;
use sternknee::physics::running::{AIR, Dragged};
use sternknee::quantity::Dimensioned;
use uom::si::f64::{Area, Length, MassDensity, Ratio, Velocity};

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

/// Newton's second law, integrated by the middles of many short steps in place of Simpson's rule.
#[test]
fn the_time_to_plane_is_her_mass_over_what_is_left_of_the_thrust() {
    let rig = common::rig(JOB);
    let case = Case::new(&rig);
    let craft = case.running().expect("asked").after.as_ref().expect("told").built.craft.clone();
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
