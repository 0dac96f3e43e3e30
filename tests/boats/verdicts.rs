//! Every boat at every level, judged once for all tests.

use std::sync::LazyLock;
use std::sync::atomic::{AtomicUsize, Ordering};

use sternknee::case::Case;
use sternknee::job;
use sternknee::rig;
use sternknee::rules::{self, Finding, Verdict};

use super::common::CATALOG;
use super::corpus::{Boat, LEVELS};

/// What the rules say of a boat at a level.
#[derive(Debug)]
pub struct Answer {
    /// The level.
    pub level: u8,
    /// Every rule's id and finding, in the order of the report.
    pub findings: Vec<(&'static str, Finding)>,
}

impl Answer {
    /// The findings of this verdict.
    pub fn of(&self, verdict: Verdict) -> impl Iterator<Item = &(&'static str, Finding)> {
        self.findings.iter().filter(move |(_, finding)| finding.verdict == verdict)
    }

    /// The ids of this verdict.
    pub fn ids(&self, verdict: Verdict) -> Vec<&'static str> {
        self.of(verdict).map(|(id, _)| *id).collect()
    }
}

/// A boat, and what is said of her at each level, or the faults of a job that could not be read.
pub type Judged = (Boat, Vec<Result<Answer, String>>);

/// The sound boats.
pub static SOUND: LazyLock<Vec<Judged>> = LazyLock::new(|| judged("sound"));
/// The unsound boats.
pub static UNSOUND: LazyLock<Vec<Judged>> = LazyLock::new(|| judged("unsound"));

/// The answers of every boat that could be read, with her.
pub fn answers(boats: &[Judged]) -> impl Iterator<Item = (&Boat, &Answer)> {
    boats.iter().flat_map(|(boat, answers)| answers.iter().flatten().map(move |answer| (boat, answer)))
}

fn judged(folder: &str) -> Vec<Judged> {
    let boats = Boat::all(folder);
    let answers = side_by_side(boats.len(), |i| LEVELS.map(|level| answer(&boats[i], level)).collect());
    boats.into_iter().zip(answers).collect()
}

/// The job of a text, put before the rules.
fn answer(boat: &Boat, level: u8) -> Result<Answer, String> {
    let text = boat.at(level);
    let (job, page) = job::load(&boat.name, &text).map_err(|faults| faults.to_string())?;
    let rig = rig::resolve(&job, &CATALOG).map_err(|unresolved| format!("{unresolved:?}"))?;
    let case = Case::new(&rig);
    if let Some(slip) = case.shape_fault() {
        return Err(format!("{}: {slip:?}", page.name));
    }
    let findings = rules::judge(&case).into_iter().map(|judged| (judged.rule.id, judged.finding)).collect();
    Ok(Answer { level, findings })
}

/// What a function makes of each number below this one, on every core, in order.
pub fn side_by_side<T: Send>(count: usize, work: impl Fn(usize) -> T + Sync) -> Vec<T> {
    let cores = std::thread::available_parallelism().map_or(1, usize::from);
    let next = AtomicUsize::new(0);
    let taken = || {
        let numbers = std::iter::from_fn(|| Some(next.fetch_add(1, Ordering::Relaxed)).filter(|i| *i < count));
        numbers.map(|i| (i, work(i))).collect::<Vec<_>>()
    };
    let mut made: Vec<(usize, T)> = std::thread::scope(|scope| {
        let threads: Vec<_> = (0..cores).map(|_| scope.spawn(taken)).collect();
        threads.into_iter().flat_map(|thread| thread.join().expect("no rule panics")).collect()
    });
    made.sort_by_key(|(i, _)| *i);
    made.into_iter().map(|(_, value)| value).collect()
}
