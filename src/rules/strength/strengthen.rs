//! What makes the transom's panel strong and stiff enough: knees, a build-up, or both, solved before they are named.

use uom::si::f64::Length;

use super::{DESIGN_FACTOR, core_first, factor};
use crate::case::strength::{Bent, Board, Cure, Knee, Strength, Way};
use crate::physics::strength::knockdown::KnockDown;
use crate::quantity::{Dimensioned, Measure, Text, say};
use crate::rig::Rig;
use crate::rules::mend::{self, Change, Remedy};

/// Width over the deflection allowed. Common practice, no source.
const SPAN_OVER_DEFLECTION: f64 = 100.0;

/// What makes the transom strong enough in bending and in shear beside what holds it: one remedy for both.
///
/// Where its movement can be held too, it is: one remedy for all three.
pub(super) fn strengthen(rig: &Rig, strength: &Strength) -> Remedy {
    let least = |bent: &Bent| bent.factor(Way::Bending).min(bent.factor(Way::Shear));
    let strong = |bent: &Bent| least(bent) >= OF_THE_PLACE * DESIGN_FACTOR;
    let becomes = |bent: &Bent| {
        say!(
            "it then bears {} times what bends it and {} times the shear beside what holds it",
            factor(bent.factor(Way::Bending)),
            factor(bent.factor(Way::Shear))
        )
    };
    let moves = |bent: &Bent| bent.deflection().1.largest_deflection.abs();
    let stiff = |bent: &Bent| moves(bent) * OF_THE_PLACE <= allowed_movement(&strength.board);
    let limber = !stiff(&strength.after.bent);
    if limber && strength.cure(&|bent| strong(bent) && stiff(bent)).is_some() {
        return remedy(rig, strength, &|bent| strong(bent) && stiff(bent), &|bent| {
            becomes(bent).then(say!(
                ", and moves {} at most",
                Measure::tape(mend::up(Length::from_si(moves(bent)), SIXTEENTH_IN))
            ))
        });
    }
    remedy(rig, strength, &strong, &becomes)
}

/// What a tape shows of a movement, in.
const SIXTEENTH_IN: f64 = 0.0625;

/// What a knee that stands a sixteenth beside its named place can take off the factor. Common practice, no source: half a
/// percent was found, four times that is allowed for.
pub(super) const OF_THE_PLACE: f64 = 1.02;

/// Knees where they are enough, else a thicker transom, both solved; a core that was found soft is no ground to build on.
pub(super) fn remedy(
    rig: &Rig,
    strength: &Strength,
    is_enough: &dyn Fn(&Bent) -> bool,
    becomes: &dyn Fn(&Bent) -> Text,
) -> Remedy {
    if strength.left() != KnockDown::SOUND {
        return core_first();
    }
    let tape = |metres: f64| Measure::tape(Length::from_si(metres));
    let core = strength.board.layers[strength.board.core].material.name.as_str();
    let Some((Cure { knees, more }, bent)) = strength.cure(is_enough) else {
        return mend::yard(
            "No pair of knees beside the bracket and no build-up of 2 in is enough: lighter or weaker engines, less setback, or a transom that is designed anew.",
        );
    };
    let pair = knees.map_or(Text::default(), |knee| {
        say!(
            "Fit a pair of knees {} each side of the centreline, {} high, tied to the stringers",
            tape(knee.y.abs()),
            tape(knee.to - knee.from)
        )
    });
    let built = match (knees, more > Length::default()) {
        (_, false) => Text::default(),
        (Some(_), true) => say!(", and build the transom up by {} of {} over its width", Measure::tape(more), core),
        (None, true) => say!("Build the transom up by {} of {} over its width", Measure::tape(more), core),
    };
    let changes = knees
        .map(|knee| fitted(rig, &knee))
        .into_iter()
        .chain((more > Length::default()).then(|| mend::thicker(rig, more)));
    mend::change(pair.then(built).then(Text::from(": ")).then(becomes(bent)).then(Text::from(".")), changes.flatten())
}

/// A pair of knees like this one, beside those that stand there.
pub(super) fn fitted(rig: &Rig, knee: &Knee) -> Vec<Change> {
    let there = rig.structure.knees.reading().map_or(0, Vec::len);
    let height = mend::quoted(Measure::tape(Length::from_si(knee.to - knee.from)));
    let at = Measure::tape(Length::from_si(knee.y.abs()));
    let one = |side: &str| format!("(at: {side}({}), height: {height})", mend::quoted(at));
    if there == 0 {
        return vec![Change::to("structure.knees", format!("[{}, {}]", one("port"), one("starboard")))];
    }
    let sides = ["port", "starboard"].into_iter().enumerate();
    sides.map(|(i, side)| Change::to(format!("structure.knees[{}]", there + i), one(side))).collect()
}

/// How far it may move, m.
pub(super) fn allowed_movement(board: &Board) -> f64 {
    width(board) / SPAN_OVER_DEFLECTION
}

/// Width of the transom between its sides, m. Knees do not make it less: a knee more must not ask for less movement.
pub(super) fn width(board: &Board) -> f64 {
    2.0 * board.outline.iter().map(|p| p[0]).fold(0.0, f64::max)
}
