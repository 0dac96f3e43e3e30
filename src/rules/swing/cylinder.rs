//! `swing/cylinder`

use super::{cures, of_sweeps, unanswered};
use crate::case::Case;
use crate::quantity::Text;
use crate::rules::Finding;
use crate::rules::mend::Remedy;
use crate::rules::rule::rule;

rule! {
    /// The steering cylinder or actuator, with its hoses and the length that it sweeps, against
    /// transom, bracket and well over the whole range of tilt.
    ///
    /// **Why.** It is carried by the tilt tube and swings down into the well as the engine tilts up: a
    /// short well, a thick transom or a high bracket catches it or shears a hose, and the steering
    /// with it.
    ///
    /// **Limit.** 1/2 in at every pose, certified over the whole range.
    ///
    /// **Source.** The cylinder's own sheet where the job gives it; common practice, no source (the
    /// half inch; place and size where it does not).
    ///
    /// **When it warns.** It fails where a cylinder that was described touches; one that was not
    /// described only warns. It warns under half an inch; what clears it is worked out by the same
    /// bound.
    CYLINDER = Swing "swing/cylinder", judge;
}

fn judge(case: &Case) -> Finding {
    match &case.swing().cylinder {
        Ok(all) => of_sweeps(all, |swept| {
            let remedy = cures(case, swept, &[|swing| &swing.cylinder]);
            Remedy {
                words: remedy.words.then(Text::from(" The very cylinder's numbers, under `steering_gear`, decide it.")),
                ..remedy
            }
        }),
        Err(open) => unanswered(open),
    }
}
