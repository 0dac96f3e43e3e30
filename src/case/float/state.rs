//! She, loaded, at rest: before and after.

use uom::si::f64::{Length, MassDensity};

use super::aboard::{Crew, Loading};
use super::{Entry, Float, Side};
use crate::physics::float::{self, Floating, FreeSurface, Hull, Outcome, Weight, equilibrium, free_surface_rise};
use crate::quantity::{Dimensioned, Measure, Text, say};
use crate::reading::Absent;

/// One loading, before and after.
#[derive(Clone, Debug)]
pub struct Loaded {
    /// What it is called.
    pub name: String,
    /// Where the persons are.
    pub crew: Crew,
    /// Whether no engines are given at all, and she floats as she is.
    pub alone: bool,
    /// With the old engines, where they are known.
    pub before: Option<State>,
    /// With the new engines, where they are known; as she is, where there are none at all.
    pub after: Option<State>,
}

/// She, loaded, at rest.
#[derive(Clone, Debug)]
pub struct State {
    /// Which hull floats.
    pub side: Side,
    /// What weighs on her.
    pub entries: Vec<Entry>,
    /// All of it together.
    pub total: Weight,
    /// Where she comes to rest.
    pub outcome: Outcome,
    /// What free surfaces take off her metacentric height.
    pub free_surface: FreeSurface,
}

impl State {
    /// The hull of that side with these weights.
    pub(super) fn of(hull: &Hull, water: MassDensity, side: Side, entries: Vec<Entry>) -> Result<State, Absent> {
        let weights: Vec<Weight> = entries.iter().map(|entry| entry.weight).collect();
        let cannot = |error: float::FloatError| Absent::CannotBe(say!("{}.", error.to_string()));
        let total = float::total(&weights).map_err(cannot)?;
        let load = float::Load { mass: total.mass, centre: total.centre, water };
        let outcome = equilibrium(hull, &load).map_err(cannot)?;
        // A search that came to no end says nothing of her, least of all that she sinks.
        if matches!(outcome, Outcome::NotConverged { .. }) {
            return Err(Absent::CannotBe(say!(
                "With {} aboard and on her no balance was found: how she floats is undecided. Check weights, places and shape.",
                Measure::of(total.mass)
            )));
        }
        let slack: Vec<float::Tank> = entries.iter().filter_map(|entry| entry.tank).collect();
        let free_surface = free_surface_rise(&slack, total.mass).map_err(cannot)?;
        Ok(State { side, entries, total, outcome, free_surface })
    }

    /// How she lies, if she floats.
    pub fn floating(&self) -> Option<&Floating> {
        self.outcome.at_rest()
    }

    /// How she lies, if she floats right side up.
    ///
    /// # Errors
    /// Why not, in words.
    pub fn upright(&self) -> Result<&Floating, Text> {
        match &self.outcome {
            Outcome::Stable(floating) => Ok(floating),
            Outcome::Unstable { settled, .. } if settled.attitude().heel.si().cos() > 0.0 => Ok(settled),
            Outcome::Unstable { .. } | Outcome::Capsized(_) => {
                Err(Text::from("she turns over: she is not stable upright with these weights"))
            }
            Outcome::Sinks { mass, largest } => Err(say!(
                "she sinks: {} is more than the {} that her whole hull can carry",
                Measure::of(*mass),
                Measure::of(*largest)
            )),
            Outcome::NotConverged { .. } => Err(Text::from("no balance was found")),
        }
    }

    /// GM for heel, free surfaces taken off.
    pub fn gm(&self) -> Option<Length> {
        Some(self.floating()?.gm_transverse - self.free_surface.transverse)
    }
}

impl Loaded {
    /// Floats her so loaded, with what each outfit weighs.
    pub(super) fn of(
        float: &Float,
        loading: &Loading,
        before: Option<&[Entry]>,
        after: Option<&[Entry]>,
    ) -> Result<Loaded, Absent> {
        let alone = before.is_none() && after.is_none();
        let one = |side: Side, outfit: Option<&[Entry]>, wanted: bool| {
            wanted
                .then(|| {
                    let mut entries = vec![float.bare.clone()];
                    entries.extend(outfit.unwrap_or_default().iter().cloned());
                    entries.extend(loading.entries.iter().cloned());
                    State::of(float.hull(side), float.water, side, entries)
                })
                .transpose()
        };
        Ok(Loaded {
            name: loading.name.clone(),
            crew: loading.crew,
            alone,
            before: one(Side::Before, before, before.is_some())?,
            after: one(Side::After, after, after.is_some() || alone)?,
        })
    }

    /// Whether the crew stands to one side on purpose.
    pub fn to_one_side(&self) -> bool {
        self.crew == Crew::ToOneSide
    }

    /// The state that rules judge: with the new engines, else as she is.
    pub fn judged(&self) -> Option<&State> {
        self.after.as_ref().or(self.before.as_ref())
    }

    /// Both sides, where both are known.
    pub fn both(&self) -> Option<(&State, &State)> {
        Some((self.before.as_ref()?, self.after.as_ref()?))
    }
}
