//! Friction factors, linkages, backbones and trailers against scipy and numpy (`check.py`: root finders, a network of
//! conductances, the equations of balance).

use serde_json::Value;
use sternknee::physics::rigging::network::{self, Load};
use sternknee::physics::rigging::pipe::friction;
use sternknee::physics::rigging::tie_bar::Linkage;
use sternknee::physics::rigging::trailer::{self, Stand, Weight};
use sternknee::quantity::Dimensioned;
use sternknee::working::Sheet;
use uom::si::f64::{Length, Mass};

const CASES: &str = include_str!("cases.json");
const RESULTS: &str = include_str!("results.json");
/// Of factors relative, of angles in radians, of voltages in volts, of weights relative to all of it.
const TOLERANCE: f64 = 1e-9;

fn kept() -> (Value, Value) {
    (serde_json::from_str(CASES).unwrap(), serde_json::from_str(RESULTS).unwrap())
}

fn list<'v>(value: &'v Value, key: &str) -> &'v [Value] {
    value[key].as_array().unwrap()
}

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap()
}

#[test]
fn friction_factors_agree_with_scipy() {
    let (cases, results) = kept();
    let mut worst = 0.0_f64;
    for (pipe, theirs) in list(&cases, "pipes").iter().zip(list(&results, "friction")) {
        let ours = friction(number(&pipe["reynolds"]), number(&pipe["roughness"])).factor;
        worst = worst.max((ours / number(theirs) - 1.0).abs());
    }
    println!("{} friction factors within {worst:.1e}", list(&cases, "pipes").len());
    assert!(worst < TOLERANCE, "{worst}");
}

#[test]
fn linkages_agree_with_a_general_root_finder() {
    let (cases, results) = kept();
    let mut worst = 0.0_f64;
    let linkages = list(&cases, "linkages");
    assert!(linkages.len() >= 30);
    for (linkage, theirs) in linkages.iter().zip(list(&results, "starboard")) {
        let of = |key: &str| number(&linkage[key]);
        let ours = Linkage { spread: of("spread"), arm: of("arm"), splay: of("splay"), bar: of("bar") };
        for (port, starboard) in list(linkage, "port").iter().zip(theirs.as_array().unwrap()) {
            worst = worst.max((ours.follows(number(port)).unwrap() - number(starboard)).abs());
        }
    }
    println!("{} linkages within {worst:.1e} rad", linkages.len());
    assert!(worst < TOLERANCE, "{worst}");
}

#[test]
fn backbones_agree_with_a_network_of_conductances() {
    let (cases, results) = kept();
    let mut worst = 0.0_f64;
    for (backbone, theirs) in list(&cases, "backbones").iter().zip(list(&results, "lost")) {
        let loads: Vec<Load> = list(backbone, "loads")
            .iter()
            .map(|load| Load {
                at: number(&load["at"]),
                current: number(&load["current"]),
                drop: number(&load["drop"]),
            })
            .collect();
        let of = |key: &str| number(&backbone[key]);
        let ours = network::losses(of("power_at"), &loads, of("per_metre"), of("drop_per_metre"));
        for (ours, theirs) in ours.iter().zip(theirs.as_array().unwrap()) {
            worst = worst.max((ours - number(theirs)).abs());
        }
    }
    println!("{} backbones within {worst:.1e} V", list(&cases, "backbones").len());
    assert!(worst < TOLERANCE, "{worst}");
}

#[test]
fn couplings_agree_with_the_equations_of_balance() {
    let (cases, results) = kept();
    let mut worst = 0.0_f64;
    for (towed, theirs) in list(&cases, "trailers").iter().zip(list(&results, "coupling")) {
        let weights: Vec<Weight> = list(towed, "weights")
            .iter()
            .map(|weight| Weight {
                name: "weight".to_owned(),
                mass: Mass::from_si(number(&weight["kg"])),
                forward: Length::from_si(number(&weight["forward"])),
                from: "measured",
            })
            .collect();
        let metres = |key: &str| Length::from_si(number(&towed[key]));
        let stand = Stand { axle: metres("axle"), coupling: metres("coupling") };
        let ours = trailer::coupling(&mut Sheet::default(), &weights, &stand).value().si();
        let all: f64 = weights.iter().map(|weight| weight.mass.si()).sum();
        worst = worst.max((ours - number(theirs)).abs() / all);
    }
    println!("{} couplings within {worst:.1e} of all of it", list(&cases, "trailers").len());
    assert!(worst < TOLERANCE, "{worst}");
}
