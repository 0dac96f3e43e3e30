//! What is asked back, what is told of slips in a job's text, and how much work a text may ask for: from text to answer.

mod altered;
mod boats;
mod figures;
mod front_door;
mod nonsense;
mod notation;
mod shown;
mod slips;
mod too_much;
mod traps;

use std::sync::{Arc, LazyLock};

use sternknee::catalog::Catalog;
use sternknee::front_door::{Opened, open};
use sternknee::quantity::Units;
use sternknee::rules::{self, Finding, Judged};
use sternknee::written::Faults;

static CATALOG: LazyLock<Catalog> = LazyLock::new(|| Catalog::built_in().expect("the built-in catalog is sound"));

/// A demo that tells everything of a boat.
pub const SKIFF: &str = include_str!("../../catalogs/jobs/oyster_skiff.ron");

/// The skiff with one passage put in place of another.
pub fn skiff(was: &str, is: &str) -> String {
    assert!(SKIFF.contains(was), "{was}");
    SKIFF.replacen(was, is, 1)
}

/// A job that was read, or its faults; no file beside it.
pub fn read(text: &str) -> Result<Opened, Faults> {
    open("job.ron", text, &CATALOG, |name| Err::<Arc<[u8]>, _>(format!("`{name}` is not there")))
}

/// A job that must be sound.
pub fn opened(text: &str) -> Opened {
    read(text).unwrap_or_else(|faults| panic!("{faults}"))
}

/// The faults of a job, a line each.
pub fn faults(text: &str) -> Vec<String> {
    let faults = read(text).err().map_or(String::new(), |faults| faults.to_string());
    faults.lines().map(str::to_owned).collect()
}

/// The questions of a job: the entry and what is asked.
pub fn questions(job: &Opened) -> Vec<(String, String)> {
    job.rig.questions().map(|one| (one.entries[0].clone(), one.said.show(Units::Us))).collect()
}

/// Everything that the family of a rule says.
pub fn family(job: &Opened, rule: &str) -> Vec<Judged> {
    let family = rules::find(rule).unwrap_or_else(|| panic!("no rule {rule}")).family;
    rules::judge_families(&job.case(), |one| one == family)
}

/// What a rule says.
pub fn finding(job: &Opened, rule: &str) -> Finding {
    let all = family(job, rule);
    all.into_iter().find(|one| one.rule.id == rule).unwrap_or_else(|| panic!("no rule {rule}")).finding
}

/// The verdict of a rule.
pub fn verdict(job: &Opened, rule: &str) -> &'static str {
    finding(job, rule).verdict.word()
}

/// What a rule says, in words.
pub fn summary(job: &Opened, rule: &str) -> String {
    finding(job, rule).summary.show(Units::Us)
}

/// What is taken for granted of the job and of how she floats.
pub fn assumed(job: &Opened) -> String {
    let case = job.case();
    let floats = case.float().map(|float| float.assumed.clone()).unwrap_or_default();
    job.rig.assumed.iter().chain(&floats).map(|text| text.show(Units::Us)).collect::<Vec<_>>().join("\n")
}
