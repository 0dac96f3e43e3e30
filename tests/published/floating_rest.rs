//! Where bodies of known form come to rest: box, square log, and any start of a boat.
//!
//! The limits and angles of the square log, and the wall-sided formula (E. L. Attwood, Theoretical Naval
//! Architecture), are derived again beside each check.

use sternknee::physics::float::{
    Attitude, Hull, Outcome, equilibrium, equilibrium_from, plane_carrying, righting_arms,
};
use uom::si::angle::{degree, radian};
use uom::si::length::meter;
use uom::si::mass::kilogram;
use uom::si::volume::cubic_meter;

use super::shapes::*;

const ROUNDING: f64 = 1e-12;

fn log_of(relative_density: f64) -> Outcome {
    let load = load(10.0 * 1000.0 * relative_density, [5.0, 0.0, 0.5], 1000.0);
    equilibrium(&box_hull(10.0, 1.0, 1.0), &load).unwrap()
}

#[test]
fn a_square_log_of_half_the_waters_density_floats_at_45_degrees() {
    let Outcome::Unstable { balance, settled } = log_of(0.5) else {
        panic!("upright should be found, and found unstable: {:?}", log_of(0.5));
    };
    near(balance.attitude().heel.get::<degree>(), 0.0, 1e-9);
    // GM = 1/4 + 1/6 − 1/2.
    close(balance.gm_transverse.get::<meter>(), -1.0 / 12.0, 1e-10);
    near(settled.attitude().heel.get::<degree>().abs(), 45.0, 1e-7);
    assert!(settled.gm_least.get::<meter>() > 0.0);
}

#[test]
fn a_square_log_is_stable_upright_outside_the_two_limits_of_density() {
    // 6 s (1 − s) = 1 at s = (3 ± √3)/6.
    let limit = (3.0 - 3.0_f64.sqrt()) / 6.0;
    close(limit, 0.2113, 1e-3);
    for s in [limit - 1e-3, 1.0 - limit + 1e-3, 0.1, 0.9] {
        assert!(matches!(log_of(s), Outcome::Stable(_)), "{s}");
    }
    for s in [limit + 1e-3, 1.0 - limit - 1e-3, 0.4, 0.6] {
        assert!(matches!(log_of(s), Outcome::Unstable { .. }), "{s}");
    }
}

/// While water meets both upright sides, tan²φ = −2 GM/BM = 12 s (1 − s) − 2.
#[test]
fn a_square_log_just_past_the_limit_lolls_by_the_wall_sided_formula() {
    for s in [0.22, 0.23, 0.24, 0.77] {
        let Outcome::Unstable { settled, .. } = log_of(s) else {
            panic!("{s}");
        };
        let expected = (12.0 * s * (1.0 - s) - 2.0_f64).sqrt().atan();
        close(settled.attitude().heel.get::<radian>(), expected, 1e-9);
    }
}

/// The same log lying athwart: what heeled her there trims her here.
#[test]
fn a_square_log_athwart_lolls_fore_and_aft_by_the_same_formula() {
    for s in [0.22, 0.23, 0.77] {
        let load = load(10.0 * 1000.0 * s, [0.5, 0.0, 0.5], 1000.0);
        let Outcome::Unstable { balance, settled } = equilibrium(&box_hull(1.0, 10.0, 1.0), &load).unwrap() else {
            panic!("{s}");
        };
        near(balance.attitude().trim.get::<degree>(), 0.0, 1e-9);
        let expected = (12.0 * s * (1.0 - s) - 2.0_f64).sqrt().atan();
        close(settled.attitude().trim.get::<radian>().abs(), expected, 1e-9);
        near(settled.attitude().heel.get::<degree>(), 0.0, 1e-9);
    }
}

/// GZ = sin φ (GM + ½ BM tan²φ) holds for a box until an edge meets the water (Attwood's wall-sided
/// formula).
#[test]
fn righting_arms_of_a_box_follow_the_wall_sided_formula() {
    let (l, b, t, kg_height) = (8.0, 3.0, 1.0, 1.1);
    let hull = box_hull(l, b, 2.0);
    let load = load(1000.0 * l * b * t, [l / 2.0, 0.0, kg_height], 1000.0);
    let heels: Vec<_> = (-6..=6).map(|i| deg(5.0 * f64::from(i))).collect();
    let bm = b * b / (12.0 * t);
    let gm = t / 2.0 + bm - kg_height;
    for arm in righting_arms(&hull, &load, &heels).unwrap() {
        let phi = arm.heel.get::<radian>();
        let expected = phi.sin() * (gm + 0.5 * bm * phi.tan().powi(2));
        near(arm.arm.get::<meter>(), expected, 1e-10);
        near(arm.trim.get::<radian>(), 0.0, 1e-9);
        assert!(arm.balanced);
    }
}

/// While the whole bottom is wet and the deck dry, a water surface of slope a puts the centre of buoyancy of
/// a box at a L²/(12 d) off the middle and d/2 + a² L²/(24 d) high, for a mean draft d.
#[test]
fn a_box_loaded_off_the_middle_trims_by_its_closed_form() {
    let (l, b, d, mass) = (6.0, 2.0, 1.5, 5400.0);
    let (mean, kg_height) = (0.45, 0.6);
    let hull = box_hull(l, b, d);
    for shift in [-0.4, -0.05, 0.2, 0.35] {
        let load = load(mass, [l / 2.0 + shift, 0.0, kg_height], 1000.0);
        let floating = *equilibrium(&hull, &load).unwrap().at_rest().unwrap();
        // With surface slope a: x_B − L/2 = a L²/(12 d), z_B = d/2 + a² L²/(24 d), and BG along the normal
        // (−a, 1): shift − x_B' = −a (KG − z_B).
        let n = floating.plane.normal();
        let a = -n.x / n.z;
        let x_b = a * l * l / (12.0 * mean);
        let z_b = mean / 2.0 + a * a * l * l / (24.0 * mean);
        near(shift - x_b, -a * (kg_height - z_b), 1e-11);
        close(floating.immersed.volume.get::<cubic_meter>(), mass / 1000.0, 1e-12);
        assert_eq!(shift > 0.0, floating.attitude().trim.get::<degree>() < 0.0);
    }
}

#[test]
fn any_start_ends_in_the_same_upright_rest() {
    let hull = Hull::new(runabout(6));
    let load = load(1100.0, [2.0, 0.0, 0.55], 1025.0);
    let rest = *equilibrium(&hull, &load).unwrap().at_rest().unwrap();
    for trim in [-60.0, -20.0, 0.0, 35.0, 80.0] {
        for heel in [-60.0, -10.0, 0.0, 40.0, 170.0, 180.0] {
            for sinkage in [-50.0, 0.3, 900.0] {
                let start = Attitude { sinkage: m(sinkage), trim: deg(trim), heel: deg(heel) };
                let outcome = equilibrium_from(&hull, &load, start).unwrap();
                let found = outcome.at_rest().unwrap_or_else(|| panic!("{start:?}: {outcome:?}"));
                assert!(found.residual.force.abs() < 1e-9, "{start:?}: {outcome:?}");
                assert!(found.residual.trim_lever.get::<meter>().abs() < 1e-8);
                assert!(found.residual.heel_lever.get::<meter>().abs() < 1e-8);
                assert!(found.is_stable());
                let heel = found.attitude().heel.get::<degree>();
                if heel.abs() < 90.0 {
                    let (one, other) = (found.plane.normal(), rest.plane.normal());
                    near((one.into_inner() - other.into_inner()).norm(), 0.0, 1e-8);
                } else {
                    assert!(!matches!(outcome, Outcome::Stable(_)));
                }
            }
        }
    }
}

/// Weight and buoyancy do not know where she was let go: a tenth of a light-year up or down is as good as at the dock.
#[test]
fn however_high_or_deep_she_starts_she_comes_to_the_same_rest() {
    let hull = Hull::new(runabout(6));
    let load = load(1100.0, [2.0, 0.05, 0.55], 1025.0);
    let rest = *equilibrium(&hull, &load).unwrap().at_rest().unwrap();
    for sinkage in [-1e15, -700.0, 700.0, 1e15] {
        let start = Attitude { sinkage: m(sinkage), trim: deg(2.0), heel: deg(-3.0) };
        let outcome = equilibrium_from(&hull, &load, start).unwrap();
        let found = outcome.at_rest().unwrap_or_else(|| panic!("{sinkage}: {outcome:?}"));
        let (one, other) = (found.attitude(), rest.attitude());
        near(one.sinkage.get::<meter>(), other.sinkage.get::<meter>(), 1e-9);
        near(one.trim.get::<radian>(), other.trim.get::<radian>(), 1e-9);
        near(one.heel.get::<radian>(), other.heel.get::<radian>(), 1e-9);
        let surface = plane_carrying(&hull, load.mass, load.water, start).unwrap();
        close(hull.cut(&surface).volume.get::<cubic_meter>(), 1100.0 / 1025.0, 1e-12);
    }
}

#[test]
fn a_boat_heavier_than_her_whole_volume_sinks() {
    let hull = box_hull(2.0, 1.0, 1.0);
    let outcome = equilibrium(&hull, &load(2000.0, [1.0, 0.0, 0.5], 1000.0)).unwrap();
    let Outcome::Sinks { largest, .. } = outcome else {
        panic!("{outcome:?}");
    };
    close(largest.get::<kilogram>(), 2000.0, ROUNDING);
    let outcome = equilibrium(&hull, &load(1999.0, [1.0, 0.0, 0.5], 1000.0)).unwrap();
    assert!(outcome.at_rest().is_some(), "{outcome:?}");
}
