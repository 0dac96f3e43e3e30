//! `controls/cut-off`

use super::told;
use crate::case::Case;
use crate::job::rigging::CutOff;
use crate::quantity::{Dimensioned, Measure, Style, Text, feet, horsepower, say};
use crate::reading::All;
use crate::rules::mend::{self, Change};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Verdict};

rule! {
    /// The engine cut-off switch and its link: a lanyard or a wireless fob.
    ///
    /// **Why.** A boat whose operator was thrown comes round in a circle, over him.
    ///
    /// **Limit.** In the US, switch and link on boats under 26 ft with 3 hp and more; elsewhere good practice.
    ///
    /// **Source.** 46 USC 4312 and 33 CFR 175 (from memory; check the clause before relying on it).
    ///
    /// **When it warns.** It fails where there is no switch, and warns where the link is missing. It does not apply from 26 ft on or under
    /// 3 hp.
    CUT_OFF = Controls "controls/cut-off", judge;
}

/// Boats shorter than this, with engines of this power. Source: 46 USC 4312, values from memory: ft, hp.
const UNDER_FT: f64 = 26.0;
const FROM_HP: f64 = 3.0;

fn judge(case: &Case) -> Judgement {
    let controls = told(case)?;
    let (length, cut_off) = (case.rig.job.boat.length().ask(), controls.cut_off().ask()).all()?;
    if !feet(UNDER_FT).exceeds(length.value) {
        return Ok(Finding::not_applicable(say!(
            "The US rule covers boats under 26 ft, and she is {}.",
            Measure::styled(length.value, Style::FeetInches)
        )));
    }
    let weak =
        case.rig.after.main_power().is_ok_and(|all| all.iter().all(|(_, power)| horsepower(FROM_HP).exceeds(*power)));
    if weak {
        return Ok(Finding::not_applicable(Text::from("The US rule covers engines from 3 hp.")));
    }
    Ok(match cut_off {
        CutOff::WithLink => {
            Finding::new(Verdict::Pass, Text::from("Switch and link are there; wear the link on plane."))
        }
        CutOff::SwitchAlone => Finding::new(Verdict::Warn, Text::from("The switch is there; its link is missing."))
            .remedy(mend::change(
                "Get the link that belongs to the switch, and a spare.",
                [Change::to("rigging.controls.cut_off", "with_link")],
            ))
            .buys("link for the cut-off switch", Text::from("two")),
        CutOff::None => Finding::new(Verdict::Fail, Text::from("There is no engine cut-off switch."))
            .remedy(mend::change(
                "Fit one with its link at each station, and try it with the engine running.",
                [Change::to("rigging.controls.cut_off", "with_link")],
            ))
            .buys("engine cut-off switch with link", Text::from("one for each station")),
    })
}
