//! What is told is what is judged.

use sternknee::quantity::Units;
use sternknee::rules::Verdict::{Pass, Warn};

use crate::common::finding;

/// A bolt's proof load over its pull stands in two digits beside the factor of two: "2.0" does not warn, though a third digit would be
/// under it, and "1.9" does.
#[test]
fn a_factor_is_judged_as_its_two_digits_tell_it() {
    let job = include_str!("cases/strength-bolts-tension/warn.ron");
    let mut told_as_two = 0;
    for speed in [20, 21, 22, 29, 30] {
        let at = format!("top_speed: \"{speed} mph\", old");
        let found = finding("strength/bolts-tension", &job.replace("top_speed: \"30 mph\", old", &at));
        let factor = found.found.expect("a factor");
        let told = factor.show(Units::Us);
        let digits: f64 = told.split(' ').next().and_then(|first| first.parse().ok()).expect("a number");
        assert_eq!(found.verdict, if digits < 2.0 { Warn } else { Pass }, "{speed} mph: {told}");
        told_as_two += usize::from(factor.si < 2.0 && digits >= 2.0);
    }
    assert!(told_as_two > 0, "no figure that its third digit would turn");
}
