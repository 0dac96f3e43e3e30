//! The trials before and after: every run with what it comes to, and one against the other.

mod compared;
mod measured;
mod parts;

use super::Case;
use super::float::Side;
use crate::job::{Liquid, Promised};
use crate::quantity::Dimensioned;
use uom::si::f64::Volume;

pub use compared::{Compared, Row};
pub use measured::{Done, Doubtful, Measured};

/// Both trials, as far as they were sailed.
#[derive(Clone, Debug)]
pub struct Trials {
    /// With the old engines, where it was sailed.
    pub before: Option<Measured>,
    /// With the new engines, where it was sailed.
    pub after: Option<Measured>,
    /// What was promised of the new engines, as the job has it.
    pub promised: Option<Promised>,
    /// Fuel that can be used.
    pub tank: Option<Volume>,
}

impl Case<'_> {
    /// The trials; nothing where the job tells none.
    pub fn trial(&self) -> Option<&Trials> {
        self.trial.get_or_init(|| Trials::of(self)).as_ref()
    }

    /// Fuel that her tanks hold, where the job tells them.
    fn fuel_tanks(&self) -> Option<Volume> {
        let tanks = self.rig.job.weights.tanks.iter().filter(|tank| tank.holds == Liquid::Fuel);
        tanks.filter_map(|tank| tank.capacity.as_ref()).map(|capacity| capacity.value).reduce(|a, b| a + b)
    }
}

impl Trials {
    fn of(case: &Case) -> Option<Trials> {
        let trial = case.rig.trial.as_ref()?;
        let tank = trial.said.tank.as_ref().map(|tank| tank.value).or_else(|| case.fuel_tanks());
        let tank = tank.filter(|tank| tank.si() > 0.0);
        let measured = |side| {
            let sailing = match side {
                Side::Before => trial.before.as_ref(),
                Side::After => trial.after.as_ref(),
            }?;
            Some(Measured::of(case.rig, sailing, side, tank))
        };
        Some(Trials {
            before: measured(Side::Before),
            after: measured(Side::After),
            promised: trial.said.promised.clone(),
            tank,
        })
    }

    /// The one that says how she runs with the engines that are judged: after where it was sailed.
    pub fn latest(&self) -> Option<(Side, &Measured)> {
        let after = self.after.as_ref().map(|after| (Side::After, after));
        after.or(self.before.as_ref().map(|before| (Side::Before, before)))
    }

    /// Both, where both were sailed.
    pub fn both(&self) -> Option<(&Measured, &Measured)> {
        Some((self.before.as_ref()?, self.after.as_ref()?))
    }
}
