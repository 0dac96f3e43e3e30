//! `running/trim`

use crate::rules::mend;
use uom::si::f64::Angle;

use super::{NEVER_PLANES, planes, ready, trial_before};
use crate::case::Case;
use crate::quantity::{Dimensioned, Measure, Text, degrees, say};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::Sheet;

rule! {
    /// The trim at which she cruises with the new engines.
    ///
    /// **Why.** Too flat she is wet, bow-steers and drags; too steep she pounds, burns fuel and blinds her
    /// helmsman. Weight that went aft shows here first.
    ///
    /// **Limit.** 2 to 7 degrees at seven tenths of her greatest speed; outside it no steeper than with the
    /// old engines.
    ///
    /// **Source.** Savitsky 1964 (the trim); common practice, no source (the limits).
    ///
    /// **When it warns.** Stow weight forward or aft, use trim of the engines and tabs.
    TRIM = Running "running/trim", judge;
}

/// Trims of a cruise, degrees. Common practice, no source.
const USUAL_DEG: [f64; 2] = [2.0, 7.0];
/// Part of her greatest speed at which she cruises. Common practice, no source.
const CRUISE: f64 = 0.7;
/// What the reckoned trim is worth, degrees. Common practice, no source.
const WORTH_DEG: f64 = 1.0;

fn judge(case: &Case) -> Judgement {
    let (runs, predicted) = ready(case)?;
    if !planes(predicted) {
        return Ok(Finding::not_applicable(Text::from(NEVER_PLANES)));
    }
    let points = &predicted.range.points;
    let Some(fast) = predicted.range.top.as_ref().or(points.last()) else {
        let why = Text::from("No speed of hers lies within the method: her trim is not told.");
        return Ok(Finding { missing: vec![trial_before()], ..Finding::new(Verdict::Unmeasured, why) });
    };
    let Ok(cruise) = predicted.built.craft.steady(fast.speed * CRUISE) else {
        return Ok(Finding::not_applicable(Text::from("Her cruise lies outside what the method tells.")));
    };
    let trim = cruise.running.trim;
    let before = runs.before.as_ref().ok().and_then(|before| before.built.craft.steady(cruise.speed).ok());
    let mut sheet = Sheet::default();
    sheet.remark(say!("In the loading `{}`.", predicted.built.loading.as_str()));
    let old = before
        .map_or(Text::default(), |before| say!(" With the old engines it was {}.", Measure::of(before.running.trim)));
    let worth = degrees(WORTH_DEG).si();
    let [least, most] = USUAL_DEG.map(degrees);
    let verdict = super::between(trim.si(), worth, [least.si(), most.si()]);
    // Trims are worth a degree; where she ran as steep before, nothing is new.
    let verdict = match (verdict, &before) {
        (Verdict::Unmeasured | Verdict::Warn, Some(before))
            if trim <= before.running.trim + degrees(0.5 * WORTH_DEG) =>
        {
            Verdict::Pass
        }
        (verdict, _) => verdict,
    };
    let finding = Finding::new(
        verdict,
        say!("At {} she would trim {}.", Measure::of(cruise.speed), Measure::of::<Angle>(trim)).then(old),
    )
    .against(Measure::of(trim), Limit::Within(Measure::of(least), Measure::of(most)))
    .working(sheet);
    Ok(match verdict {
        Verdict::Warn if trim > most => {
            finding.remedy(mend::care("Stow what can be moved farther forward, trim the engines in, or fit tabs."))
        }
        Verdict::Warn => finding.remedy(mend::care("Stow what can be moved farther aft, or trim the engines out.")),
        Verdict::Unmeasured => Finding { missing: vec![trial_before()], ..finding },
        _ => finding,
    })
}
