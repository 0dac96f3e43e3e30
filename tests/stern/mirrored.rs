//! A boat seen in a mirror.

use proptest::prelude::*;
use sternknee::case::Case;
use sternknee::case::float::{Crew, Heeled};
use sternknee::rules::{self, Finding};

use crate::{ledger, rig, skiff};

/// The same boat with port and starboard changed.
fn mirrored(text: &str) -> String {
    text.replace("port(", "PORT(")
        .replace("starboard(", "port(")
        .replace("starPORT(", "port(")
        .replace("PORT(", "starboard(")
}

fn findings(text: &str) -> Vec<(&'static str, Finding)> {
    let rig = rig(text);
    let case = Case::new(&rig);
    let judged = rules::judge(&case);
    judged
        .into_iter()
        .map(|judged| (judged.rule.id, judged.finding))
        .filter(|(id, _)| id.starts_with("stern/"))
        .collect()
}

fn across(inches: f64) -> String {
    let side = if inches < 0.0 { "starboard" } else { "port" };
    format!("{side}(\"{} in\")", inches.abs())
}

#[test]
fn a_mirror_changes_port_and_starboard() {
    assert_eq!(mirrored("port(\"1 in\"), starboard(\"2 in\")"), "starboard(\"1 in\"), port(\"2 in\")");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn a_mirrored_boat_gets_the_same_verdicts_and_figures(
        engine in 100.0f64..700.0, engine_at in -14.0f64..14.0, battery_at in -30.0f64..30.0, edge_at in -30.0f64..30.0,
        lip in 14.0f64..24.0, top in 2.0f64..9.0,
    ) {
        let more = format!(
            r#"{} goes_on: [(what: "battery", weight: "120 lb", forward: "2 ft", across: {}, above: "{top} ft")],"#,
            ledger(lip), across(battery_at)
        );
        let hatch = format!(r#"edges: [(name: "hatch", kind: other, forward: "6 ft", across: {}, up: "22 in"), "#, across(edge_at));
        let text = skiff(engine.round(), engine_at, &more).replace("edges: [", &hatch);
        let (one, other) = (findings(&text), findings(&mirrored(&text)));
        for ((id, one), (_, other)) in one.iter().zip(&other) {
            prop_assert_eq!(one.verdict, other.verdict, "{}", id);
            if let (Some(a), Some(b)) = (one.found, other.found) {
                prop_assert!((a.si - b.si).abs() < 1e-7, "{}: {} and {}", id, a.si, b.si);
            }
        }
        let arms = |text: &str| {
            let rig = rig(text);
            let case = Case::new(&rig);
            let float = case.float().unwrap();
            let state = float.loadings[0].judged().unwrap();
            let side = float.worse_side(state);
            let arms: Vec<f64> = float.arms(state, side).iter().map(|arm| arm.arm.value).collect();
            (side, arms)
        };
        let ((side, arms), (other_side, other_arms)) = (arms(&text), arms(&mirrored(&text)));
        prop_assert_eq!(arms.len(), other_arms.len());
        for (a, b) in arms.iter().zip(&other_arms) {
            prop_assert!((a - b).abs() < 1e-9, "{} {}", a, b);
        }
        if (battery_at + engine_at * engine / 120.0).abs() > 1.0 {
            prop_assert!(side != other_side);
        }
    }
}

/// A boat that lists to port has less to right her on that side.
#[test]
fn arms_are_taken_on_the_side_to_which_she_lists() {
    for (port_in, side) in [(12.0, Heeled::ToPort), (-12.0, Heeled::ToStarboard), (0.0, Heeled::ToStarboard)] {
        let rig = rig(&skiff(400.0, port_in, &ledger(20.0)));
        let case = Case::new(&rig);
        let float = case.float().unwrap();
        let state = float.loadings[0].judged().unwrap();
        assert_eq!(float.worse_side(state), side);
        let arms = float.arms(state, side);
        if port_in != 0.0 {
            assert!(arms[0].arm.value < 0.0, "she heels further of herself");
        }
        assert!(arms.last().unwrap().heel.value > 1.0, "heels are told without their side");
    }
}

/// Of both rails the worse is told: the one to which she lists already, before and after alike.
#[test]
fn the_crew_is_put_at_the_rail_to_which_she_lists() {
    for (port_in, rail) in [(12.0, "port"), (-12.0, "starboard")] {
        let rig = rig(&skiff(400.0, port_in, &ledger(20.0)));
        let case = Case::new(&rig);
        let float = case.float().unwrap();
        let tested = float.loadings.iter().find(|loaded| loaded.crew == Crew::ToOneSide);
        for loaded in [tested, float.all_to_one_side.as_ref()].into_iter().flatten() {
            let state = loaded.judged().unwrap();
            let there = state.entries.iter().any(|entry| entry.name.contains(&format!("at the {rail} rail")));
            assert!(there, "{rail}: {:?}", state.entries);
            let heel = state.outcome.at_rest().unwrap().attitude().heel.value;
            assert!(heel * port_in < 0.0, "{rail}: {heel}");
        }
        assert!(tested.is_some() && float.all_to_one_side.is_some());
    }
}

/// At the rail a person's centre is 8 in inside the greatest breadth, all of the crew as high as the highest place.
#[test]
fn the_whole_crew_at_the_rail_stands_eight_inches_inside_it() {
    let rig = rig(&skiff(400.0, 12.0, &ledger(20.0)));
    let case = Case::new(&rig);
    let state = case.float().unwrap().all_to_one_side.as_ref().unwrap().judged().unwrap();
    let crew = state.entries.iter().find(|entry| entry.name.contains("rail")).unwrap();
    assert!((crew.weight.centre.y - 0.0254 * (40.0 - 8.0)).abs() < 1e-9, "{}", crew.weight.centre.y);
    assert!((crew.weight.centre.z - 0.0254 * 26.0).abs() < 1e-9, "{}", crew.weight.centre.z);
}

/// Too high a weight a little to port: she lolls to port as far as her mirror does to starboard.
#[test]
fn a_tender_boat_lolls_to_the_side_of_her_weight() {
    let heel = |port_in: f64| {
        let high = format!(
            r#"{} goes_on: [(what: "tower", weight: "700 lb", forward: "7 ft", across: {}, above: "7 ft")],"#,
            ledger(20.0),
            across(port_in)
        );
        let rig = rig(&skiff(300.0, 0.0, &high));
        let case = Case::new(&rig);
        let state = case.float().unwrap().loadings[0].judged().unwrap().clone();
        state.outcome.at_rest().unwrap().attitude().heel.value
    };
    for off in [0.001, 0.1, 1.0, 3.0] {
        let (port, starboard) = (heel(off), heel(-off));
        assert!(port < 0.0 && starboard > 0.0, "{off}: {port} {starboard}");
        assert!((port + starboard).abs() < 1e-7, "{off}: {port} {starboard}");
    }
}
