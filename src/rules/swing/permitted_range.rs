//! `swing/permitted-range`

use super::{stop, unanswered};
use crate::case::Case;
use crate::case::swing::{Cure, Swept, body_words, from_boat};
use crate::quantity::{Measure, Text, say};
use crate::rules::mend::{self, Change, Remedy};
use crate::rules::rule::rule;
use crate::rules::{Finding, Limit, Verdict};
use crate::working::Table;

rule! {
    /// How far each engine may tilt, steered anyhow, and be steered, tilted anyhow, with everything on
    /// the boat half an inch away.
    ///
    /// **Why.** Where the whole range does not fit, a tilt stop or a smaller range written at the
    /// switch is what saves the cowl; it has to leave room to run and to raise her.
    ///
    /// **Limit.** Full tilt. The limit found is certified: up to it nothing comes nearer than half an inch
    /// at any steering; within 0.05 degrees beyond it something does.
    ///
    /// **Source.** The engine's mounting sheet (its ranges); common practice, no source (the half inch).
    ///
    /// **When it warns.** It warns where she must be stopped short of full tilt, and fails where she
    /// cannot even use her trim range.
    PERMITTED_RANGE = Swing "swing/permitted-range", judge;
}

fn judge(case: &Case) -> Finding {
    let swing = case.swing();
    let (sweeps, engines) = match (&swing.full_tilt, &swing.engines) {
        (Ok(sweeps), Ok(engines)) => (sweeps, engines),
        (Err(open), _) | (_, Err(open)) => return unanswered(open),
    };
    let tightest =
        sweeps.iter().zip(engines).filter_map(|(swept, engine)| Some((swept, engine, swept.cure.as_ref()?))).min_by(
            |a, b| {
                let reach = |cure: &Cure| cure.tilt.up_to.map_or(f64::NEG_INFINITY, |up| up.value);
                reach(a.2).total_cmp(&reach(b.2))
            },
        );
    let Some((swept, engine, cure)) = tightest else {
        return whole(sweeps);
    };
    let full = swept.scene.tilt.high();
    let limit = Limit::AtLeast(Measure::of(full));
    let stopped = cure.tilt.stopped_by.as_ref().map_or(Text::default(), |stop| {
        say!(" There {} comes near {}.", body_words(&stop.body.name), body_words(&stop.other.name))
    });
    let finding = match cure.tilt.up_to {
        None => Finding::new(
            Verdict::Fail,
            say!(
                "Nowhere in its range of tilt does the {} keep {} from the boat at every steering.",
                &swept.label,
                Measure::tape(from_boat())
            ),
        )
        .limit(limit)
        .remedy(elsewhere(cure)),
        Some(up_to) => {
            let runs = up_to >= engine.running.high();
            Finding::new(
                if runs { Verdict::Warn } else { Verdict::Fail },
                say!(
                    "Steered anyhow, the {} may tilt to {} of {}{}.",
                    &swept.label,
                    Measure::of(up_to),
                    Measure::of(full),
                    if runs { "" } else { ", less than its trim range" }
                )
                .then(stopped),
            )
            .against(Measure::of(up_to), limit)
            .remedy(remedy(case, swept, cure, stop(up_to)))
        }
    };
    finding.table(table(sweeps))
}

fn remedy(case: &Case, swept: &Swept, cure: &Cure, tilt: Measure) -> Remedy {
    let text = say!("Set the tilt stop, or a mark at the switch, at {} from upright", tilt);
    let words = match cure.steer.up_to {
        Some(steer) if !cure.steer.whole_range && stop(steer).si > 0.0 => {
            text.then(say!("; tilted farther only with the helm within {} of amidships.", stop(steer)))
        }
        _ => text.then(Text::from(".")),
    };
    match case.rig.after.engines().find(|(_, engine)| engine.label == swept.label) {
        Some((group, _)) => mend::change(words, [Change::told(format!("{}.tilt_stop", group.entry), tilt)]),
        None => mend::yard(words),
    }
}

/// Where no tilt will do, only another place for the engine does.
fn elsewhere(cure: &Cure) -> Remedy {
    if cure.aft.is_some() || cure.up.is_some() {
        return mend::first(
            "No tilt limit cures it: set the engine elsewhere, as “full tilt” says.",
            "swing/full-tilt",
        );
    }
    mend::yard("No tilt limit, setback or height that was tried clears it: another engine, or another well.")
}

fn whole(sweeps: &[Swept]) -> Finding {
    let least =
        sweeps.iter().map(|swept| swept.scene.tilt.high()).reduce(|a, b| if a < b { a } else { b }).unwrap_or_default();
    Finding::new(
        Verdict::Pass,
        say!(
            "The whole range fits: to full tilt ({}), from lock to lock, with {} kept.",
            Measure::of(least),
            Measure::tape(from_boat())
        ),
    )
    .against(Measure::of(least), Limit::AtLeast(Measure::of(least)))
    .table(table(sweeps))
}

fn table(sweeps: &[Swept]) -> Table {
    let shown =
        |up_to: Option<uom::si::f64::Angle>| up_to.map_or(Text::from("none"), |angle| Text::from(Measure::of(angle)));
    let rows = sweeps
        .iter()
        .map(|swept| {
            let (tilt, steer) = match &swept.cure {
                Some(cure) => (cure.tilt.up_to, cure.steer.up_to),
                None => (Some(swept.scene.tilt.high()), Some(swept.scene.steer.high())),
            };
            vec![Text::from(swept.label.as_str()), shown(tilt), shown(steer)]
        })
        .collect();
    Table::new(
        "ranges that keep clear of the boat",
        &["engine", "tilt, steered anyhow", "steering each way, tilted anyhow"],
        rows,
    )
}
