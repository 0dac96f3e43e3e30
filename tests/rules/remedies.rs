//! Remedies of the rules' own cases, taken at their word: what they change is written into the job, and the finding passes.

use std::path::PathBuf;

use sternknee::quantity::{Dimensioned, Measure, Units, inches, pounds};
use sternknee::rules::mend::{self, Mend};
use sternknee::rules::{self, Finding, Verdict};

use crate::common::mended::{Became, changed, judged, taken, wants};
use crate::common::{finding, near};

/// The size of the first thing to buy.
fn size(finding: &Finding) -> String {
    finding.buys.first().unwrap_or_else(|| panic!("nothing to buy: {finding:?}")).size.show(Units::Us)
}

const PAIR: &str = "engines_on: [(class: \"four-stroke 150 hp inline-4\", shaft: \"25 in\", at: [port(\"14 in\"), starboard(\"14 in\")])]";

/// Every case of a rule that warns or fails: its rule, its name and its text.
fn cases() -> Vec<(&'static str, String, String)> {
    let root = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/rules/cases");
    let mut cases = Vec::new();
    for rule in rules::ALL {
        let folder = root.join(rule.id.replace('/', "-"));
        for file in std::fs::read_dir(folder).expect("every rule has its cases") {
            let path = file.expect("a file").path();
            let name = path.file_stem().expect("a name").to_string_lossy().into_owned();
            if name.starts_with("warn") || name.starts_with("fail") {
                cases.push((rule.id, name, std::fs::read_to_string(&path).expect("a case")));
            }
        }
    }
    cases.sort();
    cases
}

#[test]
fn what_a_remedy_changes_makes_its_finding_pass() {
    let (mut mended, mut none, mut failed) = (0, Vec::new(), Vec::new());
    for (id, name, text) in cases() {
        let found = finding(id, &text);
        let words = found.remedy.as_ref().map_or(String::new(), |words| words.show(Units::Us));
        if !wants(&found) || found.mends.is_empty() {
            failed.push(format!("{id} {name}: no way is told: {words}"));
        }
        let others = judged(&text).expect("a sound case");
        for mend in &found.mends {
            match taken(id, &text, mend, &others) {
                Became::Mended | Became::Gone | Became::Waits => mended += 1,
                Became::NoChange(why) => none.push(format!("{id} {name}: {why}: {words}")),
                Became::Failed(why) => failed.push(format!("{id} {name}: {words}\n    {why}")),
            }
        }
    }
    println!("{mended} ways mend what they are for, {} are no change of the job:\n{}", none.len(), none.join("\n"));
    assert!(failed.is_empty(), "{}:\n{}", failed.len(), failed.join("\n"));
}

/// Two engines on one line: a line more, like the first, and nothing else is bought for it.
#[test]
fn a_line_for_each_engine_is_bought_once() {
    let job = |lines: &str| format!("(sitting: study, {PAIR}, rigging: (fuel: (lines: [{lines}])))");
    let line = |engines: u8| {
        format!(
            "(name: \"line {engines}\", engines: {engines}, hose: (class: \"fuel hose 3/8 in\"), length: \"12 ft\", \
             lift: \"22 in\", elbows: 2, barbs: 6, anti_siphon: true, bulb: true, separator: true, years: 4)"
        )
    };
    let one = job(&line(2));
    let (suction, feed) = (finding("fuel/suction", &one), finding("fuel/one-feed", &one));
    assert_eq!((suction.verdict, feed.verdict), (Verdict::Warn, Verdict::Warn));
    assert!(suction.buys.is_empty(), "{:?}", suction.buys);
    assert_eq!(size(&feed), "1 more, 12 ft");
    let two = job(&format!("{}, {}", line(1), line(1)));
    for rule in ["fuel/suction", "fuel/one-feed"] {
        assert_eq!(finding(rule, &two).verdict, Verdict::Pass, "{rule}");
    }
}

/// Four tyres that each bear a quarter: a trailer that is rated for her has tyres rated for her too, no more and no less.
#[test]
fn the_trailer_that_is_named_stands_on_tyres_of_its_own_rating() {
    let job = include_str!("cases/trailer-load/fail-tyres.ron");
    let found = finding("trailer/load", job);
    let changes = found.mends.iter().find_map(|mend| match mend {
        Mend::Change(changes) => Some(changes),
        _ => None,
    });
    let after = finding("trailer/load", &changed(job, changes.expect("another trailer")).expect("a job"));
    assert_eq!(after.verdict, Verdict::Pass);
    let rated: Vec<String> = after.tables[0].rows.iter().map(|row| row[2].show(Units::Us)).collect();
    assert_eq!(rated, ["6,650 lb"; 3]);
}

/// What is told is enough, or no more than allowed: up to the next mark or down to the one below, and a reading that stands on its mark
/// stays there.
#[test]
fn what_is_told_is_rounded_to_where_it_is_enough() {
    for (found, step, up, down) in [
        (1.3, 0.25, 1.5, 1.25),
        (1.25, 0.25, 1.25, 1.25),
        (0.3, 0.1, 0.3, 0.3),
        (-1.3, 0.25, -1.25, -1.5),
        (7.01, 1.0, 8.0, 7.0),
        (0.0, 0.125, 0.0, 0.0),
    ] {
        near(mend::up(inches(found), step).si() / 0.0254, up, 1e-9);
        near(mend::down(inches(found), step).si() / 0.0254, down, 1e-9);
    }
    // An eighth to spare: 1.125 in stand on an eighth of 1.25 in, 1.2 in do not.
    for (found, told) in [(1.0, 1.25), (1.125, 1.25), (1.2, 1.5)] {
        near(mend::well_up(inches(found), 0.25).si() / 0.0254, told, 1e-9);
    }
    for (found, told) in [(170.0, 170.0), (170.2, 171.0), (0.4, 1.0)] {
        near(mend::pounds_up(pounds(found)).si() / 0.453_592_37, told, 1e-9);
    }
}

/// 10-3/8 in are 263.525 mm, 171 lb 77.5643 kg.
#[test]
fn what_is_written_into_a_job_is_read_again_as_it_was_meant() {
    assert_eq!(mend::exactly(inches(10.375)), "\"263.5250 mm\"");
    assert_eq!(mend::weighing(pounds(171.0)), "\"77.5643 kg\"");
    assert_eq!(mend::across(inches(10.375)), "port(\"263.5250 mm\")");
    assert_eq!(mend::across(inches(-10.375)), "starboard(\"263.5250 mm\")");
    assert_eq!(mend::across(inches(0.0)), "centre");
    assert_eq!(mend::quoted(Measure::tape(inches(10.375))), "\"10-3/8 in\"");
}
