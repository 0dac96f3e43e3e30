//! How long the prediction of a whole range takes, and the reading of an hour's log.

use divan::{Bencher, black_box};
use sternknee::case::Case;
use sternknee::catalog::Catalog;
use sternknee::logged;
use sternknee::{job, rig};

#[path = "../common/trial_log.rs"]
mod trial_log;

fn main() {
    divan::main();
}

fn demo() -> rig::Rig {
    let text = include_str!("../../catalogs/jobs/dive_tender.ron");
    let (job, _) = job::load("dive_tender", text).expect("a job");
    rig::resolve(&job, &Catalog::built_in().expect("the catalog")).expect("a rig")
}

/// One boat, from the first speed that the method tells to past her greatest.
#[divan::bench]
fn range(bencher: Bencher) {
    let rig = demo();
    let case = Case::new(&rig);
    let built = case.running().and_then(|runs| runs.after.as_ref().ok()).expect("told").built.clone();
    bencher.bench_local(|| black_box(&built.craft).range());
}

/// The whole of it: both sides, the trial's correction, doubts; the hull is floated before.
#[divan::bench]
fn both_sides_with_doubts(bencher: Bencher) {
    let rig = demo();
    bencher
        .with_inputs(|| {
            let case = Case::new(&rig);
            assert!(case.float().is_ok());
            case
        })
        .bench_local_refs(|case| case.running().is_some());
}

#[divan::bench]
fn an_hours_log(bencher: Bencher) {
    let made = trial_log::hour(7);
    bencher.bench_local(|| logged::read(black_box(made.text.as_bytes())));
}
