//! `trial/two-ways`

use crate::rules::mend;
use uom::si::f64::Velocity;

use super::{latest, ready, with};
use crate::case::Case;
use crate::job::Run;
use crate::quantity::{Dimensioned, Measure, say};
use crate::reading::{mph, reading};
use crate::rig::Missing;
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};

rule! {
    /// Whether every run was sailed both ways over the same water, and how far the ways differ.
    ///
    /// **Why.** A current of one mile an hour is four per cent at cruise; both ways take it out.
    ///
    /// **Limit.** Both ways of every run; no more than 3 mph of current.
    ///
    /// **Source.** Common practice, no source.
    ///
    /// **When it warns.** Sail the other way too, at once, over the same water.
    TWO_WAYS = Trial "trial/two-ways", judge;
}

/// Current beyond which ways differ in more than the current. Common practice, no source.
const MOST_CURRENT_MPH: f64 = 3.0;

fn judge(case: &Case) -> Judgement {
    let trials = ready(case)?;
    let (side, trial) = latest(trials)?;
    let told: Vec<_> = trial.runs.iter().filter(|run| run.speed.is_some()).collect();
    if told.is_empty() {
        return Ok(Finding::unmeasured(vec![Missing::one(reading!(Run.speed))]));
    }
    let one_way = told.iter().filter(|run| run.current.is_none()).count();
    let most = Velocity::from_si(mph(MOST_CURRENT_MPH).si());
    let current = told
        .iter()
        .filter_map(|run| run.current)
        .fold(Velocity::default(), |most, current| if current.abs() > most { current.abs() } else { most });
    if one_way > 0 {
        return Ok(Finding::new(
            Verdict::Warn,
            say!("Sailed one way only: {} of {} runs, {}.", one_way, told.len(), with(side)),
        )
        .remedy(mend::look("Sail those runs the other way too: a current of one mile an hour may be in them.")));
    }
    let verdict = if current.exceeds(most) { Verdict::Warn } else { Verdict::Pass };
    let finding = Finding::new(
        verdict,
        say!(
            "Every run was sailed both ways, {}; the ways differ by {} of current at most.",
            with(side),
            Measure::of(current)
        ),
    )
    .against(Measure::of(current), Limit::AtMost(Measure::of(most)));
    Ok(match verdict {
        Verdict::Warn => finding.remedy(mend::look(
            "So much current is hardly even over both ways: sail where it is less, or at slack water.",
        )),
        _ => finding,
    })
}
