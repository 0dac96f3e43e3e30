//! The transom as it might be: with knees that it lacks, thicker, or with what was not told of it at its best.

use std::sync::OnceLock;

use uom::si::f64::Length;

use super::board::{Board, Guessed, Knee, Open};
use super::{Bent, Panels, Strength, Way};
use crate::quantity::{Dimensioned, inches};
use crate::reading::Absent;
use crate::rig::Rig;

/// Distance between knees and faces. Common practice, no source.
const BESIDE_IN: f64 = 1.0;
/// Steps in which a transom is built up, and the most that is worth building. Common practice, no source.
const BUILD_UP_STEP_IN: f64 = 0.25;
const MOST_STEPS: usize = 8;
/// The same beside knees.
const WITH_KNEES_STEPS: usize = MOST_STEPS;
/// How far up the transom such knees reach, or up its shoulder beside the cutout. Common practice, no source.
const KNEES_UP: f64 = 0.9;
/// Step in which a yard sets out and cuts knees: what is told is rounded up to it. Common practice, no source.
const CUT_IN: f64 = 0.25;
/// Part of such a step that is rounding.
const HAIR: f64 = 1e-6;
/// What moves a factor by less than this does not decide: within the error of the mesh.
const MOVES: f64 = 1.02;

impl Strength {
    /// The new engines on another panel.
    ///
    /// # Errors
    /// Why it cannot be solved.
    fn bent_on(&self, board: &Board) -> Result<Bent, Absent> {
        self.after.on(&self.store, board, &Panels::of(board, self.left(), &self.store)?)
    }

    /// The panel with the new engines with what was not told at its best; `None` where all was told.
    pub fn at_best(&self) -> Option<&Bent> {
        let best = self.best.as_ref()?;
        self.at_best.get_or_init(|| self.bent_on(best).ok()).as_ref()
    }

    /// The least factor of this way, and the greatest, with what was not told at its least and at its best.
    pub fn range(&self, way: Way) -> [f64; 2] {
        let least = self.after.bent.factor(way);
        let best = self.at_best().map_or(least, |best| best.factor(way));
        // More behind it may gather bending beside it: then the transom bears by itself what it bore.
        [least, best.max(least)]
    }

    /// What was not told and moves the panel's factor of this way, most first; all of it, where nothing moves it alone.
    pub fn decides(&self, rig: &Rig, way: Way) -> Vec<Open> {
        let each = self.each_at_best.get_or_init(|| {
            let alone = |open: &Open| {
                let board = Board::of(rig, Guessed::only(*open)).ok()?;
                Some((*open, self.bent_on(&board).ok()?))
            };
            self.open.iter().filter_map(alone).collect()
        });
        let least = self.after.bent.factor(way);
        let mut found: Vec<(Open, f64)> = each.iter().map(|(open, bent)| (*open, bent.factor(way))).collect();
        found.sort_by(|a, b| b.1.total_cmp(&a.1));
        let moves: Vec<Open> =
            found.iter().filter(|(_, factor)| *factor > MOVES * least).map(|(open, _)| *open).collect();
        if moves.is_empty() { self.open.clone() } else { moves }
    }

    /// The least that `is_enough` of what is worth doing: a pair of knees beside the faces, where the transom has none; a build-up of
    /// its thickest layer; or both. `None` where nothing is. What grows with the build-up is enough above any that is.
    pub fn cure(&self, is_enough: &dyn Fn(&Bent) -> bool) -> Option<(Cure, &Bent)> {
        let knees = self.knees_beside();
        let tries = |braced: bool, steps: usize| -> Option<(Cure, &Bent)> {
            let cure = Cure { knees: if braced { Some(*knees.first()?) } else { None }, more: build_up(steps) };
            let bent = self.cures.get(Self::slot(braced, steps))?.get_or_init(|| {
                let mut board = self.board.clone();
                if braced {
                    board.knees = knees.clone();
                }
                let core = board.core;
                board.layers[core].thickness += build_up(steps);
                self.bent_on(&board).ok()
            });
            bent.as_ref().filter(|bent| is_enough(bent)).map(|bent| (cure, bent))
        };
        let least = |braced: bool, from: usize, most: usize| -> Option<(Cure, &Bent)> {
            let mut found = tries(braced, most)?;
            let (mut low, mut high) = (from, most);
            while low < high {
                let middle = (low + high) / 2;
                match tries(braced, middle) {
                    Some(enough) => (found, high) = (enough, middle),
                    None => low = middle + 1,
                }
            }
            Some(found)
        };
        tries(true, 0).or_else(|| least(true, 1, WITH_KNEES_STEPS)).or_else(|| least(false, 1, MOST_STEPS))
    }

    /// One of the pair of knees that would stand beside the faces.
    pub fn knee_beside(&self) -> Option<Knee> {
        self.knees_beside().first().copied()
    }

    /// Where a pair of knees would stand beside the faces; nowhere where the transom has knees or they find no room.
    fn knees_beside(&self) -> Vec<Knee> {
        if !self.board.knees.is_empty() {
            return Vec::new();
        }
        let beside = inches(BESIDE_IN).si();
        let faces = self.after.footings.iter().filter(|footing| !footing.is_small());
        let edge = faces.map(|one| one.face.port.abs().max(one.face.starboard.abs())).fold(0.0, f64::max);
        let cut = |metres: f64| (metres / inches(CUT_IN).si() - HAIR).ceil() * inches(CUT_IN).si();
        let off = cut(edge + beside);
        let pair: Vec<Knee> = [off, -off]
            .into_iter()
            .filter_map(|y| self.board.knee(y, Some(cut(KNEES_UP * (self.board.head(y)? - self.board.bottom(y)?)))))
            .collect();
        if pair.len() == 2 { pair } else { Vec::new() }
    }

    fn slot(braced: bool, steps: usize) -> usize {
        steps + if braced { MOST_STEPS + 1 } else { 0 }
    }

    /// Nothing tried yet.
    pub(super) fn untried() -> Vec<OnceLock<Option<Bent>>> {
        (0..=Self::slot(true, MOST_STEPS)).map(|_| OnceLock::new()).collect()
    }
}

/// What would make the transom strong enough.
#[derive(Clone, Copy, Debug)]
pub struct Cure {
    /// One of a pair of knees.
    pub knees: Option<Knee>,
    /// How much thicker its thickest layer.
    pub more: Length,
}

fn build_up(steps: usize) -> Length {
    inches(BUILD_UP_STEP_IN * steps as f64)
}
