//! What the checks afloat tell of her, reckoned again by hand, and what their remedies do.

use sternknee::case::Case;
use sternknee::quantity::Units;
use sternknee::rules::mend::{Change, Mend};
use sternknee::rules::{Finding, Verdict};
use uom::si::angle::degree;

use crate::common::mended::changed;
use crate::common::{finding, near, rig};

/// A boat on her lines, everything on the centreline; an engine of 260 lb where one of 250 lb hung.
const UPRIGHT: &str = include_str!("cases/stern-list/pass.ron");

const ON_THE_CENTRELINE: &str =
    "260 lb\", centre_aft: \"9 in\", centre_above: \"4 in\"), shaft: \"20 in\", at: [centre]";

fn told(finding: &Finding) -> String {
    finding.remedy.as_ref().unwrap_or_else(|| panic!("no remedy: {}", finding.summary.show(Units::Us))).show(Units::Us)
}

/// The job with the first way of a remedy that changes it.
fn mended(job: &str, finding: &Finding) -> String {
    let changes = finding.mends.iter().find_map(|mend| match mend {
        Mend::Change(changes) => Some(changes),
        _ => None,
    });
    changed(job, changes.expect("a change of the job")).expect("a job")
}

/// The same boat with a chest of this weight, so far forward and across.
fn with_chest(weight: &str, forward: &str, across: &str) -> String {
    let chest = format!(
        "gear: [(what: \"chest\", weight: \"{weight}\", forward: \"{forward}\", across: {across}, above: \"14 in\")], crew: 2"
    );
    let day = "conditions: [(name: \"day\")],\n    afloat:";
    UPRIGHT.replace("crew: 2", &chest).replace("afloat:", day)
}

/// An engine of 260 lb 6 in to port and a chest of 150 lb 20 in to port: 260 × 6 + 150 × 20 = 4,560 lb·in, which the chest gives back
/// 4,560 / 150 = 30.4 in farther to starboard, 10.4 in on the other side.
#[test]
fn what_is_moved_across_gives_the_whole_moment_back() {
    let job = with_chest("150 lb", "8 ft", "port(\"20 in\")");
    let job = job.replacen(ON_THE_CENTRELINE, &ON_THE_CENTRELINE.replace("centre]", "port(\"6 in\")]"), 1);
    let found = finding("stern/list", &job);
    assert_eq!(found.verdict, Verdict::Warn);
    let words = "Move chest (150 lb) 30-3/8 in to starboard, to 10-3/8 in off the centreline on the starboard side: she is upright then.";
    assert_eq!(told(&found), words);
    let after = finding("stern/list", &mended(&job, &found));
    near(after.found.expect("a list").in_unit(Units::Us).0, 0.0, 0.05);
}

/// A chest of 60 lb goes no farther than the other rail, 30 in out: it gives 60 × 60 = 3,600 lb·in back, which is enough where it leaves
/// no more list than is borne. Of an engine 9 in to port 2,340 + 1,800 − 3,600 = 540 lb·in are left, and she lists as much as is told;
/// of one 6-15/16 in to port 4, a thousandth, and she is upright.
#[test]
fn what_is_moved_as_far_as_the_rail_leaves_the_list_that_is_told() {
    for (engine, upright) in [("9 in", false), ("6-15/16 in", true)] {
        let job = with_chest("60 lb", "8 ft", "port(\"30 in\")");
        let job =
            job.replacen(ON_THE_CENTRELINE, &ON_THE_CENTRELINE.replace("centre]", &format!("port(\"{engine}\")]")), 1);
        let found = finding("stern/list", &job);
        let told = told(&found);
        let moved = "Move chest (60 lb) 60 in to starboard, to 30 in off the centreline on the starboard side: ";
        assert!(told.starts_with(moved), "{told}");
        let after = finding("stern/list", &mended(&job, &found));
        assert_eq!(after.verdict, Verdict::Pass);
        let lists = after.found.expect("a list").show(Units::Us);
        assert_eq!(
            &told[moved.len()..],
            if upright { "she is upright then.".to_owned() } else { format!("she lists {lists} then.") }
        );
    }
}

/// Of two loadings in which she is as stiff the one told first is named.
#[test]
fn of_two_loadings_as_stiff_the_first_is_named() {
    let job = include_str!("cases/stern-metacentric-height/warn.ron");
    let days = ["first day", "second day"];
    for [first, second] in [days, [days[1], days[0]]] {
        let told =
            |name: &str| format!("(name: \"{name}\", crew: [(persons: 2, forward: \"6 ft\", above: \"26 in\")])");
        let conditions = format!("conditions: [{}, {}],\n    afloat:", told(first), told(second));
        let found = finding("stern/metacentric-height", &job.replace("afloat:", &conditions));
        let summary = found.summary.show(Units::Us);
        assert!(summary.starts_with(&format!("Least in `{first}`")), "{summary}");
    }
}

/// Her trim with the new engines and with the old ones, degrees.
fn trims(job: &str) -> [f64; 2] {
    let rig = rig(job);
    let case = Case::new(&rig);
    let float = case.float().unwrap_or_else(|no_float| panic!("{no_float:?}"));
    let day = &float.loadings[0];
    [&day.after, &day.before].map(|state| {
        let lies = state.as_ref().and_then(|state| state.floating()).expect("she floats");
        lies.attitude().trim.get::<degree>()
    })
}

/// A heavier engine, and a chest aft: moved forward as far as is told, or the engine lighter by what is told, she trims again as she did
/// with the old engine, to what a tape and whole pounds leave.
#[test]
fn what_gives_the_whole_trim_back_brings_her_to_her_old_trim() {
    let job =
        with_chest("300 lb", "2 ft", "centre").replace("running_weight: \"260 lb\"", "running_weight: \"420 lb\"");
    let found = finding("stern/trim-change", &job);
    assert_eq!(found.verdict, Verdict::Warn);
    let [now, was] = trims(&job);
    near(found.found.expect("a change").in_unit(Units::Us).0, now - was, 1e-9);
    assert!(told(&found).starts_with("To give the whole trim back: move chest (300 lb) "), "{}", told(&found));
    let ways: Vec<&Vec<Change>> = found
        .mends
        .iter()
        .filter_map(|mend| match mend {
            Mend::Change(changes) => Some(changes),
            _ => None,
        })
        .collect();
    assert_eq!(ways.len(), 2, "{:?}", found.mends);
    for changes in ways {
        let [then, _] = trims(&changed(&job, changes).expect("a job"));
        near(then, was, 0.05);
    }
}

/// A plate of 10 in of setback stands an eighth of it, 1-1/4 in, over the water that leaves the transom; this one stands 1 in. The quarter
/// of an inch that lacks and an eighth to spare are told as the next quarter: 1/2 in.
#[test]
fn a_plate_is_mounted_higher_by_what_lacks() {
    let job = include_str!("cases/stern-bracket-immersion/warn-plate.ron");
    for (bottom, higher) in [("1 in", "1/2 in"), ("1/2 in", "1 in"), ("1-1/8 in", "1/4 in")] {
        let job = job
            .replace("running_weight:", "hole_rows: 5, running_weight:")
            .replace("shaft: \"20 in\"", "shaft: \"20 in\", holes_up: 1")
            .replace("bottom: \"1 in\"", &format!("bottom: \"{bottom}\""));
        let found = finding("stern/bracket-immersion", &job);
        let words = told(&found);
        assert!(words.starts_with(&format!("Mount it {higher} higher, its engines ")), "{bottom}: {words}");
        assert_eq!(finding("stern/bracket-immersion", &mended(&job, &found)).verdict, Verdict::Pass, "{bottom}");
    }
}
