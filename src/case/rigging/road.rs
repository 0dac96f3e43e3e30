//! What stands on the trailer, and where.

use nalgebra::{Point3, Rotation3, Vector3};
use uom::si::f64::{Angle, Length, Mass};

use crate::case::Case;
use crate::case::float::{Crew, Entry, Loaded};
use crate::case::stern::Stern;
use crate::case::swing::{TUBE_ABOVE_IN, TUBE_FORWARD_IN};
use crate::job::rigging::{self, Chosen, Towed, TowedWeight};
use crate::job::{self, Trailer};
use crate::physics::rigging::trailer::{Stand, Weight};
use crate::quantity::{Dimensioned, inches};
use crate::reading::{Absent, reading};
use crate::rig::{Engine, Group, Missing, Rig};

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

/// The same of an engine, tilted or not.
const LEDGER_TILTED: &str = "the ledger, the engine turned about its tilt tube to where she is towed";
const LEDGER_DOWN: &str = "the ledger, the engine taken as down";

/// All that the ledger has aboard with nobody in her, in the heaviest such loading; engines tilted as she is towed.
fn aboard<'a>(case: &'a Case) -> Result<Vec<Weight>, Absent> {
    let float = case.float().map_err(Clone::clone)?;
    let ashore = float.loadings.iter().filter(|loaded| loaded.crew == Crew::Ashore);
    let after = |loaded: &'a Loaded| loaded.after.as_ref().map(|after| (after, &case.rig.after));
    let before = |loaded: &'a Loaded| loaded.before.as_ref().map(|before| (before, &case.rig.before));
    let states = ashore.filter_map(|loaded| after(loaded).or_else(|| before(loaded)));
    let heaviest = states.reduce(|a, b| if b.0.total.mass > a.0.total.mass { b } else { a });
    let Some((state, outfit)) = heaviest else {
        return Err(Absent::from(Missing::one(reading!(job::BoatWeight.weight))));
    };
    let weight = |entry: &Entry| {
        // What is taken away hung there when she was weighed, engines down.
        let engine = outfit.engines().find(|(_, engine)| engine.label == entry.name && entry.weight.mass.si() > 0.0);
        let tilted = engine.map(|(group, engine)| tilted(case.rig, group, engine, entry.weight.centre));
        let (centre, from) = match tilted {
            Some(Some(centre)) => (centre, LEDGER_TILTED),
            Some(None) => (entry.weight.centre, LEDGER_DOWN),
            None => (entry.weight.centre, LEDGER),
        };
        Weight { name: entry.name.clone(), mass: entry.weight.mass, forward: Length::from_si(centre.x), from }
    };
    Ok(state.entries.iter().map(weight).collect())
}

/// The centre of an engine, boat axes, metres, with the engine tilted as she is towed; nothing where the job does not tell how far.
fn tilted(rig: &Rig, group: &Group, engine: &Engine, centre: Point3<f64>) -> Option<Point3<f64>> {
    let Some(Trailer::On { towing_tilt: Some(towing), .. }) = &rig.job.trailer else { return None };
    let stern = Stern::of(rig).ok()?;
    let row = engine.holes_up.reading().copied().unwrap_or(0);
    let rest = stern.rest(group.setback().ask().ok()?.value, group.drop().ask().ok()?.value, row);
    let sheet = engine.sheet.reading();
    let lean = sheet.map_or(Angle::default(), |sheet| stern.angle - sheet.transom_angle);
    let tube = sheet.and_then(|sheet| sheet.tilt_tube);
    let [forward, above] = tube.unwrap_or([inches(TUBE_FORWARD_IN), inches(TUBE_ABOVE_IN)]);
    let turn = |angle: Angle| Rotation3::from_axis_angle(&Vector3::y_axis(), angle.si());
    let tube = Point3::new(rest.x, engine.y.si(), rest.z) + turn(-lean) * Vector3::new(forward.si(), 0.0, above.si());
    let stops = [sheet.map(|sheet| sheet.full_tilt - lean), engine.tilt_stop];
    let tilt = stops.into_iter().flatten().fold(towing.value, Angle::min);
    Some(tube + turn(tilt) * (centre - tube))
}
