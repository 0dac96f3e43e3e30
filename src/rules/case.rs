//! What a rule is handed: the rig, and what several rules share of it.

use uom::si::f64::{Mass, Power};

use crate::job::Item;
use crate::rig::{Group, Missing, Outfit, Rig, Slot};

/// One rig on the desk.
pub struct Case<'a> {
    /// The rig.
    pub rig: &'a Rig,
}

impl<'a> Case<'a> {
    /// Puts a rig on the desk.
    pub fn new(rig: &'a Rig) -> Self {
        Case { rig }
    }
}

/// Rated power of the main engines, each with its name.
///
/// # Errors
/// The engines whose power is not known.
pub(super) fn main_power(outfit: &Outfit) -> Result<Vec<(String, Power)>, Vec<Missing>> {
    all(outfit
        .mains()
        .into_iter()
        .map(|engine| (engine.label.clone(), &engine.power)))
}

/// Everything of an outfit that hangs on the transom: engines, brackets, items marked so.
///
/// # Errors
/// The weights that are not known.
pub(super) fn hung(outfit: &Outfit) -> Result<Vec<(String, Mass)>, Vec<Missing>> {
    let engines = outfit
        .engines()
        .map(|(_, engine)| (engine.label.clone(), &engine.weight));
    let brackets = outfit
        .groups
        .iter()
        .filter_map(|group| group.bracket.as_ref())
        .map(|bracket| (bracket.name.clone(), &bracket.weight));
    let items = outfit
        .items
        .iter()
        .filter(|entry| on_transom(&entry.item))
        .map(|entry| (entry.item.what.clone(), &entry.weight));
    all(engines.chain(brackets).chain(items))
}

fn on_transom(item: &Item) -> bool {
    item.on_transom
}

/// Running weight of the engines of a group.
///
/// # Errors
/// The engines whose weight is not known.
pub(super) fn group_weight(group: &Group) -> Result<Vec<(String, Mass)>, Vec<Missing>> {
    all(group
        .engines
        .iter()
        .map(|engine| (engine.label.clone(), &engine.weight)))
}

/// All the values, or everything that is missing of them.
pub(super) fn all<'s, Q: crate::quantity::Dimensioned + 's>(
    slots: impl Iterator<Item = (String, &'s Slot<crate::quantity::Reading<Q>>)>,
) -> Result<Vec<(String, Q)>, Vec<Missing>> {
    let mut values = Vec::new();
    let mut missing = Vec::new();
    for (name, slot) in slots {
        match slot.ask() {
            Ok(reading) => values.push((name, reading.value)),
            Err(lacking) => missing.push(lacking),
        }
    }
    if missing.is_empty() {
        Ok(values)
    } else {
        Err(missing)
    }
}
