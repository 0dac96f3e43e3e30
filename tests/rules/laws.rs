//! Laws that hold for any job.

use proptest::prelude::*;
use sternknee::case::Case;
use sternknee::rules::{self, Finding, Verdict};

use crate::common::rig;

/// A whole job with one engine of this weight and power.
fn job(weight: f64, power: f64, bracket: bool) -> String {
    let bracket = if bracket {
        ", bracket: (described: (setback: \"20 in\", drop: \"1 in\", engines: 1, rated_power: \"200 hp\", \
         rated_weight: \"500 lb\", weight: \"60 lb\"), bottom: \"10 in\")"
    } else {
        ""
    };
    format!(
        "(boat: (craft: monohull, bottom: vee, length: \"18 ft\", beam: \"7 ft 6 in\", \
            transom_width: \"7 ft\", deadrise: \"18 deg\", chine_beam: \"6 ft\", \
            depth: \"30 in\", transom_rating: \"500 lb\"), \
          weights: (boat: (weight: \"1,600 lb\", forward: \"7 ft\", above: \"20 in\")), \
          edges: [(name: \"lip\", kind: well, forward: \"1 ft\", up: \"24 in\"), (name: \"sole\", kind: sole, up: \"18 in\")], \
          plate: capacity(persons: 5, persons_weight: \"700 lb\", total_weight: \"1,400 lb\", power: \"140 hp\"), \
          transom: (height: \"20-1/2 in\", angle: \"14 deg\", thickness: \"2 in\", cutout_width: \"30 in\", \
            splash_well: none, upper_holes: \"1-7/8 in\"), \
          steering: remote_mechanical, \
          engines_off: [(described: (power: \"115 hp\", running_weight: \"380 lb\", centre_aft: \"9 in\", centre_above: \"4 in\"))], \
          engines_on: [(described: (power: \"{power} hp\", running_weight: \"{weight} lb\", hole_rows: 4, \
            centre_aft: \"9 in\", centre_above: \"4 in\", \
            transom_thickness: (from: \"1.5 in\", to: \"2.5 in\"), transom_angle: \"13 deg\", \
            trim: (from: \"-4 deg\", to: \"16 deg\"), centre_distance: \"28 in\", \
            powerhead: (clearance_each_way: \"10 in\")), shaft: \"20 in\", at: [centre]{bracket})])"
    )
}

fn findings(text: &str) -> Vec<(&'static str, Finding)> {
    let rig = rig(text);
    rules::judge(&Case::new(&rig)).into_iter().map(|judged| (judged.rule.id, judged.finding)).collect()
}

/// Rules in which weight on the stern has two sides: less than hung before trims her too, the plate goes
/// deeper with more, and a low weight stiffens.
const TWO_SIDED: [&str; 5] =
    ["stern/trim-change", "stern/plate-immersed", "stern/metacentric-height", "stern/crew-to-side", "stern/list"];

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn a_heavier_engine_never_raises_any_margin(
        weight in 50.0_f64..900.0, more in 0.0_f64..600.0, power in 10.0_f64..300.0, bracket: bool,
    ) {
        let light = findings(&job(weight, power, bracket));
        let heavy = findings(&job(weight + more, power, bracket));
        let both = light.into_iter().zip(heavy);
        for ((id, light), (_, heavy)) in both.filter(|((id, _), _)| !TWO_SIDED.contains(id)) {
            prop_assert!(heavy.verdict <= light.verdict, "{}", id);
            if let (Some(a), Some(b)) = (light.margin(), heavy.margin()) {
                let same_limit = a.kind == b.kind;
                prop_assert!(!same_limit || b.si <= a.si + 1e-9, "{}: {} then {}", id, a.si, b.si);
            }
        }
    }

    /// Power to fail on only ever grows; too little is another rule.
    #[test]
    fn more_power_never_mends_a_failing_limit(
        power in 10.0_f64..300.0, more in 0.0_f64..300.0, bracket: bool,
    ) {
        let weak = findings(&job(400.0, power, bracket));
        let strong = findings(&job(400.0, power + more, bracket));
        for ((id, weak), (_, strong)) in weak.into_iter().zip(strong) {
            if weak.verdict == Verdict::Fail && id != "weight/capacity-left" {
                prop_assert_eq!(strong.verdict, Verdict::Fail, "{}", id);
            }
        }
    }

    #[test]
    fn judging_twice_gives_the_same_findings(weight in 50.0_f64..900.0, power in 10.0_f64..300.0) {
        let text = job(weight, power, true);
        prop_assert_eq!(findings(&text), findings(&text));
        let one = rig(&text);
        let case = Case::new(&one);
        let judge = || rules::judge(&case).into_iter().map(|j| j.finding).collect::<Vec<_>>();
        let first = judge();
        prop_assert_eq!(first, judge());
    }
}

/// Judging needs nothing but the rig: threads judge the same rig side by side.
#[test]
fn threads_that_judge_side_by_side_agree() {
    let one = rig(&job(450.0, 150.0, true));
    let judge = || {
        let judged = rules::judge(&Case::new(&one));
        judged.into_iter().map(|j| j.finding).collect::<Vec<_>>()
    };
    let alone = judge();
    std::thread::scope(|scope| {
        let threads: Vec<_> = (0..4).map(|_| scope.spawn(judge)).collect();
        for thread in threads {
            assert_eq!(thread.join().unwrap(), alone);
        }
    });
}

/// The job of these laws is whole: no rule waits for a reading, so that each law reaches every rule. What
/// the engines could strike and how the transom is built have whole jobs and laws of their own, in
/// `tests/swing` and `tests/strength`.
#[test]
fn no_rule_waits_for_a_reading_of_the_whole_job() {
    for bracket in [false, true] {
        for (id, finding) in findings(&job(400.0, 115.0, bracket)) {
            if id.starts_with("swing/") || id.starts_with("strength/") {
                continue;
            }
            assert_ne!(finding.verdict, Verdict::Unmeasured, "{id}: {:?}", finding.missing);
        }
    }
}
