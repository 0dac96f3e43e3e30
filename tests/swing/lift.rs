//! A lifting bracket over its whole travel: what it brings near, how that is told, and what clears it.

use proptest::prelude::*;
use sternknee::case::Case;
use sternknee::case::swing::{Hanging, Swept};
use sternknee::catalog::Catalog;
use sternknee::job;
use sternknee::physics::swing::{AngleRange, Effort, Neighbour, NeighbourTilt, Scene, least_distance};
use sternknee::quantity::Units;
use sternknee::rig;
use sternknee::rules::Verdict;
use uom::si::angle::degree;
use uom::si::f64::{Angle, Length};
use uom::si::length::inch;

use super::{judge, rig_of, with};

/// A kicker beside an engine; what is told of its bracket stands for `{}`.
const KICKER: &str = r#"(
    sitting: study,
    transom: (height: "20 in", angle: "14 deg", thickness: "2 in", cutout_width: "30 in", splash_well: none),
    engines_on: [
        (class: "four-stroke 150 hp inline-4", shaft: "20 in", at: [centre], holes_up: 1),
        (class: "four-stroke 6 hp single", shaft: "25 in", at: [starboard("21 in")], role: auxiliary, bracket: ({})),
    ],
)"#;
const CLASS: &str = "class: \"auxiliary lifting bracket\"";
/// Setback and drop of that class, and no travel.
const NO_TRAVEL: &str = "described: (kind: auxiliary, setback: \"10 in\", drop: \"4 in\")";

fn kicker(bracket: &str) -> String {
    KICKER.replace("{}", bracket)
}

fn raised(inches: f64) -> String {
    kicker(&format!("{CLASS}, raised: \"{inches} in\""))
}

/// The sweeps of all answers that a lift can change.
fn sweeps(text: &str) -> Vec<Swept> {
    let rig = rig_of(text);
    let case = Case::new(&rig);
    let swing = case.swing();
    let answers = [&swing.full_tilt, &swing.raised, &swing.neighbours];
    answers.into_iter().flatten().flatten().cloned().collect()
}

fn least(swept: &[Swept]) -> f64 {
    swept.iter().map(|one| one.clearance.upper.value).fold(f64::INFINITY, f64::min)
}

fn neighbours(text: &str) -> Vec<Swept> {
    let rig = rig_of(text);
    Case::new(&rig).swing().neighbours.clone().expect("two engines")
}

#[test]
fn a_bracket_that_is_not_raised_is_one_that_does_not_lift() {
    let without = sweeps(&kicker(NO_TRAVEL));
    let lifts = "described: (kind: auxiliary, setback: \"10 in\", drop: \"4 in\", travel: \"0 in\")";
    for text in [raised(0.0), kicker(lifts)] {
        let told = sweeps(&text);
        assert_eq!(told.len(), without.len());
        for (one, other) in told.iter().zip(&without) {
            assert_eq!(one.clearance, other.clearance);
        }
    }
}

#[test]
fn raised_it_comes_nearer_and_the_finding_says_at_what_height() {
    let finding = judge(&kicker(CLASS), "swing/neighbour");
    assert_eq!(finding.verdict, Verdict::Warn);
    let summary = finding.summary.show(Units::Us);
    assert!(summary.contains("its bracket raised "), "{summary}");
    assert_eq!(judge(&kicker(NO_TRAVEL), "swing/neighbour").verdict, Verdict::Pass);
    let remedy = finding.remedy.expect("a remedy").show(Units::Us);
    let height =
        remedy.split("raised no more than ").nth(1).and_then(|rest| rest.split(" in").next()).expect("a height");
    let lower = kicker(&format!("{CLASS}, raised: \"{height} in\""));
    assert_eq!(judge(&lower, "swing/neighbour").verdict, Verdict::Pass, "{height}");
}

#[test]
fn a_travel_that_nobody_took_is_a_line_on_the_measuring_sheet_and_turns_no_verdict() {
    let unknown = judge(&kicker(NO_TRAVEL), "swing/full-tilt");
    assert_eq!(unknown.verdict, judge(&raised(0.0), "swing/full-tilt").verdict);
    let names: Vec<String> = unknown.missing.iter().map(|missing| missing.name()).collect();
    assert_eq!(names.len(), 1, "{names:?}");
    assert!(names[0].contains("travel of the lifting bracket"), "{names:?}");
    let plain =
        with(&kicker(CLASS), "role: auxiliary, bracket: (class: \"auxiliary lifting bracket\")", "role: auxiliary");
    for known in [kicker(CLASS), plain] {
        assert!(judge(&known, "swing/full-tilt").missing.is_empty());
    }
}

#[test]
fn what_a_bracket_cannot_be_is_told_at_its_place() {
    let catalog = Catalog::built_in().expect("the built-in catalog reads");
    for (bracket, path, words) in [
        (format!("{CLASS}, travel: \"9 in\", raised: \"12 in\""), "engines_on[1].bracket.raised", "its travel is 9 in"),
        (
            "class: \"jack plate 6 in, light\", travel: \"5 in\"".to_owned(),
            "engines_on[1].bracket.travel",
            "lifts no small",
        ),
    ] {
        let (job, _) = job::load("job", &kicker(&bracket)).unwrap_or_else(|faults| panic!("{faults}"));
        let slips = rig::resolve(&job, &catalog).expect_err("it cannot be");
        assert!(slips.iter().any(|slip| slip.path == path && slip.message.contains(words)), "{slips:?}");
    }
    let short = NO_TRAVEL.replace("drop", "travel: \"11 in\", arms: (length: \"4 in\", hang: \"2 in\"), drop");
    let finding = judge(&kicker(&short), "swing/neighbour");
    assert_eq!(finding.verdict, Verdict::Unmeasured);
    assert!(finding.summary.show(Units::Us).contains("too short"), "{}", finding.summary.show(Units::Us));
}

#[test]
fn a_bracket_without_arms_goes_straight_up_and_that_is_said() {
    let straight = kicker(&NO_TRAVEL.replace("drop", "travel: \"11 in\", drop"));
    let assumed = |text: &str| -> Vec<String> {
        let rig = rig_of(text);
        Case::new(&rig).swing().assumed.iter().map(|words| words.show(Units::Us)).collect()
    };
    let says = |words: &[String]| words.iter().any(|words| words.contains("goes straight up along the transom"));
    assert!(says(&assumed(&straight)));
    assert!(!says(&assumed(&kicker(CLASS))));
}

/// A mirrored boat has mirrored clearances.
#[test]
fn a_kicker_to_port_comes_as_near_as_one_to_starboard() {
    let gap = Effort::default().gap.value;
    for bracket in [CLASS, NO_TRAVEL] {
        let starboard = kicker(bracket);
        let port = with(&starboard, "starboard(\"21 in\")", "port(\"21 in\")");
        let (one, other) = (sweeps(&starboard), sweeps(&port));
        assert_eq!(one.len(), other.len());
        assert!((least(&one) - least(&other)).abs() <= gap);
        assert!((least(&neighbours(&starboard)) - least(&neighbours(&port))).abs() <= gap);
    }
}

#[test]
fn at_her_mooring_a_kicker_is_raised_out_of_the_water() {
    let wet = |bracket: &str| {
        let text = with(&kicker(bracket), "sitting: study,", "sitting: study, waterline: \"4 in\",");
        let rig = rig_of(&text);
        let case = Case::new(&rig);
        let all = case.swing().water.clone().expect("a waterline");
        all.iter().find(|one| one.label.contains("auxiliary")).expect("a kicker").clearance.height
    };
    let up = wet(CLASS) - wet(NO_TRAVEL);
    // Eleven inches along a transom at 14 degrees, and a little aft on the arms.
    assert!(up.get::<inch>() > 9.0 && up.get::<inch>() < 11.0, "{}", up.get::<inch>());
}

/// The kicker and the engine beside it.
fn hanging(text: &str) -> (Hanging, Hanging) {
    let rig = rig_of(text);
    let engines = Case::new(&rig).swing().engines.clone().expect("both hang");
    (engines[1].clone(), engines[0].clone())
}

fn beside(kicker: sternknee::physics::swing::EngineChain, of: &Hanging, other: &Hanging, tilt: Angle) -> Scene {
    let mut scene = Scene::new(kicker, of.fitted.tilt, of.fitted.steer);
    scene.neighbour = Some(Neighbour {
        chain: other.fitted.chain.standing(tilt, Angle::new::<degree>(0.0)),
        tilt: NeighbourTilt::Independent(AngleRange::only("where it stands", tilt).expect("an angle")),
    });
    scene
}

/// So many heights stand for all of them.
const HEIGHTS: u32 = 24;

proptest! {
    #![proptest_config(ProptestConfig { cases: 16, failure_persistence: None, ..ProptestConfig::default() })]

    /// The lift as a variable of the search, against engines mounted at every height of it by themselves.
    #[test]
    fn over_its_travel_it_comes_as_near_as_at_the_nearest_of_many_heights(
        travel in 1.0..14.0f64, arm in 8.0..12.0f64, hang in 5.0..7.9f64, tilt in 0.0..60.0f64, straight: bool,
    ) {
        let arms = format!("arms: (length: \"{arm:.3} in\", hang: \"{hang:.3} in\"),");
        let arms = if straight { String::new() } else { arms };
        let lifts = NO_TRAVEL.replace("drop", &format!("travel: \"{travel:.3} in\", {arms} drop"));
        let (own, other) = hanging(&kicker(&lifts));
        let lift = own.lift.expect("it lifts");
        let tilt = Angle::new::<degree>(tilt);
        let found = |chain| least_distance(&beside(chain, &own, &other, tilt), &Effort::default()).expect("an answer");
        let over = found(own.fitted.chain.clone().lifted(lift));
        let mut nearest = f64::INFINITY;
        let (mut certified, mut farthest_step) = (f64::INFINITY, 0.0f64);
        let mut before = lift.raised(Length::new::<inch>(0.0));
        for i in 0..=HEIGHTS {
            let at = lift.raised(lift.travel() * (f64::from(i) / f64::from(HEIGHTS)));
            let there = found(own.fitted.chain.shifted(at));
            nearest = nearest.min(there.upper.value);
            certified = certified.min(there.lower.value);
            farthest_step = farthest_step.max((at - before).norm());
            before = at;
        }
        prop_assert!(over.lower.value <= nearest + 1e-9);
        // Between two heights nothing comes nearer than the step between them.
        prop_assert!(over.upper.value >= certified - farthest_step);
        let height = over.pose.lift.expect("a height");
        let there = found(own.fitted.chain.shifted(lift.raised(height)));
        prop_assert!(there.lower.value <= over.upper.value + 1e-9);
    }

    /// Raised a little more it comes no farther off, and nearer by no more than it moves.
    #[test]
    fn raising_a_little_more_changes_what_comes_near_a_little(height in 0.0..10.0f64, more in 0.0..1.0f64) {
        let gap = Effort::default().gap.value;
        // The arms of the class carry it by no more than this for an inch of height.
        let way = 1.5 * Length::new::<inch>(more).value;
        let (low, high) = (neighbours(&raised(height)), neighbours(&raised(height + more)));
        for moving in ["engine", "auxiliary engine"] {
            let nearest = |all: &[Swept]| least(&all.iter().filter(|one| one.label == moving).cloned().collect::<Vec<_>>());
            let (one, other) = (nearest(&low), nearest(&high));
            prop_assert!(one.is_finite() && other <= one + gap, "{one} {other}");
            prop_assert!(one - other <= way + 2.0 * gap, "{one} {other}");
        }
    }
}
