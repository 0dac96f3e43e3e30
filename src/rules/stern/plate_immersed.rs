//! `stern/plate-immersed`

use crate::case::{Rows, holes_up};
use crate::physics::height::HOLE_ROW_STEP_IN;
use crate::rig::{Engine, Group, Rig};
use crate::rules::mend::{self, Change, Remedy};
use uom::si::f64::Length;

use super::{inboard, upright};
use crate::case::Case;
use crate::case::float::plate_point;
use crate::quantity::{Dimensioned, Measure, Text, inches, say};
use crate::rig::Missing;
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::Table;

rule! {
    /// Whether each engine's anti-ventilation plate, and with it the water inlets below, lies under
    /// water at rest with the engine down, in every loading.
    ///
    /// **Why.** An inlet in the air pumps none: the engine overheats at idle, and the propeller draws
    /// air when she starts.
    ///
    /// **Limit.** At least 1 in under water at rest.
    ///
    /// **Source.** Common practice, no source.
    ///
    /// **When it warns.** Hang the engine lower, or choose the longer shaft.
    PLATE_IMMERSED = Stern "stern/plate-immersed", judge;
}

/// Least immersion of the plate at rest. Common practice, no source.
const LEAST_IN: f64 = 1.0;

fn judge(case: &Case) -> Judgement {
    let rig = case.rig;
    let outfit = if rig.after.is_empty() { &rig.before } else { &rig.after };
    if outfit.is_empty() {
        return Ok(Finding::unmeasured(vec![rig.after.missing()]));
    }
    let float = case.float()?;
    let loadings = upright(float)?;
    let mut lacking: Vec<Missing> = Vec::new();
    let mut rows = Vec::new();
    let mut worst: Option<(Length, (&Group, &Engine), &str)> = None;
    for (group, engine) in outfit.engines() {
        if group.is_lifted() {
            continue;
        }
        let point = match plate_point(rig, group, engine) {
            Ok(point) => point,
            Err(missing) => {
                Missing::gather(&mut lacking, missing);
                continue;
            }
        };
        for (loaded, _, lies) in loadings.iter().filter(|(loaded, ..)| inboard(loaded)) {
            let under = -lies.height_above_water(&point);
            rows.push(vec![
                Text::from(engine.label.as_str()),
                Text::from(loaded.name.as_str()),
                Measure::of(under).into(),
            ]);
            if worst.is_none_or(|(least, ..)| under < least) {
                worst = Some((under, (group, engine), &loaded.name));
            }
        }
    }
    let Some((under, (group, engine), loading)) = worst else {
        return Ok(if lacking.is_empty() {
            Finding::not_applicable(Text::from(
                "Only engines on lifting brackets: they are lowered until they run wet.",
            ))
        } else {
            Finding::unmeasured(lacking)
        });
    };
    let least = inches(LEAST_IN);
    let found = Measure::tape(under);
    let lies = if under.si() < 0.0 {
        say!("stands {} out of the water", Measure::tape(-under))
    } else {
        say!("lies {} under water", found)
    };
    let words = say!("The plate of the {} ", engine.label.as_str()).then(lies).then(say!(" at rest in `{}`.", loading));
    if under >= least && !lacking.is_empty() {
        return Ok(Finding::unmeasured(lacking));
    }
    let finding = if under < least {
        Finding::new(Verdict::Warn, words).remedy(lower(rig, group, engine, least - under))
    } else {
        Finding::new(Verdict::Pass, words)
    };
    Ok(finding.against(found, Limit::AtLeast(Measure::tape(least))).table(Table::new(
        "plate under water",
        &["engine", "loading", "under water"],
        rows,
    )))
}

/// The engine hung lower by whole rows, where there are so many and the plate's window allows it; else a longer shaft.
fn lower(rig: &Rig, group: &Group, engine: &Engine, by: Length) -> Remedy {
    let down = (by / inches(HOLE_ROW_STEP_IN)).si().ceil().max(1.0) as usize;
    let rows = Rows::of(rig, group, engine).ok();
    let now = engine.holes_up.reading().copied().map(usize::from);
    let row = now.and_then(|now| now.checked_sub(down));
    match row.zip(rows).filter(|(row, rows)| rows.allows(*row)) {
        Some((row, _)) => mend::change(
            say!("Hang it lower: {}.", holes_up(row)),
            [Change::to(format!("{}.holes_up", group.entry), row.to_string())],
        ),
        None => mend::look(say!(
            "It wants a shaft longer by {}, or more weight aft: look at the waterline and at the transom's height again first.",
            Measure::tape(mend::up(by, SHAFT_STEP_IN))
        )),
    }
}

/// Step in which a shaft is asked for. Common practice, no source.
const SHAFT_STEP_IN: f64 = 1.0;
