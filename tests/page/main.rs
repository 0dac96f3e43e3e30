//! The pages and drawings, without a browser: what they say, what they escape, what they measure.

#[path = "../common/mod.rs"]
mod common;

#[expect(dead_code, reason = "pages are made of any boat, whatever is known of her")]
#[path = "../boats/corpus.rs"]
mod corpus;
mod drawings;
#[path = "../common/drawn.rs"]
mod drawn;
mod escaping;
mod files;
mod followed;
mod kit;
#[path = "../common/listed.rs"]
mod listed;
mod readings;
mod same;
mod sentences;
mod symbols;
mod texts;
mod words;

use assert_cmd::Command;
use sternknee::case::Case;
use sternknee::quantity::Units;
use sternknee::report::{self, Embedded, Report, Stamp};
use sternknee::rules;

/// The demos, by file name without extension; `drawings` sees that none is left out.
const DEMOS: [&str; 7] =
    ["oyster_skiff", "harbour_launch", "tiller_skiff", "bay_runabout", "creek_boat", "dive_tender", "guide_boat"];

fn demo(name: &str) -> String {
    let path = format!("{}/catalogs/jobs/{name}.ron", env!("CARGO_MANIFEST_DIR"));
    std::fs::read_to_string(&path).unwrap_or_else(|error| panic!("{path}: {error}"))
}

/// Does something with the report of a job.
fn with_report<T>(text: &str, use_it: impl FnOnce(&Report) -> T) -> T {
    let rig = common::rig(text);
    let case = Case::new(&rig);
    let judged = rules::judge(&case);
    use_it(&Report { case: &case, judged: &judged, units: Units::Us, explain: false })
}

/// A stamp that is the same in every run.
fn stamp() -> Stamp {
    Stamp { job: "job.ron".to_owned(), job_hash: "0".repeat(64), catalogs: "built in".to_owned() }
}

fn page(text: &str) -> String {
    with_report(text, |report| report::page(report, &stamp(), &named(report)))
}

fn named(report: &Report) -> Vec<Embedded> {
    report
        .case
        .rig
        .job
        .photographs
        .iter()
        .map(|photograph| Embedded {
            address: None,
            file: photograph.file.clone(),
            caption: photograph.caption.clone(),
            finding: photograph.finding.clone(),
        })
        .collect()
}

fn sternknee() -> Command {
    Command::cargo_bin("sternknee").expect("the program is built beside its tests")
}
