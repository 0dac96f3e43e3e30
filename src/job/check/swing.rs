//! What stands round the engines cannot be just anywhere.

use uom::si::f64::Length;

use super::Checker;
use crate::job::{BoxedObstacle, Job, SplashWell, SwingStudy, Trailer};
use crate::quantity::{Dimensioned, Reading};

/// Everything of the job that the swing of the engines depends on.
pub(super) fn surroundings(checker: &mut Checker, job: &Job) {
    let well = &job.well;
    if job.transom.splash_well == Some(SplashWell::None) {
        for (field, given) in [
            ("well.length", well.length.is_some()),
            ("well.width", well.width.is_some()),
            ("well.rim_above", well.rim_above.is_some()),
        ] {
            if given {
                checker.fault(
                    field,
                    "a well is measured, but transom.splash_well says that there is none",
                    "give its depth there: splash_well: floor(\"12 in\"), or leave this out",
                );
            }
        }
    }
    boxes(checker, "obstacles", &job.obstacles);
    if let Some(Trailer::On { parts, .. }) = &job.trailer {
        boxes(checker, "trailer.parts", parts);
    }
    if let Some(study) = &job.swing_study {
        question(checker, study);
    }
}

/// Boxes lie in reach, have names of their own, and run from the lesser to the greater.
fn boxes(checker: &mut Checker, list: &str, boxes: &[BoxedObstacle]) {
    for (i, entry) in boxes.iter().enumerate() {
        let path = format!("{list}[{i}]");
        named(checker, &path, &entry.name, boxes[..i].iter().map(|earlier| earlier.name.as_str()));
        span(checker, &format!("{path}.forward"), &entry.forward);
        span(checker, &format!("{path}.up"), &entry.up);
        let (one, other) = &entry.across;
        if one.y() == other.y() {
            checker.fault(
                &format!("{path}.across"),
                "both sides stand at the same place",
                "from one side to the other: (port(\"10 in\"), starboard(\"10 in\"))",
            );
        }
    }
}

fn span(checker: &mut Checker, path: &str, (from, to): &(Reading<Length>, Reading<Length>)) {
    if from.value.si() >= to.value.si() {
        checker.fault(path, "the range is empty or runs backwards", "the lesser comes first, the greater second");
    }
}

fn named<'n>(checker: &mut Checker, path: &str, name: &str, mut earlier: impl Iterator<Item = &'n str>) {
    if name.trim().is_empty() {
        checker.fault(&format!("{path}.name"), "an obstacle without a name", "say what it is: name: \"hatch\"");
    } else if earlier.any(|other| other == name) {
        checker.fault(
            &format!("{path}.name"),
            format!("`{name}` stands in this list twice"),
            "findings tell them apart by their names",
        );
    }
}

/// A study's chain itself is judged where it is put together; here only what no question can mean.
fn question(checker: &mut Checker, study: &SwingStudy) {
    let path = "swing_study";
    let names: Vec<&str> = study.bodies.iter().map(|body| body.name.as_str()).collect();
    for (i, name) in names.iter().enumerate() {
        let path = format!("{path}.bodies[{i}]");
        named(checker, &path, name, names[..i].iter().copied());
    }
    let names: Vec<&str> = study.obstacles.iter().map(|o| o.name.as_str()).collect();
    for (i, name) in names.iter().enumerate() {
        let path = format!("{path}.obstacles[{i}]");
        named(checker, &path, name, names[..i].iter().copied());
    }
}
