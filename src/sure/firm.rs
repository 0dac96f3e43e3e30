//! From what shifted readings do to a finding to what it is worth, and whether its verdict holds.

use super::again::{Again, Outcome};
use super::sampled;
use super::shifts::Moves;
use super::worth::Loosely;
use crate::physics::uncertainty::{combined, settles, shares};
use crate::quantity::Measure;
use crate::rules::{Decides, Doubt, Family, Finding, Judged, Verdict};

/// A finding bends where the two halves of its moves differ by more than this part of what it is worth. Common practice, no
/// source: below it the told digits of what it is worth stay the same.
const BENDS: f64 = 0.2;

/// A verdict with more room than so many times what it is worth holds, however it bends. Common practice, no source.
const FAR: f64 = 3.0;

/// Families of which a sample would take too long.
const DEAR: [Family; 2] = [Family::Strength, Family::Running];

/// A share of the doubt that is not told.
const LEAST_SHARE: f64 = 0.005;

/// The part of its tolerance closer than which nobody can take a reading with the same tool. Common practice, no source.
const CLOSEST: f64 = 0.1;

/// How far one reading's tolerance moves a figure: half of the way from less to more; the whole of one side where the other
/// could not be judged.
fn moved(base: f64, [less, more]: [Option<f64>; 2]) -> f64 {
    match (less, more) {
        (Some(less), Some(more)) => (more - less) / 2.0,
        (Some(less), None) => base - less,
        (None, Some(more)) => more - base,
        (None, None) => 0.0,
    }
}

/// How far off the middle between its two shifts a figure lies.
fn bend(base: f64, [less, more]: [Option<f64>; 2]) -> f64 {
    less.zip(more).map_or(0.0, |(less, more)| base - (less + more) / 2.0)
}

/// The doubt of each finding.
pub(super) fn doubts(again: &Again, judged: &[Judged], moves: &Moves) -> Vec<Option<Doubt>> {
    let first: Vec<Option<First>> = judged
        .iter()
        .enumerate()
        .map(|(rule, judged)| First::of(judged, &moves.said[rule], &moves.base[rule], &moves.of[rule]))
        .collect();
    let bent: Vec<usize> =
        (0..judged.len()).filter(|rule| first[*rule].as_ref().is_some_and(First::wants_sample)).collect();
    let runs = sampled::runs(again, judged, &bent, moves);
    first
        .into_iter()
        .enumerate()
        .map(|(rule, first)| {
            let first = first?;
            let otherwise = match runs.iter().find(|run| run.rule == rule) {
                Some(run) => return Some(first.doubt(again.readings, Some(run), run.otherwise)),
                None => first.turns.or_else(|| first.beyond(again, judged, rule)),
            };
            Some(first.doubt(again.readings, None, otherwise))
        })
        .collect()
}

/// What shifts of one reading at a time say of a finding.
struct First<'f> {
    finding: &'f Finding,
    /// Whether shifts of one reading at a time do not tell what it is worth, and a sample may.
    is_bent: bool,
    base: Outcome,
    readings: Vec<usize>,
    /// How far each moves the room to the limit, or what was found where there is no limit.
    moves: Vec<f64>,
    found: Option<f64>,
    turns: Option<Verdict>,
    /// Which of the readings turn the verdict by themselves.
    turning: Vec<bool>,
}

impl<'f> First<'f> {
    fn of(judged: &'f Judged, as_is: &Outcome, base: &Outcome, of: &[(usize, [Option<Outcome>; 2])]) -> Option<Self> {
        if !as_is.is_judged() && as_is.found.is_none() {
            return None;
        }
        let each = |figure: &dyn Fn(&Outcome) -> Option<f64>| -> Option<(Vec<f64>, Vec<f64>)> {
            let at = figure(base)?;
            let said = of.iter().map(|(_, said)| said.map(|said| said.as_ref().and_then(figure)));
            let (moves, bends) = said.map(|said| (moved(at, said), bend(at, said))).unzip();
            Some((moves, bends))
        };
        let found = each(&|outcome| outcome.found_beside(base));
        let room = each(&|outcome| outcome.found_beside(base).and(outcome.room));
        let found_moves = found.as_ref().map(|(moves, bends)| combined(moves).hypot(combined(bends)));
        let (moves, bends): (Vec<f64>, Vec<f64>) = room.or(found).unwrap_or_default();
        let is_bent = combined(&bends) > BENDS * combined(&moves);
        // What it bends counts with what it moves, as far as that is told without a sample.
        let moves: Vec<f64> = moves
            .iter()
            .zip(&bends)
            .map(|(by, bend)| if *by < 0.0 { -by.hypot(*bend) } else { by.hypot(*bend) })
            .collect();
        let is_new = |verdict: Verdict| verdict != base.verdict && verdict != as_is.verdict;
        let turned = |outcome: &Outcome| as_is.is_judged() && outcome.is_judged() && is_new(outcome.verdict);
        let turning: Vec<bool> = of.iter().map(|(_, said)| said.iter().flatten().any(turned)).collect();
        // The gravest of what it may be.
        let turns = of.iter().flat_map(|(_, said)| said).flatten().filter(|outcome| turned(outcome));
        Some(First {
            finding: &judged.finding,
            is_bent: is_bent && !DEAR.contains(&judged.rule.family),
            base: *as_is,
            readings: of.iter().map(|(reading, _)| *reading).collect(),
            moves,
            found: found_moves,
            turns: turns.map(|outcome| outcome.verdict).min(),
            turning,
        })
    }

    /// Whether a sample has to say what it is worth.
    fn wants_sample(&self) -> bool {
        let close = self.base.room.is_none_or(|room| room.abs() < FAR * combined(&self.moves));
        self.is_bent && (close || self.turns.is_some())
    }

    /// What the rule says where its readings are off together, in the likeliest way, by as much as all of it is worth towards
    /// its limit; nothing where that does not reach the limit, or changes nothing.
    fn beyond(&self, again: &Again, judged: &[Judged], rule: usize) -> Option<Verdict> {
        let (worth, room) = (combined(&self.moves), self.base.room?);
        if room.abs() >= worth || !self.base.is_judged() {
            return None;
        }
        let off: Vec<(usize, f64)> = self
            .readings
            .iter()
            .zip(&self.moves)
            .map(|(reading, by)| (*reading, -room.signum() * by / worth))
            .collect();
        let said = *again.judge(&off, judged, &[rule])?.first()?;
        (said.is_judged() && said.verdict != self.base.verdict).then_some(said.verdict)
    }

    fn doubt(self, readings: &[Loosely], run: Option<&sampled::Run>, otherwise: Option<Verdict>) -> Doubt {
        let worth = combined(&self.moves);
        let room = run.and_then(|run| run.room).or((!self.moves.is_empty()).then_some(worth));
        let found = run.and_then(|run| run.found).or(self.found);
        let told = self.finding.found;
        // Where no figure moves, what turns the verdict decides it.
        let by = if worth > 0.0 { shares(&self.moves) } else { Vec::new() };
        let alone = self.turning.iter().filter(|turns| **turns).count().max(1) as f64;
        let mut decides: Vec<Decides> = self
            .readings
            .iter()
            .enumerate()
            .map(|(i, reading)| {
                let share = match by.get(i) {
                    Some(share) => *share,
                    None => f64::from(u8::from(self.turning[i])) / alone,
                };
                let part = self.base.room.filter(|_| otherwise.is_some());
                let part = part.and_then(|margin| settles(&self.moves, i, margin.abs()));
                let part = part.filter(|part| (CLOSEST..1.0).contains(part));
                let taken = &readings[*reading].taken;
                let tolerance = taken.tolerance;
                let settles = part.map(|part| Measure { si: tolerance.si * part, ..tolerance });
                Decides { reading: taken.clone(), share, settles }
            })
            .filter(|decides| decides.share >= LEAST_SHARE)
            .collect();
        decides.sort_by(|a, b| b.share.total_cmp(&a.share));
        let room = room.filter(|_| self.base.room.is_some());
        let as_found = |si: Option<f64>| si.filter(|si| *si > 0.0).zip(told).map(|(si, told)| Measure { si, ..told });
        Doubt { found: as_found(found), room: as_found(room), otherwise, decides }
    }
}
