//! What a panel or a bolt group given outright must not say.

use uom::si::f64::Length;

use super::Checker;
use crate::job::{Job, PanelShape, PanelStiffness};
use crate::quantity::Reading;

pub(super) fn panel(checker: &mut Checker, job: &Job) {
    let Some(study) = &job.panel_study else {
        return;
    };
    let corners = match &study.shape {
        PanelShape::Rectangle { .. } => 4,
        PanelShape::Polygon(corners) => corners.len(),
    };
    if study.edges.len() != corners {
        checker.fault(
            "panel_study.edges",
            format!("{} edges are held, and the panel has {corners}", study.edges.len()),
            "one of free, simple, clamped for each edge, in order",
        );
    }
    if matches!(&study.stiffness, PanelStiffness::Layers(layers) if layers.is_empty()) {
        checker.fault("panel_study.stiffness", "a panel without layers", "give each layer's material and thickness");
    }
    if study.loads.is_empty() {
        checker.fault("panel_study.loads", "nothing bears on the panel", "give a pressure, a patch or a point");
    }
}

pub(super) fn bolts(checker: &mut Checker, job: &Job) {
    let Some(study) = &job.bolt_study else { return };
    if study.bolts.is_empty() {
        checker.fault(
            "bolt_study.bolts",
            "a bolt group without a bolt",
            "give each bolt's place: (across: \"3 in\", up: \"8 in\")",
        );
    }
    let face = &study.face;
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
        if outside(&bolt.up, &face.bottom, &face.top) || outside(&bolt.across, &face.starboard, &face.port) {
            checker.fault(&path, "this bolt stands outside the face that it holds", "check it against `face`");
        }
    }
}

fn outside(at: &Reading<Length>, low: &Reading<Length>, high: &Reading<Length>) -> bool {
    at.value < low.value || at.value > high.value
}
