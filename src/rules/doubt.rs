//! What a finding is worth, from what its readings are worth.

use std::sync::Arc;

use super::Verdict;
use crate::quantity::{Basis, Measure};
use crate::reading::Declared;

/// A reading that may be off.
#[derive(Clone, Debug, PartialEq)]
pub struct Taken {
    /// Where it is written: `well.length`.
    pub path: String,
    /// What a person calls it.
    pub name: String,
    /// What is said of it where it is declared.
    pub declared: &'static Declared,
    /// As it was read.
    pub value: Measure,
    /// How far off it may be, either way.
    pub tolerance: Measure,
    /// Where it is from.
    pub basis: Basis,
}

/// What a finding is worth.
#[derive(Clone, Debug, PartialEq)]
pub struct Doubt {
    /// How far off what was found may be, either way.
    pub found: Option<Measure>,
    /// How far off the room to its limit may be, either way.
    pub room: Option<Measure>,
    /// What else the verdict may be within what the readings are worth; firm where nothing.
    pub otherwise: Option<Verdict>,
    /// The readings that it hangs on, those that move it most first.
    pub decides: Vec<Decides>,
}

/// What one reading does to a finding.
#[derive(Clone, Debug, PartialEq)]
pub struct Decides {
    /// Which.
    pub reading: Arc<Taken>,
    /// Its part of the doubt.
    pub share: f64,
    /// How closely it has to be taken for the verdict to hold, where it alone can do that.
    pub settles: Option<Measure>,
}

impl Doubt {
    /// Whether the verdict holds within what the readings are worth.
    pub fn is_firm(&self) -> bool {
        self.otherwise.is_none()
    }
}
