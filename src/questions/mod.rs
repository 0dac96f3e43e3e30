//! What hardly can be is asked back. A relation says what of a boat's readings lies within what, is larger than what, weighs
//! about what, or is said twice. Its limits are wide: an ordinary boat is asked nothing.
//!
//! What cannot be at all is a fault of the job, and is told where it is read ([`crate::job`]).

mod agree;
mod built;
mod engines;
mod lies;
mod plate;
mod sizes;
mod tolerance;
mod weighs;

use crate::case::Case;
use crate::quantity::{Basis, Text};
use crate::reading::{self, Bounds, Told, Value};
use crate::rig::Question;
use sizes::Sizes;

/// How readings of one boat are to each other.
pub struct Relation {
    /// Its name.
    pub name: &'static str,
    /// Why it holds.
    pub why: &'static str,
    /// Where it is from.
    pub source: &'static str,
    /// What of a job does not hold to it.
    look: fn(&Known) -> Vec<Odd>,
}

/// Every relation, in the order in which questions are told.
pub const ALL: &[&Relation] = &[
    &tolerance::CLOSER_THAN_ITSELF,
    &lies::WITHIN_HER_LENGTH,
    &lies::WITHIN_HER_DEPTH,
    &lies::WITHIN_HER_BREADTH,
    &lies::NOTHING_LONGER_THAN_SHE,
    &lies::WELL_AT_THE_STERN,
    &lies::WELL_OVER_THE_BOTTOM,
    &lies::IN_THE_WATER,
    &lies::BRACKET_ON_THE_TRANSOM,
    &plate::HORSEPOWER,
    &plate::POWER_FOR_HER_SIZE,
    &plate::PERSONS_FOR_HER_SIZE,
    &plate::WEIGHT_OF_A_PERSON,
    &built::METAL_IS_PLATE,
    &weighs::NO_MORE_THAN_SHE_FLOATS,
    &weighs::AS_BOATS_WEIGH,
    &weighs::TANK_IN_HER,
    &engines::WEIGHED_LIKE_ITS_CLASS,
    &engines::WEIGHT_FOR_ITS_POWER,
    &engines::HUNG_IN_A_ROW,
    &agree::SAID_TWICE,
    &agree::MARKS_OF_ONE_WATER,
    &agree::MARKS_OF_A_BOAT,
];

/// How many facts are held against a second reading of them.
pub fn said_twice() -> usize {
    agree::TWICE.len()
}

/// What the relations look at.
struct Known<'c> {
    case: &'c Case<'c>,
    /// What somebody wrote; what a class of the catalog says is not asked back.
    written: Vec<Told<'c>>,
    sizes: Sizes,
}

impl<'c> Known<'c> {
    /// What was written within bounds of these sorts.
    fn of_sort<'s>(&'s self, sorts: &'s [Bounds]) -> impl Iterator<Item = &'s Told<'c>> {
        self.written.iter().filter(|told| told.declared.bounds.is_some_and(|bounds| sorts.contains(&bounds)))
    }
}

/// Readings that hardly can be.
struct Odd {
    entries: Vec<String>,
    said: Text,
}

impl Odd {
    fn of(told: &Told, said: Text) -> Odd {
        Odd { entries: vec![told.path.clone()], said }
    }
}

/// The number that is told, in the coherent SI unit; nothing of words and ranges.
fn si(told: &Told) -> Option<f64> {
    match &told.value {
        Value::Number(number) => Some(number.si),
        Value::Count(count) => Some(*count),
        _ => None,
    }
}

/// Everything that hardly can be of a job, but for what it says was looked at again.
pub fn questions(case: &Case) -> Vec<Question> {
    let job = &*case.rig.job;
    let mut written = reading::told(job);
    written.retain(|told| told.basis() != Some(Basis::Catalog));
    let known = Known { case, written, sizes: Sizes::of(case) };
    let mut questions: Vec<Question> = Vec::new();
    for relation in ALL {
        for odd in (relation.look)(&known) {
            let sure = odd.entries.iter().any(|entry| job.sure.contains(entry));
            // Of one reading the first question is enough.
            let asked = questions.iter().any(|question| question.entries.first() == odd.entries.first());
            if !sure && !asked {
                questions.push(Question {
                    relation: relation.name,
                    entries: odd.entries,
                    said: odd.said,
                    why: relation.why,
                    source: relation.source,
                });
            }
        }
    }
    questions
}
