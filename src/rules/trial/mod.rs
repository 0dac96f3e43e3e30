//! The sea trial: whether its runs can be believed, whether before and after can be compared, and what was promised.

mod behaviour;
mod comparable;
mod equal_load;
mod fuel;
mod full_throttle;
mod promised;
mod slip;
mod two_ways;

use crate::case::Case;
use crate::case::float::Side;
use crate::case::trial::{Measured, Trials};
use crate::job::{Run, Sailed};
use crate::quantity::Text;
use crate::reading::{Absent, reading};
use crate::rig::{Engine, Missing, Outfit};
use crate::rules::Rule;

/// Its rules, in the order of the report.
pub(super) const RULES: &[&Rule] = &[
    &full_throttle::FULL_THROTTLE,
    &fuel::FUEL,
    &slip::SLIP,
    &two_ways::TWO_WAYS,
    &equal_load::EQUAL_LOAD,
    &comparable::COMPARABLE,
    &behaviour::BEHAVIOUR,
    &promised::PROMISED,
];

/// The trials; else that there is none.
fn ready<'c>(case: &'c Case) -> Result<&'c Trials, Absent> {
    let none = || Text::from("The job tells no trial; `trial: (before: (runs: [...]))` does.");
    case.trial().ok_or_else(|| Absent::NotApplicable(none()))
}

/// The trial that is judged: after where it was sailed, else before; with its runs.
fn latest(trials: &Trials) -> Result<(Side, &Measured), Absent> {
    match trials.latest() {
        Some((side, trial)) if !trial.runs.is_empty() => Ok((side, trial)),
        _ => Err(Missing::one(reading!(Sailed.runs)).into()),
    }
}

fn lacks_full_throttle() -> Missing {
    Missing { measurement: reading!(Run.full_throttle), of: Some("a run with the throttles open".to_owned()) }
}

/// The outfit of this side.
fn outfit<'c>(case: &'c Case, side: Side) -> &'c Outfit {
    match side {
        Side::Before => &case.rig.before,
        Side::After => &case.rig.after,
    }
}

/// The first main engine of this side: they are taken alike.
fn engine<'c>(case: &'c Case, side: Side) -> Option<&'c Engine> {
    outfit(case, side).mains().first().copied()
}

/// "with the new engines", "with the old engines".
fn with(side: Side) -> &'static str {
    match side {
        Side::Before => "with the old engines",
        Side::After => "with the new engines",
    }
}
