//! `running/top-speed`

use crate::rules::mend;
use uom::si::f64::Velocity;

use super::{past_the_method, ready, top_speed, trusted};
use crate::case::Case;
use crate::job::{Running, Steering};
use crate::quantity::{Dimensioned, Measure, Text, say};
use crate::reading::{mph, reading};
use crate::rig::Missing;
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::Sheet;

rule! {
    /// Her greatest speed with the new engines against what hull and steering are rated for, and against
    /// the speed for which her transom was judged.
    ///
    /// **Why.** A hull beyond its speed chine-walks or stuffs; a steering beyond its own loses hold of
    /// the engine. Loads on the transom grow with the square of it.
    ///
    /// **Limit.** No more than the builder of the hull and the maker of the steering allow; where
    /// neither says, 30 mph with a tiller and 50 mph with a single mechanical cable. The speed of
    /// `operating.top_speed` is not exceeded by more than the reckoning is worth.
    ///
    /// **Source.** The builder's and the maker's ratings; common practice, no source (tiller and cable);
    /// Savitsky's planing prism with the Wageningen B-series (the speed).
    ///
    /// **When it warns.** Ask the builder; change the steering; or judge the transom at the greater speed.
    TOP_SPEED = Running "running/top-speed", judge;
}

/// Speeds to which a tiller and a single cable are commonly kept, mph. Common practice, no source.
const TILLER_MPH: f64 = 30.0;
const CABLE_MPH: f64 = 50.0;

/// What her speed is held against.
struct Held {
    speed: Velocity,
    what: &'static str,
    rating: bool,
    remedy: &'static str,
}

fn judge(case: &Case) -> Judgement {
    let (runs, predicted) = ready(case)?;
    let Some((top, sailed)) = top_speed(case, predicted) else {
        return Ok(past_the_method(predicted));
    };
    let rig = case.rig;
    let asked = rig.job.running.clone().unwrap_or_default();
    let mut limits = Vec::new();
    if let Some(rated) = &asked.hull_rated {
        limits.push(Held {
            speed: rated.value,
            what: "the hull is rated for",
            rating: true,
            remedy: "Take less power or pitch, or a letter of the builder for more speed.",
        });
    }
    match (&asked.steering_rated, rig.job.steering().reading()) {
        (Some(rated), _) => limits.push(Held {
            speed: rated.value,
            what: "the steering is rated for",
            rating: true,
            remedy: "Fit steering that is rated for her speed.",
        }),
        (None, Some(Steering::Tiller)) => limits.push(Held {
            speed: Velocity::from_si(mph(TILLER_MPH).si()),
            what: "a tiller is commonly kept to",
            rating: false,
            remedy: "Give her a wheel, or keep her below that speed.",
        }),
        (None, Some(Steering::RemoteMechanical)) => limits.push(Held {
            speed: Velocity::from_si(mph(CABLE_MPH).si()),
            what: "a single cable is commonly kept to",
            rating: false,
            remedy: "Fit hydraulic steering, or a second cable.",
        }),
        _ => {}
    }
    if let Some(judged) = rig.job.operating.as_ref().and_then(|operating| operating.top_speed.as_ref()) {
        limits.push(Held {
            speed: judged.value,
            what: "her transom was judged for",
            rating: false,
            remedy: "Write the greater speed as operating.top_speed, so that the transom is judged for it.",
        });
    }
    let mut sheet = Sheet::default();
    if !sailed {
        trusted(&mut sheet, runs);
    }
    let words = if sailed { "The trial found" } else { "She would run" };
    let said = say!("{} {} ± {}", words, Measure::of(top.value), Measure::of(top.doubt));
    if let (true, Some(top)) = (sailed, predicted.top) {
        trusted(&mut sheet, runs);
        sheet.remark(say!("Reckoned were {} ± {}.", Measure::of(top.speed), Measure::of(top.speed_doubt)));
    }
    let Some(least) = limits.iter().min_by(|a, b| a.speed.si().total_cmp(&b.speed.si())) else {
        let missing = vec![Missing::one(reading!(Running.hull_rated))];
        return Ok(Finding {
            missing,
            ..Finding::new(Verdict::Unmeasured, said.then(Text::from("; nothing tells what she is rated for.")))
        }
        .found(Measure::of(top.value))
        .working(sheet));
    };
    // The gravest of all: a rating is exceeded where it is by more than the doubt.
    let beyond = |held: &Held| (top.value - held.speed).si() > top.doubt.si();
    let held = limits.iter().filter(|held| beyond(held)).min_by_key(|held| !held.rating).unwrap_or(least);
    let verdict = match (beyond(held), held.rating) {
        (true, true) => Verdict::Fail,
        (true, false) => Verdict::Warn,
        (false, true) if top.value > held.speed => Verdict::Unmeasured,
        _ => Verdict::Pass,
    };
    let finding = Finding::new(verdict, said.then(say!("; {} {}.", held.what, Measure::of(held.speed))))
        .against(Measure::of(top.value), Limit::AtMost(Measure::of(held.speed)))
        .working(sheet);
    Ok(match verdict {
        Verdict::Fail | Verdict::Warn => finding.remedy(mend::care(held.remedy)),
        Verdict::Unmeasured => Finding { missing: vec![super::trial_before()], ..finding },
        _ => finding,
    })
}
