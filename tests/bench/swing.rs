//! Twins on a bracket over tilt × tilt × steering: six bodies each, eight obstacles and the neighbour,
//! certified to half a millimetre.

#[path = "../crosscheck/swing/scene.rs"]
mod scene;

use divan::{Bencher, black_box};
use nalgebra::Vector3;
use sternknee::physics::swing::{
    Effort, Move, Outcome, Scene, Swing, least_distance, least_distance_to_each, least_shift, permitted_range,
};
use uom::si::f64::Length;
use uom::si::length::millimeter;

fn main() {
    divan::main();
}

fn twins() -> Scene {
    let text = include_str!("../crosscheck/swing/twins.json");
    let case: scene::Case = serde_json::from_str(text).expect("the kept scene reads");
    assert_eq!(case.name, "twins");
    case.scene().expect("the kept scene is sound")
}

/// The same with 30 mm less setback, so that full tilt at lock strikes the well.
fn touching_twins() -> Scene {
    twins().engines_shifted(Vector3::new(0.03, 0.0, 0.0))
}

fn margin() -> Length {
    Length::new::<millimeter>(10.0)
}

fn search(bencher: Bencher, scene: &Scene) {
    let effort = Effort::default();
    let found = least_distance(scene, &effort).expect("the question is sound");
    assert_eq!(found.outcome, Outcome::Certified);
    bencher.bench_local(|| least_distance(black_box(scene), &effort));
}

#[divan::bench]
fn twins_certified(bencher: Bencher) {
    search(bencher, &twins());
}

#[divan::bench]
fn touching_twins_deepest_certified(bencher: Bencher) {
    search(bencher, &touching_twins());
}

#[divan::bench]
fn twins_to_each_obstacle_certified(bencher: Bencher) {
    let (scene, effort) = (twins(), Effort::default());
    bencher.bench_local(|| least_distance_to_each(black_box(&scene), &effort));
}

#[divan::bench]
fn touching_permitted_tilt(bencher: Bencher) {
    let (scene, effort) = (touching_twins(), Effort::default());
    bencher.bench_local(|| permitted_range(black_box(&scene), Swing::Tilt, margin(), &effort));
}

#[divan::bench]
fn touching_least_setback(bencher: Bencher) {
    let (scene, effort) = (touching_twins(), Effort::default());
    let way =
        Move { direction: -Vector3::x(), most: Length::new::<millimeter>(400.0), step: Length::new::<millimeter>(1.0) };
    bencher.bench_local(|| least_shift(black_box(&scene), &way, margin(), &effort));
}
