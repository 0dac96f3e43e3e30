//! A job from its text to a rig that can be judged.

use std::sync::Arc;

use crate::case::swing::study_faults;
use crate::case::{Begun, Case, Floated};
use crate::catalog::Catalog;
use crate::hands::{Hands, one_pair};
use crate::job::{self, Job};
use crate::options::Yard;
use crate::questions;
use crate::rig::{self, Files, Question, Rig, Suspect};
use crate::rules::Judged;
use crate::sure;
use crate::written::{Draft, Draught, Fault, Faults, Page, Slip};

/// A job that was read: its rig, and its page for what is found wrong later.
pub struct Opened {
    /// The boat, every name looked up.
    pub rig: Rig,
    /// The text, with the place of every entry.
    pub page: Page,
    /// The job as it was written, no name looked up, but what each engine is for told where it was not.
    pub job: Job,
    /// The files that it names.
    pub files: Files,
    begun: Begun,
    floated: Floated,
}

impl Opened {
    /// The rig on the desk, with what was worked out while its faults were looked for.
    pub fn case(&self) -> Case<'_> {
        self.case_by(one_pair)
    }

    /// The same, for these hands.
    pub fn case_by(&self, hands: Hands) -> Case<'_> {
        Case::by(&self.rig, self.begun.clone(), self.floated.clone(), hands)
    }

    /// Puts beside every finding what it is worth; `catalog` is the one that the job was opened with.
    pub fn weigh(&self, catalog: &Catalog, judged: &mut [Judged]) {
        sure::weigh(&self.rig, catalog, &self.files, judged);
    }

    /// The boat in the yard, where other engines are tried on her.
    pub fn yard<'y>(&'y self, catalog: &'y Catalog) -> Yard<'y> {
        Yard::new(&self.job, &self.files, catalog, &self.rig, self.begun.clone())
    }
}

/// Opens the job of this text. `name` is what faults call it, usually its path; `file` hands over the bytes of a file that
/// the job names, or says in a sentence why it cannot.
///
/// # Errors
/// Everything that is wrong with the job, each fault with its place.
pub fn open(
    name: &str,
    text: &str,
    catalog: &Catalog,
    file: impl FnMut(&str) -> Result<Arc<[u8]>, String>,
) -> Result<Opened, Faults> {
    open_draft(job::draft(name, text), catalog, file)
}

/// The same of a text that was read already.
pub(crate) fn open_draft(
    mut draft: Draft<Job>,
    catalog: &Catalog,
    mut file: impl FnMut(&str) -> Result<Arc<[u8]>, String>,
) -> Result<Opened, Faults> {
    let page = draft.page.clone();
    let (files, unread) = draft.value.as_ref().map(|job| named_files(job, &page, &mut file)).unwrap_or_default();
    draft.add(unread);
    let resolved = draft.value.as_ref().map(|job| rig::resolve_with_files(job, catalog, &files));
    match resolved {
        Some(Ok(mut rig)) => {
            let case = Case::new(&rig);
            // A shape that was read may still be no hull; one that was not was told already.
            if draft.faults.is_empty() {
                draft.add_slips(case.shape_fault());
            }
            draft.add_slips(study_faults(&rig).into_iter().map(|fault| Slip {
                path: fault.path,
                message: fault.error.to_string(),
                help: String::new(),
            }));
            if draft.faults.is_empty() {
                draft.add_slips(case.study_faults());
            }
            let (mut job, page) = draft.finish()?;
            for (group, settled) in job.engines_on.iter_mut().zip(&rig.job.engines_on) {
                group.role = settled.role;
            }
            let asked = questions::questions(&case);
            let (begun, floated) = case.lay_aside();
            rig.suspects = suspects(asked, &page.text, catalog, &files);
            Ok(Opened { rig, page, job, files, begun, floated })
        }
        Some(Err(unresolved)) => {
            draft.add_slips(unresolved);
            Err(Faults::new(&page, draft.faults))
        }
        None => Err(Faults::new(&draft.page, draft.faults)),
    }
}

/// Questions of which each has a boat of its own without the readings in doubt; those beyond share one. Somebody who is
/// asked more has mixed up more than a reading.
const QUESTIONS_APART: usize = 3;

/// The questions with the rigs that would be judged if nobody had taken the readings that they are about.
fn suspects(mut asked: Vec<Question>, text: &str, catalog: &Catalog, files: &Files) -> Vec<Suspect> {
    let rest = asked.split_off(asked.len().min(QUESTIONS_APART));
    let apart = asked.into_iter().map(|question| vec![question]);
    let together = Some(rest).filter(|rest| !rest.is_empty());
    apart
        .chain(together)
        .map(|questions| {
            let entries = questions.iter().flat_map(|question| question.entries.iter().cloned()).collect();
            Suspect { without: without(entries, text, catalog, files), questions }
        })
        .collect()
}

/// The rig of the text without these entries; where a job is none without one of them, without what that stands in.
fn without(mut entries: Vec<String>, text: &str, catalog: &Catalog, files: &Files) -> Option<Arc<Rig>> {
    loop {
        // From the last to the first, so that the places in a list stay what they were.
        entries.sort_by(|a, b| b.cmp(a));
        entries.dedup();
        let left = entries.iter().fold(text.to_owned(), |text, entry| Draught::new(&text).without(entry));
        let draft = job::draft("", &left);
        if let (Some(job), true) = (&draft.value, draft.faults.is_empty())
            && let Ok(rig) = rig::resolve_with_files(job, catalog, files)
        {
            return Some(Arc::new(rig));
        }
        entries = entries.iter().filter_map(|entry| Some(entry[..entry.rfind(['.', '['])?].to_owned())).collect();
        if entries.is_empty() {
            return None;
        }
    }
}

/// The files that a job names, and the faults of those that were not handed over.
fn named_files(
    job: &job::Job,
    page: &Page,
    file: &mut impl FnMut(&str) -> Result<Arc<[u8]>, String>,
) -> (Files, Vec<Fault>) {
    let mut files = Files::new();
    let mut faults = Vec::new();
    for (entry, name) in job.files() {
        match file(name) {
            Ok(bytes) => {
                files.insert(name.to_owned(), bytes);
            }
            Err(why) => faults.push(page.fault(entry, why, "the name counts from the folder of the job")),
        }
    }
    (files, faults)
}
