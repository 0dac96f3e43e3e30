//! What every told factor of strength is owed on a whole boat: it holds still under a small change of a
//! reading, and no more material and no less weight makes it fall.

use std::collections::BTreeMap;

use sternknee::case::Case;
use sternknee::case::float::Crew;
use sternknee::case::strength::{Panels, Store, Way};
use sternknee::job::{self, Across, BackingPlate, Job, Upright};
use sternknee::quantity::{Dimensioned, Kind, Reading, inches};
use sternknee::rig;
use sternknee::rules::{self, Family, Limit};
use sternknee::written::Draught;
use uom::si::f64::Length;

use super::common::CATALOG;
use super::corpus::{Boat, LEVELS};
use super::verdicts::{SOUND, side_by_side};

/// A small change of a reading: less than a tape is off.
const A_LITTLE: f64 = 1.001;
/// A told factor moves by no more than this share of itself under a small change.
pub const STILL: f64 = 1e-2;
/// A finer mesh moves it by no more than this.
const FINER: f64 = 2e-2;
/// What rounding and a panel solved anew may take from a factor that more material leaves as it was.
const LEAST_FALL: f64 = 1e-6;
/// So much thicker.
const THICKER: f64 = 1.03;
/// So much wider a washer, in.
const WIDER_WASHER_IN: f64 = 0.25;
/// So much wider and thicker a backing plate, and so much wider a bracket's face, in.
const WIDER_PLATE_IN: f64 = 0.5;
const THICKER_PLATE_IN: f64 = 0.0625;
const WIDER_FACE_IN: f64 = 1.0;
/// So much of an engine's weight, and of its power.
const LIGHTER: f64 = 0.95;
const WEAKER: f64 = 0.9;
/// Where the pair of knees more stands off the centreline, of the transom's width, and how high it reaches, of
/// its height: between engines and sides, under the cutout.
const PAIR_OFF: f64 = 0.22;
const PAIR_HIGH: f64 = 0.6;

/// Told factors by the rule that tells them.
type Factors = BTreeMap<&'static str, f64>;

/// A change of a job; whether there was anything to change.
type Change = fn(&mut Job) -> bool;

/// Each reading a little more.
const READINGS: [(&str, Change); 9] = [
    ("the transom's height", |job| scale(job.transom.height.as_mut(), A_LITTLE)),
    ("its thickness", |job| thickness(job, A_LITTLE)),
    ("the chine beam", |job| scale(job.boat.chine_beam.as_mut(), A_LITTLE)),
    ("the deadrise", |job| scale(job.boat.deadrise.as_mut(), A_LITTLE)),
    ("the cutout's width", |job| scale(job.transom.cutout_width.as_mut(), A_LITTLE)),
    ("the top speed", |job| scale(job.operating.as_mut().and_then(|it| it.top_speed.as_mut()), A_LITTLE)),
    ("what she displaces", |job| scale(job.operating.as_mut().and_then(|it| it.displacement.as_mut()), A_LITTLE)),
    ("the washers", |job| washers(job, |washer| washer.value *= A_LITTLE)),
    ("the knees' heights", |job| knees(job, A_LITTLE)),
];

/// More material, less weight or less power.
const BETTER: [(&str, Change); 9] = [
    ("a thicker transom", |job| thickness(job, THICKER)),
    ("thicker skins", thicker_skins),
    ("wider washers", |job| washers(job, |washer| washer.value += inches(WIDER_WASHER_IN))),
    ("a wider backing plate", |job| plates(job, |plate| plate.width.value += inches(WIDER_PLATE_IN))),
    ("a thicker backing plate", |job| plates(job, |plate| plate.thickness.value += inches(THICKER_PLATE_IN))),
    ("a wider heel", wider_heel),
    ("a pair of knees more", pair_of_knees),
    ("lighter engines", lighter),
    ("weaker engines", weaker),
];

#[test]
fn a_small_change_of_a_reading_moves_no_told_factor_much() {
    let still = |was: f64, is: Option<f64>| is.is_some_and(|is| (is / was - 1.0).abs() <= STILL);
    holds_on_every_boat(&READINGS, still);
}

#[test]
fn more_material_or_less_weight_lowers_no_told_factor() {
    // What is no longer told of is no longer in question.
    holds_on_every_boat(&BETTER, |was, is| is.is_none_or(|is| is >= was * (1.0 - LEAST_FALL)));
}

#[test]
fn a_mirrored_boat_is_as_strong() {
    let told = side_by_side(SOUND.len(), |number| {
        let boat = &SOUND[number].0;
        let text = boat.at(*LEVELS.end());
        let swapped = text.replace("port(", "\0(").replace("starboard(", "port(").replace("\0(", "starboard(");
        let [as_told, mirrored] = [&text, &swapped]
            .map(|text| factors(&job::load(&boat.name, text).unwrap_or_else(|faults| panic!("{faults}")).0));
        let differ = as_told
            .iter()
            .filter(|(rule, was)| mirrored.get(*rule).is_none_or(|is| (is / **was - 1.0).abs() > LEAST_FALL));
        differ
            .map(|(rule, was)| format!("{}: {rule} was {was}, is {:?}", boat.name, mirrored.get(rule)))
            .collect::<Vec<_>>()
    });
    let told: Vec<String> = told.into_iter().flatten().collect();
    assert!(told.is_empty(), "{}", told.join("\n"));
}

#[test]
fn a_mesh_twice_as_fine_moves_no_factor_by_more_than_two_hundredths() {
    let told = side_by_side(SOUND.len(), |number| {
        let boat = &SOUND[number].0;
        let (job, _) = job::load(&boat.name, &boat.at(*LEVELS.end())).unwrap_or_else(|faults| panic!("{faults}"));
        let rig = rig::resolve(&job, &CATALOG).unwrap_or_else(|unresolved| panic!("{unresolved:?}"));
        let case = Case::new(&rig);
        let strength = case.strength().unwrap_or_else(|no| panic!("{}: {no:?}", boat.name));
        let store = Store::of_meshes(2.0);
        let panels = Panels::of(&strength.board, strength.left(), &store).expect("finer");
        let finer = strength.after.on(&store, &strength.board, &panels).expect("finer");
        let moved = Way::ALL.map(|way| (way, finer.factor(way) / strength.after.bent.factor(way) - 1.0));
        let far = moved.into_iter().filter(|(_, moved)| moved.abs() > FINER);
        far.map(|(way, moved)| format!("{}: {way:?} {moved:+.4}", boat.name)).collect::<Vec<_>>()
    });
    let told: Vec<String> = told.into_iter().flatten().collect();
    assert!(told.is_empty(), "{}", told.join("\n"));
}

/// A factor of a boat that a change makes break the law.
struct Broken {
    boat: &'static str,
    change: &'static str,
    rule: &'static str,
    was: f64,
    is: Option<f64>,
}

/// A factor of a boat, and the same under a change; `None` where it is no longer told.
fn holds_on_every_boat(changes: &[(&'static str, Change)], holds: impl Fn(f64, Option<f64>) -> bool + Sync) {
    let boats = side_by_side(SOUND.len(), |number| broken(&SOUND[number].0, changes, &holds));
    let told: Vec<String> = boats
        .into_iter()
        .flatten()
        .map(|it| format!("{}: {}: {} was {:.6}, is {:.6?}", it.boat, it.change, it.rule, it.was, it.is))
        .collect();
    assert!(told.is_empty(), "{} are broken:\n{}", told.len(), told.join("\n"));
}

/// The factors of a boat for which the law does not hold.
fn broken(
    boat: &'static Boat,
    changes: &[(&'static str, Change)],
    holds: impl Fn(f64, Option<f64>) -> bool,
) -> Vec<Broken> {
    let (job, _) = job::load(&boat.name, &boat.at(*LEVELS.end())).unwrap_or_else(|faults| panic!("{faults}"));
    let before = factors(&job);
    assert!(!before.is_empty(), "{} tells no factor", boat.name);
    let mut broken = Vec::new();
    for (name, change) in changes {
        let mut changed = job.clone();
        if !change(&mut changed) {
            continue;
        }
        let after = factors(&changed);
        let each = before.iter().map(|(rule, was)| (*rule, *was, after.get(rule).copied()));
        broken.extend(each.filter(|(_, was, is)| !holds(*was, *is)).map(|(rule, was, is)| Broken {
            boat: &boat.name,
            change: name,
            rule,
            was,
            is,
        }));
    }
    broken
}

/// What the rules of strength find that is held against a ratio.
fn factors(job: &Job) -> Factors {
    let rig = rig::resolve(job, &CATALOG).unwrap_or_else(|unresolved| panic!("{unresolved:?}"));
    let case = Case::new(&rig);
    let told = rules::ALL.iter().filter(|rule| rule.family == Family::Strength).filter_map(|rule| {
        let finding = (rule.judge)(&case);
        let ratio = matches!(finding.limit, Some(Limit::AtLeast(least)) if least.kind == Kind::Ratio);
        finding.found.filter(|_| ratio).map(|found| (rule.id, found.si))
    });
    told.collect()
}

fn scale<Q: Dimensioned>(reading: Option<&mut Reading<Q>>, by: f64) -> bool {
    let is_told = reading.is_some();
    if let Some(reading) = reading {
        reading.value = Q::from_si(reading.value.si() * by);
    }
    is_told
}

/// The transom and the thickest of its layers by as much.
fn thickness(job: &mut Job, by: f64) -> bool {
    let Some(whole) = job.transom.thickness.as_mut() else {
        return false;
    };
    let more = whole.value * (by - 1.0);
    whole.value += more;
    let layers = job.structure.iter_mut().flat_map(|structure| &mut structure.lay_up);
    let core = layers.max_by(|one, other| one.thickness.value.si().total_cmp(&other.thickness.value.si()));
    if let Some(core) = core {
        core.thickness.value += more;
    }
    true
}

fn washers(job: &mut Job, change: impl Fn(&mut Reading<Length>)) -> bool {
    let bolts = job.engines_on.iter_mut().filter_map(|group| group.bolts.as_mut());
    let told: Vec<&mut Reading<Length>> = bolts.filter_map(|bolts| bolts.washer.as_mut()).collect();
    let any = !told.is_empty();
    told.into_iter().for_each(change);
    any
}

/// Knees and stringers alike.
fn knees(job: &mut Job, by: f64) -> bool {
    let Some(structure) = job.structure.as_mut() else {
        return false;
    };
    let knees = structure.knees.iter_mut().flatten();
    let uprights = knees.chain(structure.stringers.iter_mut().flatten());
    uprights.map(|upright| scale(upright.height.as_mut(), by)).fold(false, |any, scaled| any | scaled)
}

fn pair_of_knees(job: &mut Job) -> bool {
    let (Some(width), Some(height)) = (&job.boat.transom_width, &job.transom.height) else {
        return false;
    };
    let off = || Reading::catalog(width.value * PAIR_OFF);
    let reach = Reading::catalog(height.value * PAIR_HIGH);
    let knee = |at| Upright { at, height: Some(reach.clone()), width: None, fillet: None };
    let pair = [knee(Across::Port(off())), knee(Across::Starboard(off()))];
    let Some(structure) = job.structure.as_mut() else {
        return false;
    };
    structure.knees.get_or_insert_default().extend(pair);
    true
}

/// All layers but the thickest.
fn thicker_skins(job: &mut Job) -> bool {
    let layers: Vec<_> = job.structure.iter_mut().flat_map(|structure| &mut structure.lay_up).collect();
    let core = layers.iter().map(|layer| layer.thickness.value.si()).fold(0.0, f64::max);
    let skins: Vec<_> = layers.into_iter().filter(|layer| layer.thickness.value.si() < core).collect();
    let any = !skins.is_empty();
    skins.into_iter().for_each(|skin| skin.thickness.value *= THICKER);
    any
}

fn plates(job: &mut Job, change: impl Fn(&mut BackingPlate)) -> bool {
    let bolts = job.engines_on.iter_mut().filter_map(|group| group.bolts.as_mut());
    let told: Vec<&mut BackingPlate> = bolts.filter_map(|bolts| bolts.backing_plate.as_mut()).collect();
    let any = !told.is_empty();
    told.into_iter().for_each(change);
    any
}

/// The face with which each bracket stands on the transom, as it is told.
fn wider_heel(job: &mut Job) -> bool {
    let faces = job.engines_on.iter_mut().filter_map(|group| group.bolts.as_mut()?.face.as_mut());
    let told: Vec<_> = faces.collect();
    let any = !told.is_empty();
    told.into_iter().for_each(|face| face.width.value += inches(WIDER_FACE_IN));
    any
}

/// Every new engine of less power, and otherwise the same.
fn weaker(job: &mut Job) -> bool {
    let mut any = false;
    for group in &mut job.engines_on {
        let class = group.class.as_deref().and_then(|class| CATALOG.engine(class)).map(|entry| entry.spec.clone());
        let Some(mut spec) = class.or(group.described.clone()) else { continue };
        any |= scale(spec.power.as_mut(), WEAKER);
        (group.class, group.described) = (None, Some(spec));
    }
    any
}

/// Every new engine, as if it had been put on a scale.
fn lighter(job: &mut Job) -> bool {
    let rig = rig::resolve(job, &CATALOG).unwrap_or_else(|unresolved| panic!("{unresolved:?}"));
    let one = |group: &rig::Group| group.engines.first()?.weight.reading().cloned();
    let weights: Vec<_> = rig.after.groups.iter().map(one).collect();
    let mut any = false;
    for (group, weight) in job.engines_on.iter_mut().zip(weights) {
        group.weighed = weight;
        any |= scale(group.weighed.as_mut(), LIGHTER);
    }
    any
}

#[test]
fn a_boat_whose_weights_are_told_piece_by_piece_slams_by_their_sum() {
    let slams = |text: &str| {
        let rig = super::common::rig(text);
        let case = Case::new(&rig);
        let slamming = case.strength().expect("strength").driving.slamming;
        let stations = case.float().expect("floats").loadings.iter().filter(|loaded| loaded.crew == Crew::AtStations);
        let laden = stations.filter_map(|loaded| Some(loaded.judged()?.total.mass.value)).fold(0.0, f64::max);
        (slamming, laden)
    };
    let mut seen = 0;
    for boat in Boat::all("sound") {
        let text = boat.at(*LEVELS.end());
        let draught = Draught::new(&text);
        if !draught.entries().any(|said| said.path == "operating.displacement") {
            continue;
        }
        let (by_weights, laden) = slams(&draught.without("operating.displacement"));
        let told = draught.put("operating.displacement", &format!("\"{laden:.6} kg\"")).expect("it is there");
        let (by_sum, _) = slams(&told);
        assert!(
            (by_weights / by_sum - 1.0).abs() < 1e-6,
            "{}: {by_weights} by weights, {by_sum} by their sum",
            boat.name
        );
        seen += 1;
    }
    assert!(seen > 20, "{seen} boats tell what they displace");
}
