//! What trying options costs: `cargo bench --bench options`.

use std::sync::LazyLock;

use divan::Bencher;
use rayon::prelude::*;
use sternknee::catalog::Catalog;
use sternknee::front_door::{Opened, open};
use sternknee::options::{Hang, Offer, Prices, Work, nearly, search};

const SKIFF: &str = include_str!("../../catalogs/jobs/oyster_skiff.ron");

static CATALOG: LazyLock<Catalog> = LazyLock::new(|| Catalog::built_in().expect("the built-in catalog is sound"));
static JOB: LazyLock<Opened> =
    LazyLock::new(|| open("skiff.ron", SKIFF, &CATALOG, |name| Err(name.to_owned())).expect("the demo is sound"));

/// So many ways for engines to hang on the skiff: those of the whole catalog, two-strokes too, evenly picked.
fn hangs(count: usize) -> Vec<Hang> {
    let all: String = CATALOG
        .engines
        .iter()
        .map(|entry| &entry.name)
        .chain(CATALOG.brackets.iter().map(|entry| &entry.name))
        .map(|name| format!("\"{name}\",1\n"))
        .collect();
    let prices = Prices::read("all", &format!("class,price\n{all}"), &CATALOG).expect("every name is the catalog's");
    let hangs = Offer { prices: Some(&prices), only: None }.hangs(&JOB.yard(&CATALOG));
    assert!(hangs.len() >= count, "{}", hangs.len());
    (0..count).map(|i| hangs[i * hangs.len() / count].clone()).collect()
}

fn main() {
    divan::main();
}

/// A yard that nothing was tried in, all options, and what is nearest.
fn try_all(hangs: &[Hang], work: &Work) -> usize {
    let yard = JOB.yard(&CATALOG);
    let found = search(&yard, hangs, work);
    nearly(&yard, &found, work).len() + found.tried.len()
}

#[divan::bench(args = [2500, 5000, 10_000], sample_count = 3, sample_size = 1)]
fn one_core(bencher: Bencher, count: usize) {
    let hangs = hangs(count);
    bencher.bench_local(|| try_all(&hangs, &Work::PLAIN));
}

#[divan::bench(args = [10_000], sample_count = 3, sample_size = 1)]
fn two_cores(bencher: Bencher, count: usize) {
    let hangs = hangs(count);
    let pool = rayon::ThreadPoolBuilder::new().num_threads(2).build().expect("two threads");
    bencher.bench_local(|| {
        pool.install(|| {
            let work =
                Work { hands: |count, task| (0..count).into_par_iter().with_max_len(1).for_each(task), ..Work::PLAIN };
            try_all(&hangs, &work)
        })
    });
}
