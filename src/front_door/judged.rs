//! What somebody who is typing wants to know of a job.

use std::collections::BTreeMap;

use serde_json::{Value, json as value};

use super::answer::{Question, from, missing};
use super::opened::{Opened, open};
use crate::catalog::hexadecimal;
use crate::report::{self, Embedded, Report, Stamp};
use crate::rules::{self, Family, Verdict};
use crate::written::{Fault, Faults};
use sha2::{Digest, Sha256};

/// Families that cost more than a keystroke may.
const DEAR: [Family; 5] = [Family::Swing, Family::Strength, Family::Running, Family::Trial, Family::Worth];

/// `faults`; or `verdict` (the gravest that decides), `answer` (in a few words), `headline`, `counts`, `findings`, `missing`
/// and, unless it is asked for quickly, `assumed`, `cautions`, `deferral` and `drawings`.
pub(super) fn data(question: &Question, quickly: bool) -> Value {
    opened(question, |opened| {
        let case = opened.case();
        let wanted = |family: Family| !quickly || !DEAR.contains(&family);
        let judged = rules::judge_families(&case, wanted);
        let report = Report { case: &case, judged: &judged, units: question.units, explain: false };
        let counts: Vec<Value> = Verdict::ALL
            .into_iter()
            .map(|verdict| value!({ "verdict": verdict.word(), "count": report.count(verdict) }))
            .collect();
        let mut said = value!({
            "faults": [],
            "title": opened.rig.title(),
            "made_up": opened.rig.job.made_up,
            "verdict": report.overall().word(),
            "answer": report.answer(),
            "headline": report.headline(),
            "counts": counts,
            "questions": report::questions(&report),
            "findings": report::findings(&report),
            "missing": missing(&judged),
            "quickly": quickly,
        });
        if !quickly {
            said["assumed"] = report.assumed().iter().map(|text| text.show(question.units)).collect();
            said["cautions"] = report.cautions().into();
            said["deferral"] = report::DEFERRAL.into();
            said["drawings"] = figures(&report).into();
        }
        report::harmless(said)
    })
}

/// Name and HTML of each drawing.
fn figures(report: &Report) -> Vec<Value> {
    report::figures(report).into_iter().map(|(name, html)| value!({ "name": name, "html": html })).collect()
}

/// `html`: the report that is handed over.
pub(super) fn page(question: &Question, pictures: &BTreeMap<String, String>) -> Value {
    opened(question, |opened| {
        let case = opened.case();
        let judged = rules::judge(&case);
        let report = Report { case: &case, judged: &judged, units: question.units, explain: false };
        let stamp = Stamp {
            job: question.name.to_owned(),
            job_hash: hexadecimal(&Sha256::digest(question.text.as_bytes())),
            catalogs: question.catalog.stamp(),
        };
        let photographs: Vec<Embedded> = opened
            .rig
            .job
            .photographs
            .iter()
            .map(|photograph| Embedded {
                address: pictures.get(&photograph.file).filter(|address| is_picture(address)).cloned(),
                file: photograph.file.clone(),
                caption: photograph.caption.clone(),
                finding: photograph.finding.clone(),
            })
            .collect();
        value!({ "faults": [], "html": report::page(&report, &stamp, &photographs) })
    })
}

/// `html`: the measuring sheet.
pub(super) fn sheet(question: &Question) -> Value {
    opened(question, |opened| {
        let judged = rules::judge(&opened.case());
        value!({ "faults": [], "html": report::measuring_sheet(opened.rig.title(), &judged) })
    })
}

/// A picture in the page itself, nothing that would be fetched.
fn is_picture(address: &str) -> bool {
    ["data:image/jpeg;base64,", "data:image/png;base64,"].iter().any(|lead| address.starts_with(lead))
}

fn opened(question: &Question, tell: impl FnOnce(&Opened) -> Value) -> Value {
    match open(question.name, question.text, question.catalog, from(question.files)) {
        Ok(opened) => tell(&opened),
        Err(wrong) => value!({ "faults": faults(&wrong) }),
    }
}

/// Each fault with the path of its entry, the bytes of the text that it is about, and its line and column from 1.
pub(super) fn faults(faults: &Faults) -> Vec<Value> {
    let one = |fault: &Fault| {
        let (line, column) = faults.place(fault);
        value!({
            "path": fault.path,
            "from": fault.span.start,
            "to": fault.span.end,
            "line": line,
            "column": column,
            "message": fault.message,
            "help": fault.help,
            "unknown_field": fault.is_of_unknown_field(),
        })
    };
    faults.faults.iter().map(one).collect()
}
