//! The planing balance of invented boats against scipy, which solves four equations in four unknowns, and propellers at a speed
//! against numpy with a table of its own (`check.py`). The same boats, that of Savitsky and Brown 1976 and Savitsky's porpoising
//! curves against a library of planing hulls, which takes friction otherwise (`library.py`).

use serde_json::Value;
use sternknee::physics::propeller::{Curves, Propeller, Sized};
use sternknee::physics::running::{Beside, Bottom, Planing, Tabs, ThrustLine, Water, critical_degrees, curves, prism};
use sternknee::quantity::{Dimensioned, Moment, degrees};
use uom::si::angle::degree;
use uom::si::f64::{Force, Length, MassDensity, Velocity};

const ASKED: &str = include_str!("boats.json");
const RESULTS: &str = include_str!("results.json");
const LIBRARY: &str = include_str!("library.json");
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
        thrust: ThrustLine { angle: degrees(of("thrust_deg")), below: length("below_m") },
        speed: Velocity::from_si(of("speed_m_s")),
        beside: Beside {
            drag: Force::from_si(of("drag_n")),
            lift: Force::from_si(of("lift_n")),
            bow_down: Moment::from_si(of("bow_down_nm")),
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

/// How far the library's balance may stand from ours: degrees, and parts of wetted length and thrust. It knows no roughness, which
/// is taken off ours first.
const TRIM_DEG: f64 = 0.15;
const WETTED: f64 = 0.06;
const THRUST: f64 = 0.06;

/// Holds a balance against the library's, and gives how far off its trim is.
fn against_library(name: &str, ours: &sternknee::physics::running::Running, theirs: &Value) -> f64 {
    let off = ours.trim.get::<degree>() - number(&theirs["trim_deg"]);
    let part = |ours: f64, key: &str| ours / number(&theirs[key]) - 1.0;
    let rough = ours.friction.si() * prism::ROUGHNESS / ours.friction_coefficient.si();
    let (wetted, thrust) = (part(ours.wetted.si(), "wetted"), part(ours.thrust.si() - rough, "thrust_n"));
    println!("{name}: trim {off:+.3} deg, wetted {:+.1} %, thrust {:+.1} %", 100.0 * wetted, 100.0 * thrust);
    assert!(off.abs() < TRIM_DEG && wetted.abs() < WETTED && thrust.abs() < THRUST, "{name}");
    off.abs()
}

#[test]
fn boats_run_as_a_library_of_planing_hulls_finds_them() {
    let (asked, library) = (kept().0, serde_json::from_str::<Value>(LIBRARY).unwrap());
    let mut told = 0;
    for (boat, theirs) in asked["boats"].as_array().unwrap().iter().zip(library["boats"].as_array().unwrap()) {
        assert_eq!(boat["name"], theirs["name"]);
        let ours = Planing { beside: Beside::default(), ..planing(boat) }.balance();
        let (Ok(ours), false) = (ours, theirs["found"].is_null()) else { continue };
        against_library(boat["name"].as_str().unwrap(), &ours, &theirs["found"]);
        told += 1;
    }
    assert!(told >= 30, "{told}");
}

/// The boat of Savitsky and Brown 1976, Marine Technology 13 (4): 186,000 lb, 24 ft, 15 deg of deadrise, her centre 35 ft forward,
/// at 25.4 kn; values from memory, as the library's own example has her. Flaps over the whole beam, 1 ft, 5 deg down.
#[test]
fn the_boat_of_savitsky_and_brown_runs_as_a_library_finds_her() {
    let library: Value = serde_json::from_str(LIBRARY).unwrap();
    let beam = Length::from_si(7.315);
    let asked = Planing {
        bottom: Bottom { beam, deadrise: degrees(15.0) },
        water: Water { density: MassDensity::from_si(1025.87), viscosity: 1.19e-6 },
        weight: Force::from_si(827_400.0),
        centre_forward: Length::from_si(10.67),
        centre_above: Length::from_si(7.315 / 7.0),
        thrust: ThrustLine { angle: degrees(0.0), below: Length::default() },
        speed: Velocity::from_si(13.07),
        beside: Beside::default(),
    };
    let plain = asked.balance().unwrap();
    against_library("without flaps", &plain, &library["large"]);
    let tabs = Tabs { span: beam, chord: Length::from_si(0.3048), deflection: degrees(5.0) };
    let beside = tabs.at(asked.speed, asked.water.density, beam, plain.trim, asked.centre_forward);
    let flapped = Planing { beside, ..asked }.balance().unwrap();
    against_library("with flaps", &flapped, &library["flapped"]);
}

/// The library has a cubic for each curve; here the curves are points read off, with straight lines between.
#[test]
fn the_porpoising_curves_are_those_that_a_library_has() {
    let library: Value = serde_json::from_str(LIBRARY).unwrap();
    let mut worst = 0.0_f64;
    let mut celano = [f64::INFINITY, f64::NEG_INFINITY];
    for point in library["curves"].as_array().unwrap() {
        let of = |key: &str| number(&point[key]);
        let (deadrise, root) = (of("deadrise_deg"), of("root"));
        worst = worst.max((curves(deadrise, root) - of("trim_deg")).abs());
        if deadrise >= 10.0 {
            let below = of("trim_deg") - critical_degrees(deadrise, 2.0 * root * root);
            celano = [celano[0].min(below), celano[1].max(below)];
        }
    }
    println!("curves within {worst:.2} deg; Celano's formula {:.2} to {:.2} deg below them", celano[0], celano[1]);
    assert!(worst < 0.25, "{worst}");
    // Two limits, up to a degree and a bit apart, the formula the more careful.
    assert!(celano[0] > 0.2 && celano[1] < 1.4, "{celano:?}");
}
