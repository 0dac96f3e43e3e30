//! In which loading each question is asked, and how near the answers can be.

use sternknee::case::Case;
use sternknee::case::float::{Crew, Movable};
use sternknee::quantity::Units;
use sternknee::rules::{Finding, Verdict};

use crate::{finding, ledger, rig, skiff};

/// A riveted boat of 12 ft by 58 in with 9.9 hp, two persons on her seats, and this on her plate.
fn twelve_footer(total: &str) -> String {
    format!(
        r#"(
    boat: (craft: monohull, bottom: vee, length: "12 ft", beam: "58 in", transom_width: "50 in", fuel: portable_tanks),
    plate: capacity(persons: 3, persons_weight: "430 lb", total_weight: "{total}", power: "10 hp"),
    transom: (height: "15.75 in", angle: "12 deg"),
    engines_on: [(class: "four-stroke 9.9 hp inline-2", shaft: "15 in", at: [centre], holes_up: 0)],
    hull: tape(sections: [
        (forward: "0 in", keel: "0 in", chine: (out: "22 in", up: "1.92 in"), sheer: (out: "25 in", up: "22 in")),
        (forward: "47.5 in", keel: "0 in", chine: (out: "22.4 in", up: "2.32 in"), sheer: (out: "28.6 in", up: "22.7 in")),
        (forward: "83.5 in", keel: "0.44 in", chine: (out: "21.1 in", up: "3.47 in"), sheer: (out: "29 in", up: "24.2 in")),
        (forward: "113.8 in", keel: "3.74 in", chine: (out: "14.5 in", up: "8.28 in"), sheer: (out: "24.1 in", up: "26.6 in")),
        (forward: "137.5 in", keel: "22 in", chine: (out: "0 in", up: "25.74 in"), sheer: (out: "0 in", up: "29.7 in")),
    ]),
    afloat: (water: fresh),
    weights: (boat: (weight: "150 lb", forward: "62 in", above: "10 in"), person: "185 lb", crew: 2,
        places: [(what: "aft seat", holds: 1, forward: "26 in", above: "24 in"), (what: "middle seat", holds: 2, forward: "72 in", above: "24 in")],
        gear: [(what: "portable tank, full", weight: "45 lb", forward: "30 in", above: "8 in")]),
    edges: [(name: "transom's top", kind: well, forward: "0 in", up: "15.4 in")],
)"#
    )
}

fn words(finding: &Finding) -> String {
    finding.summary.show(Units::Us)
}

#[test]
fn a_small_sound_skiff_carries_sixty_per_cent_of_her_crew_at_the_rail() {
    let text = twelve_footer("600 lb");
    for id in ["stern/crew-to-side", "stern/metacentric-height"] {
        assert_eq!(finding(id, &text).verdict, Verdict::Pass, "{id}");
    }
    let words = words(&finding("stern/crew-to-side", &text));
    assert!(words.contains("60 % of 2 persons"), "{words}");
    assert!(words.contains("With 2 persons, at the starboard rail (370 lb) she turns over"), "{words}");
}

/// 33 CFR 183.41: 0.6 of the weight of two persons of 185 lb, on the seat 10 in under their centres.
#[test]
fn at_the_rail_lie_six_tenths_of_the_crews_weight_at_the_height_of_the_seat() {
    let rig = rig(&twelve_footer("600 lb"));
    let case = Case::new(&rig);
    let float = case.float().unwrap();
    let loaded = float.loadings.iter().find(|loaded| loaded.crew == Crew::ToOneSide).unwrap();
    let entries = &loaded.judged().unwrap().entries;
    let entry = entries.iter().find(|entry| entry.name.ends_with("rail")).unwrap();
    assert!((entry.weight.mass.value / 0.453_592_37 - 222.0).abs() < 1e-6);
    assert!((entry.weight.centre.z / 0.0254 - 14.0).abs() < 1e-9);
}

#[test]
fn a_plate_agrees_with_a_shape_as_nearly_as_a_tape_tells_it() {
    let verdict = |total: &str| finding("stern/capacity-from-shape", &twelve_footer(total)).verdict;
    assert_eq!(verdict("500 lb"), Verdict::Pass);
    assert_eq!(verdict("600 lb"), Verdict::Pass);
    assert_eq!(verdict("690 lb"), Verdict::Pass);
    assert_eq!(verdict("700 lb"), Verdict::Warn);
}

/// Who goes out alone sits at the helm, and nowhere else.
#[test]
fn one_person_takes_the_foremost_place_alone() {
    let rig = rig(&skiff(300.0, 0.0, &ledger(20.0).replace("crew: 2", "crew: 1")));
    let case = Case::new(&rig);
    let float = case.float().unwrap();
    let loaded = float.loadings.iter().find(|loaded| loaded.crew == Crew::AtStations).unwrap();
    let persons: Vec<_> =
        loaded.judged().unwrap().entries.iter().filter(|entry| entry.name.contains("1 person")).collect();
    assert_eq!(persons.len(), 1, "{persons:?}");
    assert!((persons[0].weight.centre.x - 8.0 * 0.3048).abs() < 1e-9, "{:?}", persons[0]);
}

#[test]
fn one_loading_always_has_nobody_aboard() {
    let given = r#"conditions: [(name: "hauling", crew: [(at: "aft")])],"#;
    for more in ["", given] {
        let rig = rig(&skiff(300.0, 0.0, &format!("{} {more}", ledger(20.0))));
        let case = Case::new(&rig);
        let loadings = &case.float().unwrap().loadings;
        assert!(loadings.iter().any(|loaded| loaded.crew == Crew::Ashore), "{more}");
    }
}

#[test]
fn persons_aboard_do_not_keep_an_engine_in_the_water() {
    let judge = |crew: &str| {
        let text = skiff(300.0, 0.0, &ledger(20.0)).replace("crew: 2", crew);
        let engine = text.find("engines_on: [").unwrap();
        let end = engine + text[engine..].find('\n').unwrap();
        let class =
            r#"engines_on: [(class: "four-stroke 60 hp inline-4", shaft: "20 in", at: [centre], holes_up: 1)],"#;
        finding("swing/lifts-clear", &format!("{}{class}{}", &text[..engine], &text[end..]))
    };
    let (one, six) = (judge("crew: 1"), judge("crew: 6"));
    assert_eq!(one.verdict, Verdict::Pass, "{one:?}");
    assert_eq!(one.found, six.found);
    assert_eq!(one.verdict, six.verdict);
}

/// A cockpit sole and outlets at these heights.
fn drained(sole: f64, outlet: f64, more: &str) -> String {
    let drains = format!(
        r#"edges: [(name: "sole", kind: sole, forward: "2 ft", up: "{sole} in"),
        (name: "outlet", kind: scupper, across: port("25 in"), both_sides: true, up: "{outlet} in"),"#
    );
    skiff(300.0, 0.0, &format!("{} {more}", ledger(20.0))).replace("edges: [", &drains)
}

#[test]
fn outlets_under_water_with_the_crew_aft_are_told_and_not_judged() {
    let ordinary = finding("stern/scuppers", &drained(12.0, 9.5, ""));
    assert_eq!(ordinary.verdict, Verdict::Pass, "{ordinary:?}");
    assert!(words(&ordinary).contains("let flaps or valves keep it out there"), "{}", words(&ordinary));
    let at_the_mooring = finding("stern/scuppers", &drained(12.0, 7.0, ""));
    assert_eq!(at_the_mooring.verdict, Verdict::Warn, "{at_the_mooring:?}");
    let with_the_usual_crew = finding("stern/scuppers", &drained(8.5, 8.4, ""));
    assert_eq!(with_the_usual_crew.verdict, Verdict::Warn, "{with_the_usual_crew:?}");
}

#[test]
fn a_sheer_under_water_fails_in_whatever_loading_the_job_gives() {
    let load = |crew: u32| {
        let given =
            format!(r#"conditions: [(name: "out", crew: [(persons: {crew}, forward: "4 ft", above: "20 in")])],"#);
        finding("stern/freeboard", &skiff(300.0, 0.0, &format!("{} {given}", ledger(20.0)))).verdict
    };
    assert_eq!(load(3), Verdict::Pass);
    assert_eq!(load(40), Verdict::Fail);
}

#[test]
fn a_loading_in_which_she_sinks_or_turns_over_passes_no_rule_of_heights() {
    let sinks = r#"(name: "stone", also: [(what: "stone", weight: "15,000 lb", forward: "7 ft", above: "1 ft")])"#;
    let turns = r#"(name: "mast", also: [(what: "safe", weight: "1,500 lb", forward: "7 ft", above: "16 ft")])"#;
    for bad in [sinks, turns] {
        let more = format!(r#"conditions: [(name: "fine", crew: [(at: "helm")]), {bad}],"#);
        let text = drained(17.0, 16.0, &more).replace(
            "at: [port(\"0 in\")]",
            r#"at: [port("0 in")], bracket: (described: (kind: frame, setback: "20 in", drop: "0 in", weight: "60 lb"), bottom: "18 in")"#,
        );
        for (id, verdict) in [
            ("stern/freeboard", Verdict::Fail),
            ("stern/well-edge", Verdict::Fail),
            ("stern/scuppers", Verdict::Warn),
            ("stern/bracket-immersion", Verdict::Warn),
            ("stern/metacentric-height", Verdict::Fail),
        ] {
            let found = finding(id, &text);
            assert_eq!(found.verdict, verdict, "{id}: {found:?}");
        }
    }
}

#[test]
fn nobody_is_told_to_move_a_built_in_tank_or_persons() {
    let tank =
        r#"tanks: [(what: "fuel tank", holds: fuel, capacity: "60 gal", forward: "2 ft", above: "8 in")], places: ["#;
    let text = skiff(900.0, 0.0, &ledger(17.0)).replace("places: [", tank);
    let finding = finding("stern/well-edge", &text);
    assert!(finding.verdict < Verdict::Pass);
    let words = finding.remedy.unwrap().show(Units::Us);
    assert!(!words.contains("fuel tank"), "{words}");
    let rig = rig(&text);
    let case = Case::new(&rig);
    let float = case.float().unwrap();
    let state = float.loadings.iter().find(|loaded| loaded.crew == Crew::Aft).unwrap().judged().unwrap();
    let shifts = float.shifts(state, &|_| -1.0);
    assert!(shifts.iter().all(|shift| shift.movable == Movable::Item), "{shifts:?}");
}

#[test]
fn no_head_of_a_table_names_a_unit_that_its_figures_may_not_have() {
    let rig = rig(&skiff(300.0, 0.0, &ledger(20.0)));
    let case = Case::new(&rig);
    for part in case.float_parts() {
        for head in part.tables.iter().flat_map(|table| &table.heads) {
            assert!(!head.contains("inch") && !head.split(' ').any(|word| word == "in"), "{head}");
        }
    }
}

#[test]
fn a_helm_to_one_side_is_no_list_of_hers() {
    let helm = r#"(what: "helm", holds: 2, forward: "8 ft", across: starboard("10 in"), above: "26 in")"#;
    let text =
        skiff(300.0, 0.0, &ledger(20.0)).replace(r#"(what: "helm", holds: 2, forward: "8 ft", above: "26 in")"#, helm);
    assert!(text.contains("starboard(\"10 in\")"));
    assert_eq!(finding("stern/list", &text).verdict, Verdict::Pass);
}

/// One after the other in each place that has room, from the foremost aft; whom no place holds stands in the foremost.
#[test]
fn the_crew_sit_from_the_foremost_place_aft_and_nobody_sits_twice() {
    // Of the two seats of the twelve-footer: the aft one holds one, the middle one two.
    for (crew, aft, middle) in [(1, 0.0, 1.0), (2, 1.0, 1.0), (3, 1.0, 2.0), (5, 1.0, 4.0)] {
        let text = twelve_footer("600 lb").replace("crew: 2", &format!("crew: {crew}"));
        let rig = rig(&text);
        let case = Case::new(&rig);
        let float = case.float().unwrap();
        let loaded = float.loadings.iter().find(|loaded| loaded.crew == Crew::AtStations).unwrap();
        let on = |forward_in: f64| -> f64 {
            let here = loaded.judged().unwrap().entries.iter().filter(|entry| entry.movable == Movable::Persons);
            let here = here.filter(|entry| (entry.weight.centre.x / 0.0254 - forward_in).abs() < 1e-6);
            here.map(|entry| entry.weight.mass.value / 0.453_592_37 / 185.0).sum()
        };
        assert!(
            (on(26.0) - aft).abs() < 1e-9 && (on(72.0) - middle).abs() < 1e-9,
            "{crew}: {} and {}",
            on(26.0),
            on(72.0)
        );
    }
}
