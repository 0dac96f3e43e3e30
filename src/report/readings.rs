//! Every reading that was used, thing by thing, with its basis and what was noted of it.

use serde_json::{Value as Json, json};

use super::measures::measure;
use crate::job::{self, Job};
use crate::quantity::{Text, Units, say};
use crate::reading::{Told, Value, reading, told};

/// The readings of one thing.
pub(super) struct Group {
    /// What they are of.
    pub of: String,
    /// The readings, in the order in which they are declared.
    pub rows: Vec<Row>,
}

/// A line of a report's readings.
#[derive(Clone)]
pub(super) struct Row {
    /// What was read.
    pub name: String,
    /// What it said.
    pub value: Text,
    /// Where it is from; empty for what was chosen or counted.
    pub basis: String,
    /// The entry of a list that it is a part of, where others of the same may join it in one line.
    entry: Option<String>,
}

/// Readings of which a job has one of a kind.
const BESIDES: &str = "besides";

/// Every reading of the job, thing by thing. What is missing is not in it.
pub(super) fn readings(job: &Job) -> Vec<Group> {
    let mut groups: Vec<Group> = Vec::new();
    for told in told(job).iter().filter(|told| is_reading(told)) {
        let (of, row) = row(told);
        let rows = match groups.iter_mut().find(|group| group.of == of) {
            Some(group) => &mut group.rows,
            None => {
                groups.push(Group { of, rows: Vec::new() });
                match groups.last_mut() {
                    Some(group) => &mut group.rows,
                    None => continue,
                }
            }
        };
        match rows.last_mut() {
            Some(last) if last.entry.is_some() && last.entry == row.entry && last.basis == row.basis => {
                last.value = std::mem::take(&mut last.value).then(Text::from("; ")).then(row.value);
            }
            _ => rows.push(row),
        }
    }
    let (mut groups, single): (Vec<Group>, Vec<Group>) = groups.into_iter().partition(|group| group.rows.len() > 1);
    if !single.is_empty() {
        let rows = single.into_iter().flat_map(|group| group.rows).collect();
        groups.push(Group { of: BESIDES.to_owned(), rows });
    }
    groups
}

/// Whether it is a reading; not words that every report carries at its head and its end.
fn is_reading(told: &Told) -> bool {
    let heading = told.of.0 == told.declared && matches!(told.value, Value::Text(_) | Value::Flag(_));
    !heading && ![reading!(job::Job.sitting), reading!(job::Job.photographs)].contains(&told.of.0)
}

/// What it is of, and its line.
fn row(told: &Told) -> (String, Row) {
    let (field, entry) = &told.of;
    let engines = [reading!(job::Job.engines_on), reading!(job::Job.engines_off)].contains(field);
    let of = match entry {
        Some(entry) if engines => format!("{}: {entry}", field.words()),
        _ => field.words(),
    };
    let which: Vec<&str> = [told.which.as_str()]
        .into_iter()
        .chain(entry.as_deref().filter(|_| !engines))
        .filter(|which| !which.is_empty())
        .collect();
    let basis = told.basis().map_or("", |basis| basis.word());
    let notes = told.notes().join("; ");
    let from = if notes.is_empty() { basis.to_owned() } else { format!("{basis}: {notes}") };
    let value = with_tolerance(told);
    let row = if which.is_empty() {
        Row { name: told.declared.words(), value, basis: from, entry: None }
    } else {
        let named = say!("{} ", told.declared.words()).then(value);
        Row { name: which.join(", "), value: named, basis: from, entry: Some(which.join(", ")) }
    };
    (of, row)
}

fn with_tolerance(told: &Told) -> Text {
    match told.number().and_then(|number| number.tolerance(told.declared)) {
        Some(tolerance) => told.text().then(say!(" ± {}", tolerance)),
        None => told.text(),
    }
}

/// Every reading for another program: where it is written, its value, tolerance, basis and note.
pub(super) fn as_json(job: &Job, units: Units) -> Json {
    let told = told(job);
    let readings = told.iter().filter(|told| is_reading(told));
    readings
        .map(|told| {
            let number = told.number();
            json!({
                "field": told.path,
                "of": row(told).0,
                "reading": told.name(),
                "text": with_tolerance(told).show(units),
                "value": number.map(|number| measure(number.measure(told.declared), units)),
                "tolerance": number.and_then(|n| n.tolerance(told.declared)).map(|off| measure(off, units)),
                "basis": told.basis().map(|basis| basis.word()),
                "note": Some(told.notes().join("; ")).filter(|notes| !notes.is_empty()),
            })
        })
        .collect()
}
