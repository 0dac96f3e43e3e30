//! Height: does the shaft suit the transom, and where does the plate come to stand?

mod plate_window;
mod shaft_match;
mod transom_angle;

pub(super) use plate_window::PLATE_WINDOW;
pub(super) use shaft_match::SHAFT_MATCH;
pub(super) use transom_angle::TRANSOM_ANGLE;
