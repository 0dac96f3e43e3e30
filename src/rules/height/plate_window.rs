//! `height/plate-window`

use crate::case::{Case, Rows, fixed_engines, holes_up};
use crate::job::Sitting;
use crate::physics::height;
use crate::quantity::{Measure, Text, say};
use crate::reading::All;
use crate::rig::{Engine, Group, Missing, Rig};
use crate::rules::mend::{self, Change};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Verdict};

rule! {
    /// Where each engine's anti-ventilation plate stands against the bottom, in the row of holes in
    /// which it hangs or is best hung.
    ///
    /// **Why.** Too low drags and sprays; too high draws air and starves the water inlets.
    ///
    /// **Limit.** Level with the bottom to 1 in above it; behind a setback higher, by an inch for
    /// each 12 in of it (careful) to each 8 in (keen). An auxiliary engine may hang lower.
    ///
    /// **Source.** Common practice, no source.
    ///
    /// **When it warns.** Move the engine to the row that the finding names, and settle it on the
    /// water: the last hole is found by running her.
    PLATE_WINDOW = Height "height/plate-window", judge;
}

fn judge(case: &Case) -> Judgement {
    let rig = case.rig;
    if rig.after.is_empty() {
        (rig.after.ask(), rig.job.transom.height().ask(), rig.job.boat.deadrise().ask()).all()?;
    }
    let mut missing: Vec<Missing> = Vec::new();
    let mut worst: Option<Finding> = None;
    for (group, engine) in fixed_engines(rig) {
        match one(rig, group, engine) {
            Ok(finding) => finding.keep_worse(&mut worst),
            Err(lacking) => Missing::gather(&mut missing, lacking),
        }
    }
    Ok(match worst {
        Some(finding) if missing.is_empty() || finding.verdict < Verdict::Unmeasured => finding,
        _ if missing.is_empty() => super::no_rows(rig),
        _ => Finding::unmeasured(missing),
    })
}

fn one(rig: &Rig, group: &Group, engine: &Engine) -> Result<Finding, Vec<Missing>> {
    let mut rows = Rows::of(rig, group, engine)?;
    let label = engine.label.as_str();
    let best = rows.best();
    let limit = super::window(&rows);
    let row = match (engine.holes_up.reading(), best) {
        (Some(row), _) => *row,
        (None, _) if rig.job.sitting == Sitting::AsFitted => {
            return Err(engine.holes_up.ask().err().into_iter().collect());
        }
        (None, Some(best)) => u8::try_from(best).unwrap_or(u8::MAX),
        (None, None) => {
            let table = rows.table(label);
            return Ok(Finding::new(
                Verdict::Warn,
                say!("No hole row puts the plate of the {} into its window (see “shaft match”).", label),
            )
            .remedy(mend::first("No row fits; see “shaft match”.", "height/shaft-match"))
            .table(table)
            .working(rows.sheet));
        }
    };
    let plate = height::plate_height(&mut rows.sheet, &rows.lowest, row);
    let outside = rows.outside(plate.value());
    let found = plate.tape();
    let beyond = usize::from(row) >= rows.heights.len();
    let table = rows.table(label);
    let finding = if beyond {
        Finding::new(
            Verdict::Warn,
            say!("{} for the {}, whose bracket has {} rows only.", holes_up(row.into()), label, rows.heights.len()),
        )
        .remedy(mend::look("Count the rows again: the lowest mounting is 0 holes up."))
    } else if outside.value == 0.0 {
        let planned = if engine.holes_up.reading().is_some() { "" } else { ": hang it so" };
        Finding::new(
            Verdict::Pass,
            say!("{}, the plate of the {} stands ", holes_up(row.into()), label)
                .then(super::over_the_bottom(plate.value()))
                .then(say!("{}.", planned)),
        )
    } else {
        let way = if outside.value < 0.0 { "below" } else { "above" };
        let finding = Finding::new(
            Verdict::Warn,
            say!(
                "{}, the plate of the {} stands {} {} its window.",
                holes_up(row.into()),
                label,
                Measure::tape(outside.abs()),
                way
            ),
        );
        match best {
            Some(best) => finding.remedy(mend::change(
                say!("Hang the {} {}: the plate then stands ", label, holes_up(best))
                    .then(super::over_the_bottom(rows.heights[best]))
                    .then(Text::from(". Settle it by running her.")),
                [Change::to(format!("{}.holes_up", group.entry), best.to_string())],
            )),
            None => finding.remedy(mend::first("No row fits; see “shaft match”.", "height/shaft-match")),
        }
    };
    Ok(finding.against(found, limit).table(table).working(rows.sheet))
}
