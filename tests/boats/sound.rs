//! What every sound boat is owed.

use sternknee::rules::{self, Verdict};

use super::corpus::LEVELS;
use super::verdicts::{Answer, Judged, SOUND, UNSOUND, answers};

/// Of so many sound boats one may have a warning about strength: a limit of practice is not met by all that last.
const ONE_IN: usize = 10;
/// Two thirds of the sound boats, told in full, are clean or warn once.
const CLEAN: (usize, usize) = (2, 3);
const FEWEST: usize = 24;

#[test]
fn every_boat_reads_at_every_level() {
    let faults: Vec<&String> = SOUND
        .iter()
        .chain(UNSOUND.iter())
        .flat_map(|(_, answers)| answers.iter().filter_map(|a| a.as_ref().err()))
        .collect();
    assert!(faults.is_empty(), "{faults:#?}");
    assert!(SOUND.len() >= FEWEST && UNSOUND.len() >= FEWEST);
}

#[test]
fn no_sound_boat_fails_at_any_level() {
    let failing: Vec<String> = answers(&SOUND)
        .filter(|(_, answer)| answer.of(Verdict::Fail).next().is_some())
        .map(|(boat, answer)| format!("{} L{}: {:?}", boat.name, answer.level, answer.ids(Verdict::Fail)))
        .collect();
    assert!(failing.is_empty(), "{failing:#?}");
}

#[test]
fn at_most_one_in_ten_sound_boats_is_warned_of_strength() {
    for level in [4, 5] {
        let warned: Vec<String> = at(level)
            .map(|(judged, answer)| (judged, strength(answer)))
            .filter(|(_, warns)| !warns.is_empty())
            .map(|((boat, _), warns)| format!("{}: {warns:?}", boat.name))
            .collect();
        assert!(warned.len() * ONE_IN <= SOUND.len(), "level {level}: {warned:#?}");
    }
}

#[test]
fn two_thirds_of_the_sound_boats_told_in_full_are_clean_or_warn_once() {
    let all: Vec<(&String, Vec<&str>)> =
        at(*LEVELS.end()).map(|((boat, _), answer)| (&boat.name, answer.ids(Verdict::Warn))).collect();
    let (more, clean): (Vec<_>, Vec<_>) = all.into_iter().partition(|(_, warns)| warns.len() > 1);
    assert!(clean.len() * CLEAN.1 >= SOUND.len() * CLEAN.0, "only {} are, not these: {more:#?}", clean.len());
}

#[test]
fn every_rule_passes_some_sound_boat() {
    let passes =
        |id: &str| answers(&SOUND).any(|(_, answer)| answer.of(Verdict::Pass).any(|(passed, _)| *passed == id));
    let never: Vec<&str> = rules::ALL.iter().map(|rule| rule.id).filter(|id| !passes(id)).collect();
    assert!(never.is_empty(), "{never:#?}");
}

/// The sound boats at this level.
fn at(level: u8) -> impl Iterator<Item = (&'static Judged, &'static Answer)> {
    SOUND.iter().filter_map(move |judged| {
        let answer = judged.1.iter().flatten().find(|answer| answer.level == level)?;
        Some((judged, answer))
    })
}

fn strength(answer: &Answer) -> Vec<&'static str> {
    answer.ids(Verdict::Warn).into_iter().filter(|id| id.starts_with("strength/")).collect()
}
