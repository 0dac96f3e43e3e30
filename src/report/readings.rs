//! Every reading that was used, thing by thing, with its basis and what was noted of it.

use serde_json::{Value as Json, json};

use super::json::measure;
use crate::job::{self, Job};
use crate::quantity::{Text, Units, say};
use crate::reading::{Told, Value, reading, told};

/// The readings of one thing.
pub(super) struct Group<'j> {
    /// What they are of.
    pub of: String,
    /// The readings, in the order in which they are declared.
    pub readings: Vec<Reading<'j>>,
}

/// A reading as a report lists it.
pub(super) struct Reading<'j> {
    /// What it is called among those of its thing.
    pub name: String,
    /// What it says.
    pub value: Text,
    /// What the job tells.
    pub told: Told<'j>,
}

/// Every reading of the job, thing by thing. What is missing is not in it.
pub(super) fn readings(job: &Job) -> Vec<Group<'_>> {
    let mut groups: Vec<Group> = Vec::new();
    for told in told(job) {
        let Some(value) = value(&told) else { continue };
        let (field, entry) = &told.of;
        let engines = [reading!(job::Job.engines_on), reading!(job::Job.engines_off)].contains(field);
        let (of, name) = match entry {
            Some(entry) if engines => (format!("{}: {entry}", field.words()), told.name_within()),
            _ => (field.words(), told.name()),
        };
        let reading = Reading { name, value, told };
        match groups.iter_mut().find(|group| group.of == of) {
            Some(group) => group.readings.push(reading),
            None => groups.push(Group { of, readings: vec![reading] }),
        }
    }
    groups
}

/// What a reading says; nothing for words that every report carries at its head and its end.
fn value(told: &Told) -> Option<Text> {
    let heading = told.of.0 == told.declared && matches!(told.value, Value::Text(_) | Value::Flag(_));
    if heading || [reading!(job::Job.sitting), reading!(job::Job.photographs)].contains(&told.of.0) {
        return None;
    }
    Some(match &told.value {
        Value::Number(number) => {
            let value = Text::from(number.measure(told.declared));
            match number.tolerance(told.declared) {
                Some(tolerance) => value.then(say!(" ± {}", tolerance)),
                None => value,
            }
        }
        Value::Range(from, to) => say!("{} to {}", from.measure(told.declared), to.measure(told.declared)),
        Value::Count(count) => Text::from(count.to_string().as_str()),
        Value::Word(words) => Text::from(*words),
        Value::Text(text) => Text::from(*text),
        Value::Flag(_) => Text::from("yes"),
        Value::List(_) => return None,
    })
}

/// The same for another program: where each is written, its value, tolerance, basis and note.
pub(super) fn as_json(job: &Job, units: Units) -> Json {
    let groups = readings(job);
    let readings = groups.iter().flat_map(|group| group.readings.iter().map(move |reading| (group, reading)));
    readings
        .map(|(group, reading)| {
            let told = &reading.told;
            let number = told.number();
            json!({
                "field": told.path,
                "of": group.of,
                "reading": reading.name,
                "text": reading.value.show(units),
                "value": number.map(|number| measure(number.measure(told.declared), units)),
                "tolerance": number.and_then(|n| n.tolerance(told.declared)).map(|off| measure(off, units)),
                "basis": told.basis().map(|basis| basis.word()),
                "note": Some(told.notes().join("; ")).filter(|notes| !notes.is_empty()),
            })
        })
        .collect()
}
