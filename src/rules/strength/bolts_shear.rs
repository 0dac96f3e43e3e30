//! `strength/bolts-shear`

use super::at_bolts::{at_bolts, capacity_sheet, stronger_bolts};
use super::{BOLT_FACTOR, beside};
use crate::case::Case;
use crate::case::strength::Part;
use crate::rules::rule::rule;
use crate::rules::{Judgement, Verdict};

rule! {
    /// The shear on each mounting bolt in every load case, against the bolt's strength in shear.
    ///
    /// **Why.** Weight, slamming and a hard-over turn slide the bracket on the transom. Friction holds
    /// it while the nuts are tight; the shanks must hold it when they are not.
    ///
    /// **Limit.** The strength in shear, 0.6 of the tensile, thread in the shear plane, at least twice
    /// the force.
    ///
    /// **Source.** Elastic bolt group, Shigley, Mechanical Engineering Design, section 8-12; ISO 3506-1,
    /// ISO 898-1 and SAE J429 (strength); common practice, no source (the factor).
    ///
    /// **When it warns.** Set the next size or more bolts. It fails where the force shears a bolt off.
    BOLTS_SHEAR = Strength "strength/bolts-shear", judge;
}

fn judge(case: &Case) -> Judgement {
    let strength = case.strength()?;
    let judged = at_bolts(Part::Shear, BOLT_FACTOR, "bolt", case.rig, strength)?;
    let sheet = capacity_sheet(Part::Shear, &judged, case.rig, strength);
    let mut finding =
        judged.finding.clone().working(sheet).table(beside("greatest shear on a bolt", Part::Shear, strength));
    if finding.verdict < Verdict::Unmeasured {
        finding = finding.remedy(stronger_bolts(&judged, BOLT_FACTOR, case.rig, strength));
    }
    Ok(finding)
}
