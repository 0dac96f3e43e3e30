//! The planing balance of invented boats against scipy, which solves four equations in four unknowns, and propellers at a speed
//! against numpy with a table of its own (`check.py`).

use serde_json::Value;
use sternknee::physics::propeller::{Curves, Propeller, Sized};
use sternknee::physics::running::{Beside, Bottom, Planing, ThrustLine, Water};
use sternknee::quantity::{Dimensioned, Moment, degrees};
use uom::si::angle::degree;
use uom::si::f64::{Force, Length, MassDensity, Velocity};

const ASKED: &str = include_str!("boats.json");
const RESULTS: &str = include_str!("results.json");
/// Relative.
const TOLERANCE: f64 = 1e-6;

fn kept() -> (Value, Value) {
    (serde_json::from_str(ASKED).unwrap(), serde_json::from_str(RESULTS).unwrap())
}

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap()
}

fn planing(boat: &Value) -> Planing {
    let of = |key: &str| number(&boat[key]);
    let length = |key: &str| Length::from_si(of(key));
    Planing {
        bottom: Bottom { beam: length("beam_m"), deadrise: degrees(of("deadrise_deg")) },
        water: Water::of(MassDensity::from_si(of("density"))),
        weight: Force::from_si(of("weight_n")),
        centre_forward: length("centre_forward_m"),
        centre_above: length("centre_above_m"),
        thrust: ThrustLine { angle: degrees(of("thrust_deg")), below: length("below_m"), ..ThrustLine::default() },
        speed: Velocity::from_si(of("speed_m_s")),
        beside: Beside {
            drag: Force::from_si(of("drag_n")),
            lift: Force::from_si(of("lift_n")),
            bow_down: Moment::from_si(of("bow_down_nm")),
            ..Beside::default()
        },
    }
}

#[test]
fn boats_run_as_scipy_finds_them() {
    let (asked, kept) = kept();
    assert!(kept["versions"]["scipy"].is_string());
    let (mut worst, mut told) = (0.0_f64, 0);
    for (boat, theirs) in asked["boats"].as_array().unwrap().iter().zip(kept["boats"].as_array().unwrap()) {
        assert_eq!(boat["name"], theirs["name"]);
        let ours = planing(boat).balance();
        let found = &theirs["found"];
        assert_eq!(ours.is_ok(), !found.is_null(), "{}: {ours:?}, {found}", boat["name"]);
        let Ok(ours) = ours else { continue };
        told += 1;
        for (key, value) in [
            ("trim_deg", ours.trim.get::<degree>()),
            ("wetted", ours.wetted.si()),
            ("thrust_n", ours.thrust.si()),
            ("pressure_n", ours.pressure.si()),
            ("drag_n", ours.drag.si()),
        ] {
            let off = (value / number(&found[key]) - 1.0).abs();
            assert!(off < TOLERANCE, "{} {key}: {value}, {}", boat["name"], found[key]);
            worst = worst.max(off);
        }
    }
    println!("{told} boats: largest relative difference {worst:.1e}");
    assert!(told >= 30);
}

#[test]
fn propellers_at_a_speed_turn_as_numpy_finds_them() {
    let (asked, kept) = kept();
    let mut worst = 0.0_f64;
    let all = asked["propellers"].as_array().unwrap();
    for (one, theirs) in all.iter().zip(kept["propellers"].as_array().unwrap()) {
        let of = |key: &str| number(&one[key]);
        let blades = u8::try_from(one["blades"].as_u64().unwrap()).unwrap();
        let propeller = Propeller::new(blades, of("area_ratio"), of("pitch_ratio")).unwrap();
        let (curves, diameter) = (Curves::of(&propeller), of("diameter_m"));
        let sized = Sized { curves, diameter, density: 1026.0, stretch: 1.0, pitch: of("pitch_ratio") * diameter };
        let open = curves.at(of("advance"));
        let turning = sized.pulling(of("thrust_n"), of("speed_m_s"));
        for (key, value) in [
            ("thrust", open.thrust),
            ("torque", open.torque),
            ("efficiency", open.efficiency()),
            ("turns", turning.turns),
            ("torque_nm", turning.torque),
        ] {
            let off = (value / number(&theirs[key]) - 1.0).abs();
            assert!(off < TOLERANCE, "{} {key}: {value}, {}", one["name"], theirs[key]);
            worst = worst.max(off);
        }
    }
    println!("{} propellers: largest relative difference {worst:.1e}", all.len());
}
