//! `fit/top-edge`

use super::{ON_A_BRACKET, on_brackets_only};
use crate::case::Case;
use crate::job::TopEdge;
use crate::physics::fit;
use crate::quantity::{Dimensioned, Measure, Text, inches, say};
use crate::rules::rule::{need, rule};
use crate::rules::{Finding, Limit, Verdict};

rule! {
    /// The upper bolts' distance from the transom's top.
    ///
    /// **Why.** The upper bolts carry the pull of the engine; too near the edge they tear out upward,
    /// and the core above them has no laminate to hold it.
    ///
    /// **Limit.** 1-7/8 in below the top, and never less than 1-3/4 in.
    ///
    /// **Source.** Trade association bolt pattern in general use.
    ///
    /// **When it warns.** Below 1-3/4 in it fails: fill the holes and drill lower, or build the top
    /// up with the builder's consent. A top edge whose core shows must be sealed first.
    TOP_EDGE = Fit "fit/top-edge", judge;
}

fn judge(case: &Case) -> Finding {
    let rig = case.rig;
    if on_brackets_only(rig) {
        return Finding::not_applicable(Text::from(ON_A_BRACKET));
    }
    need!(_after = rig.after, upper = rig.transom.upper_holes);
    let wanted = inches(fit::UPPER_BELOW_TOP_IN);
    let least = inches(fit::UPPER_BELOW_TOP_LEAST_IN);
    let found = Measure::tape(upper.value);
    let limit = Limit::AtLeast(Measure::tape(least));
    let bare = rig.transom.top_edge == Some(TopEdge::Bare);
    let finding = if least.exceeds(upper.value) {
        Finding::new(
            Verdict::Fail,
            say!(
                "The upper bolts stand {} below the transom's top, under the {} that must never be undercut.",
                found,
                Measure::tape(least)
            ),
        )
        .remedy(say!("Fill them and drill {} below the top.", Measure::tape(wanted)))
    } else if wanted.exceeds(upper.value) || bare {
        let why = if bare {
            Text::from("The core shows at the transom's top edge, above the upper bolts.")
        } else {
            say!("The upper bolts stand {} below the transom's top; the pattern has {}.", found, Measure::tape(wanted))
        };
        Finding::new(Verdict::Warn, why).remedy(Text::from(
            "Seal the top edge and the holes, and look at the laminate above the bolts at every service.",
        ))
    } else {
        Finding::new(Verdict::Pass, say!("The upper bolts stand {} below the transom's top.", found))
    };
    finding.against(found, limit)
}
