//! Random transoms that could be sound: lengths, heights, lay-ups and engines in proportion to each other, as
//! the text of a job. The same seed gives the same ones.

use sternknee::{job, rig};

use super::common::CATALOG;

const PLYWOOD: &str = "Douglas-fir marine plywood";
const GLASS: &str = "glass/polyester laminate, mat and woven";
const PLATE: &str = "aluminium 5083-H116 plate";

/// An engine with the boats that it is usual on. Common practice, no source.
struct Usual {
    class: &'static str,
    shaft_in: f64,
    /// Lengths of boats, ft.
    length: [f64; 2],
    /// Core of the transom, in.
    core: [f64; 2],
    /// Each skin of glass, in.
    skin: [f64; 2],
    /// mph.
    speed: [f64; 2],
}

const fn usual(
    class: &'static str,
    shaft_in: f64,
    length: [f64; 2],
    core: [f64; 2],
    skin: [f64; 2],
    speed: [f64; 2],
) -> Usual {
    Usual { class, shaft_in, length, core, skin, speed }
}

const ENGINES: [Usual; 10] = [
    usual("four-stroke 9.9 hp inline-2", 15.0, [11.0, 13.0], [1.25, 1.5], [0.10, 0.15], [14.0, 21.0]),
    usual("four-stroke 20 hp inline-2", 15.0, [13.0, 15.5], [1.25, 1.5], [0.10, 0.16], [20.0, 27.0]),
    usual("four-stroke 40 hp inline-3", 20.0, [14.5, 17.0], [1.5, 1.75], [0.12, 0.20], [25.0, 33.0]),
    usual("four-stroke 60 hp inline-4", 20.0, [16.0, 18.5], [1.5, 1.75], [0.15, 0.22], [28.0, 37.0]),
    usual("four-stroke 90 hp inline-4", 20.0, [16.5, 19.5], [1.5, 1.75], [0.18, 0.25], [33.0, 42.0]),
    usual("four-stroke 115 hp inline-4", 20.0, [17.0, 20.0], [1.5, 2.0], [0.19, 0.30], [36.0, 45.0]),
    usual("four-stroke 150 hp inline-4", 25.0, [18.5, 22.0], [1.5, 2.0], [0.22, 0.35], [38.0, 48.0]),
    usual("four-stroke 200 hp V6", 25.0, [20.0, 24.0], [1.75, 2.0], [0.25, 0.35], [40.0, 50.0]),
    usual("four-stroke 250 hp V6", 25.0, [22.0, 26.0], [1.75, 2.0], [0.25, 0.36], [42.0, 52.0]),
    usual("four-stroke 300 hp V6", 25.0, [23.0, 28.0], [1.875, 2.0], [0.25, 0.36], [42.0, 54.0]),
];

/// So many transoms, as jobs told in full but for the hull's shape.
pub fn transoms(count: usize, seed: u64) -> Vec<String> {
    let mut dice = Dice(seed);
    (0..count).map(|_| transom(&mut dice)).collect()
}

fn transom(dice: &mut Dice) -> String {
    let usual = &ENGINES[dice.below(ENGINES.len())];
    let length = dice.within(usual.length);
    let beam = (length * dice.within([4.0, 4.6]) + 10.0).min(118.0);
    let width = beam * dice.within([0.84, 0.94]);
    let chine = width * dice.within([0.84, 0.92]);
    // Small boats have flat bottoms, large ones deep vees.
    let deadrise = ((length - 10.0) * dice.within([0.9, 1.5])).clamp(2.0, 22.0);
    let rise = 0.5 * chine * deadrise.to_radians().tan();
    let height = usual.shaft_in + dice.within([0.65, 1.4]);
    let corner = (height + dice.within([4.0, 10.0])).max(rise + 8.0);
    // Large engines take a wide cutout to turn in.
    let cutout = width.min(dice.within(if usual.shaft_in > 20.0 { [36.0, 42.0] } else { [31.0, 38.0] }));
    let (lay_up, thickness) = lay_up(dice, usual);
    let bonds = ["bonded", "built_in"];
    let (sides, bottom) = (bonds[dice.below(2)], bonds[dice.below(2)]);
    let speed = dice.within(usual.speed);
    let displacement = 0.42 * length.powi(3) * dice.within([0.9, 1.2]);
    let small = usual.shaft_in < 20.0;
    let (bolt, washer, torque) = if small { ("3/8-16", 1.5, 15.0) } else { ("1/2-13", 2.0, 40.0) };
    let uprights = uprights(dice, chine, height - rise);
    let engine = |more: &str| {
        format!(
            r#"(class: "{}", shaft: "{} in", at: [centre], holes_up: 0,{more}
            bolts: (size: "{bolt}", grade: "A4-70", washer: "{washer} in", torque: "{torque} lbf·ft", thread: paste))"#,
            usual.class, usual.shaft_in
        )
    };
    let (before, after) = (engine(""), engine(" propellers: [right],"));
    format!(
        r#"(
    title: "a random transom", made_up: true, sitting: as_fitted,
    boat: (craft: monohull, bottom: vee, length: "{length:.1} ft", beam: "{beam:.1} in", transom_width: "{width:.1} in",
        chine_beam: "{chine:.1} in", deadrise: "{deadrise:.1} deg"),
    transom: (height: "{height:.2} in", angle: "{:.1} deg", thickness: "{thickness:.3} in", material: "{PLYWOOD}",
        core: sound, cutout_width: "{cutout:.1} in", top_edge: sealed, splash_well: none, upper_holes: "1-7/8 in"),
    structure: (lay_up: [{lay_up}], sides: {sides}, bottom: {bottom}, {uprights}
        corner_height: "{corner:.1} in", moisture: "12 %", percussion: sharp),
    operating: (top_speed: "{speed:.0} mph", displacement: "{displacement:.0} lb"),
    engines_off: [{before}],
    engines_on: [{after}],
)"#,
        dice.within([10.0, 15.0])
    )
}

/// The layers, and their sum in inches: a plywood core under glass, or between plates of aluminium.
fn lay_up(dice: &mut Dice, usual: &Usual) -> (String, f64) {
    let core = dice.within(usual.core);
    let (skin, least) = if dice.below(3) == 0 { (PLATE, 0.06) } else { (GLASS, 0.0) };
    // A plate need only be half as thick as glass.
    let of_glass = if skin == PLATE { 0.5 } else { 1.0 };
    let mut layer = || f64::max(least, of_glass * dice.within(usual.skin));
    let (outside, inside) = (layer(), layer());
    let text = format!(
        r#"(material: "{skin}", thickness: "{outside:.3} in"), (material: "{PLYWOOD}", thickness: "{core:.3} in"),
        (material: "{skin}", thickness: "{inside:.3} in")"#
    );
    (text, outside + core + inside)
}

/// Knees and stringers behind the transom: always some, as in every boat that lasts. Lengths in inches.
fn uprights(dice: &mut Dice, chine: f64, clear: f64) -> String {
    let reach = |share: f64| (share * clear).max(4.0);
    let off = dice.within([0.14, 0.22]) * chine;
    let pair = |height: f64| {
        format!(
            r#"(at: port("{off:.1} in"), height: "{height:.1} in"), (at: starboard("{off:.1} in"), height: "{height:.1} in")"#
        )
    };
    match dice.below(3) {
        0 => format!(r#"knees: [(at: centre, height: "{:.1} in")],"#, reach(dice.within([0.6, 0.9]))),
        1 => format!("knees: [{}],", pair(reach(dice.within([0.6, 0.95])))),
        _ => format!("knees: [], stringers: [{}],", pair(reach(dice.within([0.3, 0.5])))),
    }
}

/// SplitMix64 (Steele, Lea and Flood, 2014), value from memory: enough for dice.
struct Dice(u64);

impl Dice {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        mixed ^ (mixed >> 31)
    }

    /// A whole number below this one.
    fn below(&mut self, count: usize) -> usize {
        (self.next() % count as u64) as usize
    }

    /// A number between these two.
    fn within(&mut self, [low, high]: [f64; 2]) -> f64 {
        let share = (self.next() >> 11) as f64 / (1u64 << 53) as f64;
        low + share * (high - low)
    }
}

#[test]
fn every_random_transom_reads_and_resolves() {
    for text in transoms(500, 1) {
        let (job, _) = job::load("random.ron", &text).unwrap_or_else(|faults| panic!("{faults}\n{text}"));
        if let Err(unresolved) = rig::resolve(&job, &CATALOG) {
            panic!("{unresolved:?}\n{text}");
        }
    }
}

#[test]
fn random_transoms_come_again_from_their_seed_and_differ() {
    let some = transoms(20, 7);
    assert_eq!(some, transoms(20, 7));
    assert_ne!(some, transoms(20, 8));
    assert!(some.iter().enumerate().all(|(i, one)| !some[..i].contains(one)));
}
