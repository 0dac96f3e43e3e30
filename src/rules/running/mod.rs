//! Running: how she planes with the new engines, and whether engines and propellers suit her.

mod full_throttle_band;
mod over_the_hump;
mod pitch;
mod porpoising;
mod slip;
mod tabs;
mod top_speed;
mod trim;
mod ventilation;

pub(super) use slip::{USUAL as USUAL_SLIP, share as share_slipped};

use uom::si::f64::{AngularVelocity, Velocity};

use super::{Finding, Rule, Verdict};
use crate::case::Case;
use crate::case::running::{Predicted, Runs};
use crate::case::trial::Doubtful;
use crate::job::{EngineGroup, Trial};
use crate::quantity::{Measure, Text, say};
use crate::reading::{Absent, reading};
use crate::rig::Missing;
use crate::working::{Sheet, Table};

/// Its rules, in the order of the report.
pub(super) const RULES: &[&Rule] = &[
    &full_throttle_band::FULL_THROTTLE_BAND,
    &pitch::PITCH,
    &slip::SLIP,
    &top_speed::TOP_SPEED,
    &over_the_hump::OVER_THE_HUMP,
    &trim::TRIM,
    &porpoising::PORPOISING,
    &tabs::TABS,
    &ventilation::VENTILATION,
];

/// How she runs with the new engines, or why nothing is told.
fn ready<'c>(case: &'c Case) -> Result<(&'c Runs, &'c Predicted), Absent> {
    let unasked = || Text::from("The job does not ask how she runs; `running: ()` in it does.");
    let runs = case.running().ok_or_else(|| Absent::NotApplicable(unasked()))?;
    runs.after.as_ref().map(|predicted| (runs, predicted)).map_err(Clone::clone)
}

/// Whether her engines hold her at any speed that the method tells.
fn planes(predicted: &Predicted) -> bool {
    predicted.range.points.iter().any(|point| point.is_held() && point.trim().is_some())
}

/// The finding where her greatest speed lies outside the method: only a trial tells.
fn past_the_method(predicted: &Predicted) -> Finding {
    if !planes(predicted) {
        return Finding::not_applicable(Text::from(NEVER_PLANES));
    }
    let why = Text::join(predicted.limits(), " ");
    let summary = Text::from("Her greatest speed with these engines is not told. ").then(why);
    Finding { missing: vec![trial_after()], ..Finding::new(Verdict::Unmeasured, summary) }
}

/// What is said of a boat that never planes.
const NEVER_PLANES: &str = "By the reckoning her engines do not bring her onto plane, and of other speeds it tells nothing (see “over the hump”).";

fn trial_after() -> Missing {
    Missing::one(reading!(Trial.after))
}

fn trial_before() -> Missing {
    Missing::one(reading!(Trial.before))
}

/// The marks on the new propellers' hubs.
fn propeller() -> Missing {
    Missing::one(reading!(EngineGroup.propeller))
}

/// What was found, with its doubt, against a range: pass inside it, warn where it lies outside by more than the doubt, and
/// unmeasured between, where a trial decides.
fn between(found: f64, doubt: f64, [least, most]: [f64; 2]) -> Verdict {
    let outside = (least - found).max(found - most);
    if outside <= 0.0 {
        Verdict::Pass
    } else if outside > doubt {
        Verdict::Warn
    } else {
        Verdict::Unmeasured
    }
}

/// Her engines' speed at full throttle: as the trial after found it, else as reckoned.
enum FullThrottle {
    Sailed(AngularVelocity),
    Reckoned(Doubtful<AngularVelocity>),
}

fn full_throttle(case: &Case, predicted: Option<&Predicted>) -> Option<FullThrottle> {
    let sailed = case.trial().and_then(|trials| trials.after.as_ref()?.full_throttle()?.engine);
    sailed.map(FullThrottle::Sailed).or_else(|| {
        let top = predicted?.top?;
        Some(FullThrottle::Reckoned(Doubtful { value: top.engine, doubt: top.engine_doubt }))
    })
}

/// Her greatest speed: as the trial after found it, else as reckoned; and whether it was sailed.
fn top_speed(case: &Case, predicted: &Predicted) -> Option<(Doubtful<Velocity>, bool)> {
    let sailed = case.trial().and_then(|trials| trials.after.as_ref()?.top()?.speed);
    sailed.map(|speed| (speed, true)).or_else(|| {
        let top = predicted.top?;
        Some((Doubtful { value: top.speed, doubt: top.speed_doubt }, false))
    })
}

/// How far the reckoning is trusted, for the sheet.
fn trusted(sheet: &mut Sheet, runs: &Runs) {
    match &runs.fit {
        Some(fit) => sheet.remark(say!(
            "Corrected by {} runs of the trial before: drag by {}, pitch at work by {}.",
            fit.used,
            format!("{:.3}", fit.factors.drag),
            format!("{:.3}", fit.factors.pitch)
        )),
        None => sheet.remark(Text::from(
            "No trial before corrects it: drag is taken for good within a fifth, pitch at work within a twelfth.",
        )),
    }
}

/// Other propellers, side by side.
fn ladder(predicted: &Predicted) -> Table {
    let rows = predicted
        .ladder()
        .into_iter()
        .map(|rung| {
            vec![
                say!("{}", u32::from(rung.screw.blades)),
                Text::from(Measure::tape(rung.screw.pitch)),
                Text::from(Measure::of(rung.speed)),
                Text::from(Measure::of(rung.engine)),
                say!("{} %", format!("{:.0}", 100.0 * rung.least_margin)),
            ]
        })
        .collect();
    Table::new(
        "other propellers",
        &["blades", "pitch", "greatest speed", "engines there", "least thrust left below it"],
        rows,
    )
}
