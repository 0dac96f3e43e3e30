//! What structure, bolts, driving and studies of strength must not say.

use uom::si::f64::{Length, Ratio};

use super::{Bounds, Checker, WIDTH, across, bounds};
use crate::job::{
    Bolting, Bond, Job, Layer, PanelLoad, PanelPlace, PanelShape, PanelStiffness, Structure,
    Upright,
};
use crate::quantity::{Dimensioned, Measure, Reading, Units};

const LAYER: Bounds = bounds("0.1 mm", "6 in");
const UPRIGHT: Bounds = bounds("2 in", "60 in");
const BELOW: Bounds = bounds("-12 in", "60 in");
const FACE: Bounds = bounds("2 in", "12 ft");
const MEMBER: Bounds = bounds("1/8 in", "12 in");
const CORNER: Bounds = bounds("6 in", "8 ft");
const MOISTURE: Bounds = bounds("0 %", "200 %");
const SPEED: Bounds = bounds("3 mph", "120 mph");
const ACCELERATION: Bounds = bounds("0 gn", "12 gn");
const DISPLACEMENT: Bounds = bounds("50 lb", "60,000 lb");
const PULL: Bounds = bounds("20 lb", "1,000 lb");
const ARM: Bounds = bounds("6 in", "8 ft");
const MOVED: Bounds = bounds("0.1 mm", "3 in");
const WASHER: Bounds = bounds("1/4 in", "8 in");
const TORQUE: Bounds = bounds("0.1 lbf·ft", "300 lbf·ft");
const STUDY_LENGTH: Bounds = bounds("1 mm", "100 m");
const STUDY_PLACE: Bounds = bounds("-100 m", "100 m");
const STUDY_THICKNESS: Bounds = bounds("0.01 mm", "1 m");
const MODULUS: Bounds = bounds("0.01 MPa", "2,000 GPa");
const POISSON: Bounds = bounds("0", "0.499");
const STRESS: Bounds = bounds("0.001 MPa", "10,000 MPa");
const ACCURACY: Bounds = bounds("0.01 %", "50 %");
/// Entries that a list may hold: more is a drawing, not a reading.
const MOST_ENTRIES: usize = 200;
/// How far layers may add up beside the transom's thickness: what a caliper and a core sample differ by.
const LAYERS_OFF: &str = "1/4 in";

pub(super) fn strength(checker: &mut Checker, job: &Job) {
    if let Some(structure) = &job.structure {
        self::structure(checker, job, structure);
    }
    if let Some(operating) = &job.operating {
        checker.within("operating.top_speed", operating.top_speed.as_ref(), SPEED);
        checker.within(
            "operating.old_top_speed",
            operating.old_top_speed.as_ref(),
            SPEED,
        );
        checker.within(
            "operating.acceleration",
            operating.acceleration.as_ref(),
            ACCELERATION,
        );
        checker.within(
            "operating.displacement",
            operating.displacement.as_ref(),
            DISPLACEMENT,
        );
    }
    for (side, groups) in [
        ("engines_off", &job.engines_off),
        ("engines_on", &job.engines_on),
    ] {
        for (i, group) in groups.iter().enumerate() {
            if let Some(bolts) = &group.bolts {
                bolting(checker, job, &format!("{side}[{i}].bolts"), bolts);
            }
        }
    }
    panel_study(checker, job);
    bolt_study(checker, job);
}

fn structure(checker: &mut Checker, job: &Job, structure: &Structure) {
    layers(checker, "structure.lay_up", &structure.lay_up);
    let sum: f64 = structure
        .lay_up
        .iter()
        .map(|layer| layer.thickness.value.si())
        .sum();
    if let (Some(thickness), false) = (
        checker.sound("transom.thickness", &job.transom.thickness),
        structure.lay_up.is_empty(),
    ) && (sum - thickness.value.si()).abs() > super::si::<Length>(LAYERS_OFF)
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
        ("stringers", structure.stringers.as_slice()),
    ] {
        for (i, upright) in uprights.iter().enumerate() {
            self::upright(checker, job, &format!("structure.{list}[{i}]"), upright);
        }
    }
    let carried = structure.knees.iter().flatten().count() + structure.stringers.len() > 1;
    if structure.sides == Some(Bond::Loose) && structure.bottom == Some(Bond::Loose) && !carried {
        checker.fault(
            "structure",
            "nothing holds the transom: sides and bottom are loose, and there are not two knees or stringers",
            "say what holds it: sides: bonded, bottom: bonded, or knees: [(at: port(\"12 in\")), …]",
        );
    }
    if let Some(stiffener) = &structure.top_stiffener {
        checker.within(
            "structure.top_stiffener.depth",
            Some(&stiffener.depth),
            MEMBER,
        );
        checker.within(
            "structure.top_stiffener.height",
            Some(&stiffener.height),
            MEMBER,
        );
    }
    checker.within(
        "structure.corner_height",
        structure.corner_height.as_ref(),
        CORNER,
    );
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
        checker.within(
            &format!("{path}[{i}].thickness"),
            Some(&layer.thickness),
            LAYER,
        );
    }
}

fn few(checker: &mut Checker, path: &str, count: usize) {
    if count > MOST_ENTRIES {
        checker.fault(
            path,
            format!("{count} entries"),
            format!("at most {MOST_ENTRIES} are taken"),
        );
    }
}

fn upright(checker: &mut Checker, job: &Job, path: &str, upright: &Upright) {
    across(checker, &format!("{path}.at"), &upright.at, &job.boat);
    checker.within(&format!("{path}.height"), upright.height.as_ref(), UPRIGHT);
}

fn bolting(checker: &mut Checker, job: &Job, path: &str, bolts: &Bolting) {
    few(checker, &format!("{path}.at"), bolts.at.len());
    let before = checker.faults.len();
    for (i, place) in bolts.at.iter().enumerate() {
        let path = format!("{path}.at[{i}]");
        across(checker, &format!("{path}.at"), &place.at, &job.boat);
        checker.within(
            &format!("{path}.below"),
            Some(&place.below),
            super::ON_TRANSOM,
        );
        let height = checker.sound("transom.height", &job.transom.height);
        if let Some(height) = height
            && place.below.value >= height.value
            && place.below.value.si() <= super::si::<Length>("60 in")
        {
            checker.fault(
                &format!("{path}.below"),
                format!(
                    "{} below the top is outside the transom",
                    Measure::tape(place.below.value).show(Units::Both)
                ),
                format!(
                    "the transom is {} high at the centreline",
                    Measure::tape(height.value).show(Units::Both)
                ),
            );
        }
    }
    checker.within(&format!("{path}.washer"), bolts.washer.as_ref(), WASHER);
    checker.within(&format!("{path}.torque"), bolts.torque.as_ref(), TORQUE);
    if let Some(plate) = &bolts.backing_plate {
        let at = |field: &str| format!("{path}.backing_plate.{field}");
        checker.within(&at("width"), Some(&plate.width), WIDTH);
        checker.within(&at("height"), Some(&plate.height), FACE);
        checker.within(&at("thickness"), Some(&plate.thickness), MEMBER);
    }
    if let Some(face) = &bolts.face {
        let at = |field: &str| format!("{path}.face.{field}");
        checker.within(&at("below"), Some(&face.below), BELOW);
        checker.within(&at("width"), Some(&face.width), FACE);
        checker.within(&at("height"), Some(&face.height), FACE);
        let (top, bottom) = (face.below.value, face.below.value + face.height.value);
        for (i, place) in bolts.at.iter().enumerate() {
            if checker.faults.len() == before
                && (place.below.value < top || place.below.value > bottom)
            {
                checker.fault(
                    &format!("{path}.at[{i}].below"),
                    "this bolt stands above or below the face that it holds",
                    "check it against `face`: below and height",
                );
            }
        }
    }
}

fn place(checker: &mut Checker, path: &str, place: &PanelPlace) {
    checker.within(&format!("{path}.across"), Some(&place.across), STUDY_PLACE);
    checker.within(&format!("{path}.up"), Some(&place.up), STUDY_PLACE);
}

fn panel_study(checker: &mut Checker, job: &Job) {
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
            format!(
                "{} edges are held, and the panel has {corners}",
                study.edges.len()
            ),
            "one of free, simple, clamped for each edge, in order",
        );
    }
    match &study.stiffness {
        PanelStiffness::Plate {
            modulus,
            poisson,
            thickness,
            yield_stress,
        } => {
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
        checker.fault(
            "panel_study.loads",
            "nothing bears on the panel",
            "give a pressure, a patch or a point",
        );
    }
    for (i, load) in study.loads.iter().enumerate() {
        let at = |field: &str| format!("panel_study.loads[{i}].{field}");
        match load {
            PanelLoad::Pressure(_) => {}
            PanelLoad::Patch {
                across,
                up,
                width,
                height,
                ..
            } => {
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

fn bolt_study(checker: &mut Checker, job: &Job) {
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
    for (field, reading) in [
        ("bottom", &face.bottom),
        ("top", &face.top),
        ("starboard", &face.starboard),
        ("port", &face.port),
    ] {
        checker.within(
            &format!("bolt_study.face.{field}"),
            Some(reading),
            STUDY_PLACE,
        );
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
        if outside(&bolt.up, &face.bottom, &face.top)
            || outside(&bolt.across, &face.starboard, &face.port)
        {
            checker.fault(
                &path,
                "this bolt stands outside the face that it holds",
                "check it against `face`",
            );
        }
    }
    place(checker, "bolt_study.at", &study.at);
}

fn outside(at: &Reading<Length>, low: &Reading<Length>, high: &Reading<Length>) -> bool {
    at.value < low.value || at.value > high.value
}
