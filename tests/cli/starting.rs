//! `start`: templates that parse, say what is missing, and never overwrite.

use crate::{same_as_kept, shown, sternknee};

const SITTINGS: [&str; 3] = ["before-ordering", "as-fitted", "study"];

/// Families of which a template tells nothing.
const NOT_ASKED: [&str; 9] =
    ["steering/", "fuel/", "electrical/", "controls/", "network/", "trailer/", "running/", "trial/", "worth/"];

#[test]
fn a_template_parses_as_it_is_and_lets_nothing_pass() {
    for (sitting, form) in SITTINGS.into_iter().flat_map(|sitting| [(sitting, None), (sitting, Some("--long"))]) {
        let folder = tempfile::tempdir().unwrap();
        let call = |arguments: &[&str]| sternknee(folder.path()).args(arguments).output().unwrap();
        let started = call(&[&["start", "new.ron", "--for", sitting], form.as_slice()].concat());
        assert_eq!(started.status.code(), Some(0));
        let written = std::fs::read_to_string(folder.path().join("new.ron")).unwrap();
        if form.is_some() {
            same_as_kept(&format!("start-{sitting}"), "the file that `start` writes", &written);
        }
        let checked = call(&["check", "new.ron"]);
        assert_eq!(checked.status.code(), Some(0));
        let text = shown(&checked);
        if form.is_some() {
            same_as_kept(&format!("start-{sitting}-check"), "check of it as it is", &text);
        }
        let report = call(&["check", "new.ron", "--format", "json"]);
        let report: serde_json::Value = serde_json::from_slice(&report.stdout).unwrap();
        for finding in report["findings"].as_array().unwrap() {
            // A family that is not asked about says so.
            let rule = finding["rule"].as_str().unwrap();
            let silent = NOT_ASKED.iter().any(|family| rule.starts_with(family));
            let verdict = if silent { "not applicable" } else { "unmeasured" };
            assert_eq!(finding["verdict"], verdict, "{sitting}: {finding}");
        }
        let tape = call(&["tape", "new.ron"]);
        assert_eq!(tape.status.code(), Some(0));
        assert!(String::from_utf8_lossy(&tape.stdout).contains("decides:"));
    }
}

/// Short enough to be filled in within ten minutes; the long form tells every trap's way out.
#[test]
fn a_job_begins_short_and_the_long_form_holds_what_traps_ask_for() {
    use sternknee::job::{Sitting, start};
    for sitting in [Sitting::BeforeOrdering, Sitting::AsFitted] {
        let (short, long) = (start::short(sitting), start::template(sitting));
        assert!(short.lines().count() < 60 && short.lines().count() * 2 < long.lines().count());
        for field in ["setback:", "drop:", "role:", "weighed:", "holes_up:"] {
            assert!(long.contains(field), "{field}");
        }
    }
    let readme = include_str!("../../README.md");
    for field in ["setback:", "drop:", "role:", "weighed:", "holes_up:"] {
        assert!(readme.contains(field), "{field}");
    }
}

#[test]
fn a_file_that_is_there_is_never_overwritten() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("mine.ron");
    std::fs::write(&file, "an afternoon's work").unwrap();
    let output = sternknee(folder.path()).args(["start", "mine.ron"]).output().unwrap();
    same_as_kept("start-exists", "start on a file that is there", &shown(&output));
    assert_eq!(std::fs::read_to_string(&file).unwrap(), "an afternoon's work");
    assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 1);
}

#[test]
fn a_folder_that_is_not_there_is_told() {
    let folder = tempfile::tempdir().unwrap();
    let output = sternknee(folder.path()).args(["start", "nowhere/new.ron"]).output().unwrap();
    assert_eq!(output.status.code(), Some(2));
    let error = String::from_utf8_lossy(&output.stderr);
    assert!(error.starts_with("nowhere/new.ron: cannot be written"), "{error}");
}

/// What the comments of a template offer, filled in, is taken.
#[test]
fn the_commented_fields_of_a_template_can_be_filled_in() {
    let folder = tempfile::tempdir().unwrap();
    let call = |arguments: &[&str]| sternknee(folder.path()).args(arguments).output().unwrap();
    for sitting in SITTINGS {
        let name = format!("{sitting}.ron");
        call(&["start", &name, "--for", sitting]);
        let file = folder.path().join(&name);
        let text = std::fs::read_to_string(&file).unwrap();
        let filled = text
            .replace("// length: \"\"", "length: \"18 ft\"")
            .replace("// length: \"16 ft\"", "length: \"16 ft\"")
            .replace("// steering: ", "steering: ");
        assert_ne!(text, filled, "{sitting}");
        std::fs::write(&file, filled).unwrap();
        let output = call(&["check", &name]);
        assert_eq!(output.status.code(), Some(0), "{}", shown(&output));
    }
}
