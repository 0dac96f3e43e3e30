//! What a panel or a bolt group given outright must not say.

use uom::si::f64::{Length, Ratio};

use super::Checker;
use super::bounds::{Bounds, bounds};
use super::strength::few;
use crate::job::{Job, PanelLoad, PanelPlace, PanelShape, PanelStiffness};
use crate::quantity::Reading;

const STUDY_LENGTH: Bounds = bounds("1 mm", "100 m");
const STUDY_PLACE: Bounds = bounds("-100 m", "100 m");
const STUDY_THICKNESS: Bounds = bounds("0.01 mm", "1 m");
const MODULUS: Bounds = bounds("0.01 MPa", "2,000 GPa");
const POISSON: Bounds = bounds("0", "0.499");
const STRESS: Bounds = bounds("0.001 MPa", "10,000 MPa");
const ACCURACY: Bounds = bounds("0.01 %", "50 %");

fn place(checker: &mut Checker, path: &str, place: &PanelPlace) {
    checker.within(&format!("{path}.across"), Some(&place.across), STUDY_PLACE);
    checker.within(&format!("{path}.up"), Some(&place.up), STUDY_PLACE);
}

pub(super) fn panel(checker: &mut Checker, job: &Job) {
    let Some(study) = &job.panel_study else {
        return;
    };
    let path = "panel_study";
    let corners = match &study.shape {
        PanelShape::Rectangle { width, height } => {
            checker.within("panel_study.shape.width", Some(width), STUDY_LENGTH);
            checker.within("panel_study.shape.height", Some(height), STUDY_LENGTH);
            4
        }
        PanelShape::Polygon(corners) => {
            few(checker, "panel_study.shape", corners.len());
            for (i, corner) in corners.iter().enumerate() {
                place(checker, &format!("panel_study.shape[{i}]"), corner);
            }
            corners.len()
        }
    };
    if study.edges.len() != corners {
        checker.fault(
            "panel_study.edges",
            format!("{} edges are held, and the panel has {corners}", study.edges.len()),
            "one of free, simple, clamped for each edge, in order",
        );
    }
    match &study.stiffness {
        PanelStiffness::Plate { modulus, poisson, thickness, yield_stress } => {
            let at = |field: &str| format!("{path}.stiffness.{field}");
            checker.within(&at("modulus"), Some(modulus), MODULUS);
            checker.within(&at("poisson"), Some(poisson), POISSON);
            checker.within(&at("thickness"), Some(thickness), STUDY_THICKNESS);
            checker.within(&at("yield_stress"), yield_stress.as_ref(), STRESS);
        }
        PanelStiffness::Layers(list) => {
            few(checker, "panel_study.stiffness", list.len());
            if list.is_empty() {
                checker.fault(
                    "panel_study.stiffness",
                    "a panel without layers",
                    "give each layer's material and thickness",
                );
            }
            for (i, layer) in list.iter().enumerate() {
                checker.within(
                    &format!("panel_study.stiffness[{i}].thickness"),
                    Some(&layer.thickness),
                    STUDY_THICKNESS,
                );
            }
        }
        PanelStiffness::Outright { .. } => {}
    }
    few(checker, "panel_study.lines", study.lines.len());
    for (i, line) in study.lines.iter().enumerate() {
        place(checker, &format!("panel_study.lines[{i}].from"), &line.from);
        place(checker, &format!("panel_study.lines[{i}].to"), &line.to);
    }
    few(checker, "panel_study.loads", study.loads.len());
    if study.loads.is_empty() {
        checker.fault("panel_study.loads", "nothing bears on the panel", "give a pressure, a patch or a point");
    }
    for (i, load) in study.loads.iter().enumerate() {
        let at = |field: &str| format!("panel_study.loads[{i}].{field}");
        match load {
            PanelLoad::Pressure(_) => {}
            PanelLoad::Patch { across, up, width, height, .. } => {
                checker.within(&at("across"), Some(across), STUDY_PLACE);
                checker.within(&at("up"), Some(up), STUDY_PLACE);
                checker.within(&at("width"), Some(width), STUDY_LENGTH);
                checker.within(&at("height"), Some(height), STUDY_LENGTH);
            }
            PanelLoad::Point { across, up, .. } => {
                checker.within(&at("across"), Some(across), STUDY_PLACE);
                checker.within(&at("up"), Some(up), STUDY_PLACE);
            }
        }
    }
    checker.within::<Ratio>("panel_study.accuracy", study.accuracy.as_ref(), ACCURACY);
}

pub(super) fn bolts(checker: &mut Checker, job: &Job) {
    let Some(study) = &job.bolt_study else { return };
    few(checker, "bolt_study.bolts", study.bolts.len());
    if study.bolts.is_empty() {
        checker.fault(
            "bolt_study.bolts",
            "a bolt group without a bolt",
            "give each bolt's place: (across: \"3 in\", up: \"8 in\")",
        );
    }
    let face = &study.face;
    for (field, reading) in
        [("bottom", &face.bottom), ("top", &face.top), ("starboard", &face.starboard), ("port", &face.port)]
    {
        checker.within(&format!("bolt_study.face.{field}"), Some(reading), STUDY_PLACE);
    }
    if face.bottom.value >= face.top.value || face.starboard.value >= face.port.value {
        checker.fault(
            "bolt_study.face",
            "the face has no area",
            "`bottom` is less than `top`, `starboard` less than `port`",
        );
        return;
    }
    for (i, bolt) in study.bolts.iter().enumerate() {
        let path = format!("bolt_study.bolts[{i}]");
        place(checker, &path, bolt);
        if outside(&bolt.up, &face.bottom, &face.top) || outside(&bolt.across, &face.starboard, &face.port) {
            checker.fault(&path, "this bolt stands outside the face that it holds", "check it against `face`");
        }
    }
    place(checker, "bolt_study.at", &study.at);
}

fn outside(at: &Reading<Length>, low: &Reading<Length>, high: &Reading<Length>) -> bool {
    at.value < low.value || at.value > high.value
}
