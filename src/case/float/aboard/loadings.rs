//! The loadings in which she is floated: the job's own, or those that are worth a look.

use uom::si::f64::Ratio;

use super::super::NoFloat;
use super::super::ledger::{self, Entry};
use super::crew::is_to_one_side;
use super::{Aboard, Fill};
use crate::job::{Condition, Liquid, Sitting};
use crate::quantity::{Dimensioned, Reading};
use crate::rig::Rig;

/// One loading, without the boat and her engines.
#[derive(Clone, Debug)]
pub(in crate::case::float) struct Loading {
    pub name: String,
    pub to_one_side: bool,
    pub entries: Vec<Entry>,
}

impl Aboard {
    /// The user's loadings, or those that are worth a look.
    pub(in crate::case::float) fn loadings(
        &self,
        rig: &Rig,
        heavy_side: f64,
        measured: bool,
    ) -> Result<Vec<Loading>, NoFloat> {
        let as_found = |name: &str| {
            let entries = self.when_measured(rig)?;
            Ok(Loading::of(name, entries))
        };
        let mut loadings = Vec::new();
        if measured {
            loadings.push(as_found("as measured")?);
        }
        let afloat = &rig.afloat;
        let study = rig.sitting == Sitting::Study && afloat.places.is_empty() && afloat.crew.is_none();
        if !afloat.conditions.is_empty() {
            for condition in &afloat.conditions {
                loadings.push(self.condition(rig, condition)?);
            }
        } else if !study {
            for loading in self.usual(heavy_side)? {
                if !loadings.iter().any(|other| other.entries == loading.entries) {
                    loadings.push(loading);
                }
            }
        } else if !measured {
            loadings.push(as_found("as given")?);
        }
        Ok(loadings)
    }

    /// A loading that the job gives.
    fn condition(&self, rig: &Rig, condition: &Condition) -> Result<Loading, NoFloat> {
        let share = |fill: &Option<Reading<Ratio>>| fill.as_ref().map(|fill| fill.value.si());
        let mut entries = self.tanks(Fill {
            fuel: share(&condition.fuel),
            water: share(&condition.water),
            live_well: share(&condition.live_well),
        })?;
        if !condition.gear_ashore {
            entries.extend(self.gear.iter().cloned());
        }
        entries.extend(self.crew_at(&condition.crew));
        entries.extend(ledger::of_items(rig, &condition.also).map_err(NoFloat::Missing)?);
        Ok(Loading { to_one_side: is_to_one_side(&entries, self.rail), ..Loading::of(&condition.name, entries) })
    }

    /// Light, and with everything and everybody where it matters most.
    fn usual(&self, heavy_side: f64) -> Result<Vec<Loading>, NoFloat> {
        let fill = |fuel, water, live_well| Fill { fuel: Some(fuel), water: Some(water), live_well: Some(live_well) };
        let laden = |name: &str, fill: Fill, crew: Vec<Entry>| {
            let mut entries = self.tanks(fill)?;
            entries.extend(self.gear.iter().cloned());
            entries.extend(crew);
            Ok(Loading::of(name, entries))
        };
        let has_well = self.tanks.iter().any(|t| t.holds == Liquid::LiveWell);
        let worst = if has_well { "live well full, crew at the stern" } else { "all full, crew at the stern" };
        let sign = if heavy_side > 0.0 { 1.0 } else { -1.0 };
        Ok(vec![
            Loading::of("light", self.tanks(fill(0.0, 0.0, 0.0))?),
            laden("full fuel, crew aft", fill(1.0, 1.0, 0.0), self.crew_aft())?,
            laden(worst, fill(1.0, 1.0, 1.0), self.crew_at_stern())?,
            Loading { to_one_side: true, ..laden("crew to one side", fill(1.0, 1.0, 0.0), self.crew_to_side(sign))? },
        ])
    }
}

impl Loading {
    fn of(name: &str, entries: Vec<Entry>) -> Self {
        Loading { name: name.to_owned(), to_one_side: false, entries }
    }
}
