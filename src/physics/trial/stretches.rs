//! Steady stretches of a log, and which of them are the two ways of one run.

use crate::logged::Sample;

/// A stretch in which nothing was touched.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stretch {
    /// Time of its first sample, seconds from any beginning.
    pub from: f64,
    /// Time of its last sample.
    pub to: f64,
    /// How many samples it has.
    pub samples: usize,
    /// Mean speed over the ground, m/s.
    pub speed: f64,
    /// Mean course over the ground, degrees.
    pub course: Option<f64>,
    /// Mean engine speed, rad/s.
    pub engine: Option<f64>,
    /// Mean fuel of all her engines, m³/s.
    pub fuel: Option<f64>,
}

/// A stretch is no shorter than this, seconds. Common practice, no source.
pub const LEAST_SECONDS: f64 = 20.0;
/// Within a stretch speed and engine speed keep within these parts of their mean either way, the course within so many degrees of
/// the first. Common practice, no source.
const SPEED_KEEPS: f64 = 0.04;
const ENGINE_KEEPS: f64 = 0.025;
const COURSE_KEEPS: f64 = 15.0;
/// A gap that ends a stretch, seconds. Common practice, no source.
const LONGEST_GAP: f64 = 5.0;
/// Slower than this nobody runs a trial, m/s. Common practice, no source.
const LEAST_SPEED: f64 = 0.5;
/// The two ways of a run: engine speeds within this part of each other, courses within so many degrees of opposite. Common
/// practice, no source.
const SAME_ENGINE: f64 = 0.03;
const OPPOSITE: f64 = 30.0;

/// The steady stretches of a log, in order. What comes before the first steady second is left out, a stretch runs as far as it
/// keeps, and the next begins behind it.
pub fn stretches(samples: &[Sample]) -> Vec<Stretch> {
    let mut found = Vec::new();
    let mut from = 0;
    while from < samples.len() {
        let to = keeps_to(samples, from);
        let seconds = samples[to - 1].time - samples[from].time;
        if seconds >= LEAST_SECONDS {
            found.push(of(&samples[from..to]));
            from = to;
        } else {
            from += 1;
        }
    }
    found
}

/// The end of the stretch that begins at `from`.
fn keeps_to(samples: &[Sample], from: usize) -> usize {
    let first = samples[from];
    if first.speed < LEAST_SPEED {
        return from + 1;
    }
    let mut speeds = [first.speed; 2];
    let mut engines = first.engine.map(|engine| [engine; 2]);
    let mut to = from + 1;
    while let Some(sample) = samples.get(to) {
        let gap = sample.time - samples[to - 1].time;
        let turned = match (first.course, sample.course) {
            (Some(a), Some(b)) => turn(a, b) > COURSE_KEEPS,
            _ => false,
        };
        let wider = |range: [f64; 2], value: f64| [range[0].min(value), range[1].max(value)];
        let speeds_now = wider(speeds, sample.speed);
        let engines_now = match (engines, sample.engine) {
            (Some(range), Some(engine)) => Some(wider(range, engine)),
            (range, engine) => range.or(engine.map(|engine| [engine; 2])),
        };
        let keeps = |range: [f64; 2], part: f64| range[1] - range[0] <= part * (range[0] + range[1]);
        let steady = keeps(speeds_now, SPEED_KEEPS) && engines_now.is_none_or(|range| keeps(range, ENGINE_KEEPS));
        if !(0.0..=LONGEST_GAP).contains(&gap) || turned || !steady {
            break;
        }
        (speeds, engines) = (speeds_now, engines_now);
        to += 1;
    }
    to
}

/// Degrees between two courses.
fn turn(a: f64, b: f64) -> f64 {
    let off = (a - b).rem_euclid(360.0);
    off.min(360.0 - off)
}

fn of(samples: &[Sample]) -> Stretch {
    let mean = |value: fn(&Sample) -> Option<f64>| {
        let all: Vec<f64> = samples.iter().filter_map(value).collect();
        (!all.is_empty()).then(|| all.iter().sum::<f64>() / all.len() as f64)
    };
    let (sin, cos) = samples
        .iter()
        .filter_map(|sample| sample.course)
        .map(|course| course.to_radians().sin_cos())
        .fold((0.0, 0.0), |(a, b), (sin, cos)| (a + sin, b + cos));
    let has_course = samples.iter().any(|sample| sample.course.is_some());
    Stretch {
        from: samples[0].time,
        to: samples[samples.len() - 1].time,
        samples: samples.len(),
        speed: mean(|sample| Some(sample.speed)).unwrap_or_default(),
        course: has_course.then(|| f64::atan2(sin, cos).to_degrees().rem_euclid(360.0)),
        engine: mean(|sample| sample.engine),
        fuel: mean(|sample| sample.fuel),
    }
}

/// Runs: each stretch with the first later one at the same engine speed on the opposite course, where there is one.
pub fn pairs(stretches: &[Stretch]) -> Vec<(Stretch, Option<Stretch>)> {
    let mut taken = vec![false; stretches.len()];
    let mut runs = Vec::new();
    for (i, one) in stretches.iter().enumerate() {
        if taken[i] {
            continue;
        }
        let back = (i + 1..stretches.len()).find(|j| !taken[*j] && is_way_back(one, &stretches[*j]));
        if let Some(j) = back {
            taken[j] = true;
        }
        runs.push((*one, back.map(|j| stretches[j])));
    }
    runs
}

fn is_way_back(one: &Stretch, other: &Stretch) -> bool {
    let (Some(a), Some(b)) = (one.course, other.course) else { return false };
    let (Some(n), Some(m)) = (one.engine, other.engine) else { return false };
    turn(a, b + 180.0) <= OPPOSITE && (n - m).abs() <= SAME_ENGINE * n.max(m)
}
