//! `trial/full-throttle`

use super::{engine, lacks_full_throttle, latest, ready, with};
use crate::case::Case;
use crate::job::EngineGroup;
use crate::quantity::{Dimensioned, Measure, Text, say};
use crate::reading::reading;
use crate::rig::Missing;
use crate::rules::mend;
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};

rule! {
    /// Whether the engines reached their full-throttle band on the trial.
    ///
    /// **Why.** A trial outside the band says little of fuel and speed, and an engine that cannot reach it
    /// is hurt by every hour at full throttle.
    ///
    /// **Limit.** Within the maker's band.
    ///
    /// **Source.** The engine's mounting sheet or class.
    ///
    /// **When it warns.** Change the pitch by the inches that are missing, 150 to 200 rpm each, and sail
    /// again.
    FULL_THROTTLE = Trial "trial/full-throttle", judge;
}

fn judge(case: &Case) -> Judgement {
    let trials = ready(case)?;
    let (side, trial) = latest(trials)?;
    let Some(found) = trial.full_throttle().and_then(|run| run.engine) else {
        return Ok(Finding::unmeasured(vec![lacks_full_throttle()]));
    };
    let Some(band) = engine(case, side).and_then(|engine| engine.spec.full_throttle.as_ref()) else {
        return Ok(Finding::unmeasured(vec![Missing::one(reading!(EngineGroup.described))]));
    };
    let (from, to) = (band.from.value, band.to.value);
    let verdict = if from.exceeds(found) || found.exceeds(to) { Verdict::Warn } else { Verdict::Pass };
    let finding = Finding::new(verdict, say!("{} at full throttle, {}.", Measure::of(found), with(side)))
        .against(Measure::of(found), Limit::Within(Measure::of(from), Measure::of(to)));
    Ok(match verdict {
        Verdict::Warn => finding.remedy(mend::look(Text::from(if found < from {
            "Take less pitch, or look for what the engines lack, and sail again."
        } else {
            "Take more pitch, and sail again."
        }))),
        _ => finding,
    })
}
