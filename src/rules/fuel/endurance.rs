//! `fuel/endurance`

use super::told;
use crate::case::Case;
use crate::case::rigging::fuel::{burning, rate};
use crate::job::{self, Liquid};
use crate::physics::rigging::fuel::USABLE;
use crate::quantity::{Dimensioned, Measure, Style, Text, gallons, say};
use crate::reading::reading;
use crate::rig::Missing;
use crate::rules::mend::{self, Change};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::{Sheet, Term, number};
use uom::si::f64::{Length, Ratio, Time, Volume, VolumeRate};

rule! {
    /// How long her fuel lasts: at full throttle by the engines' rate, and how far at the trial's cruise.
    ///
    /// **Why.** More power on the same tank comes home on the last gallon.
    ///
    /// **Limit.** What the owner asks for: hours at full throttle, or a distance at cruise. A tenth of the tanks is kept back.
    ///
    /// **Source.** Common practice, no source (the tenth, the rate by power); the owner's own wish.
    ///
    /// **When it warns.** It warns where she does not get so far. Where nothing was asked for, it says how far, and judges nothing.
    ENDURANCE = Fuel "fuel/endurance", judge;
}

fn judge(case: &Case) -> Judgement {
    let rig = told(case)?;
    let asked = rig.hours.is_some() || rig.distance.is_some();
    let tanks = case.rig.job.weights.tanks.iter().filter(|tank| tank.holds == Liquid::Fuel);
    let tanks = tanks.filter_map(|tank| tank.capacity.as_ref());
    let capacity = tanks.clone().map(|capacity| capacity.value).fold(Volume::from_si(0.0), |sum, one| sum + one);
    let mut sheet = Sheet::default();
    let mut missing = Vec::new();
    if capacity.si() <= 0.0 && !asked {
        return Ok(Finding::not_applicable(Text::from("No range was asked for, and no tank is told.")));
    }
    if capacity.si() <= 0.0 {
        missing.push(Missing::one(reading!(job::Weights.tanks)));
    }
    let flow = rate(&mut sheet, case);
    missing.extend(flow.as_ref().err().cloned());
    let Ok(flow) = flow else { return Ok(Finding::unmeasured(missing)) };
    if !missing.is_empty() || flow.value().si() <= 0.0 {
        return Ok(Finding::unmeasured(missing));
    }
    let engines = burning(case).len() as f64;
    let all = sheet.set("Qa", "all engines at full throttle", number(engines) * flow);
    sheet.told("Vt", tanks.clone().next());
    let hours = sheet.set(
        "te",
        "hours at full throttle with a tenth kept back",
        Term::new("Vt", capacity) * number(USABLE) / all,
    );
    let lasts = hours.measure();
    let reach =
        reach(capacity, rig.burn.as_ref().map(|burn| burn.value), rig.cruise.as_ref().map(|cruise| cruise.value));
    let mut summary = say!("The fuel lasts {} at full throttle, a tenth kept back.", lasts);
    if let Some(reach) = reach {
        summary = summary.then(say!(" At the trial's cruise she goes {}.", Measure::styled(reach, Style::Distance)));
    }
    if let (Some(wanted), Some(reach)) = (&rig.distance, reach) {
        let (found, limit) = (Measure::styled(reach, Style::Distance), Measure::styled(wanted.value, Style::Distance));
        let enough = !wanted.value.exceeds(reach);
        return Ok(judged(case, enough, summary, capacity, Ratio::from_si(wanted.value.si() / reach.si()))
            .against(found, Limit::AtLeast(limit))
            .working(sheet));
    }
    if let Some(wanted) = &rig.hours {
        let enough = !wanted.value.exceeds(hours.value());
        let short = Ratio::from_si(wanted.value.si() / hours.value().si());
        return Ok(judged(case, enough, summary, capacity, short)
            .against(lasts, Limit::AtLeast(Measure::of(wanted.value)))
            .working(sheet));
    }
    Ok(Finding::not_applicable(summary.then(say!(" No range was asked for."))).found(lasts).working(sheet))
}

/// A tank as it is looked for: up to the next gallon.
fn rounded_up(volume: Volume) -> Volume {
    let step = gallons(1.0);
    step * (volume / step).si().ceil()
}

/// How far she goes on what can be burnt.
fn reach(capacity: Volume, burn: Option<VolumeRate>, cruise: Option<uom::si::f64::Velocity>) -> Option<Length> {
    let hours: Time = capacity * USABLE / burn?;
    Some(hours * cruise?)
}

fn judged(case: &Case, enough: bool, summary: Text, capacity: Volume, short: Ratio) -> Finding {
    if enough {
        return Finding::new(Verdict::Pass, summary);
    }
    let wanted = rounded_up(capacity * short);
    Finding::new(Verdict::Warn, summary).remedy(mend::change(
        say!("It takes tanks of {} together.", Measure::of(wanted)),
        case.rig.job.weights.tanks.iter().enumerate().filter(|(_, tank)| tank.holds == Liquid::Fuel).filter_map(
            |(i, tank)| {
                let larger = tank.capacity.as_ref()?.value * (wanted / capacity);
                Some(Change::to(format!("weights.tanks[{i}].capacity"), format!("\"{:.6} L\"", larger.si() * 1e3)))
            },
        ),
    ))
}
