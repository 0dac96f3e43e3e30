//! Archimedes, On Floating Bodies, book II (T. L. Heath's translation, 1897), propositions 2 and 4.
//! Values from memory, derived again here.
//!
//! For a right segment of a paraboloid r² = p z of axis h in water at depth d: KB = 2d/3, BM = p/2,
//! KG = 2h/3, relative density (d/h)². GM = p/2 − 2(h − d)/3, so she stands upright at every density when
//! h ≤ 3p/4 (proposition 2), and else when √s ≥ 1 − 3p/(4h) (proposition 4).

use sternknee::physics::float::{Hull, Outcome, equilibrium};
use uom::si::length::meter;

use super::shapes::{close, load, turned};

const PARAMETER: f64 = 1.0;

fn paraboloid(axis: f64, n: usize) -> Hull {
    let profile: Vec<_> = (0..=n)
        .map(|i| {
            // Even steps of radius keep the chords of the parabola even.
            let part = i as f64 / n as f64;
            let z = axis * part * part;
            ((PARAMETER * z).sqrt(), z)
        })
        .chain([(0.0, axis)])
        .collect();
    Hull::new(turned(&profile, 4 * n))
}

fn upright_is_stable(axis: f64, relative_density: f64) -> bool {
    let hull = paraboloid(axis, 40);
    let mass = relative_density * hull.volume().value * 1000.0;
    let outcome = equilibrium(&hull, &load(mass, [0.0, 0.0, 2.0 * axis / 3.0], 1000.0)).unwrap();
    match outcome {
        Outcome::Stable(floating) => floating.plane.normal().z > 0.99,
        Outcome::Unstable { .. } => false,
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_short_segment_of_a_paraboloid_stands_upright_at_every_density() {
    for axis in [0.4, 0.70, 0.74] {
        for s in [0.05, 0.2, 0.5, 0.9] {
            assert!(upright_is_stable(axis * PARAMETER, s), "axis {axis}, density {s}");
        }
    }
}

#[test]
fn a_longer_segment_stands_upright_only_above_the_density_of_archimedes() {
    for axis in [1.0, 1.25, 1.5] {
        let limit = (1.0 - 3.0 * PARAMETER / (4.0 * axis)).powi(2);
        assert!(upright_is_stable(axis, limit * 1.08), "axis {axis}");
        assert!(!upright_is_stable(axis, limit * 0.92), "axis {axis}");
    }
}

#[test]
fn the_metacentric_height_of_the_paraboloid_is_that_of_its_formula() {
    let (axis, s) = (0.7, 0.36_f64);
    let hull = paraboloid(axis, 80);
    let mass = s * hull.volume().value * 1000.0;
    let outcome = equilibrium(&hull, &load(mass, [0.0, 0.0, 2.0 * axis / 3.0], 1000.0)).unwrap();
    let depth = axis * s.sqrt();
    let gm = PARAMETER / 2.0 - 2.0 / 3.0 * (axis - depth);
    // Facets of 1/320 turn: errors of a few 1e-4.
    close(outcome.at_rest().unwrap().gm_transverse.get::<meter>(), gm, 1e-3);
}
