//! `steering/lines`

use super::steered;
use crate::case::Case;
use crate::case::rigging::asked;
use crate::job::Steering;
use crate::job::rigging::{self, Chosen};
use crate::physics::rigging::steering;
use crate::quantity::{Dimensioned, Measure, Style, Text, say};
use crate::reading::{All, reading};
use crate::rules::mend::{self, Change};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::Sheet;

rule! {
    /// The hydraulic lines: what they are rated for against the helm's relief pressure, and whether they were bled.
    ///
    /// **Why.** A line that bursts leaves no steering at all; air in it leaves a wheel that turns and engines that do not.
    ///
    /// **Limit.** Rated for at least the pressure at which the helm lets go; bled till the wheel stands.
    ///
    /// **Source.** The maker's ratings; common practice, no source (bleeding).
    ///
    /// **When it warns.** It fails where the lines are rated for less; it warns where they were not bled. The finding gives
    /// their length and how much oil fills them.
    LINES = Steering "steering/lines", judge;
}

fn judge(case: &Case) -> Judgement {
    let rig = steered(case, Steering::RemoteHydraulic)?;
    let relief = rig.helm.spec().and_then(|helm| helm.relief.as_ref());
    let (relief, lines) = (asked(relief, reading!(rigging::SteeringRig.helm)).ask(), rig.lines().ask()).all()?;
    let rated = asked(lines.rated.as_ref(), reading!(rigging::SteeringRig.lines)).ask()?;
    let mut sheet = Sheet::default();
    let mut oil = Text::default();
    if let (Some(bore), Some(length)) = (&lines.bore, &lines.length) {
        sheet.told("Dl", Some(bore));
        sheet.told("L", Some(length));
        let volume = steering::line_volume(&mut sheet, bore.value, length.value);
        oil = say!(
            " Two lines of {} hold {}.",
            Measure::styled(length.value, Style::FeetInches),
            Measure::styled(volume.value(), Style::Displacement)
        );
    }
    let (found, limit) = (Measure::of(rated.value), Measure::of(relief.value));
    let limited = |finding: Finding| finding.against(found, Limit::AtLeast(limit));
    let mut worst: Option<Finding> = None;
    if relief.value.exceeds(rated.value) {
        let finding =
            Finding::new(Verdict::Fail, say!("The lines are rated for {}; the helm lets go at {}.", found, limit))
                .remedy(mend::change(
                    say!("Fit lines that are rated for at least {}.", limit),
                    [Change::told("rigging.steering.lines.rated", limit)],
                ))
                .buys("two hydraulic lines", say!("rated for at least {}", limit));
        limited(finding).keep_worse(&mut worst);
    }
    if lines.bled == Some(false) {
        let finding =
            Finding::new(Verdict::Warn, Text::from("The lines were not bled.").then(oil.clone())).remedy(mend::change(
                "Fill and bleed the lines, helm highest first, till the wheel stands at both locks.",
                [Change::to("rigging.steering.lines.bled", "true")],
            ));
        limited(finding).keep_worse(&mut worst);
    }
    let finding = worst.unwrap_or_else(|| {
        let length =
            lines.length.as_ref().map(|length| say!("{} each", Measure::styled(length.value, Style::FeetInches)));
        let finding = Finding::new(
            Verdict::Pass,
            say!("The lines are rated for {}; the helm lets go at {}.", found, limit).then(oil),
        );
        limited(match length {
            Some(length) => finding.buys("two hydraulic lines, where the old ones do not stay", length),
            None => finding,
        })
    });
    Ok(finding.working(sheet))
}
