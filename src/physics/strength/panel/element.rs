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
pub const DOFS: usize = 3 * NODES;
/// With the two of the bubble.
const ALL: usize = DOFS + 2;
/// One number for each unknown of a triangle.
pub type Row = [f64; DOFS];
/// A row for each unknown.
pub type Square = [[f64; DOFS]; DOFS];
/// The bubble's unknowns from the nodes'.
pub type Bubble = [Row; 2];
type Long = [f64; ALL];

/// A triangle's geometry.
pub struct Element<'a> {
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
    pub fn new(corners: [Point; 3], stiffness: &'a PlateStiffness) -> Self {
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
    pub fn stiffness_matrix(&self) -> (Square, Bubble) {
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
    pub fn moments(&self, bubble: &Bubble, u: &Row) -> [[f64; 3]; 3] {
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
    pub fn sampler(&self, bubble: &Bubble) -> Sampler {
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
pub type Sampler = [[Row; 5]; 3];

/// `My, Mz, Myz` (N·m per m) and `Qy, Qz` (N/m) at the six nodes: linear fields through the sampling points.
pub fn section_forces(sampler: &Sampler, u: &Row) -> [[f64; 5]; NODES] {
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
