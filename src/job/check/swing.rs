//! What stands round the engines cannot be just anywhere.

use uom::si::f64::Length;

use super::Checker;
use super::bounds::{ACROSS, Bounds, OFFSET, SMALL_LENGTH, STEER, TILT, TRANSOM_ANGLE, WIDTH, bounds};
use super::specs::tilt_tube;
use crate::job::{BoxedObstacle, Cylinder, Job, MountingNumbers, SplashWell, SwingStudy, TieBar, Trailer};
use crate::quantity::{Dimensioned, Reading};

const WELL_LENGTH: Bounds = bounds("4 in", "80 in");
const RIM: Bounds = bounds("-24 in", "48 in");
const FORWARD: Bounds = bounds("-12 ft", "40 ft");
const UP: Bounds = bounds("-12 ft", "20 ft");
const WATERLINE: Bounds = bounds("-12 in", "60 in");
const KEEL_HEIGHT: Bounds = bounds("4 in", "60 in");
const BOW_UP: Bounds = bounds("-15 deg", "15 deg");
const DIAMETER: Bounds = bounds("1/4 in", "8 in");
const STUDY_MARGIN: Bounds = bounds("0 mm", "10 ft");
const STUDY_GAP: Bounds = bounds("0.001 mm", "1 in");

/// Everything of the job that the swing of the engines depends on.
pub(super) fn surroundings(checker: &mut Checker, job: &Job) {
    let well = &job.well;
    checker.within("well.length", well.length.as_ref(), WELL_LENGTH);
    checker.within("well.width", well.width.as_ref(), WIDTH);
    checker.within("well.rim_above", well.rim_above.as_ref(), RIM);
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
    checker.within("waterline", job.waterline.as_ref(), WATERLINE);
    gear(checker, job);
    if let Some(Trailer::On { keel_above_ground, bow_up, towing_tilt, parts }) = &job.trailer {
        checker.within("trailer.keel_above_ground", keel_above_ground.as_ref(), KEEL_HEIGHT);
        checker.within("trailer.bow_up", bow_up.as_ref(), BOW_UP);
        checker.within("trailer.towing_tilt", towing_tilt.as_ref(), bounds("0 deg", "110 deg"));
        boxes(checker, "trailer.parts", parts);
    }
    if let Some(study) = &job.swing_study {
        question(checker, study);
    }
}

fn gear(checker: &mut Checker, job: &Job) {
    if let Some(Cylinder::Fitted { forward, above, length, diameter }) = &job.steering_gear.cylinder {
        let path = "steering_gear.cylinder";
        checker.within(&format!("{path}.forward"), forward.as_ref(), OFFSET);
        checker.within(&format!("{path}.above"), above.as_ref(), OFFSET);
        checker.within(&format!("{path}.length"), length.as_ref(), SMALL_LENGTH);
        checker.within(&format!("{path}.diameter"), diameter.as_ref(), DIAMETER);
    }
    if let Some(TieBar::Fitted { forward, above, diameter }) = &job.steering_gear.tie_bar {
        let path = "steering_gear.tie_bar";
        checker.within(&format!("{path}.forward"), forward.as_ref(), OFFSET);
        checker.within(&format!("{path}.above"), above.as_ref(), OFFSET);
        checker.within(&format!("{path}.diameter"), diameter.as_ref(), DIAMETER);
    }
}

/// Boxes lie in reach, have names of their own, and run from the lesser to the greater.
fn boxes(checker: &mut Checker, list: &str, boxes: &[BoxedObstacle]) {
    for (i, entry) in boxes.iter().enumerate() {
        let path = format!("{list}[{i}]");
        named(checker, &path, &entry.name, boxes[..i].iter().map(|earlier| earlier.name.as_str()));
        span(checker, &format!("{path}.forward"), &entry.forward, FORWARD);
        span(checker, &format!("{path}.up"), &entry.up, UP);
        let (one, other) = &entry.across;
        for (j, side) in [one, other].into_iter().enumerate() {
            checker.within(&format!("{path}.across[{j}]"), side.reading(), ACROSS);
        }
        if one.y() == other.y() {
            checker.fault(
                &format!("{path}.across"),
                "both sides stand at the same place",
                "from one side to the other: (port(\"10 in\"), starboard(\"10 in\"))",
            );
        }
    }
}

fn span(checker: &mut Checker, path: &str, (from, to): &(Reading<Length>, Reading<Length>), bounds: Bounds) {
    checker.within(&format!("{path}[0]"), Some(from), bounds);
    checker.within(&format!("{path}[1]"), Some(to), bounds);
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

/// Numbers of a mounting sheet.
pub(super) fn sheet(checker: &mut Checker, path: &str, sheet: &MountingNumbers) {
    let at = |field: &str| format!("{path}.{field}");
    checker.within(&at("full_tilt"), sheet.full_tilt.as_ref(), TILT);
    checker.within(&at("steering"), sheet.steering.as_ref(), STEER);
    checker.within(&at("transom_angle"), sheet.transom_angle.as_ref(), TRANSOM_ANGLE);
    for (field, reading) in [
        ("width", &sheet.width),
        ("height", &sheet.height),
        ("forward_at_full_tilt", &sheet.forward_at_full_tilt),
        ("height_at_full_tilt", &sheet.height_at_full_tilt),
    ] {
        checker.within(&at(field), reading.as_ref(), SMALL_LENGTH);
    }
    tilt_tube(checker, &at("tilt_tube"), sheet.tilt_tube.as_ref());
}

/// A study's chain itself is judged where it is put together; here only what no question can mean.
fn question(checker: &mut Checker, study: &SwingStudy) {
    let path = "swing_study";
    checker.within(&format!("{path}.margin"), study.margin.as_ref(), STUDY_MARGIN);
    checker.within(&format!("{path}.gap"), study.gap.as_ref(), STUDY_GAP);
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
