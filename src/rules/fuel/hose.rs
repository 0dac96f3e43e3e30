//! `fuel/hose`

use super::told;
use crate::case::Case;
use crate::case::rigging::asked_of;
use crate::case::rigging::fuel::line_name;
use crate::job::Fuel;
use crate::job::rigging::HoseSpec;
use crate::job::rigging::{self, Chosen};
use crate::quantity::{Measure, Style, Text, capitalised, say};
use crate::reading::{All, reading};
use crate::rig::Missing;
use crate::rules::mend::{self, Change};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Verdict};

rule! {
    /// Class and age of the fuel hoses.
    ///
    /// **Why.** Hose for water goes soft in gasoline, hose without fire test feeds a fire, and old hose weeps at the barbs.
    ///
    /// **Limit.** Made for gasoline; fire tested wherever it is built in; no older than 10 years.
    ///
    /// **Source.** SAE J1527, ISO 7840 and ABYC H-24 (classes, from memory); common practice, no source (the age).
    ///
    /// **When it warns.** It fails where the hose is not made for gasoline; it warns where a built-in one was not fire tested, or is
    /// old.
    HOSE = Fuel "fuel/hose", judge;
}

/// Years that a fuel hose lasts. Common practice, no source.
const YEARS: f64 = 10.0;

/// `1 year`, `12 years`.
fn counted(years: f64) -> String {
    format!("{years} {}", if years == 1.0 { "year" } else { "years" })
}

fn judge(case: &Case) -> Judgement {
    let rig = told(case)?;
    if rig.lines.is_empty() {
        return Ok(Finding::unmeasured(vec![Missing::one(reading!(rigging::FuelRig.lines))]));
    }
    let portable = case.rig.job.boat.fuel == Some(Fuel::PortableTanks);
    let mut worst: Option<Finding> = None;
    for (i, line) in rig.lines.iter().enumerate() {
        let name = line_name(line, i);
        let head = capitalised(&name);
        let spec = line.hose.spec();
        let (gasoline, years) = (
            asked_of(spec.and_then(|hose| hose.gasoline.as_ref()), reading!(rigging::FuelLine.hose), &name).ask(),
            asked_of(line.years.as_ref(), reading!(rigging::FuelLine.years), &name).ask(),
        )
            .all()?;
        let length = line.length.as_ref().map_or(Text::from("as long as the old one"), |length| {
            Measure::styled(length.value, Style::FeetInches).into()
        });
        let tested = spec.and_then(|hose| hose.fire_tested);
        let wrong = if !gasoline {
            Some((Verdict::Fail, say!("{} is not made for gasoline.", head.as_str())))
        } else if tested == Some(false) && !portable {
            Some((Verdict::Warn, say!("{} is built in and was not fire tested.", head.as_str())))
        } else if *years > YEARS {
            Some((
                Verdict::Warn,
                say!("{} is {} old; {} are the usual life.", head.as_str(), counted(*years), YEARS.to_string()),
            ))
        } else {
            None
        };
        let finding = match wrong {
            Some((verdict, summary)) => Finding::new(verdict, summary)
                .remedy(mend::change(say!("Lay the {} anew: fire-tested gasoline hose of low permeation, with two clamps at each barb that is long enough for two.", name.as_str()), new_hose(i, spec)))
                .buys(format!("fuel hose for gasoline, fire tested, for the {name}"), length),
            None => Finding::new(Verdict::Pass, say!("{} is made for gasoline, and {} old.", head.as_str(), counted(*years))),
        };
        finding.keep_worse(&mut worst);
    }
    Ok(worst.unwrap_or_else(|| Finding::unmeasured(vec![Missing::one(reading!(rigging::FuelRig.lines))])))
}

/// The hose of this line, new and of the right sort.
fn new_hose(index: usize, spec: Option<&HoseSpec>) -> Vec<Change> {
    let entry = format!("rigging.fuel.lines[{index}]");
    let new = [("gasoline", "true".to_owned()), ("fire_tested", "true".to_owned())];
    let hose = spec.cloned().unwrap_or_default();
    let mut changes = Change::like(&format!("{entry}.hose"), &hose, &new).to_vec();
    changes.push(Change::to(format!("{entry}.years"), "0.0"));
    changes
}
