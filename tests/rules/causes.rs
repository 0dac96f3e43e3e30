//! What findings come from: the cause leads, what it brings on stands below it, and nothing is built on a core that is in doubt.

use sternknee::case::Case;
use sternknee::quantity::Text;
use sternknee::rules::mend::Mend;
use sternknee::rules::{self, Cause, Comes, Family, Finding, Judged, Verdict, by_cause};

use crate::common::rig;

/// What the checks say that have to do with hull and transom, and with fuel.
fn all(text: &str) -> Vec<Judged> {
    let rig = rig(text);
    let families = [Family::Weight, Family::Fit, Family::Stern, Family::Strength, Family::Fuel];
    rules::judge_families(&Case::new(&rig), |family| families.contains(&family))
}

fn of<'j>(judged: &'j [Judged], id: &str) -> &'j Finding {
    &judged.iter().find(|one| one.rule.id == id).unwrap_or_else(|| panic!("no rule {id}")).finding
}

/// A finding that comes from this, as far as a list of findings is concerned.
fn said(id: &str, cause: Option<(Cause, &'static str)>) -> Judged {
    let rule = rules::find(id).unwrap_or_else(|| panic!("no rule {id}"));
    let cause = cause.map(|(cause, lead)| Comes { cause, lead });
    Judged { rule, finding: Finding { cause, ..Finding::new(Verdict::Warn, Text::from("told")) }, doubt: None }
}

/// A report tells a hull's bolt pattern before its core: where the core leads, what it brings on stands below it all the same, and what
/// comes from nothing keeps its place.
#[test]
fn the_lead_stands_first_wherever_it_stands_in_the_report() {
    let core = Some((Cause::SoftCore, "strength/soft-core"));
    let aft = Some((Cause::WeightAft, "weight/transom-rating"));
    let judged = [
        said("weight/transom-rating", aft),
        said("weight/old-to-new", aft),
        said("fit/top-edge", core),
        said("height/transom-angle", None),
        said("strength/punching", core),
        said("height/shaft-match", None),
        said("strength/soft-core", core),
        said("strength/tabbing", core),
    ];
    let groups: Vec<Vec<&str>> =
        by_cause(&judged).iter().map(|group| group.iter().map(|one| one.rule.id).collect()).collect();
    let expected: [&[&str]; 4] = [
        &["weight/transom-rating", "weight/old-to-new"],
        &["strength/soft-core", "fit/top-edge", "strength/punching", "strength/tabbing"],
        &["height/transom-angle"],
        &["height/shaft-match"],
    ];
    assert_eq!(groups, expected);
}

/// A heavy engine on a plate that hangs in the water under way, and a transom that is rated for less. A lighter engine would not
/// lift the plate, so the plate's finding is one by itself; what the weight does to her trim is not.
#[test]
fn what_less_weight_would_not_mend_does_not_come_from_the_weight() {
    let job = include_str!("cases/stern-bracket-immersion/warn-plate.ron")
        .replace("running_weight: \"260 lb\"", "hole_rows: 5, running_weight: \"520 lb\"")
        .replace("shaft: \"20 in\"", "shaft: \"20 in\", holes_up: 1")
        .replace("transom: (", "boat: (transom_rating: \"200 lb\"), engines_off: [(described: (running_weight: \"120 lb\", centre_aft: \"9 in\", centre_above: \"4 in\"))], transom: (");
    let judged = all(&job);
    let plate = of(&judged, "stern/bracket-immersion");
    assert!(matches!(plate.mends.first(), Some(Mend::Change(_))), "{:?}", plate.mends);
    assert_eq!(plate.cause, None);
    let trim = of(&judged, "stern/trim-change");
    let from = trim.cause.map(|comes| (comes.cause, comes.lead));
    assert_eq!((trim.verdict, from), (Verdict::Warn, Some((Cause::WeightAft, "weight/transom-rating"))));
}

/// Upper holes too near the edge, an old hole beside a new bolt and small washers on a core that sounds dull: each would be mended at
/// the transom, and none is before the core is settled. What hangs on other things is told what to do as before.
#[test]
fn nothing_is_built_on_a_core_in_doubt_and_all_else_is_mended() {
    let sound = include_str!("cases/strength-washer-crush/warn.ron")
        .replace("upper_holes: \"1-7/8 in\"", "splash_well: none, upper_holes: \"1 in\", holes: [(at: port(\"6.4375 in\"), below: \"2 in\", diameter: \"1/2 in\")]")
        .replace("boat: (", "boat: (transom_rating: \"400 lb\", ")
        .replace("washer: \"1-1/2 in\"", "washer: \"1 in\"")
        .replace("operating: (", "rigging: (fuel: (temperature: \"110 °F\", reid: \"13.5 psi\", lines: [(name: \"line\", hose: (class: \"fuel hose 3/8 in\"), length: \"14 ft\", lift: \"18 in\", elbows: 1, barbs: 6, anti_siphon: true, bulb: true, separator: true, years: 2)])), operating: (");
    let dull = sound.replace("corner_height", "percussion: dull, corner_height");
    let (sound, dull) = (all(&sound), all(&dull));
    let at_the_transom =
        ["fit/top-edge", "fit/bolt-pattern", "strength/washer-crush", "strength/bolt-torque", "strength/bending"];
    for id in at_the_transom {
        let (before, after) = (of(&sound, id), of(&dull, id));
        assert!(before.verdict <= Verdict::Warn && before.remedy.is_some(), "{id}: {before:?}");
        assert!(after.verdict <= Verdict::Warn, "{id}: {after:?}");
        assert_eq!((&after.mends[..], after.buys.len()), (&[Mend::First("strength/soft-core")][..], 0), "{id}");
        assert_eq!(after.cause.map(|comes| comes.lead), Some("strength/soft-core"), "{id}");
    }
    assert!(of(&dull, "strength/soft-core").remedy.is_some());
    // The engine's weight, and fuel that boils in its hose.
    for id in ["weight/transom-rating", "fuel/boiling"] {
        let (before, after) = (of(&sound, id), of(&dull, id));
        assert!(after.verdict <= Verdict::Warn && after.remedy.is_some(), "{id}");
        assert_eq!((&after.remedy, &after.mends), (&before.remedy, &before.mends), "{id}");
    }
    for one in dull.iter().filter(|one| one.finding.verdict <= Verdict::Warn && one.finding.cause.is_none()) {
        assert!(one.finding.remedy.is_some(), "{}", one.rule.id);
    }
}
