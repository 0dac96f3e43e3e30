//! What was not told of a transom, and what she bore before: laws that hold for any of it.

use proptest::prelude::*;
use proptest::test_runner::{Config, RngAlgorithm, TestRng, TestRunner};
use sternknee::case::Case;
use sternknee::case::strength::Way;
use sternknee::rules::{self, Verdict};

use super::{finding, rig};

/// Skins that moulded transoms are guessed to have, outside and inside, from the least to the most, in.
const SKINS_IN: [[f64; 2]; 2] = [[0.125, 0.3125], [0.0625, 0.3125]];
/// How far a factor may lie beside its range, for the meshes of three panels: each is within 2 %.
const MESH: f64 = 0.04;
const CASES: u32 = 60;
const FEW_CASES: u32 = 12;

/// A boat of which nothing but her thickness was told, and what is then told; lengths in inches.
#[derive(Clone, Debug)]
struct Told {
    thickness: f64,
    engine: &'static str,
    old: &'static str,
    skins: Option<[f64; 2]>,
    knees: Option<bool>,
    stringers: Option<bool>,
    held: Option<&'static str>,
    floor: Option<&'static str>,
}

const ENGINES: [&str; 4] = [
    "four-stroke 40 hp inline-3",
    "four-stroke 60 hp inline-4",
    "four-stroke 90 hp inline-4",
    "four-stroke 115 hp inline-4",
];

fn transoms() -> impl Strategy<Value = Told> {
    let engine = || prop::sample::select(&ENGINES[..]);
    let skin = |side: usize| SKINS_IN[side][0]..=SKINS_IN[side][1];
    let skins = prop::option::of([skin(0), skin(1)]);
    let held = prop::option::of(prop::sample::select(&["bonded", "built_in"][..]));
    let floor = prop::option::of(prop::sample::select(&["loose", "bonded"][..]));
    let stand = || prop::option::of(any::<bool>());
    (0.75..2.25, engine(), engine(), skins, stand(), stand(), held, floor).prop_map(
        |(thickness, engine, old, skins, knees, stringers, held, floor)| Told {
            thickness,
            engine,
            old,
            skins,
            knees,
            stringers,
            held,
            floor,
        },
    )
}

impl Told {
    /// The same boat before anything of her build was told.
    fn before(&self) -> Told {
        Told { skins: None, knees: None, stringers: None, held: None, floor: None, ..self.clone() }
    }

    fn text(&self, more: &str) -> String {
        let Told { thickness, engine, old, .. } = self;
        let glass = "glass/polyester laminate, mat and woven";
        let layers = self.skins.map(|[outer, inner]| {
            let board = thickness - outer - inner;
            format!(
                r#"lay_up: [(material: "{glass}", thickness: "{outer} in"),
                (material: "Douglas-fir marine plywood", thickness: "{board} in"),
                (material: "{glass}", thickness: "{inner} in")],"#
            )
        });
        let pair = |name: &str, stands: bool, at: &str| {
            if stands { format!("{name}: [{at}],") } else { format!("{name}: [],") }
        };
        // As the best of boats are guessed to have them.
        let knees = self.knees.map(|stands| pair("knees", stands, r#"(at: port("14 in")), (at: starboard("14 in"))"#));
        let ends = r#"(at: port("16 in"), height: "9 in"), (at: starboard("16 in"), height: "9 in")"#;
        let stringers = self.stringers.map(|stands| pair("stringers", stands, ends));
        let held = self.held.map(|held| format!("sides: {held}, bottom: {held},"));
        let floor = self.floor.map(|floor| format!("well_floor: {floor},"));
        let structure = [layers, knees, stringers, held, floor].into_iter().flatten().collect::<String>();
        format!(
            r#"(
            boat: (craft: monohull, construction: moulded_glass, length: "18 ft", transom_width: "7 ft",
                deadrise: "12 deg", chine_beam: "6 ft 4 in"),
            transom: (height: "20-1/2 in", angle: "14 deg", cutout_width: "36 in", upper_holes: "1-7/8 in",
                splash_well: floor("12 in"), thickness: "{thickness} in", material: "Douglas-fir marine plywood",
                core: sound),
            structure: (corner_height: "30 in", {structure}),
            operating: (top_speed: "30 mph", old_top_speed: "30 mph", acceleration: "2 gn"),
            engines_off: [(class: "{old}", shaft: "20 in", at: [centre], holes_up: 0)],
            engines_on: [(class: "{engine}", shaft: "20 in", at: [centre], holes_up: 0)],
            {more}
        )"#
        )
    }
}

fn every(cases: u32, law: impl Fn(Told) -> Result<(), TestCaseError>) {
    let config = Config { cases, failure_persistence: None, max_shrink_iters: 0, ..Config::default() };
    let mut runner = TestRunner::new_with_rng(config, TestRng::deterministic_rng(RngAlgorithm::ChaCha));
    runner.run(&transoms(), law).unwrap_or_else(|failure| panic!("{failure}"));
}

#[test]
fn what_is_told_within_what_was_guessed_leaves_the_factor_within_its_range() {
    every(CASES, |told| {
        let (open, known) = (rig(&told.before().text("")), rig(&told.text("")));
        let (open, known) = (Case::new(&open), Case::new(&known));
        let (open, known) = (open.strength().expect("strength"), known.strength().expect("strength"));
        for way in Way::ALL {
            let ([least, best], [low, high]) = (open.range(way), known.range(way));
            prop_assert!(low >= least * (1.0 - MESH), "{way:?}: {low} below {least}, {told:?}");
            prop_assert!(high <= best * (1.0 + MESH), "{way:?}: {high} above {best}, {told:?}");
        }
        Ok(())
    });
}

/// What she bore before is a reason to trust her, and never one to doubt her where she shows nothing.
#[test]
fn what_ran_soundly_never_makes_a_verdict_worse() {
    every(FEW_CASES, |told| {
        let (without, with) = (told.text(""), told.text("ran: (years: 12, signs: none),"));
        for rule in rules::ALL.iter().filter(|rule| rule.id.starts_with("strength/")) {
            let (without, with) = (finding(rule.id, &without).verdict, finding(rule.id, &with).verdict);
            let worse = with < without && without != Verdict::NotApplicable;
            prop_assert!(!worse, "{}: {without:?} becomes {with:?}, {told:?}", rule.id);
        }
        Ok(())
    });
}
