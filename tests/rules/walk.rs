//! The walk over all rules: each explains itself, names its source and has its cases.
//!
//! Cases are small jobs in `cases/<family>-<name>/`. The first part of a file's name is the verdict that
//! the rule must give: `pass.ron`, `warn.ron`, `fail.ron`, `unmeasured.ron`, `not-applicable.ron`; a word
//! behind it tells several apart (`fail-count.ron`). The first line says why.

use std::collections::{BTreeMap, BTreeSet};
use std::path::PathBuf;

use sternknee::rules::rule::PARTS;
use sternknee::rules::{ALL, Verdict};

use crate::common::{finding, verdict};

/// Every rule's cases by folder: file name and text.
fn cases() -> BTreeMap<String, BTreeMap<String, String>> {
    let root = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/rules/cases");
    let names = |folder: &PathBuf| -> Vec<PathBuf> {
        let entries = std::fs::read_dir(folder).unwrap();
        entries.map(|entry| entry.unwrap().path()).collect()
    };
    let name = |path: &PathBuf| path.file_stem().unwrap().to_str().unwrap().to_owned();
    names(&root)
        .iter()
        .map(|folder| {
            let files = names(folder);
            let texts = files.iter().map(|file| (name(file), std::fs::read_to_string(file).unwrap()));
            (name(folder), texts.collect())
        })
        .collect()
}

/// The verdict that a case's file name promises.
fn promised(name: &str) -> Verdict {
    let of = |verdict: &&Verdict| name.starts_with(&verdict.word().replace(' ', "-"));
    let found = Verdict::ALL.iter().find(of);
    *found.unwrap_or_else(|| panic!("`{name}` begins with no verdict"))
}

#[test]
fn ids_are_unique_and_begin_with_their_family() {
    let ids: BTreeSet<&str> = ALL.iter().map(|rule| rule.id).collect();
    assert_eq!(ids.len(), ALL.len());
    for rule in ALL {
        let (family, name) = rule.id.split_once('/').unwrap();
        assert_eq!(family, rule.family.word(), "{}", rule.id);
        let plain = |c: char| c.is_ascii_lowercase() || c == '-';
        assert!(!name.is_empty() && name.chars().all(plain), "{}", rule.id);
    }
}

#[test]
fn every_rule_says_what_why_limit_source_and_what_to_do_in_that_order() {
    for rule in ALL {
        assert!(!rule.summary().starts_with("**"), "{}", rule.id);
        let text = rule.doc.join("\n");
        let mut last = 0;
        for part in PARTS {
            let words = rule.part(part);
            let words = words.unwrap_or_else(|| panic!("{} lacks {part}", rule.id));
            assert!(words.split_whitespace().count() > 1, "{} {part}", rule.id);
            let at = text.find(&format!("**{part}.**")).unwrap();
            assert!(at > last, "{}: {part} is out of order", rule.id);
            last = at;
        }
    }
}

#[test]
fn every_rule_names_its_sources() {
    for rule in ALL {
        let sources = rule.sources();
        assert!(!sources.is_empty(), "{}", rule.id);
        for source in sources {
            assert!(source.len() > 5, "{}: {source}", rule.id);
        }
    }
}

#[test]
fn every_rule_has_a_passing_a_worse_and_an_unmeasured_case() {
    let cases = cases();
    for rule in ALL {
        let folder = rule.id.replace('/', "-");
        let none = BTreeMap::new();
        let own = cases.get(&folder).unwrap_or(&none);
        let has = |wanted: &[Verdict]| own.keys().any(|name| wanted.contains(&promised(name)));
        for (what, wanted) in [
            ("passing", &[Verdict::Pass][..]),
            ("failing or warning", &[Verdict::Fail, Verdict::Warn][..]),
            ("unmeasured", &[Verdict::Unmeasured][..]),
        ] {
            assert!(has(wanted), "{} lacks a {what} case in tests/rules/cases/{folder}/", rule.id);
        }
    }
}

#[test]
fn every_case_gets_the_verdict_that_its_name_promises() {
    for (folder, files) in cases() {
        let id = folder.replacen('-', "/", 1);
        for (name, text) in files {
            assert_eq!(verdict(&id, &text), promised(&name), "{id} {name}");
            assert!(text.starts_with("// "), "{id} {name} does not say why");
        }
    }
}

/// What a finding owes its reader.
#[test]
fn a_finding_says_what_is_missing_or_what_to_do() {
    for (folder, files) in cases() {
        let id = folder.replacen('-', "/", 1);
        for (name, text) in files {
            let finding = finding(&id, &text);
            match finding.verdict {
                Verdict::Unmeasured => assert!(!finding.missing.is_empty(), "{id} {name}"),
                Verdict::Fail | Verdict::Warn => {
                    assert!(finding.remedy.is_some(), "{id} {name} has no remedy");
                }
                Verdict::Pass | Verdict::NotApplicable => {}
            }
        }
    }
}

/// With nothing measured a rule waits, or says why it has nothing to judge; it never lets pass.
#[test]
fn unmeasured_is_never_pass() {
    for rule in ALL {
        let verdict = verdict(rule.id, "()");
        let waits = matches!(verdict, Verdict::Unmeasured | Verdict::NotApplicable);
        assert!(waits, "{}: {verdict:?}", rule.id);
    }
}
