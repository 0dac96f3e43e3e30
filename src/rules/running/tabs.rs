//! `running/tabs`

use crate::rules::mend::{self, Change};
use uom::si::f64::Velocity;

use super::ready;
use crate::case::Case;
use crate::job::Running;
use crate::physics::matched::Craft;
use crate::physics::running::MOST_DEFLECTION;
use crate::quantity::{Dimensioned, Measure, Text, degrees, say};
use crate::reading::{mph, reading};
use crate::rig::Missing;
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::Sheet;

rule! {
    /// What the trim tabs, as they stand, do to her greatest speed.
    ///
    /// **Why.** Tabs help her over the hump and stop porpoising; left down at speed they drag, and push the
    /// bow down until it steers.
    ///
    /// **Limit.** No more than two miles an hour lost to them at full speed; down by no more than 15
    /// degrees.
    ///
    /// **Source.** Savitsky and Brown 1976, value from memory (lift and drag); common practice, no source
    /// (the two miles an hour).
    ///
    /// **When it warns.** Take the tabs up as she gathers speed.
    TABS = Running "running/tabs", judge;
}

/// Speed that tabs may cost. Common practice, no source.
const COST_MPH: f64 = 2.0;

fn judge(case: &Case) -> Judgement {
    let (_, predicted) = ready(case)?;
    let Some(asked) = case.rig.job.running.as_ref().and_then(|running| running.tabs.as_ref()) else {
        return Ok(Finding::not_applicable(Text::from("The job tells no trim tabs.")));
    };
    let Some(down) = &asked.down else {
        return Ok(Finding::unmeasured(vec![Missing {
            measurement: reading!(Running.tabs),
            of: Some("how far down they stand".to_owned()),
        }]));
    };
    let most = degrees(MOST_DEFLECTION);
    if down.value.exceeds(most) {
        return Ok(Finding::new(
            Verdict::Warn,
            say!("The tabs stand {} down; beyond {} they stall.", Measure::of(down.value), Measure::of(most)),
        )
        .against(Measure::of(down.value), Limit::AtMost(Measure::of(most)))
        .remedy(mend::change(
            say!("Take them up, and set them down no farther than she needs; never beyond {}.", Measure::of(most)),
            taken_up(),
        )));
    }
    let craft = &predicted.built.craft;
    let up = Craft { tabs: None, ..craft.clone() }.range();
    let (with, without) = (predicted.range.top.as_ref(), up.top.as_ref());
    let mut sheet = Sheet::default();
    let allowed = Velocity::from_si(mph(COST_MPH).si());
    let Some(without) = without else {
        // Light and fast she runs flatter than the method tells, with tabs or without.
        return Ok(Finding::not_applicable(Text::from(
            "Her greatest speed lies outside what the method tells, with tabs up as well.",
        )));
    };
    sheet.remark(say!(
        "Tabs up she would run {}, trimmed {}.",
        Measure::of(without.speed),
        Measure::of(without.running.trim)
    ));
    let Some(with) = with else {
        let summary = say!(
            "With the tabs {} down she would run flatter at full speed than the method tells: under {}.",
            Measure::of(down.value),
            Measure::of(degrees(*crate::physics::running::TRIMS.start()))
        );
        return Ok(Finding::new(Verdict::Warn, summary)
            .working(sheet)
            .remedy(mend::change("Take the tabs up as she gathers speed.", taken_up())));
    };
    let cost = without.speed - with.speed;
    let verdict = if cost.exceeds(allowed) { Verdict::Warn } else { Verdict::Pass };
    let finding = Finding::new(
        verdict,
        say!(
            "With the tabs {} down she runs {} at full throttle, {} less than with them up.",
            Measure::of(down.value),
            Measure::of(with.speed),
            Measure::of(cost)
        ),
    )
    .against(Measure::of(cost), Limit::AtMost(Measure::of(allowed)))
    .working(sheet);
    Ok(match verdict {
        Verdict::Warn => finding.remedy(mend::change("Take the tabs up as she gathers speed.", taken_up())),
        _ => finding,
    })
}

/// The tabs up.
fn taken_up() -> [Change; 1] {
    [Change::to("running.tabs.down", "\"0 deg\"")]
}
