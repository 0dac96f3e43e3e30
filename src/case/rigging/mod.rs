//! What is rigged, put through the physics: what rules, working and the schematic share.

pub mod current;
pub mod fuel;
pub mod road;
pub mod way;

use crate::reading::Declared;
use crate::rig::{Missing, Slot};

/// A part of the job that may be missing, with the way to take it.
#[derive(Clone, Copy)]
pub struct Asked<'a, T> {
    value: Option<&'a T>,
    declared: &'static Declared,
    of: Option<&'a str>,
}

impl<'a, T> Asked<'a, T> {
    /// Its value, or what is missing.
    ///
    /// # Errors
    /// The way to take what the job lacks.
    pub fn ask(self) -> Result<&'a T, Missing> {
        self.value.ok_or_else(|| Missing { measurement: self.declared, of: self.of.map(str::to_owned) })
    }
}

/// What the job says there.
pub fn asked<'a, T>(value: Option<&'a T>, declared: &'static Declared) -> Asked<'a, T> {
    Asked { value, declared, of: None }
}

/// The same of something that has a name.
pub fn asked_of<'a, T>(value: Option<&'a T>, declared: &'static Declared, of: &'a str) -> Asked<'a, T> {
    Asked { value, declared, of: Some(of) }
}

/// A slot's reading in the same way.
pub fn slot<T>(slot: &Slot<T>) -> Asked<'_, T> {
    Asked { value: slot.reading(), declared: slot.measurement(), of: None }
}
