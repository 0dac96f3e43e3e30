//! The bare boat: as she was weighed, or as she lay when her marks were taken.

use nalgebra::Point3;
use uom::si::f64::{Length, Mass, MassDensity};

use super::Entry;
use super::ledger::{value, y_of};
use crate::job::{EnginesThen, Sitting};
use crate::physics::float::{self, AsFloats, Hull, Mark, Weight, as_she_floats};
use crate::quantity::{Dimensioned, Measure, Reading, Text, say};
use crate::reading::Absent;
use crate::rig::Rig;

/// Height of the bare boat's centre over the height from keel to highest sheer, where nobody knows it.
/// Common practice, no source.
const CENTRE_OVER_HEIGHT: f64 = 0.5;

/// The bare boat's centre forward of the transom over the hull's length, where nobody knows it: from the aftmost, which is
/// taken, to the foremost. Common practice, no source.
const CENTRE_OVER_LENGTH: [f64; 2] = [0.38, 0.46];

/// The fit to the marks.
#[derive(Clone, Debug)]
pub struct AsMeasured {
    /// What the marks say.
    pub fit: AsFloats,
    /// The marks, by name.
    pub names: Vec<String>,
    /// The marks.
    pub marks: Vec<Mark>,
    /// What was aboard then and is no part of the bare boat.
    pub aboard: Vec<Entry>,
    /// Which engines hung then.
    pub engines: EnginesThen,
}

/// Height of the bare boat's centre.
pub(super) fn centre_height(rig: &Rig, hull: &Hull, assumed: &mut Vec<Text>) -> f64 {
    if let Some(above) = &rig.job.weights.boat.above {
        return above.value.si();
    }
    let (low, high) = hull.bounds();
    let height = low.z + CENTRE_OVER_HEIGHT * (high.z - low.z);
    assumed.push(say!(
        "The bare boat's centre is taken {} above the bottom: half the height from keel to highest sheer (common practice, no source).",
        Measure::tape(Length::from_si(height))
    ));
    height
}

/// The bare boat as she was weighed.
pub(super) fn weighed(rig: &Rig, hull: &Hull, centre_height: f64, assumed: &mut Vec<Text>) -> Result<Entry, Absent> {
    let weight = rig.job.weights.boat.weight().ask()?;
    let x = value(rig.job.weights.boat.forward.as_ref()).unwrap_or_else(|| {
        let (low, high) = hull.bounds();
        let [aft, fore] = CENTRE_OVER_LENGTH.map(|part| part * (high.x - low.x));
        assumed.push(say!(
            "The bare boat's centre is taken {} forward of the transom, the careful end of the {} to {} that outboard boats of her length have (common practice, no source).",
            Measure::tape(Length::from_si(aft)),
            Measure::tape(Length::from_si(aft)),
            Measure::tape(Length::from_si(fore))
        ));
        aft
    });
    let y = y_of(rig.job.weights.boat.across.as_ref());
    let place = Reading::origin(rig.job.weights.boat.forward.as_ref());
    Ok(bare(weight.value, Point3::new(x, y, centre_height)).from(weight.basis.origin(), place))
}

fn bare(mass: Mass, centre: Point3<f64>) -> Entry {
    Entry::new("bare boat", mass, centre).from(MARKS, MARKS)
}

/// Where weight and place are from of a boat that was floated to her marks.
const MARKS: &str = "her marks, as she lay";

/// Which engines hung when the marks were taken.
///
/// # Errors
/// Those engines are missing.
pub(super) fn engines_then(rig: &Rig) -> Result<EnginesThen, Absent> {
    let engines = rig.job.afloat.engines.unwrap_or(match rig.job.sitting {
        Sitting::AsFitted => EnginesThen::New,
        _ if rig.before.is_empty() && rig.after.is_empty() => EnginesThen::None,
        _ => EnginesThen::Old,
    });
    let outfit = match engines {
        EnginesThen::Old => Some(&rig.before),
        EnginesThen::New => Some(&rig.after),
        EnginesThen::None => None,
    };
    if let Some(Err(missing)) = outfit.map(|outfit| outfit.ask()) {
        return Err(Absent::Waits(vec![missing]));
    }
    Ok(engines)
}

impl AsMeasured {
    /// Floats her to her marks. The height of the whole boat's centre is that of the bare boat with what is
    /// aboard, which needs her mass first.
    pub(super) fn of(
        hull: &Hull,
        marks: Vec<(String, Mark)>,
        bare_height: f64,
        water: MassDensity,
        aboard: Vec<Entry>,
        engines: EnginesThen,
    ) -> Result<AsMeasured, Absent> {
        let (names, marks): (Vec<String>, Vec<Mark>) = marks.into_iter().unzip();
        let fit = |height: f64| {
            as_she_floats(hull, &marks, Length::from_si(height), water)
                .map_err(|error| Absent::CannotBe(say!("Her marks do not tell how she lies: {}.", error.to_string())))
        };
        let mass = fit(bare_height)?.load.mass.si();
        let (kg, moment) = aboard.iter().fold((0.0, 0.0), |(kg, moment), entry| {
            let mass = entry.weight.mass.si();
            (kg + mass, moment + mass * entry.weight.centre.z)
        });
        let height = ((mass - kg) * bare_height + moment) / mass;
        let measured = AsMeasured { fit: fit(height)?, names, marks, aboard, engines };
        if kg >= mass {
            return Err(measured.too_much_aboard());
        }
        Ok(measured)
    }

    fn too_much_aboard(&self) -> Absent {
        let aboard: f64 = self.aboard.iter().map(|e| e.weight.mass.si()).sum();
        Absent::CannotBe(say!(
            "By her marks she displaces {}, and {} was hung on her and aboard: nothing is left for the boat. Check marks, sections and weights.",
            Measure::of(self.fit.load.mass),
            Measure::of(Mass::from_si(aboard))
        ))
    }

    /// What is left when everything named is taken off.
    pub(super) fn bare(&self) -> Result<Entry, Absent> {
        let mut weights: Vec<Weight> = vec![Weight { mass: self.fit.load.mass, centre: self.fit.load.centre }];
        weights.extend(self.aboard.iter().map(|entry| entry.removed().weight));
        let left = float::total(&weights).map_err(|_| self.too_much_aboard())?;
        Ok(bare(left.mass, left.centre))
    }

    /// How well the marks agree, in sentences.
    pub(super) fn remarks(&self, assumed: &mut Vec<Text>) {
        if !self.fit.heel_fitted {
            assumed.push(Text::from(
                "She is taken as upright when her marks were taken: they do not stand on both sides.",
            ));
        }
        let worst = self.fit.misfits.iter().map(|misfit| misfit.abs());
        let Some(worst) = worst.max_by(|a, b| a.si().total_cmp(&b.si())) else {
            return;
        };
        let unknowns = if self.fit.heel_fitted { 3 } else { 2 };
        assumed.push(if self.marks.len() == unknowns {
            Text::from("Her marks are just as many as what they tell: nothing checks them. One more mark would.")
        } else {
            say!("Her {} marks lie within {} of one water plane.", self.marks.len(), Measure::of(worst))
        });
    }
}
