//! What weighs on her, line by line, and the centre of it all.

use nalgebra::Point3;
use uom::si::f64::{Length, Mass};

use super::super::{Entry, State};
use super::tape;
use crate::quantity::{Dimensioned, Measure, Text};
use crate::working::{Part, Sheet, Table, Term};

pub(super) const HEADS: [&str; 5] = ["item", "weight", "forward", "to port", "above"];

pub(super) fn entry_row(entry: &Entry) -> Vec<Text> {
    point_row(&entry.name, entry.weight.mass, &entry.weight.centre)
}

fn point_row(name: &str, mass: Mass, centre: &Point3<f64>) -> Vec<Text> {
    vec![Text::from(name), Measure::of(mass).into(), tape(centre.x), tape(centre.y), tape(centre.z)]
}

pub(super) fn part(title: &str, state: &State) -> Part {
    let mut rows: Vec<Vec<Text>> = state.entries.iter().map(entry_row).collect();
    rows.push(point_row("together", state.total.mass, &state.total.centre));
    let mut sheet = Sheet::default();
    let masses: Vec<_> = state
        .entries
        .iter()
        .enumerate()
        .map(|(i, entry)| Term::new(format!("w{}", i + 1), entry.weight.mass))
        .collect();
    if let Some(total) = masses.iter().cloned().reduce(|a, b| a + b) {
        let total = sheet.set("W", "all of it together", total);
        type Along = fn(&Point3<f64>) -> f64;
        let axes: [(&str, &str, Along); 3] = [
            ("x", "centre forward of the transom", |p| p.x),
            ("y", "centre to port", |p| p.y),
            ("z", "centre above the bottom", |p| p.z),
        ];
        for (symbol, meaning, along) in axes {
            let moment = state
                .entries
                .iter()
                .zip(&masses)
                .enumerate()
                .map(|(i, (entry, mass))| {
                    let at = Length::from_si(along(&entry.weight.centre));
                    mass * Term::new(format!("{symbol}{}", i + 1), at)
                })
                .reduce(|a, b| a + b);
            if let Some(moment) = moment {
                sheet.set(symbol, meaning, moment / &total);
            }
        }
    }
    Part { title: title.to_owned(), tables: vec![Table::new("ledger", &HEADS, rows)], sheet }
}
