//! The transom as it might be: with knees that it lacks, thicker, or with what was not told of it at its best.

use super::board::{Board, Guessed, Knee, Open};
use super::{Bent, Laden, NoStrength, Panels, Strength, Way};
use crate::physics::strength::knockdown::KnockDown;
use crate::quantity::{Dimensioned, inches};
use crate::rig::Rig;
use uom::si::f64::Length;

/// Distance between knees and faces. Common practice, no source.
const BESIDE_IN: f64 = 1.0;
/// Steps in which a transom is built up, and the most that is worth building. Common practice, no source.
const BUILD_UP_STEP_IN: f64 = 0.25;
const MOST_BUILD_UP_STEPS: usize = 8;

/// The new engines on another panel.
///
/// # Errors
/// Why it cannot be solved.
pub(super) fn bent(board: &Board, left: KnockDown, after: &Laden) -> Result<Bent, NoStrength> {
    after.on(board, &Panels::of(board, left)?)
}

impl Strength {
    /// The least factor of this way, and the greatest, with what was not told at its least and at its best.
    pub fn range(&self, way: Way) -> [f64; 2] {
        let least = self.after.bent.factor(way);
        let best = self.best.as_ref().map_or(least, |(_, best)| best.factor(way));
        // More behind it may gather bending beside it: then the transom bears by itself what it bore.
        [least, best.max(least)]
    }

    /// The one reading of those not told that moves the panel's factor in bending most.
    pub fn decides(&self, rig: &Rig) -> Option<Open> {
        *self.decides.get_or_init(|| {
            let factor = |open: &Open| -> f64 {
                Board::of(rig, Guessed::only(*open))
                    .and_then(|board| bent(&board, self.left(), &self.after))
                    .map_or(0.0, |bent| bent.factor(Way::Bending))
            };
            if self.open.len() < 2 {
                return self.open.first().copied();
            }
            let found: Vec<(Open, f64)> = self.open.iter().map(|open| (*open, factor(open))).collect();
            found.into_iter().max_by(|a, b| a.1.total_cmp(&b.1)).map(|(open, _)| open)
        })
    }

    /// A pair of knees beside the faces, with the panel that has them; `None` where the transom has knees there or they find no
    /// room.
    pub fn with_knees(&self) -> Option<(Knee, Bent)> {
        let beside = inches(BESIDE_IN).si();
        let faces = self.after.footings.iter().filter(|footing| !footing.is_small());
        let edge = faces.map(|one| one.face.port.abs().max(one.face.starboard.abs())).fold(0.0, f64::max);
        let places: Vec<Knee> =
            [edge + beside, -edge - beside].into_iter().filter_map(|y| self.board.knee(y, None)).collect();
        let [port, _] = places.as_slice() else { return None };
        if !self.board.knees.is_empty() {
            return None;
        }
        let board = Board { knees: places.clone(), ..self.board.clone() };
        bent(&board, self.left(), &self.after).ok().map(|bent| (*port, bent))
    }

    /// The least build-up of the thickest layer that `is_enough`, in steps of a quarter inch; `None` where none that is worth
    /// building is.
    pub fn built_up(&self, is_enough: impl Fn(&Bent) -> bool) -> Option<(Length, Bent)> {
        (1..=MOST_BUILD_UP_STEPS).find_map(|step| {
            let more = inches(BUILD_UP_STEP_IN * step as f64);
            let mut board = self.board.clone();
            let core = board.core;
            board.layers[core].thickness += more;
            let bent = bent(&board, self.left(), &self.after).ok()?;
            is_enough(&bent).then_some((more, bent))
        })
    }
}
