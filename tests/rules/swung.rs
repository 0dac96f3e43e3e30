//! What stands round the engines as they swing: bodies where the tape puts them, spacings that keep clear, readings that are asked.

use sternknee::case::Case;
use sternknee::case::swing::{FACE, TUB};
use sternknee::physics::swing::Obstacle;
use sternknee::quantity::Dimensioned;
use sternknee::rules::Verdict;

use crate::common::{finding, near, rig, study, verdict};

const INCH: f64 = 0.0254;

/// From where to where each body of this name reaches, inches: forward, to port, up.
fn bodies(text: &str, name: &str) -> Vec<[[f64; 2]; 3]> {
    let rig = rig(text);
    let case = Case::new(&rig);
    let around = case.swing().around.as_ref().unwrap_or_else(|why| panic!("{why:?}"));
    assert!(around.missing.is_empty(), "{:?}", around.missing);
    let extent = |obstacle: &Obstacle| {
        let Obstacle::Body(body) = obstacle else { panic!("{name} is a body") };
        std::array::from_fn(|axis| {
            let along = body.points().iter().map(|point| point[axis] / INCH);
            [along.clone().fold(f64::INFINITY, f64::min), along.fold(f64::NEG_INFINITY, f64::max)]
        })
    };
    around.known.iter().filter(|body| body.name() == name).map(extent).collect()
}

#[track_caller]
fn reaches(found: [[f64; 2]; 3], expected: [[f64; 2]; 3]) {
    for (found, expected) in found.iter().flatten().zip(expected.iter().flatten()) {
        near(*found, *expected, 1e-6);
    }
}

/// A transom of 25 in along its face, 13 degrees aft, 2 in thick and 84 in wide, with a well 22-3/4 in long, 12 in deep, its rim 8 in
/// above the transom's top: what stands round the engine is laid out from those figures with a ruler.
#[test]
fn well_and_cutout_stand_where_the_tape_puts_them() {
    let job = |cutout: &str, well: &str| {
        study(&format!(
            "boat: (transom_width: \"84 in\"), \
             transom: (height: \"25 in\", angle: \"13 deg\", thickness: \"2 in\", cutout_width: \"{cutout}\", \
               splash_well: floor(\"12 in\")), \
             well: (length: \"22-3/4 in\", rim_above: \"8 in\"{well}), \
             engines_on: [(class: \"four-stroke 150 hp inline-4\", shaft: \"25 in\", at: [centre], holes_up: 1)]"
        ))
    };
    let (sin, cos) = 13_f64.to_radians().sin_cos();
    let (top, height) = (-25.0 * sin, 25.0 * cos);
    let inside = top + 2.0 / cos;
    let (wall, rim, floor) = (top + 22.75, height + 8.0, height - 12.0);
    // A cutout nearly as wide as the transom still has sides of an inch, and what stands beside the well a foot.
    for (cutout, well, half, half_cutout, out, beside) in [
        ("36 in", "", 18.0, 18.0, 42.0, 42.0),
        ("36 in", ", width: \"50 in\"", 25.0, 18.0, 42.0, 42.0),
        ("83 in", "", 41.5, 41.5, 42.5, 53.5),
    ] {
        let text = job(cutout, well);
        let one = |name: &str| {
            let [body] = bodies(&text, name)[..] else { panic!("one {name}") };
            body
        };
        reaches(one("transom"), [[top, 2.0 / cos], [-42.0, 42.0], [0.0, height]]);
        reaches(one("cutout, port side"), [[top, inside], [half_cutout, out], [height, rim]]);
        reaches(one("cutout, starboard side"), [[top, inside], [-out, -half_cutout], [height, rim]]);
        reaches(one("well, port side"), [[inside, wall], [half, beside], [floor, rim]]);
        reaches(one("well, starboard side"), [[inside, wall], [-beside, -half], [floor, rim]]);
        reaches(one("well, floor"), [[inside, wall], [-half, half], [floor - 1.0, floor]]);
        let [forward, across, up] = one("well, forward wall");
        near(forward[0], wall, 1e-6);
        reaches([across, up, across], [[-beside, beside], [floor, rim], [-beside, beside]]);
    }
}

/// An engine on a setback plate and another on a lifting bracket hang on two faces, each behind its own engine and as far aft as its
/// own bracket; twins of one bracket share a face.
#[test]
fn each_bracket_has_a_face_of_its_own_and_twins_on_one_share_it() {
    let plate = |setback: u32, drop: u32| {
        format!(
            "bracket: (described: (kind: setback_plate, setback: \"{setback} in\", drop: \"{drop} in\", engines: 2, \
             rated_power: \"400 hp\", rated_weight: \"1,200 lb\", weight: \"50 lb\"))"
        )
    };
    let job = |engines: &str| {
        study(&format!(
            "boat: (transom_width: \"84 in\"), \
             transom: (height: \"25 in\", angle: \"13 deg\", thickness: \"2 in\", cutout_width: \"36 in\", splash_well: none), \
             engines_on: [{engines}]"
        ))
    };
    let engine = |at: &str, bracket: &str| {
        format!("(class: \"four-stroke 60 hp inline-4\", shaft: \"20 in\", at: [{at}], holes_up: 0, {bracket})")
    };
    let (sin, cos) = 13_f64.to_radians().sin_cos();
    // Square to the transom by the setback, and level aft of where the transom is as high.
    let aft = |setback: f64, z: f64| -(setback + z * sin) / cos;
    let apart = [engine("port(\"16 in\")", &plate(6, 1)), engine("starboard(\"16 in\")", &plate(10, 3))].join(", ");
    for name in [FACE, TUB] {
        let mut found = bodies(&job(&apart), name);
        assert_eq!(found.len(), 2, "{name}: {found:?}");
        found.sort_by(|a, b| b[1][0].total_cmp(&a[1][0]));
        for (body, (side, setback, drop)) in found.iter().zip([(16.0, 6.0, 1.0), (-16.0, 10.0, 3.0)]) {
            // 7 in to either side of its engine, 14 in high; what carries it lies 5 in below its top.
            let top = 25.0 * cos - drop;
            let upper = if name == FACE { top } else { top - 5.0 };
            near(body[1][0], side - 7.0, 1e-6);
            near(body[1][1], side + 7.0, 1e-6);
            near(body[2][0], top - 14.0, 1e-6);
            near(body[2][1], upper, 1e-6);
            near(body[0][0], aft(setback, upper), 1e-6);
        }
    }
    let twins = engine("port(\"16 in\"), starboard(\"16 in\")", &plate(10, 3));
    for name in [FACE, TUB] {
        let [body] = bodies(&job(&twins), name)[..] else { panic!("one {name}") };
        near(body[1][0], -23.0, 1e-6);
        near(body[1][1], 23.0, 1e-6);
    }
    // Two plates alike, each with its own engine, stand in one line: one face.
    let alike = [engine("port(\"16 in\")", &plate(6, 1)), engine("starboard(\"16 in\")", &plate(6, 1))].join(", ");
    assert_eq!(bodies(&job(&alike), FACE).len(), 1);
}

/// Twins that strike each other are told how far apart they keep an inch; set so, they keep it, and a sixteenth nearer not.
#[test]
fn twins_set_as_far_apart_as_told_keep_their_inch() {
    let job = |apart: f64| {
        let half = 0.5 * apart;
        study(&format!(
            "transom: (height: \"25 in\", angle: \"12 deg\", thickness: \"2 in\", cutout_width: \"36 in\", splash_well: floor(\"12 in\")), \
             engines_on: [(class: \"four-stroke 150 hp inline-4\", shaft: \"25 in\", at: [port(\"{half} in\"), starboard(\"{half} in\")], holes_up: 1)]"
        ))
    };
    // The same from wherever they stand now.
    let mut first = None;
    for apart in [16.0, 19.0, 20.0, 25.0] {
        let rig = rig(&job(apart));
        let case = Case::new(&rig);
        let pairs = case.swing().neighbours.as_ref().expect("two of them");
        let [pair] = pairs.as_slice() else { panic!("{}", pairs.len()) };
        let spacing = pair.spacing.as_ref().expect("they do not keep clear");
        near(spacing.now.si() / INCH, apart, 1e-9);
        let needed = spacing.needed.expect("within a yard").si() / INCH;
        near(needed, *first.get_or_insert(needed), 1.0 / 32.0);
        assert_eq!(verdict("swing/neighbour", &job(needed)), Verdict::Pass, "{apart}: {needed}");
        assert_eq!(verdict("swing/neighbour", &job(needed - 1.0 / 16.0)), Verdict::Warn, "{apart}: {needed}");
    }
}

/// Whatever the engines still lack is asked at once with what the boat lacks, the engines themselves first.
#[test]
fn what_the_engines_lack_is_asked_with_what_the_transom_lacks() {
    let asked = |fields: &str| {
        let found = finding("swing/full-tilt", &study(fields));
        assert_eq!(found.verdict, Verdict::Unmeasured);
        found.missing.iter().map(|missing| missing.name()).collect::<Vec<_>>()
    };
    let transom = "transom: (height: \"25 in\", angle: \"12 deg\")";
    let engine = "engines_on: [(described: (power: \"150 hp\"), at: [centre])]";
    let (of_engine, of_transom) = (
        asked(&format!("{transom}, {engine}")),
        asked("engines_on: [(class: \"four-stroke 150 hp inline-4\", shaft: \"25 in\", at: [centre], holes_up: 1)]"),
    );
    assert!(!of_engine.is_empty() && !of_transom.is_empty());
    assert_eq!(asked(engine), [of_engine, of_transom.clone()].concat());
    let no_engine = asked(transom);
    assert_eq!(no_engine.len(), 1, "{no_engine:?}");
    assert_eq!(asked("waterline: \"13 in\""), [no_engine, of_transom].concat());
}
