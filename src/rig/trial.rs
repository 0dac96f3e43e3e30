//! The trials, with the files that they name read.

use super::float::Files;
use crate::job::{self, Job, Sailed};
use crate::logged::{self, Logged};
use crate::written::Slip;

/// Trials with the old engines and with the new ones.
#[derive(Clone, Debug, Default)]
pub struct Trial {
    /// What the job says of both.
    pub said: job::Trial,
    /// The one with the old engines, where the job tells of it.
    pub before: Option<Sailing>,
    /// The one with the new engines, where the job tells of it.
    pub after: Option<Sailing>,
}

/// One trial.
#[derive(Clone, Debug)]
pub struct Sailing {
    /// What the job says of it.
    pub said: Sailed,
    /// What its file holds, where it names one that was read.
    pub logged: Option<Logged>,
}

/// The trials of a job, and what is wrong with their files.
pub(super) fn resolve(job: &Job, files: &Files) -> (Option<Trial>, Vec<Slip>) {
    let Some(said) = job.trial.clone() else { return (None, Vec::new()) };
    let mut slips = Vec::new();
    let mut sailing = |sailed: &Option<Sailed>, path: &str| {
        let said = sailed.clone()?;
        // A file that could not be read was told already.
        let bytes = said.file.as_ref().and_then(|name| files.get(name));
        let logged = bytes.and_then(|bytes| match logged::read(bytes) {
            Ok(logged) => Some(logged),
            Err(error) => {
                slips.push(Slip {
                    path: path.to_owned(),
                    message: error.to_string(),
                    help: "a log of NMEA 0183 sentences, or rows with commas between them".to_owned(),
                });
                None
            }
        });
        Some(Sailing { said, logged })
    };
    let before = sailing(&said.before, "trial.before.file");
    let after = sailing(&said.after, "trial.after.file");
    (Some(Trial { said, before, after }), slips)
}
