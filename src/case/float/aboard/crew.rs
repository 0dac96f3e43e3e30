//! Where the persons aboard are.

use nalgebra::Point3;

use super::super::ledger::{Entry, Movable, value, y_of};
use super::Aboard;
use crate::job::CrewAt;
use crate::quantity::Dimensioned;

/// Persons whose centre together stands further off the centreline than this part of the rail's distance stand to
/// one side. Common practice, no source.
const TO_ONE_SIDE: f64 = 0.25;

impl Aboard {
    fn persons(&self, count: u16, name: &str, at: Point3<f64>) -> Option<Entry> {
        let persons = match count {
            0 => return None,
            1 => "1 person".to_owned(),
            n => format!("{n} persons"),
        };
        let entry = Entry::new(format!("{persons}, {name}"), self.person * f64::from(count), at);
        Some(entry.movable(Movable::Persons))
    }

    pub(super) fn crew_at(&self, crew: &[CrewAt]) -> Vec<Entry> {
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

    pub(super) fn crew_at_stern(&self) -> Vec<Entry> {
        self.places.first().and_then(|place| self.persons(self.crew, &place.name, place.at)).into_iter().collect()
    }

    pub(super) fn crew_to_side(&self, sign: f64) -> Vec<Entry> {
        let side = if sign > 0.0 { "port" } else { "starboard" };
        let middle = self.places.iter().map(|place| place.at.x).sum::<f64>() / self.places.len().max(1) as f64;
        let height = self.places.iter().map(|place| place.at.z).fold(f64::NEG_INFINITY, f64::max);
        let at = Point3::new(middle, sign * self.rail, height);
        self.persons(self.crew, &format!("at the {side} rail"), at).into_iter().collect()
    }
}

/// Whether the persons of a loading stand together well off the centreline.
pub(super) fn is_to_one_side(entries: &[Entry], rail: f64) -> bool {
    let persons = entries.iter().filter(|e| e.movable == Movable::Persons);
    let (kg, moment) = persons.fold((0.0, 0.0), |(kg, moment), entry| {
        let mass = entry.weight.mass.si();
        (kg + mass, moment + mass * entry.weight.centre.y)
    });
    kg > 0.0 && (moment / kg).abs() > TO_ONE_SIDE * rail
}
