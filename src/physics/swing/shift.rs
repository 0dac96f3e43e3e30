//! How far an engine must be moved, aft or up, before its whole range clears.

use nalgebra::Vector3;
use uom::si::f64::Length;

use super::body::metres;
use super::bound::Bounder;
use super::error::{SwingError, finite, positive};
use super::kernel::Kernel;
use super::scene::{Neighbour, Scene};
use super::search::{Clearance, Effort, Goal, Outcome, Search};

/// A question about moving the engines.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Move {
    /// Which way, boat axes: (-1, 0, 0) for setback, (0, 0, 1) for height. Any length.
    pub direction: Vector3<f64>,
    /// The farthest to try.
    pub most: Length,
    /// The finest step worth telling apart; a millimetre does.
    pub step: Length,
}

/// What moving the engines does.
#[derive(Debug, Clone, PartialEq)]
pub enum Shift {
    /// The whole range clears.
    Clears {
        /// The certified shift: at it nothing comes nearer than the margin. No shift that is shorter by more than a step
        /// could be certified: each is refuted by a pose that comes within the margin and the gap.
        by: Length,
        /// Certified least distance there: at least the margin.
        least: Length,
        /// The pose that ruled out the last shorter shift, with its distance there; `None` when nothing needed moving.
        ruled_out: Option<Box<Clearance>>,
    },
    /// Nothing up to the farthest shift clears.
    NotWithin {
        /// The pose that rules out the last shift tried.
        ruled_out: Box<Clearance>,
    },
    /// The boxes ran out at this shift before it could be decided; all shorter ones are ruled out.
    Undecided {
        /// The shift.
        by: Length,
    },
}

impl Scene {
    /// The same scene with the engine, its neighbour and its rods moved by `shift` (metres).
    #[must_use]
    pub fn engines_shifted(&self, shift: Vector3<f64>) -> Self {
        let mut moved = self.clone();
        moved.engine = self.engine.shifted(shift);
        moved.neighbour = self
            .neighbour
            .as_ref()
            .map(|neighbour| Neighbour { chain: neighbour.chain.shifted(shift), tilt: neighbour.tilt });
        for rod in &mut moved.rods {
            for end in &mut rod.ends {
                end.at += shift;
            }
        }
        moved
    }
}

/// The least shift of the engines (together) at which the whole range keeps `margin`.
///
/// Clearance need not grow steadily with the shift, so nothing is bisected. A pose that comes nearer than
/// the margin by `d` rules out every shift within `d` of the present one, because no point moves farther
/// than the shift; the search leaps over those, and certifies each candidate over the whole range.
///
/// # Errors
/// As [`super::least_distance`]; a direction of no length; a step or farthest shift that is not positive.
pub fn least_shift(scene: &Scene, way: &Move, margin: Length, effort: &Effort) -> Result<Shift, SwingError> {
    let gap = effort.checked()?;
    let margin = finite("the margin", margin.value)?;
    let direction = checked(way)?;
    let mut by = 0.0;
    let mut ruled_out: Option<Box<Clearance>> = None;
    while by <= way.most.value {
        let kernel = Kernel::new(&scene.engines_shifted(direction * by))?;
        let mut search = Search::new(&kernel, effort.boxes);
        search.run(&Goal::AtLeast { margin, gap });
        if search.certified() >= margin {
            return Ok(Shift::Clears { by: metres(by), least: metres(search.certified()), ruled_out });
        }
        let (Some(best), Some(clearance)) = (&search.best, search.clearance(gap)) else {
            return Ok(Shift::Undecided { by: metres(by) });
        };
        if best.separation.upper >= margin + gap {
            return Ok(Shift::Undecided { by: metres(by) });
        }
        ruled_out = Some(Box::new(Clearance { outcome: Outcome::Certified, ..clearance }));
        let (pair, pose) = (kernel.pairs[best.pair], best.pose);
        let mut near = best.separation;
        while near.upper < margin + gap && by <= way.most.value {
            by += (margin - near.upper).max(way.step.value);
            let moved = Kernel::new(&scene.engines_shifted(direction * by))?;
            near = Bounder::new(&moved).measure(pair, &pose, &near.direction);
        }
    }
    match ruled_out {
        Some(ruled_out) => Ok(Shift::NotWithin { ruled_out }),
        None => Ok(Shift::Undecided { by: metres(by) }),
    }
}

fn checked(way: &Move) -> Result<Vector3<f64>, SwingError> {
    for (what, length) in [("the farthest shift", way.most), ("the step", way.step)] {
        positive(what, length.value)?;
    }
    let origin = nalgebra::Point3::origin();
    let axis = super::chain::Axis::new("the direction of the shift", origin, way.direction)?;
    Ok(axis.direction().into_inner())
}
