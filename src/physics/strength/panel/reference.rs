//! What all triangles share: shape functions, integration points, and the tying of the shear, on the reference triangle.

use std::sync::LazyLock;

use nalgebra::SMatrix;

use super::vector::{Point, sub};

/// Gauss's two points on the unit interval.
pub(super) const GAUSS: [f64; 2] = [0.211_324_865_405_187_1, 0.788_675_134_594_812_9];

/// Three corners, three middles of sides.
pub(super) const NODES: usize = 6;
/// Barycentric points and weights of the six-point rule of degree 4 (D. A. Dunavant, 1985).
pub(super) const RULE: [([f64; 3], f64); 6] = {
    const A: f64 = 0.445_948_490_915_965;
    const B: f64 = 0.091_576_213_509_771;
    const W: [f64; 2] = [0.223_381_589_678_011, 0.109_951_743_655_322];
    [
        ([1.0 - 2.0 * A, A, A], W[0]),
        ([A, 1.0 - 2.0 * A, A], W[0]),
        ([A, A, 1.0 - 2.0 * A], W[0]),
        ([1.0 - 2.0 * B, B, B], W[1]),
        ([B, 1.0 - 2.0 * B, B], W[1]),
        ([B, B, 1.0 - 2.0 * B], W[1]),
    ]
};
/// Where section forces are sampled: the three points of degree 2, at which quadratic elements are most accurate.
const SAMPLES: [[f64; 3]; 3] =
    [[2.0 / 3.0, 1.0 / 6.0, 1.0 / 6.0], [1.0 / 6.0, 2.0 / 3.0, 1.0 / 6.0], [1.0 / 6.0, 1.0 / 6.0, 2.0 / 3.0]];
/// Sides of the reference triangle.
pub(super) const SIDES: [[usize; 2]; 3] = [[0, 1], [1, 2], [2, 0]];
const REFERENCE: [Point; 3] = [[0.0, 0.0], [1.0, 0.0], [0.0, 1.0]];
const SLOPES: [Point; 3] = [[-1.0, -1.0], [1.0, 0.0], [0.0, 1.0]];

/// Quadratic shape functions.
pub(super) fn shape(n: [f64; 3]) -> [f64; NODES] {
    let [a, b, c] = n;
    [a * (2.0 * a - 1.0), b * (2.0 * b - 1.0), c * (2.0 * c - 1.0), 4.0 * a * b, 4.0 * b * c, 4.0 * c * a]
}

/// Everything of a point that is the same for all triangles, in reference coordinates.
pub(super) struct PointTable {
    /// Slopes of the shape functions, then of the bubble.
    pub slopes: [Point; ROTATIONS],
    /// Covariant shear from the covariant rotations of the nodes and the bubble: `[component][node][component]`.
    pub tied: [[[f64; 2]; ROTATIONS]; 2],
}

/// Rotation functions of a triangle: six shapes and the bubble.
pub(super) const ROTATIONS: usize = NODES + 1;
/// Functions that shear it: six deflections, then two covariant components of each rotation.
pub(super) const SHEARS: usize = NODES + 2 * ROTATIONS;
type Bending = [[[[f64; 2]; 2]; ROTATIONS]; ROTATIONS];
type Shear = [[[f64; 3]; SHEARS]; SHEARS];

/// Tables of the reference triangle, and integrals over it as means, so that a triangle's stiffness is no more than their
/// sum with its own shape and stiffness as factors.
pub(super) struct Reference {
    /// The sampling points.
    pub samples: [PointTable; 3],
    /// Mean of `∂c N_a ∂d N_b`: `[a][b][c][d]`.
    pub bending: Bending,
    /// Mean of `g_a g_b`, g the covariant shear: `[a][b]` along both first, both second, and one each.
    pub shear: Shear,
}

pub(super) static REFERENCE_TRIANGLE: LazyLock<Reference> = LazyLock::new(|| {
    let reduction = reduction();
    let mut bending: Bending = [[[[0.0; 2]; 2]; ROTATIONS]; ROTATIONS];
    let mut shear: Shear = [[[0.0; 3]; SHEARS]; SHEARS];
    for (n, weight) in RULE {
        let table = PointTable::new(n, &reduction);
        for (row, p) in bending.iter_mut().zip(table.slopes) {
            for (cell, q) in row.iter_mut().zip(table.slopes) {
                *cell = [0, 1].map(|c| [0, 1].map(|d| cell[c][d] + weight * p[c] * q[d]));
            }
        }
        let covariant: [Point; SHEARS] = std::array::from_fn(|i| {
            if i < NODES {
                return table.slopes[i];
            }
            let (a, k) = ((i - NODES) / 2, (i - NODES) % 2);
            [table.tied[0][a][k], table.tied[1][a][k]]
        });
        for (row, [a, b]) in shear.iter_mut().zip(covariant) {
            for (cell, [c, d]) in row.iter_mut().zip(covariant) {
                cell[0] += weight * a * c;
                cell[1] += weight * b * d;
                cell[2] += weight * (a * d + b * c);
            }
        }
    }
    Reference { samples: SAMPLES.map(|n| PointTable::new(n, &reduction)), bending, shear }
});

fn slopes(n: [f64; 3]) -> [Point; ROTATIONS] {
    let mut out = [[0.0; 2]; ROTATIONS];
    for k in 0..2 {
        for i in 0..3 {
            out[i][k] = (4.0 * n[i] - 1.0) * SLOPES[i][k];
            let [p, q] = SIDES[i];
            out[3 + i][k] = 4.0 * (n[p] * SLOPES[q][k] + n[q] * SLOPES[p][k]);
            out[NODES][k] += 27.0 * n[(i + 1) % 3] * n[(i + 2) % 3] * SLOPES[i][k];
        }
    }
    out
}

/// Rotations' functions: the six shapes and the bubble.
fn rotations(n: [f64; 3]) -> [f64; ROTATIONS] {
    let s = shape(n);
    [s[0], s[1], s[2], s[3], s[4], s[5], 27.0 * n[0] * n[1] * n[2]]
}

/// Nédélec's space of second order: all linear vectors, and (η, −ξ) times ξ and η.
fn edge_space([_, x, y]: [f64; 3]) -> [Point; 8] {
    [[1.0, 0.0], [0.0, 1.0], [x, 0.0], [y, 0.0], [0.0, x], [0.0, y], [x * y, -x * x], [y * y, -x * y]]
}

type Reduction = SMatrix<f64, 8, 14>;

/// Coefficients in the edge space of the tied rotation field.
fn reduction() -> Reduction {
    let mut space = SMatrix::<f64, 8, 8>::zeros();
    let mut field = Reduction::zeros();
    let mut row = 0;
    for [i, j] in SIDES {
        let along = sub(REFERENCE[j], REFERENCE[i]);
        for s in GAUSS {
            let mut n = [0.0; 3];
            (n[i], n[j]) = (1.0 - s, s);
            for (c, v) in edge_space(n).iter().enumerate() {
                space[(row, c)] = v[0] * along[0] + v[1] * along[1];
            }
            for (a, value) in rotations(n).iter().enumerate() {
                field[(row, 2 * a)] = value * along[0];
                field[(row, 2 * a + 1)] = value * along[1];
            }
            row += 1;
        }
    }
    for (n, weight) in RULE {
        for k in 0..2 {
            for (c, v) in edge_space(n).iter().enumerate() {
                space[(row + k, c)] += weight * v[k];
            }
            for (a, value) in rotations(n).iter().enumerate() {
                field[(row + k, 2 * a + k)] += weight * value;
            }
        }
    }
    // The tying is unisolvent: the matrix is constant and has an inverse.
    space.try_inverse().map_or_else(Reduction::zeros, |inverse| inverse * field)
}

impl PointTable {
    fn new(n: [f64; 3], reduction: &Reduction) -> Self {
        let space = edge_space(n);
        let tied = [0, 1].map(|k| {
            std::array::from_fn(|a| [0, 1].map(|c| (0..8).map(|j| space[j][k] * reduction[(j, 2 * a + c)]).sum()))
        });
        Self { slopes: slopes(n), tied }
    }
}
