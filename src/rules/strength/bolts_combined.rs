//! `strength/bolts-combined`

use super::{BOLT_FACTOR, at_bolts, ready, stronger_bolts};
use crate::case::Case;
use crate::case::strength::Part;
use crate::physics::strength::bolts::combined_ratio;
use crate::quantity::Dimensioned;
use crate::rules::rule::{given, rule};
use crate::rules::{Finding, Verdict};
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
    /// bolt.
    BOLTS_COMBINED = Strength "strength/bolts-combined", judge;
}

fn judge(case: &Case) -> Finding {
    let strength = given!(ready(case));
    let judged = given!(at_bolts(Part::Combined, BOLT_FACTOR, "bolt", case.rig, strength));
    let mut sheet = Sheet::default();
    let (tension, shear) = (judged.footing.tension_capacity(&mut sheet), judged.footing.shear_capacity(&mut sheet));
    if let Some(bolt) =
        judged.footing.forces.get(judged.worst.case).and_then(|group| group.bolts.get(judged.worst.bolt))
    {
        combined_ratio(&mut sheet, Force::from_si(bolt.tension), Force::from_si(bolt.shear), &tension, &shear);
    }
    let mut finding = judged.finding.clone().working(sheet);
    if finding.verdict != Verdict::Pass {
        finding = finding.remedy(stronger_bolts(&judged, BOLT_FACTOR, case.rig));
    }
    finding
}
