//! Beams and springs along mesh sides.

use super::vector::{distance, sub};
use super::model::Point;

/// Stiffness over `w, βy, βz` at both ends.
pub(super) type Link = [[f64; 6]; 6];

/// A slender beam fixed to the plate's middle surface: bending EI (N·m²) out of plane, torsion GJ (N·m²).
pub(super) fn beam(a: Point, b: Point, bending: f64, torsion: f64) -> Link {
    let l = distance(a, b);
    let [c, s] = sub(b, a).map(|v| v / l);
    // Slope along the beam is −βs. Hermite's matrix as EI/l³ (12 w w …) in the unknowns (w, βs).
    let along = [0.0, c, s, 0.0, 0.0, 0.0];
    let along_b = [0.0, 0.0, 0.0, 0.0, c, s];
    let rise = [1.0, 0.0, 0.0, -1.0, 0.0, 0.0];
    let mut k = [[0.0; 6]; 6];
    // Energy = EI/(2 l) [(θb−θa)² + 3 (θa+θb − 2 (wb−wa)/l)²], θ = −βs.
    let bend: [f64; 6] = std::array::from_fn(|i| along_b[i] - along[i]);
    let shear: [f64; 6] = std::array::from_fn(|i| -(along[i] + along_b[i]) + 2.0 / l * rise[i]);
    let twist = [0.0, s, -c, 0.0, -s, c];
    for r in 0..6 {
        for q in 0..6 {
            k[r][q] = bending / l * (bend[r] * bend[q] + 3.0 * shear[r] * shear[q]) + torsion / l * twist[r] * twist[q];
        }
    }
    k
}

/// Springs against deflection, `stiffness` N/m per metre.
pub(super) fn springs(a: Point, b: Point, stiffness: f64) -> Link {
    let mut k = [[0.0; 6]; 6];
    let whole = stiffness * distance(a, b);
    for (r, q, part) in [(0, 0, 3.0), (3, 3, 3.0), (0, 3, 6.0), (3, 0, 6.0)] {
        k[r][q] = whole / part;
    }
    k
}
