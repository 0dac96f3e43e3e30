//! An option is nothing but a job that was written so.

use sternknee::case::Case;
use sternknee::options::{By, Found, Hang, Offer, SCREENS, Said, Tried, Work, search};
use sternknee::rules::{self, Family, Judged, Verdict};

use super::{demo, opened, with};
use crate::common::{self, CATALOG};

/// Every so-manieth of them, beginning with the first.
fn sample<T: Clone>(all: &[T], count: usize) -> Vec<T> {
    let step = (all.len() / count.max(1)).max(1);
    all.iter().step_by(step).take(count).cloned().collect()
}

/// What is judged of a demo: some that come through and some that do not.
fn sampled(found: &Found, through: usize, refused: usize) -> Vec<Tried> {
    let of = |wanted: bool| -> Vec<Tried> {
        found.tried.iter().filter(|one| one.refused.is_none() == wanted).cloned().collect()
    };
    sample(&of(true), through).into_iter().chain(sample(&of(false), refused)).collect()
}

/// A finding with all that is told of it.
fn told(said: &Said) -> String {
    format!("{:?}", (said.rule.id, said.verdict, &said.summary, said.found, said.limit, &said.remedy, &said.missing))
}

fn told_alone(judged: Judged) -> (&'static str, String) {
    (judged.rule.id, told(&Said::of(judged)))
}

/// How many options of a demo are held against themselves written as jobs, each judged without knowing of the others.
fn hold_against_jobs(name: &str, only: Option<&str>, through: usize, refused: usize) -> usize {
    let text = demo(name);
    let job = opened(&text);
    let yard = job.yard(&CATALOG);
    let hangs = Offer { only, ..Offer::default() }.hangs(&yard);
    let found = search(&yard, &sample(&hangs, 1500), &Work::PLAIN);
    let tried = sampled(&found, through, refused);
    for one in &tried {
        let rig = common::rig(&with(&text, &one.hang, &yard, &job));
        let alone: Vec<(&str, String)> = rules::judge(&Case::new(&rig)).into_iter().map(told_alone).collect();
        let what = one.hang.words();
        for said in &one.said {
            let found = alone.iter().find(|(id, _)| *id == said.rule.id).expect("every rule is judged");
            assert_eq!(told(said), found.1, "{name}: {what:?}");
        }
        let fails =
            alone.iter().any(|(id, told)| told.contains("Fail") && !found.aside.iter().any(|said| said.rule.id == *id));
        if one.refused.is_none() {
            assert_eq!(one.said.len(), alone.len(), "{name}: {what:?}");
            assert!(!fails, "{name}: {what:?} came through and fails");
        }
    }
    tried.len()
}

#[test]
fn two_hundred_options_of_three_demos_are_what_they_are_as_jobs_in_every_finding() {
    let held = hold_against_jobs("oyster_skiff", None, 20, 60)
        + hold_against_jobs("bay_runabout", None, 20, 40)
        + hold_against_jobs("tiller_skiff", None, 20, 40);
    assert!(held >= 150, "{held}");
    // Whatever is lacking of two hundred, the launch has: of her nothing comes through but what is left aside.
    let held = held + hold_against_jobs("harbour_launch", Some("four-stroke"), 10, 200 - held);
    assert!(held >= 200, "{held}");
}

#[test]
fn the_best_option_of_the_skiff_taken_into_the_job_fails_nothing() {
    let text = demo("oyster_skiff");
    let job = opened(&text);
    let yard = job.yard(&CATALOG);
    let hangs = Offer { only: Some("200 hp"), ..Offer::default() }.hangs(&yard);
    let found = search(&yard, &hangs, &Work::PLAIN);
    assert!(found.aside.is_empty());
    let ranked = found.ranked(&By::USUAL);
    let best = ranked.iter().find(|one| one.is_decided()).expect("something comes through");
    let taken = opened(&with(&text, &best.hang, &yard, &job));
    let judged = rules::judge(&taken.case());
    let fails: Vec<&str> =
        judged.iter().filter(|one| one.finding.verdict == Verdict::Fail).map(|one| one.rule.id).collect();
    assert!(fails.is_empty(), "{:?} fails {fails:?}", best.hang.words());
}

#[test]
fn every_family_stands_in_one_screen() {
    for rule in rules::ALL {
        let screens = SCREENS.iter().filter(|screen| screen.families.contains(&rule.family)).count();
        assert_eq!(screens, 1, "{}", rule.id);
    }
    assert_eq!(SCREENS[SCREENS.len() - 1].families, [Family::Strength], "what bends comes last");
}

#[test]
fn what_is_refused_says_by_which_check() {
    let text = demo("oyster_skiff");
    let job = opened(&text);
    let yard = job.yard(&CATALOG);
    let too_much: Vec<Hang> = Offer { only: Some("450 hp"), ..Offer::default() }.hangs(&yard);
    assert!(!too_much.is_empty());
    for one in search(&yard, &too_much, &Work::PLAIN).tried {
        assert_eq!(one.refused, Some(0));
        assert!(one.said.iter().any(|said| said.rule.id == "power/plate-limit"), "{:?}", one.hang.words());
    }
}
