//! Boxes of poses.

/// The variables of a pose: own tilt, neighbour's tilt, steering of both.
pub(super) const TILT: usize = 0;
pub(super) const NEIGHBOUR_TILT: usize = 1;
pub(super) const STEER: usize = 2;

/// A box of poses: its middle and half widths.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Cell {
    pub middle: [f64; 3],
    pub half: [f64; 3],
}

impl Cell {
    pub fn between(low: [f64; 3], high: [f64; 3]) -> Self {
        let mut cell = Self { middle: low, half: [0.0; 3] };
        for v in 0..3 {
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
