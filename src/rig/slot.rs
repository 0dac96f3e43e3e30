//! A place for a reading that may not have been taken, with the way to take it.

use crate::quantity::{Text, say};
use crate::reading::Declared;

/// What a job says at one place, or how to find out.
#[derive(Clone, Debug)]
pub struct Slot<T> {
    value: Option<T>,
    measurement: &'static Declared,
    of: Option<String>,
}

/// A reading that a rule asked for and the job does not have.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Missing {
    /// How it is taken.
    pub measurement: &'static Declared,
    /// Of which engine or item, where there are several.
    pub of: Option<String>,
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

impl Missing {
    /// One of the boat's own readings.
    pub fn one(measurement: &'static Declared) -> Self {
        Missing { measurement, of: None }
    }

    /// Adds more of them, each once.
    pub fn gather(all: &mut Vec<Missing>, more: impl IntoIterator<Item = Missing>) {
        for one in more {
            if !all.contains(&one) {
                all.push(one);
            }
        }
    }

    /// What waits for these, in a sentence.
    pub fn awaited(missing: &[Missing]) -> Text {
        let names: Vec<String> = missing.iter().map(Missing::name).collect();
        say!("Waits for: {}.", names.join("; "))
    }

    /// What is missing, in words: "shaft length of the port engine".
    pub fn name(&self) -> String {
        match &self.of {
            Some(of) => format!("{} ({of})", self.measurement.words()),
            None => self.measurement.words(),
        }
    }
}
