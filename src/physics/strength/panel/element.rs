//! MITC7: quadratic triangles with a bubble on the rotations and the shear strain tied on the sides.
//!
//! K.-J. Bathe, F. Brezzi, M. Fortin, The MITC7 and MITC9 plate bending elements, Computers & Structures 32 (1989), 797–814 (from
//! memory; the patch tests and the series check it). Deflection is quadratic, rotations quadratic with a cubic bubble; the
//! shear strain is their projection on Nédélec's edge space of second order, tied at two Gauss points on each side and in
//! the mean over the triangle. It does not lock however thin the plate, and converges at third order or better.
//!
//! Node unknowns: `w`, `βy`, `βz`, the plate moving in its plane by `x βy`, `x βz` at height `x` above the middle surface.
//! Curvatures are the derivatives of β, shear strains `γ = grad w + β`. Nodes 0 to 2 are corners, 3 to 5 the middles of
//! the sides 0–1, 1–2, 2–0.

use super::mesh::double_area;
use super::reference::{NODES, PointTable, REFERENCE_TRIANGLE, ROTATIONS, SIDES};
use super::stiffness::PlateStiffness;
use super::vector::{Point, sub};

/// Unknowns of a triangle: `w, βy, βz` at each node.
pub(super) const DOFS: usize = 3 * NODES;
/// With the two of the bubble.
const ALL: usize = DOFS + 2;
pub(super) type Row = [f64; DOFS];
pub(super) type Square = [[f64; DOFS]; DOFS];
/// The bubble's unknowns from the nodes'.
pub(super) type Bubble = [Row; 2];
type Long = [f64; ALL];

/// A triangle's geometry.
pub(super) struct Element<'a> {
    /// Area, m².
    pub area: f64,
    /// Sides 0–1 and 0–2: columns of the map from the reference triangle, m.
    map: [Point; 2],
    /// One over the triangle's double area, 1/m².
    scale: f64,
    stiffness: &'a PlateStiffness,
}

impl<'a> Element<'a> {
    /// From anticlockwise corners (m).
    pub(super) fn new(corners: [Point; 3], stiffness: &'a PlateStiffness) -> Self {
        let map = [sub(corners[1], corners[0]), sub(corners[2], corners[0])];
        let double = double_area(corners);
        Self { area: 0.5 * double, map, scale: 1.0 / double, stiffness }
    }

    /// A covariant vector in the panel's axes.
    fn push(&self, [a, b]: Point) -> Point {
        let [p, q] = self.map;
        [(a * q[1] - b * p[1]) * self.scale, (b * p[0] - a * q[0]) * self.scale]
    }

    /// Rows that give κy, κz, κyz (1/m) and γy, γz.
    fn strains(&self, table: &PointTable) -> [Long; 5] {
        let mut rows = [[0.0; ALL]; 5];
        for a in 0..ROTATIONS {
            // The bubble has no deflection of its own.
            let (w, y, z) = if a < NODES { (Some(3 * a), 3 * a + 1, 3 * a + 2) } else { (None, DOFS, DOFS + 1) };
            let slope = self.push(table.slopes[a]);
            rows[0][y] = slope[0];
            rows[1][z] = slope[1];
            rows[2][y] = slope[1];
            rows[2][z] = slope[0];
            if let Some(w) = w {
                (rows[3][w], rows[4][w]) = (slope[0], slope[1]);
            }
            for (k, dof) in [y, z].into_iter().enumerate() {
                let covariant =
                    [0, 1].map(|c| table.tied[c][a][0] * self.map[0][k] + table.tied[c][a][1] * self.map[1][k]);
                let shear = self.push(covariant);
                (rows[3][dof], rows[4][dof]) = (shear[0], shear[1]);
            }
        }
        rows
    }

    /// The stiffness matrix over the nodes' unknowns (N/m, N, N·m), and the bubble that goes with them.
    pub(super) fn stiffness_matrix(&self) -> (Square, Bubble) {
        let d = self.stiffness;
        let reference = &*REFERENCE_TRIANGLE;
        let mut k = [[0.0; ALL]; ALL];
        // Slopes along y and z as sums over the reference triangle's own: ∂ = push[c] ∂c.
        let push = [self.push([1.0, 0.0]), self.push([0.0, 1.0])];
        let pairs = [0, 1].map(|c| {
            [0, 1].map(|e| {
                let [[y, z], [v, w]] = [push[c], push[e]];
                let scale = self.area;
                [
                    scale * (d.d11 * y * v + d.d66 * z * w),
                    scale * (d.d12 * y * w + d.d66 * z * v),
                    scale * (d.d12 * z * v + d.d66 * y * w),
                    scale * (d.d22 * z * w + d.d66 * y * v),
                ]
            })
        });
        // Covariant shear against covariant shear.
        let along = |c: usize, e: usize| self.area * (d.s1 * push[c][0] * push[e][0] + d.s2 * push[c][1] * push[e][1]);
        let tie = [along(0, 0), along(1, 1), along(0, 1)];
        let sheared = |a: usize, b: usize| {
            let [p, q, r] = reference.shear[a][b];
            tie[0] * p + tie[1] * q + tie[2] * r
        };
        let covariant = |b: usize| [NODES + 2 * b, NODES + 2 * b + 1];
        for a in 0..ROTATIONS {
            let row = 3 * a;
            let rotation = if a < NODES { row + 1 } else { DOFS };
            let [p, q] = covariant(a);
            for b in 0..=a {
                let column = if b < NODES { 3 * b + 1 } else { DOFS };
                let mut block = [0.0; 4];
                for (pairs, means) in pairs.iter().zip(&reference.bending[a][b]) {
                    for (pair, mean) in pairs.iter().zip(means) {
                        (0..4).for_each(|i| block[i] += mean * pair[i]);
                    }
                }
                // The rotations' covariant components are `map` times those in the panel's axes, on both sides.
                let [r, s] = covariant(b);
                let inner = [[sheared(p, r), sheared(p, s)], [sheared(q, r), sheared(q, s)]];
                for i in 0..2 {
                    let half = [0, 1].map(|c| self.map[0][i] * inner[0][c] + self.map[1][i] * inner[1][c]);
                    for j in 0..2 {
                        k[rotation + i][column + j] =
                            block[2 * i + j] + half[0] * self.map[0][j] + half[1] * self.map[1][j];
                    }
                }
            }
            for b in 0..NODES {
                let [u, v] = [sheared(b, p), sheared(b, q)];
                for i in 0..2 {
                    let value = self.map[0][i] * u + self.map[1][i] * v;
                    if 3 * b < rotation {
                        k[rotation + i][3 * b] = value;
                    } else {
                        k[3 * b][rotation + i] = value;
                    }
                }
                if a < NODES && b <= a {
                    k[row][3 * b] = sheared(a, b);
                }
            }
        }
        let (p, q, r) = (k[DOFS][DOFS], k[DOFS + 1][DOFS + 1], k[DOFS + 1][DOFS]);
        let determinant = p * q - r * r;
        let mut bubble = [[0.0; DOFS]; 2];
        for c in 0..DOFS {
            let (u, v) = (k[DOFS][c], k[DOFS + 1][c]);
            bubble[0][c] = -(q * u - r * v) / determinant;
            bubble[1][c] = -(p * v - r * u) / determinant;
        }
        let mut square = [[0.0; DOFS]; DOFS];
        for c in 0..DOFS {
            for row in 0..=c {
                let value = k[c][row] + k[DOFS][c] * bubble[0][row] + k[DOFS + 1][c] * bubble[1][row];
                square[row][c] = value;
                square[c][row] = value;
            }
        }
        (square, bubble)
    }

    /// `My, Mz, Myz` (N·m per m) at the three sampling points. By the rotations' slopes alone: no table of rows is read.
    pub(super) fn moments(&self, bubble: &Bubble, u: &Row) -> [[f64; 3]; 3] {
        let d = self.stiffness;
        let rotations: [Point; ROTATIONS] = std::array::from_fn(|a| {
            if a < NODES { [u[3 * a + 1], u[3 * a + 2]] } else { bubble.each_ref().map(|row| product(row, u)) }
        });
        REFERENCE_TRIANGLE.samples.each_ref().map(|table| {
            let mut slopes = [[0.0; 2]; 2];
            for (slope, rotation) in table.slopes.iter().zip(&rotations) {
                for k in 0..2 {
                    (0..2).for_each(|c| slopes[k][c] += slope[c] * rotation[k]);
                }
            }
            let [y, z] = slopes.map(|covariant| self.push(covariant));
            let (along, up) = (y[0], z[1]);
            [d.d11 * along + d.d12 * up, d.d12 * along + d.d22 * up, d.d66 * (y[1] + z[0])]
        })
    }

    /// Rows that give `My, Mz, Myz` (N·m per m) and `Qy, Qz` (N/m) at the three sampling points from the nodes' unknowns.
    pub(super) fn sampler(&self, bubble: &Bubble) -> Sampler {
        let d = self.stiffness;
        std::array::from_fn(|s| {
            let [k1, k2, k3, g1, g2] = self.strains(&REFERENCE_TRIANGLE.samples[s]).map(|row| {
                let mut nodes = [0.0; DOFS];
                for (c, cell) in nodes.iter_mut().enumerate() {
                    *cell = row[c] + row[DOFS] * bubble[0][c] + row[DOFS + 1] * bubble[1][c];
                }
                nodes
            });
            let mix = |p: f64, q: f64| std::array::from_fn(|c| p * k1[c] + q * k2[c]);
            [mix(d.d11, d.d12), mix(d.d12, d.d22), k3.map(|k| d.d66 * k), g1.map(|g| d.s1 * g), g2.map(|g| d.s2 * g)]
        })
    }
}

/// See [`Element::sampler`].
pub(super) type Sampler = [[Row; 5]; 3];

/// `My, Mz, Myz` (N·m per m) and `Qy, Qz` (N/m) at the six nodes: linear fields through the sampling points.
pub(super) fn section_forces(sampler: &Sampler, u: &Row) -> [[f64; 5]; NODES] {
    let sampled = sampler.each_ref().map(|rows| rows.each_ref().map(|row| product(row, u)));
    let mut out = [[0.0; 5]; NODES];
    for c in 0..5 {
        let sum: f64 = sampled.iter().map(|v| v[c]).sum();
        for i in 0..3 {
            // A linear field is 2 v_i − mean of all at corner i.
            out[i][c] = 2.0 * sampled[i][c] - sum / 3.0;
        }
        for (i, [p, q]) in SIDES.into_iter().enumerate() {
            out[3 + i][c] = 0.5 * (out[p][c] + out[q][c]);
        }
    }
    out
}

fn product<const N: usize>(row: &[f64; N], u: &[f64; N]) -> f64 {
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

    fn six([a, b, c]: [Point; 3]) -> [Point; NODES] {
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
}
