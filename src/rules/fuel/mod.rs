//! Fuel: from the tank to the engines.

mod boiling;
mod endurance;
mod hose;
mod one_feed;
mod suction;
mod vent_and_fill;

use crate::case::Case;
use crate::case::rigging::fuel::{Fed, fed, none_burns};
use crate::job::rigging;
use crate::job::rigging::FuelRig;
use crate::quantity::Text;
use crate::reading::{Absent, reading};
use crate::rig::Missing;
use crate::rules::Rule;

/// Its rules, in the order of the report.
pub(super) const RULES: &[&Rule] = &[
    &suction::SUCTION,
    &one_feed::ONE_FEED,
    &boiling::BOILING,
    &hose::HOSE,
    &vent_and_fill::VENT_AND_FILL,
    &endurance::ENDURANCE,
];

/// What the job tells of her fuel, where her engines burn any; else why there is nothing.
fn told<'c>(case: &'c Case) -> Result<&'c FuelRig, Absent> {
    let no = |why: &str| Err(Absent::NotApplicable(Text::from(why)));
    match &case.rig.job.rigging.fuel {
        None => no("The job tells nothing of how her engines are fed (rigging.fuel)."),
        Some(_) if none_burns(case) => no("Electric engines burn no fuel. Diesel is not looked at here either."),
        Some(fuel) => Ok(fuel),
    }
}

/// The lines of the job as they work.
fn lines<'a>(case: &'a Case, fuel: &'a FuelRig) -> Result<Vec<Fed<'a>>, Absent> {
    let mut missing = Vec::new();
    let mut all = Vec::new();
    for (i, line) in fuel.lines.iter().enumerate() {
        match fed(case, line, i) {
            Ok(fed) => all.push(fed),
            Err(lacking) => Missing::gather(&mut missing, lacking),
        }
    }
    if fuel.lines.is_empty() {
        missing.push(Missing::one(reading!(rigging::FuelRig.lines)));
    }
    if missing.is_empty() { Ok(all) } else { Err(missing.into()) }
}
