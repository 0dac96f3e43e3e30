//! Laws of whole jobs, on boats of the corpus at any level with some of their readings altered at random: what a
//! mirror, other units, another order or a reading less may change of what is found, and what not.

use std::collections::BTreeMap;

use proptest::prelude::*;
use proptest::sample::Index;
use sternknee::front_door;
use sternknee::physics::swing::Effort;
use sternknee::quantity::Units;
use sternknee::rules::{self, Doubt, Finding, Verdict};
use sternknee::written::Draught;
use uom::si::length::millimeter;

use super::common::CATALOG;
use super::drawn::{config, config_by, drawn, drawn_to, readings};
use super::laws::STILL;

/// Figures that are one: what searches leave open, of the figure, and in its unit where it is nought.
const ALIKE: f64 = 2e-3;
const AT_NOUGHT: f64 = 2e-3;
/// The same of strength, where a hair decides how many triangles the panel is cut into.
const ALIKE_ON_MESHES: f64 = STILL;
/// What is chosen each day, no reading of the boat: left out it is taken as it is usually done, and the finding says so. The
/// remedy of a skeg that strikes the road is to tow her at full tilt, which is what is taken.
const CHOSEN: [&str; 1] = ["trailer.towing_tilt"];

/// To which level jobs are told that are weighed: beyond it strength is judged, whose worth takes many seconds a job.
const WEIGHED_TO: u8 = 2;
/// By how much a worth may grow all the same: of a finding that bends it is the spread of a sample.
const SAMPLED: f64 = 0.1;

/// Every finding by its rule; nothing where the text is no job.
fn judged(text: &str) -> Option<BTreeMap<&'static str, Finding>> {
    let opened = front_door::open("job.ron", text, &CATALOG, |_| Err("no files".to_owned())).ok()?;
    let findings = rules::judge(&opened.case());
    Some(findings.into_iter().map(|judged| (judged.rule.id, judged.finding)).collect())
}

fn figure(finding: &Finding) -> Option<(f64, &'static str)> {
    finding.found.map(|found| found.in_unit(Units::Si))
}

fn alike(rule: &str, one: &Finding, other: &Finding) -> bool {
    let (Some((one, unit)), Some((other, _))) = (figure(one), figure(other)) else {
        return one.found.is_some() == other.found.is_some();
    };
    let share = if rule.starts_with("strength/") { ALIKE_ON_MESHES } else { ALIKE };
    // How an engine swings is searched to a stated gap.
    let swings = rule.starts_with("swing/") && unit == "mm";
    let at_nought = if swings { Effort::default().gap.get::<millimeter>() } else { AT_NOUGHT };
    (one - other).abs() <= f64::max(at_nought, share * one.abs())
}

/// Both jobs are found alike.
fn same_findings(text: &str, other: &str) -> Result<(), TestCaseError> {
    let [as_told, otherwise] = [text, other].map(judged);
    let as_told = as_told.expect("judged before");
    let otherwise = otherwise.ok_or_else(|| TestCaseError::fail(other.to_owned()))?;
    let told: Vec<String> = as_told
        .iter()
        .filter_map(|(rule, was)| {
            let is = &otherwise[rule];
            let same = was.verdict == is.verdict && alike(rule, was, is);
            (!same).then(|| format!("{rule}: {}\n    {}", said(was), said(is)))
        })
        .collect();
    prop_assert!(told.is_empty(), "{}\n{text}", told.join("\n"));
    Ok(())
}

fn said(finding: &Finding) -> String {
    format!("{:?} {:?} {}", finding.verdict, figure(finding), finding.summary.show(Units::Us))
}

/// Port for starboard outside of names.
fn mirrored(text: &str) -> String {
    let swap = |text: &str, one: &str, other: &str| {
        text.replace(&format!("{one}("), "\0(")
            .replace(&format!("{other}("), &format!("{one}("))
            .replace("\0(", &format!("{other}("))
    };
    let text = swap(text, "port", "starboard");
    text.split_inclusive('\n')
        .map(|line| match line.split_once("propellers: [") {
            Some((before, after)) => {
                let (hands, behind) = after.split_once(']').expect("a list ends");
                let hands = hands.replace("right", "\0").replace("left", "right").replace('\0', "left");
                format!("{before}propellers: [{hands}]{behind}")
            }
            None => line.to_owned(),
        })
        .collect()
}

/// Lists whose order means nothing: what stands first is only named first.
const UNORDERED: [&str; 8] = ["places", "gear", "edges", "knees", "tanks", "stringers", "engines_on", "holes"];

/// The job with two entries of such a list in each other's place; nothing where it has none.
fn reordered(text: &str, which: Index, pair: [Index; 2]) -> Option<String> {
    let draught = Draught::new(text);
    let said: Vec<(String, String)> =
        draught.entries().map(|said| (said.path.to_owned(), said.value.to_owned())).collect();
    let entries = |list: &str| -> Vec<&(String, String)> {
        let of_list = |path: &str| {
            path.strip_prefix(list)
                .and_then(|rest| rest.strip_prefix('[')?.strip_suffix(']'))
                .is_some_and(|i| i.parse::<usize>().is_ok())
        };
        said.iter().filter(|(path, _)| of_list(path)).collect()
    };
    let lists: Vec<Vec<&(String, String)>> = said
        .iter()
        .filter(|(path, _)| UNORDERED.contains(&path.rsplit('.').next().unwrap_or_default()))
        .map(|(path, _)| entries(path))
        .filter(|entries| entries.len() > 1)
        .collect();
    if lists.is_empty() {
        return None;
    }
    let list = which.get(&lists);
    let [one, other] = pair.map(|at| *at.get(list));
    let text = draught.put(&one.0, &other.1).ok()?;
    Draught::new(&text).put(&other.0, &one.1).ok()
}

/// The job with every plain reading in another unit.
fn in_other_units(text: &str) -> String {
    let mut text = text.to_owned();
    for (path, number, unit) in readings(&Draught::new(&text)) {
        let (factor, other) = match unit.as_str() {
            "in" => (25.4, "mm"),
            "ft" => (0.3048, "m"),
            "lb" => (0.45359237, "kg"),
            "mph" => (1.609344, "km/h"),
            "mm" => (1.0 / 25.4, "in"),
            "kg" => (1.0 / 0.45359237, "lb"),
            // Powers are compared by the plate's own rounding, and what else there is has one unit.
            _ => continue,
        };
        text = Draught::new(&text).put(&path, &format!("\"{:.9} {other}\"", number * factor)).expect("it is there");
    }
    text
}

/// What each finding of a job is worth; nothing where the text is no job.
fn weighed(text: &str) -> Option<BTreeMap<&'static str, (Verdict, Doubt)>> {
    let opened = front_door::open("job.ron", text, &CATALOG, |_| Err("no files".to_owned())).ok()?;
    let mut judged = rules::judge(&opened.case());
    opened.weigh(&CATALOG, &mut judged);
    let weighed =
        judged.into_iter().filter_map(|judged| Some((judged.rule.id, (judged.finding.verdict, judged.doubt?))));
    Some(weighed.collect())
}

proptest! {
    // The usual seed draws a boat that takes a minute to weigh.
    #![proptest_config(config_by(12, 2))]

    #[test]
    fn a_closer_reading_never_makes_less_firm(drawn in drawn_to(WEIGHED_TO), which: Index, share in 0.002_f64..0.05) {
        let text = drawn.job()?;
        let draught = Draught::new(&text);
        let readings = readings(&draught);
        let (path, number, unit) = which.get(&readings);
        let taken = |share: f64| draught.put(path, &format!("\"{number} {unit} ± {:.4} {unit}\"", number * share));
        let [Ok(widely), Ok(closely)] = [share, share / 2.0].map(taken) else { return Err(TestCaseError::reject("no tolerance")) };
        let [Some(widely), Some(closely)] = [widely, closely].map(|text| weighed(&text)) else {
            return Err(TestCaseError::reject("no job with that tolerance"));
        };
        let less_firm: Vec<String> = widely
            .iter()
            .filter_map(|(rule, (verdict, doubt))| {
                let (now, closer) = closely.get(rule)?;
                let grown = match (doubt.found, closer.found) {
                    (Some(was), Some(is)) => is.si > was.si * (1.0 + SAMPLED) + f64::EPSILON,
                    _ => false,
                };
                let turned = doubt.is_firm() && !closer.is_firm();
                (verdict == now && (grown || turned)).then(|| format!("{rule}: {doubt:?}\n    {closer:?}"))
            })
            .collect();
        prop_assert!(less_firm.is_empty(), "{path} taken twice as closely: {}\n{text}", less_firm.join("\n"));
    }
}

proptest! {
    #![proptest_config(config(12))]

    #[test]
    fn a_mirrored_job_gives_the_same_findings(drawn in drawn()) {
        let text = drawn.job()?;
        same_findings(&text, &mirrored(&text))?;
    }

    #[test]
    fn units_written_otherwise_change_nothing(drawn in drawn()) {
        let text = drawn.job()?;
        same_findings(&text, &in_other_units(&text))?;
    }

    #[test]
    fn the_order_of_a_list_changes_nothing(drawn in drawn(), which: Index, pair: [Index; 2]) {
        let text = drawn.job()?;
        let other = reordered(&text, which, pair).ok_or_else(|| TestCaseError::reject("no list"))?;
        same_findings(&text, &other)?;
    }

    #[test]
    fn a_reading_left_out_never_turns_a_fail_into_a_pass(drawn in drawn(), which: Index) {
        let text = drawn.job()?;
        let draught = Draught::new(&text);
        let readings = readings(&draught);
        let (path, ..) = which.get(&readings);
        prop_assume!(!CHOSEN.contains(&path.as_str()));
        let Some(less) = judged(&draught.without(path)) else { return Err(TestCaseError::reject("no job without")) };
        let passes: Vec<String> = judged(&text)
            .expect("judged before")
            .iter()
            .filter(|(rule, was)| was.verdict == Verdict::Fail && less[*rule].verdict == Verdict::Pass)
            .map(|(rule, was)| format!("{rule}: {}\n    {}", said(was), said(&less[rule])))
            .collect();
        prop_assert!(passes.is_empty(), "without {path}: {}\n{text}", passes.join("\n"));
    }
}
