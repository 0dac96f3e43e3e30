//! `swing/tie-bar`

use super::{cures, of_sweeps, unanswered};
use crate::case::Case;
use crate::quantity::Text;
use crate::rules::Finding;
use crate::rules::mend::Remedy;
use crate::rules::rule::rule;

rule! {
    /// The bar between two engines against transom, bracket and well, with the engines tilted together
    /// and alone, from lock to lock.
    ///
    /// **Why.** It runs across the well forward of both tilt tubes and dips into it as an engine
    /// tilts; a bar that catches bends, and both engines lose their steering.
    ///
    /// **Limit.** 1/2 in at every pose, certified over tilt, tilt and steering. The bar is taken as
    /// straight between its pins; engines themselves are not looked at against it.
    ///
    /// **Source.** The bar's own sheet where the job gives it; common practice, no source (the half
    /// inch; place and size where it does not).
    ///
    /// **When it warns.** It fails where a bar that was described touches; one that was not described
    /// only warns. It warns under half an inch; what clears it is worked out by the same bound.
    TIE_BAR = Swing "swing/tie-bar", judge;
}

fn judge(case: &Case) -> Finding {
    match &case.swing().tie_bar {
        Ok(all) => of_sweeps(all, |swept| {
            let remedy = cures(case, swept, &[|swing| &swing.tie_bar]);
            Remedy {
                words: remedy.words.then(Text::from(" The very bar's numbers, under `steering_gear`, decide it.")),
                ..remedy
            }
        }),
        Err(open) => unanswered(open),
    }
}
