//! `running/pitch`

use crate::job::Role;
use crate::rig::{Group, Rig};
use crate::rules::mend::{self, Change};
use uom::si::f64::{AngularVelocity, Length};

use super::{FullThrottle, full_throttle, ladder, past_the_method, propeller, ready, trusted};
use crate::case::Case;
use crate::quantity::{Dimensioned, Measure, inches, say};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::Sheet;

rule! {
    /// The pitch of the new propellers against the one with which the engines turn well up in their band.
    ///
    /// **Why.** Pitch is her gear. Too much of it and she does not get over the hump with a load; too
    /// little and she gives away speed and fuel.
    ///
    /// **Limit.** Within two inches of the pitch that turns the engines at two thirds of their band.
    ///
    /// **Source.** The Wageningen B-series behind Savitsky's planing prism; common practice, no source
    /// (where in the band, and the two inches).
    ///
    /// **When it warns.** Try the pitch that the finding names before more are bought.
    PITCH = Running "running/pitch", judge;
}

/// Where in the band the engines shall turn. Common practice, no source.
const IN_BAND: f64 = 2.0 / 3.0;
/// How far a pitch may stand from that. Common practice, no source.
const WITHIN_IN: f64 = 2.0;
/// What an inch of pitch is worth where a trial tells the engines' speed. Common practice, no source: 150 to 200 rpm.
const AN_INCH_RPM: f64 = 175.0;

fn judge(case: &Case) -> Judgement {
    let (runs, predicted) = ready(case)?;
    let Some([from, to]) = predicted.built.band else {
        return Ok(Finding::unmeasured(vec![propeller()]));
    };
    let wanted: AngularVelocity = from + (to - from) * IN_BAND;
    let own = predicted.built.screw;
    let mut sheet = Sheet::default();
    trusted(&mut sheet, runs);
    let sailed = match full_throttle(case, Some(predicted)) {
        Some(FullThrottle::Sailed(engine)) if own.told => Some(engine),
        _ => None,
    };
    let suits = match sailed {
        Some(engine) => {
            let off = (engine - wanted).si() / (AN_INCH_RPM * std::f64::consts::TAU / 60.0);
            sheet.remark(say!(
                "Of the trial's engine speed {}: an inch is taken as {} rpm.",
                Measure::of(engine),
                format!("{AN_INCH_RPM:.0}")
            ));
            own.pitch + inches(off.round())
        }
        // Where her own greatest speed is not told, another pitch's is the one that the method happens to reach.
        None if predicted.top.is_none() => return Ok(past_the_method(predicted)),
        None => match predicted.pitch_for(wanted) {
            Some(rung) => rung.screw.pitch,
            None => return Ok(past_the_method(predicted)),
        },
    };
    let shown = Measure::tape(suits);
    if !own.told {
        let summary = say!(
            "The new propellers are not told; {} blades of {} by about {} would suit.",
            u32::from(own.blades),
            Measure::tape(own.diameter),
            shown
        );
        return Ok(Finding { missing: vec![propeller()], ..Finding::new(Verdict::Unmeasured, summary) }
            .found(shown)
            .working(sheet)
            .table(ladder(predicted)));
    }
    let off: Length = own.pitch - suits;
    let within = inches(WITHIN_IN);
    let verdict = if off.abs().exceeds(within) { Verdict::Warn } else { Verdict::Pass };
    let finding = Finding::new(
        verdict,
        say!(
            "Her propellers are of {} pitch; {} would turn the engines at {}.",
            Measure::tape(own.pitch),
            shown,
            Measure::of(wanted)
        ),
    )
    .against(Measure::tape(own.pitch), Limit::Within(Measure::tape(suits - within), Measure::tape(suits + within)))
    .working(sheet)
    .table(ladder(predicted));
    Ok(match verdict {
        Verdict::Warn => finding.remedy(mend::change(
            say!("Try {} of pitch, borrowed or on approval, before it is bought.", shown),
            mains(case.rig).map(|group| Change::told(format!("{}.propeller.pitch", group.entry), shown)),
        )),
        _ => finding,
    })
}

/// The groups of the main engines.
fn mains(rig: &Rig) -> impl Iterator<Item = &Group> {
    rig.after.groups.iter().filter(|group| group.engines.iter().any(|engine| engine.role == Role::Main))
}
