//! Least distance of twins on a bracket over tilt × tilt × steering, certified to half a millimetre.

#[path = "../crosscheck/swing/scene.rs"]
mod scene;

use divan::{Bencher, black_box};
use sternknee::physics::swing::{Effort, least_distance};

fn main() {
    divan::main();
}

#[divan::bench]
fn twins_certified_to_half_a_millimetre(bencher: Bencher) {
    let text = include_str!("../crosscheck/swing/twins.json");
    let case: scene::Case = serde_json::from_str(text).expect("the kept scene reads");
    let scene = case.scene().expect("the kept scene is sound");
    let effort = Effort::default();
    println!("{}: {:?}", case.name, least_distance(&scene, &effort));
    bencher.bench_local(|| least_distance(black_box(&scene), &effort));
}
