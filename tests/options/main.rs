//! Which of these: options tried, candidates compared, readings moved.

#[path = "../common/mod.rs"]
mod common;

mod alone;
mod candidates;
mod hands;
mod moved;
mod prices;

use sternknee::front_door::{Opened, open};
use sternknee::options::{Hang, Yard};
use sternknee::written::Draught;

use common::CATALOG;

/// The text of a demo.
fn demo(name: &str) -> String {
    let path = format!("{}/catalogs/jobs/{name}.ron", env!("CARGO_MANIFEST_DIR"));
    std::fs::read_to_string(&path).unwrap_or_else(|error| panic!("{path}: {error}"))
}

/// A job that must be sound.
fn opened(text: &str) -> Opened {
    open("job.ron", text, &CATALOG, |name| Err(format!("{name} is not there")))
        .unwrap_or_else(|faults| panic!("{faults}"))
}

/// The text of a job with an option taken into it, as somebody would write it.
fn with(text: &str, hang: &Hang, yard: &Yard, opened: &Opened) -> String {
    hang.entries(yard, &opened.page).iter().fold(text.to_owned(), |text, (entry, value)| {
        Draught::new(&text).put(entry, value).unwrap_or_else(|error| panic!("{entry}: {error}"))
    })
}
