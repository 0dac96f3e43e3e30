//! What knees do: those that are there, or a pair where there is none.

use super::bend::{on_another, unfit};
use super::board::{Board, Knee};
use super::{Effect, Laden, NoStrength};
use crate::physics::strength::knockdown::KnockDown;
use crate::quantity::{Dimensioned, inches};

/// Distance between knees and faces. Common practice, no source.
const BESIDE_IN: f64 = 1.0;

/// What knees do, in the new outfit's governing case.
#[derive(Clone, Debug)]
pub struct Knees {
    /// Whether the transom has them; where not, `other` counts a pair at `places`.
    pub there: bool,
    /// Where a pair would stand, m to port.
    pub places: Vec<Knee>,
    /// Strength over stress, and deflection (m), as she is.
    pub now: (f64, f64),
    /// The same without the knees that are there, or with the pair that is not; `None` where it cannot stand.
    pub other: Option<(f64, f64)>,
}

impl Knees {
    /// Takes the knees away, or puts a pair where there is none.
    ///
    /// # Errors
    /// Why the panel cannot be solved as it is.
    pub fn of(board: &Board, left: KnockDown, after: &Laden) -> Result<Knees, NoStrength> {
        let there = !board.knees.is_empty();
        let beside = inches(BESIDE_IN).si();
        let edge = after
            .footings
            .iter()
            .filter(|footing| !footing.is_small())
            .map(|footing| footing.face.port.abs().max(footing.face.starboard.abs()))
            .fold(0.0, f64::max);
        let places: Vec<Knee> =
            [edge + beside, -edge - beside].into_iter().filter_map(|y| board.knee(y, None)).collect();
        let factor = |effect: &Effect| 1.0 / effect.use_of_strength.max(f64::MIN_POSITIVE);
        let with = |knees: &[Knee]| {
            let panel = board.panel(left, knees).map_err(unfit)?;
            on_another(board, &panel, after)
        };
        let now = &after.bent.effects[after.bent.stress.case];
        let other = if there {
            with(&[]).ok()
        } else if places.is_empty() {
            None
        } else {
            with(&places).ok()
        };
        let of = |effect: &Effect| (factor(effect), effect.deflection);
        let now = of(now);
        let other = other.as_ref().map(of);
        Ok(Knees { there, places, now, other })
    }
}
