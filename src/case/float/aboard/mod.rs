//! Who and what is aboard in each loading.

mod crew;
mod edges;
mod loadings;

use nalgebra::Point3;
use uom::si::f64::{Length, Mass, MassDensity};

use super::ledger::{self, Entry, Movable, value, y_of};
use super::shape::Built;
use crate::job::{Cycle, Fuel, Liquid, Plate, Sitting, TankEntry};
use crate::quantity::{Dimensioned, Measure, Text, inches, pounds, say};
use crate::reading::Absent;
use crate::rig::Rig;

pub use crew::Crew;
pub(super) use edges::{edges, mark};
pub(super) use loadings::{Crowd, Loading};

/// Weight of a person. Value from memory: the average that US passenger vessels reckon with.
const PERSON_LB: f64 = 185.0;
/// Persons who go out in her where nobody says. Common practice, no source.
const CREW: u16 = 3;
/// How full a tank is where nobody looked. Common practice, no source.
const HALF: f64 = 0.5;
/// Where persons stand aft, where no place is given, as a part of the hull's length. Common practice,
/// no source.
const AFT_OVER_LENGTH: f64 = 0.1;
/// Where the helm stands, likewise.
const HELM_OVER_LENGTH: f64 = 0.4;
/// How far inside the greatest breadth a person's centre comes at the rail. Common practice, no source.
const INSIDE_RAIL_IN: f64 = 8.0;

/// A place for persons, resolved.
#[derive(Clone, Debug)]
struct Place {
    name: String,
    holds: u16,
    at: Point3<f64>,
}

/// All that can be aboard.
#[derive(Clone, Debug)]
pub(super) struct Aboard {
    person: Mass,
    crew: u16,
    /// The aftmost first.
    places: Vec<Place>,
    tanks: Vec<TankEntry>,
    /// Whether her fuel is in tanks that can be carried.
    portable_fuel: bool,
    gear: Vec<Entry>,
    sea: MassDensity,
    /// Centre of a person where its height is not given.
    standing: f64,
    /// How far off the centreline a person's centre comes at the rail.
    rail: f64,
    /// Height of the gunwale at its lowest.
    gunwale: f64,
}

/// How full the tanks are, where not as they were found.
#[derive(Clone, Copy, Default)]
struct Fill {
    fuel: Option<f64>,
    water: Option<f64>,
    live_well: Option<f64>,
}

impl Aboard {
    pub(super) fn of(rig: &Rig, sea: MassDensity, built: &Built, assumed: &mut Vec<Text>) -> Result<Self, Absent> {
        let weights = &rig.job.weights;
        let (low, high) = built.hull.bounds();
        let standing = high.z;
        let length = high.x - low.x.min(0.0);
        let person = person(rig, assumed);
        let crew = crew(rig, assumed);
        let mut places = places(rig, standing, length, assumed);
        places.sort_by(|a, b| a.at.x.total_cmp(&b.at.x));
        let gear = ledger::of_items(rig, "weights.gear", &weights.gear)?;
        left_out(rig, assumed);
        for tank in &weights.tanks {
            if tank.fill.is_none() && rig.job.afloat.marks().reading().is_some() {
                assumed.push(say!("`{}` is taken as half full when the marks were taken.", tank.what.as_str()));
            }
            if tank.length.is_none() || tank.width.is_none() {
                assumed.push(say!(
                    "The free surface of `{}` is left out: its length and width are not given.",
                    tank.what.as_str()
                ));
            }
        }
        Ok(Aboard {
            person,
            crew,
            places,
            tanks: weights.tanks.clone(),
            portable_fuel: rig.job.boat.fuel == Some(Fuel::PortableTanks),
            gear,
            sea,
            standing,
            rail: (high.y - inches(INSIDE_RAIL_IN).si()).max(0.0),
            gunwale: built.sheer.iter().map(|(_, point)| point.z).fold(high.z, f64::min),
        })
    }

    /// Tanks, persons and the rest when the marks were taken.
    pub(super) fn when_measured(&self, rig: &Rig) -> Result<Vec<Entry>, Absent> {
        let mut entries = self.tanks(Fill::default())?;
        entries.extend(self.gear.iter().cloned());
        entries.extend(self.crew_where(&rig.job.afloat.crew));
        entries.extend(ledger::of_items(rig, "afloat.also", &rig.job.afloat.also)?);
        Ok(entries)
    }

    fn tanks(&self, fill: Fill) -> Result<Vec<Entry>, Absent> {
        let mut entries = Vec::new();
        for tank in &self.tanks {
            let wanted = match tank.holds {
                Liquid::Fuel => fill.fuel,
                Liquid::Water => fill.water,
                Liquid::LiveWell => fill.live_well,
            };
            let as_found = tank.fill.as_ref().map_or(HALF, |fill| fill.value.si());
            let entry = ledger::of_tank(tank, wanted.unwrap_or(as_found), self.sea)?;
            let portable = self.portable_fuel && tank.holds == Liquid::Fuel;
            entries.extend(entry.map(|entry| if portable { entry.movable(Movable::Item) } else { entry }));
        }
        Ok(entries)
    }
}

/// What the loadings leave out, and what lies where nobody said.
fn left_out(rig: &Rig, assumed: &mut Vec<Text>) {
    let job = &rig.job;
    let burns = rig.after.mains().iter().any(|engine| engine.spec.cycle != Some(Cycle::Electric));
    if burns && !job.weights.tanks.iter().any(|tank| tank.holds == Liquid::Fuel) {
        assumed.push(Text::from(
            "No loading has fuel in it: no fuel tank is given (weights.tanks, with its capacity and place).",
        ));
    }
    let items = [&job.weights.gear, &job.afloat.also, &job.goes_on, &job.comes_off];
    let conditions = job.conditions.iter().flat_map(|condition| &condition.also);
    let items = items.into_iter().flatten().chain(conditions);
    let low = items.filter(|item| item.above.is_none() && !item.on_transom && item.forward.is_some());
    let tanks = job.weights.tanks.iter().filter(|tank| tank.above.is_none()).map(|tank| tank.what.as_str());
    let names: Vec<&str> = low.map(|item| item.what.as_str()).chain(tanks).collect();
    if !names.is_empty() {
        assumed.push(say!("Taken to lie on the bottom, as no height above it is given: {}.", names.join(", ")));
    }
}

/// Whether persons go out in her: a desk question without engines has none.
fn in_use(rig: &Rig) -> bool {
    rig.job.sitting != Sitting::Study || !rig.after.is_empty()
}

/// What a person weighs.
fn person(rig: &Rig, assumed: &mut Vec<Text>) -> Mass {
    match &rig.job.weights.person {
        Some(person) => person.value,
        None => {
            if in_use(rig) {
                assumed.push(say!("A person is taken as {} (value from memory).", Measure::of(pounds(PERSON_LB))));
            }
            pounds(PERSON_LB)
        }
    }
}

/// How many go out in her.
fn crew(rig: &Rig, assumed: &mut Vec<Text>) -> u16 {
    rig.job.weights.crew.unwrap_or_else(|| {
        let plate = match rig.job.plate().reading() {
            Some(Plate::Capacity { persons, .. } | Plate::Builders { persons, .. }) => *persons,
            _ => None,
        };
        let crew = plate.unwrap_or(CREW).min(CREW);
        if in_use(rig) && rig.job.conditions.is_empty() {
            assumed.push(match crew {
                1 => Text::from("1 person is taken to go out in her."),
                crew => say!("{} persons are taken to go out in her.", u32::from(crew)),
            });
        }
        crew
    })
}

/// Where persons can be; the usual places where none is given.
fn places(rig: &Rig, standing: f64, length: f64, assumed: &mut Vec<Text>) -> Vec<Place> {
    let given = &rig.job.weights.places;
    let unsaid = in_use(rig) && rig.job.conditions.is_empty();
    let mut places: Vec<Place> = given
        .iter()
        .map(|seat| Place {
            name: seat.what.clone(),
            holds: seat.holds.unwrap_or(1),
            at: Point3::new(
                value(seat.forward.as_ref()).unwrap_or(AFT_OVER_LENGTH * length),
                y_of(seat.across.as_ref()),
                value(seat.above.as_ref()).unwrap_or(standing),
            ),
        })
        .collect();
    if given.iter().any(|seat| seat.above.is_none()) || (places.is_empty() && unsaid) {
        assumed.push(say!(
            "Persons' centres are taken {} above the bottom, level with the highest sheer, where nothing is given (the careful way).",
            Measure::tape(Length::from_si(standing))
        ));
    }
    if places.is_empty() {
        let place = |name: &str, holds, part: f64| Place {
            name: name.to_owned(),
            holds,
            at: Point3::new(part * length, 0.0, standing),
        };
        places =
            vec![place("aft in the cockpit", u16::MAX, AFT_OVER_LENGTH), place("at the helm", 2, HELM_OVER_LENGTH)];
        if unsaid {
            assumed.push(say!(
                "Persons aft are taken to stand {} forward of the transom: no place is given.",
                Measure::tape(Length::from_si(AFT_OVER_LENGTH * length))
            ));
        }
    }
    places
}
