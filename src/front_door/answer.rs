//! One question, one answer.

use std::sync::Arc;

use serde_json::{Value, json as value};

use super::opened::open;
use crate::catalog::Catalog;
use crate::job;
use crate::quantity::Units;
use crate::report::{self, Report};
use crate::rig::Files;
use crate::rules::{self, Judged, Rule};
use crate::written::Faults;

/// What is asked of a job.
pub struct Question<'a> {
    /// What faults call the job, usually its path.
    pub name: &'a str,
    /// Its text.
    pub text: &'a str,
    /// The files that it names, by the name that it uses.
    pub files: &'a Files,
    /// Where its names are looked up.
    pub catalog: &'a Catalog,
    /// Units to answer in.
    pub units: Units,
}

/// What is said of a job: faults alone where it has any, else the report.
pub struct Answer {
    /// What is wrong with the text, each with its place; nothing was judged then.
    pub faults: Option<Faults>,
    /// The report ([`report::SCHEMA`]): headline, findings, readings, weights, how she floats and swings; null beside faults.
    pub report: Value,
    /// The readings still missing, those that most rules wait for first: `reading`, `field`, `where`, `how`, `within`,
    /// `decides` (ids of rules).
    pub missing: Vec<Value>,
    /// The drawings: name of the file, and SVG.
    pub drawings: Vec<(String, String)>,
}

/// Judges a job by every rule. The same question gets the same answer.
pub fn answer(question: &Question) -> Answer {
    let opened = match open(question.name, question.text, question.catalog, from(question.files)) {
        Ok(opened) => opened,
        Err(faults) => {
            return Answer { faults: Some(faults), report: Value::Null, missing: Vec::new(), drawings: Vec::new() };
        }
    };
    let case = opened.case();
    let judged = rules::judge(&case);
    let report = Report { case: &case, judged: &judged, units: question.units, explain: true };
    Answer {
        faults: None,
        report: report::json(&report),
        missing: missing(&judged),
        drawings: report::drawing_files(&report),
    }
}

/// Hands over the files that came with a question.
pub(super) fn from(files: &Files) -> impl FnMut(&str) -> Result<Arc<[u8]>, String> {
    |name| files.get(name).cloned().ok_or_else(|| format!("`{name}` did not come with the job"))
}

/// The missing readings as data.
pub(super) fn missing(judged: &[Judged]) -> Vec<Value> {
    report::waiting(judged)
        .iter()
        .map(|waiting| {
            let measurement = waiting.missing.measurement;
            value!({
                "reading": waiting.missing.name(),
                "field": job::path(measurement),
                "where": measurement.place(),
                "how": measurement.how(),
                "within": measurement.closely.map(|closely| closely.to_string()),
                "decides": waiting.rules,
                "questions": waiting.rules.iter().filter_map(|id| rules::find(id)).map(Rule::summary).collect::<Vec<_>>(),
            })
        })
        .collect()
}
