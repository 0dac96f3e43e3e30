//! DKMT: the discrete Kirchhoff–Mindlin triangle, three nodes with deflection and two rotations each.
//!
//! I. Katili, A new discrete Kirchhoff–Mindlin element based on Mindlin–Reissner plate theory and assumed shear strain
//! fields, Part I, Int. J. Numer. Meth. Engng 36 (1993), 1859–1883. The rotation along each side has a
//! quadratic bubble Δβ, set by treating the side as a Timoshenko beam; as the plate gets thin the element becomes
//! the discrete Kirchhoff triangle, so it cannot lock. The shear strain is spread from the sides
//! by Whitney's edge functions, which reproduce a constant shear exactly (from memory; the patch tests check it).
//!
//! Node unknowns: `w`, `βy`, `βz`, the plate moving in its plane by `x βy`, `x βz` at height `x` above the middle surface.
//! Curvatures are the derivatives of β, shear strains `γ = grad w + β`.

use super::mesh::double_area;
use super::model::{PlateStiffness, Point};
use super::vector::sub;

/// Unknowns of a triangle: `w, βy, βz` at each corner.
pub(super) const DOFS: usize = 9;
pub(super) type Row = [f64; DOFS];
pub(super) type Square = [[f64; DOFS]; DOFS];

/// A triangle's geometry and its three side bubbles.
pub(super) struct Element {
    /// Area, m².
    pub area: f64,
    /// Gradients of the three linear shape functions, 1/m.
    gradient: [Point; 3],
    sides: [SideBeam; 3],
    stiffness: PlateStiffness,
}

/// Side `i`–`j` seen as a beam: direction, length, the bubble as a row over the unknowns, and the side's shear strain.
struct SideBeam {
    i: usize,
    j: usize,
    direction: Point,
    length: f64,
    bubble: Row,
    /// γ along the side over the bubble: `−(2/3) φ`.
    shear_of_bubble: f64,
}

/// Bending and shear stiffness along a direction (unit vector): N·m, N/m.
pub(super) fn along(d: &PlateStiffness, [c, s]: Point) -> (f64, f64) {
    let bending = d.d11 * c.powi(4) + 2.0 * (d.d12 + 2.0 * d.d66) * c * c * s * s + d.d22 * s.powi(4);
    (bending, d.s1 * c * c + d.s2 * s * s)
}

impl Element {
    /// From anticlockwise corners (m).
    pub fn new(corners: [Point; 3], stiffness: &PlateStiffness) -> Self {
        let double = double_area(corners);
        let gradient = [0, 1, 2].map(|i| {
            let opposite = sub(corners[(i + 2) % 3], corners[(i + 1) % 3]);
            [-opposite[1] / double, opposite[0] / double]
        });
        let sides = [(0, 1), (1, 2), (2, 0)].map(|(i, j)| {
            let edge = sub(corners[j], corners[i]);
            let length = edge[0].hypot(edge[1]);
            let direction = [edge[0] / length, edge[1] / length];
            let (bending, shear) = along(stiffness, direction);
            let phi = 12.0 * bending / (shear * length * length);
            let scale = -1.5 / (1.0 + phi);
            let mut bubble = [0.0; DOFS];
            bubble[3 * i] = -scale / length;
            bubble[3 * j] = scale / length;
            for n in [i, j] {
                bubble[3 * n + 1] = 0.5 * scale * direction[0];
                bubble[3 * n + 2] = 0.5 * scale * direction[1];
            }
            SideBeam { i, j, direction, length, bubble, shear_of_bubble: -2.0 / 3.0 * phi }
        });
        Self { area: 0.5 * double, gradient, sides, stiffness: *stiffness }
    }

    /// Rows that give κy, κz, κyz (1/m) at barycentric coordinates `n`.
    pub fn curvature_rows(&self, n: [f64; 3]) -> [Row; 3] {
        let mut rows = [[0.0; DOFS]; 3];
        for (node, g) in self.gradient.iter().enumerate() {
            rows[0][3 * node + 1] = g[0];
            rows[1][3 * node + 2] = g[1];
            rows[2][3 * node + 1] = g[1];
            rows[2][3 * node + 2] = g[0];
        }
        for side in &self.sides {
            let [gi, gj] = [self.gradient[side.i], self.gradient[side.j]];
            let slope = [0, 1].map(|k| 4.0 * (n[side.i] * gj[k] + n[side.j] * gi[k]));
            let [c, s] = side.direction;
            let factors = [slope[0] * c, slope[1] * s, slope[1] * c + slope[0] * s];
            for node in [side.i, side.j] {
                for dof in 3 * node..3 * node + 3 {
                    for (row, factor) in rows.iter_mut().zip(factors) {
                        row[dof] += factor * side.bubble[dof];
                    }
                }
            }
        }
        rows
    }

    /// Rows that give γy, γz at barycentric coordinates `n`.
    pub fn shear_rows(&self, n: [f64; 3]) -> [Row; 2] {
        let mut rows = [[0.0; DOFS]; 2];
        for side in &self.sides {
            let [gi, gj] = [self.gradient[side.i], self.gradient[side.j]];
            for (k, row) in rows.iter_mut().enumerate() {
                let whitney = side.length * (n[side.i] * gj[k] - n[side.j] * gi[k]);
                for node in [side.i, side.j] {
                    for dof in 3 * node..3 * node + 3 {
                        row[dof] += whitney * side.shear_of_bubble * side.bubble[dof];
                    }
                }
            }
        }
        rows
    }

    /// The stiffness matrix (N/m, N, N·m by unknown).
    pub fn stiffness_matrix(&self) -> Square {
        let d = &self.stiffness;
        let mut k = [[0.0; DOFS]; DOFS];
        // Both fields are linear, so the mid-side points integrate their squares exactly.
        for n in [[0.5, 0.5, 0.0], [0.0, 0.5, 0.5], [0.5, 0.0, 0.5]] {
            let weight = self.area / 3.0;
            let [b1, b2, b3] = self.curvature_rows(n);
            let [g1, g2] = self.shear_rows(n);
            for c in 0..DOFS {
                let m1 = weight * (d.d11 * b1[c] + d.d12 * b2[c]);
                let m2 = weight * (d.d12 * b1[c] + d.d22 * b2[c]);
                let m3 = weight * d.d66 * b3[c];
                let (q1, q2) = (weight * d.s1 * g1[c], weight * d.s2 * g2[c]);
                for r in 0..=c {
                    k[r][c] += b1[r] * m1 + b2[r] * m2 + b3[r] * m3 + g1[r] * q1 + g2[r] * q2;
                }
            }
        }
        for c in 0..DOFS {
            for r in 0..c {
                k[c][r] = k[r][c];
            }
        }
        k
    }

    /// Bending moments My, Mz, Myz (N·m per m) at `n` from the corner unknowns.
    pub fn moments(&self, n: [f64; 3], u: &Row) -> [f64; 3] {
        let d = &self.stiffness;
        let [k1, k2, k3] = self.curvature_rows(n).map(|row| product(&row, u));
        [d.d11 * k1 + d.d12 * k2, d.d12 * k1 + d.d22 * k2, d.d66 * k3]
    }

    /// Transverse shear forces Qy, Qz (N/m) at `n` from the corner unknowns.
    pub fn shears(&self, n: [f64; 3], u: &Row) -> [f64; 2] {
        let [g1, g2] = self.shear_rows(n).map(|row| product(&row, u));
        [self.stiffness.s1 * g1, self.stiffness.s2 * g2]
    }
}

fn product(row: &Row, u: &Row) -> f64 {
    row.iter().zip(u).map(|(a, b)| a * b).sum()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Four triangles about an inner node, all oblique, in an orthotropic plate: (corners, centre, stiffness).
    fn patch() -> ([Point; 4], Point, PlateStiffness) {
        let outer = [[0.0, 0.0], [1.1, -0.1], [0.9, 0.8], [-0.15, 0.7]];
        let d = PlateStiffness { d11: 900.0, d12: 120.0, d22: 300.0, d66: 150.0, s1: 4e4, s2: 9e3 };
        (outer, [0.4, 0.25], d)
    }

    #[test]
    fn constant_curvature_passes_the_patch_test_for_any_thickness() {
        let (outer, centre, d) = patch();
        // w = ½ a y² + b y z + ½ c z² with β = −grad w: no shear, moments the same everywhere.
        let (a, b, c) = (0.3, -0.2, 0.5);
        let field = |[y, z]: Point| {
            [0.5 * a * y * y + b * y * z + 0.5 * c * z * z, -(a * y + b * z), -(b * y + c * z)]
        };
        for soft in [1e-6, 1.0, 1e6] {
            let d = PlateStiffness { s1: soft * d.s1, s2: soft * d.s2, ..d };
            let mut residual = [0.0; 3];
            for k in 0..4 {
                let corners = [outer[k], outer[(k + 1) % 4], centre];
                let element = Element::new(corners, &d);
                let mut u = [0.0; DOFS];
                for (n, p) in corners.iter().enumerate() {
                    u[3 * n..3 * n + 3].copy_from_slice(&field(*p));
                }
                let exact = [-(d.d11 * a + d.d12 * c), -(d.d12 * a + d.d22 * c), -2.0 * d.d66 * b];
                for (found, exact) in element.moments([0.2, 0.3, 0.5], &u).iter().zip(exact) {
                    assert!((found - exact).abs() < 1e-9 * d.d11, "{found} {exact}");
                }
                for shear in element.shears([0.2, 0.3, 0.5], &u) {
                    assert!(shear.abs() < 1e-6, "{shear}");
                }
                let matrix = element.stiffness_matrix();
                for i in 0..3 {
                    residual[i] += product(&matrix[6 + i], &u);
                }
            }
            for r in residual {
                assert!(r.abs() < 1e-9 * d.d11, "{residual:?}");
            }
        }
    }

    #[test]
    fn rigid_motions_store_no_energy() {
        let (outer, centre, d) = patch();
        let corners = [outer[0], outer[1], centre];
        let matrix = Element::new(corners, &d).stiffness_matrix();
        for [shift, by, bz] in [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]] {
            let u: Vec<f64> = corners.iter().flat_map(|p| [shift - by * p[0] - bz * p[1], by, bz]).collect();
            for row in matrix {
                let force: f64 = row.iter().zip(&u).map(|(a, b)| a * b).sum();
                assert!(force.abs() < 1e-8, "{force}");
            }
        }
    }
}
