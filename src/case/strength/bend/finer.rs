//! Whether far finer meshes agree with the factors that are told.

use super::*;
use crate::case::Case;
use crate::catalog::Catalog;
use crate::{job, rig};

const SKIFF: &str = include_str!("../../../../catalogs/jobs/oyster_skiff.ron");
const LAUNCH: &str = include_str!("../../../../catalogs/jobs/harbour_launch.ron");
/// What a far finer mesh may change of a use of the strength.
const MOVES: f64 = 0.05;

/// Largest use of the strength in one case, on a mesh far finer everywhere and a thickness fine at every corner.
fn finely(board: &Board, panel: &Panel, laden: &Laden, case: usize) -> f64 {
    const FINE: Accuracy = Accuracy { relative: 0.003, fields: 0.07, most_unknowns: 80_000 };
    let sets = [loads(board, &laden.footings, case)];
    let shown = Shown { board, panel, sets: &sets };
    let solved = panel
        .solve_all(&sets, |solved| {
            let at = shown.worst(solved, 0).map(|(at, _)| at);
            let corners = panel.outline.iter().copied().chain(at);
            Wanted { sets: vec![(0, FINE)], places: corners.map(|at| (at, board.thickness())).collect() }
        })
        .expect("solved before");
    shown.worst(&solved, 0).expect("stress").1.utilisation
}

fn agree(text: &str) {
    let catalog = Catalog::built_in().expect("the built-in catalog is sound");
    let (job, _) = job::load("boat", text).unwrap_or_else(|faults| panic!("{faults}"));
    let rig = rig::resolve(&job, &catalog).expect("all its entries are in the catalog");
    let case = Case::new(&rig);
    let strength = case.strength().expect("strength");
    let board = &strength.board;
    let before = strength.before.as_ref().expect("an old engine");
    for laden in [&strength.after, before] {
        let stress = &laden.bent.stress;
        let fine = finely(board, &stress.panel, laden, stress.case);
        let change = stress.stress.utilisation / fine - 1.0;
        println!("{}: {change:+.3}", laden.cases[stress.case].name());
        assert!(change.abs() < MOVES, "{change}");
    }
    let knees = &strength.knees;
    let other = if knees.there { &[] } else { &knees.places[..] };
    let panel = board.panel(strength.left(), other).expect("a panel");
    let after = &strength.after;
    let fine = finely(board, &panel, after, after.bent.stress.case);
    let change = 1.0 / knees.other.expect("another panel").0 / fine - 1.0;
    println!("knees put or taken away: {change:+.3}");
    assert!(change.abs() < MOVES, "{change}");
}

/// The skiff with a transom of these layers, so thick in all.
fn skiff_of(layers: &[(&str, &str)], thickness: &str) -> String {
    let list: String =
        layers.iter().map(|(material, thick)| format!("(material: \"{material}\", thickness: \"{thick}\"),")).collect();
    let from = SKIFF.find("lay_up: [").expect("a lay-up");
    let to = from + SKIFF[from..].find("        ],").expect("its end");
    format!("{}lay_up: [{list}{}", &SKIFF[..from], &SKIFF[to..])
        .replace("thickness: \"2-1/4 in\"", &format!("thickness: \"{thickness}\""))
}

#[test]
fn of_the_demos() {
    agree(SKIFF);
    agree(LAUNCH);
}

#[test]
fn of_a_thin_aluminium_transom() {
    agree(&skiff_of(&[("aluminium 5083-H116 plate", "5/16 in")], "5/16 in"));
}

#[test]
fn of_a_transom_whose_skins_carry_most() {
    let skin = ("glass/polyester laminate, mat and woven", "3/16 in");
    let core = ("Douglas-fir marine plywood", "1-3/8 in");
    agree(&skiff_of(&[skin, core, skin], "1-3/4 in"));
}

#[test]
fn of_a_transom_with_knees_that_end_below_its_edge() {
    let knees = r#"knees: [(at: port("20 in"), height: "18 in"), (at: starboard("20 in"), height: "18 in")],"#;
    agree(&SKIFF.replace("knees: [],", knees));
}

#[test]
fn of_a_transom_without_knees() {
    let from = LAUNCH.find("knees: [").expect("knees");
    let to = from + LAUNCH[from..].find(")],").expect("their end") + 3;
    agree(&format!("{}knees: [],{}", &LAUNCH[..from], &LAUNCH[to..]));
}
