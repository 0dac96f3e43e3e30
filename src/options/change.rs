//! Single changes to boat or rigging that would let an engine hang which is refused, each tried by judging it.

use uom::si::f64::Length;

use super::yard::{mains, mains_mut};
use super::{Found, Said, Tried, Work, Yard, firmness};
use crate::job::{Edge, EdgeKind, Job, TopEdge};
use crate::quantity::{Basis, Dimensioned, Measure, Reading, Text, degrees, inches, say};
use crate::rules::{Family, Limit, Rule, Verdict};

/// How many of those that are nearest to passing are looked into, each of another kind. Common practice, no source: more than
/// anybody reads.
const NEAREST: usize = 8;
/// How many of them one check refuses.
const OF_ONE_CHECK: usize = 3;
/// A rating of a thing: another of its kind is the answer, and was tried.
const RATING: &str = "weight/bracket-rating";
/// Beyond its limit by more than this part of it, nothing is near. Common practice, no source.
const NEAR: f64 = 0.35;

/// Steps of what can be changed by little or much. Common practice, no source: what a yard builds by.
const STEP_IN: f64 = 0.5;
const MOST_STEPS: usize = 12;
const BUILD_UP_IN: f64 = 0.25;
const MOST_BUILD_UPS: usize = 6;
/// Tilt that is given up, and below which nobody stops an engine. Common practice, no source.
const TILT_STEP_DEG: f64 = 2.0;
const LEAST_TILT_DEG: f64 = 40.0;

/// An option that one check refuses, and what would let it pass.
pub struct Near {
    /// The option, refused.
    pub tried: Tried,
    /// What would make it pass, in words, and what is then said of it; nothing where no single change that was tried does.
    pub change: Option<(Text, Tried)>,
}

/// A change, in words, and how a job is changed by it.
struct Change {
    words: Text,
    make: Box<dyn Fn(&mut Job) + Send + Sync>,
}

/// Of the refused those that are nearest to passing, each of another kind, the nearest first; each with the least single change
/// that makes it pass.
pub fn nearly(yard: &Yard, found: &Found, work: &Work) -> Vec<Near> {
    let mut nearest: Vec<(&Tried, f64)> = Vec::new();
    let mut refused: Vec<(&Tried, f64)> = found.tried.iter().filter_map(|one| Some((one, short(one)?))).collect();
    refused.sort_by(|a, b| a.1.total_cmp(&b.1));
    // What passes in another row or at another distance needs no change.
    let passes = |one: &Tried| found.tried.iter().any(|other| other.refused.is_none() && other.hang.is_like(&one.hang));
    for (one, short) in refused {
        let same_kind = |other: &Tried| {
            let (a, b) = (&other.hang, &one.hang);
            a.class == b.class && a.count == b.count && a.bracket == b.bracket
        };
        let rule = |one: &Tried| one.said.first().map(|said| said.rule.id);
        let of_rule = nearest.iter().filter(|(other, _)| rule(other) == rule(one)).count();
        let known = nearest.iter().any(|(other, _)| same_kind(other)) || of_rule >= OF_ONE_CHECK;
        if nearest.len() < NEAREST && !known && !passes(one) {
            nearest.push((one, short));
        }
    }
    let is_aside = |rule: &Rule| found.aside.iter().any(|said| said.rule.id == rule.id);
    let slots: Vec<std::sync::OnceLock<Near>> = nearest.iter().map(|_| std::sync::OnceLock::new()).collect();
    (work.hands)(nearest.len(), &|i| {
        if (work.goes_on)() {
            slots[i]
                .get_or_init(|| Near { tried: nearest[i].0.clone(), change: mended(yard, nearest[i].0, &is_aside) });
        }
    });
    slots.into_iter().filter_map(std::sync::OnceLock::into_inner).collect()
}

/// By what part of its limit an option misses that a single check refuses; nothing where it is far, or no change of the boat helps.
fn short(one: &Tried) -> Option<f64> {
    let screen = one.refused?;
    let [said] = one.said.as_slice() else { return None };
    if said.verdict != Verdict::Fail || said.rule.family == Family::Power || said.rule.id == RATING || screen == 0 {
        return None;
    }
    let short = firmness(said).map_or(0.5 * NEAR, |room| -room);
    (short < NEAR).then_some(short)
}

/// The least change that makes it pass, of the first sort that does.
fn mended(yard: &Yard, one: &Tried, is_aside: &dyn Fn(&Rule) -> bool) -> Option<(Text, Tried)> {
    let said = one.said.first()?;
    let mut job = one.hang.job(yard);
    told_drop(yard, &mut job);
    ladders(said, &job, yard).into_iter().find_map(|ladder| {
        let tries = |step: usize| -> Option<Tried> {
            let mut changed = job.clone();
            (ladder[step].make)(&mut changed);
            let tried = Tried::judged(yard, one.hang.clone(), &changed, is_aside);
            tried.refused.is_none().then_some(tried)
        };
        let last = ladder.len().checked_sub(1)?;
        let Some(found) = tries(last) else {
            // Too much may be as bad as too little: a plate that comes out at the other edge of its window.
            return (0..last).find_map(|step| Some((ladder[step].words.clone(), tries(step)?)));
        };
        let (mut low, mut high, mut found) = (0, last, found);
        while low < high {
            let middle = (low + high) / 2;
            match tries(middle) {
                Some(passes) => (high, found) = (middle, passes),
                None => low = middle + 1,
            }
        }
        Some((ladder[high].words.clone(), found))
    })
}

/// Says outright how far the bracket's top drops, where its class says it.
fn told_drop(yard: &Yard, job: &mut Job) {
    for group in mains_mut(job).filter(|group| group.drop.is_none()) {
        let class = group.bracket.as_ref().and_then(|hung| hung.class.as_ref());
        let entry = yard.catalog.brackets.iter().find(|entry| Some(&entry.name) == class);
        group.drop = entry.and_then(|entry| entry.spec.drop.clone());
    }
}

/// What could mend a finding: ladders of changes, each from little to much.
fn ladders(said: &Said, job: &Job, yard: &Yard) -> Vec<Vec<Change>> {
    let bracket = mains(job).next().is_some_and(|group| group.bracket.is_some());
    let all = match said.rule.family {
        Family::Height if bracket => vec![moved(is_low(said), "bracket", |job, up| {
            for group in mains_mut(job) {
                let drop = group.drop.as_ref().map_or(Length::from_si(0.0), |drop| drop.value);
                group.drop = Some(assumed(drop - up));
                if let Some(bottom) = group.bracket.as_mut().and_then(|hung| hung.bottom.as_mut()) {
                    bottom.value += up;
                }
            }
        })],
        Family::Height => vec![moved(is_low(said), "transom's top", |job, up| {
            super::needed::raise_transom(job, up);
        })],
        Family::Swing => vec![tilt_stops(job, yard)],
        Family::Stern if said.rule.id == "stern/well-edge" => vec![lips(), left_out(job)],
        Family::Stern | Family::Weight => vec![left_out(job)],
        Family::Fit => vec![sealed(job), build_ups()],
        Family::Strength => vec![build_ups()],
        _ => Vec::new(),
    };
    all.into_iter().filter(|ladder| !ladder.is_empty()).collect()
}

/// Whether what was found lies below its limit.
fn is_low(said: &Said) -> bool {
    match (said.found, said.limit) {
        (Some(found), Some(Limit::Within(least, _) | Limit::AtLeast(least))) => found.si < least.si,
        _ => false,
    }
}

/// Something raised or lowered, half an inch at a time.
fn moved(up: bool, what: &'static str, by: fn(&mut Job, Length)) -> Vec<Change> {
    (1..=MOST_STEPS)
        .map(|step| {
            let far = inches(STEP_IN * step as f64);
            let way = if up { "higher" } else { "lower" };
            Change {
                words: say!("with the {} {} {}", what, Measure::tape(far), way),
                make: Box::new(move |job| by(job, if up { far } else { -far })),
            }
        })
        .collect()
}

/// The tilt stopped short, by a little and more.
fn tilt_stops(job: &Job, yard: &Yard) -> Vec<Change> {
    let class = mains(job).find_map(|group| group.class.as_ref());
    let entry = yard.catalog.engines.iter().find(|entry| Some(&entry.name) == class);
    let Some(full) = entry.and_then(|entry| entry.spec.full_tilt.as_ref()).map(|full| full.value.si()) else {
        return Vec::new();
    };
    let step = degrees(TILT_STEP_DEG).si();
    let steps = ((full - degrees(LEAST_TILT_DEG).si()) / step).floor().max(0.0) as usize;
    (1..=steps)
        .map(|i| {
            let stop = uom::si::f64::Angle::from_si((full / step).floor() * step - step * (i as f64 - 1.0));
            Change {
                words: say!("with the tilt stopped at {}", Measure::of(stop)),
                make: Box::new(move |job| {
                    for group in mains_mut(job) {
                        group.tilt_stop = Some(assumed(stop));
                    }
                }),
            }
        })
        .collect()
}

/// The edge of the well raised.
fn lips() -> Vec<Change> {
    moved(true, "edge of the well", |job, up| {
        let is_well = |edge: &&mut Edge| edge.kind == EdgeKind::Well;
        for edge in job.edges.iter_mut().filter(is_well) {
            if let Some(height) = &mut edge.up {
                height.value += up;
            }
        }
    })
}

/// Something that was to go on with the engines left ashore; the lightest first.
fn left_out(job: &Job) -> Vec<Change> {
    let mut items: Vec<(f64, String)> = job
        .goes_on
        .iter()
        .filter_map(|item| Some((item.weight.as_ref()?.value.si(), item.what.clone())))
        .filter(|(weight, _)| *weight > 0.0)
        .collect();
    items.sort_by(|a, b| a.0.total_cmp(&b.0));
    let change = |(_, what): (f64, String)| Change {
        words: say!("without `{}`", what.as_str()),
        make: Box::new(move |job| job.goes_on.retain(|item| item.what != what)),
    };
    items.into_iter().map(change).collect()
}

/// The transom's top edge sealed.
fn sealed(job: &Job) -> Vec<Change> {
    if job.transom.top_edge == Some(TopEdge::Sealed) {
        return Vec::new();
    }
    vec![Change {
        words: Text::from("with the transom's top edge sealed"),
        make: Box::new(|job| job.transom.top_edge = Some(TopEdge::Sealed)),
    }]
}

/// The transom built up: its thickest layer, and all of it.
fn build_ups() -> Vec<Change> {
    (1..=MOST_BUILD_UPS)
        .map(|step| {
            let more = inches(BUILD_UP_IN * step as f64);
            Change {
                words: say!("with the transom built up by {}", Measure::tape(more)),
                make: Box::new(move |job| {
                    if let Some(thickness) = &mut job.transom.thickness {
                        thickness.value += more;
                    }
                    let layers = job.structure.as_mut().map(|structure| &mut structure.lay_up);
                    let thickest = layers.and_then(|layers| {
                        layers.iter_mut().max_by(|a, b| a.thickness.value.si().total_cmp(&b.thickness.value.si()))
                    });
                    if let Some(layer) = thickest {
                        layer.thickness.value += more;
                    }
                }),
            }
        })
        .collect()
}

/// A reading of something that is only thought of.
fn assumed<Q>(value: Q) -> Reading<Q> {
    Reading { value, tolerance: None, written: None, basis: Basis::Measured, note: None }
}
