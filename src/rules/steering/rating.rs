//! `steering/rating`

use super::driven;
use crate::case::Case;
use crate::case::rigging::asked;
use crate::job::Steering;
use crate::job::rigging::{self, Chosen};
use crate::quantity::{Dimensioned, Measure, Text, say};
use crate::reading::{All, reading};
use crate::rules::mend::{self, Change};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};

rule! {
    /// Power and speed that the steering is rated for, against the engines and the boat's greatest speed.
    ///
    /// **Why.** Steering that is too weak fails in the one turn in which it is needed.
    ///
    /// **Limit.** The rating on cylinder or cable: power of the main engines together, and speed.
    ///
    /// **Source.** The maker's rating; ABYC P-17 and P-21, ISO 10592 and ISO 8848 treat steering systems (no figure is taken
    /// from them).
    ///
    /// **When it warns.** It fails over a rating.
    RATING = Steering "steering/rating", judge;
}

fn judge(case: &Case) -> Judgement {
    let steering = case.rig.job.steering.as_ref().copied();
    let so = match steering {
        Some(Steering::RemoteMechanical) => Steering::RemoteMechanical,
        _ => Steering::RemoteHydraulic,
    };
    let rig = super::steered(case, so)?;
    let cylinder = rig.cylinder.spec();
    let cable = rig.cable.as_ref();
    let mechanical = so == Steering::RemoteMechanical || (steering.is_none() && cylinder.is_none() && cable.is_some());
    let (rated_power, rated_speed, declared) = if mechanical {
        (
            cable.and_then(|cable| cable.rated_power.as_ref()),
            cable.and_then(|cable| cable.rated_speed.as_ref()),
            reading!(rigging::SteeringRig.cable),
        )
    } else {
        (
            cylinder.and_then(|cylinder| cylinder.rated_power.as_ref()),
            cylinder.and_then(|cylinder| cylinder.rated_speed.as_ref()),
            reading!(rigging::SteeringRig.cylinder),
        )
    };
    let (power, speed) = driven(case);
    let power = power.map_err(|missing| missing.into_iter().next().unwrap_or_else(|| case.rig.after.missing()));
    let (power, rated) = (power, asked(rated_power, declared).ask()).all()?;
    let (found, limit) = (Measure::of(power), Measure::of(rated.value));
    if power.exceeds(rated.value) {
        return Ok(Finding::new(
            Verdict::Fail,
            say!("The engines make {} together; the steering is rated for {}.", found, limit),
        )
        .remedy(mend::change(
            say!("Fit steering that is rated for at least {}.", found),
            with_rating(rig, mechanical, "rated_power", found),
        ))
        .buys("steering system", say!("rated for at least {}", found))
        .against(found, Limit::AtMost(limit)));
    }
    if let (Ok(speed), Some(rated_speed)) = (&speed, rated_speed)
        && speed.exceeds(rated_speed.value)
    {
        let (fast, to) = (Measure::of(*speed), Measure::of(rated_speed.value));
        return Ok(Finding::new(Verdict::Fail, say!("She runs {}; the steering is rated to {}.", fast, to))
            .remedy(mend::change(
                say!("Fit steering that is rated to at least {}, or keep her below that speed.", fast),
                with_rating(rig, mechanical, "rated_speed", fast),
            ))
            .buys("steering system", say!("rated to at least {}", fast))
            .against(fast, Limit::AtMost(to)));
    }
    let of_speed = match (&speed, rated_speed) {
        (Ok(_), Some(_)) => Text::from(" Her speed is within its rating too."),
        _ => Text::from(" Its speed rating was not compared: one of the two speeds is not told."),
    };
    Ok(Finding::new(
        Verdict::Pass,
        say!("The engines make {} together; the steering is rated for {}.", found, limit).then(of_speed),
    )
    .against(found, Limit::AtMost(limit)))
}

/// The cable or the cylinder, with this rating raised to so much.
fn with_rating(rig: &rigging::SteeringRig, mechanical: bool, field: &str, to: Measure) -> Vec<Change> {
    if mechanical {
        return vec![Change::told(format!("rigging.steering.cable.{field}"), to)];
    }
    let fields = [(field, mend::quoted(to))];
    rig.cylinder.spec().map_or(Vec::new(), |spec| Change::like("rigging.steering.cylinder", spec, &fields).to_vec())
}
