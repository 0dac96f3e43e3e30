//! `controls/gauges`

use super::told;
use crate::case::Case;
use crate::quantity::{Text, say};
use crate::rules::mend::{self, Change};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Verdict};

rule! {
    /// Whether the gauges understand what the new engines tell.
    ///
    /// **Why.** An old tachometer reads nothing, or nonsense, from a digital engine, and nobody sees it overheat.
    ///
    /// **Limit.** Gauge and engine of one language, analogue or digital.
    ///
    /// **Source.** The papers of engine and gauges.
    ///
    /// **When it warns.** It warns of each that does not.
    GAUGES = Controls "controls/gauges", judge;
}

fn judge(case: &Case) -> Judgement {
    let controls = told(case)?;
    if controls.gauges.is_empty() {
        return Ok(Finding::not_applicable(Text::from("The job tells of no gauges.")));
    }
    let speak = controls.engines_speak().ask()?;
    let deaf: Vec<&str> = controls
        .gauges
        .iter()
        .filter(|gauge| !gauge.reads.understands(*speak))
        .map(|gauge| gauge.shows.as_str())
        .collect();
    if deaf.is_empty() {
        return Ok(Finding::new(Verdict::Pass, Text::from("Every gauge understands the engines.")));
    }
    Ok(Finding::new(Verdict::Warn, say!("These gauges do not understand the engines: {}.", deaf.join(", ")))
        .remedy(mend::change(
            "Replace them with one display that does, and plug the holes.",
            [Change::out("rigging.controls.gauges")],
        ))
        .buys("engine display", say!("in place of {} gauges", deaf.len())))
}
