//! Height: does the shaft suit the transom, and where does the plate come to stand?

mod plate_window;
mod shaft_match;
mod transom_angle;

use crate::rules::Rule;

/// Its rules, in the order of the report.
pub(super) const RULES: &[&Rule] =
    &[&shaft_match::SHAFT_MATCH, &plate_window::PLATE_WINDOW, &transom_angle::TRANSOM_ANGLE];
