//! Plywood from its plies: parallel axes over every ply, classical lamination, and the nominal figures of a panel of seven
//! equal plies (derived; the wood's values from memory).

use sternknee::physics::strength::panel::{ACROSS_OF_ALONG, Layup, Material, Ply, Plywood, Strength};
use uom::si::f64::{Length, Pressure};
use uom::si::{length::millimeter, pressure::megapascal};

const MODULUS_MPA: f64 = 13_400.0;
const RUPTURE_MPA: f64 = 85.0;
const PLY_MM: f64 = 2.7;

fn mpa(value: f64) -> Pressure {
    Pressure::new::<megapascal>(value)
}

/// Veneer with its grain along y: strong along it, and stretched across it without end, as cracks there do not matter.
fn veneer() -> Material {
    let strength = Strength::MaxStress {
        along_y: mpa(RUPTURE_MPA),
        along_z: mpa(1e9),
        plane_shear: mpa(1e9),
        shear_y: mpa(1e9),
        shear_z: mpa(1e9),
    };
    Material {
        modulus_y: mpa(MODULUS_MPA),
        modulus_z: mpa(ACROSS_OF_ALONG * MODULUS_MPA),
        poisson: 0.0,
        shear_plane: mpa(700.0),
        shear_y: mpa(700.0),
        shear_z: mpa(60.0),
        strength,
    }
}

/// So many sheets of so many plies, face grain along y.
fn board(plies: u8, sheets: u8) -> Layup {
    let one = |i: u8| if i.is_multiple_of(2) { veneer() } else { veneer().turned() };
    let all = (0..sheets).flat_map(|_| (0..plies).map(one));
    let thickness = Length::new::<millimeter>(PLY_MM);
    Layup::new(all.map(|material| Ply { material, thickness }).collect()).unwrap()
}

fn near(found: f64, exact: f64) {
    assert!((found / exact - 1.0).abs() < 1e-12, "{found} against {exact}");
}

#[test]
fn stiffness_and_strength_are_those_of_the_plies_one_by_one() {
    for plies in [3, 5, 7, 9, 11] {
        for sheets in [1, 2, 3] {
            let layup = board(plies, sheets);
            let thickness = f64::from(plies) * f64::from(sheets) * PLY_MM * 1e-3;
            let (inertia, section) = (thickness.powi(3) / 12.0, thickness.powi(2) / 6.0);
            let stiffness = layup.stiffness().unwrap();
            let plywood = Plywood::new(plies, f64::from(sheets)).unwrap();
            let (along, across) = (plywood.along(), plywood.across());
            near(along.modulus, stiffness.d11 / inertia / (MODULUS_MPA * 1e6));
            near(across.modulus, stiffness.d22 / inertia / (MODULUS_MPA * 1e6));
            // The nominal stress at which the first ply is stretched to its strength.
            let nominal = |moment: [f64; 3]| 1.0 / layup.worst(moment, [0.0; 2]).unwrap().utilisation / section;
            near(along.strength, nominal([1.0, 0.0, 0.0]) / (RUPTURE_MPA * 1e6));
            near(across.strength, nominal([0.0, 1.0, 0.0]) / (RUPTURE_MPA * 1e6));
        }
    }
}

#[test]
fn seven_plies_have_the_nominal_figures() {
    let plywood = Plywood::new(7, 1.0).unwrap();
    let (along, across) = (plywood.along(), plywood.across());
    // 0.45 of the long way in modulus; about 27 MPa where the wood has 0.7 · 85 MPa.
    assert!((across.modulus / along.modulus - 0.45).abs() < 0.005);
    assert!((across.strength * 0.7 * RUPTURE_MPA - 27.0).abs() < 0.5);
}

#[test]
fn sheets_glued_up_bring_both_ways_together_without_jumps() {
    let mut last = Plywood::new(7, 1.0).unwrap();
    for tenth in 11..60 {
        let next = Plywood::new(7, f64::from(tenth) / 10.0).unwrap();
        assert!(next.along().modulus < last.along().modulus);
        assert!(next.across().modulus > last.across().modulus);
        assert!(next.along().modulus > next.across().modulus);
        assert!((next.across().strength / last.across().strength - 1.0).abs() < 0.05);
        last = next;
    }
    // A thin board is one sheet.
    assert_eq!(Plywood::new(7, 0.3), Plywood::new(7, 1.0));
    for plies in [0, 1, 2, 4, 8] {
        assert_eq!(Plywood::new(plies, 1.0), None);
    }
    assert_eq!(Plywood::new(7, f64::NAN), None);
}

#[test]
fn a_thicker_board_never_bears_less() {
    let bears = |sheets: f64| {
        let plywood = Plywood::new(7, sheets).unwrap();
        [plywood.along(), plywood.across()].map(|of| of.strength * sheets * sheets)
    };
    let mut last = bears(1.0);
    for hundredth in 101..400 {
        let next = bears(f64::from(hundredth) / 100.0);
        assert!(next[0] > last[0] && next[1] > last[1], "{hundredth}");
        last = next;
    }
}
