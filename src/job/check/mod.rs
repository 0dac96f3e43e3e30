//! What a job must not say: values that no boat has, engines in impossible places, things that
//! contradict each other. Every finding is noted, none stops the search.

mod boat;
mod bounds;
mod checker;
mod engines;
mod float;
mod hull;
mod papers;
mod rigging;
mod specs;
mod strength;
mod study;
mod swing;

use super::{EngineGroup, Item, Job};
use crate::written::{Fault, Page};

pub use checker::Checker;
pub(crate) use engines::ONE_PLACE;
pub use rigging::check_rigged;
pub use specs::{check_bracket, check_engine};

/// Everything about the job that cannot be.
///
/// # Errors
/// What is more than a job needs, where anything is: then nothing else is looked at.
pub(super) fn job(job: &Job, page: &Page) -> Result<Vec<Fault>, Vec<Fault>> {
    let mut checker = Checker::new(page);
    bounds::limits(&mut checker, "", job);
    if !checker.faults.is_empty() {
        return Err(checker.faults);
    }
    bounds::within(&mut checker, "", job);
    boat::boat(&mut checker, &job.boat);
    boat::plate(&mut checker, job.plate.as_ref());
    boat::transom(&mut checker, &job.transom, &job.boat);
    boat::on_transom(&mut checker, job);
    for (side, groups) in sides(job) {
        for (i, group) in groups.iter().enumerate() {
            engines::engine_group(&mut checker, &format!("{side}[{i}]"), group);
        }
        engines::places(&mut checker, &side, groups, &job.boat);
    }
    candidates(&mut checker, job);
    for (side, items) in [("comes_off", &job.comes_off), ("goes_on", &job.goes_on)] {
        for (i, entry) in items.iter().enumerate() {
            item(&mut checker, &format!("{side}[{i}]"), entry);
        }
    }
    papers::files(&mut checker, job);
    papers::photographs(&mut checker, &job.photographs);
    float::float(&mut checker, job);
    swing::surroundings(&mut checker, job);
    strength::strength(&mut checker, job);
    rigging::rigging(&mut checker, job);
    papers::sure(&mut checker, &job.sure);
    Ok(checker.faults)
}

/// Every set of engines that the job holds, with its path.
fn sides(job: &Job) -> impl Iterator<Item = (String, &[EngineGroup])> {
    let own = [("engines_off".to_owned(), job.engines_off.as_slice()), ("engines_on".to_owned(), &job.engines_on)];
    let candidates = job.candidates.iter().enumerate();
    own.into_iter().chain(candidates.map(|(i, one)| (format!("candidates[{i}].engines_on"), one.engines_on.as_slice())))
}

fn candidates(checker: &mut Checker, job: &Job) {
    for (i, candidate) in job.candidates.iter().enumerate() {
        let path = format!("candidates[{i}]");
        let before = job.candidates[..i].iter().any(|other| other.name == candidate.name);
        if candidate.name.trim().is_empty() {
            checker.fault(&path, "a candidate without a name", "say what it is called: name: \"one of 200 hp\"");
        } else if before {
            checker.fault(&format!("{path}.name"), format!("two candidates are called `{}`", candidate.name), "");
        }
        if candidate.engines_on.is_empty() {
            checker.fault(&path, "a candidate without engines", "as in the job itself: engines_on: [(class: \"…\")]");
        }
        for (j, entry) in candidate.goes_on.iter().flatten().enumerate() {
            item(checker, &format!("{path}.goes_on[{j}]"), entry);
        }
    }
}

fn item(checker: &mut Checker, path: &str, item: &Item) {
    if item.what.trim().is_empty() {
        checker.fault(path, "an item without a name", "say what it is: what: \"oil tank\"");
    }
}
