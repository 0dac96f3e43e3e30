//! L. F. Moody, Friction factors for pipe flow, 1944, and C. F. Colebrook, 1939: points of the diagram (values from memory);
//! F. M. White, Fluid Mechanics, example 6.7 (value from memory).

use proptest::prelude::*;
use sternknee::physics::rigging::pipe::{LAMINAR_TO, TURBULENT_FROM, friction};

/// Reynolds number, relative roughness, factor.
const POINTS: &[(f64, f64, f64)] = &[
    (1e4, 0.0, 0.0309),
    (1e5, 0.0, 0.0180),
    (1e6, 0.0, 0.01165),
    (1e5, 0.001, 0.0222),
    (1e6, 0.001, 0.0199),
    (1e5, 0.01, 0.0385),
    (1e6, 0.05, 0.0716),
    (1000.0, 0.0, 0.064),
];

#[test]
fn points_of_the_diagram() {
    let mut worst = 0.0_f64;
    for (reynolds, roughness, factor) in POINTS {
        let found = friction(*reynolds, *roughness);
        worst = worst.max((found.factor / factor - 1.0).abs());
        assert!(found.residual.abs() < 1e-12);
    }
    println!("Moody's diagram: largest relative error {worst:.1e}");
    assert!(worst < 4e-3, "{worst}");
}

/// Oil of 900 kg/m³ and 1e-5 m²/s, 0.2 m³/s through 500 m of 200 mm cast iron, ε 0.26 mm: f = 0.0225 as read off
/// the diagram, head lost 117 m.
#[test]
fn white_example_6_7_loses_117_m() {
    let (d, q) = (0.2_f64, 0.2_f64);
    let v = q / (std::f64::consts::FRAC_PI_4 * d * d);
    let f = friction(v * d / 1e-5, 0.26e-3 / d).factor;
    assert!((f / 0.0225 - 1.0).abs() < 1.2e-2, "{f}");
    let head = f * 500.0 / d * v * v / (2.0 * 9.81);
    assert!((head / 117.0 - 1.0).abs() < 1.2e-2, "{head}");
}

/// Laminar flow is that of Hagen and Poiseuille: `Δp = 128 μ L Q / π D⁴`.
#[test]
fn laminar_flow_is_poiseuilles() {
    let (d, q, rho, mu) = (8e-3_f64, 2e-6_f64, 740.0, 0.55e-3);
    let v = q / (std::f64::consts::FRAC_PI_4 * d * d);
    let lost = friction(rho * v * d / mu, 1e-3).factor / d * rho * v * v / 2.0;
    let exact = 128.0 * mu * q / (std::f64::consts::PI * d.powi(4));
    assert!((lost / exact - 1.0).abs() < 1e-12);
}

proptest! {
    #[test]
    fn more_flow_never_loses_less_and_nothing_jumps(reynolds in 1.0f64..1e6, roughness in 0.0f64..0.05) {
        let loss = |re: f64| friction(re, roughness).factor * re * re;
        let (here, further) = (loss(reynolds), loss(reynolds * 1.001));
        prop_assert!(further > here);
        prop_assert!(further / here - 1.0 < 0.01, "{} at {reynolds}", further / here);
    }

    #[test]
    fn between_laminar_and_turbulent_the_factor_runs_from_one_to_the_other(along in 0.0f64..1.0, roughness in 0.0f64..0.05) {
        let re = LAMINAR_TO + along * (TURBULENT_FROM - LAMINAR_TO);
        let (low, high) = (friction(LAMINAR_TO, roughness).factor, friction(TURBULENT_FROM, roughness).factor);
        let found = friction(re, roughness).factor;
        prop_assert!(found >= low.min(high) - 1e-12 && found <= low.max(high) + 1e-12);
    }
}

#[test]
fn nothing_that_flows_is_no_friction() {
    for nonsense in [0.0, -1.0, f64::NAN] {
        assert_eq!(friction(nonsense, 0.0).factor, 0.0);
    }
}
