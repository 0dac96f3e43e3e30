//! Colours of the drawings. Chosen so that old and new, boat and water stay apart for colour-blind
//! eyes and in grey: lightness differs, and so do dashes.

/// Lines that were measured.
pub(in super::super) const INK: &str = "#1d2733";
/// Dimension lines, leaders, what is secondary.
pub(in super::super) const SOFT: &str = "#5a6672";
/// Hull and transom.
pub(in super::super) const HULL: &str = "#e9edf0";
/// Brackets.
pub(in super::super) const BRACKET: &str = "#d3dae0";
/// Engines.
pub(in super::super) const ENGINE: &str = "#f7f8f9";
/// What is new, and what is right.
pub(in super::super) const NEW: &str = "#0a5a88";
/// What is old.
pub(in super::super) const OLD: &str = "#8a5200";
/// Where something ought to be.
pub(in super::super) const WINDOW: &str = "#bfe0f0";
/// The paper.
pub(in super::super) const PAPER: &str = "#fff";
/// Water.
pub(in super::super) const WATER: &str = "#1f7a8c";
/// Where something is nearest, weakest, worst.
pub(in super::super) const ALERT: &str = "#a32a06";
