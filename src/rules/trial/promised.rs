//! `trial/promised`

use super::ready;
use crate::case::Case;
use crate::job::Trial;
use crate::quantity::{Measure, Style, Text, say};
use crate::reading::reading;
use crate::rig::Missing;
use crate::rules::mend;
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Verdict};
use crate::working::Table;

rule! {
    /// What was promised of the new engines against what the trial after found.
    ///
    /// **Why.** The owner paid for a promise; a trial is where it is kept or not.
    ///
    /// **Limit.** No more than 5 % short of any promised figure.
    ///
    /// **Source.** The offer (the promise); common practice, no source (the 5 %, what trials are worth).
    ///
    /// **When it warns.** Speak with whoever promised it, with both trials on the table.
    PROMISED = Trial "trial/promised", judge;
}

/// How far a promise may be missed. Common practice, no source.
const SHORT: f64 = 0.05;

fn judge(case: &Case) -> Judgement {
    let trials = ready(case)?;
    let Some(promised) = &trials.promised else {
        return Ok(Finding::not_applicable(Text::from("The job tells no promise.")));
    };
    let Some(after) = trials.after.as_ref().filter(|after| !after.runs.is_empty()) else {
        return Ok(Finding::unmeasured(vec![Missing::one(reading!(Trial.after))]));
    };
    let best = after.best_cruise();
    let pairs: Vec<(&str, Option<Measure>, Option<Measure>)> = vec![
        (
            "greatest speed",
            promised.top_speed.as_ref().map(|one| Measure::of(one.value)),
            after.top().and_then(|run| run.speed).map(|speed| Measure::of(speed.value)),
        ),
        (
            "farthest for fuel",
            promised.economy.as_ref().map(|one| Measure::of(one.value)),
            best.and_then(|run| run.economy).map(Measure::of),
        ),
        (
            "range, a tenth kept back",
            promised.range.as_ref().map(|one| Measure::styled(one.value, Style::Distance)),
            best.and_then(|run| run.range).map(|range| Measure::styled(range, Style::Distance)),
        ),
        (
            "engine speed at full throttle",
            promised.full_throttle.as_ref().map(|one| Measure::of(one.value)),
            after.full_throttle().and_then(|run| run.engine).map(Measure::of),
        ),
    ];
    let (mut rows, mut short, mut open) = (Vec::new(), Vec::new(), Vec::new());
    for (what, promised, came) in pairs {
        let Some(promised) = promised else { continue };
        match came {
            Some(came) => {
                if came.si < (1.0 - SHORT) * promised.si {
                    short.push(say!("{} {} instead of {}", what, came, promised));
                }
                let part = 100.0 * (came.si / promised.si - 1.0);
                rows.push(vec![
                    Text::from(what),
                    Text::from(promised),
                    Text::from(came),
                    say!("{} %", format!("{part:+.1}")),
                ]);
            }
            None => open.push(what),
        }
    }
    let table = Table::new("promised and come", &["", "promised", "came", "off by"], rows.clone());
    if !short.is_empty() {
        return Ok(Finding::new(
            Verdict::Warn,
            Text::from("Short of what was promised: ").then(Text::join(short, "; ")).then(Text::from(".")),
        )
        .remedy(mend::look("Check load, propellers and band first; then speak with whoever promised it."))
        .table(table));
    }
    if !open.is_empty() || rows.is_empty() {
        let missing = vec![Missing {
            measurement: reading!(Trial.after),
            of: Some(open.join(", ")).filter(|open| !open.is_empty()),
        }];
        return Ok(Finding::unmeasured(missing).table(table));
    }
    Ok(Finding::new(Verdict::Pass, Text::from("What was promised was kept, within what a trial is worth."))
        .table(table))
}
