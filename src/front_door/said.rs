//! The front door for a caller of another language: one JSON document in, one out.

use std::collections::BTreeMap;

use base64::Engine;
use serde_json::{Value, json as value};

use super::answer::{Answer, Question, answer};
use super::asked::{Asked, Change, JobAsked};
use super::judged;
use super::typed;
use crate::catalog::{self, Catalog, Entry};
use crate::job::start::template;
use crate::rig::Files;
use crate::written::Draught;

/// Name and version of the shape of a reply.
pub const SCHEMA: &str = "sternknee-reply/1";

/// Replies to one question, such as `{"ask": "check", "name": "my.ron", "text": "(…)"}`: an object with `schema`, and
/// `faults`, `report`, `missing` and `drawings` of the [`Answer`]; or with `cannot`, a sentence, where the question itself
/// makes no sense. `DEVELOPERS.md` lists the questions.
pub fn reply(question: &str) -> String {
    let said = serde_json::from_str(question).map_err(|error| error.to_string()).and_then(carry_out);
    let mut said = said.unwrap_or_else(|why| value!({ "cannot": why }));
    said["schema"] = SCHEMA.into();
    said.to_string()
}

fn carry_out(asked: Asked) -> Result<Value, String> {
    match asked {
        Asked::Check { job } => with(&job, |question| data(&answer(question))),
        Asked::Judge { job, quickly } => with(&job, |question| judged::data(question, quickly)),
        Asked::Page { job, pictures } => with(&job, |question| judged::page(question, &pictures)),
        Asked::Sheet { job } => with(&job, judged::sheet),
        Asked::Entries { text } => Ok(value!({ "entries": entries(&Draught::new(&text)) })),
        Asked::Alter { text, changes } => altered(text, changes),
        Asked::Read { kind, typed, unit } => Ok(typed::read(&kind, &typed, &unit)),
        Asked::Describe => Ok(super::description()),
        Asked::Catalog => names(),
        Asked::Demos => Ok(
            value!({ "demos": catalog::demos().iter().map(|(name, text)| value!({ "name": name, "text": text })).collect::<Vec<_>>() }),
        ),
        Asked::Start { sitting } => Ok(value!({ "text": template(sitting) })),
    }
}

/// Asks a question about a job, by the built-in catalog.
fn with(job: &JobAsked, ask: impl FnOnce(&Question) -> Value) -> Result<Value, String> {
    let catalog = built_in()?;
    let files = decoded(&job.files)?;
    let question = Question { name: &job.name, text: &job.text, files: &files, catalog, units: job.units.into() };
    Ok(ask(&question))
}

/// The built-in catalog, read once.
fn built_in() -> Result<&'static Catalog, String> {
    static READ: std::sync::OnceLock<Result<Catalog, String>> = std::sync::OnceLock::new();
    READ.get_or_init(|| Catalog::built_in().map_err(|error| error.to_string())).as_ref().map_err(Clone::clone)
}

fn decoded(files: &BTreeMap<String, String>) -> Result<Files, String> {
    let bytes = |(name, text): (&String, &String)| match base64::engine::general_purpose::STANDARD.decode(text) {
        Ok(bytes) => Ok((name.clone(), bytes.into())),
        Err(error) => Err(format!("`{name}` is no base64: {error}")),
    };
    files.iter().map(bytes).collect()
}

fn data(answer: &Answer) -> Value {
    value!({
        "faults": answer.faults.as_ref().map_or_else(Vec::new, judged::faults),
        "report": answer.report,
        "missing": answer.missing,
        "drawings": drawings(&answer.drawings),
    })
}

/// Name and SVG of each.
fn drawings(drawings: &[(String, String)]) -> Vec<Value> {
    drawings.iter().map(|(name, svg)| value!({ "name": name, "svg": svg })).collect()
}

fn entries(draught: &Draught) -> Vec<Value> {
    let one = |said: crate::written::Said| {
        let mut entry = value!({ "path": said.path, "value": said.value });
        if let Ok(words) = ron::from_str::<String>(said.value) {
            entry["words"] = words.into();
        }
        entry
    };
    draught.entries().map(one).collect()
}

fn altered(text: String, changes: Vec<Change>) -> Result<Value, String> {
    let first = Draught::new(&text);
    let mut draught = first.clone();
    for change in changes {
        let value = match (change.value, change.words) {
            (Some(value), _) => Some(value),
            (None, Some(words)) => Some(quoted(&words)),
            (None, None) => None,
        };
        let text = match value {
            Some(value) => draught.put(&change.path, &value).map_err(|error| error.to_string())?,
            None => draught.without(&change.path),
        };
        draught = Draught::new(&text);
    }
    let mut left: Vec<&str> = draught.remarks().collect();
    let lost: Vec<&str> = first
        .remarks()
        .filter(|remark| match left.iter().position(|one| one == remark) {
            Some(at) => {
                left.swap_remove(at);
                false
            }
            None => true,
        })
        .collect();
    Ok(value!({ "text": draught.text(), "entries": entries(&draught), "lost_remarks": lost }))
}

/// Words as they stand in a job: with as few strokes in them as can be, a person reads them again.
fn quoted(words: &str) -> String {
    let mut out = String::from('"');
    for c in words.chars() {
        match c {
            '"' | '\\' => out.extend(['\\', c]),
            c if c.is_control() => out.extend(c.escape_unicode()),
            c => out.push(c),
        }
    }
    out.push('"');
    out
}

/// The names of the catalog that a job can use, by the end of the path that takes them.
fn names() -> Result<Value, String> {
    fn of<T>(entries: &[Entry<T>]) -> Vec<&str> {
        entries.iter().map(|entry| entry.name.as_str()).collect()
    }
    let catalog = built_in()?;
    Ok(value!({
        "names": {
            "class": of(&catalog.engines),
            "bracket.class": of(&catalog.brackets),
            "helm.class": of(&catalog.helms),
            "cylinder.class": of(&catalog.cylinders),
            "hose.class": of(&catalog.hoses),
            "wire.class": of(&catalog.tables.wires),
            "battery.class": of(&catalog.batteries),
            "fuse.class": of(&catalog.fuses),
            "trailer.class": of(&catalog.trailers),
            "material": of(&catalog.materials),
            "size": of(&catalog.tables.bolt_sizes),
            "grade": of(&catalog.tables.bolt_grades),
        },
    }))
}
