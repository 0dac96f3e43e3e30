//! `strength/core-bearing`

use super::core_first;
use crate::physics::strength::knockdown::KnockDown;
use crate::rules::mend;
use uom::si::f64::{Force, Length};

use super::at_bolts::at_bolts;
use super::{DESIGN_FACTOR, beside, ready_with_core};
use crate::case::Case;
use crate::case::strength::Part;
use crate::physics::strength::bolts::bearing_stress;
use crate::quantity::{Dimensioned, Measure, inches, say};
use crate::rules::rule::rule;
use crate::rules::{Judgement, Verdict};
use crate::working::Sheet;

rule! {
    /// The shanks of the bolts against the wood, core and laminate that they bear on.
    ///
    /// **Why.** Where the bolts slide in the wood the holes grow long, the sealant breaks and water
    /// enters the core.
    ///
    /// **Limit.** The bearing strength, averaged over the layers and lowered by what was read of the
    /// core, at least twice the bearing stress.
    ///
    /// **Source.** ISO 12215-5, design stress half of the ultimate, value from memory; the materials'
    /// own entries in the catalog.
    ///
    /// **When it warns.** Bond a doubler over the face, or set thicker bolts. It fails where the stress
    /// is beyond the strength.
    CORE_BEARING = Strength "strength/core-bearing", judge;
}

/// Step in which doublers are made. Common practice, no source.
const STEP_IN: f64 = 0.125;

fn judge(case: &Case) -> Judgement {
    let strength = ready_with_core(case)?;
    let judged = at_bolts(Part::Bearing, DESIGN_FACTOR, "transom at the bolt", case.rig, strength)?;
    let (footing, worst) = (judged.footing, judged.worst);
    let board = &strength.board;
    let mut sheet = Sheet::default();
    footing.written(&mut sheet, worst.case, worst.bolt, Part::Bearing);
    footing.say_origins(&mut sheet, case.rig, board, strength.left());
    bearing_stress(
        &mut sheet,
        Force::from_si(worst.demand),
        Length::from_si(footing.diameter()),
        Length::from_si(board.thickness()),
    );
    let bears = board.mean(strength.left(), |material| material.bearing_strength.value.si());
    sheet.remark(say!(
        "bearing strength, averaged over the layers: {}",
        Measure::of(uom::si::f64::Pressure::from_si(bears))
    ));
    let mut finding =
        judged.finding.clone().working(sheet).table(beside("greatest shear on a bolt", Part::Bearing, strength));
    if finding.verdict < Verdict::Unmeasured {
        let sound = board.core_material().bearing_strength.value.si();
        let lacking = (DESIGN_FACTOR * worst.demand - worst.capacity) / (footing.diameter() * sound);
        let step = inches(STEP_IN).si();
        let doubler = Length::from_si((lacking / step).ceil() * step);
        let words = say!(
            "Bond a doubler of {} of sound {} behind the whole face of the {}, the bolts through both.",
            Measure::tape(doubler),
            board.layers[board.core].material.name.as_str(),
            footing.name.as_str()
        );
        finding = finding.remedy(if strength.left() == KnockDown::SOUND {
            mend::change(words, mend::thicker(case.rig, doubler))
        } else {
            core_first()
        });
    }
    Ok(finding)
}
