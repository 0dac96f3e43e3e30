//! What stands on the trailer, and where.

use uom::si::f64::{Length, Mass};

use crate::case::Case;
use crate::case::float::Crew;
use crate::job;
use crate::job::rigging::{self, Chosen, Towed, TowedWeight};
use crate::physics::rigging::trailer::{Stand, Weight};
use crate::quantity::Dimensioned;
use crate::reading::{Absent, reading};
use crate::rig::Missing;

use super::{asked, asked_of};

/// The boat on her trailer.
pub struct OnRoad {
    /// What stands on the trailer, then the trailer itself where its weight and centre are known.
    pub weights: Vec<Weight>,
    /// Weight of the boat with all in her.
    pub boat: Mass,
    /// Where the trailer stands under her, where that was measured.
    pub stand: Result<Stand, Vec<Missing>>,
}

/// The load of this trailer.
///
/// # Errors
/// What is missing for it.
pub fn load(case: &Case, towed: &Towed) -> Result<OnRoad, Absent> {
    let mut weights = if towed.carries.is_empty() { aboard(case)? } else { told(&towed.carries)? };
    weights.extend(told(&towed.besides)?);
    let boat = weights.iter().fold(Mass::from_si(0.0), |sum, weight| sum + weight.mass);
    let axle = towed.axle().ask();
    let coupling = towed.coupling().ask();
    let stand = match (axle, coupling) {
        (Ok(axle), Ok(coupling)) => Ok(Stand { axle: axle.value, coupling: coupling.value }),
        (axle, coupling) => Err([axle.err(), coupling.err()].into_iter().flatten().collect()),
    };
    let spec = towed.trailer.spec();
    let own = asked(spec.and_then(|spec| spec.weight.as_ref()), reading!(rigging::Towed.trailer)).ask()?;
    let ahead = spec.and_then(|spec| spec.centre.as_ref()).map_or(Length::from_si(0.0), |centre| centre.value);
    let axle = stand.as_ref().map_or(Length::from_si(0.0), |stand| stand.axle);
    weights.push(Weight {
        name: "trailer".to_owned(),
        mass: own.value,
        forward: axle + ahead,
        from: own.basis.origin(),
    });
    Ok(OnRoad { weights, boat, stand })
}

fn told(entries: &[TowedWeight]) -> Result<Vec<Weight>, Absent> {
    let mut missing = Vec::new();
    let mut weights = Vec::new();
    for (i, entry) in entries.iter().enumerate() {
        let name = entry.what.clone().unwrap_or_else(|| format!("weight {}", i + 1));
        let mass = asked_of(entry.weight.as_ref(), reading!(rigging::TowedWeight.weight), &name).ask();
        let forward = asked_of(entry.forward.as_ref(), reading!(rigging::TowedWeight.forward), &name).ask();
        match (mass, forward) {
            (Ok(mass), Ok(forward)) => {
                let (mass, forward, from) = (mass.value, forward.value, mass.basis.origin());
                weights.push(Weight { mass, forward, name, from });
            }
            (mass, forward) => missing.extend([mass.err(), forward.err()].into_iter().flatten()),
        }
    }
    if missing.is_empty() { Ok(weights) } else { Err(missing.into()) }
}

/// Where the weights are from that were not told outright.
const LEDGER: &str = "the ledger";

/// All that the ledger has aboard with nobody in her, in the heaviest such loading.
fn aboard(case: &Case) -> Result<Vec<Weight>, Absent> {
    let float = case.float().map_err(Clone::clone)?;
    let ashore = float.loadings.iter().filter(|loaded| loaded.crew == Crew::Ashore);
    let states = ashore.filter_map(|loaded| loaded.after.as_ref().or(loaded.before.as_ref()));
    let heaviest = states.reduce(|a, b| if b.total.mass > a.total.mass { b } else { a });
    let Some(state) = heaviest else {
        return Err(Absent::from(Missing::one(reading!(job::BoatWeight.weight))));
    };
    let weight = |entry: &crate::case::float::Entry| Weight {
        name: entry.name.clone(),
        mass: entry.weight.mass,
        forward: Length::from_si(entry.weight.centre.x),
        from: LEDGER,
    };
    Ok(state.entries.iter().map(weight).collect())
}
