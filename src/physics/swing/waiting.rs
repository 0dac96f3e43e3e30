//! The boxes of poses that wait to be looked at, in the order of their rank.

use std::cmp::Ordering;

use nalgebra::Vector3;

use super::cell::Cell;

/// A box of poses of a pair of bodies.
pub(super) struct Waiting {
    /// The least is looked at first: where the box starts, or what bound it has.
    pub rank: f64,
    pub pair: usize,
    pub cell: Cell,
    /// The direction that parted the pair in the box it was cut from.
    pub guess: Option<Vector3<f64>>,
}

impl PartialEq for Waiting {
    fn eq(&self, other: &Self) -> bool {
        self.cmp(other) == Ordering::Equal
    }
}

impl Eq for Waiting {}

impl PartialOrd for Waiting {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl Ord for Waiting {
    /// The least rank is the greatest, so that it leaves the heap first; of equals the earlier pair.
    fn cmp(&self, other: &Self) -> Ordering {
        other.rank.total_cmp(&self.rank).then_with(|| other.pair.cmp(&self.pair))
    }
}
