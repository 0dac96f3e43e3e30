//! `strength/washer-crush`

use super::at_bolts::{at_bolts, capacity_sheet};
use super::plate::plate;
use super::soft_core::core_doubted;
use super::{BREAKS, DESIGN_FACTOR, beside, ready_with_core};
use crate::case::Case;
use crate::case::strength::{Board, Part};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Verdict};

rule! {
    /// The core under the washers or the backing plate: whether the pull makes them sink in.
    ///
    /// **Why.** A washer that sinks in slackens its bolt at every sea, and the next one up takes its
    /// share. A plate behind the bolts spreads the pull.
    ///
    /// **Limit.** The greatest pull at most what presses wood to its proportional limit across the
    /// grain, over the area that nut, washer, plate and inner skin spread it to; of foams and boards,
    /// which crush, at most half of what crushes them.
    ///
    /// **Source.** EN 1993-1-8, 6.2.5 (how far washer and plate spread a force), value from memory;
    /// NDS 3.10.4 (bearing-area factor of wood), value from memory; ISO 12215-5, design stress half
    /// of the ultimate, value from memory (foams and boards).
    ///
    /// **When it warns.** Set a backing plate of the size that the finding gives, or larger and thicker
    /// washers. Sinking in is not giving way: strength/punching says when that fails.
    WASHER_CRUSH = Strength "strength/washer-crush", judge;
}

fn judge(case: &Case) -> Judgement {
    let strength = ready_with_core(case)?;
    let required = required(&strength.board);
    let judged = at_bolts(Part::Crush, required, "core under the nut", case.rig, strength)?;
    let sheet = capacity_sheet(Part::Crush, &judged, case.rig, strength);
    let finding = judged.finding.clone().working(sheet).table(beside("greatest pull on a bolt", Part::Crush, strength));
    if finding.verdict >= Verdict::Unmeasured {
        return Ok(finding);
    }
    // To sink in is a limit of practice, however far beyond it the pull is; into a core that is doubtful besides, it is refused.
    let verdict = if core_doubted(case) && judged.worst.factor() < BREAKS { Verdict::Fail } else { Verdict::Warn };
    Ok(Finding { verdict, ..finding.remedy(plate(Part::Crush, required, &judged, case.rig, strength)) })
}

/// Wood may be pressed to its limit; what crushes wants the factor of all that breaks.
fn required(board: &Board) -> f64 {
    if board.core_has_grain() { BREAKS } else { DESIGN_FACTOR }
}
