//! `strength/top-edge-tear`

use uom::si::f64::Length;

use super::{DESIGN_FACTOR, at_bolts, beside, capacity_sheet, ready};
use crate::case::Case;
use crate::case::strength::Part;
use crate::quantity::{Dimensioned, Measure, inches, say};
use crate::rules::rule::{given, rule};
use crate::rules::{Finding, Verdict};

rule! {
    /// The bolts against tearing out through the top edge, or into an old hole above them.
    ///
    /// **Why.** What jolts down on a trailer or off a sea springs back up, and a turn lifts the bolts
    /// on one side. Little wood above a bolt shears out as a plug.
    ///
    /// **Limit.** The force that shears two planes from the hole to the edge at least twice the upward
    /// force; the rebound is taken as n − 1 against n + 1 downward.
    ///
    /// **Source.** Double shear-out, common practice, no source; ISO 12215-5, design stress half of the
    /// ultimate, value from memory.
    ///
    /// **When it warns.** Drill lower, by the distance that the finding gives. It fails where the force
    /// is beyond the wood.
    TOP_EDGE_TEAR = Strength "strength/top-edge-tear", judge;
}

/// Step of a tape. Common practice, no source.
const STEP_IN: f64 = 0.125;

fn judge(case: &Case) -> Finding {
    let strength = given!(ready(case));
    let judged = given!(at_bolts(Part::Tear, DESIGN_FACTOR, "wood above the bolt", case.rig, strength,));
    let (footing, worst) = (judged.footing, judged.worst);
    let mut sheet = capacity_sheet(Part::Tear, &judged, case.rig, strength);
    let edge = footing.edge(case.rig, &strength.board, worst.bolt);
    sheet.remark(say!("from the bolt up to the edge, or to an old hole: {}", Measure::tape(Length::from_si(edge))));
    let mut finding =
        judged.finding.clone().working(sheet).table(beside("greatest upward force on a bolt", Part::Tear, strength));
    if finding.verdict != Verdict::Pass {
        let clear = edge - 0.5 * footing.hole();
        let step = inches(STEP_IN).si();
        let wanted = 0.5 * footing.hole() + clear * DESIGN_FACTOR / worst.factor();
        let wanted = Length::from_si((wanted / step).ceil() * step);
        finding = finding.remedy(say!(
            "Drill the upper bolts of the {} at least {} below the edge, after filling and glassing the holes that are there.",
            footing.name.as_str(),
            Measure::tape(wanted)
        ));
    }
    finding
}
