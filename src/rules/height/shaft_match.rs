//! `height/shaft-match`

use crate::job::{ShaftOption, Sitting};
use crate::rig::{Group, Rig};
use crate::rules::mend::{self, Change, Remedy};
use uom::si::f64::Length;

use crate::case::{Case, Rows, fixed_engines, holes_up};
use crate::quantity::{Measure, Text, inches, say};
use crate::reading::All;
use crate::rig::{Engine, Missing};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Verdict};

rule! {
    /// Each engine's shaft against the transom height at its own centreline: whether any row of holes
    /// brings the anti-ventilation plate into its window.
    ///
    /// **Why.** A shaft too short sucks air and loses water pressure in turns; one too long drags its
    /// gearcase, sprays the well and hits bottom first. Neither can be mended by mounting.
    ///
    /// **Limit.** The window of height/plate-window, reached from one of the bracket's hole rows,
    /// 3/4 in apart. Off the centreline the bottom of a vee is higher by the distance times the
    /// tangent of the deadrise. An auxiliary engine may hang lower than its window, not higher.
    ///
    /// **Source.** Common practice, no source (the window, the two inches); trade association bolt pattern in general
    /// use (the step between rows).
    ///
    /// **When it warns.** Where no row fits by 2 in at the most: a pad, or the bracket set higher or lower, brings it there. It fails
    /// where it is more (unless an old engine hung there with the same shaft: then the height is to be taken there first), or more than 1/2 in and another shaft of the class fits: order that, or change the drop of the bracket.
    SHAFT_MATCH = Height "height/shaft-match", judge;
}

fn judge(case: &Case) -> Judgement {
    let rig = case.rig;
    if rig.after.is_empty() {
        (rig.after.ask(), rig.job.transom.height().ask(), rig.job.boat.deadrise().ask()).all()?;
    }
    let mut missing = Vec::new();
    let mut worst: Option<Finding> = None;
    for (group, engine) in fixed_engines(rig) {
        match Rows::of(rig, group, engine) {
            Ok(rows) => one(rig, group, engine, rows).keep_worse(&mut worst),
            Err(lacking) => Missing::gather(&mut missing, lacking),
        }
    }
    Ok(match worst {
        Some(finding) if missing.is_empty() || finding.verdict < Verdict::Unmeasured => finding,
        _ if missing.is_empty() => super::no_rows(rig),
        _ => Finding::unmeasured(missing),
    })
}

fn one(rig: &Rig, group: &Group, engine: &Engine, rows: Rows) -> Finding {
    let nearest = rows
        .heights
        .iter()
        .copied()
        .min_by(|a, b| {
            let off = |height: &Length| rows.outside(*height).value.abs();
            off(a).total_cmp(&off(b))
        })
        .unwrap_or_default();
    let gap = rows.outside(nearest);
    let limit = super::window(&rows);
    let found = Measure::tape(nearest);
    let label = engine.label.as_str();
    let hung_alike = hung_alike(rig, group, engine);
    let finding = match rows.best() {
        Some(row) => Finding::new(
            Verdict::Pass,
            say!(
                "The shaft of the {} suits her: {}, the plate stands ",
                label,
                holes_up(row)
            )
            .then(super::over_the_bottom(rows.heights[row]))
            .then(Text::from(".")),
        )
        .against(Measure::tape(rows.heights[row]), limit),
        None => Finding::new(
            if !hung_alike && (gap.abs() > inches(NEAR_IN) || better_shaft(engine, &rows, gap).is_some()) {
                Verdict::Fail
            } else {
                Verdict::Warn
            },
            say!(
                "No hole row brings the plate of the {} into its window; the nearest leaves it {} {}.",
                label,
                Measure::tape(gap.abs()),
                if gap.value < 0.0 { "too low" } else { "too high" }
            ),
        )
        .remedy(if hung_alike {
            let there = if group.engines.len() > 1 { "engines themselves" } else { label };
            mend::look(say!(
                "The old engine hung there with the same shaft: take the transom's height at the {}, from the top straight down to the bottom, and write it under `heights`.",
                there
            ))
        } else {
            remedy(rig, group, engine, &rows)
        })
        .against(found, limit),
    };
    let table = rows.table(label);
    finding.table(table).working(rows.sheet)
}

/// Whether an old engine hung at the same place off the centreline with the same shaft, while the transom's height was not taken
/// there: the height is the likelier to be wrong.
fn hung_alike(rig: &Rig, group: &Group, engine: &Engine) -> bool {
    let near = |a: Length, b: Length| (a - b).abs() <= inches(SAME_PLACE_IN);
    let taken_there = engine.y.value == 0.0 || rig.job.transom.height_at(engine.y).is_some();
    let shaft = engine.rest_to_plate.reading().map(|shaft| shaft.value);
    !taken_there
        && group.bracket.is_none()
        && rig.before.engines().any(|(hung, old)| {
            let same_shaft = old.rest_to_plate.reading().zip(shaft).is_some_and(|(old, new)| near(old.value, new));
            hung.bracket.is_none() && same_shaft && near(old.y, engine.y)
        })
}

/// Places and shafts that differ by less are one. Common practice, no source.
const SAME_PLACE_IN: f64 = 2.0;

/// By so much no row may miss the window before the shaft is called wrong. Common practice, no source: what a pad or a bracket set
/// otherwise makes up for; shafts are 5 in apart.
const NEAR_IN: f64 = 2.0;

/// What a pad, or bracket and bolts set a little otherwise, make up for before another shaft is ordered. Common practice, no source.
const PAD_IN: f64 = 0.5;

/// The shaft to order in place of the one that misses the window by so much.
fn better_shaft<'e>(engine: &'e Engine, rows: &Rows, gap: Length) -> Option<&'e ShaftOption> {
    other_shaft(engine, rows).filter(|_| gap.abs() > inches(PAD_IN))
}

/// Another shaft of the class of which a row fits.
fn other_shaft<'e>(engine: &'e Engine, rows: &Rows) -> Option<&'e ShaftOption> {
    let shaft = engine.rest_to_plate.reading()?;
    engine.spec.shafts.iter().find(|choice| {
        let shift = shaft.value - choice.rest_to_plate.value;
        rows.heights.iter().any(|height| rows.outside(*height + shift).value == 0.0)
    })
}

/// The shaft of the class that would do, or how much shorter or longer it has to be.
fn remedy(rig: &Rig, group: &Group, engine: &Engine, rows: &Rows) -> Remedy {
    let Some(shaft) = engine.rest_to_plate.reading() else {
        return mend::look("Read the shaft length off the engine.");
    };
    let gap = rows.outside(rows.heights[rows.nearest()]);
    // What is changed in the job is changed for all of them.
    let label = if group.engines.len() > 1 { "engines" } else { engine.label.as_str() };
    if let Some(choice) = better_shaft(engine, rows, gap) {
        let name = Measure::tape(choice.name.value);
        let words = match rig.job.sitting {
            Sitting::AsFitted => say!(
                "The {} shaft of the same class fits in one of its rows: ask the maker whether the {} can be changed to it, or change the engine.",
                name,
                label
            ),
            _ => say!("Order the {} with the {} shaft of the same class: one of its rows fits.", label, name),
        };
        let mut changes = vec![Change::told(format!("{}.shaft", group.entry), name)];
        let shift = shaft.value - choice.rest_to_plate.value;
        if let (Some(_), Some(row)) = (engine.holes_up.reading(), rows.best_shifted(shift)) {
            changes.push(Change::to(format!("{}.holes_up", group.entry), row.to_string()));
        }
        return mend::change(words, changes);
    }
    if gap.abs() <= inches(NEAR_IN) {
        let hung = group.bracket.is_some();
        return mend::yard(match (hung, gap.value < 0.0) {
            (true, low) => {
                say!(
                    "Set the bracket of the {} {} {}.",
                    label,
                    Measure::tape(gap.abs()),
                    if low { "higher" } else { "lower" }
                )
            }
            (false, true) => {
                say!("Raise the {} by {}, with a pad on the transom's top.", label, Measure::tape(gap.abs()))
            }
            (false, false) => say!(
                "Run her and look whether it draws air in turns; if it does, it wants {} more of shaft, or a bracket that sets it lower.",
                Measure::tape(gap.abs())
            ),
        });
    }
    let middle = (rows.window.0 + rows.window.1) / 2.0;
    let needed = rows.lowest.value() + shaft.value - middle;
    mend::yard(say!(
        "A shaft of about {} from the bracket's rest to the plate would fit in the lowest row; this class has none, so the bracket's drop or the class must change.",
        Measure::tape(needed)
    ))
}
