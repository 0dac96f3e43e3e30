//! `trial/slip`

use crate::rules::mend;
use uom::si::f64::Ratio;

use super::{engine, lacks_full_throttle, latest, ready, with};
use crate::case::Case;
use crate::job::EngineGroup;
use crate::quantity::{Dimensioned, say};
use crate::reading::reading;
use crate::rig::Missing;
use crate::rules::rule::rule;
use crate::rules::running::{USUAL_SLIP, share_slipped as share};
use crate::rules::{Finding, Judgement, Limit, Verdict};

rule! {
    /// The slip at full throttle on the trial: what speed, engine speed, gears and pitch say together.
    ///
    /// **Why.** Four readings meet in one number: where it is not what propellers do, one of them is
    /// wrong, or the propeller is.
    ///
    /// **Limit.** 5 to 25 %.
    ///
    /// **Source.** Common practice, no source (1 − V · ratio · 1056 / (rpm · pitch), mph and inches; the
    /// limits).
    ///
    /// **When it warns.** Read the hub again, check the gear ratio and the speed; then look for ventilation
    /// or a slipping hub.
    SLIP = Trial "trial/slip", judge;
}

fn judge(case: &Case) -> Judgement {
    let trials = ready(case)?;
    let (side, trial) = latest(trials)?;
    let Some(run) = trial.full_throttle() else {
        return Ok(Finding::unmeasured(vec![lacks_full_throttle()]));
    };
    let Some(slip) = run.slip else {
        let of = engine(case, side).map(|engine| engine.label.clone());
        return Ok(Finding::unmeasured(vec![Missing { measurement: reading!(EngineGroup.propeller), of }]));
    };
    let [least, most] = USUAL_SLIP.map(Ratio::from_si);
    let verdict = if least.exceeds(slip) || slip.exceeds(most) { Verdict::Warn } else { Verdict::Pass };
    let finding =
        Finding::new(verdict, say!("The propellers slip by {} at full throttle, {}.", share(slip), with(side)))
            .against(share(slip), Limit::Within(share(least), share(most)))
            .working(run.sheet.clone());
    Ok(match verdict {
        Verdict::Warn if slip < least => {
            finding.remedy(mend::look("Read pitch, gear ratio, engine speed and speed again: one of them is wrong."))
        }
        Verdict::Warn => finding.remedy(mend::look(
            "Read the hub again; then look for ventilation, a slipping hub or too small a propeller.",
        )),
        _ => finding,
    })
}
