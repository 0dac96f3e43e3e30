//! `running/full-throttle-band`

use super::{FullThrottle, between, full_throttle, ladder, past_the_method, propeller, ready, trial_before, trusted};
use crate::case::Case;
use crate::quantity::{Dimensioned, Measure, say};
use crate::rules::mend;
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::Sheet;

rule! {
    /// The engines' speed at full throttle against the band that their maker gives.
    ///
    /// **Why.** An engine that cannot reach its band labours and cokes; one that runs past it wears and
    /// sits on its limiter. Both are the propeller's doing.
    ///
    /// **Limit.** Within the maker's band; reckoned ahead, within it by what the reckoning is worth.
    ///
    /// **Source.** The engine's mounting sheet or class (the band); the propellers of the Wageningen
    /// B-series behind Savitsky's planing prism (the engines' speed).
    ///
    /// **When it warns.** Change the pitch as running/pitch says, and try again.
    FULL_THROTTLE_BAND = Running "running/full-throttle-band", judge;
}

fn judge(case: &Case) -> Judgement {
    let (runs, predicted) = ready(case)?;
    let Some(band) = predicted.built.band else {
        return Ok(Finding::unmeasured(vec![propeller()]));
    };
    let [from, to] = band.map(Measure::of);
    let mut sheet = Sheet::default();
    trusted(&mut sheet, runs);
    let (found, doubt, words) = match full_throttle(case, Some(predicted)) {
        Some(FullThrottle::Sailed(engine)) => {
            (engine, 0.0, say!("The trial found {} at full throttle.", Measure::of(engine)))
        }
        Some(FullThrottle::Reckoned(_)) if !predicted.built.screw.told => {
            return Ok(Finding { missing: vec![propeller()], ..Finding::new(
                Verdict::Unmeasured,
                say!(
                    "The new propellers are not told: about {} of pitch would let the engines turn at the middle of their band.",
                    Measure::tape(predicted.built.screw.pitch)
                ),
            ) }
            .limit(Limit::Within(from, to)));
        }
        Some(FullThrottle::Reckoned(engine)) => (
            engine.value,
            engine.doubt.si(),
            say!(
                "At full throttle the engines would turn at {} ± {}.",
                Measure::of(engine.value),
                Measure::of(engine.doubt)
            ),
        ),
        None => return Ok(past_the_method(predicted)),
    };
    let verdict = between(found.si(), doubt, band.map(Dimensioned::si));
    let finding = Finding::new(verdict, words)
        .against(Measure::of(found), Limit::Within(from, to))
        .working(sheet)
        .table(ladder(predicted));
    Ok(match verdict {
        Verdict::Warn => finding.remedy(mend::first(
            if found.si() < band[0].si() {
                "Take less pitch: an inch is worth 150 to 200 rpm; “pitch” says which."
            } else {
                "Take more pitch: an inch is worth 150 to 200 rpm; “pitch” says which."
            },
            "running/pitch",
        )),
        Verdict::Unmeasured => Finding { missing: vec![trial_before()], ..finding },
        _ => finding,
    })
}
