//! `trial/equal-load`

use crate::rules::mend;
use uom::si::f64::Mass;

use super::ready;
use crate::case::Case;
use crate::job::Sailed;
use crate::quantity::{Dimensioned, Measure, Text, pounds, say};
use crate::reading::reading;
use crate::rig::Missing;
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};

rule! {
    /// Whether she was loaded alike on both trials.
    ///
    /// **Why.** Two persons or half a tank more are worth a mile an hour and more: the engines would be
    /// praised or blamed for them.
    ///
    /// **Limit.** Within 200 lb of persons, fuel and gear.
    ///
    /// **Source.** Common practice, no source.
    ///
    /// **When it warns.** Sail again with the same persons, fuel and gear.
    EQUAL_LOAD = Trial "trial/equal-load", judge;
}

/// Common practice, no source.
const WITHIN_LB: f64 = 200.0;

fn judge(case: &Case) -> Judgement {
    let trials = ready(case)?;
    let Some((before, after)) = trials.both() else {
        return Ok(Finding::not_applicable(Text::from("One trial only: there is nothing to compare its load with.")));
    };
    let (Some(one), Some(other)) = (before.load(case.rig), after.load(case.rig)) else {
        let missing = [
            Missing { measurement: reading!(Sailed.persons), of: Some("both trials".to_owned()) },
            Missing { measurement: reading!(Sailed.fuel_aboard), of: Some("both trials".to_owned()) },
        ];
        return Ok(Finding::unmeasured(missing.into()));
    };
    let off: Mass = (other - one).abs();
    let within = pounds(WITHIN_LB);
    let verdict = if off.exceeds(within) { Verdict::Warn } else { Verdict::Pass };
    let finding = Finding::new(
        verdict,
        say!("Persons, fuel and gear weighed {} before and {} after.", Measure::of(one), Measure::of(other)),
    )
    .against(Measure::of(off), Limit::AtMost(Measure::of(within)));
    Ok(match verdict {
        Verdict::Warn => finding.remedy(mend::look(
            "Sail the trial after again, loaded as before, or tell the difference with every figure.",
        )),
        _ => finding,
    })
}
