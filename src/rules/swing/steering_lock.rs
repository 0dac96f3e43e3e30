//! `swing/steering-lock`

use super::{cures, of_sweeps, unanswered};
use crate::case::Case;
use crate::rules::Finding;
use crate::rules::rule::rule;

rule! {
    /// Each engine where it runs, from trimmed in to trimmed out, steered from lock to lock, against
    /// everything on the boat.
    ///
    /// **Why.** An engine that touches here cannot be steered as far as it should under way: the wheel
    /// stops against the boat instead of the engine's own stop, and the steering breaks.
    ///
    /// **Limit.** 1/2 in at every pose, certified over the whole range.
    ///
    /// **Source.** The engine's mounting sheet (trim range, steering, width); common practice, no
    /// source (the half inch).
    ///
    /// **When it warns.** It fails where something touches, warns under half an inch; what clears it is
    /// worked out by the same bound.
    STEERING_LOCK = Swing "swing/steering-lock", judge;
}

fn judge(case: &Case) -> Finding {
    match &case.swing().lock {
        Ok(all) => of_sweeps(all, |swept| cures(case, swept, &[|swing| &swing.lock])),
        Err(open) => unanswered(open),
    }
}
