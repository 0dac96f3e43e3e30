//! What the transom is as a panel, what lies on it, and what was taken for granted of both.

use sternknee::case::Case;
use sternknee::case::strength::show::place;
use sternknee::case::strength::{Part, Strength};
use sternknee::physics::strength::knockdown::{KnockDown, Percussion, by_percussion};
use sternknee::physics::strength::loads::Case as Kind;
use sternknee::quantity::{Dimensioned, Units, inches};
use sternknee::working::Sheet;

use super::{KNEES, boat, finding, rig};

const ENGINE: &str = "four-stroke 60 hp inline-4";
const BOLTS: &str = r#"size: "1/2-13", grade: "A4-70", washer: "2 in""#;
const IN: f64 = 0.0254;

fn strength<T>(text: &str, ask: impl FnOnce(&Strength) -> T) -> T {
    let rig = rig(text);
    let case = Case::new(&rig);
    ask(case.strength().expect("strength"))
}

#[track_caller]
fn near(found: f64, expected: f64) {
    assert!((found - expected).abs() <= 1e-9 * expected.abs(), "{found} is not {expected}");
}

/// A face 10 in square off a transom that leans 14 degrees stands 10 / cos 14° aft on the level.
#[test]
fn a_setback_is_longer_along_the_level_than_square_to_the_transom() {
    strength(&boat(ENGINE, BOLTS, KNEES, ""), |strength| {
        near(strength.board.level(inches(10.0)).si(), 10.0 * IN / 14.0_f64.to_radians().cos());
    });
}

#[test]
fn a_mesh_twice_as_fine_has_sides_half_as_long_and_means_over_the_same_width() {
    strength(&boat(ENGINE, BOLTS, KNEES, ""), |strength| {
        let [once, twice] = [1.0, 2.0].map(|times| strength.board.fineness(times));
        near(twice.size, 0.5 * once.size);
        near(twice.width, once.width);
    });
}

/// Of two pairs of knees either may be left out, or both: knees as far off the centreline go together.
#[test]
fn with_less_behind_it_whole_pairs_of_knees_are_gone() {
    let two = format!(r#"{KNEES}, (at: port("18 in"), height: "18 in"), (at: starboard("18 in"), height: "18 in")"#);
    strength(&boat(ENGINE, BOLTS, &two, ""), |strength| {
        let whole = strength.board.beds().len();
        let mut stand: Vec<Vec<i64>> = Vec::new();
        for less in strength.board.with_less() {
            assert!(less.beds().len() < whole, "{}", less.beds().len());
            let mut places: Vec<i64> = less.knees.iter().map(|knee| (knee.y / IN).round() as i64).collect();
            places.sort_unstable();
            stand.push(places);
        }
        for knees in [vec![], vec![-9, 9], vec![-18, 18]] {
            assert_eq!(stand.iter().filter(|places| **places == knees).count(), 1, "{knees:?} in {stand:?}");
        }
    });
}

/// Bolts under a plate, low over a deep vee: the corner of the square that is nearest to the hull still lies on the transom.
#[test]
fn what_a_bolt_presses_on_never_reaches_beyond_the_bottom() {
    let low = format!(
        r#"{BOLTS}, backing_plate: (material: "aluminium 5083-H116 plate", width: "16 in", height: "17 in", thickness: "1/2 in"),
            at: [(at: port("6.4 in"), below: "2 in"), (at: starboard("6.4 in"), below: "2 in"),
            (at: port("6.4 in"), below: "17 in"), (at: starboard("6.4 in"), below: "17 in")]"#
    );
    let text = boat(ENGINE, &low, KNEES, "").replace(r#"deadrise: "12 deg""#, r#"deadrise: "20 deg""#);
    strength(&text, |strength| {
        let (board, footing) = (&strength.board, &strength.after.footings[0]);
        let spreads = footing.spreads(board);
        for (bolt, [across, up]) in footing.bolts.iter().zip(&spreads) {
            let bottom = board.bottom(bolt.y.abs() + 0.5 * across).expect("within the chines");
            assert!(bolt.z - 0.5 * up > bottom, "{} {across} {up} {bottom}", bolt.z);
        }
        // It is the vee that holds the lower ones back.
        assert!(spreads[2][0] < 0.99 * spreads[0][0], "{spreads:?}");
    });
}

/// Bearing strength of the wood by the catalog, times half an inch of bolt, times two inches of wood.
#[test]
fn a_shank_bears_by_its_diameter_and_the_thickness_of_the_wood() {
    let rig = rig(&boat(ENGINE, BOLTS, KNEES, ""));
    let case = Case::new(&rig);
    let strength = case.strength().expect("strength");
    let bears = strength.board.layers[0].material.spec.bearing_strength.value.si();
    let holds = |left: KnockDown| {
        let sheet = &mut Sheet::default();
        strength.after.footings[0].capacity(sheet, Part::Bearing, &rig, &strength.board, left, 0)
    };
    near(holds(KnockDown::SOUND), bears * 0.5 * IN * 2.0 * IN);
    near(holds(KnockDown { strength: 0.4, ..KnockDown::SOUND }), 0.4 * bears * 0.5 * IN * 2.0 * IN);
}

/// The sound boat with a plate behind her transom, its top so far below the transom's.
fn on_plate(drop: &str) -> String {
    let plate = format!(
        r#"bracket: (described: (kind: setback_plate, setback: "10 in", drop: "{drop}", face_height: "12 in", engines: 1,
            rated_power: "150 hp", rated_weight: "400 lb", weight: "50 lb")), bolts: ("#
    );
    boat(ENGINE, BOLTS, KNEES, "").replace("bolts: (", &plate)
}

/// A drop is plumb, and the face leans: an inch down is 1 / cos 14° along it.
#[test]
fn the_face_of_a_plate_hung_lower_ends_lower() {
    let top = |drop: &str| strength(&on_plate(drop), |strength| strength.after.footings[0].face.top);
    near(top("0 in"), 20.5 * IN);
    near(top("1 in"), 20.5 * IN - 1.0 * IN / 14.0_f64.to_radians().cos());
}

/// A plate of 50 lb pulls down with its weight, and in a seaway with so many times more.
#[test]
fn a_brackets_own_weight_pulls_down_on_its_bolts() {
    strength(&on_plate("0 in"), |strength| {
        let (after, weight) = (&strength.after, 50.0 * 0.453_592_37 * 9.806_65);
        let mut counted = 0;
        for (case, acting) in after.cases.iter().zip(&after.footings[0].acting) {
            let own: Vec<f64> =
                acting.iter().filter(|(name, _)| name.contains("bracket")).map(|(_, acting)| acting.force[2]).collect();
            let times = match case.kind {
                Kind::Slamming => 1.0 + strength.driving.slamming,
                Kind::Trailer => continue,
                kind if kind.counts_weight() => 1.0,
                _ => {
                    assert!(own.is_empty());
                    continue;
                }
            };
            assert_eq!(own.len(), 1, "{acting:?}");
            near(own[0], -times * weight);
            counted += 1;
        }
        assert!(counted > 2, "{counted}");
    });
}

/// A reading that nobody took is told once, in a sentence; one that was taken, never.
#[test]
fn what_is_taken_of_a_propeller_is_said_where_it_was_not_told() {
    let text = boat(ENGINE, BOLTS, KNEES, "");
    let told = text.replace(
        "holes_up: 0, bolts:",
        r#"holes_up: 0, propeller: (blades: 3, area_ratio: 0.6, diameter: "11 in", pitch: "12 in"), bolts:"#,
    );
    assert_ne!(told, text);
    let said = |text: &str| {
        strength(text, |strength| strength.assumed.iter().map(|words| words.show(Units::Us)).collect::<Vec<_>>())
    };
    for (text, taken) in [(&text, 1), (&told, 0)] {
        let said = said(text);
        let of = |which: &str| {
            let words = format!("The propeller of the {which} is taken with 3 blades, ");
            said.iter().filter(|one| one.starts_with(&words)).count()
        };
        // The old engine's is not told either way.
        assert_eq!((of("engine"), of("old engine")), (taken, 1), "{said:#?}");
        for (i, one) in said.iter().enumerate() {
            assert!(!one.is_empty() && !said[..i].contains(one), "{one}: {said:#?}");
        }
    }
}

/// What hammer and word leave of a core, the worse of both.
#[test]
fn a_core_is_as_weak_as_the_worse_of_hammer_and_word() {
    for (core, hammer, left) in [
        ("sound", "sharp", Percussion::Sound),
        ("suspect", "sharp", Percussion::Dull),
        ("sound", "dead", Percussion::Dead),
        ("soft", "dull", Percussion::Dead),
    ] {
        let text = boat(ENGINE, BOLTS, KNEES, &format!("percussion: {hammer}"))
            .replace("core: sound", &format!("core: {core}"));
        assert_eq!(strength(&text, |strength| strength.left()), by_percussion(left), "{core}, {hammer}");
    }
}

/// Wood bears a shank, and shears out above it, in proportion to what is left of its strength: two fifths under a dull hammer.
#[test]
fn the_parts_that_lean_on_a_core_are_told_with_it_sound_and_as_it_was_read() {
    let rows = |hammer: &str| {
        let judged = finding("strength/soft-core", &boat(ENGINE, BOLTS, KNEES, &format!("percussion: {hammer}")));
        let table =
            judged.tables.iter().find(|table| table.title.starts_with("strength over load")).expect("the parts");
        let cells = table.rows.iter().map(|row| row.iter().map(|cell| cell.show(Units::Us)).collect::<Vec<_>>());
        cells.collect::<Vec<_>>()
    };
    let (sound, dull) = (rows("sharp"), rows("dull"));
    let parts: Vec<&str> = sound.iter().map(|row| row[0].as_str()).collect();
    assert_eq!(parts, [Part::Bearing, Part::Punch, Part::Tear].map(Part::words));
    for (part, (sound, dull)) in sound.iter().zip(&dull).enumerate() {
        assert_eq!(sound[1], sound[2]);
        assert_eq!(sound[1], dull[1]);
        let [before, left] =
            [&dull[1], &dull[2]].map(|factor| factor.replace(',', "").parse::<f64>().expect("a factor"));
        // On a weaker core a washer spreads its pull wider before it bends: of what punches it through not quite so much is lost.
        let least = if part == 1 { 0.4..0.5 } else { 0.399..0.401 };
        assert!(least.contains(&(left / before)), "{dull:?}");
    }
}

#[test]
fn a_place_is_told_by_its_side_and_its_depth_below_the_top() {
    let told = |at: [f64; 2]| place(at.map(|inch| inch * IN), 20.5 * IN).show(Units::Us);
    assert_eq!(told([0.0, 20.5]), "on the centreline, at the top edge");
    assert_eq!(told([6.0, 20.5]), "6 in to port, at the top edge");
    assert_eq!(told([-6.0, 14.5]), "6 in to starboard, 6 in below the top");
}
