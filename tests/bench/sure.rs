//! What it costs to say how sure a judgement is: `cargo bench --bench sure`.

use divan::{Bencher, black_box};
use sternknee::catalog::Catalog;
use sternknee::{front_door, rules};

const JOBS: [&str; 5] = ["tiller_skiff", "bay_runabout", "harbour_launch", "dive_tender", "oyster_skiff"];

fn main() {
    divan::main();
}

/// A whole job, judged once and weighed.
#[divan::bench(args = JOBS, sample_count = 5)]
fn weigh(bencher: Bencher, name: &str) {
    let catalog = Catalog::built_in().expect("the built-in catalog is sound");
    let path = format!("{}/catalogs/jobs/{name}.ron", env!("CARGO_MANIFEST_DIR"));
    let text = std::fs::read_to_string(&path).expect("a demo");
    let none = |_: &str| Err("no file".to_owned());
    let opened = front_door::open(&path, &text, &catalog, none).expect("the demo is sound");
    bencher.bench_local(|| {
        let mut judged = rules::judge(&opened.case());
        opened.weigh(&catalog, &mut judged);
        black_box(judged.len())
    });
}
