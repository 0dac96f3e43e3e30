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

/// The weights of a ledger as terms, each with what it is and where it is from.
pub(super) fn weights(sheet: &mut Sheet, entries: &[Entry]) -> Vec<Term<Mass>> {
    let numbered = entries.iter().enumerate();
    let named = numbered.map(|(i, entry)| {
        sheet.given(&format!("w{}", i + 1), &format!("weight of {}", entry.name), entry.weight.mass, entry.from[0])
    });
    named.collect()
}

pub(super) fn part(title: &str, state: &State) -> Part {
    let mut rows: Vec<Vec<Text>> = state.entries.iter().map(entry_row).collect();
    rows.push(point_row("together", state.total.mass, &state.total.centre));
    let mut sheet = Sheet::default();
    let masses = weights(&mut sheet, &state.entries);
    if let Some(total) = masses.iter().cloned().reduce(|a, b| a + b) {
        let total = sheet.set("W", "all of it together", total);
        type Along = fn(&Point3<f64>) -> f64;
        let axes: [(&str, &str, &str, Along); 3] = [
            ("x", "centre forward of the transom", "forward of the transom", |p| p.x),
            ("y", "centre to port", "to port of the centreline", |p| p.y),
            ("z", "centre above the bottom", "above the bottom", |p| p.z),
        ];
        for (symbol, meaning, place, along) in axes {
            let moment = state
                .entries
                .iter()
                .zip(&masses)
                .enumerate()
                .map(|(i, (entry, mass))| {
                    let at = Length::from_si(along(&entry.weight.centre));
                    let place = format!("{}, {place}", entry.name);
                    mass * sheet.given(&format!("{symbol}{}", i + 1), &place, at, entry.from[1])
                })
                .reduce(|a, b| a + b);
            if let Some(moment) = moment {
                sheet.set(symbol, meaning, moment / &total);
            }
        }
    }
    Part { title: title.to_owned(), tables: vec![Table::new("ledger", &HEADS, rows)], sheet }
}
