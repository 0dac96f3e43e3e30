//! The US Coast Guard's boatbuilder's handbook, flotation and safe loading.

use sternknee::physics::weight;
use sternknee::quantity::{Dimensioned, Units, pounds};
use sternknee::rules::Verdict;
use sternknee::working::{Sheet, Term};

use crate::common::{finding, near, step, with_engine};

/// Flotation: foam (ft³) = submerged weight / B, B = 62.4 − density of the foam (lb/ft³): with foam of
/// 2 lb/ft³ B is 60.4, and 60.4 lb ask for one cubic foot, 100 lb for 1.6556. The quotient of exact
/// decimals: 1e-9.
#[test]
fn foam_is_submerged_weight_over_62_4_less_its_own() {
    for (submerged, volume) in [(60.4, 1.0), (100.0, 100.0 / 60.4), (0.0, 0.0)] {
        let mut sheet = Sheet::default();
        let foam = weight::foam_volume(&mut sheet, &Term::new("W", pounds(submerged)));
        let cubic_feet = foam.value().si() / 0.3048_f64.powi(3);
        near(cubic_feet, volume, 1e-9);
    }
    near(weight::FRESH_WATER_LB_FT3 - weight::FOAM_LB_FT3, 60.4, 1e-12);
}

/// The same through a job: a 300 lb, 40 hp engine swamped weighs 255 lb (ABYC S-30's row of 35 to 64.9 hp
/// prints both figures). Where flotation was laid out for the 94 lb of the row of 7 to 10.9 hp, 161 lb are
/// to be floated: 161 / 60.4 = 2.6656 ft³.
#[test]
fn a_job_asks_for_the_foam_that_the_handbook_gives() {
    let job = with_engine(
        "power: \"40 hp\", running_weight: \"300 lb\"",
        "boat: (craft: monohull, length: \"16 ft\"), plate: capacity(power: \"9.9 hp\")",
    );
    let found = finding("weight/swamped-flotation", &job);
    assert_eq!(found.verdict, Verdict::Warn);
    let us = |symbol| step(&found, symbol).in_unit(Units::Us).0;
    near(us("Ws"), 255.0, 1e-9);
    near(us("Wb"), 94.0, 1e-9);
    near(us("We"), 161.0, 1e-9);
    near(us("V"), 161.0 / 60.4, 1e-9);
    assert!(found.remedy.unwrap().show(Units::Us).contains("2.7 ft³"));
}

/// Without a plate's power the old engines are the basis, by the same ratio of ABYC S-30: 100 lb running
/// are 85 lb swamped.
#[test]
fn without_a_plate_the_old_engines_are_the_basis() {
    let job = with_engine(
        "power: \"40 hp\", running_weight: \"300 lb\"",
        "boat: (craft: monohull, length: \"16 ft\"), plate: none, \
         engines_off: [(described: (running_weight: \"100 lb\"))]",
    );
    let found = finding("weight/swamped-flotation", &job);
    near(step(&found, "Wb").in_unit(Units::Us).0, 85.0, 1e-9);
    near(step(&found, "We").in_unit(Units::Us).0, 170.0, 1e-9);
}
