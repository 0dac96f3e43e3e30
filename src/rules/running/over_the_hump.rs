//! `running/over-the-hump`

use uom::si::f64::Ratio;

use super::{ready, trial_before, trusted};
use crate::case::Case;
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
    /// **Limit.** At least a fifth more thrust than drag up to the speed at which she planes.
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
    let about: Vec<&Steady> = predicted.range.points.iter().filter(|point| point.speed <= up.planes * UP_TO).collect();
    let Some(least) = about.iter().min_by(|a, b| a.margin().total_cmp(&b.margin())) else {
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
    let verdict = if least.margin() >= LEAST_LEFT {
        Verdict::Pass
    } else if least.margin() + doubt < LEAST_LEFT || runs.fit.is_some() {
        Verdict::Warn
    } else {
        Verdict::Unmeasured
    };
    let summary = say!(
        "At {} {} of thrust meet {} of drag, {} more.",
        Measure::of(least.speed),
        Measure::of(least.available),
        Measure::of(least.thrust),
        Measure::of(left)
    )
    .then(time);
    let finding = Finding::new(verdict, summary)
        .against(Measure::of(left), Limit::AtLeast(Measure::of(Ratio::from_si(LEAST_LEFT))))
        .working(sheet);
    Ok(match verdict {
        Verdict::Warn => finding.remedy(Text::from(
            "Take less pitch or a fourth blade (the table of running/pitch says what is left with each), stow weight forward, or set tabs down while she climbs.",
        )),
        Verdict::Unmeasured => Finding { missing: vec![trial_before()], ..finding },
        _ => finding,
    })
}
