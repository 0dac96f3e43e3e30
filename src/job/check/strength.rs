//! What structure, bolts and driving must not say.

use std::ops::RangeInclusive;

use uom::si::f64::Length;

use super::boat::across;
use super::bounds::{Bounds, ON_TRANSOM, TORQUE, bounds, si};
use super::{Checker, study};
use crate::job::{Bolting, Job, Layer, Ran, Structure, Upright};
use crate::quantity::{Dimensioned, Measure, Units};

const LAYER: Bounds = bounds("0.1 mm", "6 in");
const UPRIGHT: Bounds = bounds("2 in", "60 in");
const BELOW: Bounds = bounds("-12 in", "60 in");
const FACE: Bounds = bounds("2 in", "12 ft");
const PLATE: Bounds = bounds("1 in", "30 ft");
const MEMBER: Bounds = bounds("1/8 in", "12 in");
const FILLET: Bounds = bounds("0 in", "6 in");
const CORNER: Bounds = bounds("6 in", "8 ft");
const MOISTURE: Bounds = bounds("0 %", "200 %");
const SPEED: Bounds = bounds("3 mph", "120 mph");
const ACCELERATION: Bounds = bounds("0 gn", "12 gn");
const DISPLACEMENT: Bounds = bounds("50 lb", "60,000 lb");
const PULL: Bounds = bounds("20 lb", "1,000 lb");
const ARM: Bounds = bounds("6 in", "8 ft");
const MOVED: Bounds = bounds("0.1 mm", "3 in");
const WASHER: Bounds = bounds("1/4 in", "8 in");
/// Years of one set of engines, and hours: a workboat's, and to spare.
const YEARS: RangeInclusive<f64> = 0.0..=60.0;
const HOURS: RangeInclusive<f64> = 0.0..=50_000.0;
const WASHER_THICKNESS: Bounds = bounds("0.2 mm", "1 in");
/// Entries that a list may hold: more is a drawing, not a reading.
const MOST_ENTRIES: usize = 200;
/// How far layers may add up beside the transom's thickness: what a caliper and a core sample differ by.
const LAYERS_OFF: &str = "1/4 in";

pub(super) fn strength(checker: &mut Checker, job: &Job) {
    if let Some(structure) = &job.structure {
        self::structure(checker, job, structure);
    }
    if let Some(Ran { years, hours, .. }) = job.ran {
        checker.count("ran.years", years, YEARS);
        checker.count("ran.hours", hours, HOURS);
    }
    if let Some(operating) = &job.operating {
        checker.within("operating.top_speed", operating.top_speed.as_ref(), SPEED);
        checker.within("operating.old_top_speed", operating.old_top_speed.as_ref(), SPEED);
        checker.within("operating.acceleration", operating.acceleration.as_ref(), ACCELERATION);
        checker.within("operating.displacement", operating.displacement.as_ref(), DISPLACEMENT);
    }
    for (side, groups) in [("engines_off", &job.engines_off), ("engines_on", &job.engines_on)] {
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
    layers(checker, "structure.lay_up", &structure.lay_up);
    let sum: f64 = structure.lay_up.iter().map(|layer| layer.thickness.value.si()).sum();
    if let (Some(thickness), false) =
        (checker.sound("transom.thickness", &job.transom.thickness), structure.lay_up.is_empty())
        && (sum - thickness.value.si()).abs() > si::<Length>(LAYERS_OFF)
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
            self::upright(checker, job, &format!("structure.{list}[{i}]"), upright);
        }
    }
    if let Some(stiffener) = &structure.top_stiffener {
        checker.within("structure.top_stiffener.depth", Some(&stiffener.depth), MEMBER);
        checker.within("structure.top_stiffener.height", Some(&stiffener.height), MEMBER);
    }
    if let Some(tabbing) = &structure.tabbing {
        checker.within("structure.tabbing.width", Some(&tabbing.width), MEMBER);
        checker.within("structure.tabbing.thickness", Some(&tabbing.thickness), LAYER);
    }
    checker.within("structure.corner_height", structure.corner_height.as_ref(), CORNER);
    checker.within("structure.moisture", structure.moisture.as_ref(), MOISTURE);
    if let Some(flex) = &structure.flex {
        checker.within("structure.flex.weight", Some(&flex.weight), PULL);
        checker.within("structure.flex.arm", Some(&flex.arm), ARM);
        checker.within("structure.flex.moved", Some(&flex.moved), MOVED);
        if let Some(at) = &flex.engine_at {
            across(checker, "structure.flex.engine_at", at, &job.boat);
        }
    }
}

fn layers(checker: &mut Checker, path: &str, layers: &[Layer]) {
    few(checker, path, layers.len());
    for (i, layer) in layers.iter().enumerate() {
        checker.within(&format!("{path}[{i}].thickness"), Some(&layer.thickness), LAYER);
    }
}

pub(super) fn few(checker: &mut Checker, path: &str, count: usize) {
    if count > MOST_ENTRIES {
        checker.fault(path, format!("{count} entries"), format!("at most {MOST_ENTRIES} are taken"));
    }
}

fn upright(checker: &mut Checker, job: &Job, path: &str, upright: &Upright) {
    across(checker, &format!("{path}.at"), &upright.at, &job.boat);
    checker.within(&format!("{path}.height"), upright.height.as_ref(), UPRIGHT);
    checker.within(&format!("{path}.width"), upright.width.as_ref(), MEMBER);
    checker.within(&format!("{path}.fillet"), upright.fillet.as_ref(), FILLET);
}

fn bolting(checker: &mut Checker, job: &Job, path: &str, bolts: &Bolting) {
    few(checker, &format!("{path}.at"), bolts.at.len());
    let before = checker.faults.len();
    for (i, place) in bolts.at.iter().enumerate() {
        let path = format!("{path}.at[{i}]");
        across(checker, &format!("{path}.at"), &place.at, &job.boat);
        checker.within(&format!("{path}.below"), Some(&place.below), ON_TRANSOM);
        let height = checker.sound("transom.height", &job.transom.height);
        if let Some(height) = height
            && place.below.value >= height.value
            && place.below.value.si() <= si::<Length>(ON_TRANSOM.most)
        {
            checker.fault(
                &format!("{path}.below"),
                format!("{} below the top is outside the transom", Measure::tape(place.below.value).show(Units::Both)),
                format!("the transom is {} high at the centreline", Measure::tape(height.value).show(Units::Both)),
            );
        }
    }
    checker.within(&format!("{path}.washer"), bolts.washer.as_ref(), WASHER);
    checker.within(&format!("{path}.washer_thickness"), bolts.washer_thickness.as_ref(), WASHER_THICKNESS);
    checker.within(&format!("{path}.torque"), bolts.torque.as_ref(), TORQUE);
    if let Some(plate) = &bolts.backing_plate {
        let at = |field: &str| format!("{path}.backing_plate.{field}");
        checker.within(&at("width"), Some(&plate.width), PLATE);
        checker.within(&at("height"), Some(&plate.height), PLATE);
        checker.within(&at("thickness"), Some(&plate.thickness), MEMBER);
    }
    if let Some(face) = &bolts.face {
        let at = |field: &str| format!("{path}.face.{field}");
        checker.within(&at("below"), Some(&face.below), BELOW);
        checker.within(&at("width"), Some(&face.width), FACE);
        checker.within(&at("height"), Some(&face.height), FACE);
        let (top, bottom) = (face.below.value, face.below.value + face.height.value);
        for (i, place) in bolts.at.iter().enumerate() {
            if checker.faults.len() == before && (place.below.value < top || place.below.value > bottom) {
                checker.fault(
                    &format!("{path}.at[{i}].below"),
                    "this bolt stands above or below the face that it holds",
                    "check it against `face`: below and height",
                );
            }
        }
    }
}
