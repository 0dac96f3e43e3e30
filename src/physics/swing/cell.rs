//! Boxes of poses.

/// The variables of a pose: own tilt, neighbour's tilt, steering of both, the lift of the one that has one.
pub(super) const TILT: usize = 0;
pub(super) const NEIGHBOUR_TILT: usize = 1;
pub(super) const STEER: usize = 2;
pub(super) const LIFT: usize = 3;
/// How many there are.
pub const VARIABLES: usize = 4;

/// A box of poses: its middle and half widths.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cell {
    /// The pose in the middle.
    pub middle: [f64; VARIABLES],
    /// How far it reaches to either side of that.
    pub half: [f64; VARIABLES],
}

impl Cell {
    pub(super) fn between(low: [f64; VARIABLES], high: [f64; VARIABLES]) -> Self {
        let mut cell = Self { middle: low, half: [0.0; VARIABLES] };
        for v in 0..VARIABLES {
            cell.middle[v] = 0.5 * (low[v] + high[v]);
            cell.half[v] = 0.5 * (high[v] - low[v]);
        }
        cell
    }

    /// The two halves across variable `v`.
    pub fn halves(&self, v: usize) -> [Self; 2] {
        let mut both = [*self; 2];
        for (cell, side) in both.iter_mut().zip([-0.5, 0.5]) {
            cell.middle[v] += side * self.half[v];
            cell.half[v] *= 0.5;
        }
        both
    }
}
