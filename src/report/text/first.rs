//! The first screen: may they go on, what stops it, what to do, what to measure next and what that decides.

use super::layout::{bold, fill, rule, wrap};
use super::{counts, invented};
use crate::job::Sitting;
use crate::report::causes::{Cause, causes};
use crate::report::plain::{first_sentence, name};
use crate::report::{Report, counted, doubt, waiting};
use crate::rules::{Family, Judged, Verdict};

/// Lines of a common terminal: the first screen is no longer.
const SCREEN: usize = 24;
/// Names told of several findings; the others are counted.
const NAMED: usize = 3;
/// Readings named to be taken next.
const READINGS: usize = 2;

/// The first screen, within [`SCREEN`] lines.
pub(super) fn screen(report: &Report) -> String {
    let rig = report.case.rig;
    let mut out = wrap(rig.title(), "");
    out.push_str(&format!("{}{}\n{}\n", rig.job.sitting.words(), invented(report), rule()));
    out.push_str(&bold(&wrap(&answer(report), "")));
    if rig.job.sitting == Sitting::Study {
        return out;
    }
    let next = measure_next(report);
    let room = SCREEN.saturating_sub(out.lines().count() + next.lines().count());
    out.push_str(&stops(report, room));
    out + &next
}

/// The answer with its counts; of a study, what it answers.
fn answer(report: &Report) -> String {
    match report.case.rig.job.sitting {
        Sitting::Study => report.headline(),
        _ => format!("{} {}", report.answer(), counts(report)),
    }
}

/// The causes that fail, or where none does those that warn, each with what to do: as many as there is room for.
fn stops(report: &Report, room: usize) -> String {
    let (title, all) = match (causes(report, Verdict::Fail), causes(report, Verdict::Warn)) {
        (fails, _) if !fails.is_empty() => ("What stops it, in the order to settle it", fails),
        (_, warns) if !warns.is_empty() => ("What to mind", warns),
        _ => return String::new(),
    };
    let fails = report.count(Verdict::Fail) > 0;
    let told: Vec<String> = all.iter().enumerate().map(|(at, cause)| entry(at + 1, cause, report)).collect();
    for kept in (1..=told.len()).rev() {
        let mut out = format!("\n{}\n", bold(title));
        out.push_str(&told[..kept].concat());
        if kept < told.len() {
            let rest: Vec<&str> = all[kept..].iter().map(|cause| cause.title).collect();
            out.push_str(&wrap(&format!("And, told below: {}.", rest.join("; ")), "     "));
        }
        if fails && report.count(Verdict::Warn) > 0 {
            let warns = counted(report.count(Verdict::Warn), "check warns", "checks warn");
            out.push_str(&format!("  To mind besides, told below: {warns}.\n"));
        }
        if kept == 1 || out.lines().count() <= room {
            return out;
        }
    }
    String::new()
}

fn entry(number: usize, cause: &Cause, report: &Report) -> String {
    let finding = &cause.first.finding;
    let mut words = finding.summary.show(report.units);
    words = format!("{}. {}", cause.title, first_sentence(&words));
    if !cause.with.is_empty() {
        words.push_str(&format!(" So also: {}.", some(&cause.with, Some(cause.first.rule.family))));
    }
    let mut out = fill(&words, &format!("  {number}. "), "     ");
    if let Some(remedy) = &finding.remedy {
        out.push_str(&fill(first_sentence(&remedy.show(report.units)), "     Do: ", "     "));
    }
    out
}

/// The first names, and how many more; those of another family than this with its word.
fn some(judged: &[&Judged], at_home: Option<Family>) -> String {
    let called = |judged: &&Judged| match at_home {
        Some(family) if family != judged.rule.family => format!("{} {}", judged.rule.family.word(), name(judged.rule)),
        _ => name(judged.rule),
    };
    let names: Vec<String> = judged.iter().take(NAMED).map(called).collect();
    match judged.len().saturating_sub(NAMED) {
        0 => names.join(", "),
        more => format!("{} and {more} more", names.join(", ")),
    }
}

/// What to measure next, and what it decides; where nothing is missing, what to take again.
fn measure_next(report: &Report) -> String {
    let missing = waiting(report.judged);
    let again: Vec<String> = doubt::next(report).iter().take(READINGS).map(|text| text.show(report.units)).collect();
    if missing.is_empty() && again.is_empty() {
        return String::new();
    }
    let mut out = format!("\n{}\n", bold("Measure next"));
    for entry in missing.iter().take(READINGS) {
        let decides: Vec<&Judged> =
            report.judged.iter().filter(|judged| entry.rules.contains(&judged.rule.id)).collect();
        out.push_str(&fill(&format!("{}: decides {}", entry.missing.name(), some(&decides, None)), "  - ", "    "));
    }
    match missing.len().saturating_sub(READINGS) {
        0 => {}
        more => out.push_str(&wrap(&format!("and {more} more; `sternknee tape` prints how to take each."), "    ")),
    }
    for line in again.iter().take(READINGS.saturating_sub(missing.len())) {
        out.push_str(&fill(line, "  - ", "    "));
    }
    out
}
