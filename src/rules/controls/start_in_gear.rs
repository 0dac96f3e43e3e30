//! `controls/start-in-gear`

use super::told;
use crate::case::Case;
use crate::quantity::Text;
use crate::rules::mend::{self, Change};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Verdict};

rule! {
    /// Whether an engine can be started in gear.
    ///
    /// **Why.** An engine that starts in gear throws people overboard.
    ///
    /// **Limit.** It cannot.
    ///
    /// **Source.** 33 CFR 183 subpart L, start-in-gear protection (from memory; check the clause before relying on it).
    ///
    /// **When it warns.** It fails where it can: adjust or replace the control before she is used.
    START_IN_GEAR = Controls "controls/start-in-gear", judge;
}

fn judge(case: &Case) -> Judgement {
    let controls = told(case)?;
    let starts = controls.starts_in_gear().ask()?;
    Ok(if *starts {
        Finding::new(Verdict::Fail, Text::from("The engine cranks with the lever in gear."))
            .remedy(mend::change(
                "Adjust the shift and its neutral switch, or replace the control; do not use her before.",
                [Change::to("rigging.controls.starts_in_gear", "false")],
            ))
            .buys("neutral switch, or control", Text::from("one for the engine that cranks"))
    } else {
        Finding::new(Verdict::Pass, Text::from("The engine does not crank in gear."))
    })
}
