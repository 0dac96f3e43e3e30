//! Where the persons aboard are.

use nalgebra::Point3;

use super::super::ledger::{Entry, Movable, value, y_of};
use super::Aboard;
use crate::job::CrewAt;
use crate::physics::capacity::STABILITY_TEST_SHARE;
use crate::quantity::{Dimensioned, inches};

/// Where the persons of a loading are.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Crew {
    /// Nobody is aboard: she lies at her mooring or at the dock.
    Ashore,
    /// At their stations, or where the job puts them.
    AtStations,
    /// In the aftmost places, as many in each as it holds, which does not last.
    Aft,
    /// All of them in the aftmost place, more than it holds, for a moment.
    CrowdedAft,
    /// At one rail.
    ToOneSide,
}

/// How high a seated person's centre stands over the seat. Common practice, no source.
const CENTRE_OVER_SEAT_IN: f64 = 10.0;
/// Persons whose centre together stands further off the centreline than this part of the rail's distance stand to
/// one side. Common practice, no source.
const TO_ONE_SIDE: f64 = 0.25;

/// Where the weight of persons is from, and their place.
const EACH: &str = "so many, each of a person's weight";
const STAND: &str = "where they stand, told or usual";

impl Aboard {
    fn persons(&self, count: u16, name: &str, at: Point3<f64>) -> Option<Entry> {
        let persons = counted(count)?;
        let entry = Entry::new(format!("{persons}, {name}"), self.person * f64::from(count), at);
        Some(entry.movable(Movable::Persons).from(EACH, STAND))
    }

    pub(super) fn crew_where(&self, crew: &[CrewAt]) -> Vec<Entry> {
        crew.iter()
            .filter_map(|one| {
                let seat = one.at.as_ref().and_then(|name| self.places.iter().find(|place| place.name == *name));
                let base = seat.map_or(Point3::new(0.0, 0.0, self.standing), |seat| seat.at);
                let at = Point3::new(
                    value(one.forward.as_ref()).unwrap_or(base.x),
                    one.across.as_ref().map_or(base.y, |across| y_of(Some(across))),
                    value(one.above.as_ref()).unwrap_or(base.z),
                );
                let name = seat.map_or("where the job says", |seat| seat.name.as_str());
                self.persons(one.persons.unwrap_or(1), name, at)
            })
            .collect()
    }

    /// The crew in the aftmost places, as many in each as it holds; the rest in the last one.
    pub(super) fn crew_aft(&self) -> Vec<Entry> {
        let mut left = self.crew;
        let mut entries = Vec::new();
        let last = self.places.len().saturating_sub(1);
        for (i, place) in self.places.iter().enumerate() {
            let here = if i == last { left } else { left.min(place.holds) };
            entries.extend(self.persons(here, &place.name, place.at));
            left -= here;
        }
        entries
    }

    /// Whether the aftmost place holds them all.
    pub(super) fn at_stern(&self) -> Crew {
        match self.places.first() {
            Some(place) if place.holds < self.crew => Crew::CrowdedAft,
            _ => Crew::Aft,
        }
    }

    pub(super) fn crew_at_stern(&self) -> Vec<Entry> {
        self.places.first().and_then(|place| self.persons(self.crew, &place.name, place.at)).into_iter().collect()
    }

    /// The crew at their stations: one after the other in each place that still has room, from the foremost aft;
    /// the rest in the foremost.
    pub(super) fn crew_at_stations(&self) -> Vec<Entry> {
        let mut here = vec![0; self.places.len()];
        let mut left = self.crew;
        while left > 0 {
            let before = left;
            for (place, here) in self.places.iter().zip(&mut here).rev() {
                if left > 0 && *here < place.holds {
                    (*here, left) = (*here + 1, left - 1);
                }
            }
            if left == before {
                break;
            }
        }
        if let Some(foremost) = here.last_mut() {
            *foremost += left;
        }
        let seated = self.places.iter().zip(here);
        seated.filter_map(|(place, here)| self.persons(here, &place.name, place.at)).collect()
    }

    /// Weights laid along the rail in place of the crew, as the stability test lays them: a share of the crew's weight
    /// at the middle of all places and as high as the seats are on average, no higher than the gunwale; nobody else aboard.
    pub(super) fn test_weights_at(&self, rail: Rail) -> Vec<Entry> {
        let Some(persons) = counted(self.crew).filter(|_| !self.places.is_empty()) else {
            return Vec::new();
        };
        let [middle, centre] = [0, 2].map(|axis| self.mean(axis));
        let height = (centre - inches(CENTRE_OVER_SEAT_IN).si()).clamp(0.0, self.gunwale);
        let name = format!("{:.0} % of {persons}, at the {} rail", 100.0 * STABILITY_TEST_SHARE, rail.word());
        let mass = self.person * f64::from(self.crew) * STABILITY_TEST_SHARE;
        let at = Point3::new(middle, rail.sign() * self.rail, height);
        vec![Entry::new(name, mass, at).movable(Movable::Persons).from(EACH, STAND)]
    }

    /// All of the crew at one rail.
    pub(super) fn crew_at_rail(&self, rail: Rail) -> Vec<Entry> {
        let height = self.places.iter().map(|place| place.at.z).fold(f64::NEG_INFINITY, f64::max);
        let at = Point3::new(self.mean(0), rail.sign() * self.rail, height);
        self.persons(self.crew, &format!("at the {} rail", rail.word()), at).into_iter().collect()
    }

    /// How far along an axis all places lie on average.
    fn mean(&self, axis: usize) -> f64 {
        self.places.iter().map(|place| place.at[axis]).sum::<f64>() / self.places.len().max(1) as f64
    }
}

/// So many persons in words; nothing for nobody.
fn counted(count: u16) -> Option<String> {
    match count {
        0 => None,
        1 => Some("1 person".to_owned()),
        n => Some(format!("{n} persons")),
    }
}

/// A side of the boat.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::case::float) enum Rail {
    Port,
    Starboard,
}

impl Rail {
    fn word(self) -> &'static str {
        match self {
            Rail::Port => "port",
            Rail::Starboard => "starboard",
        }
    }

    /// The sign of y on this side.
    fn sign(self) -> f64 {
        match self {
            Rail::Port => 1.0,
            Rail::Starboard => -1.0,
        }
    }
}

/// Where the persons of a loading are that the job gives.
pub(super) fn found(entries: &[Entry], rail: f64) -> Crew {
    let persons = entries.iter().filter(|e| e.movable == Movable::Persons);
    let (kg, moment) = persons.fold((0.0, 0.0), |(kg, moment), entry| {
        let mass = entry.weight.mass.si();
        (kg + mass, moment + mass * entry.weight.centre.y)
    });
    if kg <= 0.0 {
        Crew::Ashore
    } else if (moment / kg).abs() > TO_ONE_SIDE * rail {
        Crew::ToOneSide
    } else {
        Crew::AtStations
    }
}
