//! The loadings in which she is floated: the job's own, or those that are worth a look.

use uom::si::f64::Ratio;

use super::super::ledger::{self, Entry};
use super::crew::{Crew, Rail, found};
use super::{Aboard, Fill};
use crate::job::{Condition, Liquid, Sitting};
use crate::quantity::{Dimensioned, Reading};
use crate::reading::Absent;
use crate::rig::Rig;

/// One loading, without the boat and her engines.
#[derive(Clone, Debug)]
pub(in crate::case::float) struct Loading {
    pub name: String,
    pub crew: Crew,
    pub entries: Vec<Entry>,
}

impl Aboard {
    /// The user's loadings, or those that are worth a look; among them always one with nobody aboard.
    pub(in crate::case::float) fn loadings(&self, rig: &Rig, measured: bool) -> Result<Vec<Loading>, Absent> {
        let as_found = |name: &str| -> Result<Loading, Absent> {
            let entries = self.when_measured(rig)?;
            Ok(Loading { name: name.to_owned(), crew: found(&entries, self.rail), entries })
        };
        let mut loadings = Vec::new();
        if measured {
            loadings.push(as_found("as measured")?);
        }
        let given = &rig.job.conditions;
        if !given.is_empty() {
            for condition in given {
                loadings.push(self.condition(rig, condition)?);
            }
            if !loadings.iter().any(|loading| loading.crew == Crew::Ashore) {
                loadings.push(self.at_mooring()?);
            }
        } else if self.goes_out(rig) {
            for loading in self.usual()? {
                if !loadings.iter().any(|other| other.entries == loading.entries) {
                    loadings.push(loading);
                }
            }
        } else if !measured {
            loadings.push(as_found("as given")?);
        }
        Ok(loadings)
    }

    /// Whether she is looked at as she is used, with nothing said of how: a desk question without persons is not.
    fn goes_out(&self, rig: &Rig) -> bool {
        let weights = &rig.job.weights;
        let desk = rig.job.sitting == Sitting::Study && weights.places.is_empty() && weights.crew.is_none();
        rig.job.conditions.is_empty() && !desk
    }

    /// A loading that the job gives.
    fn condition(&self, rig: &Rig, condition: &Condition) -> Result<Loading, Absent> {
        let share = |fill: &Option<Reading<Ratio>>| fill.as_ref().map(|fill| fill.value.si());
        let mut entries = self.tanks(Fill {
            fuel: share(&condition.fuel),
            water: share(&condition.water),
            live_well: share(&condition.live_well),
        })?;
        if !condition.gear_ashore {
            entries.extend(self.gear.iter().cloned());
        }
        entries.extend(self.crew_where(&condition.crew));
        entries.extend(ledger::of_items(rig, "also", &condition.also)?);
        Ok(Loading { name: condition.name.clone(), crew: found(&entries, self.rail), entries })
    }

    /// As she lies at her mooring: tanks as they were found or half full, live wells empty, gear aboard, nobody.
    fn at_mooring(&self) -> Result<Loading, Absent> {
        let fill = Fill { live_well: Some(0.0), ..Fill::default() };
        self.laden("at the mooring", fill, Crew::Ashore, Vec::new())
    }

    /// Light, at her mooring, under way, and with everything and everybody where it matters most.
    fn usual(&self) -> Result<Vec<Loading>, Absent> {
        let has_well = self.tanks.iter().any(|t| t.holds == Liquid::LiveWell);
        // A loading says what it leaves out: without a tank of fuel none is full.
        let has_fuel = self.tanks.iter().any(|t| t.holds == Liquid::Fuel);
        let (aft, worst) = match (has_fuel, has_well) {
            (true, true) => ("full fuel, crew aft", "live well full, crew at the stern"),
            (true, false) => ("full fuel, crew aft", "all full, crew at the stern"),
            (false, true) => ("crew aft, no fuel told", "live well full, no fuel told, crew at the stern"),
            (false, false) => ("crew aft, no fuel told", "crew at the stern, no fuel told"),
        };
        let empty = Fill { fuel: Some(0.0), water: Some(0.0), live_well: Some(0.0) };
        let all_full = Fill { live_well: Some(1.0), ..FULL_NO_WELL };
        Ok(vec![
            Loading { name: "light".to_owned(), crew: Crew::Ashore, entries: self.tanks(empty)? },
            self.at_mooring()?,
            self.laden("crew at their stations", FULL_NO_WELL, Crew::AtStations, self.crew_at_stations())?,
            self.laden(aft, FULL_NO_WELL, Crew::Aft, self.crew_aft())?,
            self.laden(worst, all_full, self.at_stern(), self.crew_at_stern())?,
        ])
    }

    /// The crew, or the weights that stand for them, at each rail; nothing where the job says how she is loaded.
    ///
    /// # Errors
    /// A tank's readings that are missing.
    pub(in crate::case::float) fn crowds(&self, rig: &Rig, crowd: Crowd) -> Result<Vec<Loading>, Absent> {
        if !self.goes_out(rig) {
            return Ok(Vec::new());
        }
        let at = |rail: Rail| {
            let persons = match crowd {
                Crowd::Tested => self.test_weights_at(rail),
                Crowd::Everybody => self.crew_at_rail(rail),
            };
            self.laden("crew to one side", FULL_NO_WELL, Crew::ToOneSide, persons)
        };
        Ok(vec![at(Rail::Starboard)?, at(Rail::Port)?])
    }

    /// Tanks so full, the usual gear, and these persons.
    fn laden(&self, name: &str, fill: Fill, crew: Crew, persons: Vec<Entry>) -> Result<Loading, Absent> {
        let mut entries = self.tanks(fill)?;
        entries.extend(self.gear.iter().cloned());
        entries.extend(persons);
        Ok(Loading { name: name.to_owned(), crew, entries })
    }
}

/// Fuel and water full, live wells empty.
const FULL_NO_WELL: Fill = Fill { fuel: Some(1.0), water: Some(1.0), live_well: Some(0.0) };

/// How many go to one rail.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::case::float) enum Crowd {
    /// As much weight as the stability test lays there.
    Tested,
    /// Everybody.
    Everybody,
}
