//! The readings that a job itself marks as assumed, in sentences.

use crate::job::Job;
use crate::quantity::{Text, capitalised, say};
use crate::reading::{Told, Value, told};

/// Every reading that the job marks as assumed, with what was noted of it.
pub(super) fn readings(job: &Job) -> Vec<Text> {
    told(job).iter().filter(|told| told.is_assumed()).filter_map(sentence).collect()
}

fn sentence(told: &Told) -> Option<Text> {
    let value = match &told.value {
        Value::Number(number) => number.measure(told.declared).into(),
        Value::Range(from, to) => say!("{} to {}", from.measure(told.declared), to.measure(told.declared)),
        _ => return None,
    };
    let notes = told.notes().join("; ");
    let why = if notes.is_empty() { String::new() } else { format!(" ({notes})") };
    Some(say!("{} is taken as ", capitalised(&told.name())).then(value).then(say!("{}.", why)))
}
