//! Every remedy that is given to a demo or a boat of the corpus, taken at its word.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;
use std::sync::LazyLock;

use sternknee::quantity::Units;
use sternknee::rules::mend::{Change, Mend};
use sternknee::rules::{Finding, Verdict};

use super::common::mended::{Became, changed, groups, half_is_enough, judged, taken, wants};
use super::corpus::LEVELS;
use super::verdicts::{SOUND, UNSOUND, answers, side_by_side};

/// A job, and what is said of it.
struct Asked {
    name: String,
    text: String,
    findings: Vec<(&'static str, Finding)>,
}

/// The demos, and every boat at every level.
static ALL: LazyLock<Vec<Asked>> = LazyLock::new(|| {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("catalogs/jobs");
    let mut demos: Vec<_> =
        std::fs::read_dir(folder).expect("the demos").map(|file| file.expect("a file").path()).collect();
    demos.sort();
    let mut asked: Vec<Asked> = side_by_side(demos.len(), |i| {
        let text = std::fs::read_to_string(&demos[i]).expect("a demo");
        let findings = judged(&text).expect("a sound demo");
        Asked { name: demos[i].file_stem().expect("a name").to_string_lossy().into_owned(), text, findings }
    });
    asked.extend(answers(&SOUND).chain(answers(&UNSOUND)).map(|(boat, answer)| Asked {
        name: format!("{} L{}", boat.name, answer.level),
        text: boat.at(answer.level),
        findings: answer.findings.clone(),
    }));
    asked
});

#[test]
fn every_remedy_makes_its_finding_pass() {
    let all = &*ALL;
    let ways: Vec<(&Asked, &'static str, &Finding, &Mend)> = all
        .iter()
        .flat_map(|asked| asked.findings.iter().map(move |(id, finding)| (asked, *id, finding)))
        .filter(|(_, _, finding)| wants(finding))
        .flat_map(|(asked, id, finding)| finding.mends.iter().map(move |mend| (asked, id, finding, mend)))
        .collect();
    let became = side_by_side(ways.len(), |i| {
        let (asked, id, _, mend) = ways[i];
        taken(id, &asked.text, mend, &asked.findings)
    });
    let mut counts: BTreeMap<String, usize> = BTreeMap::new();
    let mut no_change: BTreeMap<(&str, String), usize> = BTreeMap::new();
    let mut failed = Vec::new();
    for ((asked, id, finding, _), became) in ways.iter().zip(&became) {
        let words = finding.remedy.as_ref().map_or(String::new(), |words| words.show(Units::Us));
        let kind = match became {
            Became::Mended => "mended".to_owned(),
            Became::Gone => "gone with what was wrong".to_owned(),
            Became::Waits => "no fault any more, but what is judged then waits for a reading".to_owned(),
            Became::NoChange(why) => {
                *no_change.entry((id, format!("{why}: {words}"))).or_default() += 1;
                format!("no change of the job: {why}")
            }
            Became::Failed(why) => {
                failed.push(format!("{} {id}: {words}\n    {why}", asked.name));
                "failed".to_owned()
            }
        };
        *counts.entry(kind).or_default() += 1;
    }
    println!("{} ways of remedies: {counts:#?}", ways.len());
    let words: BTreeSet<(&str, String)> =
        ways.iter().filter_map(|(_, id, finding, _)| Some((*id, finding.remedy.as_ref()?.show(Units::Us)))).collect();
    for (id, words) in &words {
        println!("told: {id}: {words}");
    }
    for ((id, why), count) in &no_change {
        println!("no change, {count} times: {id}: {why}");
    }
    assert!(failed.is_empty(), "{}:\n{}", failed.len(), failed.join("\n"));
}

/// Rules whose remedy goes farther than to the limit, and says so: to the middle of what is usual, and the whole way back.
const GOES_FARTHER: [&str; 2] = ["trailer/coupling", "stern/trim-change"];

/// Nobody builds, cuts or carries twice what is enough; one remedy may be told for several findings.
#[test]
fn no_remedy_asks_for_twice_what_is_enough() {
    let ways: Vec<(&Asked, &'static str, &Finding, &Mend)> = ALL
        .iter()
        .flat_map(|asked| asked.findings.iter().map(move |(id, finding)| (asked, *id, finding)))
        .filter(|(_, id, finding)| wants(finding) && !GOES_FARTHER.contains(id))
        .flat_map(|(asked, id, finding)| finding.mends.iter().map(move |mend| (asked, id, finding, mend)))
        .collect();
    let halves = side_by_side(ways.len(), |i| {
        let (asked, _, finding, mend) = ways[i];
        let alike = asked.findings.iter().filter(|(_, other)| wants(other) && other.remedy == finding.remedy);
        half_is_enough(&alike.map(|(id, _)| *id).collect::<Vec<_>>(), &asked.text, mend)
    });
    println!("{} of {} ways change a reading", halves.iter().flatten().count(), ways.len());
    let too_much: Vec<String> = ways
        .iter()
        .zip(&halves)
        .filter(|(_, half)| **half == Some(true))
        .map(|((asked, id, finding, mend), _)| {
            let words = finding.remedy.as_ref().map_or(String::new(), |words| words.show(Units::Us));
            format!("{} {id}: {words}\n    {mend:?}", asked.name)
        })
        .collect();
    assert!(too_much.is_empty(), "{}:\n{}", too_much.len(), too_much.join("\n"));
}

/// A remedy without a way, or a finding that says nothing of what to do, was not looked into: only what comes from a transom that
/// is not sound is silent, and its cause speaks.
#[test]
fn every_warning_says_what_to_do_or_comes_from_what_does() {
    let silent: Vec<String> = ALL
        .iter()
        .flat_map(|asked| asked.findings.iter().map(move |(id, finding)| (asked, *id, finding)))
        .filter(|(_, _, finding)| wants(finding) && (finding.remedy.is_none() || finding.mends.is_empty()))
        .filter(|(_, id, finding)| finding.cause.is_none_or(|cause| cause.lead == *id))
        .map(|(asked, id, finding)| format!("{} {id}: {}", asked.name, finding.summary.show(Units::Us)))
        .collect();
    assert!(silent.is_empty(), "{silent:#?}");
}

/// All remedies of a job together, the first way of each that can be written, where one does not exclude the other.
#[test]
fn all_remedies_together_bring_nothing_new() {
    let fullest = format!(" L{}", LEVELS.end());
    let all: Vec<&Asked> =
        ALL.iter().filter(|asked| !asked.name.contains(" L") || asked.name.ends_with(&fullest)).collect();
    let worse = side_by_side(all.len(), |i| {
        let asked = all[i];
        let (changes, left_out) = together(&asked.findings);
        if changes.is_empty() {
            return None;
        }
        let after = changed(&asked.text, &changes).and_then(|text| judged(&text));
        let fails = |findings: &[(&'static str, Finding)], verdict| -> Vec<&'static str> {
            findings.iter().filter(|(_, finding)| finding.verdict <= verdict).map(|(id, _)| *id).collect()
        };
        for id in &left_out {
            println!("{}: {id} is excluded by another", asked.name);
        }
        match after {
            Ok(after) => {
                let (before, now) = (fails(&asked.findings, Verdict::Fail), fails(&after, Verdict::Fail));
                let (warned, warns) = (fails(&asked.findings, Verdict::Warn), fails(&after, Verdict::Warn));
                let new: Vec<&str> = now.iter().filter(|id| !before.contains(id)).copied().collect();
                let more: Vec<&str> = warns.iter().filter(|id| !warned.contains(id)).copied().collect();
                println!(
                    "{}: {} changes, {} of {} are left, new warnings {more:?}",
                    asked.name,
                    changes.len(),
                    warns.len(),
                    warned.len()
                );
                (!new.is_empty()).then(|| format!("{}: {new:?} with {changes:?}", asked.name))
            }
            Err(why) => Some(format!("{}: {changes:?}: {why}", asked.name)),
        }
    });
    let worse: Vec<String> = worse.into_iter().flatten().collect();
    assert!(worse.is_empty(), "{}", worse.join("\n"));
}

/// The first way of each finding that is a change; a second one of the same entry is left out, if it says otherwise, and told.
fn together(findings: &[(&'static str, Finding)]) -> (Vec<Change>, Vec<&'static str>) {
    let mut changes: Vec<Change> = Vec::new();
    let mut left_out = Vec::new();
    for (id, finding) in findings.iter().filter(|(_, finding)| wants(finding)) {
        let way = finding.mends.iter().find_map(|mend| match mend {
            Mend::Change(changes) => Some(changes),
            _ => None,
        });
        let Some(way) = way else { continue };
        let touches =
            |one: &Change, other: &Change| one.entry.starts_with(&other.entry) || other.entry.starts_with(&one.entry);
        for new in way {
            if let Some(old) = changes.iter_mut().find(|old| old.entry == new.entry) {
                more_of(old, new);
            }
        }
        let excluded = way.iter().any(|new| changes.iter().any(|old| touches(new, old) && new.entry != old.entry));
        let other =
            way.iter().any(|new| changes.iter().any(|old| new.entry == old.entry && new != old && !is_size(new)));
        if excluded || other {
            left_out.push(*id);
        } else {
            let known = |new: &Change| changes.iter().any(|old| old.entry == new.entry);
            let more: Vec<Change> = way.iter().filter(|new| !known(new)).cloned().collect();
            changes.extend(more);
        }
    }
    (changes, left_out)
}

/// Whether a change is of a weight or a thickness, of which the one that goes farther does for both.
fn is_size(change: &Change) -> bool {
    change.entry.ends_with(".weighed") || change.entry.ends_with("thickness")
}

/// Of two changes of one weight or thickness the one that goes farther.
fn more_of(old: &mut Change, new: &Change) {
    let size = |change: &Change| {
        let value = change.value.as_deref().unwrap_or("").trim_matches('"');
        value.split(' ').next().and_then(|number| number.parse::<f64>().ok())
    };
    let (Some(was), Some(is)) = (size(old), size(new)) else { return };
    let farther = if old.entry.ends_with(".weighed") { is < was } else { is > was };
    if is_size(new) && farther {
        *old = new.clone();
    }
}

/// The cause stands first, and what it brings on below it; a finding that comes from none stands alone.
#[test]
fn findings_of_one_cause_stand_below_it() {
    let of = |name: &str| {
        let (boat, _) = answers(&UNSOUND).find(|(boat, _)| boat.name == name).expect("a boat of that name");
        groups(&boat.at(*LEVELS.end())).expect("a sound job")
    };
    for (name, wanted) in [
        ("unsound/shaft_too_long", vec!["height/shaft-match", "height/plate-window"]),
        ("unsound/twins_too_close", vec!["fit/centre-distance", "swing/neighbour"]),
        ("unsound/more_persons_than_the_plate", vec!["weight/plate-persons", "stern/crew-to-side"]),
    ] {
        let groups = of(name);
        assert!(groups.contains(&wanted), "{name}: {groups:?}");
    }
    for asked in ALL.iter() {
        for (id, finding) in &asked.findings {
            let Some(comes) = finding.cause else { continue };
            let lead = asked.findings.iter().find(|(id, _)| *id == comes.lead);
            let same = lead.is_some_and(|(_, lead)| lead.cause == Some(comes) && wants(lead));
            assert!(same && wants(finding), "{} {id}: {comes:?}", asked.name);
        }
    }
}

/// What is fitted is not ordered any more.
#[test]
fn nothing_is_ordered_as_fitted() {
    let ordered: Vec<String> = ALL
        .iter()
        .filter(|asked| asked.text.contains("sitting: as_fitted"))
        .flat_map(|asked| asked.findings.iter().map(move |(id, finding)| (asked, *id, finding)))
        .filter_map(|(asked, id, finding)| Some((asked, id, finding.remedy.as_ref()?.show(Units::Us))))
        .filter(|(_, _, words)| ["Order", "ordering", "Choose", "choose"].iter().any(|word| words.contains(word)))
        .map(|(asked, id, words)| format!("{} {id}: {words}", asked.name))
        .collect();
    assert!(ordered.is_empty(), "{ordered:#?}");
}

/// A core that was found soft is the one thing to be done about the transom.
#[test]
fn a_soft_core_silences_what_would_build_on_it() {
    let mut looked_at = 0;
    for (boat, answer) in answers(&UNSOUND) {
        let soft = answer.findings.iter().any(|(id, finding)| *id == "strength/soft-core" && wants(finding));
        if !soft {
            continue;
        }
        looked_at += 1;
        for (id, finding) in answer.findings.iter().filter(|(id, _)| *id != "strength/soft-core") {
            let builds = |change: &Change| {
                ["structure", "transom"].iter().any(|part| change.entry.starts_with(part))
                    || change.entry.contains("bolts")
            };
            let building = finding.mends.iter().any(|mend| match mend {
                Mend::Change(changes) => changes.iter().any(builds),
                _ => false,
            });
            let told = finding.remedy.as_ref().map_or(String::new(), |words| words.show(Units::Us));
            assert!(!building && !told.contains("soft-core"), "{} L{} {id}: {told}", boat.name, answer.level);
        }
    }
    assert!(looked_at > 0);
}
