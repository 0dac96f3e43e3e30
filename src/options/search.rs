//! All options judged and ranked.

use std::sync::OnceLock;

use super::{Hang, Said, Tried, Yard};
use crate::hands::{Hands, one_pair};
use crate::rules::{Family, Rule};

/// Who works, who looks on, and who may call it a day.
pub struct Work<'a> {
    /// Who works.
    pub hands: Hands,
    /// Told after each option.
    pub done: &'a (dyn Fn() + Sync),
    /// Whether to go on; where it says no, what is done so far is the answer.
    pub goes_on: &'a (dyn Fn() -> bool + Sync),
}

impl Work<'static> {
    /// One after the other, to the end.
    pub const PLAIN: Work<'static> = Work { hands: one_pair, done: &|| (), goes_on: &|| true };
}

/// What was found.
pub struct Found {
    /// How many ways there were to try.
    pub of: usize,
    /// Those that were judged, in the order in which they were put together.
    pub tried: Vec<Tried>,
    /// What fails with all that came so far: it refuses nothing here.
    pub aside: Vec<Said>,
    /// The rules that say the same of everything that came through: they tell none from another.
    pub alike: Vec<&'static str>,
}

/// Families that may refuse all: other engines, lighter or with another shaft, are then the answer.
const OF_THE_ENGINES: [Family; 3] = [Family::Power, Family::Weight, Family::Height];

/// Judges each of them. The same on one core and on many.
pub fn search(yard: &Yard, hangs: &[Hang], work: &Work) -> Found {
    let mut aside: Vec<Said> = Vec::new();
    loop {
        let is_aside = |rule: &Rule| aside.iter().any(|said| said.rule.id == rule.id);
        let slots: Vec<OnceLock<Tried>> = hangs.iter().map(|_| OnceLock::new()).collect();
        (work.hands)(hangs.len(), &|i| {
            if (work.goes_on)() {
                slots[i].get_or_init(|| Tried::of(yard, hangs[i].clone(), &is_aside));
                (work.done)();
            }
        });
        let tried: Vec<Tried> = slots.into_iter().filter_map(OnceLock::into_inner).collect();
        match of_the_boat(&tried) {
            Some(said) if (work.goes_on)() => aside.push(said),
            _ => {
                let alike = alike(&tried);
                return Found { of: hangs.len(), tried, aside, alike };
            }
        }
    }
}

/// What refuses everything that came as far as its screen.
fn of_the_boat(tried: &[Tried]) -> Option<Said> {
    let last = tried.iter().filter_map(|one| one.refused).max()?;
    if tried.iter().any(|one| one.refused.is_none()) {
        return None;
    }
    let mut there = tried.iter().filter(|one| one.refused == Some(last));
    let first = there.next()?;
    let common = |said: &&Said| {
        !OF_THE_ENGINES.contains(&said.rule.family)
            && there.clone().all(|one| one.said.iter().any(|other| other.rule.id == said.rule.id))
    };
    first.said.iter().find(common).cloned()
}

/// The rules that say the same of all that came through, where several did.
fn alike(tried: &[Tried]) -> Vec<&'static str> {
    let through: Vec<&Tried> = tried.iter().filter(|one| one.refused.is_none()).collect();
    let [first, rest @ ..] = through.as_slice() else { return Vec::new() };
    if rest.is_empty() {
        return Vec::new();
    }
    // What came through was judged by every rule, in the same order.
    let same = |i: usize, said: &Said| {
        rest.iter().all(|one| {
            one.said.get(i).is_some_and(|other| {
                other.rule.id == said.rule.id && other.verdict == said.verdict && other.summary == said.summary
            })
        })
    };
    first.said.iter().enumerate().filter(|(i, said)| same(*i, said)).map(|(_, said)| said.rule.id).collect()
}

impl Found {
    /// Whether all were tried.
    pub fn is_whole(&self) -> bool {
        self.tried.len() == self.of
    }
}
