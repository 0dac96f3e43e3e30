//! How she floats, end to end: from a job's text to what a rigger reads, and back into the job.

mod aboard;
mod barge;
mod command;
mod laws;
mod loadings;
mod mirrored;
mod parts;
mod places;
mod remedies;

use sternknee::case::Case;
use sternknee::catalog::Catalog;
use sternknee::job;
use sternknee::rig::{self, Rig};
use sternknee::rules::{self, Finding};

/// The rig of a job that must be sound.
pub fn rig(text: &str) -> Rig {
    let catalog = Catalog::built_in().expect("the built-in catalog is sound");
    let (job, _) = job::load("job.ron", text).unwrap_or_else(|faults| panic!("{faults}\n{text}"));
    rig::resolve(&job, &catalog).unwrap_or_else(|unresolved| panic!("{unresolved:?}\n{text}"))
}

/// What a rule says of a job.
pub fn finding(id: &str, text: &str) -> Finding {
    let rule = rules::find(id).unwrap_or_else(|| panic!("no rule {id}"));
    (rule.judge)(&Case::new(&rig(text)))
}

/// A skiff of five sections with the engine of this weight at this distance to port, and these other
/// fields of the job.
pub fn skiff(engine_lb: f64, port_in: f64, more: &str) -> String {
    let side = if port_in < 0.0 { "starboard" } else { "port" };
    format!(
        r#"(
    hull: tape(sections: [
        (forward: "0 in", keel: "0 in", chine: (out: "32 in", up: "6-1/2 in"), sheer: (out: "37 in", up: "25 in")),
        (forward: "5 ft 6 in", keel: "0 in", chine: (out: "33 in", up: "7 in"), sheer: (out: "40 in", up: "26-1/2 in")),
        (forward: "10 ft", keel: "1/2 in", chine: (out: "31 in", up: "9 in"), sheer: (out: "40 in", up: "29 in")),
        (forward: "13 ft 6 in", keel: "4 in", chine: (out: "21 in", up: "14-1/2 in"), sheer: (out: "32 in", up: "32 in")),
        (forward: "16 ft 9 in", keel: "25 in", chine: (out: "0 in", up: "30 in"), sheer: (out: "0 in", up: "36 in")),
    ]),
    transom: (height: "20 in", angle: "12 deg"),
    engines_off: [(described: (running_weight: "250 lb", centre_aft: "9 in", centre_above: "4 in"), at: [centre])],
    engines_on: [(described: (running_weight: "500 lb", centre_aft: "9 in", centre_above: "4 in"), weighed: "{engine_lb} lb", at: [{side}("{} in")])],
    {more}
)"#,
        port_in.abs()
    )
}

/// The bare boat, places and a well's lip at this height.
pub fn ledger(lip_in: f64) -> String {
    format!(
        r#"weights: (boat: (weight: "900 lb", forward: "7 ft", above: "14 in"), crew: 2,
        places: [(what: "aft", holds: 2, forward: "3 ft", above: "24 in"), (what: "helm", holds: 2, forward: "8 ft", above: "26 in")]),
    edges: [(name: "lip", kind: well, forward: "18 in", up: "{lip_in} in")],
    afloat: (water: fresh),"#
    )
}
