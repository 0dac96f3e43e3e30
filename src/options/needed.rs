//! The other way round: how far one reading may go before something fails, found by judging it.

use std::collections::BTreeSet;

use uom::si::f64::{Length, Mass};

use super::yard::mains_mut;
use super::{Said, Yard};
use crate::job::{EdgeKind, Hung, Job, Role};
use crate::quantity::{Basis, Dimensioned, Measure, Reading, inches, pounds};
use crate::rig::Rig;
use crate::rules::{Family, Verdict};
use crate::written::Slip;

/// Puts a value into a job.
type Set = dyn Fn(&mut Job, f64);

/// A reading that is moved, and which way its end is looked for.
pub struct Moved {
    /// What is asked, in words.
    pub asked: &'static str,
    /// What is moved, in words.
    pub what: &'static str,
    /// Whether the greatest is looked for, or the least.
    pub greatest: bool,
    /// From where it is moved, in SI.
    pub from: f64,
    /// To where, in SI.
    pub to: f64,
    /// How closely its end is found, in SI.
    pub within: f64,
    /// Where it is as the job has it.
    pub now: f64,
    measure: fn(f64) -> Measure,
    set: Box<Set>,
}

impl Moved {
    /// A value of it for showing.
    pub fn shown(&self, value: f64) -> Measure {
        (self.measure)(value)
    }
}

/// How far it goes.
pub struct Needed {
    /// What was moved.
    pub moved: Moved,
    /// What fails wherever it is moved to: it was left aside.
    pub aside: Vec<Said>,
    /// The last at which nothing else fails; nothing where something does everywhere.
    pub end: Option<f64>,
    /// What fails first beyond it; nothing where it holds to the end of what was tried.
    pub stops: Vec<Said>,
    /// The last at which no more warns than as the job has it, where that is nearer, and what warns first beyond it.
    pub warns: Option<(f64, Vec<Said>)>,
    /// What could not be judged, as the job has it: where it may stop sooner.
    pub waits: Vec<Said>,
    /// How often the job was judged.
    pub judged: usize,
}

/// Places at which the whole way is looked at before an end is closed in on: what fails between two of them and not at them is missed.
pub const PLACES: usize = 12;

/// The heaviest engines are looked for between these parts of what they weigh. Common practice, no source.
const WEIGHT: [f64; 2] = [0.3, 2.0];
const WITHIN_LB: f64 = 1.0;
/// How far brackets, transoms and edges are moved, inches. Common practice, no source.
const FAR_IN: f64 = 8.0;
const WITHIN_IN: f64 = 1.0 / 16.0;

/// What can be moved on this job.
pub fn questions(job: &Job, rig: &Rig) -> Vec<Moved> {
    [heaviest(rig), lowest(job, rig), least_lip(job)].into_iter().flatten().collect()
}

/// Main engines weighed heavier and lighter.
fn heaviest(rig: &Rig) -> Option<Moved> {
    let weights: Option<Vec<f64>> =
        rig.after.mains().iter().map(|engine| Some(engine.weight.reading()?.value.si())).collect();
    let now = weights?.into_iter().reduce(f64::max)?;
    Some(Moved {
        asked: "the heaviest engine",
        what: "weight of each main engine",
        greatest: true,
        from: WEIGHT[0] * now,
        to: WEIGHT[1] * now,
        within: pounds(WITHIN_LB).si(),
        now,
        measure: |value| Measure::of(Mass::from_si(value)),
        set: Box::new(|job, value| mains_mut(job).for_each(|group| group.weighed = Some(read(Mass::from_si(value))))),
    })
}

/// The bracket's top lower and higher, its bottom with it; without a bracket the transom's top.
fn lowest(job: &Job, rig: &Rig) -> Option<Moved> {
    let far = inches(FAR_IN).si();
    let group = rig.after.groups.iter().find(|group| group.engines.iter().any(|one| one.role == Role::Main))?;
    if group.bracket.is_none() {
        let now = job.transom.height.as_ref()?.value.si();
        return Some(Moved {
            asked: "the lowest transom",
            what: "height of the transom's top",
            greatest: false,
            from: (now - far).max(inches(FAR_IN).si()),
            to: now + far,
            within: inches(WITHIN_IN).si(),
            now,
            measure: |value| Measure::tape(Length::from_si(value)),
            set: Box::new(move |job, value| raise_transom(job, Length::from_si(value - now))),
        });
    }
    let drop = group.drop().reading()?.value.si();
    Some(Moved {
        asked: "the lowest bracket",
        what: "bracket's top above the transom's, below it negative",
        greatest: false,
        from: -drop - far,
        to: -drop + far,
        within: inches(WITHIN_IN).si(),
        now: -drop,
        measure: |value| Measure::tape(Length::from_si(value)),
        set: Box::new(move |job, value| {
            let up = Length::from_si(value + drop);
            for group in mains_mut(job) {
                group.drop = Some(read(Length::from_si(-value)));
                if let Some(Hung { bottom: Some(bottom), .. }) = &mut group.bracket {
                    bottom.value += up;
                }
            }
        }),
    })
}

/// Raises the transom's top all across.
pub(super) fn raise_transom(job: &mut Job, up: Length) {
    let off_centre = job.transom.heights.iter_mut().map(|taken| &mut taken.height);
    for height in job.transom.height.iter_mut().chain(off_centre) {
        height.value += up;
    }
}

/// The edges of the well raised and lowered together; told of the lowest of them.
fn least_lip(job: &Job) -> Option<Moved> {
    let far = inches(FAR_IN).si();
    let heights = job.edges.iter().filter(|edge| edge.kind == EdgeKind::Well);
    let now = heights.filter_map(|edge| Some(edge.up.as_ref()?.value.si())).reduce(f64::min)?;
    Some(Moved {
        asked: "the least lip of the well",
        what: "its lowest edge above the bottom",
        greatest: false,
        from: (now - far).max(0.0),
        to: now + far,
        within: inches(WITHIN_IN).si(),
        now,
        measure: |value| Measure::tape(Length::from_si(value)),
        set: Box::new(move |job, value| {
            let wells = job.edges.iter_mut().filter(|edge| edge.kind == EdgeKind::Well);
            for up in wells.filter_map(|edge| edge.up.as_mut()) {
                up.value += Length::from_si(value - now);
            }
        }),
    })
}

/// One judgement on the way.
struct Place {
    value: f64,
    said: Vec<Said>,
}

impl Place {
    fn with(&self, verdict: Verdict) -> BTreeSet<&'static str> {
        self.said.iter().filter(|said| said.verdict == verdict).map(|said| said.rule.id).collect()
    }

    fn of(&self, ids: &BTreeSet<&'static str>) -> Vec<Said> {
        self.said.iter().filter(|said| ids.contains(said.rule.id)).cloned().collect()
    }
}

/// Families whose rules what is moved here may stop: how heavy an engine is, how low it hangs, how high an edge stands.
const HANGS: [Family; 7] =
    [Family::Power, Family::Weight, Family::Height, Family::Fit, Family::Swing, Family::Stern, Family::Strength];

/// Moves it, and closes in on its end by halves.
///
/// # Errors
/// Names that the catalog does not have.
pub fn needed(yard: &Yard, moved: Moved) -> Result<Needed, Vec<Slip>> {
    let judged = std::cell::Cell::new(0);
    let at = |value: f64| -> Result<Place, Vec<Slip>> {
        let mut job = yard.job.clone();
        (moved.set)(&mut job, value);
        judged.set(judged.get() + 1);
        Ok(Place { value, said: super::all_said(yard, &job)? })
    };
    let now = at(moved.now)?;
    let mut places = (0..=PLACES)
        .map(|i| at(moved.from + (moved.to - moved.from) * i as f64 / PLACES as f64))
        .collect::<Result<Vec<_>, _>>()?;
    let own_warnings = now.with(Verdict::Warn);
    let waits =
        now.of(&now.with(Verdict::Unmeasured)).into_iter().filter(|said| HANGS.contains(&said.rule.family)).collect();
    places.push(now);
    places.sort_by(|a, b| a.value.total_cmp(&b.value));
    let always: BTreeSet<&'static str> = places
        .iter()
        .map(|place| place.with(Verdict::Fail))
        .reduce(|a, b| a.intersection(&b).copied().collect())
        .unwrap_or_default();
    if !moved.greatest {
        places.reverse();
    }
    let fails =
        |place: &Place| -> BTreeSet<&'static str> { place.with(Verdict::Fail).difference(&always).copied().collect() };
    let warns = |place: &Place| -> BTreeSet<&'static str> {
        place.with(Verdict::Warn).difference(&own_warnings).copied().chain(fails(place)).collect()
    };
    let end = end(&places, moved.now, moved.within, &at, &fails)?;
    let warned = end_of_warnings(&places, &moved, &at, &warns)?;
    let aside = places.first().map(|place| place.of(&always)).unwrap_or_default();
    let (last, stops) = end.map_or((None, Vec::new()), |(last, stops)| (Some(last), stops));
    let nearer = |value: f64| last.is_some_and(|last| (value - last).abs() > moved.within);
    let warns = warned.filter(|(value, said)| nearer(*value) && !said.is_empty());
    Ok(Needed { aside, end: last, stops, warns, waits, judged: judged.get(), moved })
}

/// The places where more warns than as the job has it, closed in on likewise.
fn end_of_warnings(
    places: &[Place],
    moved: &Moved,
    at: &dyn Fn(f64) -> Result<Place, Vec<Slip>>,
    warns: &dyn Fn(&Place) -> BTreeSet<&'static str>,
) -> Result<Option<(f64, Vec<Said>)>, Vec<Slip>> {
    end(places, moved.now, moved.within, at, warns)
}

/// From where the job has it, or the next place at which nothing is amiss, on to the last at which nothing is; and what is amiss first
/// beyond. Places stand in the order in which the end is looked for.
fn end(
    places: &[Place],
    now: f64,
    within: f64,
    at: &dyn Fn(f64) -> Result<Place, Vec<Slip>>,
    amiss: &dyn Fn(&Place) -> BTreeSet<&'static str>,
) -> Result<Option<(f64, Vec<Said>)>, Vec<Slip>> {
    let sound = |i: &usize| amiss(&places[*i]).is_empty();
    let off = |i: &usize| (places[*i].value - now).abs();
    let Some(start) = (0..places.len()).filter(sound).min_by(|a, b| off(a).total_cmp(&off(b))) else {
        return Ok(None);
    };
    let Some(beyond) = (start..places.len()).find(|i| !sound(i)) else {
        return Ok(places.last().map(|place| (place.value, Vec::new())));
    };
    let (mut holds, mut fails) = (places[beyond - 1].value, places[beyond].value);
    let mut first = places[beyond].of(&amiss(&places[beyond]));
    while (fails - holds).abs() > within {
        let middle = at(0.5 * (holds + fails))?;
        let found = amiss(&middle);
        if found.is_empty() {
            holds = middle.value;
        } else {
            (fails, first) = (middle.value, middle.of(&found));
        }
    }
    Ok(Some((holds, first)))
}

/// A reading as it would be taken.
fn read<Q>(value: Q) -> Reading<Q> {
    Reading { value, tolerance: None, written: None, basis: Basis::Measured, note: None }
}
