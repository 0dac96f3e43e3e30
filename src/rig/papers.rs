//! What goes with the readings on paper: names, dates, what had been planned, photographs.

use crate::job::{Job, Photograph, Planned};

/// Words of the job that no rule judges and every report carries.
#[derive(Clone, Debug, Default)]
pub struct Papers {
    /// The boat's name or description.
    pub boat: Option<String>,
    /// The day of the readings, as it was written.
    pub date: Option<String>,
    /// Who took them.
    pub by: Option<String>,
    /// For whom.
    pub for_whom: Option<String>,
    /// Anything the reader of the report should know.
    pub notes: Option<String>,
    /// What had been planned.
    pub planned: Option<Planned>,
    /// Photographs that go with the report.
    pub photographs: Vec<Photograph>,
}

impl Papers {
    /// The papers of a job.
    pub fn of(job: &Job) -> Self {
        Papers {
            boat: job.boat.name.clone(),
            date: job.date.clone(),
            by: job.by.clone(),
            for_whom: job.for_whom.clone(),
            notes: job.notes.clone(),
            planned: job.planned.clone(),
            photographs: job.photographs.clone(),
        }
    }
}
