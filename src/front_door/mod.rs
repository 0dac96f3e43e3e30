//! The front door: the text of a job and the files it names go in; faults, findings, readings and drawings come out, as
//! data. Nothing here touches a disk, a clock, a thread or a terminal, so that a command line, a page in a browser and a
//! fleet of machines all come in the same way.

mod answer;
mod asked;
mod judged;
mod opened;
mod said;
mod typed;

use crate::job;
use crate::reading::Stop;
use crate::report;

pub use answer::{Answer, Question, answer};
#[cfg(feature = "terminal")]
pub(crate) use opened::open_draft;
pub use opened::{Opened, open};
pub use said::{SCHEMA, reply};

/// The fields of a job as data: what each takes, where on the boat and how it is taken; the stops of the walk round her, in
/// order; the sketch that their places are marked on.
fn description() -> serde_json::Value {
    serde_json::json!({
        "form": job::describe(),
        "stops": Stop::ALL.map(Stop::words),
        // Asked for in a study alone.
        "study": Stop::Desk.words(),
        "sketch": report::sketch(),
    })
}
