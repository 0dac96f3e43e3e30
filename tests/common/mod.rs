//! From a job's text to a finding: what the test binaries share.
#![allow(dead_code, reason = "each binary uses the part that it needs")]

pub mod mended;

use std::sync::LazyLock;

use sternknee::case::Case;
use sternknee::catalog::Catalog;
use sternknee::job;
use sternknee::quantity::{Measure, Units};
use sternknee::rig::{self, Rig};
use sternknee::rules::{self, Finding, Limit, Verdict};
use sternknee::working::Line;

/// The built-in catalog, loaded once.
pub static CATALOG: LazyLock<Catalog> = LazyLock::new(|| Catalog::built_in().expect("the built-in catalog is sound"));

/// The rig of a job that must be sound.
pub fn rig(text: &str) -> Rig {
    let (job, _) = job::load("job.ron", text).unwrap_or_else(|faults| panic!("{faults}\n{text}"));
    rig::resolve(&job, &CATALOG).unwrap_or_else(|unresolved| panic!("{unresolved:?}\n{text}"))
}

/// What a rule says of a job.
pub fn finding(id: &str, text: &str) -> Finding {
    let rule = rules::find(id).unwrap_or_else(|| panic!("no rule {id}"));
    (rule.judge)(&Case::new(&rig(text)))
}

/// The verdict of a rule on a job.
pub fn verdict(id: &str, text: &str) -> Verdict {
    finding(id, text).verdict
}

/// The value that a finding's working gives this symbol, in coherent SI units.
pub fn step(finding: &Finding, wanted: &str) -> Measure {
    finding
        .working
        .lines()
        .iter()
        .find_map(|line| match line {
            Line::Step { symbol, result, .. } if symbol == wanted => Some(*result),
            _ => None,
        })
        .unwrap_or_else(|| panic!("no step {wanted} in {:?}", finding.working))
}

/// The upper limit of a finding, in US units.
pub fn at_most(finding: &Finding) -> f64 {
    match finding.limit {
        Some(Limit::AtMost(most)) => most.in_unit(Units::Us).0,
        other => panic!("no upper limit: {other:?}"),
    }
}

/// A study job of these fields.
pub fn study(fields: &str) -> String {
    format!("(sitting: study, {fields})")
}

/// A study job with one engine described by these fields, on the centreline, and these other fields
/// of the job.
pub fn with_engine(engine: &str, fields: &str) -> String {
    study(&format!("engines_on: [(described: ({engine}), at: [centre])], {fields}"))
}

/// Asserts that two numbers agree to an absolute tolerance.
#[track_caller]
pub fn near(found: f64, expected: f64, tolerance: f64) {
    assert!((found - expected).abs() <= tolerance, "{found} is not {expected} ± {tolerance}");
}
