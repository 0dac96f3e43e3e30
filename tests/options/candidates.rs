//! Candidates side by side.

use sternknee::options::compare;
use sternknee::quantity::Units;
use sternknee::report::{self, Comparison, Stamp};
use sternknee::rules;
use sternknee::written::Draught;

use super::{demo, opened};
use crate::common::CATALOG;

const CANDIDATES: &str = "[
    (name: \"one of 200 hp\", engines_on: [(class: \"four-stroke 200 hp inline-4\", shaft: \"25 in\", holes_up: 1)], goes_on: []),
    (name: \"<b>two</b> of 90 hp\", top_speed: \"33 mph\", engines_on: [(class: \"four-stroke 90 hp inline-4\", shaft: \"20 in\",
        at: [port(\"14 in\"), starboard(\"14 in\")], propellers: [left, right], bracket: (class: \"box bracket 30 in, twin\"))]),
]";

fn with_candidates() -> String {
    Draught::new(&demo("oyster_skiff")).put("candidates", CANDIDATES).expect("there is room")
}

#[test]
fn each_candidate_is_judged_as_a_job_that_holds_its_engines() {
    let text = with_candidates();
    let job = opened(&text);
    let all = compare(&job.yard(&CATALOG)).expect("every name is known");
    assert_eq!(
        all.iter().map(|one| one.name.as_str()).collect::<Vec<_>>(),
        ["as the job has it", "one of 200 hp", "<b>two</b> of 90 hp"]
    );
    let own = rules::judge(&job.case());
    for (said, judged) in all[0].said.iter().zip(&own) {
        assert_eq!((said.rule.id, &said.summary), (judged.rule.id, &judged.finding.summary));
    }
    let single = Draught::new(&demo("oyster_skiff"))
        .put("engines_on", "[(class: \"four-stroke 200 hp inline-4\", shaft: \"25 in\", holes_up: 1)]")
        .and_then(|text| Draught::new(&text).put("goes_on", "[]"))
        .expect("there is room");
    let single = opened(&single);
    for (said, judged) in all[1].said.iter().zip(&rules::judge(&single.case())) {
        assert_eq!((said.rule.id, &said.summary), (judged.rule.id, &judged.finding.summary));
    }
}

#[test]
fn candidates_change_nothing_of_what_a_check_says() {
    let (with, without) = (opened(&with_candidates()), opened(&demo("oyster_skiff")));
    for (a, b) in rules::judge(&with.case()).iter().zip(&rules::judge(&without.case())) {
        assert_eq!(a.finding, b.finding, "{}", a.rule.id);
    }
}

#[test]
fn they_are_told_in_text_data_and_a_page_that_holds_a_drawing_of_each() {
    let text = with_candidates();
    let job = opened(&text);
    let yard = job.yard(&CATALOG);
    let all = compare(&yard).expect("every name is known");
    let comparison = Comparison { yard: &yard, all: &all, units: Units::Us };
    let told = report::compare_text(&comparison);
    assert!(told.lines().all(|line| line.chars().count() <= 80), "{told}");
    assert!(told.contains("B one of 200 hp") && told.contains("strength"), "{told}");
    let data = report::compare_json(&comparison);
    assert_eq!(data["candidates"].as_array().map(Vec::len), Some(3));
    let page = report::compare_page(&comparison, &Stamp::default());
    assert_eq!(page.matches("data-drawing=\"candidate-").count(), 6, "wide and narrow of each");
    assert!(page.contains("&lt;b&gt;two&lt;/b&gt;") && !page.contains("<b>two</b>"));
}

#[test]
fn a_fault_in_a_candidate_has_its_place() {
    for (candidates, path, what) in [
        ("[(engines_on: [(class: \"x\")])]", "candidates[0]", "without a name"),
        ("[(name: \"a\")]", "candidates[0]", "without engines"),
        ("[(name: \"a\", engines_on: [()])]", "candidates[0].engines_on[0]", "neither named nor described"),
        (
            "[(name: \"a\", engines_on: [(class: \"x\", shaft: \"5 ft\")])]",
            "candidates[0].engines_on[0].shaft",
            "shaft",
        ),
    ] {
        let text = format!("(candidates: {candidates})");
        let draft = sternknee::job::draft("job.ron", &text);
        assert!(
            draft.faults.iter().any(|fault| fault.path == path && fault.message.contains(what)),
            "{candidates}: {:?}",
            draft.faults
        );
    }
    let job = opened("(candidates: [(name: \"a\", engines_on: [(class: \"four-strike\")])])");
    let slips = compare(&job.yard(&CATALOG)).err().expect("no such class");
    assert_eq!(slips[0].path, "candidates[0].engines_on[0].class");
}
