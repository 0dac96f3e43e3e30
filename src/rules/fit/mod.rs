//! Fit: can the engines be bolted there, and have they room?

mod bolt_pattern;
mod centre_distance;
mod top_edge;
mod transom_thickness;

pub use bolt_pattern::BOLT_PATTERN;
pub use centre_distance::CENTRE_DISTANCE;
pub use top_edge::TOP_EDGE;
pub use transom_thickness::TRANSOM_THICKNESS;

use crate::rig::{Engine, Rig};

/// Engines that are bolted to the transom itself: those on a bracket are bolted to the bracket.
fn on_the_transom(rig: &Rig) -> Vec<&Engine> {
    rig.after.groups.iter().filter(|group| group.bracket.is_none()).flat_map(|group| &group.engines).collect()
}

/// Whether the engines hang on a bracket only, so that the transom's own bolts are not theirs.
fn on_brackets_only(rig: &Rig) -> bool {
    !rig.after.is_empty() && on_the_transom(rig).is_empty()
}

/// Why a rule about the transom's own bolts has nothing to judge.
const ON_A_BRACKET: &str = "The engines hang on a bracket: its maker's template gives its bolts and their places, and strength rules apply to them.";
