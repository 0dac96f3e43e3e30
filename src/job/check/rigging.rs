//! What is rigged cannot be just anything.

use super::{Checker, bounds};
use crate::job::Job;
use crate::job::rigging::{Bends, Chosen, CylinderSpec};
use crate::quantity::Dimensioned;
use crate::reading::Part;

/// Every reading of a catalog's entry lies within its bounds.
pub fn check_rigged(checker: &mut Checker, path: &str, entry: &impl Part) {
    bounds::within(checker, path, entry);
}

/// What else of it cannot be.
pub(super) fn rigging(checker: &mut Checker, job: &Job) {
    for (path, bends) in job.rigging.ways() {
        ways(checker, &path, bends);
    }
    if let Some(cylinder) = job.rigging.steering.as_ref().and_then(|steering| steering.cylinder.spec()) {
        rod(checker, cylinder);
    }
}

/// Between legs stand bends: one fewer than legs at most.
fn ways(checker: &mut Checker, path: &str, (legs, bends): Bends<'_>) {
    if !bends.is_empty() && bends.len() >= legs.len() {
        checker.fault(
            &format!("{path}.bends"),
            format!("{} bends cannot stand between {} legs", bends.len(), legs.len()),
            "legs run from corner to corner, so there is one leg more than bends",
        );
    }
}

fn rod(checker: &mut Checker, cylinder: &CylinderSpec) {
    if let (Some(bore), Some(rod)) = (&cylinder.bore, &cylinder.rod)
        && rod.value.si() >= bore.value.si()
    {
        checker.fault(
            "rigging.steering.cylinder.described.rod",
            "a rod as thick as its barrel leaves nothing to push on",
            "across the rod, where it comes out",
        );
    }
}
