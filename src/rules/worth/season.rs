//! `worth/season`

use super::ready;
use crate::case::Case;
use crate::job::{FuelPrice, Trial, Worth};
use crate::quantity::{Measure, Text, say};
use crate::reading::reading;
use crate::rig::Missing;
use crate::rules::mend;
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Verdict};

rule! {
    /// What a season costs in fuel and upkeep, before and after, at the hours and speeds she is used.
    ///
    /// **Why.** Engines are sold on full throttle and used at cruise: what a season costs is decided there.
    ///
    /// **Limit.** A season after costs no more than one before, beyond what both figures are worth.
    ///
    /// **Source.** The job's own costs and use; the trials' fuel, or the reckoning where none was sailed.
    ///
    /// **When it warns.** Nothing is wrong with the boat: tell the owner before he decides.
    SEASON = Worth "worth/season", judge;
}

fn judge(case: &Case) -> Judgement {
    let reckoned = ready(case)?;
    let worth = case.rig.job.worth.clone().unwrap_or_default();
    let mut missing = Vec::new();
    if worth.season.is_empty() {
        missing.push(Missing::one(reading!(Worth.season)));
    }
    if worth.fuel.is_none() {
        missing.push(Missing::one(reading!(FuelPrice.price)));
    }
    for (side, declared) in [(0, reading!(Trial.before)), (1, reading!(Trial.after))] {
        if let Some(used) = reckoned.used.iter().find(|used| used.fuel[side].is_none()) {
            let at = Measure::of(used.speed).show(crate::quantity::Units::Us);
            missing.push(Missing { measurement: declared, of: Some(format!("fuel at {at}")) });
        }
    }
    let ([Some(before), Some(after)], Some(saved), true) = (&reckoned.season, reckoned.saved, missing.is_empty())
    else {
        return Ok(Finding::unmeasured(missing));
    };
    let more = saved.value + saved.doubt < 0.0;
    let summary = say!("A season costs ")
        .then(reckoned.money(before))
        .then(Text::from(" before and "))
        .then(reckoned.money(after))
        .then(Text::from(" after."));
    let finding =
        Finding::new(if more { Verdict::Warn } else { Verdict::Pass }, summary).working(reckoned.sheet.clone());
    Ok(if more {
        finding.remedy(mend::ask("Tell the owner what a season will cost; whether it is worth that is his to say."))
    } else {
        finding
    })
}
