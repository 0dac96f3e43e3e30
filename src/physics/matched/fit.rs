//! The factors on drag and pitch that a trial asks for, by least squares, with their doubt.

use uom::si::f64::{AngularVelocity, Velocity};

use super::steady::{Craft, Factors};
use crate::physics::running::{Beside, Running};
use crate::quantity::Dimensioned;

/// What is known of the factor on drag before any run: its doubt, as a part. Common practice, no source: the prism's
/// drag is a boat's within about a fifth.
pub const PRIOR_DRAG: f64 = 0.20;
/// The same of the factor on pitch. Common practice, no source: a propeller's working pitch is its mark within about a
/// twelfth.
pub const PRIOR_PITCH: f64 = 0.08;
/// Doubt, as a part, that the factor on drag takes on with other engines and propellers than those it was found with.
/// Common practice, no source.
pub const TRANSFER_DRAG: f64 = 0.06;
/// The same of the factor on pitch. Common practice, no source.
pub const TRANSFER_PITCH: f64 = 0.04;
/// What the pitch at work is worth less for each part by which the diameter differs. Common practice, no source.
pub const TRANSFER_DIAMETER: f64 = 0.5;
/// By how much thrust over drag falls where speed grows, part for part, at full throttle. Common practice, no source: it carries
/// a speed's doubt over to a thrust's.
const THRUST_FALLS: f64 = 2.5;
/// Steps of Gauss and Newton, at most, and the change at which they stand still.
const STEPS: usize = 40;
const STILL: f64 = 1e-10;
/// Step by which slopes are taken.
const NUDGE: f64 = 1e-5;

/// A run of a trial.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Observed {
    /// Her speed through the water.
    pub speed: Velocity,
    /// How far off the speed may be.
    pub speed_doubt: Velocity,
    /// Engine speed, where it was read, and how far off that may be.
    pub engine: Option<(AngularVelocity, AngularVelocity)>,
    /// Whether the throttle was open.
    pub full_throttle: bool,
}

/// The factors found.
#[derive(Clone, Debug, PartialEq)]
pub struct Fit {
    /// Those that fit the runs best.
    pub factors: Factors,
    /// Doubt of each, as a part: of drag and of pitch.
    pub doubts: [f64; 2],
    /// How far both go together, −1 to 1.
    pub together: f64,
    /// What is left of each run: reckoned engine speed over the read one, less 1.
    pub engine_misses: Vec<Option<f64>>,
    /// What is left at full throttle: reckoned thrust over drag, less 1.
    pub thrust_misses: Vec<Option<f64>>,
    /// Square of what is left over its doubt, a run.
    pub misfit: f64,
    /// Runs that were used: the others lie outside what the method tells.
    pub used: usize,
}

impl Fit {
    /// Whether the runs said more of the drag than was known before.
    pub fn knows_drag(&self) -> bool {
        self.doubts[0] < 0.6 * PRIOR_DRAG
    }

    /// The same of the pitch.
    pub fn knows_pitch(&self) -> bool {
        self.doubts[1] < 0.6 * PRIOR_PITCH
    }
}

struct Run {
    observed: Observed,
    planes: (Running, Beside),
}

/// The factors by which the reckoning of `craft` fits these runs best. What no run tells keeps to 1 within what is known before.
/// `None` where no run lies within the method.
pub fn fit(craft: &Craft, observed: &[Observed]) -> Option<Fit> {
    let runs: Vec<Option<Run>> =
        observed.iter().map(|one| craft.running(one.speed).ok().map(|planes| Run { observed: *one, planes })).collect();
    let used = runs.iter().flatten().count();
    if used == 0 {
        return None;
    }
    let priors = [PRIOR_DRAG, PRIOR_PITCH];
    let mut at = [0.0_f64; 2];
    let mut normal = [[0.0; 2]; 2];
    for _ in 0..STEPS {
        let here = residuals(craft, &runs, at);
        let slopes: [Vec<f64>; 2] = std::array::from_fn(|i| {
            let mut nudged = at;
            nudged[i] += NUDGE;
            residuals(craft, &runs, nudged).iter().zip(&here).map(|(a, b)| (a - b) / NUDGE).collect()
        });
        let dot = |a: &[f64], b: &[f64]| a.iter().zip(b).map(|(a, b)| a * b).sum::<f64>();
        normal = [[dot(&slopes[0], &slopes[0]), dot(&slopes[0], &slopes[1])], [0.0, dot(&slopes[1], &slopes[1])]];
        normal[1][0] = normal[0][1];
        let mut right = [-dot(&slopes[0], &here), -dot(&slopes[1], &here)];
        for i in 0..2 {
            normal[i][i] += priors[i].powi(-2);
            right[i] -= at[i] * priors[i].powi(-2);
        }
        let det = normal[0][0] * normal[1][1] - normal[0][1] * normal[1][0];
        let step = [
            (right[0] * normal[1][1] - right[1] * normal[0][1]) / det,
            (right[1] * normal[0][0] - right[0] * normal[1][0]) / det,
        ];
        // A long step over a bent curve overshoots.
        let held = step.map(|step| step.clamp(-0.5 * PRIOR_DRAG, 0.5 * PRIOR_DRAG));
        at = [at[0] + held[0], at[1] + held[1]];
        if held.iter().all(|step| step.abs() < STILL) {
            break;
        }
    }
    let det = normal[0][0] * normal[1][1] - normal[0][1] * normal[1][0];
    let left = residuals(craft, &runs, at);
    let squares: f64 = left.iter().map(|r| r * r).sum();
    let misfit = squares / left.len().max(1) as f64;
    // Where runs scatter more than their doubts say, the factors are worth less.
    let spread = misfit.max(1.0).sqrt();
    let doubts = [(normal[1][1] / det).sqrt() * spread, (normal[0][0] / det).sqrt() * spread];
    let together = -normal[0][1] / (normal[0][0] * normal[1][1]).sqrt();
    let craft = Craft { factors: factors(at), ..craft.clone() };
    let told = |miss: fn(&Craft, &Run) -> Option<f64>| runs.iter().map(|run| miss(&craft, run.as_ref()?)).collect();
    Some(Fit {
        factors: craft.factors,
        doubts,
        together,
        engine_misses: told(|craft, run| Some(engine_miss(craft, run)?.0)),
        thrust_misses: told(|craft, run| Some(thrust_miss(craft, run)?.0)),
        misfit,
        used,
    })
}

fn factors(at: [f64; 2]) -> Factors {
    Factors { drag: at[0].exp(), pitch: at[1].exp() }
}

/// Reckoned engine speed over the read one, less 1, and what that is worth.
fn engine_miss(craft: &Craft, run: &Run) -> Option<(f64, f64)> {
    let (engine, doubt) = run.observed.engine?;
    let steady = craft.driven(run.observed.speed, run.planes.0, run.planes.1);
    let by_speed = run.observed.speed_doubt.si() / run.observed.speed.si();
    let worth = (doubt.si() / engine.si()).hypot(by_speed);
    Some((steady.engine.si() / engine.si() - 1.0, worth))
}

/// Thrust over drag at full throttle, less 1, and what that is worth.
fn thrust_miss(craft: &Craft, run: &Run) -> Option<(f64, f64)> {
    if !run.observed.full_throttle {
        return None;
    }
    let steady = craft.driven(run.observed.speed, run.planes.0, run.planes.1);
    let worth = THRUST_FALLS * run.observed.speed_doubt.si() / run.observed.speed.si();
    Some((steady.margin(), worth))
}

fn residuals(craft: &Craft, runs: &[Option<Run>], at: [f64; 2]) -> Vec<f64> {
    let craft = Craft { factors: factors(at), ..craft.clone() };
    runs.iter()
        .flatten()
        .flat_map(|run| [engine_miss(&craft, run), thrust_miss(&craft, run)])
        .flatten()
        .map(|(miss, worth)| miss / worth.max(LEAST_WORTH))
        .collect()
}

/// No reading of a trial is closer. Common practice, no source.
const LEAST_WORTH: f64 = 0.002;
