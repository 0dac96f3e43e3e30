//! `worth/payback`

use super::ready;
use crate::case::Case;
use crate::job::{Cost, Worth};
use crate::quantity::{Text, say};
use crate::reading::reading;
use crate::rig::Missing;
use crate::rules::mend;
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Verdict};

rule! {
    /// Seasons until what is saved has paid what the repower costs, with what is not known at its best and
    /// its worst.
    ///
    /// **Why.** An owner who is told that engines pay for themselves should see in how many seasons, and
    /// on which figures.
    ///
    /// **Limit.** Within the seasons that are looked ahead: ten, or what the job says.
    ///
    /// **Source.** The job's own costs and use; the trials' fuel, or the reckoning where none was sailed.
    ///
    /// **When it warns.** Money alone does not pay for it: what is not priced decides, and that is the
    /// owner's.
    PAYBACK = Worth "worth/payback", judge;
}

fn judge(case: &Case) -> Judgement {
    let reckoned = ready(case)?;
    let Some(cost) = &reckoned.cost else {
        let worth = case.rig.job.worth.clone().unwrap_or_default();
        let of = worth.costs.iter().find(|cost| cost.amount.is_none() && (cost.hours.is_none() || cost.rate.is_none()));
        return Ok(Finding::unmeasured(vec![match of {
            Some(cost) => Missing { measurement: reading!(Cost.amount), of: Some(cost.what.clone()) },
            None => Missing::one(reading!(Worth.costs)),
        }]));
    };
    let Some(payback) = &reckoned.payback else {
        return Ok(Finding::unmeasured(vec![Missing {
            measurement: reading!(Worth.season),
            of: Some("with fuel before and after".to_owned()),
        }]));
    };
    let ahead = f64::from(reckoned.seasons);
    let seasons = |seasons: Option<f64>| {
        seasons.map_or("never".to_owned(), |n| if n < 100.0 { format!("{n:.1}") } else { "over 100".to_owned() })
    };
    let not_priced = say!(" Not priced: {}.", reckoned.not_priced.join("; "));
    let costs = say!("It costs ").then(reckoned.money(cost));
    let Some(found) = payback.seasons else {
        return Ok(Finding::new(
            Verdict::Warn,
            costs.then(Text::from(" and saves nothing in a season.")).then(not_priced),
        )
        .working(reckoned.sheet.clone())
        .remedy(mend::ask("Money alone does not pay for it; whether the rest does is the owner's to say.")));
    };
    let summary = costs
        .then(say!(
            ", and is even after {} seasons ({} at best, {} at worst).",
            seasons(Some(found)),
            seasons(payback.soonest),
            seasons(payback.latest)
        ))
        .then(not_priced);
    let within = found <= ahead;
    let finding =
        Finding::new(if within { Verdict::Pass } else { Verdict::Warn }, summary).working(reckoned.sheet.clone());
    Ok(if within {
        finding
    } else {
        finding.remedy(mend::ask(
            "Money alone does not pay for it in that time; whether the rest does is the owner's to say.",
        ))
    })
}
