//! A reading that a rule asks for: what there is, or how it is taken.

use super::Declared;
use crate::quantity::{Text, say};

/// What a job says at one field, or how to find out.
#[derive(Clone, Copy, Debug)]
pub struct Asked<'r, T> {
    value: Option<&'r T>,
    measurement: &'static Declared,
}

impl<'r, T> Asked<'r, T> {
    /// What was found at a field.
    pub fn new(value: Option<&'r T>, measurement: &'static Declared) -> Self {
        Asked { value, measurement }
    }

    /// The reading, where there is one.
    pub fn reading(self) -> Option<&'r T> {
        self.value
    }

    /// How it is taken.
    pub fn measurement(self) -> &'static Declared {
        self.measurement
    }

    /// The reading, or what is missing.
    ///
    /// # Errors
    /// The way to take the reading that the job lacks.
    pub fn ask(self) -> Result<&'r T, Missing> {
        self.value.ok_or(Missing { measurement: self.measurement, of: None })
    }
}

/// A reading that a rule asked for and the job does not have.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Missing {
    /// How it is taken.
    pub measurement: &'static Declared,
    /// Of which engine or item, where there are several.
    pub of: Option<String>,
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
