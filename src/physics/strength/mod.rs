//! What the engine hangs and drives into the transom, and what each part makes of it.

pub mod bolts;
mod contact;
pub mod knockdown;
pub mod loads;
pub mod panel;
pub mod seam;

pub use contact::panel_loads;
