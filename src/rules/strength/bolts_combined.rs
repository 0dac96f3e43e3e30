//! `strength/bolts-combined`

use super::BOLT_FACTOR;
use super::at_bolts::{at_bolts, stronger_bolts};
use crate::case::Case;
use crate::case::strength::{Part, Strength};
use crate::physics::strength::bolts::combined_ratio;
use crate::quantity::{Dimensioned, say};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Verdict};
use crate::working::Sheet;
use uom::si::f64::Force;

rule! {
    /// Pull and shear together on each mounting bolt in every load case.
    ///
    /// **Why.** A bolt that is pulled has less left for shear; in a hard-over turn the upper bolts have
    /// both.
    ///
    /// **Limit.** Load could grow at least twofold before the squares of pull over proof load and of
    /// shear over shear strength add up to one.
    ///
    /// **Source.** Elliptical interaction, commentary to AISC 360 J3.7, value from memory; common
    /// practice, no source (the factor).
    ///
    /// **When it warns.** Set the next size or more bolts. It fails where both together are beyond the
    /// bolt. Where pull or shear alone is already as grave, the rule of that one says so, and this
    /// one does not apply.
    BOLTS_COMBINED = Strength "strength/bolts-combined", judge;
}

fn judge(case: &Case) -> Judgement {
    let strength = case.strength()?;
    let judged = at_bolts(Part::Combined, BOLT_FACTOR, "bolt", case.rig, strength)?;
    let mut sheet = Sheet::default();
    judged.footing.written(&mut sheet, judged.worst.case, judged.worst.bolt, Part::Combined);
    judged.footing.say_origins(&mut sheet, case.rig, &strength.board, strength.left());
    let (tension, shear) = (judged.footing.tension_capacity(&mut sheet), judged.footing.shear_capacity(&mut sheet));
    if let Some(bolt) =
        judged.footing.forces.get(judged.worst.case).and_then(|group| group.bolts.get(judged.worst.bolt))
    {
        combined_ratio(&mut sheet, Force::from_si(bolt.tension), Force::from_si(bolt.shear), &tension, &shear);
    }
    if let Some(rule) = said_already(judged.finding.verdict, case, strength) {
        return Ok(Finding::not_applicable(say!(
            "One of the two is too much by itself already, and the other adds little: {} says it.",
            rule
        ))
        .working(sheet));
    }
    let mut finding = judged.finding.clone().working(sheet);
    if finding.verdict < Verdict::Unmeasured {
        finding = finding.remedy(stronger_bolts(&judged, BOLT_FACTOR, case.rig, strength));
    }
    Ok(finding)
}

/// What the check is called that says as much of pull or shear alone: one cause is told once.
fn said_already(verdict: Verdict, case: &Case, strength: &Strength) -> Option<&'static str> {
    let as_grave = |part| {
        let alone = at_bolts(part, BOLT_FACTOR, "bolt", case.rig, strength);
        alone.is_ok_and(|alone| alone.finding.verdict <= verdict)
    };
    if verdict == Verdict::Pass {
        None
    } else if as_grave(Part::Tension) {
        Some("“bolts tension”")
    } else {
        as_grave(Part::Shear).then_some("“bolts shear”")
    }
}
