//! Fuel: from the tank to the engines.

mod boiling;
mod endurance;
mod hose;
mod one_feed;
mod suction;
mod vent_and_fill;

pub use boiling::BOILING;
pub use endurance::ENDURANCE;
pub use hose::HOSE;
pub use one_feed::ONE_FEED;
pub use suction::SUCTION;
pub use vent_and_fill::VENT_AND_FILL;

use super::Finding;
use crate::case::Case;
use crate::case::rigging::fuel::{Fed, fed, none_burns};
use crate::job::rigging;
use crate::job::rigging::FuelRig;
use crate::quantity::Text;
use crate::reading::reading;
use crate::rig::Missing;

/// What the job tells of her fuel, where her engines burn any; else the finding that says why not.
fn told<'c>(case: &'c Case) -> Result<&'c FuelRig, Finding> {
    let no = |why: &str| Err(Finding::not_applicable(Text::from(why)));
    match &case.rig.job.rigging.fuel {
        None => no("The job tells nothing of how her engines are fed (rigging.fuel)."),
        Some(_) if none_burns(case) => no("Electric engines burn no fuel. Diesel is not looked at here either."),
        Some(fuel) => Ok(fuel),
    }
}

/// The lines of the job as they work.
fn lines<'a>(case: &'a Case, fuel: &'a FuelRig) -> Result<Vec<Fed<'a>>, Finding> {
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
    if missing.is_empty() { Ok(all) } else { Err(Finding::unmeasured(missing)) }
}
