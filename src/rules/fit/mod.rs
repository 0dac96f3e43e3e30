//! Fit: can the engines be bolted there, and have they room?

mod bolt_pattern;
mod centre_distance;
mod top_edge;
mod transom_thickness;

use crate::case::is_clamped;
use crate::quantity::Text;
use crate::rig::{Engine, Group, Rig};
use crate::rules::Rule;

/// Its rules, in the order of the report.
pub(super) const RULES: &[&Rule] = &[
    &bolt_pattern::BOLT_PATTERN,
    &top_edge::TOP_EDGE,
    &transom_thickness::TRANSOM_THICKNESS,
    &centre_distance::CENTRE_DISTANCE,
];

/// Engines that hang on the transom itself: those on a bracket are bolted to the bracket.
fn on_the_transom(rig: &Rig) -> impl Iterator<Item = (&Group, &Engine)> {
    rig.after.engines().filter(|(group, _)| group.bracket.is_none())
}

/// Engines whose bolts go through the transom: not those on a bracket, nor small ones on clamp screws.
fn bolted(rig: &Rig) -> Vec<(&Group, &Engine)> {
    on_the_transom(rig).filter(|(group, engine)| !is_clamped(group, engine)).collect()
}

/// Why the rules about the transom's own bolts have nothing to judge, where they have not.
fn no_bolts(rig: &Rig) -> Option<Text> {
    if rig.after.is_empty() || !bolted(rig).is_empty() {
        return None;
    }
    Some(Text::from(if on_brackets_only(rig) { ON_A_BRACKET } else { ON_CLAMP_SCREWS }))
}

/// Whether the engines hang on a bracket only, so that the transom's own bolts are not theirs.
fn on_brackets_only(rig: &Rig) -> bool {
    !rig.after.is_empty() && on_the_transom(rig).next().is_none()
}

/// Why a rule about the pattern has nothing to say of small engines.
const ON_CLAMP_SCREWS: &str = "An engine of this size hangs on its clamp screws, not on the bolt pattern: set them well below the top, and follow its mounting sheet for the bolts or the chain that keep it there.";

/// Why a rule about the transom's own bolts has nothing to judge.
const ON_A_BRACKET: &str = "The engines hang on a bracket: its maker's template gives its bolts and their places, and strength rules apply to them.";
