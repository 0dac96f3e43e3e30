//! What the findings tell to do, done.

use sternknee::case::Case;
use sternknee::quantity::Units;
use sternknee::rules::Verdict;

use crate::{finding, ledger, rig, skiff};

/// Well under what a tape reads, metres.
const CLOSE_M: f64 = 1e-6;

#[test]
fn with_as_much_less_on_the_stern_as_told_the_well_edge_is_at_its_limit() {
    let (engine, lip) = (900.0, 17.0);
    let rig = rig(&skiff(engine, 0.0, &ledger(lip)));
    let case = Case::new(&rig);
    let float = case.float().unwrap();
    let state = float.loadings.iter().find(|l| l.name.starts_with("crew aft")).unwrap();
    let state = state.after.as_ref().unwrap();
    let edge = float.edges[0].point;
    let limit = 4.0 * 0.0254;
    let goal = |f: &sternknee::physics::float::Floating| f.height_above_water(&edge).value - limit;
    assert!(goal(state.floating().unwrap()) < 0.0);
    let (place, hung) = float.on_stern(state).unwrap();
    let none = hung * 0.0;
    let less = float.mass_at(state, &place, (-hung, none), &goal).unwrap();
    // Put the lighter engine into the job and float her anew.
    let lighter = engine + less.value / 0.453_592_37;
    assert!(lighter > 100.0 && lighter < engine, "{lighter}");
    let text = skiff(engine, 0.0, &ledger(lip)).replace("\"900 lb\", at", &format!("\"{lighter:.12} lb\", at"));
    let again = crate::rig(&text);
    let case = Case::new(&again);
    let float = case.float().unwrap();
    let loaded = float.loadings.iter().find(|l| l.name.starts_with("crew aft")).unwrap();
    let height = loaded.after.as_ref().unwrap().floating().unwrap().height_above_water(&edge).value;
    assert!((height - limit).abs() < CLOSE_M, "{height}");
}

/// The number of pounds that follows these words.
fn pounds_after(sentence: &str, words: &str) -> f64 {
    let rest = sentence.split(words).nth(1).unwrap();
    let number = rest.split(" lb").next().unwrap();
    number.replace(',', "").parse().unwrap()
}

#[test]
fn the_lighter_engine_of_the_remedy_turns_the_warning_into_a_pass() {
    let before = finding("stern/well-edge", &skiff(900.0, 0.0, &ledger(17.0)));
    assert!(before.verdict < Verdict::Pass);
    let words = before.remedy.unwrap().show(Units::Us);
    // "… hang 341 lb less on the stern, 559 lb in all."
    let left = pounds_after(&words, "on the stern, ");
    let after = finding("stern/well-edge", &skiff(left - 1.0, 0.0, &ledger(17.0)));
    assert_eq!(after.verdict, Verdict::Pass, "{words}");
}

#[test]
fn a_boat_that_passes_is_told_how_much_more_her_stern_takes_and_takes_no_more() {
    let words = finding("stern/well-edge", &skiff(300.0, 0.0, &ledger(18.0)));
    assert_eq!(words.verdict, Verdict::Pass);
    let words = words.summary.show(Units::Us);
    let room = pounds_after(&words, "The stern takes ");
    let at = |engine: f64| finding("stern/well-edge", &skiff(engine, 0.0, &ledger(18.0))).verdict;
    assert_eq!(at(300.0 + room - 2.0), Verdict::Pass);
    assert_eq!(at(300.0 + room + 2.0), Verdict::Warn);
}

#[test]
fn things_moved_forward_as_told_give_the_trim_back() {
    let more = |forward: f64| {
        format!(
            r#"{} goes_on: [(what: "chest", weight: "300 lb", forward: "{forward:.12} m", above: "15 in")],"#,
            ledger(20.0)
        )
    };
    let trim_and_shift = |forward: f64| {
        let rig = rig(&skiff(330.0, 0.0, &more(forward)));
        let case = Case::new(&rig);
        let float = case.float().unwrap();
        let loaded = float.loadings.iter().find(|l| l.name == "light").unwrap();
        let (before, after) = loaded.both().unwrap();
        let wanted = before.floating().unwrap().attitude().trim.value;
        let goal = |f: &sternknee::physics::float::Floating| wanted - f.attitude().trim.value;
        (goal(after.floating().unwrap()), float.shifts(after, &goal))
    };
    let start = 0.3;
    let (off, shifts) = trim_and_shift(start);
    assert!(off < -0.005, "{off}");
    let shift = shifts.iter().find(|shift| shift.name == "chest").unwrap();
    let moved = start + shift.forward.unwrap().value;
    let (left, _) = trim_and_shift(moved);
    assert!(left.abs() < 1e-8, "{left}");
}

#[test]
fn the_battery_moved_across_as_told_rights_her() {
    let more = |across: &str| {
        format!(
            r#"{} goes_on: [(what: "battery", weight: "70 lb", forward: "2 ft", across: {across}, above: "12 in")],"#,
            ledger(20.0)
        )
    };
    let listed = finding("stern/list", &skiff(300.0, 4.0, &more("port(\"24 in\")")));
    assert_eq!(listed.verdict, Verdict::Warn);
    let words = listed.remedy.unwrap().show(Units::Us);
    assert!(words.starts_with("Move battery (70 lb)"), "{words}");
    // 300 lb × 4 in over 70 lb is 17.14 in on the other side.
    assert!(words.contains("17-1/8 in off the centreline on the starboard side"), "{words}");
    assert!(words.ends_with("she is upright then."), "{words}");
    let righted = finding("stern/list", &skiff(300.0, 4.0, &more("starboard(\"17.142857 in\")")));
    assert_eq!(righted.verdict, Verdict::Pass);
    assert!(righted.found.unwrap().si.abs() < 1e-6);
}
