//! `controls/levers`

use super::told;
use crate::case::Case;
use crate::job::rigging::Reach;
use crate::quantity::{Text, say};
use crate::reading::All;
use crate::rules::mend::{self, Change};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Verdict};

rule! {
    /// Whether the levers that are there can work the new engines.
    ///
    /// **Why.** New large engines take no cables, and old levers speak no other language: that is found out with the engine on the
    /// hoist.
    ///
    /// **Limit.** Levers and engines of one sort: cables, electronic, or a tiller.
    ///
    /// **Source.** The engine's papers.
    ///
    /// **When it warns.** It fails where they are of two sorts; the finding names what to order.
    LEVERS = Controls "controls/levers", judge;
}

fn judge(case: &Case) -> Judgement {
    let controls = told(case)?;
    let (levers, take) = (controls.levers().ask(), controls.engines_take().ask()).all()?;
    if levers == take {
        return Ok(Finding::new(Verdict::Pass, say!("Levers and engines are of one sort: {}.", levers.words())));
    }
    let stations = usize::from(controls.stations.unwrap_or(1));
    let differ = say!("The levers and what the engines take differ: {}, and {}.", levers.words(), take.words());
    let finding = Finding::new(Verdict::Fail, differ);
    Ok(match take {
        Reach::Electronic => finding
            .remedy(mend::change("Fit the engines' own electronic controls with their harness for each station; the old levers and cables come out.", [Change::to("rigging.controls.levers", "electronic")]))
            .buys("electronic controls with harness", say!("{} for {} engines", counted(stations), case.rig.after.mains().len())),
        Reach::Cables => finding
            .remedy(mend::change("Fit a control box for cables and two cables an engine, laid without sharp bends.", [Change::to("rigging.controls.levers", "cables")]))
            .buys("control box", counted(stations).into())
            .buys("control cables", say!("two an engine, {} engines", case.rig.after.mains().len())),
        Reach::Tiller => finding
            .remedy(mend::change("Fit remote steering and controls to the engine, or steer her by the tiller.", [Change::to("rigging.controls.levers", "tiller")]))
            .buys("remote kit for the engine", Text::from("one an engine")),
    })
}

/// `1 station`, `2 stations`.
fn counted(stations: usize) -> &'static str {
    if stations == 1 { "1 station" } else { "each station" }
}
