//! Planing surfaces in older reports, from memory, against Savitsky's prism: what others measured, fitted otherwise.

use sternknee::physics::running::prism;

/// B. Korvin-Kroukovsky, D. Savitsky and W. Lehman, "Wetted area and center of pressure of planing surfaces", Experimental Towing
/// Tank report 360, 1949, value from memory: CL0 = τ^1.1 (0.0120 √λ + 0.0095 λ² / Cv²). Savitsky 1964 has 0.0055 λ^2.5 instead.
fn of_1949(trim: f64, wetted: f64, speed: f64) -> f64 {
    trim.powf(1.1) * (0.0120 * wetted.sqrt() + 0.0095 * wetted * wetted / (speed * speed))
}

#[test]
fn a_flat_plate_lifts_as_the_report_of_1949_has_it() {
    let mut worst = 0.0_f64;
    for trim in [2.0, 4.0, 8.0, 12.0] {
        for wetted in [1.0, 1.5, 2.0, 3.0, 4.0] {
            for speed in [2.0, 3.0, 5.0, 8.0] {
                let (new, old) = (prism::flat_lift(trim, wetted, speed), of_1949(trim, wetted, speed));
                worst = worst.max((new / old - 1.0).abs());
            }
        }
    }
    println!("largest difference {:.1} %", 100.0 * worst);
    assert!(worst < 0.11, "{worst}");
    // Both terms agree where the fits cross, at three beams of wetted length.
    let crossing = (0.0095_f64 / 0.0055).powi(2);
    assert!((prism::flat_lift(4.0, crossing, 2.0) / of_1949(4.0, crossing, 2.0) - 1.0).abs() < 1e-12);
}

/// C. Shuford, "A theoretical and experimental study of planing surfaces including effects of cross section and plan form", NACA
/// report 1355, 1958, value from memory: lift over the wetted area when gravity counts for little, of aspect ratio A = 1/λ,
/// (π A τ / 2 (1 + A)) cos² τ (1 − sin β) + 4/3 sin² τ cos³ τ cos β, its crossflow term for hard chines.
fn of_1958(trim_deg: f64, wetted: f64, deadrise_deg: f64) -> f64 {
    let (trim, deadrise, aspect) = (trim_deg.to_radians(), deadrise_deg.to_radians(), 1.0 / wetted);
    let turned = std::f64::consts::FRAC_PI_2 * aspect * trim / (1.0 + aspect);
    let linear = turned * trim.cos().powi(2) * (1.0 - deadrise.sin());
    let crossflow = 4.0 / 3.0 * trim.sin().powi(2) * trim.cos().powi(3) * deadrise.cos();
    (linear + crossflow) * wetted
}

#[test]
fn a_fast_prism_lifts_within_a_quarter_as_shuford_has_it() {
    let mut worst = 0.0_f64;
    for trim in [4.0, 6.0, 8.0, 12.0] {
        for wetted in [1.0, 2.0, 3.0] {
            for deadrise in [0.0, 10.0, 20.0] {
                // So fast that what floats counts for nothing.
                let ours = prism::lift(prism::flat_lift(trim, wetted, 1e3), deadrise);
                let ratio = ours / of_1958(trim, wetted, deadrise);
                println!("{trim} deg, {wetted} beams, {deadrise} deg: {ratio:.3}");
                worst = worst.max((ratio - 1.0).abs());
            }
        }
    }
    assert!(worst < 0.24, "{worst}");
}

/// The pressure stands three quarters forward where speed is all, and a third where weight is, as under a floating wedge.
#[test]
fn the_centre_of_pressure_runs_from_a_third_to_three_quarters() {
    assert!((prism::centre_of_pressure(1e3, 1.0) - 0.75).abs() < 1e-6);
    assert!((prism::centre_of_pressure(1e-6, 4.0) - 1.0 / 3.0).abs() < 0.002);
}
