//! `trial/fuel`

use crate::rules::mend;
use uom::si::f64::{Ratio, VolumeRate};

use super::{engine, lacks_full_throttle, latest, ready, with};
use crate::case::Case;
use crate::job::{Cycle, Run};
use crate::physics::engine::{FULL_THROTTLE_GAL_HP_H, TWO_STROKE_MORE};
use crate::quantity::{Dimensioned, Measure, Text, horsepower, say};
use crate::reading::{gallon_per_hour, reading};
use crate::rig::Missing;
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::{Sheet, Term, number};

rule! {
    /// Fuel flow at full throttle against the power of the engines.
    ///
    /// **Why.** A flow meter of one engine read for two, or litres for gallons, spoils every comparison.
    ///
    /// **Limit.** 0.06 to 0.13 US gallons an hour for a horsepower; two-strokes to 0.16.
    ///
    /// **Source.** Common practice, no source (about 0.1).
    ///
    /// **When it warns.** Check the unit, the number of engines on the meter, and its calibration.
    FUEL = Trial "trial/fuel", judge;
}

/// Parts of the usual flow that are believed. Common practice, no source.
const BELIEVED: [f64; 2] = [0.6, 1.33];

fn judge(case: &Case) -> Judgement {
    let trials = ready(case)?;
    let (side, trial) = latest(trials)?;
    let engine = engine(case, side);
    if engine.is_some_and(|engine| engine.spec.cycle == Some(Cycle::Electric)) {
        return Ok(Finding::not_applicable(Text::from("Her engines burn no fuel.")));
    }
    let Some(run) = trial.full_throttle() else {
        return Ok(Finding::unmeasured(vec![lacks_full_throttle()]));
    };
    let (Some(fuel), Some(power)) = (run.fuel, trial.power) else {
        return Ok(Finding::unmeasured(vec![Missing::one(reading!(Run.fuel))]));
    };
    let more =
        if engine.is_some_and(|engine| engine.spec.cycle == Some(Cycle::TwoStroke)) { TWO_STROKE_MORE } else { 1.0 };
    let mut sheet = Sheet::default();
    let each = VolumeRate::from_si(gallon_per_hour(FULL_THROTTLE_GAL_HP_H * more).si());
    let usual = number((power / horsepower(1.0)).si()) * Term::new("of a horsepower", each);
    let usual = sheet.set("fu", "usual flow of so many horsepower", usual);
    let part: Ratio = fuel / usual.value();
    let [least, most] = BELIEVED.map(|part| usual.value() * part);
    let verdict = if least.exceeds(fuel) || fuel.exceeds(most) { Verdict::Warn } else { Verdict::Pass };
    let finding = Finding::new(
        verdict,
        say!(
            "{} at full throttle {}, {} of what such engines usually burn.",
            Measure::of(fuel),
            with(side),
            Measure::of(part)
        ),
    )
    .against(Measure::of(fuel), Limit::Within(Measure::of(least), Measure::of(most)))
    .working(sheet);
    Ok(match verdict {
        Verdict::Warn => finding.remedy(mend::look(
            "Check the meter: gallons or litres, one engine or all, and its calibration against a fill.",
        )),
        _ => finding,
    })
}
