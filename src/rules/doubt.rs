//! What a finding is worth, from what its readings are worth.

use std::sync::Arc;

use super::{Judged, Verdict};
use crate::quantity::{Basis, Measure};
use crate::reading::Declared;

/// A reading that may be off.
#[derive(Clone, Debug, PartialEq)]
pub struct Taken {
    /// Where it is written: `well.length`.
    pub path: String,
    /// What a person calls it.
    pub name: String,
    /// What is said of it where it is declared.
    pub declared: &'static Declared,
    /// As it was read.
    pub value: Measure,
    /// How far off it may be, either way.
    pub tolerance: Measure,
    /// Where it is from.
    pub basis: Basis,
}

/// What a finding is worth.
#[derive(Clone, Debug, PartialEq)]
pub struct Doubt {
    /// How far off what was found may be, either way.
    pub found: Option<Measure>,
    /// How far off the room to its limit may be, either way.
    pub room: Option<Measure>,
    /// What else the verdict may be within what the readings are worth; firm where nothing.
    pub otherwise: Option<Verdict>,
    /// The readings that it hangs on, those that move it most first.
    pub decides: Vec<Decides>,
}

/// What one reading does to a finding.
#[derive(Clone, Debug, PartialEq)]
pub struct Decides {
    /// Which.
    pub reading: Arc<Taken>,
    /// Its part of the doubt.
    pub share: f64,
    /// How closely it has to be taken for the verdict to hold, where it alone can do that.
    pub settles: Option<Measure>,
}

impl Doubt {
    /// Whether the verdict holds within what the readings are worth.
    pub fn is_firm(&self) -> bool {
        self.otherwise.is_none()
    }
}

/// A part of a finding's doubt so small that nobody would take the reading again for it.
const LITTLE: f64 = 0.05;

/// The readings to take again, those that remove most doubt of verdicts that do not hold first, with how many findings' whole
/// doubt is theirs.
pub fn measure_next(judged: &[Judged]) -> Vec<(Arc<Taken>, f64)> {
    let mut next = weights(judged, |doubt| !doubt.is_firm());
    next.retain(|(_, weight)| *weight >= LITTLE);
    next
}

/// Of all doubt of all findings, each counted the same, the part that each reading brings; most first.
pub fn doubt_by_reading(judged: &[Judged]) -> Vec<(Arc<Taken>, f64)> {
    let mut shares = weights(judged, |_| true);
    let all: f64 = shares.iter().map(|(_, weight)| weight).sum();
    shares.iter_mut().for_each(|(_, weight)| *weight /= all);
    shares
}

fn weights(judged: &[Judged], counts: impl Fn(&Doubt) -> bool) -> Vec<(Arc<Taken>, f64)> {
    let mut weights: Vec<(Arc<Taken>, f64)> = Vec::new();
    let doubts = judged.iter().filter_map(|judged| judged.doubt.as_ref()).filter(|doubt| counts(doubt));
    for decides in doubts.flat_map(|doubt| &doubt.decides) {
        match weights.iter_mut().find(|(taken, _)| Arc::ptr_eq(taken, &decides.reading)) {
            Some((_, weight)) => *weight += decides.share,
            None => weights.push((decides.reading.clone(), decides.share)),
        }
    }
    weights.sort_by(|a, b| b.1.total_cmp(&a.1));
    weights
}
