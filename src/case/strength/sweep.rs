//! How the told factors move with a reading: transom height, thickness of the core, height of the knees.

use std::sync::Arc;

use uom::si::f64::Length;

use super::{Board, Guessed, Laden, Panels, Strength, Way, footing};
use crate::case::Case;
use crate::quantity::{Dimensioned, Reading, inches};
use crate::rig::{Rig, Slot};

/// The ways of giving way whose factors are swept.
pub const SWEPT_WAYS: [Way; 2] = [Way::Bending, Way::Shear];

/// Step of the transom's height, and steps to either side: two tapes on one transom differ by as much. Common practice, no
/// source.
const HEIGHT_STEP_IN: f64 = 0.01;
const HEIGHT_STEPS: i32 = 10;
/// Step of the core's thickness as a part of it, and steps to either side: two plies more or fewer. Common practice, no source.
const THICKNESS_STEP: f64 = 0.01;
const THICKNESS_STEPS: i32 = 10;
/// Step of the knees' height, and steps to either side, as far as the transom goes. Common practice, no source.
const KNEE_STEP_IN: f64 = 1.0;
const KNEE_STEPS: i32 = 6;
/// A knee that is cut off at the transom's edge by more than this does not stand as high as asked, m.
const CUT_OFF: f64 = 1e-6;

/// A reading that is moved, all else being as told.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Swept {
    /// The transom's height.
    Height,
    /// The thickness of the thickest layer that was told.
    Thickness,
    /// The heights of all knees that were told, alike.
    Knees,
}

/// What the told factors become when a reading is moved.
#[derive(Clone, Debug, PartialEq)]
pub struct Sweep {
    /// Which reading is moved.
    pub swept: Swept,
    /// The reading as told, of knees the tallest as it stands, m.
    pub told: f64,
    /// In the order of the reading.
    pub points: Vec<SweepPoint>,
}

/// One place of a reading.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SweepPoint {
    /// Off what was told: m, of the thickness a part of it.
    pub change: f64,
    /// Strength over load with the new engines, of each of [`SWEPT_WAYS`].
    pub factors: [f64; SWEPT_WAYS.len()],
}

impl Swept {
    /// All of them.
    pub const ALL: [Swept; 3] = [Swept::Height, Swept::Thickness, Swept::Knees];

    /// What is moved.
    pub fn words(self) -> &'static str {
        match self {
            Swept::Height => "transom height",
            Swept::Thickness => "thickness of the thickest layer",
            Swept::Knees => "height of the knees",
        }
    }

    /// By how much from one point to the next: m, of the thickness a part of it.
    pub fn step(self) -> f64 {
        match self {
            Swept::Height => inches(HEIGHT_STEP_IN).si(),
            Swept::Thickness => THICKNESS_STEP,
            Swept::Knees => inches(KNEE_STEP_IN).si(),
        }
    }

    /// Steps to either side.
    fn steps(self) -> i32 {
        match self {
            Swept::Height => HEIGHT_STEPS,
            Swept::Thickness => THICKNESS_STEPS,
            Swept::Knees => KNEE_STEPS,
        }
    }

    fn told(self, rig: &Rig, board: &Board) -> Option<f64> {
        match self {
            Swept::Height => Some(board.top),
            Swept::Thickness => Some(rig.structure.lay_up.reading()?.get(thickest(rig)?)?.thickness.si()),
            Swept::Knees => {
                rig.structure.knees.reading()?;
                board.knees.iter().map(|knee| knee.to - knee.from).reduce(f64::max)
            }
        }
    }

    /// The rig with this reading moved, and its transom; `None` where no transom can have it so.
    fn moved(self, rig: &Rig, board: &Board, change: f64) -> Option<(Rig, Board)> {
        let mut moved = rig.clone();
        match self {
            Swept::Height => {
                let told = rig.job.transom.height().reading()?;
                let height = Reading { value: told.value + Length::from_si(change), ..told.clone() };
                Arc::make_mut(&mut moved.job).transom.height = Some(height);
            }
            Swept::Thickness => {
                let mut layers = rig.structure.lay_up.reading()?.clone();
                layers.get_mut(thickest(rig)?)?.thickness *= 1.0 + change;
                moved.structure.lay_up = put(&rig.structure.lay_up, layers);
            }
            Swept::Knees => {
                let mut knees = rig.structure.knees.reading()?.clone();
                for knee in &mut knees {
                    let y = knee.at.y().si();
                    // One that is not on the transom stays off it.
                    if let Some(stands) = board.knees.iter().find(|stands| stands.y == y) {
                        let height = Length::from_si(stands.to - stands.from + change);
                        knee.height = Some(Reading::assumed(height, "moved"));
                    }
                }
                moved.structure.knees = put(&rig.structure.knees, knees);
            }
        }
        let made = Board::of(&moved, Guessed::LEAST).ok()?;
        let as_asked = self != Swept::Knees
            || made.knees.len() == board.knees.len()
                && made.knees.iter().zip(&board.knees).all(|(new, old)| (new.to - old.to - change).abs() < CUT_OFF);
        as_asked.then_some((moved, made))
    }
}

fn put<T>(slot: &Slot<T>, value: T) -> Slot<T> {
    Slot::new(Some(value), slot.measurement())
}

/// Which of the layers told is the thickest.
fn thickest(rig: &Rig) -> Option<usize> {
    let layers = rig.structure.lay_up.reading()?;
    (0..layers.len()).max_by(|a, b| layers[*a].thickness.si().total_cmp(&layers[*b].thickness.si()))
}

impl Case<'_> {
    /// The sweeps of a transom whose strength can be told: several times the work of telling it, so only for those who ask.
    pub fn strength_sweeps(&self) -> Vec<Sweep> {
        let Ok(strength) = self.strength() else { return Vec::new() };
        let sweep = |i: usize| strength.sweep(self.rig, Swept::ALL[i]);
        self.store.each(Swept::ALL.len(), sweep).into_iter().flatten().collect()
    }
}

impl Strength {
    /// What the factors become when this reading is moved, what is left of the core staying as it was read; `None` where the
    /// reading was not told.
    pub fn sweep(&self, rig: &Rig, swept: Swept) -> Option<Sweep> {
        let told = swept.told(rig, &self.board)?;
        let (step, steps) = (swept.step(), swept.steps());
        let point = |change: f64| {
            let (rig, board) = swept.moved(rig, &self.board, change)?;
            let factors = self.factors_on(&rig, &board)?;
            Some(SweepPoint { change, factors })
        };
        let points: Vec<SweepPoint> = (-steps..=steps).filter_map(|i| point(f64::from(i) * step)).collect();
        (points.len() > 1).then_some(Sweep { swept, told, points })
    }

    /// The factors on another transom, the loads being those that it gets.
    fn factors_on(&self, rig: &Rig, board: &Board) -> Option<[f64; SWEPT_WAYS.len()]> {
        let footings = footing::footings(rig, &rig.after, board, self.driving, &mut Vec::new()).ok()?;
        let panels = Panels::of(board, self.left(), &self.store).ok()?;
        let laden = Laden::of(&self.store, board, &panels, footing::cases(&rig.after), footings).ok()?;
        Some(SWEPT_WAYS.map(|way| laden.bent.factor(way)))
    }
}
