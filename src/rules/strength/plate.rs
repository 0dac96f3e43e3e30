//! The backing plate that spreads a pull far enough.

use crate::rules::mend::{self, Change, Remedy};
use uom::si::f64::Length;

use super::at_bolts::Judged;
use super::{core_first, entry};
use crate::case::strength::{Footing, Part, Strength, backing_plate};
use crate::physics::strength::bolts::Bolt;
use crate::physics::strength::knockdown::KnockDown;
use crate::quantity::{Dimensioned, Measure, Text, inches, say};
use crate::rig::Rig;

/// What such plates are made of: an entry of the catalog.
const PLATE: &str = "aluminium 5083-H116 plate";
/// Step in which plates are cut. Common practice, no source.
const SIZE_STEP_IN: f64 = 1.0;

/// A backing plate that is enough: its thickness from the spread, its size from the bolts.
pub(super) fn plate(part: Part, required: f64, judged: &Judged, rig: &Rig, strength: &Strength) -> Remedy {
    let (footing, left) = (judged.footing, strength.left());
    if left != KnockDown::SOUND {
        return core_first();
    }
    let Some([thickness, across]) = backing_plate(footing, &strength.board, left, part, required * judged.worst.demand)
    else {
        return mend::yard(none(required, judged));
    };
    let [width, height] = [extent(footing, |bolt| bolt.y), extent(footing, |bolt| bolt.z)].map(|extent| {
        let step = inches(SIZE_STEP_IN).si();
        ((extent + across) / step).ceil() * step
    });
    let tape = |metres: f64| Measure::tape(Length::from_si(metres));
    let written = format!(
        "(material: \"{PLATE}\", width: {}, height: {}, thickness: {})",
        mend::quoted(tape(width)),
        mend::quoted(tape(height)),
        mend::quoted(tape(thickness))
    );
    mend::change(
        say!(
            "Set a backing plate of {}, {} by {} and {} thick, behind the bolts of the {}.",
            PLATE,
            tape(width),
            tape(height),
            tape(thickness),
            footing.name.as_str()
        ),
        [Change::to(format!("{}.bolts.backing_plate", entry(rig, footing)), written)],
    )
}

/// From the first bolt to the last, m.
fn extent(footing: &Footing, along: impl Fn(&Bolt) -> f64) -> f64 {
    let low = footing.bolts.iter().map(&along).fold(f64::INFINITY, f64::min);
    let high = footing.bolts.iter().map(&along).fold(f64::NEG_INFINITY, f64::max);
    high - low
}

/// What is to be done where no plate is enough.
fn none(required: f64, judged: &Judged) -> Text {
    say!(
        "No plate spreads this pull far enough between the bolts of the {}: spread it over {} bolts or more.",
        judged.footing.name.as_str(),
        (judged.footing.bolts.len() as f64 * required / judged.worst.factor()).ceil() as usize
    )
}
