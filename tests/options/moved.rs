//! The heaviest engine, the lowest bracket, the least lip.

use std::collections::BTreeSet;

use sternknee::options::{Needed, needed, questions};
use sternknee::rules::{self, Verdict};
use sternknee::written::Draught;

use super::{demo, opened};
use crate::common::CATALOG;

/// A job's answer to one question.
fn asked(text: &str, question: &str) -> Needed {
    let job = opened(text);
    let yard = job.yard(&CATALOG);
    let all = questions(&job.job, &job.rig);
    let moved = all.into_iter().find(|moved| moved.asked == question).expect(question);
    needed(&yard, moved).unwrap_or_else(|slips| panic!("{slips:?}"))
}

/// What fails of a job with one entry altered.
fn fails(text: &str, changes: &[(&str, String)]) -> BTreeSet<&'static str> {
    let text = changes.iter().fold(text.to_owned(), |text, (entry, value)| {
        Draught::new(&text).put(entry, value).unwrap_or_else(|error| panic!("{entry}: {error}"))
    });
    let judged = rules::judge(&opened(&text).case());
    judged.iter().filter(|one| one.finding.verdict == Verdict::Fail).map(|one| one.rule.id).collect()
}

#[test]
fn the_heaviest_engine_just_passes_and_one_heavier_by_its_tolerance_does_not() {
    let text = demo("oyster_skiff");
    let found = asked(&text, "the heaviest engine");
    let aside: BTreeSet<&str> = found.aside.iter().map(|said| said.rule.id).collect();
    let end = found.end.expect("some weight passes");
    let weighed = |kg: f64| -> Vec<&'static str> {
        let failing = fails(&text, &[("engines_on[0].weighed", format!("\"{kg} kg\""))]);
        failing.into_iter().filter(|id| !aside.contains(id)).collect()
    };
    assert!(weighed(end - 1e-6).is_empty(), "{:?}", weighed(end - 1e-6));
    let beyond = weighed(end + found.moved.within);
    assert!(!beyond.is_empty());
    let stops: Vec<&str> = found.stops.iter().map(|said| said.rule.id).collect();
    assert!(stops.iter().any(|id| beyond.contains(id)), "{stops:?} {beyond:?}");
}

#[test]
fn the_skiffs_bracket_as_low_as_it_may_be_is_what_a_job_says_of_it() {
    let text = demo("oyster_skiff");
    let found = asked(&text, "the lowest bracket");
    let aside: BTreeSet<&str> = found.aside.iter().map(|said| said.rule.id).collect();
    let Some(end) = found.end else { panic!("no height passes: {aside:?}") };
    let moved_up = end - found.moved.now;
    let bottom = 12.0 * 0.0254 + moved_up;
    let changes = [
        ("engines_on[0].drop", format!("\"{} m\"", -end)),
        ("engines_on[0].bracket.bottom", format!("\"{bottom} m\"")),
    ];
    let failing: Vec<&str> = fails(&text, &changes).into_iter().filter(|id| !aside.contains(id)).collect();
    assert!(failing.is_empty(), "{failing:?}");
}

#[test]
fn a_question_that_the_job_cannot_answer_is_not_asked() {
    let job = opened("(title: \"nothing yet\")");
    assert!(questions(&job.job, &job.rig).is_empty());
}
