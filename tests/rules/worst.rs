//! Which of several findings of one rule is told, and by what.

use sternknee::quantity::{Measure, inches};
use sternknee::rules::{Limit, Verdict};

use crate::common::{finding, study};

/// Half of what its wire may carry, and nine tenths of a lesser one; and more than its wire may carry.
#[test]
fn of_two_judged_alike_the_one_that_uses_more_of_its_limit_stays_in_whatever_order() {
    let circuit = |name: &str, wire: &str, amperes: f64| {
        format!("(name: \"{name}\", wire: (class: \"{wire}\"), length: \"6 ft\", current: \"{amperes} A\")")
    };
    let worst = |circuits: &[&String]| {
        let circuits = circuits.iter().map(|one| one.as_str()).collect::<Vec<_>>().join(", ");
        let job = study(&format!("rigging: (electrical: (circuits: [{circuits}]))"));
        finding("electrical/ampacity", &job)
    };
    let carries = |wire: &str| match worst(&[&circuit("any", wire, 1.0)]).limit {
        Some(Limit::AtMost(most)) => most.si,
        other => panic!("no upper limit: {other:?}"),
    };
    let slack = circuit("windlass", "8 AWG", (0.5 * carries("8 AWG")).round());
    let tight = circuit("pump", "14 AWG", (0.9 * carries("14 AWG")).floor());
    let bad = circuit("thruster", "10 AWG", 2.0 * carries("10 AWG"));
    let [alone, fails] = [&tight, &bad].map(|one| worst(&[one]));
    assert_eq!(alone.verdict, Verdict::Pass);
    assert!(worst(&[&slack]).found.expect("a current").si > alone.found.expect("a current").si);
    assert_eq!(worst(&[&slack, &tight]), alone);
    assert_eq!(worst(&[&tight, &slack]), alone);
    assert_eq!(fails.verdict, Verdict::Fail);
    assert_eq!(worst(&[&bad, &tight, &slack]), fails);
    // In another place of the list it is mended at another entry.
    let amid = worst(&[&tight, &bad, &slack]);
    assert_eq!((amid.verdict, &amid.summary, amid.found), (fails.verdict, &fails.summary, fails.found));
}

/// By its own definition: 1 at the limit, less within, more beyond.
#[test]
fn what_is_used_of_a_limit_is_one_at_the_limit() {
    let inch = |size: f64| Measure::of(inches(size));
    let used = |limit: Limit, found: f64| limit.used(inch(found)).map(|share| (share * 1e9).round() / 1e9);
    let window = Limit::Within(inch(2.0), inch(6.0));
    assert_eq!([2.0, 4.0, 5.0, 6.0, 8.0].map(|found| used(window, found)), [1.0, 0.0, 0.5, 1.0, 2.0].map(Some));
    assert_eq!(
        [-1.0, 5.0, 10.0, 20.0].map(|found| used(Limit::AtMost(inch(10.0)), found)),
        [0.0, 0.5, 1.0, 2.0].map(Some)
    );
    assert_eq!([1.0, 2.0, 4.0].map(|found| used(Limit::AtLeast(inch(2.0)), found)), [2.0, 1.0, 0.5].map(Some));
    assert_eq!(used(Limit::AtLeast(inch(2.0)), 0.0), Some(f64::INFINITY));
    assert_eq!([Limit::AtMost(inch(0.0)), Limit::AtLeast(inch(0.0))].map(|limit| used(limit, 1.0)), [None, None]);
}
