//! What people read holds no code words: no id of a rule, no name of a field but where somebody is told to write it.

use sternknee::case::Case;
use sternknee::front_door::open;
use sternknee::options::{By, Offer, Work, compare, nearly, needed, questions, search};
use sternknee::quantity::{Piece, Text, Units};
use sternknee::report::{self, Comparison, Options, Report, WhatIsNeeded};
use sternknee::rules::{self, Family};
use sternknee::working::{Line, Part};
use sternknee::written::Draught;

use super::common::{self, CATALOG};
use super::followed::jobs;
use super::{demo, stamp};

/// What stands between quotation marks is to be written so, or was.
fn unquoted(words: &str) -> String {
    let mut out = String::new();
    let mut until: Option<char> = None;
    for c in words.chars() {
        match (until, c) {
            (Some(end), c) if c == end => until = None,
            (Some(_), _) => {}
            (None, '`') => until = Some('`'),
            (None, '"') => until = Some('"'),
            (None, '\u{201c}') => until = Some('\u{201d}'),
            (None, c) => out.push(c),
        }
    }
    out
}

/// Words that only a program knows.
fn code_words(words: &str) -> Vec<String> {
    let plain = unquoted(words);
    let is_of_word = |c: char| c.is_alphanumeric() || matches!(c, '_' | '/' | '-' | '.');
    let found = plain.split(|c: char| !is_of_word(c)).map(|word| word.trim_matches(['.', '-', '/']));
    let is_snake = |word: &str| {
        let parts: Vec<&str> = word.split('_').collect();
        parts.len() > 1 && parts.iter().any(|part| part.chars().any(char::is_lowercase)) && !word.ends_with(".ron")
    };
    found.filter(|word| rules::find(word).is_some() || is_snake(word)).map(str::to_owned).collect()
}

#[track_caller]
fn hold(what: &str, words: &str) {
    let found = code_words(words);
    assert!(found.is_empty(), "{what}: {found:?}");
}

/// What a page shows: its text, without what is to be written.
fn shown(page: &str) -> String {
    use scraper::{Html, Node};
    let document = Html::parse_document(page);
    let aside = ["style", "script", "code", "pre", "title", "annotation"];
    let texts = document.tree.nodes().filter_map(|node| match node.value() {
        Node::Text(text) => {
            let is_aside =
                node.ancestors().any(|up| up.value().as_element().is_some_and(|e| aside.contains(&e.name())));
            (!is_aside).then(|| text.to_string())
        }
        _ => None,
    });
    texts.collect::<Vec<_>>().join(" ")
}

#[test]
fn reports_pages_tapes_and_working_hold_no_code_words() {
    use rayon::prelude::*;
    jobs().par_iter().for_each(|(name, text)| {
        let rig = common::rig(text);
        let case = Case::new(&rig);
        let judged = rules::judge(&case);
        for (units, explain) in [(Units::Us, true), (Units::Si, false)] {
            let report = Report { case: &case, judged: &judged, units, explain };
            hold(&format!("{name}, report"), &report::text(&report));
            hold(&format!("{name}, whole report"), &report::text_of_all(&report));
            hold(&format!("{name}, brief"), &report::brief(&report, true));
            let page = shown(&report::page(&report, &stamp(), &[]));
            hold(&format!("{name}, page"), &page);
            // On a page names stand in quotation marks.
            let stroke = page.find('`').map(|at| page[at..].chars().take(60).collect::<String>());
            assert_eq!(stroke, None, "{name}, page");
        }
        hold(&format!("{name}, tape"), &report::measuring_list(rig.title(), &judged, Units::Us));
        hold(&format!("{name}, sheet"), &shown(&report::measuring_sheet(rig.title(), &judged)));
        let topics: [(&str, Vec<Part>); 7] = [
            ("weights", case.weights()),
            ("float", case.float_parts()),
            ("strength", case.strength_parts()),
            ("running", case.running_parts()),
            ("trial", case.trial_parts()),
            ("worth", case.worth_parts()),
            ("electrical", rules::parts(&case, Family::Electrical)),
        ];
        for (topic, parts) in &topics {
            hold(&format!("{name}, work {topic}"), &report::work_text(rig.title(), topic, parts, Units::Us));
            let page = report::work_page(rig.title(), topic, parts, &[], Units::Us, &stamp());
            hold(&format!("{name}, work {topic}, page"), &shown(&page));
        }
    });
}

/// Which engines would do: some tried on every third boat.
#[test]
fn options_hold_no_code_words() {
    use rayon::prelude::*;
    const EVERY: usize = 3;
    const TRIED: usize = 6;
    jobs().par_iter().step_by(EVERY).for_each(|(name, text)| {
        let opened = open("job.ron", text, &CATALOG, |name| Err(format!("{name} is not there")));
        let opened = opened.unwrap_or_else(|faults| panic!("{name}: {faults}"));
        let yard = opened.yard(&CATALOG);
        let hangs = Offer::default().hangs(&yard);
        let some: Vec<_> = hangs.iter().step_by((hangs.len() / TRIED).max(1)).cloned().collect();
        let found = search(&yard, &some, &Work::PLAIN);
        let near = nearly(&yard, &found, &Work::PLAIN);
        let order = [By::Warnings];
        let entries: Vec<(String, String)> =
            found.ranked(&order).first().map(|one| one.hang.entries(&yard, &opened.page)).unwrap_or_default();
        let (currency, units, most) = ("USD", Units::Us, TRIED);
        let options =
            Options { yard: &yard, found: &found, near: &near, order: &order, currency, units, most, entries: &[] };
        hold(&format!("{name}, options"), &report::options_text(&options));
        let options = Options { entries: &entries, ..options };
        hold(&format!("{name}, options, page"), &shown(&report::options_page(&options, &stamp())));
    });
}

#[test]
fn comparisons_and_what_is_needed_hold_no_code_words() {
    const CANDIDATES: &str = "[
        (name: \"one of 200 hp\", engines_on: [(class: \"four-stroke 200 hp inline-4\", shaft: \"25 in\", holes_up: 1)], goes_on: []),
        (name: \"one of 30 hp\", engines_on: [(class: \"four-stroke 30 hp inline-3\", shaft: \"20 in\")], goes_on: []),
    ]";
    for name in ["oyster_skiff", "bay_runabout", "tiller_skiff"] {
        let text = Draught::new(&demo(name)).put("candidates", CANDIDATES).expect("there is room");
        let opened = open("job.ron", &text, &CATALOG, |name| Err(format!("{name} is not there")));
        let opened = opened.unwrap_or_else(|faults| panic!("{name}: {faults}"));
        let yard = opened.yard(&CATALOG);
        let all = compare(&yard).expect("every name is known");
        let comparison = Comparison { yard: &yard, all: &all, units: Units::Us };
        hold(&format!("{name}, compare"), &report::compare_text(&comparison));
        hold(&format!("{name}, compare, page"), &shown(&report::compare_page(&comparison, &stamp())));
    }
    for name in ["tiller_skiff", "creek_boat"] {
        let opened = open("job.ron", &demo(name), &CATALOG, |name| Err(format!("{name} is not there")));
        let opened = opened.unwrap_or_else(|faults| panic!("{name}: {faults}"));
        let yard = opened.yard(&CATALOG);
        let moved = questions(&opened.job, &opened.rig).into_iter();
        let all: Vec<_> = moved.map(|moved| needed(&yard, moved).expect("every name is known")).collect();
        let what = WhatIsNeeded { title: name, made_up: true, all: &all, units: Units::Us };
        hold(&format!("{name}, needed"), &report::needed_text(&what).replace(name, ""));
    }
}

/// Whether a sentence tells one length in sixteenths and another in hundredths of an inch.
fn mixes_digits(text: &Text) -> bool {
    let told: Vec<String> = text
        .pieces()
        .iter()
        .filter_map(|piece| match piece {
            Piece::Measure(measure) => Some(measure.show(Units::Us)),
            Piece::Words(_) => None,
        })
        .collect();
    let sixteenths = told.iter().any(|one| one.ends_with("/16 in"));
    let hundredths = told.iter().any(|one| one.ends_with(" in") && one.contains('.'));
    sixteenths && hundredths
}

#[test]
fn no_sentence_has_sixteenths_beside_hundredths() {
    use rayon::prelude::*;
    let mixed = |(name, text): &(String, String)| -> Vec<String> {
        let rig = common::rig(text);
        let case = Case::new(&rig);
        let mut mixed = Vec::new();
        for judged in rules::judge(&case) {
            let finding = &judged.finding;
            let remarks = finding.working.lines().iter().filter_map(|line| match line {
                Line::Remark(text) => Some(text),
                Line::Step { .. } => None,
            });
            for said in std::iter::once(&finding.summary).chain(&finding.remedy).chain(remarks) {
                if mixes_digits(said) {
                    mixed.push(format!("{name}, {}: {}", judged.rule.id, said.show(Units::Us)));
                }
            }
        }
        mixed
    };
    let mixed: Vec<String> = jobs().par_iter().flat_map_iter(mixed).collect();
    assert!(mixed.is_empty(), "{}", mixed.join("\n"));
}

#[test]
fn code_words_are_known_when_they_are_seen() {
    assert_eq!(code_words("see height/shaft-match, and tilt_stop."), ["height/shaft-match", "tilt_stop"]);
    assert!(code_words("glass/polyester, and/or `tilt_stop`, \u{201c}rim_above\u{201d}").is_empty());
}
