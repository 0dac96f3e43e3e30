//! What rules said of a boat, and what of it hangs on which reading.

use std::sync::Arc;

use super::{Doubt, Finding, Rule, Taken};

/// A rule with what it said of a rig.
pub struct Judged {
    /// The rule.
    pub rule: &'static Rule,
    /// What it found.
    pub finding: Finding,
    /// What that is worth, where it was asked.
    pub doubt: Option<Doubt>,
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
