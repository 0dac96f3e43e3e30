//! What the figures of an engine or a bracket must not say: of a job's own, and of a catalog's entries.

use super::Checker;
use super::bounds::within;
use crate::job::{BracketSpec, EngineSpec};

/// Everything about an engine's figures that cannot be; for catalogs.
pub fn check_engine(checker: &mut Checker, path: &str, spec: &EngineSpec) {
    within(checker, path, spec);
    weights(checker, path, spec);
}

/// An engine's weights against each other.
pub(super) fn weights(checker: &mut Checker, path: &str, spec: &EngineSpec) {
    if let (Some(dry), Some(running)) = (&spec.dry_weight, &spec.running_weight)
        && running.value < dry.value
    {
        checker.fault(&format!("{path}.running_weight"), "lighter running than dry", "check both weights");
    }
}

/// Everything about a bracket's figures that cannot be; for catalogs.
pub fn check_bracket(checker: &mut Checker, path: &str, spec: &BracketSpec) {
    within(checker, path, spec);
}
