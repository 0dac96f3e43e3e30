//! The front door: the text of a job and the files it names go in; faults, findings, readings and drawings come out, as
//! data. Nothing here touches a disk, a clock, a thread or a terminal, so that a command line, a page in a browser and a
//! fleet of machines all come in the same way.

mod answer;
mod asked;
mod judged;
mod opened;
mod said;
mod typed;

pub use answer::{Answer, Question, answer};
pub use opened::{Opened, open};
pub use said::{SCHEMA, reply};

/// The fields of a job as data: what each takes, where on the boat and how it is taken.
fn description() -> serde_json::Value {
    serde_json::json!({ "form": null, "stops": [], "sketch": crate::report::sketch() })
}

#[cfg(test)]
mod tests;
