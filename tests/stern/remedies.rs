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

/// Two chests too far aft: told where each is to go, she lies as she lay with the heavier at the foremost place that things go
/// to, three quarters of her length, and the lighter where it had been put before the question was asked.
#[test]
fn several_things_are_moved_one_after_the_other_until_she_lies_as_wanted() {
    let foremost = 0.75 * 201.0;
    let text = |light: f64, heavy: f64| {
        let chest = |what: &str, pounds: u32, inches: f64| {
            format!("(what: \"{what}\", weight: \"{pounds} lb\", forward: \"{inches:.12} in\", above: \"15 in\")")
        };
        let chests = [chest("tools", 60, light), chest("anchors", 110, heavy)].join(", ");
        skiff(330.0, 0.0, &format!("{} goes_on: [{chests}],", ledger(20.0)))
    };
    let ask = |light: f64, heavy: f64, wanted: Option<f64>| {
        let rig = rig(&text(light, heavy));
        let case = Case::new(&rig);
        let float = case.float().expect("afloat");
        let state = float.loadings.iter().find(|l| l.name == "light").and_then(|l| l.after.as_ref()).expect("a state");
        let trim = state.floating().expect("afloat").attitude().trim.value;
        let goal = |f: &sternknee::physics::float::Floating| wanted.unwrap_or(trim) - f.attitude().trim.value;
        (trim, float.plan(state, &goal))
    };
    let (light, heavy) = (20.0, 12.0);
    for put in [30.0, 90.0, 140.0] {
        let (wanted, _) = ask(put, foremost, None);
        let (_, plan) = ask(light, heavy, Some(wanted));
        let plan = plan.expect("both of them are enough");
        let inch = |length: uom::si::f64::Length| length.value / 0.0254;
        let told: Vec<(&str, f64, f64)> = plan
            .iter()
            .map(|shift| (shift.name.as_str(), inch(shift.forward.expect("a way")), inch(shift.to)))
            .collect();
        let [(first, first_by, first_to), (second, second_by, second_to)] = told[..] else { panic!("{told:?}") };
        assert_eq!([first, second], ["anchors", "tools"]);
        assert!((first_to - foremost).abs() < 1e-6 && (first_by - (foremost - heavy)).abs() < 1e-6, "{told:?}");
        assert!((second_to - put).abs() < 1e-3 && (second_by - (put - light)).abs() < 1e-3, "{told:?}");
    }
    // The heavier alone is enough: then nothing else is moved.
    let (wanted, _) = ask(light, 60.0, None);
    let (_, plan) = ask(light, heavy, Some(wanted));
    let plan = plan.expect("one of them is enough");
    assert_eq!(plan.len(), 1, "{plan:?}");
    // More than both can do is not promised.
    let (wanted, _) = ask(170.0, 170.0, None);
    assert_eq!(ask(light, heavy, Some(wanted)).1, None);
}

/// Of an engine and its bracket the middle is that of two weights; where nothing hangs, nothing is told of it.
#[test]
fn what_hangs_on_the_stern_has_its_weight_and_middle_and_nothing_has_none() {
    let bracket = r#"at: [port("0 in")], bracket: (described: (kind: frame, setback: "20 in", drop: "0 in", weight: "60 lb"), bottom: "6 in")"#;
    let with = skiff(300.0, 0.0, &ledger(20.0)).replace(r#"at: [port("0 in")]"#, bracket);
    let without: String = skiff(300.0, 0.0, &ledger(20.0))
        .lines()
        .filter(|line| !line.contains("engines_"))
        .collect::<Vec<_>>()
        .join("\n");
    let hung = |text: &str| {
        let rig = rig(text);
        let case = Case::new(&rig);
        let float = case.float().expect("afloat");
        let state = float.loadings[0].judged().expect("a state");
        let of = |pounds: f64| {
            let found = state.entries.iter().find(|one| (one.weight.mass.value / 0.453_592_37 - pounds).abs() < 1e-6);
            found.map(|entry| entry.weight.centre)
        };
        (float.on_stern(state), of(300.0), of(60.0))
    };
    let (found, engine, bracket) = hung(&with);
    let ((middle, mass), engine, bracket) = (found.expect("hung"), engine.expect("engine"), bracket.expect("bracket"));
    assert!((mass.value / 0.453_592_37 - 360.0).abs() < 1e-9);
    for axis in 0..3 {
        let by_hand = (300.0 * engine[axis] + 60.0 * bracket[axis]) / 360.0;
        assert!((middle[axis] - by_hand).abs() < 1e-12, "{middle} {engine} {bracket}");
    }
    assert_eq!(hung(&without).0, None);
}
