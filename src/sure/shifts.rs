//! Every reading shifted by its tolerance, one way and the other. Rules that do not look at a reading are not asked again for
//! it: readings are shifted together first, and where nothing moves of a rule none of them matters to it.

use super::again::{Again, Outcome};
use crate::rules::Judged;

/// What each rule says with each reading that matters to it shifted down and up.
pub(super) struct Moves {
    /// What each rule says of the boat as she is.
    pub said: Vec<Outcome>,
    /// The same as coarsely as what is shifted.
    pub base: Vec<Outcome>,
    /// The same as crudely as it takes to see whether anything moves.
    crude: Vec<Outcome>,
    /// For each rule: the reading, and what the rule says with it less, and with it more.
    pub of: Vec<Vec<(usize, [Option<Outcome>; 2])>>,
}

/// The share of its tolerance by which a reading is shifted together with others: each by another, so that no two cancel.
fn together(reading: usize) -> f64 {
    // The golden ratio's fractions lie as far apart as can be.
    const GOLDEN: f64 = 0.618_033_988_749_894_9;
    0.5 + 0.5 * (GOLDEN * reading as f64).fract()
}

pub(super) fn moves(again: &Again, judged: &[Judged]) -> Moves {
    let said: Vec<Outcome> = judged.iter().map(|judged| Outcome::of(&judged.finding)).collect();
    let rules: Vec<usize> =
        (0..said.len()).filter(|rule| said[*rule].is_judged() || said[*rule].found.is_some()).collect();
    // The same boat, as coarsely as those that are set beside it.
    let mut base = said.clone();
    for (rule, outcome) in rules.iter().zip(again.judge(&[], judged, &rules).unwrap_or_default()) {
        base[*rule] = outcome;
    }
    let mut crude = said.clone();
    for (rule, outcome) in rules.iter().zip(again.judge_crudely(&[], judged, &rules).unwrap_or_default()) {
        crude[*rule] = outcome;
    }
    let mut moves = Moves { of: vec![Vec::new(); base.len()], said, base, crude };
    let readings: Vec<usize> = (0..again.readings.len()).collect();
    split(again, judged, &readings, &rules, &mut moves);
    moves
}

fn split(again: &Again, judged: &[Judged], readings: &[usize], rules: &[usize], moves: &mut Moves) {
    let [reading] = readings else {
        let off: Vec<(usize, f64)> = readings.iter().map(|reading| (*reading, together(*reading))).collect();
        let moved = match again.judge_crudely(&off, judged, rules) {
            Some(outcomes) => {
                let moved = rules.iter().zip(outcomes).filter(|(rule, outcome)| *outcome != moves.crude[**rule]);
                moved.map(|(rule, _)| *rule).collect()
            }
            // Together they may be what no boat can be.
            None => rules.to_vec(),
        };
        if !moved.is_empty() && !readings.is_empty() {
            let (first, second) = readings.split_at(readings.len() / 2);
            split(again, judged, first, &moved, moves);
            split(again, judged, second, &moved, moves);
        }
        return;
    };
    let [less, more] = [-1.0, 1.0].map(|by| again.judge(&[(*reading, by)], judged, rules));
    for (i, rule) in rules.iter().enumerate() {
        let said = [&less, &more].map(|said| said.as_ref().map(|outcomes| outcomes[i]));
        if said.iter().flatten().any(|outcome| *outcome != moves.base[*rule]) {
            moves.of[*rule].push((*reading, said));
        }
    }
}
