//! What the parts of a check cost: `cargo bench --bench checker`.

use divan::{Bencher, black_box};
use sternknee::case::Case;
use sternknee::catalog::Catalog;
use sternknee::quantity::Units;
use sternknee::report::{self, Report};
use sternknee::{job, rig, rules};

const JOBS: [(&str, &str); 3] = [
    ("harbour launch", include_str!("../../catalogs/jobs/harbour_launch.ron")),
    ("oyster skiff", include_str!("../../catalogs/jobs/oyster_skiff.ron")),
    ("tiller skiff", include_str!("../../catalogs/jobs/tiller_skiff.ron")),
];
const NAMES: [&str; 3] = [JOBS[0].0, JOBS[1].0, JOBS[2].0];

fn main() {
    divan::main();
}

fn text(name: &str) -> &'static str {
    let found = JOBS.iter().find(|(other, _)| *other == name);
    found.expect("one of the demos").1
}

fn rig_of(name: &str) -> rig::Rig {
    let catalog = Catalog::built_in().expect("the built-in catalog is sound");
    let (job, _) = job::load(name, text(name)).expect("the demo is sound");
    rig::resolve(&job, &catalog).expect("the demo names what the catalog has")
}

#[divan::bench]
fn load_the_catalogs() -> Catalog {
    Catalog::built_in().expect("the built-in catalog is sound")
}

#[divan::bench(args = NAMES)]
fn read_a_job(name: &str) {
    let _ = black_box(job::load(name, black_box(text(name))));
}

#[divan::bench(args = NAMES)]
fn resolve_a_job(bencher: Bencher, name: &str) {
    let catalog = Catalog::built_in().expect("the built-in catalog is sound");
    let (job, _) = job::load(name, text(name)).expect("the demo is sound");
    bencher.bench_local(|| black_box(rig::resolve(black_box(&job), &catalog)).is_ok());
}

#[divan::bench(args = NAMES)]
fn judge_a_rig(bencher: Bencher, name: &str) {
    let rig = rig_of(name);
    bencher.bench_local(|| rules::judge(&Case::new(black_box(&rig))).len());
}

#[divan::bench(args = NAMES)]
fn write_a_report(bencher: Bencher, name: &str) {
    let rig = rig_of(name);
    let case = Case::new(&rig);
    let judged = rules::judge(&case);
    let report = Report { case: &case, judged: &judged, units: Units::Both, explain: true };
    bencher.bench_local(|| report::text(black_box(&report)).len());
}

/// The whole of a check as text, from the job's own text: what a rigged job costs.
#[divan::bench(args = NAMES)]
fn check_a_job(bencher: Bencher, name: &str) {
    let catalog = Catalog::built_in().expect("the built-in catalog is sound");
    bencher.bench_local(|| {
        let (job, _) = job::load(name, black_box(text(name))).expect("the demo is sound");
        let rig = rig::resolve(&job, &catalog).expect("the demo names what the catalog has");
        let case = Case::new(&rig);
        let judged = rules::judge(&case);
        report::text(&Report { case: &case, judged: &judged, units: Units::Us, explain: false }).len()
    });
}

/// The same job without what is rigged: the difference is what the six families add.
#[divan::bench(args = NAMES)]
fn judge_a_rig_without_its_rigging(bencher: Bencher, name: &str) {
    let mut rig = rig_of(name);
    let mut job = (*rig.job).clone();
    job.rigging = Default::default();
    rig.job = std::sync::Arc::new(job);
    bencher.bench_local(|| rules::judge(&Case::new(black_box(&rig))).len());
}

/// What is rigged: the six families by themselves, of the demo that tells all of it.
#[divan::bench]
fn rules_of_rigging(bencher: Bencher) {
    let rig = rig_of("oyster skiff");
    let of_rigging = |rule: &&&rules::Rule| rule.family >= rules::Family::Steering;
    bencher.bench_local(|| {
        let case = Case::new(black_box(&rig));
        rules::ALL.iter().filter(of_rigging).map(|rule| (rule.judge)(&case)).collect::<Vec<_>>()
    });
}
