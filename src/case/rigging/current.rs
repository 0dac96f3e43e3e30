//! Wires with what they lose, and what they may carry.

use uom::si::f64::{Area, ElectricCurrent, ElectricPotential, Length, Ratio};

use crate::case::Case;
use crate::catalog::Entry;
use crate::job;
use crate::job::rigging::{self, BatteryEntry, Chosen, ChosenWire, Circuit, Does, Electrical, Insulation, WireSpec};
use crate::physics::rigging::{battery, wire};
use crate::quantity::{Basis, Dimensioned, Reading, Style, Temperature, celsius, nth};
use crate::reading::{Declared, reading};
use crate::rig::{Missing, Rig};
use crate::working::{Sheet, Term};

use super::{asked, asked_of};

/// Copper in a wire that works. Common practice, no source: warm from its current, °C.
const WORKING_C: f64 = 30.0;
/// What is left of a wire's amperage in an engine space, by its insulation. Source: ABYC E-11, values from memory.
const ENGINE_SPACE: [(Insulation, f64); 3] =
    [(Insulation::Sixty, 0.58), (Insulation::SeventyFive, 0.75), (Insulation::HundredFive, 0.85)];
/// She is taken to be started in this cold where nobody says. Common practice, no source: a frost, °C.
const FROST_C: f64 = 0.0;

/// A wire with what it loses.
pub struct Wired {
    /// What it is called.
    pub name: String,
    /// One way.
    pub length: Length,
    /// What flows.
    pub current: ElectricCurrent,
    /// What it loses.
    pub drop: Term<ElectricPotential>,
    /// Its section.
    pub area: Area,
    /// How that came about.
    pub sheet: Sheet,
}

/// Section of a wire: its gauge's, or as it is marked.
pub fn area(sheet: &mut Sheet, spec: &WireSpec) -> Option<Term<Area>> {
    match (spec.gauge, &spec.area) {
        (Some(gauge), _) => Some(wire::area(sheet, gauge)),
        (None, Some(area)) => {
            sheet.told("A", Some(area));
            Some(Term::styled("A", area.value, Style::Round))
        }
        (None, None) => None,
    }
}

fn wired(
    name: String,
    wire_of: &ChosenWire,
    length: &Reading<Length>,
    current: &Reading<ElectricCurrent>,
    lacking: Missing,
) -> Result<Wired, Missing> {
    let mut sheet = Sheet::default();
    sheet.told("L", Some(length));
    sheet.told("I", Some(current));
    // Whether by its class or by itself, the job tells which wire lies there.
    sheet.origin::<Ratio>("n", Basis::Measured.origin());
    let (length, current) = (length.value, current.value);
    let area = wire_of.spec().and_then(|spec| area(&mut sheet, spec)).ok_or(lacking)?;
    let rho = wire::resistivity(&mut sheet, celsius(WORKING_C));
    let resistance = wire::resistance(&mut sheet, &rho, length, &area);
    let drop = wire::drop(&mut sheet, current, &resistance);
    Ok(Wired { name, length, current, drop, area: area.value(), sheet })
}

/// A wire of this name that was asked for by what it feeds.
///
/// # Errors
/// The wire, as a missing reading.
pub fn run(
    name: &str,
    wire: &ChosenWire,
    length: &Reading<Length>,
    current: &Reading<ElectricCurrent>,
    declared: &'static Declared,
) -> Result<Wired, Missing> {
    wired(name.to_owned(), wire, length, current, Missing { measurement: declared, of: None })
}

/// The thinnest wire of the catalog that loses no more than this; nothing where none is thick enough.
pub fn thinnest(rig: &Rig, length: Length, current: ElectricCurrent, permitted: ElectricPotential) -> Option<String> {
    let mut sheet = Sheet::default();
    let rho = wire::resistivity(&mut sheet, celsius(WORKING_C));
    let least = wire::least_area(&mut sheet, &rho, length, current, &Term::new("ΔVp", permitted)).value();
    let sections =
        rig.tables.wires.iter().filter_map(|entry| Some((entry, area(&mut Sheet::default(), &entry.spec)?.value())));
    let enough = sections.filter(|(_, area)| permitted.si() > 0.0 && !least.exceeds(*area));
    let thinnest = enough.reduce(|a, b| if b.1.si() < a.1.si() { b } else { a });
    thinnest.map(|(entry, _)| entry.name.clone())
}

/// What a circuit is called.
pub fn circuit_name(circuit: &Circuit, index: usize) -> String {
    circuit.name.clone().unwrap_or_else(|| nth("circuit", index))
}

/// What a battery is called.
pub fn battery_name(entry: &BatteryEntry, index: usize) -> String {
    entry.name.clone().unwrap_or_else(|| format!("battery {}", index + 1))
}

/// A circuit with what it loses.
///
/// # Errors
/// What is missing of it.
pub fn circuit(circuit: &Circuit, index: usize) -> Result<Wired, Vec<Missing>> {
    let name = circuit_name(circuit, index);
    let length = asked_of(circuit.length.as_ref(), reading!(rigging::Circuit.length), &name).ask();
    let current = asked_of(circuit.current.as_ref(), reading!(rigging::Circuit.current), &name).ask();
    match (length, current) {
        (Ok(length), Ok(current)) => {
            let lacking = Missing { measurement: reading!(rigging::Electrical.circuits), of: Some(name.clone()) };
            wired(name.clone(), &circuit.wire, length, current, lacking).map_err(|lacking| vec![lacking])
        }
        (length, current) => Err([length.err(), current.err()].into_iter().flatten().collect()),
    }
}

/// What a wire may carry where it lies; nothing where its amperage is not known.
pub fn carries(circuit: &Circuit) -> Option<ElectricCurrent> {
    let spec = circuit.wire.spec()?;
    let free = match circuit.insulation {
        Insulation::Sixty => &spec.carries_60,
        Insulation::SeventyFive => &spec.carries_75,
        Insulation::HundredFive => &spec.carries_105,
    };
    let left =
        ENGINE_SPACE.iter().find(|(insulation, _)| *insulation == circuit.insulation).map_or(1.0, |(_, left)| *left);
    let left = if circuit.engine_space { left } else { 1.0 };
    Some(free.as_ref()?.value * left)
}

/// The thinnest wire of the catalog that may carry this where the circuit lies.
pub fn carrying(rig: &Rig, circuit: &Circuit, current: ElectricCurrent) -> Option<String> {
    let with = |spec: &WireSpec| {
        let mut other = circuit.clone();
        other.wire.described = Some(spec.clone());
        carries(&other)
    };
    let enough = rig.tables.wires.iter().filter(|entry| with(&entry.spec).is_some_and(|most| !current.exceeds(most)));
    let section =
        |entry: &&Entry<WireSpec>| area(&mut Sheet::default(), &entry.spec).map_or(f64::MAX, |area| area.value().si());
    enough.min_by(|a, b| section(a).total_cmp(&section(b))).map(|entry| entry.name.clone())
}

/// The main engine whose starter draws most.
fn hardest_starter<'a>(case: &'a Case) -> Option<&'a Reading<ElectricCurrent>> {
    let starters = case.rig.after.mains().into_iter().filter_map(|engine| engine.spec.starting.as_ref());
    starters.reduce(|a, b| if b.value.si() > a.value.si() { b } else { a })
}

/// Whether engines are told and none of them has a starter.
pub fn pulled_by_hand(case: &Case) -> bool {
    let mains = case.rig.after.mains();
    !mains.is_empty() && mains.iter().all(|engine| engine.spec.starting.is_none() && engine.spec.alternator.is_none())
}

/// What the hardest starter draws.
///
/// # Errors
/// The engine's starting current, as a missing reading.
pub fn starter<'a>(case: &'a Case) -> Result<&'a Reading<ElectricCurrent>, Missing> {
    let lacking = || asked::<()>(None, reading!(job::EngineSpec.starting)).ask().err();
    match hardest_starter(case) {
        Some(current) => Ok(current),
        None if case.rig.after.mains().is_empty() => Err(case.rig.after.missing()),
        None => Err(lacking().unwrap_or_else(|| case.rig.after.missing())),
    }
}

/// The cable of a starting battery with what it loses while the starter turns.
///
/// # Errors
/// What is missing of it, or of the engine.
pub fn starter_cable(case: &Case, entry: &BatteryEntry, index: usize) -> Result<Wired, Vec<Missing>> {
    let name = battery_name(entry, index);
    let lacking = || Missing { measurement: reading!(rigging::BatteryEntry.cable), of: Some(name.clone()) };
    let starter = starter(case);
    let length = entry.cable.as_ref().and_then(|cable| Some((cable, cable.length.as_ref()?)));
    match (starter, length) {
        (Ok(current), Some((cable, length))) => {
            wired(name.clone(), &cable.wire, length, current, lacking()).map_err(|lacking| vec![lacking])
        }
        (starter, length) => {
            let mut missing: Vec<Missing> = starter.err().into_iter().collect();
            if length.is_none() {
                missing.push(lacking());
            }
            Err(missing)
        }
    }
}

/// The batteries that start an engine, with their places in the list.
pub fn starting(electrical: &Electrical) -> impl Iterator<Item = (usize, &BatteryEntry)> {
    electrical.batteries.iter().enumerate().filter(|(_, entry)| entry.does != Some(Does::House))
}

/// The cold that she is started in.
pub fn coldest(electrical: &Electrical) -> Temperature {
    electrical.coldest.as_ref().map_or(celsius(FROST_C), |reading| reading.value)
}

/// Supply that is reckoned with.
pub fn supply() -> ElectricPotential {
    ElectricPotential::from_si(battery::SYSTEM_V)
}
