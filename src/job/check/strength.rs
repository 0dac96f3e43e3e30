//! What structure, bolts and driving must not say.

use uom::si::f64::Length;

use super::boat::across;
use super::{Checker, study};
use crate::job::{Bolting, Job, Structure};
use crate::quantity::{Dimensioned, Measure, Units};
use crate::reading::{Amount, inch};

/// How far layers may add up beside the transom's thickness: what a caliper and a core sample differ by.
const LAYERS_OFF: Amount = inch(0.25);

pub(super) fn strength(checker: &mut Checker, job: &Job) {
    if let Some(structure) = &job.structure {
        self::structure(checker, job, structure);
    }
    for (side, groups) in super::sides(job) {
        for (i, group) in groups.iter().enumerate() {
            if let Some(bolts) = &group.bolts {
                bolting(checker, job, &format!("{side}[{i}].bolts"), bolts);
            }
        }
    }
    study::panel(checker, job);
    study::bolts(checker, job);
}

fn structure(checker: &mut Checker, job: &Job, structure: &Structure) {
    let sum: f64 = structure.lay_up.iter().map(|layer| layer.thickness.value.si()).sum();
    if let (Some(thickness), false) =
        (checker.sound("transom.thickness", &job.transom.thickness), structure.lay_up.is_empty())
        && (sum - thickness.value.si()).abs() > LAYERS_OFF.si()
    {
        checker.fault(
            "structure.lay_up",
            format!(
                "the layers add up to {}, and the transom is {} thick",
                Measure::tape(Length::from_si(sum)).show(Units::Both),
                Measure::tape(thickness.value).show(Units::Both)
            ),
            "check the layers against `transom.thickness`",
        );
    }
    for (list, uprights) in [
        ("knees", structure.knees.as_deref().unwrap_or_default()),
        ("stringers", structure.stringers.as_deref().unwrap_or_default()),
    ] {
        for (i, upright) in uprights.iter().enumerate() {
            across(checker, &format!("structure.{list}[{i}].at"), &upright.at, &job.boat);
        }
    }
    if let Some(at) = structure.flex.as_ref().and_then(|flex| flex.engine_at.as_ref()) {
        across(checker, "structure.flex.engine_at", at, &job.boat);
    }
}

fn bolting(checker: &mut Checker, job: &Job, path: &str, bolts: &Bolting) {
    for (i, place) in bolts.at.iter().enumerate() {
        let path = format!("{path}.at[{i}]");
        across(checker, &format!("{path}.at"), &place.at, &job.boat);
    }
    if let Some(face) = &bolts.face {
        let (top, bottom) = (face.below.value, face.below.value + face.height.value);
        for (i, place) in bolts.at.iter().enumerate() {
            let path = format!("{path}.at[{i}].below");
            let told = checker.faults.iter().any(|fault| fault.path.starts_with(path.trim_end_matches("below")));
            if !told && (place.below.value < top || place.below.value > bottom) {
                checker.fault(
                    &path,
                    "this bolt stands above or below the face that it holds",
                    "check it against `face`: below and height",
                );
            }
        }
    }
}
