//! The walk over all rules: each explains itself and names its source.

use std::collections::BTreeSet;

use sternknee::rules::rule::PARTS;
use sternknee::rules::{ALL, Verdict};

use crate::common::verdict;

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

/// With nothing measured a rule waits, or says why it has nothing to judge; it never lets pass.
#[test]
fn unmeasured_is_never_pass() {
    for rule in ALL {
        let verdict = verdict(rule.id, "()");
        let waits = matches!(verdict, Verdict::Unmeasured | Verdict::NotApplicable);
        assert!(waits, "{}: {verdict:?}", rule.id);
    }
}
