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
    let fast = speed.as_ref().ok().zip(rated_speed).filter(|(speed, rated)| speed.exceeds(rated.value));
    // What is fitted is rated for both.
    let mut ratings: Vec<(&str, Measure)> = Vec::new();
    ratings.extend(power.exceeds(rated.value).then_some(("rated_power", found)));
    ratings.extend(fast.map(|(speed, _)| ("rated_speed", Measure::of(*speed))));
    let mut worst: Option<Finding> = None;
    if power.exceeds(rated.value) {
        Finding::new(Verdict::Fail, say!("The engines make {} together; the steering is rated for {}.", found, limit))
            .remedy(mend::change(
                say!("Fit steering that is rated for at least {}.", found),
                with_ratings(rig, mechanical, &ratings),
            ))
            .buys("steering system", say!("rated for at least {}", found))
            .against(found, Limit::AtMost(limit))
            .keep_worse(&mut worst);
    }
    if let Some((speed, rated_speed)) = fast {
        let (fast, to) = (Measure::of(*speed), Measure::of(rated_speed.value));
        Finding::new(Verdict::Fail, say!("She runs {}; the steering is rated to {}.", fast, to))
            .remedy(mend::change(
                say!("Fit steering that is rated to at least {}, or keep her below that speed.", fast),
                with_ratings(rig, mechanical, &ratings),
            ))
            .buys("steering system", say!("rated to at least {}", fast))
            .against(fast, Limit::AtMost(to))
            .keep_worse(&mut worst);
    }
    if let Some(worst) = worst {
        return Ok(worst);
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

/// The cable or the cylinder, with these ratings raised to so much.
fn with_ratings(rig: &rigging::SteeringRig, mechanical: bool, ratings: &[(&str, Measure)]) -> Vec<Change> {
    if mechanical {
        let told = |(field, to): &(&str, Measure)| Change::told(format!("rigging.steering.cable.{field}"), *to);
        return ratings.iter().map(told).collect();
    }
    let fields: Vec<(&str, String)> = ratings.iter().map(|(field, to)| (*field, mend::quoted(*to))).collect();
    rig.cylinder.spec().map_or(Vec::new(), |spec| Change::like("rigging.steering.cylinder", spec, &fields).to_vec())
}
