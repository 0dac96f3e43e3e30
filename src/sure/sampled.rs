//! A sample of all readings at once, for findings that bend.

use super::again::{Again, Outcome};
use super::shifts::Moves;
use crate::physics::uncertainty::{BEYOND, COVERAGE, RUNS, sample, spread};
use crate::rules::{Judged, Verdict};

/// What a sample says of one finding.
pub(super) struct Run {
    pub rule: usize,
    /// Half-widths of what was found, and of the room to its limit.
    pub found: Option<f64>,
    pub room: Option<f64>,
    /// The verdict that too many of the runs give in place of the first.
    pub otherwise: Option<Verdict>,
}

/// Samples these rules, each over the readings that move it.
pub(super) fn runs(again: &Again, judged: &[Judged], rules: &[usize], moves: &Moves) -> Vec<Run> {
    let mut readings: Vec<usize> =
        rules.iter().flat_map(|rule| moves.of[*rule].iter().map(|(reading, _)| *reading)).collect();
    readings.sort_unstable();
    readings.dedup();
    if readings.is_empty() {
        return Vec::new();
    }
    let said: Vec<Vec<Outcome>> = sample(readings.len())
        .iter()
        .filter_map(|run| {
            let off: Vec<(usize, f64)> =
                readings.iter().zip(run).map(|(reading, by)| (*reading, by / COVERAGE)).collect();
            again.judge(&off, judged, rules)
        })
        .collect();
    rules.iter().enumerate().map(|(i, rule)| run(*rule, &moves.base[*rule], said.iter().map(|said| said[i]))).collect()
}

fn run(rule: usize, base: &Outcome, said: impl Iterator<Item = Outcome> + Clone) -> Run {
    let found: Vec<f64> = said.clone().filter_map(|outcome| outcome.found_beside(base)).collect();
    let room: Vec<f64> =
        said.clone().filter(|outcome| outcome.found_beside(base).is_some()).filter_map(|o| o.room).collect();
    let others: Vec<Verdict> =
        said.filter(Outcome::is_judged).map(|o| o.verdict).filter(|v| *v != base.verdict).collect();
    let many = others.len() as f64 > BEYOND * RUNS as f64 && base.is_judged();
    Run { rule, found: spread(&found), room: spread(&room), otherwise: others.into_iter().min().filter(|_| many) }
}
