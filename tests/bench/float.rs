//! Floating bodies: equilibrium, hydrostatics table, righting arms, cost over the number of triangles, and
//! all conditions of a demo.

use nalgebra::{Point2, Point3};
use sternknee::case::Case;
use sternknee::catalog::Catalog;
use sternknee::job;
use sternknee::physics::float::{
    Fairing, Hull, Load, Lofting, TapeSection, TriMesh, WaterPlane, equilibrium, hydrostatics_table, mesh_from_tape,
    righting_arms,
};
use sternknee::rig::{self, Rig};
use sternknee::rules;
use uom::si::angle::degree;
use uom::si::f64::{Angle, Length, Mass, MassDensity};
use uom::si::length::meter;
use uom::si::mass::kilogram;
use uom::si::mass_density::kilogram_per_cubic_meter;

fn main() {
    for triangles in COUNTS {
        let mesh = boat(triangles);
        println!("{triangles}: {} triangles", mesh.faces().len());
    }
    divan::main();
}

/// About how many triangles.
const COUNTS: [usize; 5] = [1_250, 5_000, 20_000, 80_000, 320_000];

fn m(value: f64) -> Length {
    Length::new::<meter>(value)
}

/// An invented planing boat, as fine as asked: knuckles are put on the straight panels.
fn boat(triangles: usize) -> TriMesh {
    // Four bays of `slices`, both sides, 2 k panels, two triangles each, and the deck.
    let k = ((triangles as f64 / 32.0).sqrt() / 2.0).round().max(1.0) as usize;
    let slices = (triangles as f64 / (32.0 * k as f64)).round() as usize;
    let between = |a: Point2<f64>, b: Point2<f64>| -> Vec<Point2<f64>> {
        (1..k).map(|i| a + (b - a) * (i as f64 / k as f64)).collect()
    };
    let section = |x: f64, keel: f64, chine: [f64; 2], sheer: [f64; 2]| {
        let (chine, sheer) = (Point2::from(chine), Point2::from(sheer));
        TapeSection {
            x: m(x),
            keel: m(keel),
            bottom_knuckles: between(Point2::new(0.0, keel), chine),
            chine,
            side_knuckles: between(chine, sheer),
            sheer,
        }
    };
    let sections = [
        section(0.0, 0.0, [0.95, 0.34], [1.10, 0.95]),
        section(2.0, 0.0, [0.97, 0.35], [1.15, 0.97]),
        section(3.6, 0.02, [0.85, 0.42], [1.12, 1.02]),
        section(4.8, 0.20, [0.50, 0.60], [0.85, 1.10]),
        section(5.8, 0.85, [0.0, 0.95], [0.0, 1.20]),
    ];
    let lofting = Lofting { fairing: Fairing::Monotone, slices, ..Lofting::default() };
    mesh_from_tape(&sections, &lofting).unwrap().mesh
}

fn load() -> Load {
    Load {
        mass: Mass::new::<kilogram>(1150.0),
        centre: Point3::new(2.0, 0.03, 0.55),
        water: MassDensity::new::<kilogram_per_cubic_meter>(1025.0),
    }
}

/// Sinkage, trim and heel from level and upright.
#[divan::bench(args = COUNTS)]
fn equilibrium_of(bencher: divan::Bencher, triangles: usize) {
    let (hull, load) = (Hull::new(boat(triangles)), load());
    bencher.bench(|| equilibrium(divan::black_box(&hull), divan::black_box(&load)));
}

/// One cut with all integrals at a trimmed and heeled plane.
#[divan::bench(args = COUNTS)]
fn cut_of(bencher: divan::Bencher, triangles: usize) {
    let hull = Hull::new(boat(triangles));
    let plane: WaterPlane = equilibrium(&hull, &load()).unwrap().at_rest().unwrap().plane;
    bencher.bench(|| divan::black_box(&hull).cut(divan::black_box(&plane)));
}

/// Sorting the triangles, once a hull.
#[divan::bench(args = COUNTS)]
fn hull_from_mesh(bencher: divan::Bencher, triangles: usize) {
    let mesh = boat(triangles);
    bencher.with_inputs(|| mesh.clone()).bench_values(Hull::new);
}

/// Twenty drafts at one trim, 5,000 triangles.
#[divan::bench]
fn hydrostatics_table_of_20_drafts(bencher: divan::Bencher) {
    let hull = Hull::new(boat(5_000));
    let drafts: Vec<Length> = (1..=20).map(|i| m(0.04 * f64::from(i))).collect();
    let trim = Angle::new::<degree>(1.5);
    bencher.bench(|| hydrostatics_table(divan::black_box(&hull), load().water, trim, &drafts));
}

/// Nineteen heels free to trim, 5,000 triangles.
#[divan::bench]
fn righting_arms_of_19_heels(bencher: divan::Bencher) {
    let (hull, load) = (Hull::new(boat(5_000)), load());
    let heels: Vec<Angle> = (0..19).map(|i| Angle::new::<degree>(5.0 * f64::from(i))).collect();
    bencher.bench(|| righting_arms(divan::black_box(&hull), &load, &heels));
}

/// From five tape sections to a checked mesh of 5,000 triangles.
#[divan::bench]
fn loft_of_5000_triangles(bencher: divan::Bencher) {
    bencher.bench(|| boat(divan::black_box(5_000)));
}

/// The rig of the skiff's demo.
fn skiff() -> Rig {
    let text = include_str!("../../catalogs/jobs/oyster_skiff.ron");
    let (job, _) = job::load("oyster_skiff.ron", text).unwrap();
    rig::resolve(&job, &Catalog::built_in().unwrap()).unwrap()
}

/// All conditions of the skiff, before and after: loft, sort, fit to the marks, ten equilibria.
#[divan::bench]
fn all_conditions_of_the_skiff(bencher: divan::Bencher) {
    let rig = skiff();
    bencher.bench(|| Case::new(divan::black_box(&rig)).float().map(|float| float.loadings.len()).ok());
}

/// The same, and the ten stern rules with their remedies searched for.
#[divan::bench]
fn stern_rules_of_the_skiff(bencher: divan::Bencher) {
    let rig = skiff();
    let stern: Vec<_> = rules::ALL.iter().filter(|rule| rule.id.starts_with("stern/")).collect();
    bencher.bench(|| {
        let case = Case::new(divan::black_box(&rig));
        stern.iter().map(|rule| (rule.judge)(&case).verdict).collect::<Vec<_>>()
    });
}
