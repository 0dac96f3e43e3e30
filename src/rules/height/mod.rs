//! Height: does the shaft suit the transom, and where does the plate come to stand?

mod plate_window;
mod shaft_match;
mod transom_angle;

pub use plate_window::PLATE_WINDOW;
pub use shaft_match::SHAFT_MATCH;
pub use transom_angle::TRANSOM_ANGLE;
