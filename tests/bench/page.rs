//! How long the page of the skiff takes: made from her findings, and from the job's text to the file.

use std::hint::black_box;

use sternknee::case::Case;
use sternknee::catalog::Catalog;
use sternknee::quantity::Units;
use sternknee::report::{self, Report, Stamp};
use sternknee::{job, rig, rules};

fn main() {
    divan::main();
}

const SKIFF: &str = include_str!("../../catalogs/jobs/oyster_skiff.ron");

/// From the text of a job to the page's text.
fn whole(catalog: &Catalog) -> String {
    let (job, _) = job::load("oyster_skiff.ron", SKIFF).expect("a sound job");
    let rig = rig::resolve(&job, catalog).expect("a job of the catalog");
    let case = Case::new(&rig);
    let judged = rules::judge(&case);
    let report = Report { case: &case, judged: &judged, units: Units::Us, explain: false };
    report::page(&report, &Stamp::default(), &[])
}

/// Job, rules, drawings, page, and the file.
#[divan::bench]
fn page_of_the_skiff_written(bencher: divan::Bencher) {
    let catalog = Catalog::built_in().expect("a sound catalog");
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("page.html");
    bencher.bench_local(|| std::fs::write(&file, whole(&catalog)).expect("written"));
}

/// The page alone, the findings being there.
#[divan::bench]
fn page_of_the_skiff_alone(bencher: divan::Bencher) {
    let catalog = Catalog::built_in().expect("a sound catalog");
    let (job, _) = job::load("oyster_skiff.ron", SKIFF).expect("a sound job");
    let rig = rig::resolve(&job, &catalog).expect("a job of the catalog");
    let case = Case::new(&rig);
    let judged = rules::judge(&case);
    let report = Report { case: &case, judged: &judged, units: Units::Us, explain: false };
    bencher.bench_local(|| black_box(report::page(&report, &Stamp::default(), &[])));
}
