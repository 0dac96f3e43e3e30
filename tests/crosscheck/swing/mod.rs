//! 220 random engines, wells and ranges against python-fcl (dense sampling) and scipy (DIRECT, Nelder-Mead): see
//! `check.py`; versions are in `results.json`.

mod scene;

use serde::Deserialize;
use sternknee::physics::swing::{Effort, Outcome, least_distance};
use uom::si::length::meter;

/// What python-fcl's distance may be off by, in metres: its solver's own tolerance is 1e-6.
const FCL_ERROR: f64 = 5e-6;

/// What the optimisers may leave to be found, in metres; nothing bounds it, so it is measured: the
/// largest left over the kept cases stays under it.
const OPTIMISER_ERROR: f64 = 1e-6;

#[derive(Deserialize)]
struct Found {
    name: String,
    sampled: f64,
    sampling_error: f64,
    polished: f64,
}

#[derive(Deserialize)]
struct Kept {
    results: Vec<Found>,
}

#[test]
fn the_certified_bound_is_never_above_what_sampling_finds_and_is_attained_within_the_gap() {
    let cases: Vec<scene::Case> = serde_json::from_str(include_str!("cases.json")).expect("the kept cases read");
    let kept: Kept = serde_json::from_str(include_str!("results.json")).expect("the kept results read");
    assert!(cases.len() >= 200 && cases.len() == kept.results.len());
    let effort = Effort::default();
    let gap = effort.gap.get::<meter>();
    let (mut above, mut below, mut contacts, mut widest) = (f64::MIN, f64::MIN, 0, 0.0f64);
    for (case, found) in cases.iter().zip(&kept.results) {
        assert_eq!(case.name, found.name);
        let scene = case.scene().expect("the kept scene is sound");
        let answer = least_distance(&scene, &effort).expect("the question is sound");
        let (lower, upper) = (answer.lower.get::<meter>(), answer.upper.get::<meter>());
        let said = format!("{}: [{lower}, {upper}], sampled {}, polished {}", case.name, found.sampled, found.polished);
        assert_eq!(answer.outcome, Outcome::Certified, "{said}");
        assert!(upper - lower <= gap, "{said}");
        assert!(lower <= found.polished.min(found.sampled) + FCL_ERROR, "{said}");
        assert!(upper <= found.polished + gap + FCL_ERROR, "{said}");
        assert!(upper >= found.sampled - found.sampling_error - FCL_ERROR, "{said}");
        assert!(upper >= found.polished - OPTIMISER_ERROR, "{said}");
        above = above.max(lower - found.polished);
        below = below.max(found.polished - upper);
        widest = widest.max(upper - lower);
        contacts += usize::from(upper <= 0.0);
    }
    println!(
        "lower above the optimum by at most {above:.2e} m; optimum above upper by at most {below:.2e} m; widest gap {widest:.2e} m; {contacts} contacts"
    );
    assert!(contacts > 20 && contacts < cases.len() - 20, "both kinds of case are wanted");
}
