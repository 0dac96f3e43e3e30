//! What lies under a nut and stands above a bolt: more of it never bears less, and a little more only a little.

use proptest::prelude::*;
use sternknee::physics::strength::bolts::{
    Bends, OldHole, UnderNut, clear_wood, indentation_capacity, on_core, pad, perimeter_of_round, punching_capacity,
    washer_area,
};
use sternknee::quantity::Dimensioned;
use sternknee::rules::Verdict;
use sternknee::working::{Sheet, Term};
use uom::si::f64::{Length, Pressure};
use uom::si::{length::millimeter, pressure::megapascal};

use super::{KNEES, between, boat, finding, remedy};

fn mm(value: f64) -> Length {
    Length::new::<millimeter>(value)
}

fn mpa(value: f64) -> Pressure {
    Pressure::new::<megapascal>(value)
}

fn bends(thickness: f64, strength: f64) -> Bends {
    Bends { thickness: mm(thickness), strength: mpa(strength) }
}

const BEARS_MPA: f64 = 5.0;
const HOLE_MM: f64 = 13.5;

/// Sinking in and punching, N.
fn capacities(under: &UnderNut, core: f64) -> [f64; 2] {
    let sheet = &mut Sheet::default();
    let pad = pad(sheet, under, mpa(BEARS_MPA));
    let thickness = Term::new("h", mm(core + 6.0));
    let perimeter = perimeter_of_round(sheet, &pad, &thickness);
    let punched = punching_capacity(sheet, &perimeter, &[(mm(6.0), mpa(16.0)), (mm(core), mpa(1.8))]);
    let across = on_core(sheet, pad, under, mpa(BEARS_MPA));
    let area = washer_area(sheet, across.value(), mm(HOLE_MM));
    let sinks = indentation_capacity(sheet, mpa(BEARS_MPA), &area, &across);
    [sinks.value().si(), punched.value().si()]
}

fn under() -> impl Strategy<Value = UnderNut> {
    let plate = proptest::option::of((20.0_f64..400.0, 1.0_f64..25.0, 20.0_f64..300.0));
    let skins = proptest::collection::vec((0.5_f64..12.0, 20.0_f64..250.0), 0..3);
    (15.0_f64..90.0, 0.5_f64..6.0, plate, skins, 60.0_f64..400.0).prop_map(|(washer, sheet, plate, skins, apart)| {
        UnderNut {
            nut: mm(19.0),
            washer: mm(washer),
            washer_sheet: bends(sheet, 210.0),
            plate: plate.map(|(side, thickness, strength)| (mm(side), bends(thickness, strength))),
            skins: skins.into_iter().map(|(thickness, strength)| bends(thickness, strength)).collect(),
            apart: mm(apart),
        }
    })
}

/// One thing more of what lies there, by so many millimetres.
fn with_more(under: &UnderNut, which: usize, by: f64) -> UnderNut {
    let mut more = under.clone();
    let by = mm(by);
    match which {
        0 => more.washer += by,
        1 => more.washer_sheet.thickness += by,
        2 => more.plate = more.plate.map(|(side, plate)| (side + by, plate)),
        3 => more.plate = more.plate.map(|(side, plate)| (side, Bends { thickness: plate.thickness + by, ..plate })),
        4 => more.plate = more.plate.or(Some((mm(60.0), bends(6.0, 215.0)))),
        _ => more.skins.push(Bends { thickness: by, strength: mpa(170.0) }),
    }
    more
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(500))]

    #[test]
    fn more_washer_plate_or_skin_never_bears_less(
        under in under(), which in 0_usize..6, by in 0.01_f64..60.0, core in 15.0_f64..70.0,
    ) {
        let less = capacities(&under, core);
        let more = capacities(&with_more(&under, which, by), core);
        for k in 0..2 {
            prop_assert!(more[k] >= less[k] * (1.0 - 1e-12), "{which} {by}: {less:?} {more:?}");
        }
        let thicker = capacities(&under, core + by);
        prop_assert!(thicker[1] >= less[1]);
    }

    #[test]
    fn a_little_more_under_a_nut_bears_a_little_more(under in under(), which in 0_usize..4, core in 15.0_f64..70.0) {
        let sizes = [under.washer, under.washer_sheet.thickness];
        let plate = under.plate.map(|(side, plate)| [side, plate.thickness]).unwrap_or_default();
        let size = [sizes[0], sizes[1], plate[0], plate[1]][which].si() * 1e3;
        let less = capacities(&under, core);
        prop_assume!(less[0] > 0.0);
        let more = capacities(&with_more(&under, which, 1e-3 * size), core);
        for k in 0..2 {
            prop_assert!((more[k] / less[k] - 1.0).abs() < 0.01, "{which}: {less:?} {more:?}");
        }
    }

    #[test]
    fn an_old_hole_that_moves_a_little_takes_a_little_more_or_less(
        across in -60.0_f64..60.0, up in -60.0_f64..120.0, radius in 2.0_f64..25.0,
        other in (-60.0_f64..60.0, -60.0_f64..120.0, 2.0_f64..25.0), to_edge in 30.0_f64..120.0,
    ) {
        let half = 0.5 * HOLE_MM;
        let hole = |y: f64, z: f64, r: f64| OldHole { across: [y - r, y + r], up: [z - r, z + r] };
        let second = hole(other.0, other.1, other.2);
        let wood = |y: f64, z: f64, r: f64| clear_wood(half, to_edge, &[hole(y, z, r), second]);
        let here = wood(across, up, radius);
        prop_assert!((0.0..=to_edge * (1.0 + 1e-12)).contains(&here));
        prop_assert!(clear_wood(half, to_edge, &[second]) >= here - 1e-9, "a hole adds no wood");
        // A thousandth of the distance to the edge: less than a hundredth of the wood, moved any way.
        let step = 1e-3 * to_edge;
        for (y, z, r) in [(step, 0.0, 0.0), (0.0, step, 0.0), (0.0, 0.0, step)] {
            let moved = wood(across + y, up + z, radius + r);
            prop_assert!((moved - here).abs() < 0.01 * to_edge, "{here} {moved}");
        }
    }
}

#[test]
fn wood_above_a_bolt_by_closed_form() {
    let hole = |across: [f64; 2], up: [f64; 2]| OldHole { across, up };
    assert_eq!(clear_wood(5.0, 40.0, &[]), 40.0);
    // Straight above: what lies below it or above it, the longer.
    assert_eq!(clear_wood(5.0, 40.0, &[hole([-6.0, 6.0], [25.0, 35.0])]), 25.0);
    assert_eq!(clear_wood(5.0, 40.0, &[hole([-6.0, 6.0], [5.0, 15.0])]), 25.0);
    // Above one half of the bolt only.
    assert_eq!(clear_wood(5.0, 40.0, &[hole([0.0, 12.0], [25.0, 35.0])]), 32.5);
    // The hole that the bolt itself stands in, beside it, below it.
    assert_eq!(clear_wood(5.0, 40.0, &[hole([-5.0, 5.0], [-10.0, 0.0])]), 40.0);
    assert_eq!(clear_wood(5.0, 40.0, &[hole([6.0, 16.0], [5.0, 15.0])]), 40.0);
}

const NO_PLATE: &str = r#"size: "1/2-13", grade: "A4-70", washer: "1 in""#;

#[test]
fn the_backing_plate_that_is_named_is_enough() {
    for (rule, thicknesses) in
        [("strength/washer-crush", ["2 in", "1-1/2 in"]), ("strength/punching", ["3/4 in", "1 in"])]
    {
        let mut cured = 0;
        let engines = ["four-stroke 40 hp inline-3", "four-stroke 60 hp inline-4", "four-stroke 115 hp inline-4"];
        for (engine, thickness) in engines.into_iter().flat_map(|engine| thicknesses.map(|thick| (engine, thick))) {
            let job = |bolts: &str| {
                boat(engine, bolts, KNEES, "").replace("\"2 in\", material", &format!("\"{thickness}\", material"))
            };
            let before = finding(rule, &job(NO_PLATE));
            // What the edge of the face punches through, no plate behind the bolts cures.
            if before.verdict == Verdict::Pass
                || !remedy(&before).starts_with("Set a backing plate")
                || remedy(&before).contains("Build")
            {
                continue;
            }
            let words = remedy(&before);
            let (width, height) = (between(&words, "plate, ", " by "), between(&words, " by ", " and "));
            let thick = between(&words, " and ", " thick");
            let plate = format!(
                r#"{NO_PLATE}, backing_plate: (material: "aluminium 5083-H116 plate", width: "{width}", height: "{height}", thickness: "{thick}")"#
            );
            let after = finding(rule, &job(&plate));
            assert_eq!(after.verdict, Verdict::Pass, "{engine} {thickness}: {words}: {after:?}");
            cured += 1;
        }
        assert!(cured > 0, "{rule}");
    }
}

#[test]
fn what_is_not_told_of_the_fastening_never_fails() {
    let rules = [
        "strength/bolts-tension",
        "strength/bolts-shear",
        "strength/bolts-combined",
        "strength/core-bearing",
        "strength/washer-crush",
        "strength/top-edge-tear",
        "strength/bolt-torque",
    ];
    for engine in ["four-stroke 60 hp inline-4", "four-stroke 115 hp inline-4", "four-stroke 150 hp inline-4"] {
        for rule in rules {
            let found = finding(rule, &boat(engine, "", KNEES, ""));
            assert!(
                matches!(found.verdict, Verdict::Pass | Verdict::Unmeasured),
                "{engine} {rule}: {:?}",
                found.verdict
            );
        }
    }
}

#[test]
fn thicker_and_larger_washers_told_raise_the_factor() {
    let factor = |washers: &str| {
        let bolts = format!(r#"size: "1/2-13", grade: "A4-70", {washers}"#);
        finding("strength/washer-crush", &boat("four-stroke 115 hp inline-4", &bolts, KNEES, "")).found.unwrap().si
    };
    let thin = factor(r#"washer: "2 in""#);
    assert!(factor(r#"washer: "2 in", washer_thickness: "3/16 in""#) > 1.2 * thin);
    assert!(factor(r#"washer: "1 in""#) < 0.9 * thin);
    // A plate of its own behind each bolt, smaller than the pattern.
    let small = r#"washer: "2 in", backing_plate: (material: "aluminium 5083-H116 plate", width: "4 in", height: "4 in", thickness: "1/4 in")"#;
    assert!(factor(small) > 1.2 * thin);
}
