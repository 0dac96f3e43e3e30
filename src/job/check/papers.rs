//! What cannot be of the papers that go with a job.

use std::path::{Component, Path};

use super::Checker;
use crate::job::{Job, Photograph};

/// Photographs that one report carries; more make it too long to be read and too large to be mailed.
const MOST_PHOTOGRAPHS: usize = 40;

pub(super) fn photographs(checker: &mut Checker, photographs: &[Photograph]) {
    if photographs.len() > MOST_PHOTOGRAPHS {
        checker.fault(
            "photographs",
            format!("{} photographs", photographs.len()),
            format!("a report carries at most {MOST_PHOTOGRAPHS}: choose those that show a finding"),
        );
    }
    for (i, photograph) in photographs.iter().enumerate() {
        let path = format!("photographs[{i}].file");
        let file = Path::new(&photograph.file);
        if photograph.file.trim().is_empty() {
            checker.fault(
                &format!("photographs[{i}]"),
                "a photograph without a file",
                "give its path from the job's folder: file: \"photographs/transom.jpg\"",
            );
        } else if !lies_inside(&photograph.file) {
            checker.fault(&path, "the path leads out of the job's folder", INSIDE);
        } else if !is_picture(file) {
            checker.fault(&path, "neither a .png nor a .jpg", "save the photograph as JPEG or PNG");
        }
    }
}

/// Files that a job names lie in its folder.
pub(super) fn files(checker: &mut Checker, job: &Job) {
    for (entry, name) in job.files() {
        if !lies_inside(name) {
            checker.fault(entry, "the path leads out of the job's folder", INSIDE);
        }
    }
}

/// What to do with a file that lies elsewhere.
const INSIDE: &str =
    "put the file into the job's folder or below it, and write the path from there with / between folders";

fn lies_inside(name: &str) -> bool {
    let inside = |part| matches!(part, Component::Normal(_) | Component::CurDir);
    Path::new(name).components().all(inside) && !name.contains('\\')
}

/// What was looked at again is an entry of the job.
pub(super) fn sure(checker: &mut Checker, entries: &[String]) {
    for (i, entry) in entries.iter().enumerate() {
        if !checker.has(entry) {
            checker.fault(
                &format!("sure[{i}]"),
                format!("`{entry}` is no entry of this job"),
                "as the question names it: sure: [\"plate.power\"]",
            );
        }
    }
}

fn is_picture(file: &Path) -> bool {
    file.extension()
        .and_then(|extension| extension.to_str())
        .is_some_and(|extension| ["png", "jpg", "jpeg"].iter().any(|known| extension.eq_ignore_ascii_case(known)))
}
