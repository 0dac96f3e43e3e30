//! `power/too-little`

use super::{Rated, auxiliaries_alone, installed, rated};
use crate::case::Case;
use crate::quantity::{Dimensioned, Text, say};
use crate::reading::All;
use crate::rules::mend;
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::{Sheet, Term, number};

rule! {
    /// The main engines' power against a share of the power that she is rated for.
    ///
    /// **Why.** A planing boat with too little power drags her stern at full throttle, labours her
    /// engine and may not get over the hump with a load or home against a sea.
    ///
    /// **Limit.** At least 60 % of the rated power.
    ///
    /// **Source.** Common practice, no source.
    ///
    /// **When it warns.** Ask what she shall do: a displacement boat is well served with less. For
    /// one that must plane, choose more power within the rating, or a lower-pitched propeller.
    TOO_LITTLE = Power "power/too-little", judge;
}

/// Share of the rated power below which a planing boat is commonly held to be underpowered. Common
/// practice, no source.
const LEAST_SHARE: f64 = 0.6;

fn judge(case: &Case) -> Judgement {
    (case.rig.after.ask(), case.rig.job.plate().ask()).all()?;
    if let Some(alone) = auxiliaries_alone(case.rig) {
        return Ok(alone);
    }
    let engines = match case.rig.after.main_power() {
        Ok(engines) => engines,
        Err(missing) => return Ok(Finding::unmeasured(missing)),
    };
    let mut sheet = Sheet::default();
    let Some(installed) = installed(&mut sheet, &engines) else {
        return Ok(Finding::unmeasured(vec![case.rig.after.missing()]));
    };
    let rated = match rated(case.rig) {
        Ok(Rated::Power(power)) => power,
        Ok(Rated::NotStated) => {
            return Ok(Finding::not_applicable(Text::from(
                "Neither a plate nor the builder's rating gives a power to compare with.",
            )));
        }
        Err(missing) => return Ok(Finding::unmeasured(vec![missing])),
    };
    sheet.told("Pr", Some(&rated));
    let least = sheet.set("Pl", "least power for planing", number(LEAST_SHARE) * Term::new("Pr", rated.value));
    let (found, limit) = (installed.measure(), least.measure());
    let finding = if least.value().exceeds(installed.value()) {
        Finding::new(
            Verdict::Warn,
            say!("The main engines make {}; a planing boat of her rating wants {}.", found, limit),
        )
        .remedy(mend::ask(
            "Settle what she shall do; if she must plane with a load, she wants more power, within the rating.",
        ))
    } else {
        Finding::new(
            Verdict::Pass,
            say!("The main engines make {}, enough to plane by the usual measure of {}.", found, limit),
        )
    };
    Ok(finding.against(found, Limit::AtLeast(limit)).working(sheet))
}
