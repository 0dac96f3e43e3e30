//! Random transoms, each with engines in proportion, and the laws that every one of them keeps.

use proptest::prelude::*;
use proptest::test_runner::{Config, TestRunner};
use sternknee::case::Case;
use sternknee::case::strength::{Panels, Store, Strength, Way};

use super::rig;

/// A transom with what hangs on it: lengths in inches.
#[derive(Clone, Debug)]
struct Transom {
    height: f64,
    width: f64,
    chine: f64,
    deadrise: f64,
    lean: f64,
    cutout: f64,
    corner: f64,
    core: f64,
    skins: [f64; 2],
    held: usize,
    floor: f64,
    knees: Vec<(f64, f64)>,
    stringers: Vec<(f64, f64)>,
    engine: usize,
    twins: bool,
    speed: f64,
    jolt: f64,
    washer: f64,
    off: f64,
    face: Option<[f64; 2]>,
    plate: Option<[f64; 3]>,
    weight: f64,
    power: f64,
}

const ENGINES: [(&str, f64, f64, f64); 4] = [
    ("four-stroke 40 hp inline-3", 20.0, 230.0, 40.0),
    ("four-stroke 90 hp inline-4", 20.0, 370.0, 90.0),
    ("four-stroke 150 hp inline-4", 25.0, 490.0, 150.0),
    ("four-stroke 250 hp V6", 25.0, 640.0, 250.0),
];
const HELD: [&str; 3] = ["bonded", "built_in", "bonded"];

impl Transom {
    fn text(&self) -> String {
        let inch = |value: f64| format!("\"{value:.6} in\"");
        let side = |y: f64| if y >= 0.0 { format!("port({})", inch(y)) } else { format!("starboard({})", inch(-y)) };
        let uprights = |list: &[(f64, f64)]| {
            let all: Vec<String> =
                list.iter().map(|(y, height)| format!("(at: {}, height: {})", side(*y), inch(*height))).collect();
            format!("[{}]", all.join(", "))
        };
        let skin = |thick: f64| {
            format!("(material: \"glass/polyester laminate, mat and woven\", thickness: {}),", inch(thick))
        };
        let layers = format!(
            "{}(material: \"Douglas-fir marine plywood\", thickness: {}),{}",
            if self.skins[0] > 0.0 { skin(self.skins[0]) } else { String::new() },
            inch(self.core),
            if self.skins[1] > 0.0 { skin(self.skins[1]) } else { String::new() },
        );
        let (class, shaft, _, power) = ENGINES[self.engine];
        let engine = match self.power {
            1.0 => format!("class: \"{class}\""),
            part => format!(
                "described: (power: \"{:.6} hp\", bracket_height: \"12.5 in\", shafts: [(name: \"{shaft} in\", rest_to_plate: \"{shaft} in\")])",
                part * power
            ),
        };
        let at = if self.twins { "port(\"14 in\"), starboard(\"14 in\")".to_owned() } else { side(self.off) };
        let face = self.face.map_or(String::new(), |[width, height]| {
            format!("face: (below: \"0 in\", width: {}, height: {}),", inch(width), inch(height))
        });
        let plate = self.plate.map_or(String::new(), |[width, height, thick]| {
            format!(
                "backing_plate: (material: \"aluminium 5083-H116 plate\", width: {}, height: {}, thickness: {}),",
                inch(width),
                inch(height),
                inch(thick)
            )
        });
        format!(
            r#"(
    boat: (craft: monohull, length: "22 ft", transom_width: {}, deadrise: "{:.6} deg", chine_beam: {}, category: C),
    transom: (height: {}, angle: "{:.6} deg", cutout_width: {}, upper_holes: "1.875 in", splash_well: floor({})),
    structure: (lay_up: [{layers}], sides: {}, bottom: {}, well_floor: bonded, corner_height: {}, knees: {}, stringers: {}),
    operating: (top_speed: "{:.6} mph", acceleration: "{:.6} gn"),
    engines_on: [({engine}, weighed: "{:.6} lb", shaft: "{shaft} in", at: [{at}], holes_up: 0,
        bolts: (size: "1/2-13", grade: "A4-70", washer: {}, {face} {plate}))],
)"#,
            inch(self.width),
            self.deadrise,
            inch(self.chine),
            inch(self.height),
            self.lean,
            inch(self.cutout),
            inch(self.floor),
            HELD[self.held],
            HELD[self.held],
            inch(self.corner),
            uprights(&self.knees),
            uprights(&self.stringers),
            self.speed,
            self.jolt,
            self.weight,
            inch(self.washer),
        )
    }

    /// The same on meshes so many times as fine.
    fn finer(&self, times: f64) -> Vec<f64> {
        let rig = rig(&self.text());
        let case = Case::new(&rig);
        let strength: &Strength = case.strength().unwrap_or_else(|no| panic!("{no:?}\n{}", self.text()));
        let store = Store::of_meshes(times);
        let panels = Panels::of(&strength.board, strength.left(), &store).expect("finer");
        let bent = strength.after.on(&store, &strength.board, &panels).expect("finer");
        let mut all: Vec<f64> = Way::ALL.iter().map(|way| bent.factor(*way)).collect();
        all.push(1.0 / bent.deflection().1.largest_deflection.abs());
        all
    }

    /// Factors of each way in which the panel gives way, and how far it moves (m).
    fn factors(&self) -> Vec<f64> {
        let rig = rig(&self.text());
        let case = Case::new(&rig);
        let strength: &Strength = case.strength().unwrap_or_else(|no| panic!("{no:?}\n{}", self.text()));
        let bent = &strength.after.bent;
        let mut all: Vec<f64> = Way::ALL.iter().map(|way| bent.factor(*way)).collect();
        all.push(1.0 / bent.deflection().1.largest_deflection.abs());
        all
    }
}

fn transoms() -> impl Strategy<Value = Transom> {
    let size = (0usize..4, 0.0..1.0f64, 0.0..1.0f64, 5.0..22.0f64, 10.0..15.0f64);
    let build = (0.0..1.0f64, 0.06..0.4f64, 0.06..0.4f64, 0usize..3, prop::bool::ANY);
    let behind = (0usize..3, 8.0..20.0f64, 0.3..0.9f64, 0usize..2, 10.0..18.0f64, 0.25..0.5f64);
    let load = (20.0..55.0f64, 0.5..3.0f64, 1.25..3.0f64, 0.0..4.0f64, prop::bool::ANY, 0.9..1.2f64);
    (size, build, behind, load).prop_map(|(size, build, behind, load)| {
        let (engine, wide, cut, deadrise, lean) = size;
        let (thick, outer, inner, held, bare) = build;
        let (knees, knee_y, knee_up, stringers, stringer_y, stringer_up) = behind;
        let (speed, jolt, washer, off, twins, heavy) = load;
        let (_, shaft, weight, _) = ENGINES[engine];
        let twins = twins && engine > 0;
        let height = shaft + 0.4;
        let width = 60.0 + 10.0 * engine as f64 + 12.0 * wide;
        let chine = 0.9 * width;
        let rise = f64::tan(f64::to_radians(deadrise));
        let core = 1.25 + 0.35 * engine as f64 + 0.5 * thick;
        let pair = |count: usize, y: f64, up: f64| -> Vec<(f64, f64)> {
            let all = [(y, up), (-y, up)];
            match count {
                0 => Vec::new(),
                1 => vec![(0.0, up)],
                _ => all.to_vec(),
            }
        };
        let cutout = (if twins { 48.0 } else { 26.0 }) + 8.0 * cut;
        Transom {
            height,
            width,
            chine,
            deadrise,
            lean,
            cutout,
            corner: (height + 8.0).max(0.5 * chine * rise + 6.0),
            core,
            skins: if bare { [0.0, 0.0] } else { [outer, inner] },
            held,
            floor: 12.0,
            knees: pair(knees, knee_y, knee_up * (height - knee_y * rise)),
            stringers: pair(2 * stringers, stringer_y, (stringer_up * height).max(3.0)),
            engine,
            twins,
            speed,
            jolt,
            washer,
            off,
            face: None,
            plate: None,
            weight: weight * heavy,
            power: 1.0,
        }
    })
}

/// Random transoms, always the same ones: each tells what it breaks, and all of that is told at once.
fn run(cases: u32, law: impl Fn(&Transom) -> Vec<String>) {
    let mut runner = TestRunner::new_with_rng(
        Config { cases, failure_persistence: None, max_shrink_iters: 0, ..Config::default() },
        proptest::test_runner::TestRng::deterministic_rng(proptest::test_runner::RngAlgorithm::ChaCha),
    );
    let broken = std::cell::RefCell::new(Vec::new());
    let kept = runner.run(&transoms(), |t| {
        let own = law(&t);
        if !own.is_empty() {
            broken.borrow_mut().push(format!("{}\n  of {t:?}", own.join("\n")));
        }
        Ok(())
    });
    kept.unwrap_or_else(|failure| panic!("{failure}"));
    let broken = broken.into_inner();
    assert!(broken.is_empty(), "{} of {cases} transoms:\n{}", broken.len(), broken.join("\n"));
}

/// What lies outside a law, by name.
fn beyond(what: &str, changes: Vec<(&str, f64)>, keeps: impl Fn(&str, f64) -> bool) -> Vec<String> {
    let breaks = changes.into_iter().filter(|(name, moved)| !keeps(name, *moved));
    breaks.map(|(name, moved)| format!("{what}: {name} {moved:+.5}")).collect()
}

/// How many transoms a law is tried on: `LAWS` in the environment. Of 500, one small change of a height moves a factor by 1.01 %, and
/// one wider heel lowers one by 1.03 %.
fn count() -> u32 {
    std::env::var("LAWS").ok().and_then(|count| count.parse().ok()).unwrap_or(25)
}

/// Factors of the panel, and the stiffness.
const FIGURES: [&str; 4] = ["bending", "shear", "tabs", "stiffness"];

/// Each figure of `other` over that of `base`, less 1.
fn changes(base: &[f64], other: &[f64]) -> Vec<(&'static str, f64)> {
    FIGURES.into_iter().zip(base.iter().zip(other)).map(|(name, (base, other))| (name, other / base - 1.0)).collect()
}

/// A reading changed a little.
type Change = (&'static str, fn(&mut Transom));

#[test]
fn a_thousandth_of_any_reading_moves_no_factor_by_more_than_a_hundredth() {
    let readings: [Change; 11] = [
        ("height", |t| t.height *= 1.001),
        ("width", |t| t.width *= 1.001),
        ("chine", |t| t.chine *= 1.001),
        ("deadrise", |t| t.deadrise *= 1.001),
        ("lean", |t| t.lean *= 1.001),
        ("cutout", |t| t.cutout *= 1.001),
        ("core", |t| t.core *= 1.001),
        ("skins", |t| t.skins = t.skins.map(|skin| 1.001 * skin)),
        ("knees", |t| t.knees.iter_mut().for_each(|(y, up)| (*y, *up) = (1.001 * *y, 1.001 * *up))),
        ("speed", |t| t.speed *= 1.001),
        ("engine's place", |t| t.off += 0.001 * 14.0),
    ];
    run(count(), |t| {
        let base = t.factors();
        let each = readings.into_iter().flat_map(|(reading, change)| {
            let mut other = t.clone();
            change(&mut other);
            beyond(reading, changes(&base, &other.factors()), |_, moved| moved.abs() <= 0.01)
        });
        each.collect()
    });
}

#[test]
fn more_of_a_transom_or_less_on_it_never_lowers_a_factor() {
    let betters: [Change; 8] = [
        ("a thicker core", |t| t.core += 0.125),
        ("thicker skins", |t| t.skins = t.skins.map(|skin| skin + 0.0625)),
        ("larger washers", |t| t.washer += 0.5),
        ("a backing plate", |t| t.plate = Some([17.0, 12.0, 0.25])),
        ("a lighter engine", |t| t.weight *= 0.9),
        ("less of a jolt", |t| t.jolt *= 0.9),
        ("a pair of knees more", |t| {
            // Clear of those that are there.
            let there = |y: f64| t.knees.iter().any(|(knee, _)| (knee.abs() - y).abs() < 2.0);
            let beside = [6.0, 10.0, 14.0].into_iter().find(|y| !there(*y)).unwrap_or(18.0);
            t.knees.extend([(beside, 14.0), (-beside, 14.0)]);
        }),
        ("a pair of knees more, farther out", |t| t.knees.extend([(21.0, 16.0), (-21.0, 16.0)])),
    ];
    run(count(), |t| {
        let base = t.factors();
        // Where it moves most may hang together with the far side by a hair.
        let no_less = |name: &str, moved: f64| moved >= if name == "stiffness" { -1e-3 } else { -1e-6 };
        let mut broken: Vec<String> = Vec::new();
        for (better, change) in betters {
            let mut other = t.clone();
            change(&mut other);
            broken.extend(beyond(better, changes(&base, &other.factors()), no_less));
        }
        let [narrow, wide] = [15.0, 16.0].map(|width| Transom { face: Some([width, 12.5]), ..t.clone() }.factors());
        broken.extend(beyond("a wider heel", changes(&narrow, &wide), no_less));
        let [strong, weak] = [0.999, 0.9].map(|power| Transom { power, ..t.clone() }.factors());
        broken.extend(beyond("less thrust", changes(&strong, &weak), no_less));
        broken
    });
}

#[test]
fn a_mesh_twice_as_fine_moves_no_factor_by_more_than_two_hundredths() {
    run(count(), |t| beyond("twice as fine", changes(&t.factors(), &t.finer(2.0)), |_, moved| moved.abs() <= 0.02));
}

#[test]
fn a_mirrored_transom_bears_as_much() {
    run(count(), |t| {
        let mirrored = Transom { off: -t.off, ..t.clone() };
        beyond("mirrored", changes(&t.factors(), &mirrored.factors()), |_, moved| moved.abs() <= 1e-6)
    });
}
