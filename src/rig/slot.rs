//! A place for a reading that may not have been taken, with the way to take it.

use crate::reading::{Declared, Missing};

/// What a job says at one place, or how to find out.
#[derive(Clone, Debug)]
pub struct Slot<T> {
    value: Option<T>,
    measurement: &'static Declared,
    of: Option<String>,
}

impl<T> Slot<T> {
    /// A place for one of the boat's own readings.
    pub fn new(value: Option<T>, measurement: &'static Declared) -> Self {
        Slot { value, measurement, of: None }
    }

    /// A place for a reading of the engine or item of this name.
    pub fn of(value: Option<T>, measurement: &'static Declared, of: &str) -> Self {
        Slot { value, measurement, of: Some(of.to_owned()) }
    }

    /// The reading, where there is one.
    pub fn reading(&self) -> Option<&T> {
        self.value.as_ref()
    }

    /// How it is taken.
    pub fn measurement(&self) -> &'static Declared {
        self.measurement
    }

    /// The reading, or what is missing.
    ///
    /// # Errors
    /// The way to take the reading that the job lacks.
    pub fn ask(&self) -> Result<&T, Missing> {
        self.value.as_ref().ok_or_else(|| Missing { measurement: self.measurement, of: self.of.clone() })
    }
}
