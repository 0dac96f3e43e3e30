//! `controls/cables`

use super::told as told_of;
use crate::case::Case;
use crate::case::rigging::way::{told, way};
use crate::job::rigging::{self, Reach};
use crate::physics::rigging::cable::{MOST_BENDS_DEG, least_radius};
use crate::quantity::{Dimensioned, Measure, Style, capitalised, degrees, feet, nth, say};
use crate::reading::reading;
use crate::rig::Missing;
use crate::rules::mend::{self, Change};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::Sheet;

rule! {
    /// Throttle and shift cables: length round the bends, the sharpest bend, all bends together, age.
    ///
    /// **Why.** A cable that drags shifts late, and one that breaks leaves her in gear at the dock.
    ///
    /// **Limit.** No shorter than its way; no bend below 8 in radius; 360 degrees together; 10 years where it stays.
    ///
    /// **Source.** Common practice, no source; length by geometry.
    ///
    /// **When it warns.** It fails where a cable does not reach; else it warns. Electronic controls and tillers have none.
    CABLES = Controls "controls/cables", judge;
}

/// Years that a push-pull cable lasts. Common practice, no source.
const YEARS: f64 = 10.0;

fn judge(case: &Case) -> Judgement {
    let controls = told_of(case)?;
    let levers = controls.levers().ask()?;
    if *levers != Reach::Cables {
        return Ok(Finding::not_applicable(say!("The levers are {}.", levers.words())));
    }
    if controls.cables.is_empty() {
        return Ok(Finding::unmeasured(vec![Missing::one(reading!(rigging::Controls.cables))]));
    }
    let mut worst: Option<Finding> = None;
    for (i, cable) in controls.cables.iter().enumerate() {
        let name = cable.name.clone().unwrap_or_else(|| nth("control cable", i));
        let mut sheet = Sheet::default();
        let way = match way(&mut sheet, &cable.legs, &cable.bends, &name) {
            Ok(way) => way,
            Err(missing) => return Ok(Finding::unmeasured(vec![missing])),
        };
        let Some(length) = &cable.length else {
            return Ok(Finding::unmeasured(vec![Missing {
                measurement: reading!(rigging::Controls.cables),
                of: Some(name),
            }]));
        };
        let feet_up = feet((way.length.value().si() / feet(1.0).si()).ceil());
        let order =
            say!("{} of {}", usize::from(cable.count.unwrap_or(1)), Measure::styled(feet_up, Style::FeetInches));
        let (found, needs) = (Measure::styled(length.value, Style::FeetInches), told(way.length.value()));
        let head = capitalised(&name);
        let old = cable.years.filter(|years| *years > YEARS);
        let tight = way.sharpest.filter(|radius| least_radius().exceeds(*radius));
        let mut findings = Vec::new();
        if way.length.value().exceeds(length.value) {
            let finding =
                Finding::new(Verdict::Fail, say!("{}: marked {}, and the way is {}.", head.as_str(), found, needs))
                    .remedy(mend::change(
                        say!("Fit a {} that reaches: {}.", name.as_str(), Measure::styled(feet_up, Style::FeetInches)),
                        [Change::told(
                            format!("rigging.controls.cables[{i}].length"),
                            Measure::styled(feet_up, Style::FeetInches),
                        )]
                        .into_iter()
                        // The new one is not old.
                        .chain(old.map(|_| Change::to(format!("rigging.controls.cables[{i}].years"), "0.0"))),
                    ))
                    .buys(name.clone(), order);
            findings.push(finding);
        } else if let Some(years) = old {
            let finding = Finding::new(Verdict::Warn, say!("{}: {} years old.", head.as_str(), years.to_string()))
                .remedy(mend::change(
                    say!("Replace the {} while the old engines are off.", name.as_str()),
                    [Change::to(format!("rigging.controls.cables[{i}].years"), "0.0")],
                ))
                .buys(name.clone(), order);
            findings.push(finding);
        }
        if let Some(radius) = tight {
            let words = say!("{}: a bend of {} radius.", head.as_str(), Measure::tape(radius));
            findings.push(Finding::new(Verdict::Warn, words).remedy(mend::yard(say!(
                "Lay the {} again with bends of at least {}.",
                name.as_str(),
                Measure::tape(least_radius())
            ))));
        }
        if way.turned.exceeds(degrees(MOST_BENDS_DEG)) {
            let turned = Measure::styled(way.turned, Style::Round);
            let words = say!("{}: the bends turn by {} together.", head.as_str(), turned);
            findings.push(Finding::new(Verdict::Warn, words).remedy(mend::yard(say!(
                "Find a straighter way for the {}, or use low-friction cable.",
                name.as_str()
            ))));
        }
        if findings.is_empty() {
            let words = say!("{}: marked {}, and the way is {}.", head.as_str(), found, needs);
            findings.push(Finding::new(Verdict::Pass, words));
        }
        for finding in findings {
            finding.against(found, Limit::AtLeast(needs)).working(sheet.clone()).keep_worse(&mut worst);
        }
    }
    Ok(worst.unwrap_or_else(|| Finding::unmeasured(vec![Missing::one(reading!(rigging::Controls.cables))])))
}
