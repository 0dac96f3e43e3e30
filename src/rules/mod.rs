//! The rules: a folder a family, a file a rule, and here the one list of them all.

#![allow(clippy::result_large_err, reason = "a finding is made once a rule, whether early or late")]

mod cautions;
mod finding;
mod fit;
mod height;
mod power;
pub mod rule;
mod stern;
mod strength;
mod swing;
mod weight;

pub use cautions::cautions;
pub use finding::{Finding, Judgement, Limit, Verdict};
pub use rule::{Family, Judged, Rule};
pub(crate) use strength::DESIGN_FACTOR;

use crate::case::Case;

/// Every rule, in the order of the report.
pub const ALL: &[&Rule] = &[
    &power::PLATE_LIMIT,
    &power::FORMULA_LIMIT,
    &power::TOO_LITTLE,
    &power::MATCHED_PAIR,
    &weight::TRANSOM_RATING,
    &weight::RATED_BASIS,
    &weight::BRACKET_RATING,
    &weight::PLATE_PERSONS,
    &weight::CAPACITY_LEFT,
    &weight::SWAMPED_FLOTATION,
    &weight::OLD_TO_NEW,
    &height::SHAFT_MATCH,
    &height::PLATE_WINDOW,
    &height::TRANSOM_ANGLE,
    &fit::BOLT_PATTERN,
    &fit::TOP_EDGE,
    &fit::TRANSOM_THICKNESS,
    &fit::CENTRE_DISTANCE,
    &stern::TRIM_CHANGE,
    &stern::WELL_EDGE,
    &stern::SCUPPERS,
    &stern::FREEBOARD,
    &stern::LIST,
    &stern::METACENTRIC_HEIGHT,
    &stern::CREW_TO_SIDE,
    &stern::CAPACITY_FROM_SHAPE,
    &stern::BRACKET_IMMERSION,
    &stern::PLATE_IMMERSED,
    &swing::FULL_TILT,
    &swing::STEERING_LOCK,
    &swing::NEIGHBOUR,
    &swing::CYLINDER,
    &swing::TIE_BAR,
    &swing::LIFTS_CLEAR,
    &swing::GROUND,
    &swing::PERMITTED_RANGE,
    &strength::BOLTS_TENSION,
    &strength::BOLTS_SHEAR,
    &strength::BOLTS_COMBINED,
    &strength::BOLT_TORQUE,
    &strength::CORE_BEARING,
    &strength::WASHER_CRUSH,
    &strength::PUNCHING,
    &strength::TOP_EDGE_TEAR,
    &strength::BENDING,
    &strength::CORE_SHEAR,
    &strength::PANEL_DEFLECTION,
    &strength::BRACKET_MOMENT,
    &strength::KNEES,
    &strength::SOFT_CORE,
    &strength::CORE_UNDER_BOLTS,
    &strength::TABBING,
    &strength::SIGNS,
];

/// The rule of this id.
pub fn find(id: &str) -> Option<&'static Rule> {
    ALL.iter().copied().find(|rule| rule.id == id)
}

/// Judges a case by every rule. A pure function: the same rig gives the same findings.
pub fn judge(case: &Case) -> Vec<Judged> {
    ALL.iter().map(|rule| Judged { rule, finding: (rule.judge)(case) }).collect()
}
