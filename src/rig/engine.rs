//! Engines as they hang: each with its place, its weight and what its class says.

use uom::si::f64::{Angle, Length, Mass, Power};

use super::sheet::SwingSheet;
use super::{Bolts, Missing, Slot};
use crate::job::{self, BracketKind, BracketSpec, EngineSpec, Hand, Item, PropellerSpec, Role, Span};
use crate::quantity::{Basis, Dimensioned, Reading};
use crate::reading::{Declared, reading};

/// All that hangs or stands aft at one time: before, or after.
#[derive(Clone, Debug)]
pub struct Outfit {
    /// How its engines are found out, where none is given.
    pub measurement: &'static Declared,
    /// Engines by what they hang on.
    pub groups: Vec<Group>,
    /// What else comes or goes with them.
    pub items: Vec<ItemOfOutfit>,
}

/// An item whose weight may be missing.
#[derive(Clone, Debug)]
pub struct ItemOfOutfit {
    /// What was written of it.
    pub item: Item,
    /// All of it together.
    pub weight: Slot<Reading<Mass>>,
}

/// Engines of one sort that hang on one thing.
#[derive(Clone, Debug)]
pub struct Group {
    /// Its entry in the job: `engines_on[0]`.
    pub entry: String,
    /// Its engines, in the order in which they were written.
    pub engines: Vec<Engine>,
    /// What they hang on, where it is not the transom itself.
    pub bracket: Option<Bracket>,
    /// The bolts that hold each of them, or the bracket, to the transom.
    pub bolts: Bolts,
}

/// A bracket or setback device.
#[derive(Clone, Debug)]
pub struct Bracket {
    /// Its class, or what it was called.
    pub name: String,
    /// Transom's face to the face on which the engines hang.
    pub setback: Slot<Reading<Length>>,
    /// Its top below the transom's top, plumb from a level line.
    pub drop: Slot<Reading<Length>>,
    /// Power it is rated for.
    pub rated_power: Slot<Reading<Power>>,
    /// Weight it is rated for.
    pub rated_weight: Slot<Reading<Mass>>,
    /// Its own weight.
    pub weight: Slot<Reading<Mass>>,
    /// Its lowest point above the bottom of the hull.
    pub bottom: Slot<Reading<Length>>,
    /// Its width, where it is a box.
    pub width: Option<Reading<Length>>,
    /// How far it lifts its engines, where it is one that lifts.
    pub travel: Slot<Reading<Length>>,
    /// How high of that it is raised, where not all of it is.
    pub raised: Option<Reading<Length>>,
    /// The rest of what its class says.
    pub spec: BracketSpec,
}

/// One engine.
#[derive(Clone, Debug)]
pub struct Engine {
    /// Which one it is, in words: "port engine".
    pub label: String,
    /// Its class, or what it was called.
    pub class: String,
    /// What it is for.
    pub role: Role,
    /// Distance to port of the centreline.
    pub y: Length,
    /// Rated power.
    pub power: Slot<Reading<Power>>,
    /// Weight as it hangs.
    pub weight: Slot<Reading<Mass>>,
    /// Hand of its propeller.
    pub hand: Slot<Hand>,
    /// Its propeller, as far as the job tells it.
    pub propeller: Slot<PropellerSpec>,
    /// Bracket's rest down to the anti-ventilation plate.
    pub rest_to_plate: Slot<Reading<Length>>,
    /// Its shaft by the trade's name, where job or class leave no choice.
    pub shaft_name: Option<Length>,
    /// Hole row in which it hangs.
    pub holes_up: Slot<u8>,
    /// Rows of holes in its bracket.
    pub hole_rows: Slot<u8>,
    /// Transom thickness that its bracket takes.
    pub transom_thickness: Slot<Span<Length>>,
    /// Transom angle that it is laid out for.
    pub transom_angle: Slot<Reading<Angle>>,
    /// Trim range at that angle.
    pub trim: Slot<Span<Angle>>,
    /// Least distance between centres of two of them.
    pub centre_distance: Slot<Reading<Length>>,
    /// Reach of the powerhead each way at full lock.
    pub clearance_each_way: Slot<Reading<Length>>,
    /// Where its tilt is stopped short of full tilt, from upright.
    pub tilt_stop: Option<Angle>,
    /// What its tilt and steering are worked out from.
    pub sheet: Slot<SwingSheet>,
    /// The rest of what its class says.
    pub spec: EngineSpec,
}

impl Outfit {
    /// Its engines, as a missing reading.
    pub fn missing(&self) -> Missing {
        Missing::one(self.measurement)
    }

    /// The outfit, where any engine is given.
    ///
    /// # Errors
    /// The engines, as a missing reading.
    pub fn ask(&self) -> Result<&Outfit, Missing> {
        if self.is_empty() { Err(self.missing()) } else { Ok(self) }
    }

    /// Every engine with the group it hangs in.
    pub fn engines(&self) -> impl Iterator<Item = (&Group, &Engine)> {
        self.groups.iter().flat_map(|group| group.engines.iter().map(move |engine| (group, engine)))
    }

    /// The main engines.
    pub fn mains(&self) -> Vec<&Engine> {
        self.engines().map(|(_, engine)| engine).filter(|engine| engine.role == Role::Main).collect()
    }

    /// Rated power of the main engines, each with its name, as it is written.
    ///
    /// # Errors
    /// The engines whose power is not known, or the main engines where none is given.
    pub fn main_power_written(&self) -> Result<Vec<(String, &Reading<Power>)>, Vec<Missing>> {
        self.main_power()?;
        let written = self.mains().into_iter().map(|engine| Some((engine.label.clone(), engine.power.reading()?)));
        Ok(written.flatten().collect())
    }

    /// Rated power of the main engines, each with its name.
    ///
    /// # Errors
    /// The engines whose power is not known, or the main engines where none is given.
    pub fn main_power(&self) -> Result<Vec<(String, Power)>, Vec<Missing>> {
        if self.mains().is_empty() {
            return Err(vec![self.missing()]);
        }
        all_of(self.mains().into_iter().map(|engine| (engine.label.as_str(), &engine.power)))
    }

    /// Running weight of every engine, each with its name.
    ///
    /// # Errors
    /// The engines whose weight is not known.
    pub fn engine_weights(&self) -> Result<Vec<(String, Mass)>, Vec<Missing>> {
        all_of(self.engines().map(|(_, engine)| (engine.label.as_str(), &engine.weight)))
    }

    /// Everything that hangs on the transom: engines, brackets, items marked so.
    ///
    /// # Errors
    /// The weights that are not known.
    pub fn hung(&self) -> Result<Vec<(String, Mass)>, Vec<Missing>> {
        let engines = self.engines().map(|(_, engine)| (engine.label.as_str(), &engine.weight));
        let brackets = self
            .groups
            .iter()
            .filter_map(|group| group.bracket.as_ref())
            .map(|bracket| (bracket.name.as_str(), &bracket.weight));
        let items = self
            .items
            .iter()
            .filter(|entry| entry.item.on_transom)
            .map(|entry| (entry.item.what.as_str(), &entry.weight));
        all_of(engines.chain(brackets).chain(items))
    }

    /// The weights of its engines, as far as they are known, each with its name.
    pub fn engine_readings(&self) -> Vec<(&str, &Reading<Mass>)> {
        self.engines().filter_map(|(_, engine)| Some((engine.label.as_str(), engine.weight.reading()?))).collect()
    }

    /// The same of everything that hangs on the transom.
    pub fn hung_readings(&self) -> Vec<(&str, &Reading<Mass>)> {
        let brackets = self.groups.iter().filter_map(|group| group.bracket.as_ref());
        let brackets = brackets.filter_map(|bracket| Some((bracket.name.as_str(), bracket.weight.reading()?)));
        let items = self.items.iter().filter(|entry| entry.item.on_transom);
        let items = items.filter_map(|entry| Some((entry.item.what.as_str(), entry.weight.reading()?)));
        self.engine_readings().into_iter().chain(brackets).chain(items).collect()
    }

    /// Whether any engine is given.
    pub fn is_empty(&self) -> bool {
        self.groups.is_empty()
    }
}

impl Group {
    /// Whether the engines hang on a lifting bracket, whose travel sets their height.
    pub fn is_lifted(&self) -> bool {
        self.bracket.as_ref().is_some_and(|bracket| bracket.spec.kind == Some(BracketKind::Auxiliary))
    }

    /// How high the engines are raised at most, where they hang on a lifting bracket of which that is known.
    pub fn lift(&self) -> Option<Length> {
        let bracket = self.bracket.as_ref().filter(|_| self.is_lifted())?;
        let travel = bracket.travel.reading()?.value;
        Some(bracket.raised.as_ref().map_or(travel, |raised| raised.value.min(travel)))
    }

    /// The travel of their lifting bracket, where nobody took it.
    pub fn travel_missing(&self) -> Option<Missing> {
        self.bracket.as_ref().filter(|_| self.is_lifted())?.travel.ask().err()
    }

    /// Running weight of its engines, each with its name.
    ///
    /// # Errors
    /// The engines whose weight is not known.
    pub fn engine_weights(&self) -> Result<Vec<(String, Mass)>, Vec<Missing>> {
        all_of(self.engines.iter().map(|engine| (engine.label.as_str(), &engine.weight)))
    }

    /// Setback of the mounting face from the transom: none where they hang on the transom itself.
    pub fn setback(&self) -> Slot<Reading<Length>> {
        match &self.bracket {
            Some(bracket) => bracket.setback.clone(),
            None => Slot::new(Some(on_the_transom()), reading!(job::EngineGroup.setback)),
        }
    }

    /// Drop of the bracket's top below the transom's: none where they hang on the transom itself.
    pub fn drop(&self) -> Slot<Reading<Length>> {
        match &self.bracket {
            Some(bracket) => bracket.drop.clone(),
            None => Slot::new(Some(on_the_transom()), reading!(job::EngineGroup.drop)),
        }
    }
}

/// All the named values, or everything that is missing of them.
fn all_of<'s, Q: Dimensioned + 's>(
    slots: impl Iterator<Item = (&'s str, &'s Slot<Reading<Q>>)>,
) -> Result<Vec<(String, Q)>, Vec<Missing>> {
    let mut values = Vec::new();
    let mut missing = Vec::new();
    for (name, slot) in slots {
        match slot.ask() {
            Ok(reading) => values.push((name.to_owned(), reading.value)),
            Err(lacking) => missing.push(lacking),
        }
    }
    if missing.is_empty() { Ok(values) } else { Err(missing) }
}

fn on_the_transom() -> Reading<Length> {
    Reading { value: Length::from_si(0.0), tolerance: None, written: None, basis: Basis::Measured, note: None }
}
