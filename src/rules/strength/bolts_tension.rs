//! `strength/bolts-tension`

use super::at_bolts::{at_bolts, capacity_sheet, stronger_bolts};
use super::{BOLT_FACTOR, beside};
use crate::case::Case;
use crate::case::strength::Part;
use crate::rules::rule::rule;
use crate::rules::{Judgement, Verdict};

rule! {
    /// The pull on each mounting bolt in every load case, against the bolt's proof load.
    ///
    /// **Why.** The engine hangs behind the transom and thrusts below it: both turn its bracket about
    /// the heel, and the upper bolts hold it. A bolt that stretches lets the joint work, and the holes
    /// leak.
    ///
    /// **Limit.** The proof load at least twice the pull; a grade without a proof stress is taken at
    /// its yield.
    ///
    /// **Source.** Compression-edge model, common practice, no source; ISO 3506-1, ISO 898-1 and SAE
    /// J429 (proof and yield); common practice, no source (the factor).
    ///
    /// **When it warns.** Set the next size or more bolts, or take the moment down: less setback, a
    /// taller face. It fails where the pull is more than the proof load.
    BOLTS_TENSION = Strength "strength/bolts-tension", judge;
}

fn judge(case: &Case) -> Judgement {
    let strength = case.strength()?;
    let judged = at_bolts(Part::Tension, BOLT_FACTOR, "bolt", case.rig, strength)?;
    let sheet = capacity_sheet(Part::Tension, &judged, case.rig, strength);
    let mut finding =
        judged.finding.clone().working(sheet).table(beside("greatest pull on a bolt", Part::Tension, strength));
    if finding.verdict < Verdict::Unmeasured {
        finding = finding.remedy(stronger_bolts(&judged, BOLT_FACTOR, case.rig, strength));
    }
    Ok(finding)
}
