//! `steering/toe`

use crate::case::Case;
use crate::case::rigging::asked;
use crate::job::rigging;
use crate::physics::rigging::steering::ARM_M;
use crate::physics::rigging::tie_bar::{Linkage, MOST_TOE_DEG};
use crate::quantity::{Dimensioned, Measure, Text, degrees, say};
use crate::reading::reading;
use crate::rules::mend::{self, Change};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::Sheet;
use uom::si::f64::{Angle, Length};

rule! {
    /// Toe of a pair of engines over the sweep, from arms, spread and length of the bar between them: a linkage of four bars.
    ///
    /// **Why.** Engines that do not point the same way fight each other, slow her, and wear the bar's ends.
    ///
    /// **Limit.** 2 degrees between them anywhere from lock to lock. Arms that were not measured are taken as 8 in and straight
    /// ahead; steering as far as the engines' sheet gives it.
    ///
    /// **Source.** Common practice, no source (the toe, the arm); the linkage in closed form.
    ///
    /// **When it warns.** It fails where the bar does not join both pins somewhere on the way; it warns over 2 degrees, and
    /// names the bar with which both stand ahead.
    TOE = Steering "steering/toe", judge;
}

/// How far engines are steered each way where no sheet tells. Common practice, no source: 30 deg.
const LOCK_DEG: f64 = 30.0;

/// Less than this is told as in line.
const TOLD_DEG: f64 = 0.05;

fn judge(case: &Case) -> Judgement {
    let Some(rig) = &case.rig.job.rigging.steering else {
        return Ok(Finding::not_applicable(Text::from(super::NOTHING_TOLD)));
    };
    let mains = case.rig.after.mains();
    let [one, other] = mains.as_slice() else {
        return Ok(Finding::not_applicable(Text::from(if mains.len() < 2 {
            "No bar joins a single engine."
        } else {
            "Only pairs are looked at."
        })));
    };
    let link = rig.tie_bar().ask()?;
    let length = asked(link.length.as_ref(), reading!(rigging::SteeringRig.tie_bar)).ask()?;
    let linkage = Linkage {
        spread: (one.y - other.y).abs().si(),
        arm: link.arm.as_ref().map_or(ARM_M, |arm| arm.value.si()),
        splay: link.splay.as_ref().map_or(0.0, |splay| splay.value.si()),
        bar: length.value.si(),
    };
    let lock = one.sheet.reading().map_or(degrees(LOCK_DEG), |sheet| sheet.steering);
    let parallel = Measure::tape(Length::from_si(linkage.parallel_bar()));
    let mut sheet = Sheet::default();
    sheet.remark(say!(
        "Linkage in closed form, 321 angles of the port engine: axes {} apart, arms {}, turned inboard {}, bar {}, steered {} each way.",
        Measure::tape(Length::from_si(linkage.spread)),
        Measure::tape(Length::from_si(linkage.arm)),
        Measure::of(Angle::from_si(linkage.splay)),
        Measure::tape(length.value),
        Measure::of(lock)
    ));
    let remedy = mend::change(
        say!("Set the bar to {}, pin to pin: then both stand ahead together.", parallel),
        [Change::told("rigging.steering.tie_bar.length", parallel)],
    );
    let worst = match linkage.largest_toe(lock.si()) {
        Ok(worst) => worst,
        Err(_) => {
            return Ok(Finding::new(
                Verdict::Fail,
                say!("A bar of {} does not join both pins all the way from lock to lock.", Measure::tape(length.value)),
            )
            .remedy(remedy)
            .buys("tie bar", say!("{}, pin to pin", parallel))
            .working(sheet));
        }
    };
    let found = Measure::of(Angle::from_si(worst.0.abs()));
    let most = degrees(MOST_TOE_DEG);
    let at = Measure::of(Angle::from_si(worst.1.abs()));
    let ahead = Measure::of(Angle::from_si(linkage.toe(0.0).map_or(0.0, f64::abs)));
    let summary = if worst.0.abs() < degrees(TOLD_DEG).si() {
        Text::from("The engines stand in line all the way from lock to lock.")
    } else {
        say!("The engines stand up to {} out of line, with the port one turned {}; ahead, {}.", found, at, ahead)
    };
    let finding = if Angle::from_si(worst.0.abs()).exceeds(most) {
        Finding::new(Verdict::Warn, summary).remedy(remedy)
    } else {
        Finding::new(Verdict::Pass, summary)
    };
    Ok(finding.against(found, Limit::AtMost(Measure::of(most))).working(sheet))
}
