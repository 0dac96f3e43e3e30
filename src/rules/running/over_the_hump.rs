//! `running/over-the-hump`

use crate::rules::mend;
use uom::si::f64::Ratio;

use super::{ready, trial_before, trusted};
use crate::case::Case;
use crate::case::running::Predicted;
use crate::case::trial::Measured;
use crate::physics::matched::Steady;
use crate::quantity::{Dimensioned, Measure, Text, say};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::Sheet;

rule! {
    /// The thrust that is left at full throttle where she climbs onto her own bow wave, and the time that
    /// she takes to plane.
    ///
    /// **Why.** What is left there lifts a load out of the hole. With little of it she hangs bow up in
    /// front of a sea, and turns back in it.
    ///
    /// **Limit.** At least a fifth more thrust than drag up to the speed at which she planes; or no less over drag than engines
    /// that were seen to bring her on plane, which is the better test.
    ///
    /// **Source.** Savitsky 1964 with the factor of Blount and Fox 1976 at the hump, value from memory;
    /// Wageningen B-series (the thrust); common practice, no source (the fifth).
    ///
    /// **When it warns.** Less pitch or more blade, weight forward, tabs; or more power within the rating.
    OVER_THE_HUMP = Running "running/over-the-hump", judge;
}

/// Thrust left over drag. Common practice, no source.
const LEAST_LEFT: f64 = 0.2;
/// Up to this part of the planing speed. Common practice, no source.
const UP_TO: f64 = 1.25;

fn judge(case: &Case) -> Judgement {
    let (runs, predicted) = ready(case)?;
    let Some(up) = &predicted.getting_up else {
        let why = Text::from("No speed of hers lies within the method: what it takes to plane is not told.");
        return Ok(Finding { missing: vec![trial_before()], ..Finding::new(Verdict::Unmeasured, why) });
    };
    let Some(least) = hardest(predicted) else {
        return Ok(Finding::not_applicable(Text::from(
            "The method tells nothing of the speeds at which she begins to plane.",
        )));
    };
    let left = Ratio::from_si(least.margin());
    let doubt = runs.doubts.drag * (1.0 + least.margin());
    let mut sheet = Sheet::default();
    trusted(&mut sheet, runs);
    let tell = |sheet: &mut Sheet, what: &str, time: Option<[uom::si::f64::Time; 2]>| {
        if let Some([from, to]) = time {
            sheet.remark(say!("From rest to {}: {} to {}.", what, Measure::of(from), Measure::of(to)));
        }
    };
    tell(&mut sheet, "planing", up.to_plane);
    tell(&mut sheet, "20 mph", up.to_speed);
    let time = up.to_plane.map_or(Text::default(), |[from, to]| {
        say!(" She would plane in {} to {}.", Measure::of(from), Measure::of(to))
    });
    let planed = |sailed: Option<&Measured>| {
        let runs = sailed.map_or(&[][..], |sailed| &sailed.runs);
        runs.iter().filter_map(|run| run.speed).any(|speed| speed.value >= up.planes)
    };
    let old = runs.before.as_ref().ok().and_then(hardest).map(Steady::margin);
    let no_less = old.is_some_and(|old| least.margin() >= old);
    let (before, after) = case.trial().map_or((None, None), |trials| (trials.before.as_ref(), trials.after.as_ref()));
    let seen = if planed(after) {
        Some(" The trial with the new engines found her on plane.")
    } else if no_less && planed(before) {
        Some(" The old engines had no more by the same reckoning, and the trial found her on plane with them.")
    } else {
        None
    };
    let verdict = if least.margin() >= LEAST_LEFT || seen.is_some() {
        Verdict::Pass
    } else if least.margin() + doubt < LEAST_LEFT || runs.fit.is_some() {
        Verdict::Warn
    } else {
        Verdict::Unmeasured
    };
    let summary = say!(
        "At {} {} of thrust meet {} of drag.",
        Measure::of(least.speed),
        Measure::of(least.available),
        Measure::of(least.thrust)
    )
    .then(time)
    .then(Text::from(seen.filter(|_| least.margin() < LEAST_LEFT).unwrap_or_default()));
    let finding = Finding::new(verdict, summary).working(sheet).found(Measure::of(left));
    // Where a trial overrules the reckoning, no margin to its limit is told.
    let overruled = verdict == Verdict::Pass && least.margin() < LEAST_LEFT;
    let limit = Limit::AtLeast(Measure::of(Ratio::from_si(LEAST_LEFT)));
    let finding = if overruled { finding } else { finding.limit(limit) };
    Ok(match verdict {
        Verdict::Warn => finding.remedy(mend::care(
            "Take less pitch or a fourth blade (the table of “pitch” says what is left with each), stow weight forward, or set tabs down while she climbs.")),
        Verdict::Unmeasured => Finding { missing: vec![trial_before()], ..finding },
        _ => finding,
    })
}

/// Where least thrust is left over drag up to a little past the speed at which she planes.
fn hardest(predicted: &Predicted) -> Option<&Steady> {
    let up = predicted.getting_up.as_ref()?;
    let about = predicted.range.points.iter().filter(|point| point.speed <= up.planes * UP_TO);
    about.min_by(|a, b| a.margin().total_cmp(&b.margin()))
}
