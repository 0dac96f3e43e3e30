//! The whole working of how she floats, for reports.

mod hull;
mod hydrostatics;
mod ledger;
mod loading;

use uom::si::f64::Length;

use super::{Float, Loaded, State};
use crate::case::Case;
use crate::quantity::{Dimensioned, Measure, Style, Text};
use crate::working::Part;

impl Case<'_> {
    /// Hydrostatics, the fit to the marks, and every loading before and after.
    pub fn float_parts(&self) -> Vec<Part> {
        match self.float() {
            Ok(float) => float.parts(),
            Err(no_float) => vec![Part::said("how she floats", no_float.words())],
        }
    }
}

impl Float {
    /// Everything, part by part.
    pub fn parts(&self) -> Vec<Part> {
        let mut parts = vec![self.hull_part()];
        if let Some(measured) = &self.as_measured {
            parts.push(self.measured_part(measured));
        }
        parts.push(self.hydrostatics_part());
        for loaded in &self.loadings {
            parts.push(self.loading_part(loaded));
        }
        parts
    }

    /// The ledger of every loading.
    pub fn ledger_parts(&self) -> Vec<Part> {
        let mut parts = Vec::new();
        for loaded in &self.loadings {
            for (word, state) in sides(loaded) {
                parts.push(ledger::part(&format!("{}, {word}", loaded.name), state));
            }
        }
        parts
    }
}

/// The states of a loading that there are, each with what it is called.
fn sides(loaded: &Loaded) -> impl Iterator<Item = (&'static str, &State)> {
    let word = if loaded.alone { "as she is" } else { "after" };
    loaded.before.iter().map(|state| ("before", state)).chain(loaded.after.iter().map(move |state| (word, state)))
}

fn row(name: &str, value: Text) -> Vec<Text> {
    vec![Text::from(name), value]
}

fn plain(metres: f64) -> Text {
    Measure::of(Length::from_si(metres)).into()
}

fn tape(metres: f64) -> Text {
    Measure::tape(Length::from_si(metres)).into()
}

fn feet(metres: f64) -> Text {
    Measure::styled(Length::from_si(metres), Style::FeetInches).into()
}
