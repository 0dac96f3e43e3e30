//! What the figures of an engine or a bracket must not say: of a job's own, and of a catalog's entries.

use uom::si::f64::Angle;

use super::Checker;
use super::bounds::{
    BOAT_POWER, BRACKET_FACE, CURRENT, DROP, ENGINE_POWER, ENGINE_WEIGHT, FUEL_RATE, GEAR, HOLE_ROWS, ITEM_WEIGHT,
    LOAD, OFFSET, ON_BRACKET, ROTATION, SETBACK, SHAFT, SMALL_LENGTH, STEER, THICKNESS, TILT, TORQUE, TRANSOM_ANGLE,
    TRIM, VOLUME,
};
use crate::job::{BracketSpec, EngineSpec, TiltTube};

/// Everything about an engine's figures that cannot be; for catalogs too.
pub fn check_engine(checker: &mut Checker, path: &str, spec: &EngineSpec) {
    let at = |field: &str| format!("{path}.{field}");
    checker.within(&at("power"), spec.power.as_ref(), ENGINE_POWER);
    checker.span(&at("full_throttle"), spec.full_throttle.as_ref(), ROTATION);
    checker.within(&at("dry_weight"), spec.dry_weight.as_ref(), ENGINE_WEIGHT);
    checker.within(&at("running_weight"), spec.running_weight.as_ref(), ENGINE_WEIGHT);
    if let (Some(dry), Some(running)) = (&spec.dry_weight, &spec.running_weight)
        && running.value < dry.value
    {
        checker.fault(&at("running_weight"), "lighter running than dry", "check both weights");
    }
    checker.within(&at("centre_aft"), spec.centre_aft.as_ref(), OFFSET);
    checker.within(&at("centre_above"), spec.centre_above.as_ref(), OFFSET);
    for (i, shaft) in spec.shafts.iter().enumerate() {
        let path = at(&format!("shafts[{i}]"));
        checker.within(&format!("{path}.name"), Some(&shaft.name), SHAFT);
        checker.within(&format!("{path}.rest_to_plate"), Some(&shaft.rest_to_plate), SHAFT);
        checker.within(&format!("{path}.extra_weight"), shaft.extra_weight.as_ref(), ITEM_WEIGHT);
    }
    checker.within(&at("plate_to_propeller_shaft"), spec.plate_to_propeller_shaft.as_ref(), SMALL_LENGTH);
    checker.within(&at("gear_ratio"), spec.gear_ratio.as_ref(), GEAR);
    checker.span(&at("propeller_diameter"), spec.propeller_diameter.as_ref(), SMALL_LENGTH);
    checker.within(&at("bracket_height"), spec.bracket_height.as_ref(), BRACKET_FACE);
    checker.count(&at("hole_rows"), spec.hole_rows, HOLE_ROWS);
    checker.span(&at("transom_thickness"), spec.transom_thickness.as_ref(), THICKNESS);
    checker.within(&at("transom_angle"), spec.transom_angle.as_ref(), TRANSOM_ANGLE);
    checker.span::<Angle>(&at("trim"), spec.trim.as_ref(), TRIM);
    checker.within(&at("full_tilt"), spec.full_tilt.as_ref(), TILT);
    checker.within(&at("steering"), spec.steering.as_ref(), STEER);
    checker.within(&at("centre_distance"), spec.centre_distance.as_ref(), SMALL_LENGTH);
    checker.within(&at("torque"), spec.torque.as_ref(), TORQUE);
    tilt_tube(checker, &at("tilt_tube"), spec.tilt_tube.as_ref());
    if let Some(head) = &spec.powerhead {
        let at = |field: &str| format!("{path}.powerhead.{field}");
        checker.within(&at("width"), head.width.as_ref(), SMALL_LENGTH);
        checker.within(&at("height"), head.height.as_ref(), SMALL_LENGTH);
        checker.within(&at("forward_at_full_tilt"), head.forward_at_full_tilt.as_ref(), OFFSET);
        checker.within(&at("height_at_full_tilt"), head.height_at_full_tilt.as_ref(), SMALL_LENGTH);
        checker.within(&at("clearance_each_way"), head.clearance_each_way.as_ref(), SMALL_LENGTH);
    }
    checker.within(&at("alternator"), spec.alternator.as_ref(), CURRENT);
    checker.within(&at("starting"), spec.starting.as_ref(), CURRENT);
    checker.within(&at("fuel_rate"), spec.fuel_rate.as_ref(), FUEL_RATE);
}

/// Everything about a bracket's figures that cannot be; for catalogs too.
pub fn check_bracket(checker: &mut Checker, path: &str, spec: &BracketSpec) {
    let at = |field: &str| format!("{path}.{field}");
    checker.within(&at("setback"), spec.setback.as_ref(), SETBACK);
    checker.within(&at("drop"), spec.drop.as_ref(), DROP);
    checker.within(&at("face_height"), spec.face_height.as_ref(), BRACKET_FACE);
    checker.within(&at("rated_power"), spec.rated_power.as_ref(), BOAT_POWER);
    checker.within(&at("rated_weight"), spec.rated_weight.as_ref(), LOAD);
    checker.count(&at("engines"), spec.engines, 1..=8);
    checker.within(&at("weight"), spec.weight.as_ref(), ITEM_WEIGHT);
    checker.within(&at("torque"), spec.torque.as_ref(), TORQUE);
    checker.within(&at("buoyant_volume"), spec.buoyant_volume.as_ref(), VOLUME);
}

pub(super) fn tilt_tube(checker: &mut Checker, path: &str, tube: Option<&TiltTube>) {
    let Some(tube) = tube else { return };
    checker.within(&format!("{path}.forward"), Some(&tube.forward), ON_BRACKET);
    checker.within(&format!("{path}.above"), Some(&tube.above), ON_BRACKET);
}
