//! What cannot be of the papers that go with a job.

use std::path::{Component, Path};

use super::Checker;
use crate::job::Photograph;

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
        let inside = file.components().all(|part| matches!(part, Component::Normal(_) | Component::CurDir));
        if photograph.file.trim().is_empty() {
            checker.fault(
                &format!("photographs[{i}]"),
                "a photograph without a file",
                "give its path from the job's folder: file: \"photographs/transom.jpg\"",
            );
        } else if !inside || photograph.file.contains('\\') {
            checker.fault(
                &path,
                "the path leads out of the job's folder",
                "put the photograph into the job's folder or below it, and write the path from there with / between folders",
            );
        } else if !is_picture(file) {
            checker.fault(&path, "neither a .png nor a .jpg", "save the photograph as JPEG or PNG");
        }
    }
}

fn is_picture(file: &Path) -> bool {
    file.extension()
        .and_then(|extension| extension.to_str())
        .is_some_and(|extension| ["png", "jpg", "jpeg"].iter().any(|known| extension.eq_ignore_ascii_case(known)))
}
