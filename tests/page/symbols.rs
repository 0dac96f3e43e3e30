//! Every symbol of a working: what it means, where its value is from, and that it means one thing.

use std::collections::BTreeMap;

use sternknee::case::Case;
use sternknee::rules::{self, Family};
use sternknee::working::{Part, Sheet};

use super::common;
use super::followed::jobs;

/// Every topic of `work`, with its family and its parts.
fn topics(case: &Case) -> Vec<(&'static str, Family, Vec<Part>)> {
    let mut all = vec![
        ("weights", Family::Weight, case.weights()),
        ("float", Family::Stern, case.float_parts()),
        ("swing", Family::Swing, case.swing_parts()),
        ("strength", Family::Strength, case.strength_parts()),
        ("running", Family::Running, case.running_parts()),
        ("trial", Family::Trial, case.trial_parts()),
        ("worth", Family::Worth, case.worth_parts()),
    ];
    for family in
        [Family::Steering, Family::Fuel, Family::Electrical, Family::Controls, Family::Network, Family::Trailer]
    {
        all.push((family.word(), family, rules::parts(case, family)));
    }
    all
}

/// Whoever follows a formula asks of each number where it is from.
#[test]
fn every_symbol_that_goes_in_has_a_meaning_and_says_where_its_value_is_from() {
    use rayon::prelude::*;
    use sternknee::report::{unnamed, unsourced};
    let lacking: Vec<(String, String)> = jobs()
        .par_iter()
        .flat_map_iter(|(name, text)| {
            let rig = common::rig(text);
            let case = Case::new(&rig);
            let findings = rules::judge(&case);
            let findings = findings
                .into_iter()
                .map(|judged| (judged.rule.id.to_owned(), judged.rule.family, judged.finding.working));
            let parts = topics(&case);
            let parts = parts.into_iter().flat_map(|(topic, family, parts)| {
                parts.into_iter().map(move |part| (format!("{topic}: {}", part.title), family, part.sheet))
            });
            let mut lacking = Vec::new();
            for (title, family, sheet) in findings.chain(parts) {
                for symbol in unnamed(&sheet, family) {
                    lacking.push((format!("{title}, {symbol}: no meaning"), name.clone()));
                }
                for symbol in unsourced(&sheet, family) {
                    lacking.push((format!("{title}, {symbol}: from nowhere"), name.clone()));
                }
            }
            lacking
        })
        .collect();
    let mut by_symbol: BTreeMap<String, (usize, String)> = BTreeMap::new();
    for (lack, job) in lacking {
        by_symbol.entry(lack).or_insert((0, job)).0 += 1;
    }
    let told: Vec<String> =
        by_symbol.iter().map(|(lack, (jobs, job))| format!("{lack} ({jobs}, such as {job})")).collect();
    assert!(told.is_empty(), "{}", told.join("\n"));
}

/// On one topic's sheet a letter stands for one thing, whatever its value in this loading or that; what is numbered is counted
/// anew in every part.
#[test]
fn no_symbol_stands_for_two_things_on_one_sheet() {
    use rayon::prelude::*;
    use sternknee::report::meanings;
    let two_things = |sheets: &[&Sheet], family: Family, wanted: fn(&str) -> bool| -> Vec<String> {
        let mut by_symbol: BTreeMap<String, Vec<String>> = BTreeMap::new();
        let told = sheets.iter().flat_map(|sheet| meanings(sheet, family));
        for (symbol, meaning) in told.filter(|(symbol, _)| wanted(symbol)) {
            let meanings = by_symbol.entry(symbol).or_default();
            if !meanings.contains(&meaning) {
                meanings.push(meaning);
            }
        }
        let many = by_symbol.into_iter().filter(|(_, meanings)| meanings.len() > 1);
        many.map(|(symbol, meanings)| format!("{symbol}: {}", meanings.join(" | "))).collect()
    };
    fn numbered(symbol: &str) -> bool {
        symbol.ends_with(|last: char| last.is_ascii_digit())
    }
    let all: Vec<String> = jobs()
        .par_iter()
        .flat_map_iter(|(name, text)| {
            let rig = common::rig(text);
            let case = Case::new(&rig);
            let mut told = Vec::new();
            let mut note = |title: &str, faults: Vec<String>| {
                told.extend(faults.into_iter().map(|fault| format!("{title}, {fault} ({name})")));
            };
            for (topic, family, parts) in topics(&case) {
                let sheets: Vec<&Sheet> = parts.iter().map(|part| &part.sheet).collect();
                note(topic, two_things(&sheets, family, |symbol| !numbered(symbol)));
                for part in &parts {
                    note(&part.title, two_things(&[&part.sheet], family, numbered));
                }
            }
            for judged in rules::judge(&case) {
                note(judged.rule.id, two_things(&[&judged.finding.working], judged.rule.family, |_| true));
            }
            told
        })
        .collect();
    assert!(all.is_empty(), "{} sheets, such as\n{}", all.len(), all[..all.len().min(60)].join("\n"));
}
