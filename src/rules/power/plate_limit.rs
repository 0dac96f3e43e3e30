//! `power/plate-limit`

use super::{Rated, auxiliaries_alone, installed, rated};
use crate::case::Case;
use crate::job::Role;
use crate::physics::power::{self, Against};
use crate::quantity::{Measure, Text, say};
use crate::reading::All;
use crate::rules::mend;
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::Sheet;

rule! {
    /// The rated power of the main engines together, against the power on the capacity plate or the
    /// builder's plate.
    ///
    /// **Why.** More power than she is rated for can turn her over in a hard turn, drive her bow
    /// under or tear the transom; in many places it is an offence, and insurers refuse it.
    ///
    /// **Limit.** At most the power on the plate; without a plate, at most the builder's rating. A plate
    /// in kilowatts and an engine in horsepower are equal where they are within the rounding of the
    /// plate, in metric horsepower too: 110 kW is 150 hp. Auxiliary engines are not counted here.
    ///
    /// **Source.** 33 CFR 183.23 and 183.25 (the plate and its wording); ISO 14945 (builder's
    /// plate); ISO 8665 (rated power at the propeller shaft); common practice, no source (what pairs of
    /// kilowatts and horsepower the trade takes as equal).
    ///
    /// **When it warns.** It fails above the plate: choose less power. A plate that cannot be read is
    /// no reason to guess; the builder answers to the hull number.
    PLATE_LIMIT = Power "power/plate-limit", judge;
}

fn judge(case: &Case) -> Judgement {
    let rig = case.rig;
    (rig.after.ask(), rig.job.plate().ask()).all()?;
    if let Some(alone) = auxiliaries_alone(rig) {
        return Ok(alone);
    }
    let written = match rig.after.main_power_written() {
        Ok(engines) => engines,
        Err(missing) => return Ok(Finding::unmeasured(missing)),
    };
    let rated = match rated(rig) {
        Ok(Rated::Power(power)) => power,
        Ok(Rated::NotStated) => {
            return Ok(Finding::not_applicable(Text::from(
                "Neither a plate nor the builder's rating gives a power; “formula limit” and the builder decide.",
            )));
        }
        Err(missing) => return Ok(Finding::unmeasured(vec![missing])),
    };
    let mut sheet = Sheet::default();
    let engines: Vec<_> = written.iter().map(|(name, power)| (name.clone(), power.value)).collect();
    let Some(installed) = installed(&mut sheet, &engines) else {
        return Ok(Finding::unmeasured(vec![rig.after.missing()]));
    };
    let (found, limit) = (installed.measure(), Measure::of(rated.value));
    let auxiliary = rig.after.engines().any(|(_, engine)| engine.role == Role::Auxiliary);
    let aside = if auxiliary { " An auxiliary engine is not counted; some jurisdictions do count it." } else { "" };
    let finding = match power::against(&mut sheet, &written, &rated) {
        Against::Over => {
            Finding::new(Verdict::Fail, say!("The main engines make {}; she is rated for {}.{}", found, limit, aside))
                .remedy(mend::change(
                    say!("{} main engines of at most {} together.", mend::choose(rig), limit),
                    mend::weaker(rig, rated.value).unwrap_or_default(),
                ))
        }
        Against::Within => Finding::new(
            Verdict::Pass,
            say!("The main engines make {} of the {} that she is rated for.{}", found, limit, aside),
        ),
        Against::Same { found: same, most } => {
            let finding = Finding::new(
                Verdict::Pass,
                say!(
                    "The main engines make {}; she is rated for {}, which is the same to the trade: kilowatts on a plate are rounded, and count metric horsepower.{}",
                    found,
                    limit,
                    aside
                ),
            );
            return Ok(finding.against(same.measure(), Limit::AtMost(most.measure())).working(sheet));
        }
    };
    Ok(finding.against(found, Limit::AtMost(limit)).working(sheet))
}
