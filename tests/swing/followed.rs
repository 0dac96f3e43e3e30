//! What is printed of a least distance, redone from the corners that meet.

use sternknee::case::Case;
use sternknee::case::swing::{Swept, swept_working};
use sternknee::quantity::Units;
use sternknee::rules::Verdict;
use sternknee::working::Line;

use super::{RUNABOUT, SKIFF, judge, rig_of, with};

const LAUNCH: &str = include_str!("../../catalogs/jobs/harbour_launch.ron");
const KICKER: &str = include_str!("../boats/sound/22ft_walkaround_225hp_kicker.ron");
const STRIKES: &str = include_str!("../boats/unsound/kicker_against_the_main.ron");

fn sweeps(text: &str) -> Vec<Swept> {
    let rig = rig_of(text);
    let case = Case::new(&rig);
    let swing = case.swing();
    let answers = [&swing.full_tilt, &swing.raised, &swing.lock, &swing.neighbours, &swing.cylinder, &swing.tie_bar];
    answers.into_iter().flatten().flatten().cloned().collect()
}

/// The last line of the working is the distance; without it, the points would not have led there.
#[test]
fn the_way_of_the_corners_that_meet_leads_to_the_distance_that_was_certified() {
    let mut followed = 0;
    for text in [RUNABOUT, SKIFF, LAUNCH, KICKER, STRIKES] {
        for swept in sweeps(text) {
            let (corners, sheet) = swept_working(&swept);
            let last = sheet.lines().iter().rev().find_map(|line| match line {
                Line::Step { symbol, result, .. } if symbol == "d" => Some(result.si),
                Line::Step { .. } | Line::Remark(_) => None,
            });
            let distance = last.unwrap_or_else(|| panic!("{}: no distance", swept.label));
            assert!((distance - swept.clearance.upper.value).abs() <= 1e-6, "{}", swept.label);
            // A tie bar hangs between two engines and is of neither.
            assert!(corners.is_some() || !swept.scene.rods.is_empty(), "{}", swept.label);
            followed += 1;
        }
    }
    assert!(followed > 25, "{followed}");
}

#[test]
fn the_corner_that_strikes_stands_in_a_table_with_where_it_is_from() {
    let finding = judge(RUNABOUT, "swing/full-tilt");
    let table = finding.tables.iter().find(|table| table.title.starts_with("corners that meet")).expect("the corners");
    let words: Vec<String> = table.rows.iter().flatten().map(|cell| cell.show(Units::Us)).collect();
    let words = words.join(" | ");
    for part in ["corner of the forward edge of the powerhead cowl", "the cowl's reach forward", "9.50 in"] {
        assert!(words.contains(part), "{words}");
    }
}

#[test]
fn each_engine_tells_its_own_worst_beside_the_worst_of_all() {
    let finding = judge(SKIFF, "swing/full-tilt");
    let told: Vec<String> = finding.each.iter().map(|words| words.show(Units::Us)).collect();
    assert_eq!(told.len(), 1, "{told:?}");
    let (summary, other) = (finding.summary.show(Units::Us), &told[0]);
    let engine = |words: &str| if words.contains("port engine") { "port" } else { "starboard" };
    assert_ne!(engine(&summary), engine(other), "{summary} {other}");
    assert!(other.contains("comes within"), "{other}");
}

/// One obstacle does not hide another that stands too near as well.
#[test]
fn everything_that_stands_too_near_is_told_not_only_the_nearest() {
    let boxes = "obstacles: [\n        (name: \"cooler\", forward: (\"10 in\", \"20 in\"), across: (port(\"1 in\"), port(\"9 in\")), up: (\"2 in\", \"9 in\")),";
    let text = with(RUNABOUT, "obstacles: [", boxes);
    let finding = judge(&text, "swing/full-tilt");
    assert_eq!(finding.verdict, Verdict::Fail);
    let all: Vec<String> = finding.each.iter().chain([&finding.summary]).map(|words| words.show(Units::Us)).collect();
    for what in ["the cooler", "the forward wall of the well"] {
        assert!(all.iter().any(|words| words.contains(what)), "{what}: {all:?}");
    }
}
