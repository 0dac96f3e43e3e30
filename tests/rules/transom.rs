//! The transom as a plate: its outline, what lies under its nuts, what it hands over, and what is told of it.

use std::sync::Arc;

use sternknee::case::strength::{Bent, Board, FlexTest, Guessed, Open, Store, Strength, Way, support};
use sternknee::case::{Begun, Case};
use sternknee::physics::strength::bolts::bolt_forces;
use sternknee::physics::strength::knockdown::KnockDown;
use sternknee::physics::strength::loads::FaceLoad;
use sternknee::physics::strength::panel::SupportPart;
use sternknee::physics::strength::panel_loads;
use sternknee::quantity::{Dimensioned, Units, standard_gravity};

use crate::common::{near, rig};

const INCH: f64 = 0.0254;
/// Width of the strip along the edge of a face by which it presses. Common practice, no source.
const STRIP_IN: f64 = 1.5;

/// A small boat with a sound transom. Invented.
const BOAT: &str = r#"(
    boat: (craft: monohull, construction: plywood_on_frames, length: "18 ft", transom_width: "7 ft", deadrise: "12 deg", chine_beam: "6 ft 4 in"),
    transom: (
        height: "20-1/2 in", angle: "14 deg", cutout_width: "36 in", upper_holes: "1-7/8 in",
        thickness: "2 in", material: "Douglas-fir marine plywood", core: sound,
    ),
    structure: (sides: bonded, bottom: bonded, deck: loose, corner_height: "30 in", knees: [], stringers: []),
    operating: (top_speed: "30 mph", old_top_speed: "30 mph", acceleration: "2 gn"),
    engines_on: [(class: "four-stroke 60 hp inline-4", shaft: "20 in", at: [centre], holes_up: 0, bolts: (size: "1/2-13", grade: "A4-70", washer: "2 in"))],
)"#;

/// The boat with each of these words replaced, which must be there.
fn boat(changes: &[(&str, &str)]) -> String {
    changes.iter().fold(BOAT.to_owned(), |text, (from, to)| {
        assert!(text.contains(from), "no `{from}`");
        text.replacen(from, to, 1)
    })
}

fn strength<R>(text: &str, ask: impl FnOnce(&Strength) -> R) -> R {
    let rig = rig(text);
    let case = Case::new(&rig);
    ask(case.strength().unwrap_or_else(|why| panic!("{why:?}")))
}

const KNEES: (&str, &str) =
    ("knees: []", r#"knees: [(at: port("9 in"), height: "20 in"), (at: starboard("9 in"), height: "20 in")]"#);

/// The twins of a broad boat.
const TWINS: (&str, &str) = ("at: [centre]", r#"at: [port("16 in"), starboard("16 in")]"#);

/// A free body: what the lines that hold the transom take is as much as the engines bring, and turns it as much about the
/// bottom's middle, up and across. A push that is straight along a line is summed exactly by Simpson's rule, its moments too.
#[test]
fn what_holds_the_transom_takes_all_that_the_engines_bring() {
    for changes in [&[][..], &[KNEES], &[TWINS, ("cutout_width: \"36 in\"", "cutout_width: \"60 in\"")]] {
        strength(&boat(changes), |strength| {
            let mut yawed = 0;
            for (i, effect) in strength.after.bent.effects.iter().enumerate() {
                let seam = effect.seam.expect("lines that hold it");
                // As much stands behind it as is kindest: all of it, or less.
                let boards = std::iter::once(strength.board.clone()).chain(strength.board.with_less());
                let sums = boards.map(|board| {
                    let mut sum = [0.0; 3];
                    for (_, [a, b]) in board.seams() {
                        let length = (b[0] - a[0]).hypot(b[1] - a[1]);
                        for (part, weight) in [(0.0, 1.0), (0.5, 4.0), (1.0, 1.0)] {
                            let [y, z] = [0, 1].map(|k| a[k] + part * (b[k] - a[k]));
                            let push = seam.at_place([y, z]) * length * weight / 6.0;
                            sum = [sum[0] + push, sum[1] + push * y, sum[2] + push * z];
                        }
                    }
                    sum
                });
                let brought = strength.after.footings.iter().fold([0.0; 3], |sum, footing| {
                    let ([y, z], load) = (footing.middle, footing.loads[i]);
                    let [forward, _, _] = load.force;
                    let [_, pitch, yaw] = load.moment;
                    yawed += i32::from(yaw.abs() > 1.0);
                    // A turn to port about up pushes aft to port; one about port pushes forward on top.
                    [sum[0] - forward, sum[1] - forward * y + yaw, sum[2] - forward * z - pitch]
                });
                let size = brought.iter().map(|part| part.abs()).fold(1.0, f64::max);
                let fits = |sum: [f64; 3]| sum.iter().zip(brought).all(|(a, b)| (a - b).abs() < 1e-8 * size);
                let sums: Vec<[f64; 3]> = sums.collect();
                assert!(sums.iter().any(|sum| fits(*sum)), "case {i}: {brought:?} and {sums:?}");
            }
            assert!(yawed > 0, "a hard turn turns it");
        });
    }
}

/// A weight on a lower unit hangs plumb under its own engine: it pulls off the transom what the lean makes of it, turns it over its
/// top by its arm, and to neither side. The deflection that the flex test names is that of this load, and the seat's half millimetre.
#[test]
fn the_flex_test_is_reckoned_with_a_weight_plumb_under_its_own_engine() {
    for changes in [&[][..], &[TWINS, ("cutout_width: \"36 in\"", "cutout_width: \"60 in\"")]] {
        let text = boat(changes).replace("core: sound", "core: suspect");
        strength(&text, |strength| {
            let test = strength.core.test.as_ref().expect("a doubtful core is to be tried");
            let (board, footing) = (&strength.board, &strength.after.footings[0]);
            let [y, z] = footing.middle;
            assert!((y / INCH - if changes.is_empty() { 0.0 } else { 16.0 }).abs() < 1e-9);
            let (sin, cos) = 14_f64.to_radians().sin_cos();
            let weight = FlexTest::WEIGHT * standard_gravity().si();
            // From the bolts up along the transom to its top, and from there level aft.
            let up = 20.5 * INCH - z;
            let (aft, above) = (up * sin + test.arm, up * cos);
            // About port the weight turns it by its arm; about up, and along it, by nothing.
            let load = FaceLoad { force: [-weight * sin, 0.0, -weight * cos], moment: [0.0, -weight * aft, 0.0] };
            assert!(above > 0.0);
            let forces = bolt_forces(&footing.bolts, footing.face, load.on_bolts(footing.middle)).expect("bolts");
            let loads = panel_loads(&footing.bolts, footing.face, &forces, &footing.spreads(board), STRIP_IN * INCH);
            let factored = board.factored(KnockDown::SOUND, &board.meshed(0.5)).expect("a panel");
            let bent = factored.bend(&[&loads[..]]).expect("bends");
            let moved = factored.deflection_at(&bent[0], [y, board.top * (1.0 - 1e-6)]).expect("on the panel");
            near(test.moves - 0.5e-3, moved.abs(), 1e-9 * moved.abs());
        });
    }
}

/// A moulded boat of whose transom nothing but the thickness was told.
fn hardly_told(thickness: &str) -> String {
    boat(&[
        ("plywood_on_frames", "moulded_glass"),
        ("thickness: \"2 in\"", &format!("thickness: \"{thickness}\"")),
        (
            "(sides: bonded, bottom: bonded, deck: loose, corner_height: \"30 in\", knees: [], stringers: [])",
            "(corner_height: \"30 in\")",
        ),
        (", bolts: (size: \"1/2-13\", grade: \"A4-70\", washer: \"2 in\")", ""),
    ])
}

/// What decides is what, told at its best and alone, lifts the factor by more than a mesh is off; the greatest lift comes first.
/// Each is told here in the job itself.
#[test]
fn what_decides_a_factor_is_what_lifts_it_when_it_is_told() {
    let text = hardly_told("1-1/2 in");
    let rig = rig(&text);
    let case = Case::new(&rig);
    let open = case.strength().expect("strength");
    let told = |field: &str| {
        let told = text.replace("(corner_height", &format!("({field}, corner_height"));
        assert_ne!(told, text);
        strength(&told, |known| known.after.bent.factor(Way::Bending))
    };
    let least = open.after.bent.factor(Way::Bending);
    // As the best of boats are guessed to have them, nine tenths of 20-1/2 in high.
    let knee = |side: &str, off: u32| format!("(at: {side}(\"{off} in\"), height: \"18.45 in\")");
    let knees = [knee("port", 12), knee("starboard", 12), knee("port", 30), knee("starboard", 30)].join(", ");
    let stringers = r#"(at: port("16 in"), height: "10 in"), (at: starboard("16 in"), height: "10 in")"#;
    let alone = [
        (Open::Knees, told(&format!("knees: [{knees}]"))),
        (Open::Stringers, told(&format!("stringers: [{stringers}]"))),
        (Open::Bonds, told("sides: built_in, bottom: built_in")),
        (Open::Deck, told("deck: bonded")),
    ];
    let decides = open.decides(&rig, Way::Bending);
    for (which, factor) in alone {
        let lift = factor / least;
        assert!(!(1.01..1.03).contains(&lift), "{which:?} lifts it by {lift}: too near to tell");
        assert_eq!(decides.contains(&which), lift > 1.02, "{which:?} lifts it by {lift}: {decides:?}");
    }
    assert!(!decides.contains(&Open::Stringers));
    let lift = |which: &Open| alone.iter().find(|(one, _)| one == which).map(|(_, factor)| *factor);
    let lifts: Vec<f64> = decides.iter().filter_map(lift).collect();
    assert!(lifts.windows(2).all(|pair| pair[0] >= 0.99 * pair[1]), "{decides:?} {lifts:?}");
}

/// A cure is the least of its sort: with the transom built up so much in the job itself she is strong enough, as told, and with
/// a step of a quarter of an inch less she is not.
#[test]
fn a_transom_that_has_knees_is_built_up_by_no_more_than_it_needs() {
    let with = |thickness: f64| {
        boat(&[
            KNEES,
            ("four-stroke 60 hp inline-4", "four-stroke 115 hp inline-4"),
            ("thickness: \"2 in\"", &format!("thickness: \"{thickness} in\"")),
        ])
    };
    let factor = |thickness: f64| strength(&with(thickness), |strength| strength.after.bent.factor(Way::Bending));
    strength(&with(1.0), |strength| {
        let now = strength.after.bent.factor(Way::Bending);
        // A step less than one step is the transom as it is.
        for (times, more, less) in [(1.2, 0.25, now), (2.5, 1.0, factor(1.75))] {
            let enough = |bent: &Bent| bent.factor(Way::Bending) >= times * now;
            let (cure, bent) = strength.cure(&enough).expect("two inches more are enough");
            assert!(cure.knees.is_none());
            near(cure.more.si() / INCH, more, 1e-9);
            let built = factor(1.0 + more);
            near(bent.factor(Way::Bending), built, 1e-6);
            assert!(built >= times * now && less < times * now, "{times}: {built} {less} {now}");
        }
    });
}

/// Two jobs beside each other share what is alike of their transoms; what their tabs bear is not.
#[test]
fn tabs_are_judged_by_their_own_strength_whatever_was_reckoned_beside_them() {
    let tab = |thickness: &str| {
        boat(&[KNEES, ("(sides", &format!("(tabbing: (width: \"2 in\", thickness: \"{thickness}\"), sides"))])
    };
    let [strong, weak] = [tab("0.125 in"), tab("0.01 in")].map(|text| rig(&text));
    let used = |case: &Case| {
        let effects = case.strength().expect("strength").after.bent.effects.clone();
        effects.iter().map(|effect| effect.braced().held.part).collect::<Vec<_>>()
    };
    let store: Arc<Store> = Arc::default();
    let beside = |rig| used(&Case::beside(rig, Begun::default(), store.clone()));
    let (first, second) = (beside(&strong), beside(&weak));
    assert_eq!(first, used(&Case::new(&strong)));
    assert_eq!(second, used(&Case::new(&weak)));
    // A tab as thin as a twelfth bears a twelfth.
    assert!(first.iter().zip(&second).any(|(strong, weak)| *weak > 2.0 * strong), "{first:?} {second:?}");
}

/// The best of boats have two pairs of knees, 12 and 30 in off the centreline, nine tenths as high as the transom, and a pair of
/// stringers at 16 in; what was told is as it was told. Common practice, no source.
#[test]
fn what_was_not_told_stands_behind_the_best_transom_and_not_behind_the_least() {
    let behind = |board: &Board| {
        let mut knees: Vec<i64> = board.knees.iter().map(|knee| (knee.y / INCH).round() as i64).collect();
        let mut stringers: Vec<i64> = board.stringers.iter().map(|knee| (knee.y / INCH).round() as i64).collect();
        knees.sort_unstable();
        stringers.sort_unstable();
        (knees, stringers)
    };
    let of = |text: &str, guessed: Guessed| behind(&Board::of(&rig(text), guessed).expect("a board"));
    let text = hardly_told("1-1/2 in");
    let none = (vec![], vec![]);
    assert_eq!(of(&text, Guessed::LEAST), none);
    assert_eq!(of(&text, Guessed::BEST), (vec![-30, -12, 12, 30], vec![-16, 16]));
    assert_eq!(of(&text, Guessed::only(Open::Knees)), (vec![-30, -12, 12, 30], vec![]));
    assert_eq!(of(&text, Guessed::only(Open::Stringers)), (vec![], vec![-16, 16]));
    for guessed in [Guessed::LEAST, Guessed::BEST] {
        assert_eq!(of(&boat(&[]), guessed), none);
        assert_eq!(of(&boat(&[KNEES]), guessed), (vec![-9, 9], vec![]));
    }
}

/// Of an isotropic material E = 2 G (1 + ν), and aluminium's ν is 0.33 (any handbook); a plate of it is as stiff as E t³ / 12 (1 − ν²),
/// and resists bending one way by ν of that the other way. Plywood's cross plies keep its ν at a tenth (Wood Handbook).
#[test]
fn a_plate_draws_in_sideways_as_its_material_does() {
    for (material, poisson, within) in
        [("aluminium 5083-H116 plate", 0.33, 0.005), ("Douglas-fir marine plywood", 0.1, 1e-9)]
    {
        let text = boat(&[("Douglas-fir marine plywood", material)]);
        strength(&text, |strength| {
            let stiff = strength.board.panel(KnockDown::SOUND).expect("a panel").section.stiffness;
            let weaker = stiff.d11.min(stiff.d22);
            near(stiff.d12 / weaker, poisson, within);
            if material.starts_with("aluminium") {
                let by_hand = 70e9 * (2.0 * INCH).powi(3) / (12.0 * (1.0 - 0.33 * 0.33));
                near(stiff.d11, by_hand, 0.003 * by_hand);
                near(stiff.d22, by_hand, 0.003 * by_hand);
            }
        });
    }
}

/// Shoulders less than 2 in wide, or less than 2 in high, are none: the top edge then is taken as level all across.
#[test]
fn a_cutout_that_leaves_hardly_a_shoulder_is_none() {
    for (cutout, corner, half_top) in [
        ("36 in", "30 in", 18.0),
        ("79 in", "30 in", 39.5),
        ("81 in", "30 in", 42.0),
        ("83 in", "30 in", 42.0),
        ("36 in", "23 in", 18.0),
        ("36 in", "22 in", 42.0),
        ("36 in", "20-1/2 in", 42.0),
    ] {
        let text = boat(&[
            ("cutout_width: \"36 in\"", &format!("cutout_width: \"{cutout}\"")),
            ("corner_height: \"30 in\"", &format!("corner_height: \"{corner}\"")),
        ]);
        let board = Board::of(&rig(&text), Guessed::LEAST).expect("a board");
        near(board.half_top / INCH, half_top, 1e-9);
        let highest = board.outline.iter().map(|corner| corner[1]).fold(0.0, f64::max);
        let stands: f64 = if half_top < 42.0 { corner.trim_end_matches(" in").parse().expect("inches") } else { 20.5 };
        near(highest / INCH, stands, 1e-9);
        // A cutout has two corners more on either side.
        assert_eq!(board.outline.len(), if half_top < 42.0 { 9 } else { 5 }, "{cutout} {corner}: {:?}", board.outline);
    }
}

/// Bolts in a row of the 3-4-5 triangle: of all pairs the nearest counts, measured straight from one to the other.
#[test]
fn the_nearest_two_bolts_share_the_wood_between_them() {
    for (places, apart) in [
        // Pairs 12 in across and 7 in up and down.
        ([(6.0, 2.0), (-6.0, 2.0), (6.0, 9.0), (-6.0, 9.0)], 7.0),
        // 8 in across and 10 in up and down.
        ([(4.0, 2.0), (-4.0, 2.0), (4.0, 12.0), (-4.0, 12.0)], 8.0),
        // 3 in across and 4 in up and down.
        ([(6.0, 2.0), (-6.0, 2.0), (3.0, 6.0), (-6.0, 14.0)], 5.0),
    ] {
        let bolts: Vec<String> = places
            .iter()
            .map(|&(y, below): &(f64, f64)| {
                let side = if y < 0.0 { "starboard" } else { "port" };
                format!("(at: {side}(\"{} in\"), below: \"{below} in\")", y.abs())
            })
            .collect();
        let text = boat(&[("washer: \"2 in\"", &format!("washer: \"2 in\", at: [{}]", bolts.join(", ")))]);
        strength(&text, |strength| {
            let under = strength.after.footings[0].under_nut(&strength.board);
            near(under.apart.si() / INCH, apart, 1e-9);
        });
    }
}

/// A bolt's pull comes onto the panel no nearer to its side than the chine: under a large plate on a narrow bottom it is that
/// which holds the outer bolts back, with a hundredth of the way left.
#[test]
fn what_a_bolt_presses_on_never_reaches_beyond_the_chine() {
    let plate = r#"washer: "2 in", backing_plate: (material: "aluminium 5083-H116 plate", width: "16 in", height: "17 in", thickness: "1/2 in")"#;
    let spreads = |chine: &str| {
        let text = boat(&[("6 ft 4 in", chine), ("12 deg", "1 deg"), ("washer: \"2 in\"", plate)]);
        strength(&text, |strength| {
            let (board, footing) = (&strength.board, &strength.after.footings[0]);
            let rooms = footing.bolts.iter().map(|bolt| board.chine[0] - bolt.y.abs());
            rooms.zip(footing.spreads(board)).collect::<Vec<_>>()
        })
    };
    let mut held = 0;
    for ((_, [free, _]), (room, [across, up])) in spreads("6 ft 4 in").into_iter().zip(spreads("16 in")) {
        near(across, free.min(2.0 * 0.99 * room), 1e-9);
        near(up, across, 1e-9);
        held += i32::from(across < 0.95 * free);
    }
    // The upper ones, which stand farther out.
    assert_eq!(held, 2);
}

/// Bottom, sides and deck are told by what stands along them.
#[test]
fn what_holds_the_transom_is_named_by_where_it_is() {
    let text = boat(&[
        KNEES,
        ("deck: loose", "deck: bonded"),
        ("stringers: []", r#"stringers: [(at: starboard("16 in"), height: "9 in")]"#),
    ]);
    strength(&text, |strength| {
        let board = &strength.board;
        let name = |part: SupportPart| support(part, board).show(Units::Us);
        let mut named: Vec<(String, f64, f64)> = board
            .seams()
            .into_iter()
            .map(|(part, [a, b])| (name(part), 0.5 * (a[0] + b[0]) / INCH, 0.5 * (a[1] + b[1]) / INCH))
            .collect();
        named.sort_by(|a, b| a.0.cmp(&b.0));
        let of =
            |what: &str| named.iter().find(|(name, ..)| name == what).unwrap_or_else(|| panic!("no {what}: {named:?}"));
        for (what, side) in [("bottom to port", 1.0), ("bottom to starboard", -1.0)] {
            let (_, y, z) = of(what);
            assert!((y - side * 19.0).abs() < 1e-6 && *z < 10.0, "{what}: {y} {z}");
        }
        for (what, side) in [("port side", 1.0), ("starboard side", -1.0)] {
            let (_, y, z) = of(what);
            assert!((y - side * 40.0).abs() < 1e-6 && *z > 10.0, "{what}: {y} {z}");
        }
        for (what, side) in [("deck to port", 1.0), ("deck to starboard", -1.0)] {
            let (_, y, z) = of(what);
            assert!(y * side > 18.0 && (z - 30.0).abs() < 1e-6, "{what}: {y} {z}");
        }
        for (what, at) in
            [("knee 9 in to port", 9.0), ("knee 9 in to starboard", -9.0), ("stringer 16 in to starboard", -16.0)]
        {
            assert!((of(what).1 - at).abs() < 1e-6, "{what}");
        }
    });
}

/// A free body: what each support gives adds up to what all of them give, and that holds the loads in balance, forward and about
/// both axes.
#[test]
fn the_free_body_of_the_panel_is_in_balance() {
    let rig = rig(&boat(&[KNEES, ("deck: loose", "deck: bonded")]));
    let parts = Case::new(&rig).strength_parts();
    let part = parts.iter().find(|part| part.title == "after: the transom panel").expect("the panel");
    let table = part.tables.iter().find(|table| table.title.starts_with("free body")).expect("a free body");
    let figure = |cell: &str| -> f64 {
        let number = cell.split(' ').next().expect("a word").replace(',', "").replace('−', "-");
        number.parse().unwrap_or_else(|_| panic!("no figure in `{cell}`"))
    };
    let rows: Vec<(String, [f64; 3])> = table
        .rows
        .iter()
        .map(|row| {
            let cells: Vec<String> = row.iter().map(|cell| cell.show(Units::Si)).collect();
            (cells[0].clone(), [1, 2, 3].map(|column| figure(&cells[column])))
        })
        .collect();
    let [supports @ .., (all, given), (loads, brought)] = rows.as_slice() else { panic!("{rows:?}") };
    assert_eq!([all.as_str(), loads], ["all supports", "all loads"]);
    assert_eq!(supports.len(), 8, "sides, two halves of the bottom, two decks, two knees");
    // Told to a hundredth of a kilonewton, and to a newton metre.
    for (axis, last) in [0.01, 1.0, 1.0].into_iter().enumerate() {
        let sum: f64 = supports.iter().map(|(_, push)| push[axis]).sum();
        near(sum, given[axis], 0.5 * last * supports.len() as f64);
        near(given[axis] + brought[axis], 0.0, last);
        assert!(brought[axis].abs() > 100.0 * last, "{brought:?}");
    }
}

/// What bends a transom most is worked out, and what moves it most in ordinary running besides where that is another case: a
/// slow boat is bent and moved most by full throttle at the dock, a fast one is bent most in a hard turn.
#[test]
fn the_panel_is_worked_out_once_where_one_case_bends_and_moves_it_most() {
    for (speed, times) in [("8 mph", 0), ("30 mph", 1)] {
        let rig = rig(&boat(&[("top_speed: \"30 mph\"", &format!("top_speed: \"{speed}\"")), ("2 gn", "0.2 gn")]));
        let parts = Case::new(&rig).strength_parts();
        let part = parts.iter().find(|part| part.title == "after: the transom panel").expect("the panel");
        let told: Vec<String> = part.sheet.lines().iter().map(|line| line.show(Units::Us)).collect();
        let count = |words: &str| told.iter().filter(|line| line.starts_with(words)).count();
        assert_eq!(count("the case that bends it most"), 1, "{told:#?}");
        assert_eq!(count("the case of ordinary running that moves it most"), times, "{told:#?}");
    }
}
