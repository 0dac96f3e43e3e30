//! How sure a judgement is: every reading is shifted within what it is worth and the whole judged again, never a formula
//! differentiated by hand. What comes of it: what each finding is worth, whether its verdict holds, which readings decide,
//! and what to take again first.
//!
//! Method: [`crate::physics::uncertainty`]. Each reading is shifted by its tolerance both ways, the others as they are; where a
//! finding bends between the two shifts, or its verdict turns, a sample of all its readings at once takes their place.

mod again;
mod firm;
mod sampled;
mod shifts;
mod worth;

use again::Again;

use crate::catalog::Catalog;
use crate::rig::{Files, Rig};
use crate::rules::Judged;

/// Puts beside every finding of this rig what it is worth. `catalog` and `files` are those that it was resolved with.
pub fn weigh(rig: &Rig, catalog: &Catalog, files: &Files, judged: &mut [Judged]) {
    let readings = worth::readings(&rig.job);
    let again = Again::new(rig, catalog, files, &readings);
    let moves = shifts::moves(&again, judged);
    let doubts = firm::doubts(&again, judged, &moves);
    for (judged, doubt) in judged.iter_mut().zip(doubts) {
        judged.doubt = doubt;
    }
}
