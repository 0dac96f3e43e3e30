//! `strength/top-edge-tear`

use super::core_first;
use crate::case::strength::Footing;
use crate::rig::Rig;
use crate::rules::mend::{self, Change, Remedy};
use uom::si::f64::Length;

use super::at_bolts::{Judged, at_bolts, capacity_sheet};
use super::{DESIGN_FACTOR, beside, build_up, ready_with_core};
use crate::case::Case;
use crate::case::strength::{Part, Strength};
use crate::physics::fit::UPPER_BELOW_TOP_IN;
use crate::physics::height::HOLE_ROW_STEP_IN;
use crate::physics::strength::knockdown::KnockDown;
use crate::quantity::{Dimensioned, Measure, inches, say};
use crate::rules::rule::rule;
use crate::rules::{Judgement, Verdict};

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
    /// **When it warns.** Plug old holes and glass them over, drill lower by the distance that the finding
    /// gives, or build the transom up. It fails where the force is beyond the wood.
    TOP_EDGE_TEAR = Strength "strength/top-edge-tear", judge;
}

/// Step of a tape. Common practice, no source.
const STEP_IN: f64 = 0.125;
/// Rows of an engine's bracket below its uppermost: no lower do its upper bolts go with its rest on the transom. Common
/// practice, no source.
const LOWER_ROWS: f64 = 3.0;
/// Wood that a bolt keeps below it, in diameters of its hole. Common practice, no source.
const BELOW: f64 = 2.0;

fn judge(case: &Case) -> Judgement {
    let strength = ready_with_core(case)?;
    let judged = at_bolts(Part::Tear, DESIGN_FACTOR, "transom above the bolt", case.rig, strength)?;
    let (footing, worst) = (judged.footing, &judged.worst);
    let mut sheet = capacity_sheet(Part::Tear, &judged, case.rig, strength);
    let edge = footing.edge(case.rig, &strength.board, worst.bolt);
    sheet.remark(say!(
        "from the bolt up to the edge, less what old holes take: {}",
        Measure::tape(Length::from_si(edge))
    ));
    let mut finding =
        judged.finding.clone().working(sheet).table(beside("greatest upward force on a bolt", Part::Tear, strength));
    if finding.verdict < Verdict::Unmeasured {
        finding = finding.remedy(remedy(case.rig, &judged, edge, strength));
    }
    Ok(finding)
}

/// What is enough, the least first: old holes filled, bolts set lower, more wood.
fn remedy(rig: &Rig, judged: &Judged, edge: f64, strength: &Strength) -> Remedy {
    let (footing, worst, board) = (judged.footing, &judged.worst, &strength.board);
    if strength.left() != KnockDown::SOUND {
        return core_first();
    }
    let through = board.mean(strength.left(), |material| material.shear_strength.value.si());
    let clear = DESIGN_FACTOR * worst.demand / (2.0 * through * board.thickness());
    let step = inches(STEP_IN).si();
    let wanted = ((0.5 * footing.hole() + clear) / step).ceil() * step;
    let filled = footing.edge_filled(board, worst.bolt);
    if filled >= wanted && filled > edge {
        return mend::change(
            say!("Plug the old holes above the bolts of the {} and glass them over.", footing.name.as_str()),
            plugged(rig),
        );
    }
    // Nothing is drilled higher than the pattern has it.
    let wanted = if footing.on_bracket { wanted } else { wanted.max(inches(UPPER_BELOW_TOP_IN).si()) };
    let lower = wanted - filled;
    let mut bolts = footing.bolts.iter();
    let keeps =
        bolts.all(|bolt| board.bottom(bolt.y).is_some_and(|bottom| bolt.z - lower - BELOW * footing.hole() >= bottom));
    let lowest = inches(UPPER_BELOW_TOP_IN + LOWER_ROWS * HOLE_ROW_STEP_IN).si();
    if keeps && (footing.on_bracket || wanted <= lowest) {
        let words = say!(
            "Drill the upper bolts of the {} at least {} below the edge, after filling and glassing the holes that are there.",
            footing.name.as_str(),
            Measure::tape(Length::from_si(wanted))
        );
        return match drilled_lower(rig, footing, Length::from_si(wanted)) {
            Some(changes) => mend::change(words, changes),
            None => mend::yard(words),
        };
    }
    build_up(rig, strength, DESIGN_FACTOR / worst.factor())
}

/// Every old hole plugged and glassed over.
fn plugged(rig: &Rig) -> Vec<Change> {
    (0..rig.job.transom.holes.len()).map(|i| Change::to(format!("transom.holes[{i}].filled"), "true")).collect()
}

/// The upper bolts of a face so far below the edge, old holes plugged; nothing where it is not told where they stand.
fn drilled_lower(rig: &Rig, footing: &Footing, wanted: Length) -> Option<Vec<Change>> {
    let mut changes = plugged(rig);
    let group = rig.after.groups.get(footing.group)?;
    let told = &group.bolts.said.at;
    if told.is_empty() {
        if group.bracket.is_some() {
            return None;
        }
        changes.push(Change::told("transom.upper_holes", Measure::tape(wanted)));
        return Some(changes);
    }
    let by = told.iter().map(|bolt| (wanted - bolt.below.value).si()).fold(0.0, f64::max);
    // The pattern is one: all of it goes down.
    changes.extend(told.iter().enumerate().map(|(i, bolt)| {
        let below = bolt.below.value + Length::from_si(by);
        Change::to(format!("{}.bolts.at[{i}].below", group.entry), mend::exactly(below))
    }));
    Some(changes)
}
