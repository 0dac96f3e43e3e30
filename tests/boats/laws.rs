//! What every told factor of strength is owed on a whole boat: it holds still under a small change of a
//! reading, and no more material and no less weight makes it fall.

use std::collections::BTreeMap;

use sternknee::case::Case;
use sternknee::job::{self, Across, Job, Upright};
use sternknee::quantity::{Dimensioned, Kind, Reading, inches};
use sternknee::rig;
use sternknee::rules::{self, Family, Limit};
use uom::si::f64::Length;

use super::common::CATALOG;
use super::corpus::{Boat, LEVELS};
use super::verdicts::{SOUND, side_by_side};

/// A small change of a reading: less than a tape is off.
const A_LITTLE: f64 = 1.001;
/// A told factor moves by no more than this share of itself under a small change.
const STILL: f64 = 1e-2;
/// What rounding and a panel solved anew may take from a factor that more material leaves as it was.
const LEAST_FALL: f64 = 1e-6;
/// So much thicker.
const THICKER: f64 = 1.03;
/// So much wider a washer, in.
const WIDER_WASHER_IN: f64 = 0.25;
/// So much of an engine's weight.
const LIGHTER: f64 = 0.95;
/// Where the pair of knees more stands off the centreline, of the transom's width, and how high it reaches, of
/// its height: between engines and sides, under the cutout.
const PAIR_OFF: f64 = 0.22;
const PAIR_HIGH: f64 = 0.6;

/// Told factors by the rule that tells them.
type Factors = BTreeMap<&'static str, f64>;

/// A change of a job; whether there was anything to change.
type Change = fn(&mut Job) -> bool;

/// Where a law is known not to hold.
struct Except {
    change: &'static str,
    /// The name of a boat, or what the names of all of them begin with.
    boats: &'static str,
    rule: &'static str,
    #[allow(dead_code, reason = "it is for whoever reads the list")]
    why: &'static str,
}

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

/// More material, or less weight.
const BETTER: [(&str, Change); 4] = [
    ("a thicker transom", |job| thickness(job, THICKER)),
    ("wider washers", |job| washers(job, |washer| washer.value += inches(WIDER_WASHER_IN))),
    ("a pair of knees more", pair_of_knees),
    ("lighter engines", lighter),
];

/// Each is checked to be needed still.
const EXCEPT: [Except; 1] = [Except {
    change: "lighter engines",
    boats: "sound/",
    rule: "strength/top-edge-tear",
    why: "in a hard turn the bolts of one side are lifted, and the engine's own weight holds them down: a lighter one holds them down less",
}];

#[test]
fn a_small_change_of_a_reading_moves_no_told_factor_much() {
    let still = |was: f64, is: Option<f64>| is.is_some_and(|is| (is / was - 1.0).abs() <= STILL);
    holds_on_every_boat(&READINGS, &[], still);
}

#[test]
fn more_material_or_less_weight_lowers_no_told_factor() {
    // What is no longer told of is no longer in question.
    holds_on_every_boat(&BETTER, &EXCEPT, |was, is| is.is_none_or(|is| is >= was * (1.0 - LEAST_FALL)));
}

/// A factor of a boat that a change makes break the law.
struct Broken {
    boat: &'static str,
    change: &'static str,
    rule: &'static str,
    was: f64,
    is: Option<f64>,
}

impl Broken {
    fn is_of(&self, except: &Except) -> bool {
        self.change == except.change && self.rule == except.rule && self.boat.starts_with(except.boats)
    }
}

fn holds_on_every_boat(
    changes: &[(&'static str, Change)],
    except: &[Except],
    holds: impl Fn(f64, Option<f64>) -> bool + Sync,
) {
    let boats = side_by_side(SOUND.len(), |number| broken(&SOUND[number].0, changes, &holds));
    let (known, broken): (Vec<Broken>, Vec<Broken>) =
        boats.into_iter().flatten().partition(|broken| except.iter().any(|except| broken.is_of(except)));
    let told: Vec<String> = broken
        .iter()
        .map(|it| format!("{}: {}: {} was {:.6}, is {:.6?}", it.boat, it.change, it.rule, it.was, it.is))
        .collect();
    assert!(told.is_empty(), "{} are broken:\n{}", told.len(), told.join("\n"));
    for except in except {
        assert!(known.iter().any(|it| it.is_of(except)), "{}: {} holds", except.change, except.rule);
    }
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
