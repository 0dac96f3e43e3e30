//! Everything that weighs on her, with its place.

use nalgebra::Point3;
use uom::si::f64::{Length, Mass, MassDensity};

use crate::case::stern::{Stern, step_up};
use crate::job::{self, Across, Item, Liquid, TankEntry};
use crate::physics::float::{Tank, Weight};
use crate::quantity::{Basis, Dimensioned, Reading};
use crate::reading::{Absent, reading};
use crate::rig::{Bracket, Engine, Group, Missing, Outfit, Rig};

/// Weight of gasoline, kg/m³. Common practice, no source: 6.2 lb/gal.
const FUEL_KG_M3: f64 = 740.0;
/// Weight of fresh water in tanks, kg/m³. Common practice, no source.
const TANK_WATER_KG_M3: f64 = 1000.0;

/// One line of the ledger.
#[derive(Clone, Debug, PartialEq)]
pub struct Entry {
    /// What it is.
    pub name: String,
    /// What it weighs, and where; below zero it is taken away.
    pub weight: Weight,
    /// Whether it can be stowed elsewhere.
    pub movable: Movable,
    /// Its free surface, where it has one.
    pub tank: Option<Tank>,
    /// Where its weight is from, and its place, as a legend says it.
    pub from: [&'static str; 2],
    /// Its entry in the job, where it has one by itself: `weights.gear[0]`.
    pub entry: Option<String>,
}

/// What it takes to put a weight elsewhere, the easiest first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Movable {
    /// An item or gear.
    Item,
    /// Persons.
    Persons,
    /// A built-in tank or live well: it hangs on no stern, and is not moved.
    Tank,
    /// It stays where it is.
    No,
}

impl Movable {
    /// Whether anybody would move it.
    pub fn can_move(self) -> bool {
        self == Movable::Item
    }
}

impl Entry {
    pub(super) fn new(name: impl Into<String>, mass: Mass, centre: Point3<f64>) -> Self {
        let (weight, from) = (Weight { mass, centre }, [Basis::Measured.origin(); 2]);
        Entry { name: name.into(), weight, movable: Movable::No, tank: None, from, entry: None }
    }

    pub(super) fn from(self, weight: &'static str, place: &'static str) -> Self {
        Entry { from: [weight, place], ..self }
    }

    pub(super) fn movable(self, movable: Movable) -> Self {
        Entry { movable, ..self }
    }

    pub(super) fn written_at(self, entry: String) -> Self {
        Entry { entry: Some(entry), ..self }
    }

    pub(super) fn removed(&self) -> Self {
        Entry { weight: self.weight.removed(), ..self.clone() }
    }
}

/// Distance to port.
pub(super) fn y_of(across: Option<&Across>) -> f64 {
    across.map_or(0.0, |across| across.y().si())
}

pub(super) fn value(reading: Option<&Reading<Length>>) -> Option<f64> {
    reading.map(|reading| reading.value.si())
}

/// Where an engine of a group rests that hangs so many holes up, on a top that steps up by so much there: the middle of its
/// bracket's rest, in boat axes, on the centreline.
fn rest(rig: &Rig, group: &Group, holes_up: u8, step_up: Length) -> Result<Point3<f64>, Vec<Missing>> {
    let (setback, drop) = (group.setback(), group.drop());
    match (Stern::of(rig), setback.ask(), drop.ask()) {
        (Ok(stern), Ok(setback), Ok(drop)) => Ok(stern.rest(setback.value, drop.value - step_up, holes_up)),
        (stern, setback, drop) => {
            let mut missing = stern.err().unwrap_or_default();
            missing.extend(setback.err());
            missing.extend(drop.err());
            Err(missing)
        }
    }
}

/// The same of one engine, in the lowest row where its row is not told: figures hold still, whatever row is advised.
fn at_rest(rig: &Rig, group: &Group, engine: &Engine) -> Result<Point3<f64>, Vec<Missing>> {
    rest(rig, group, engine.holes_up.reading().copied().unwrap_or(0), step_up(rig, group, engine))
}

/// The transom's top on the centreline.
pub(super) fn transom_top(rig: &Rig) -> Result<Point3<f64>, Vec<Missing>> {
    Stern::of(rig).map(|stern| stern.top)
}

/// Engines, brackets and items of an outfit.
pub(super) fn of_outfit(rig: &Rig, outfit: &Outfit) -> Result<Vec<Entry>, Vec<Missing>> {
    let mut entries = Vec::new();
    let mut missing: Vec<Missing> = Vec::new();
    let mut note = |lacking: Vec<Missing>| Missing::gather(&mut missing, lacking);
    for group in &outfit.groups {
        for engine in &group.engines {
            match engine_entry(rig, group, engine) {
                Ok(entry) => entries.push(entry),
                Err(lacking) => note(lacking),
            }
        }
        if let Some(bracket) = &group.bracket {
            match bracket_entry(rig, group, bracket) {
                Ok(entry) => entries.push(entry),
                Err(lacking) => note(lacking),
            }
        }
    }
    for (i, entry) in outfit.items.iter().enumerate() {
        match entry.weight.ask() {
            Ok(weight) => match item_centre(rig, outfit, &entry.item) {
                Ok(centre) => {
                    let movable = if entry.item.on_transom { Movable::No } else { Movable::Item };
                    let stands = Entry::new(entry.item.what.clone(), weight.value, centre).movable(movable);
                    let place = entry.item.forward.as_ref().map_or(HANGS, |forward| forward.basis.origin());
                    let stands = stands.from(weight.basis.origin(), place);
                    // Batteries of the rigging follow behind what goes on.
                    let is_written = rig.job.goes_on.get(i) == Some(&entry.item);
                    entries.push(if is_written { stands.written_at(format!("goes_on[{i}]")) } else { stands });
                }
                Err(lacking) => note(lacking),
            },
            Err(lacking) => note(vec![lacking]),
        }
    }
    if missing.is_empty() { Ok(entries) } else { Err(missing) }
}

fn bracket_entry(rig: &Rig, group: &Group, bracket: &Bracket) -> Result<Entry, Vec<Missing>> {
    let (weight, setback, drop) = (bracket.weight.ask(), bracket.setback.ask(), bracket.drop.ask());
    match (Stern::of(rig), weight, setback, drop) {
        (Ok(stern), Ok(weight), Ok(setback), Ok(drop)) => {
            let bottom = bracket.bottom.reading().map(|bottom| bottom.value);
            let mut centre = stern.bracket(setback.value, drop.value, bottom);
            centre.y = middle(group);
            Ok(Entry::new(bracket.name.clone(), weight.value, centre).from(weight.basis.origin(), HANGS))
        }
        (stern, weight, setback, drop) => {
            let mut missing = stern.err().unwrap_or_default();
            missing.extend([weight.err(), setback.err(), drop.err()].into_iter().flatten());
            Err(missing)
        }
    }
}

fn engine_entry(rig: &Rig, group: &Group, engine: &Engine) -> Result<Entry, Vec<Missing>> {
    let rest = at_rest(rig, group, engine)?;
    let weight = engine.weight.ask();
    let (Some(aft), Some(above), Ok(weight)) =
        (value(engine.spec.centre_aft.as_ref()), value(engine.spec.centre_above.as_ref()), &weight)
    else {
        let centre = engine.spec.centre_aft.is_none() || engine.spec.centre_above.is_none();
        let centre = centre
            .then(|| Missing { measurement: reading!(job::EngineSpec.centre_aft), of: Some(engine.label.clone()) });
        return Err(weight.err().into_iter().chain(centre).collect());
    };
    let centre = Point3::new(rest.x - aft, engine.y.si(), rest.z + above);
    Ok(Entry::new(engine.label.clone(), weight.value, centre).from(weight.basis.origin(), HANGS))
}

/// The centre of an item; what hangs on the transom without a place is at the first engines' rest.
fn item_centre(rig: &Rig, outfit: &Outfit, item: &Item) -> Result<Point3<f64>, Vec<Missing>> {
    let at = match (&item.forward, item.on_transom) {
        (Some(forward), _) => Point3::new(forward.value.si(), 0.0, 0.0),
        (None, true) => match outfit.groups.first() {
            Some(group) => rest(rig, group, 0, Length::default())?,
            None => transom_top(rig)?,
        },
        (None, false) => {
            return Err(vec![Missing { measurement: reading!(job::Item.forward), of: Some(item.what.clone()) }]);
        }
    };
    Ok(Point3::new(at.x, y_of(item.across.as_ref()), value(item.above.as_ref()).unwrap_or(at.z)))
}

/// Gear and whatever else is aboard; entries without weight or place were refused with the job.
pub(super) fn of_items(rig: &Rig, list: &str, items: &[Item]) -> Result<Vec<Entry>, Vec<Missing>> {
    items
        .iter()
        .enumerate()
        .filter_map(|(i, item)| {
            let weight = item.weight.as_ref()?;
            let place = item.forward.as_ref().map_or(HANGS, |forward| forward.basis.origin());
            Some(
                item_centre(rig, &rig.after, item)
                    .map(|centre| Entry::new(item.what.clone(), weight.value, centre).movable(Movable::Item))
                    .map(|entry| entry.from(weight.basis.origin(), place))
                    .map(|entry| entry.written_at(format!("{list}[{i}]"))),
            )
        })
        .collect()
}

/// A tank so full; nothing where it is empty.
pub(super) fn of_tank(tank: &TankEntry, fill: f64, sea: MassDensity) -> Result<Option<Entry>, Absent> {
    let (Some(capacity), Some(x)) = (&tank.capacity, value(tank.forward.as_ref())) else {
        return Err(Absent::Waits(vec![Missing {
            measurement: reading!(job::Weights.tanks),
            of: Some(tank.what.clone()),
        }]));
    };
    if fill <= 0.0 {
        return Ok(None);
    }
    let fluid = match tank.holds {
        Liquid::Fuel => MassDensity::from_si(FUEL_KG_M3),
        Liquid::Water => MassDensity::from_si(TANK_WATER_KG_M3),
        Liquid::LiveWell => sea,
    };
    let z = value(tank.above.as_ref()).unwrap_or(0.0);
    let centre = Point3::new(x, y_of(tank.across.as_ref()), z);
    let slack = match (&tank.length, &tank.width) {
        // A full live well still slops at its open top; a full tank is pressed up.
        (Some(length), Some(width)) if fill < FULL || tank.holds == Liquid::LiveWell => {
            Some(Tank { length: length.value, breadth: width.value, fluid })
        }
        _ => None,
    };
    let mut entry = Entry::new(tank.what.clone(), capacity.value * fluid * fill, centre).movable(Movable::Tank);
    entry.tank = slack;
    entry = entry.from(FILLED, Reading::origin(tank.forward.as_ref()));
    Ok(Some(entry))
}

/// Where the place of what hangs on the stern is from, and the weight of what a tank holds.
const HANGS: &str = "its own measures, and where it hangs";
const FILLED: &str = "what the tank holds, so full";

/// From this fill on a closed tank has no free surface worth the name. Common practice, no source.
const FULL: f64 = 0.98;

/// The middle of a group's engines, to port.
fn middle(group: &Group) -> f64 {
    let ys: f64 = group.engines.iter().map(|engine| engine.y.si()).sum();
    ys / group.engines.len().max(1) as f64
}

/// The lowest point of the bracket that a group hangs on: its aft lower edge, in its middle.
///
/// # Errors
/// The readings that place it.
pub fn bracket_foot(rig: &Rig, group: &Group, bracket: &Bracket) -> Result<Point3<f64>, Vec<Missing>> {
    match (Stern::of(rig), bracket.bottom.ask(), bracket.setback.ask()) {
        (Ok(stern), Ok(bottom), Ok(setback)) => {
            let z = bottom.value.si();
            Ok(Point3::new(stern.face(setback.value, z), middle(group), z))
        }
        (stern, bottom, setback) => {
            let mut missing = stern.err().unwrap_or_default();
            missing.extend(bottom.err().into_iter().chain(setback.err()));
            Err(missing)
        }
    }
}

/// The anti-ventilation plate of an engine, shaft square to the bottom, about under the engine's centre.
///
/// # Errors
/// The readings that place it.
pub fn plate_point(rig: &Rig, group: &Group, engine: &Engine) -> Result<Point3<f64>, Vec<Missing>> {
    match (at_rest(rig, group, engine), engine.rest_to_plate.ask()) {
        (Ok(rest), Ok(shaft)) => Ok(Point3::new(
            rest.x - value(engine.spec.centre_aft.as_ref()).unwrap_or(0.0),
            engine.y.si(),
            rest.z - shaft.value.si(),
        )),
        (rest, shaft) => {
            let mut missing = rest.err().unwrap_or_default();
            missing.extend(shaft.err());
            Err(missing)
        }
    }
}
