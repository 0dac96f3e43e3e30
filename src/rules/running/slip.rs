//! `running/slip`

use crate::rules::mend;
use uom::si::f64::Ratio;

use super::{between, past_the_method, propeller, ready, trial_before, trusted};
use crate::case::Case;
use crate::quantity::{Dimensioned, Measure, Style, say};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::Sheet;

rule! {
    /// The slip of the new propellers at her greatest speed: how far she stays behind their pitch.
    ///
    /// **Why.** Slip beyond the usual says that the propeller is too small, ventilates, or drags a boat
    /// too heavy for it; slip below it says that a reading is wrong.
    ///
    /// **Limit.** 5 to 25 %.
    ///
    /// **Source.** Common practice, no source (1 − V / (turns × pitch), and the limits).
    ///
    /// **When it warns.** Lower the engine, take more blade or diameter; check rpm, pitch and speed.
    SLIP = Running "running/slip", judge;
}

/// Least and greatest slip of a planing boat at full speed. Common practice, no source.
pub(in crate::rules) const USUAL: [f64; 2] = [0.05, 0.25];

/// Slip as the trade tells it.
pub(in crate::rules) fn share(slip: Ratio) -> Measure {
    Measure::styled(slip, Style::Share)
}

fn judge(case: &Case) -> Judgement {
    let (runs, predicted) = ready(case)?;
    if !predicted.built.screw.told {
        return Ok(Finding::unmeasured(vec![propeller()]));
    }
    let Some(top) = &predicted.range.top else {
        return Ok(past_the_method(predicted));
    };
    let mut sheet = Sheet::default();
    trusted(&mut sheet, runs);
    let slip = top.slip.si();
    // Slip follows the pitch at work, part for part.
    let doubt = runs.doubts.pitch * (1.0 - slip);
    let verdict = between(slip, doubt, USUAL);
    let [least, most] = USUAL.map(|slip| share(Ratio::from_si(slip)));
    let finding = Finding::new(
        verdict,
        say!(
            "At {} the propellers would slip by {} ± {}.",
            Measure::of(top.speed),
            share(top.slip),
            share(Ratio::from_si(doubt))
        ),
    )
    .against(share(top.slip), Limit::Within(least, most))
    .working(sheet);
    Ok(match verdict {
        Verdict::Warn => finding.remedy(mend::care(
            "Check the pitch on the hubs, the gear ratio and her greatest speed; with more slip take a larger blade or lower the engines.")),
        Verdict::Unmeasured => Finding { missing: vec![trial_before()], ..finding },
        _ => finding,
    })
}
