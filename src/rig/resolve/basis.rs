//! Where the plain numbers of a spec are from: the catalog, or the builder who described it.

use crate::job::{BracketSpec, EngineSpec, Span};
use crate::quantity::Basis;

/// The spec with its plain numbers said to be from this basis.
pub(super) fn engine_from(mut spec: EngineSpec, basis: Basis) -> EngineSpec {
    macro_rules! from {
        ($($field:expr),+ $(,)?) => {$(
            $field = $field.take().map(|reading| reading.from_basis(basis));
        )+};
    }
    macro_rules! spans {
        ($($field:expr),+ $(,)?) => {$(
            $field = $field.take().map(|span| Span {
                from: span.from.from_basis(basis),
                to: span.to.from_basis(basis),
            });
        )+};
    }
    from!(
        spec.power,
        spec.dry_weight,
        spec.running_weight,
        spec.centre_aft,
        spec.centre_above,
        spec.plate_to_propeller_shaft,
        spec.gear_ratio,
        spec.bracket_height,
        spec.transom_angle,
        spec.full_tilt,
        spec.steering,
        spec.centre_distance,
        spec.torque,
        spec.alternator,
        spec.starting,
        spec.fuel_rate,
    );
    spans!(spec.full_throttle, spec.propeller_diameter, spec.transom_thickness, spec.trim);
    for shaft in &mut spec.shafts {
        shaft.rest_to_plate = shaft.rest_to_plate.clone().from_basis(basis);
        from!(shaft.extra_weight);
    }
    if let Some(head) = &mut spec.powerhead {
        from!(head.width, head.height, head.forward_at_full_tilt, head.height_at_full_tilt, head.clearance_each_way,);
    }
    spec
}

/// The same of a bracket.
pub(super) fn bracket_from(mut spec: BracketSpec, basis: Basis) -> BracketSpec {
    macro_rules! from {
        ($($field:ident),+ $(,)?) => {$(
            spec.$field = spec.$field.take().map(|reading| reading.from_basis(basis));
        )+};
    }
    from!(setback, drop, face_height, rated_power, rated_weight, weight, torque, buoyant_volume);
    spec
}
