//! What can be said of one pair of bodies over a whole box of poses.
//!
//! Two bounds, of which the better counts; both hold for any direction that parry may propose.
//!
//! - **Chord.** A point at a distance `r` from an axis moves at most the chord `2 r sin(h/2)` when it
//!   turns by up to `h`. The signed distance changes by no more than the two bodies move.
//! - **Arc along a direction.** The signed distance is the greatest of the gaps along all unit
//!   directions, so the gap along the middle pose's direction is a lower bound at every pose of the box.
//!   Each vertex's height along it is a smooth function of the angles; its first-order part is kept
//!   exactly and its second-order part is bounded (Taylor with remainder). The least of functions that
//!   are linear in the angles is concave, so its least value over the box lies at a corner of it. This
//!   bound closes in with the square of the box, and lets twins that turn together do so.

use nalgebra::Vector3;

use super::cell::{Cell, LIFT, NEIGHBOUR_TILT, STEER, TILT, VARIABLES};
use super::distance::{Measurer, Separation};
use super::heights::{CORNERS, Heights, heights, motion};
use super::kernel::{Frames, Kernel};

/// Covers what rounding in double precision does to a bound, in metres: coordinates are at most 1000 m,
/// of which one unit in the last place is 1e-13 m.
pub(super) const ROUNDING: f64 = 1e-10;

/// A pair that moves less than this over a box, in metres, is not worth halving it for: it lies far
/// below any gap that may be asked for.
const STILL: f64 = 1e-11;

/// What a look at a box found.
#[derive(Debug, Clone, Copy)]
pub struct Look {
    /// Nothing in the box is below this.
    pub lower: f64,
    /// Signed distance at the middle; `None` when the box was settled without measuring.
    pub middle: Option<Separation>,
    /// The direction that gave the bound.
    pub direction: Vector3<f64>,
    /// The pose of the box where the bound is least: worth measuring.
    pub worst: [f64; VARIABLES],
}

/// Measures and bounds pairs of one kernel.
pub struct Bounder<'k> {
    kernel: &'k Kernel,
    measurer: Measurer,
    first: Vec<Vector3<f64>>,
    second: Vec<Vector3<f64>>,
    /// How often a distance was measured.
    pub measured: usize,
}

impl<'k> Bounder<'k> {
    /// Of the pairs of this kernel; nothing is measured yet.
    pub fn new(kernel: &'k Kernel) -> Self {
        Self { kernel, measurer: Measurer::default(), first: Vec::new(), second: Vec::new(), measured: 0 }
    }

    /// Signed distance of a pair in one pose.
    pub fn measure(&mut self, pair: (usize, usize), pose: &[f64; VARIABLES], guess: &Vector3<f64>) -> Separation {
        let frames = self.kernel.frames(pose);
        self.place(pair, &frames);
        self.measure_placed(pair, guess)
    }

    /// Bounds a pair over a box. Where `enough` is reached by the cheap bounds alone, nothing is measured.
    pub fn look(&mut self, pair: (usize, usize), cell: &Cell, guess: Option<&Vector3<f64>>, enough: f64) -> Look {
        let (a, b) = (&self.kernel.bodies[pair.0], &self.kernel.bodies[pair.1]);
        let frames = self.kernel.frames(&cell.middle);
        let motion = motion(a, cell) + motion(b, cell);
        let settled = |lower: f64, direction: Vector3<f64>| Look { lower, middle: None, direction, worst: cell.middle };
        if let (Some((ca, ra)), Some((cb, rb))) = (&a.ball, &b.ball) {
            let between = frames[cb.mover].carry(cb) - frames[ca.mover].carry(ca);
            let lower = between.norm() - ra - rb - motion - ROUNDING;
            if lower >= enough {
                return settled(lower, between);
            }
        }
        self.place(pair, &frames);
        if let Some(guess) = guess {
            let (lower, _) = self.along(pair, cell, &frames, guess);
            if lower >= enough {
                return settled(lower, *guess);
            }
        }
        let start = guess.copied().unwrap_or_else(|| self.middle_to_middle());
        let middle = self.measure_placed(pair, &start);
        let (along, worst) = self.along(pair, cell, &frames, &middle.direction);
        Look {
            lower: along.max(middle.lower - motion - ROUNDING),
            middle: Some(middle),
            direction: middle.direction,
            worst,
        }
    }

    /// The variable whose halving helps this pair most; none when the pair hardly moves in this box.
    pub(super) fn widest(&self, pair: (usize, usize), cell: &Cell) -> Option<usize> {
        let (a, b) = (&self.kernel.bodies[pair.0], &self.kernel.bodies[pair.1]);
        let sway = |v: usize| a.reach[v].max(b.reach[v]) * cell.half[v];
        (0..VARIABLES).max_by(|x, y| sway(*x).total_cmp(&sway(*y))).filter(|v| sway(*v) > STILL)
    }

    fn place(&mut self, pair: (usize, usize), frames: &[Frames; 2]) {
        for (points, body) in [(&mut self.first, pair.0), (&mut self.second, pair.1)] {
            points.clear();
            let vertices = &self.kernel.bodies[body].vertices;
            points.extend(vertices.iter().map(|v| frames[v.mover].carry(v)));
        }
    }

    fn middle_to_middle(&self) -> Vector3<f64> {
        let middle = |points: &[Vector3<f64>]| points.iter().sum::<Vector3<f64>>() / points.len().max(1) as f64;
        let between = middle(&self.second) - middle(&self.first);
        between.try_normalize(1e-12).unwrap_or_else(Vector3::x)
    }

    fn measure_placed(&mut self, pair: (usize, usize), guess: &Vector3<f64>) -> Separation {
        self.measured += 1;
        let (a, b) = (&self.kernel.bodies[pair.0], &self.kernel.bodies[pair.1]);
        let Some(plane) = b.plane else {
            let radii = (a.radius, b.radius);
            return self.measurer.measure(&self.first, &self.second, radii, guess);
        };
        let height = |p: &&Vector3<f64>| p.dot(&plane.normal);
        let lowest = self.first.iter().min_by(|p, q| height(p).total_cmp(&height(q)));
        let lowest = lowest.copied().unwrap_or_else(Vector3::zeros);
        let clear = lowest.dot(&plane.normal) - plane.offset - a.radius;
        let touch = lowest - plane.normal * a.radius;
        Separation {
            lower: clear,
            upper: clear,
            direction: -plane.normal,
            first: touch,
            second: touch - plane.normal * clear,
        }
    }

    /// The second bound of this file's head, and the corner where it is least.
    fn along(
        &self,
        pair: (usize, usize),
        cell: &Cell,
        frames: &[Frames; 2],
        direction: &Vector3<f64>,
    ) -> (f64, [f64; VARIABLES]) {
        let (a, b) = (&self.kernel.bodies[pair.0], &self.kernel.bodies[pair.1]);
        let near = heights(a, &self.first, cell, frames, &-direction);
        let far = match b.plane {
            Some(plane) => Heights { least: [-plane.offset; 4], neighbour_sign: [0.0; 4], lift_sign: 0.0 },
            None => heights(b, &self.second, cell, frames, direction),
        };
        let mut lower = f64::INFINITY;
        let mut worst = cell.middle;
        let lift = if far.lift_sign == 0.0 { near.lift_sign } else { far.lift_sign };
        for (i, (tilt, steer)) in CORNERS.into_iter().enumerate() {
            let gap = near.least[i] + far.least[i];
            if gap < lower {
                lower = gap;
                let second = match far.neighbour_sign[i] {
                    0.0 => near.neighbour_sign[i],
                    sign => sign,
                };
                for (v, sign) in [(TILT, tilt), (NEIGHBOUR_TILT, second), (STEER, steer), (LIFT, lift)] {
                    worst[v] = cell.middle[v] + sign * cell.half[v];
                }
            }
        }
        (lower - a.radius - b.radius - ROUNDING, worst)
    }
}
