//! Core, signs, tabbing and what the bolts go through, judged from words: laws, and what is told.

use proptest::prelude::*;
use sternknee::quantity::Units;
use sternknee::rules::Verdict;

use super::{KNEES, boat, finding, flex, remedy, rig};

const FROM_WORDS: [&str; 4] = ["strength/soft-core", "strength/signs", "strength/tabbing", "strength/core-under-bolts"];

/// What a job may say of each, from nothing over good to bad; what is told later in a list is worse.
const CORE: [&str; 3] = ["sound", "suspect", "soft"];
const HAMMER: [&str; 3] = ["sharp", "dull", "dead"];
const MOISTURE: [&str; 4] = ["12 %", "20 %", "24 %", "35 %"];
const SIGNS: [&str; 9] = [
    "weeping_bolts",
    "washers_sunk_in",
    "cracks_at_cutout",
    "cracks_at_bracket",
    "stains_or_rust_streaks",
    "flexes_by_hand",
    "tabbing_let_go",
    "gap_at_cap",
    "paint_lines_moved",
];
const BOND: [&str; 3] = ["built_in", "bonded", "loose"];
const MATERIAL: [&str; 2] = ["Douglas-fir marine plywood", "end-grain balsa core"];
const INSERTS: [&str; 2] = ["solid", "none"];

/// What is told, each by its place in its list; `None` where it is not.
#[derive(Clone, Debug)]
struct Told {
    core: Option<usize>,
    hammer: Option<usize>,
    moisture: Option<usize>,
    now: Option<Vec<usize>>,
    then: Option<Vec<usize>>,
    sides: Option<usize>,
    bottom: Option<usize>,
    material: Option<usize>,
    inserts: Option<usize>,
}

impl Told {
    fn text(&self) -> String {
        let word = |field: &str, list: &[&str], at: Option<usize>, quote: &str| {
            at.map(|at| format!("{field}: {quote}{}{quote}, ", list[at])).unwrap_or_default()
        };
        let signs = |seen: &Option<Vec<usize>>| {
            seen.as_ref().map(|seen| {
                let words: Vec<&str> = seen.iter().map(|at| SIGNS[*at]).collect();
                format!("signs: [{}]", words.join(", "))
            })
        };
        let ran = signs(&self.then).map(|signs| format!("ran: (years: 3, {signs}), ")).unwrap_or_default();
        // Knees, lest a transom that nothing holds be refused as a job.
        format!(
            "({ran}transom: ({}{}), structure: ({}{}{}{}{}knees: [{KNEES}]), \
             engines_on: [(class: \"four-stroke 115 hp inline-4\", bolts: ({}))])",
            word("core", &CORE, self.core, ""),
            word("material", &MATERIAL, self.material, "\""),
            word("percussion", &HAMMER, self.hammer, ""),
            word("moisture", &MOISTURE, self.moisture, "\""),
            signs(&self.now).map(|signs| signs + ", ").unwrap_or_default(),
            word("sides", &BOND, self.sides, ""),
            word("bottom", &BOND, self.bottom, ""),
            word("inserts", &INSERTS, self.inserts, ""),
        )
    }

    fn verdicts(&self) -> [Verdict; 4] {
        let text = self.text();
        FROM_WORDS.map(|id| finding(id, &text).verdict)
    }

    /// The job with one thing worse than it was told, or told at its worst where it was not.
    fn with_bad(&self, which: usize, sign: usize) -> Told {
        let mut told = self.clone();
        let worst = |list: &[&str]| Some(list.len() - 1);
        match which {
            0 => told.core = worst(&CORE),
            1 => told.hammer = worst(&HAMMER),
            2 => told.moisture = worst(&MOISTURE),
            3 => told.now.get_or_insert_default().push(sign),
            4 => told.then.get_or_insert_default().push(sign),
            5 => told.sides = worst(&BOND),
            6 => told.bottom = worst(&BOND),
            // A core that needs inserts is none the worse where it has them.
            7 if told.inserts != Some(0) => told.material = worst(&MATERIAL),
            7 => {}
            _ => told.inserts = worst(&INSERTS),
        }
        told
    }

    /// The job without one of the things told.
    fn without(&self, which: usize) -> Told {
        let mut told = self.clone();
        match which {
            0 => told.core = None,
            1 => told.hammer = None,
            2 => told.moisture = None,
            3 => told.now = None,
            4 => told.then = None,
            5 => told.sides = None,
            6 => told.bottom = None,
            7 => told.material = None,
            _ => told.inserts = None,
        }
        told
    }

    /// Whether that thing is told, and speaks for the boat.
    fn is_good(&self, which: usize) -> bool {
        match which {
            0 => self.core == Some(0),
            1 => self.hammer == Some(0),
            2 => self.moisture.is_some_and(|at| at < 2),
            3 => self.now.as_ref().is_some_and(Vec::is_empty),
            4 => self.then.as_ref().is_some_and(Vec::is_empty),
            5 => self.sides.is_some_and(|at| at < 2),
            6 => self.bottom.is_some_and(|at| at < 2),
            7 => self.material == Some(0),
            _ => self.inserts == Some(0),
        }
    }
}

const THINGS: usize = 9;

prop_compose! {
    fn told()(
        core in prop::option::of(0..CORE.len()), hammer in prop::option::of(0..HAMMER.len()),
        moisture in prop::option::of(0..MOISTURE.len()),
        now in prop::option::of(prop::collection::vec(0..SIGNS.len(), 0..3)),
        then in prop::option::of(prop::collection::vec(0..SIGNS.len(), 0..3)),
        sides in prop::option::of(0..BOND.len()), bottom in prop::option::of(0..BOND.len()),
        material in prop::option::of(0..MATERIAL.len()), inserts in prop::option::of(0..INSERTS.len()),
    ) -> Told {
        Told { core, hammer, moisture, now, then, sides, bottom, material, inserts }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(128))]

    #[test]
    fn a_bad_sign_never_improves_a_verdict(told in told(), which in 0..THINGS, sign in 0..SIGNS.len()) {
        for ((id, before), after) in FROM_WORDS.into_iter().zip(told.verdicts()).zip(told.with_bad(which, sign).verdicts()) {
            prop_assert!(after <= before, "{}: {:?} then {:?}", id, before, after);
        }
    }

    /// What is left out neither outvotes what is told nor passes by silence.
    #[test]
    fn what_is_left_out_never_makes_a_rule_pass(told in told(), which in 0..THINGS) {
        for ((id, before), after) in FROM_WORDS.into_iter().zip(told.verdicts()).zip(told.without(which).verdicts()) {
            let lost_good = told.is_good(which);
            prop_assert!(after != Verdict::Pass || before == Verdict::Pass || !lost_good, "{}: {:?}", id, before);
        }
        let nothing = (0..THINGS).fold(told, |told, which| told.without(which));
        for (id, verdict) in FROM_WORDS.into_iter().zip(nothing.verdicts()) {
            prop_assert_eq!(verdict, Verdict::Unmeasured, "{}", id);
        }
    }
}

#[test]
fn readings_that_do_not_agree_are_told_with_what_to_take_again() {
    let told = |transom: &str, structure: &str| {
        let text = format!("(transom: ({transom}), structure: ({structure}))");
        let finding = finding("strength/soft-core", &text);
        (finding.verdict, finding.summary.show(Units::Us), remedy(&finding))
    };
    let (verdict, summary, remedy) = told("core: soft", "percussion: sharp");
    assert_eq!(verdict, Verdict::Fail);
    assert!(summary.contains("do not agree: the hammer sounds sharp, but found soft"), "{summary}");
    assert!(remedy.starts_with("Sound the whole transom again"), "{remedy}");
    let (_, summary, remedy) = told("core: sound", "moisture: \"30 %\"");
    assert!(summary.contains("do not agree: found sound, but moisture 30 %"), "{summary}");
    assert!(remedy.starts_with("Probe the core again"), "{remedy}");
}

#[test]
fn old_engines_that_ran_long_without_a_sign_ran_soundly() {
    let soundly = |text: &str| rig(text).ran.expect("a time with the old engines").soundly();
    assert_eq!(soundly("(ran: (years: 12, hours: 900, signs: none))"), Some(true));
    assert_eq!(soundly("(ran: (years: 3, signs: []))"), Some(true));
    assert_eq!(soundly("(ran: (hours: 250), structure: (signs: none))"), Some(true));
    assert_eq!(soundly("(ran: (years: 12, hours: 900))"), None);
    assert_eq!(soundly("(ran: (years: 12, hours: 40, signs: none))"), None);
    assert_eq!(soundly("(ran: (years: 12, hours: 900, signs: [weeping_bolts]))"), Some(false));
    assert_eq!(soundly("(ran: (years: 12, signs: none), structure: (signs: [gap_at_cap]))"), Some(false));
}

const BOLTS: &str = r#"size: "1/2-13", grade: "A4-70", washer: "2 in""#;

/// The boat with 60 hp whose top edge moved so, under a man on the gearcase.
fn moved(moved: &str) -> String {
    let flex = format!(r#"flex: (weight: "176 lb", arm: "26 in", moved: "{moved}")"#);
    boat("four-stroke 60 hp inline-4", BOLTS, "", &flex).replace("core: sound,", "")
}

#[test]
fn a_flex_leaves_between_what_its_tolerance_allows() {
    let read = flex(&moved("2 mm ± 0.5 mm"));
    assert!(read.at_least < read.as_read && read.as_read < read.at_most, "{read:?}");
    let closer = flex(&moved("2 mm ± 0.1 mm"));
    assert!(read.at_least < closer.at_least && closer.at_most < read.at_most, "{read:?} {closer:?}");
    assert_eq!(flex(&moved("2 mm")), flex(&moved("2 mm ± 0.25 mm")));
}

#[test]
fn a_transom_that_moves_farther_is_never_judged_better() {
    let mut last = Verdict::NotApplicable;
    let mut met = Vec::new();
    for far in ["0.1 mm", "0.5 mm", "1 mm", "2 mm", "4 mm", "8 mm", "16 mm", "32 mm"] {
        let verdict = finding("strength/soft-core", &moved(far)).verdict;
        assert!(verdict <= last, "{far}: {verdict:?} after {last:?}");
        last = verdict;
        met.push(verdict);
    }
    assert!(met.contains(&Verdict::Pass) && met.contains(&Verdict::Warn) && met.contains(&Verdict::Fail), "{met:?}");
}

#[test]
fn a_gauge_that_may_be_far_off_warns_and_does_not_fail() {
    assert_eq!(finding("strength/soft-core", &moved("16 mm ± 0.1 mm")).verdict, Verdict::Fail);
    assert_eq!(finding("strength/soft-core", &moved("16 mm ± 15 mm")).verdict, Verdict::Warn);
    assert_eq!(finding("strength/soft-core", &moved("0.25 mm ± 0.25 mm")).verdict, Verdict::Pass);
}
