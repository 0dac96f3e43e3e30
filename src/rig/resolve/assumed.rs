//! The readings that a job itself marks as assumed, in sentences.

use crate::job::Job;
use crate::quantity::{Text, capitalised, say};
use crate::reading::{Told, told};

/// Every reading that the job marks as assumed, with what was noted of it.
pub(super) fn readings(job: &Job) -> Vec<Text> {
    let sure =
        job.sure.iter().map(|entry| say!("`{}` was asked back, looked at again, and stands as it is written.", entry));
    told(job).iter().filter(|told| told.is_assumed()).map(sentence).chain(sure).collect()
}

fn sentence(told: &Told) -> Text {
    let notes = told.notes().join("; ");
    let why = if notes.is_empty() { String::new() } else { format!(" ({notes})") };
    say!("{} is taken as ", capitalised(&told.name())).then(told.text()).then(say!("{}.", why))
}
