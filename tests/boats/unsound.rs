//! What every unsound boat is owed: that her fault is found as soon as it is told, and stays found.
//!
//! The second line of each says from which level on, how gravely, and by which families of rules:
//! `// found from: L2, as fail, by height or fit`. Where the fault is told more plainly later on, a second part
//! follows behind a semicolon. The third line names the sound boat that she is like but for the fault: what is
//! said of that one too is no find.

use sternknee::rules::{Finding, Verdict};

use super::corpus::{Boat, LEVELS};
use super::verdicts::{Answer, SOUND, UNSOUND, answers};

/// From a level on, a verdict at least this grave, by a rule of these families.
#[derive(Debug, PartialEq)]
struct Owed {
    from: u8,
    verdict: Verdict,
    by: Vec<String>,
}

impl Owed {
    /// Whether it is among what is said of a boat, and not said as well of her sound like.
    fn is_met(&self, answer: &Answer, like: &Answer) -> bool {
        answer.findings.iter().zip(&like.findings).any(|((id, finding), (_, sound))| {
            let family = id.split('/').next().unwrap_or_default();
            finding.verdict <= self.verdict
                && self.by.iter().any(|by| by == family || by == id)
                && is_worse(finding, sound)
        })
    }
}

/// A graver verdict, or less room to the limit.
fn is_worse(one: &Finding, other: &Finding) -> bool {
    let room = |finding: &Finding| finding.margin().map_or(f64::INFINITY, |margin| margin.si);
    one.verdict < other.verdict || one.verdict == other.verdict && room(one) < room(other)
}

/// What is said at this level of the sound boat that this one is like.
fn like(boat: &Boat, level: u8) -> Option<&'static Answer> {
    let name = boat.line("// but for that like: ")?;
    let (_, answers) = SOUND.iter().find(|(sound, _)| sound.name == name)?;
    answers.iter().flatten().find(|answer| answer.level == level)
}

/// What the boat's second line asks, part by part.
fn owed(boat: &Boat) -> Vec<Owed> {
    let line = boat.line("// found from: ").unwrap_or_else(|| panic!("{}: no line says what must find her", boat.name));
    let parts: Option<Vec<Owed>> = line.split("; ").map(part).collect();
    parts.unwrap_or_else(|| panic!("{}: `{line}` is not `L2, as fail, by height or fit`", boat.name))
}

fn part(text: &str) -> Option<Owed> {
    let mut words = text.split(", ");
    let from = words.next()?.strip_prefix('L')?.parse().ok()?;
    let verdict = match words.next()? {
        "as fail" => Verdict::Fail,
        "as warn" => Verdict::Warn,
        _ => return None,
    };
    let by = words.next()?.strip_prefix("by ")?.split(" or ").map(str::to_owned).collect();
    (LEVELS.contains(&from) && words.next().is_none()).then_some(Owed { from, verdict, by })
}

#[test]
fn every_unsound_boat_says_what_is_wrong_with_her() {
    for (boat, _) in UNSOUND.iter() {
        assert!(boat.line("// BAD: ").is_some_and(|what| !what.is_empty()), "{}", boat.name);
        assert!(!owed(boat).is_empty());
        assert!(LEVELS.clone().all(|level| like(boat, level).is_some()), "{} is like no sound boat", boat.name);
    }
}

#[test]
fn every_fault_is_found_from_the_level_on_at_which_it_is_told() {
    let missed: Vec<String> = answers(&UNSOUND)
        .flat_map(|(boat, answer)| owed(boat).into_iter().map(move |owed| (boat, answer, owed)))
        .filter(|(boat, answer, owed)| {
            answer.level >= owed.from && like(boat, answer.level).is_none_or(|like| !owed.is_met(answer, like))
        })
        .map(|(boat, answer, owed)| {
            let word = owed.verdict.word();
            format!("{} L{}: no {word} by {}", boat.name, answer.level, owed.by.join(" or "))
        })
        .collect();
    assert!(missed.is_empty(), "{missed:#?}");
}
