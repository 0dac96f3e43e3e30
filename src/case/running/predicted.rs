//! The range with the engines of one side: greatest speed, the hump, other propellers, with what all that is worth.

use uom::si::angular_velocity::revolution_per_minute;
use uom::si::f64::{AngularVelocity, Length, Velocity};

use super::Runs;
use super::craft::{Built, Screw};
use crate::case::Case;
use crate::case::float::Side;
use crate::job::Running;
use crate::physics::matched::{
    Craft, Factors, Fit, GettingUp, Observed, PRIOR_DRAG, PRIOR_PITCH, Planed, Range, TRANSFER_DIAMETER, TRANSFER_DRAG,
    TRANSFER_PITCH, fit, getting_up,
};
use crate::quantity::{Dimensioned, Measure, Text, inches, say};
use crate::reading::Absent;
use crate::reading::mph;

/// How far the factors by which a trial corrects drag and pitch may be off, as parts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Doubts {
    /// Of the factor on drag.
    pub drag: f64,
    /// Of the factor on pitch.
    pub pitch: f64,
}

/// Her greatest speed, and the engines' speed there, with what each is worth.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Top {
    /// The greatest speed that the engines hold.
    pub speed: Velocity,
    /// How far off that may be, either way.
    pub speed_doubt: Velocity,
    /// Speed of the engines there, at full throttle.
    pub engine: AngularVelocity,
    /// How far off that may be, either way.
    pub engine_doubt: AngularVelocity,
}

/// A propeller tried: its pitch and blades, her greatest speed and the engines' speed with it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rung {
    /// The propeller.
    pub screw: Screw,
    /// Her greatest speed with it.
    pub speed: Velocity,
    /// Speed of the engines there, at full throttle.
    pub engine: AngularVelocity,
    /// Least thrust left over thrust asked for below her greatest speed.
    pub least_margin: f64,
}

/// What is reckoned of one side.
#[derive(Clone, Debug)]
pub struct Predicted {
    /// What the reckoning runs on.
    pub built: Built,
    /// How her bottom runs; other propellers are tried on that, whose lift hardly differs (see [`Planed`]).
    planed: Planed,
    /// What she does at every speed that the method tells.
    pub range: Range,
    /// Her greatest speed; nothing where the method does not reach it.
    pub top: Option<Top>,
    /// Times from rest to plane and to 20 mph; nothing where the method tells no speed of hers.
    pub getting_up: Option<GettingUp>,
}

/// Pitches that are sold, in whole inches. Common practice, no source.
const PITCHES_IN: [u32; 2] = [5, 32];
/// What a fourth blade adds to the blades' area. Common practice, no source: a fifth.
pub(super) const FOURTH_BLADE_AREA: f64 = 1.2;
/// An engine speed is read as closely as this where nothing is said. Common practice, no source: 50 rpm.
const READ_RPM: f64 = 50.0;

impl Runs {
    pub(super) fn of(case: &Case, asked: &Running) -> Runs {
        let before = Built::of(case, asked, Side::Before);
        let observed = case.trial().and_then(|trials| trials.before.as_ref()).map(|trial| {
            let runs = trial.runs.iter();
            runs.filter_map(|run| {
                Some(Observed {
                    speed: run.speed?.value,
                    speed_doubt: run.speed?.doubt,
                    engine: run.engine.map(|engine| (engine, AngularVelocity::new::<revolution_per_minute>(READ_RPM))),
                    full_throttle: run.full_throttle,
                })
            })
            .collect::<Vec<_>>()
        });
        let fitted = before.as_ref().ok().zip(observed.as_ref()).and_then(|(built, runs)| {
            // A pitch that is not told cannot be corrected.
            built.screw.told.then(|| fit(&built.craft, runs)).flatten()
        });
        let own = fitted.as_ref().map_or(Doubts { drag: PRIOR_DRAG, pitch: PRIOR_PITCH }, |fit| Doubts {
            drag: fit.doubts[0],
            pitch: fit.doubts[1],
        });
        let after = Built::of(case, asked, Side::After);
        // A propeller of another diameter works its pitch otherwise.
        let other = match (&before, &after) {
            (Ok(before), Ok(after)) => (after.screw.diameter / before.screw.diameter).si() - 1.0,
            _ => 0.0,
        };
        let transfer = TRANSFER_PITCH.hypot(TRANSFER_DIAMETER * other);
        let doubts = match &fitted {
            Some(_) => Doubts { drag: own.drag.hypot(TRANSFER_DRAG), pitch: own.pitch.hypot(transfer) },
            None => own,
        };
        let factors = fitted.as_ref().map_or(Factors::default(), |fit: &Fit| fit.factors);
        let predict =
            |built: Result<Built, Absent>, doubts: Doubts| built.map(|built| Predicted::of(built, factors, doubts));
        Runs { before: predict(before, own), after: predict(after, doubts), fit: fitted, doubts }
    }
}

impl Predicted {
    fn of(mut built: Built, factors: Factors, doubts: Doubts) -> Predicted {
        built.craft.factors = factors;
        let mut planed = Planed::of(&built.craft);
        if !built.screw.told {
            built.screw.pitch = suited(&built, &planed);
            built.craft = built.with_screw(&built.screw);
            planed = Planed::of(&built.craft);
            built.assumed.push(say!(
                "Its pitch is not told: {} is taken, with which the engines turn at the middle of their band.",
                Measure::tape(built.screw.pitch)
            ));
        }
        let range = built.craft.range_on(&planed);
        let top = range.top.map(|top| {
            let with = |drag: f64, pitch: f64| {
                let factors = Factors { drag: factors.drag * drag, pitch: factors.pitch * pitch };
                Craft { factors, ..built.craft.clone() }.range_on(&planed).top
            };
            let changed = [with(1.0 + doubts.drag, 1.0), with(1.0, 1.0 + doubts.pitch)];
            let doubt = |of: &dyn Fn(&crate::physics::matched::Steady) -> f64| {
                changed.iter().flatten().map(|one| of(one) - of(&top)).fold(0.0, f64::hypot)
            };
            Top {
                speed: top.speed,
                speed_doubt: Velocity::from_si(doubt(&|one| one.speed.si())),
                engine: top.full_throttle,
                engine_doubt: AngularVelocity::from_si(doubt(&|one| one.full_throttle.si())),
            }
        });
        let to = Velocity::from_si(mph(20.0).si());
        let getting_up = range.points.first().map(|first| getting_up(&built.craft, first.speed, to));
        Predicted { built, planed, range, top, getting_up }
    }

    /// With another propeller.
    pub fn with(&self, screw: Screw) -> Option<Rung> {
        let range = self.built.with_screw(&screw).range_on(&self.planed);
        let top = range.top?;
        let below = range.points.iter().filter(|point| point.speed < top.speed);
        let least_margin = below.map(|point| point.margin()).fold(f64::INFINITY, f64::min);
        Some(Rung { screw, speed: top.speed, engine: top.full_throttle, least_margin })
    }

    /// Two inches of pitch down to two up, and a fourth blade, or a third in its place.
    pub fn ladder(&self) -> Vec<Rung> {
        let own = self.built.screw;
        let pitches = [-2.0, -1.0, 0.0, 1.0, 2.0].map(|step| Screw { pitch: own.pitch + inches(step), ..own });
        let blades = match own.blades {
            3 => Some(Screw { blades: 4, area_ratio: own.area_ratio * FOURTH_BLADE_AREA, ..own }),
            4 => Some(Screw { blades: 3, area_ratio: own.area_ratio / FOURTH_BLADE_AREA, ..own }),
            _ => None,
        };
        pitches
            .into_iter()
            .chain(blades)
            .filter(|screw| screw.pitch.si() > 0.0)
            .filter_map(|screw| self.with(screw))
            .collect()
    }

    /// The pitch in whole inches with which the engines turn nearest to this speed at full throttle.
    pub fn pitch_for(&self, engine: AngularVelocity) -> Option<Rung> {
        let own = self.built.screw;
        let off = |rung: &Rung| (rung.engine - engine).si().abs();
        let around = |near: f64| {
            let tried = (-6..=6).map(|step| inches(near + f64::from(step))).filter(|pitch| *pitch > inches(4.0));
            let rungs = tried.filter_map(|pitch| self.with(Screw { pitch, ..own }));
            rungs.min_by(|a, b| off(a).total_cmp(&off(b)))
        };
        let told = (own.pitch.si() / inches(1.0).si()).round();
        let found = around(told)?;
        let best = (found.screw.pitch.si() / inches(1.0).si()).round();
        // At the end of what was tried a better one may lie beyond it.
        if (best - told).abs() < 6.0 {
            return Some(found);
        }
        around(best)
    }

    /// Why nothing is told above or below the range, in words.
    pub fn limits(&self) -> Vec<Text> {
        let mut all = Vec::new();
        if let (Some(why), Some(first)) = (&self.range.slower, self.range.points.first()) {
            all.push(say!("Below {} nothing is told: {}.", Measure::of(first.speed), why.to_string()));
        }
        if let (Some(why), Some(last)) = (&self.range.faster, self.range.points.last()) {
            all.push(say!("Above {} nothing is told: {}.", Measure::of(last.speed), why.to_string()));
        }
        all
    }
}

/// The pitch in whole inches with which the engines turn at rated speed at her greatest speed: the coarsest with which they still do.
fn suited(built: &Built, planed: &Planed) -> Length {
    let [mut low, mut high] = PITCHES_IN;
    while low < high {
        let middle = (low + high).div_ceil(2);
        let screw = Screw { pitch: inches(f64::from(middle)), ..built.screw };
        let range = built.with_screw(&screw).range_on(planed);
        let fast = range.top.as_ref().or(range.points.last());
        let reaches = fast.is_some_and(|one| one.full_throttle >= built.craft.propulsion.engine.rated);
        if reaches { low = middle } else { high = middle - 1 }
    }
    inches(f64::from(low))
}
