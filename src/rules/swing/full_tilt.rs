//! `swing/full-tilt`

use super::{cures, of_sweeps, unanswered};
use crate::case::Case;
use crate::reading::{Absent, Missing};
use crate::rig::{Group, Rig};
use crate::rules::Finding;
use crate::rules::rule::rule;

rule! {
    /// Each engine against everything on the boat, over the whole range of tilt and from lock to lock:
    /// well, cutout, transom, bracket, and whatever obstacles the job lists. An engine on a lifting bracket whose
    /// travel is known is looked at at every height of it too.
    ///
    /// **Why.** An engine that strikes the well or the deck when it is tilted breaks its cowl or the
    /// gelcoat the first time somebody leaves the helm over, and it is found when the holes are
    /// drilled.
    ///
    /// **Limit.** 1/2 in at every pose. The least distance is certified by branch and bound over the
    /// whole range, within half a millimetre, not taken from samples. How near leg and lower unit come
    /// to the transom that carries them is the maker's trim stop, and is not judged.
    ///
    /// **Source.** The engine's mounting sheet (reach and height at full tilt); common practice, no
    /// source (the half inch; sizes that no sheet gives).
    ///
    /// **When it warns.** It fails where something touches, warns under half an inch; setback, height and
    /// limits that clear it are worked out by the same bound.
    FULL_TILT = Swing "swing/full-tilt", judge;
}

fn judge(case: &Case) -> Finding {
    let swing = case.swing();
    let all = match (&swing.full_tilt, &swing.raised) {
        (Err(open), _) => return unanswered(open),
        (Ok(all), Err(Absent::NotApplicable(_))) => all.clone(),
        (Ok(_), Err(open)) => return unanswered(open),
        (Ok(down), Ok(raised)) => [down.as_slice(), raised].concat(),
    };
    let mut finding = of_sweeps(&all, |swept| cures(case, swept, &[|swing| &swing.full_tilt, |swing| &swing.raised]));
    Missing::gather(&mut finding.missing, travels_to_take(case.rig));
    finding
}

/// The travel of every lifting bracket of which nobody took it.
fn travels_to_take(rig: &Rig) -> impl Iterator<Item = Missing> {
    rig.after.groups.iter().filter_map(Group::travel_missing)
}
