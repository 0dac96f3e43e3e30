//! The shape of a job: every field with what is declared of it, as a measuring sheet, a form and a report walk over it.

use std::sync::OnceLock;

use super::Job;
use crate::reading::{self, Declared, Standing, Stop};

/// Every field of a job, outer before inner.
pub fn fields() -> &'static [Standing] {
    static FIELDS: OnceLock<Vec<Standing>> = OnceLock::new();
    FIELDS.get_or_init(reading::standing::<Job>)
}

/// The job as data: each field with its name, what it takes and in which units, its bounds, where and how it is taken and
/// how closely. A form is made from it: see [`Form`](crate::reading::Form) for what `takes` can be.
pub fn describe() -> serde_json::Value {
    reading::describe::<Job>()
}

/// Every line of the measuring sheet, in the order of one walk round the boat.
pub fn lines() -> &'static [&'static Declared] {
    static LINES: OnceLock<Vec<&'static Declared>> = OnceLock::new();
    LINES.get_or_init(|| {
        let mut lines: Vec<&Declared> = Vec::new();
        for standing in fields() {
            let of_field = [standing.declared].into_iter().chain(standing.declared.also);
            for declared in of_field.filter(|declared| declared.taking.is_some_and(|taking| taking.stop != Stop::Desk))
            {
                if !lines.contains(&declared) {
                    lines.push(declared);
                }
            }
        }
        // A stable sort: of one stop, in the order of declaration.
        lines.sort_by_key(|declared| declared.taking.map(|taking| taking.stop));
        lines
    })
}

/// Its place in the walk round the boat.
pub fn order(declared: &Declared) -> usize {
    lines().iter().position(|line| *line == declared).unwrap_or(lines().len())
}

/// Where in a job it is written: `engines_on[].shaft`.
pub fn path(declared: &Declared) -> &'static str {
    let same = |standing: &&Standing| standing.declared.of == declared.of && standing.declared.field == declared.field;
    fields().iter().find(same).map_or(declared.field, |standing| &standing.path)
}
