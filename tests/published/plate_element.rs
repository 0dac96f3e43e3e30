//! The plate's element by itself passes the patch tests that its authors ask of it: K.-J. Bathe, F. Brezzi, M. Fortin, The MITC7
//! and MITC9 plate bending elements, Computers & Structures 32 (1989). And a load's share of it is integrated exactly.

use sternknee::physics::strength::panel::clip::points;
use sternknee::physics::strength::panel::element::{DOFS, Element, Row, section_forces};
use sternknee::physics::strength::panel::{PlateStiffness, Point};

fn product(row: &Row, u: &Row) -> f64 {
    row.iter().zip(u).map(|(a, b)| a * b).sum()
}

/// Four triangles about an inner node, all oblique, in an orthotropic plate: (corners, centre, stiffness).
fn patch() -> ([Point; 4], Point, PlateStiffness) {
    let outer = [[0.0, 0.0], [1.1, -0.1], [0.9, 0.8], [-0.15, 0.7]];
    let d = PlateStiffness { d11: 900.0, d12: 120.0, d22: 300.0, d66: 150.0, s1: 4e4, s2: 9e3 };
    (outer, [0.4, 0.25], d)
}

fn six([a, b, c]: [Point; 3]) -> [Point; 6] {
    let middle = |p: Point, q: Point| [0.5 * (p[0] + q[0]), 0.5 * (p[1] + q[1])];
    [a, b, c, middle(a, b), middle(b, c), middle(c, a)]
}

fn values(corners: [Point; 3], field: impl Fn(Point) -> [f64; 3]) -> Row {
    let mut u = [0.0; DOFS];
    for (n, p) in six(corners).into_iter().enumerate() {
        u[3 * n..3 * n + 3].copy_from_slice(&field(p));
    }
    u
}

#[test]
fn constant_curvature_passes_the_patch_test_for_any_thickness() {
    let (outer, centre, d) = patch();
    // w = ½ a y² + b y z + ½ c z² with β = −grad w: no shear, moments the same everywhere.
    let (a, b, c) = (0.3, -0.2, 0.5);
    let field = |[y, z]: Point| [0.5 * a * y * y + b * y * z + 0.5 * c * z * z, -(a * y + b * z), -(b * y + c * z)];
    for soft in [1e-6, 1.0, 1e6] {
        let d = PlateStiffness { s1: soft * d.s1, s2: soft * d.s2, ..d };
        let mut residual = [0.0; 3];
        for k in 0..4 {
            let corners = [outer[k], outer[(k + 1) % 4], centre];
            let element = Element::new(corners, &d);
            let u = values(corners, field);
            let (matrix, bubble) = element.stiffness_matrix();
            let exact = [-(d.d11 * a + d.d12 * c), -(d.d12 * a + d.d22 * c), -2.0 * d.d66 * b, 0.0, 0.0];
            for found in element.moments(&bubble, &u).iter().flat_map(|sample| sample.iter().zip(exact)) {
                assert!((found.0 - found.1).abs() < 1e-9 * d.d11, "{found:?}");
            }
            for found in section_forces(&element.sampler(&bubble), &u) {
                for (found, exact) in found.iter().zip(exact) {
                    assert!((found - exact).abs() < 1e-9 * (d.d11 + d.s1), "{found} {exact}");
                }
            }
            for i in 0..3 {
                residual[i] += product(&matrix[6 + i], &u);
            }
        }
        for r in residual {
            assert!(r.abs() < 1e-9 * (d.d11 + d.s1), "{residual:?}");
        }
    }
}

#[test]
fn constant_shear_is_reproduced() {
    let (outer, centre, d) = patch();
    let corners = [outer[0], outer[1], centre];
    let element = Element::new(corners, &d);
    // w = 0.2 y − 0.7 z, β = (0.1, 0.3): shear only.
    let u = values(corners, |[y, z]| [0.2 * y - 0.7 * z, 0.1, 0.3]);
    // The bubble at rest: left alone it would answer, for shear without bending is no equilibrium.
    for f in section_forces(&element.sampler(&[[0.0; DOFS]; 2]), &u) {
        assert!((f[3] - 0.3 * d.s1).abs() < 1e-8 * d.s1 && (f[4] + 0.4 * d.s2).abs() < 1e-8 * d.s2, "{f:?}");
        assert!(f[..3].iter().all(|m| m.abs() < 1e-8 * d.d11), "{f:?}");
    }
}

#[test]
fn rigid_motions_store_no_energy() {
    let (outer, centre, d) = patch();
    let corners = [outer[0], outer[1], centre];
    let (matrix, _) = Element::new(corners, &d).stiffness_matrix();
    for [shift, by, bz] in [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]] {
        let u = values(corners, |p| [shift - by * p[0] - bz * p[1], by, bz]);
        for row in matrix {
            assert!(product(&row, &u).abs() < 1e-8 * d.s1, "{}", product(&row, &u));
        }
    }
}

#[test]
fn a_square_over_two_triangles_gives_its_area_and_its_second_moment() {
    let [a, b, c, d] = [[0.0, 0.0], [2.0, 0.1], [2.1, 1.9], [-0.1, 2.0]];
    let square = [[0.4, 0.5], [1.6, 0.5], [1.6, 1.4], [0.4, 1.4]];
    let (mut area, mut moment) = (0.0, 0.0);
    for t in [[a, b, c], [a, c, d]] {
        for (n, weight) in points(&square, t) {
            let y: f64 = (0..3).map(|i| n[i] * t[i][0]).sum();
            area += weight;
            moment += weight * y.powi(4);
        }
    }
    assert!((area - 1.08).abs() < 1e-12, "{area}");
    let exact = 0.9 * (1.6_f64.powi(5) - 0.4_f64.powi(5)) / 5.0;
    assert!((moment - exact).abs() < 1e-12, "{moment} {exact}");
}
