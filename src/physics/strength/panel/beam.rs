//! Beams and springs along mesh sides: three nodes in the order end, end, middle.

use super::vector::{Point, distance, sub};

/// Stiffness over `w, βy, βz` at the three nodes.
pub(super) type Link = [[f64; 9]; 9];

/// A beam that is hardly sheared: its shear stiffness is this many times `EI` over the square of the whole line's length,
/// so that shear adds about a thousandth to its sag.
const SHEAR_OF_BENDING: f64 = 1e4;

/// A beam fixed to the plate's middle surface: bending EI (N·m²) out of plane, torsion GJ (N·m²), on a line `whole` m long.
///
/// Three-node Timoshenko beam; two Gauss points leave out the part of its shear strain that would lock it.
pub(super) fn beam(a: Point, b: Point, bending: f64, torsion: f64, whole: f64) -> Link {
    let l = distance(a, b);
    let [c, s] = sub(b, a).map(|v| v / l);
    let shear = SHEAR_OF_BENDING * bending / (whole * whole);
    let mut k = [[0.0; 9]; 9];
    for t in super::reference::GAUSS {
        let shape = [(1.0 - t) * (1.0 - 2.0 * t), t * (2.0 * t - 1.0), 4.0 * t * (1.0 - t)];
        let slope = [(4.0 * t - 3.0) / l, (4.0 * t - 1.0) / l, (4.0 - 8.0 * t) / l];
        let (mut bend, mut twist, mut slip) = ([0.0; 9], [0.0; 9], [0.0; 9]);
        for n in 0..3 {
            (bend[3 * n + 1], bend[3 * n + 2]) = (slope[n] * c, slope[n] * s);
            (twist[3 * n + 1], twist[3 * n + 2]) = (-slope[n] * s, slope[n] * c);
            (slip[3 * n], slip[3 * n + 1], slip[3 * n + 2]) = (slope[n], shape[n] * c, shape[n] * s);
        }
        for r in 0..9 {
            for q in 0..9 {
                k[r][q] +=
                    0.5 * l * (bending * bend[r] * bend[q] + torsion * twist[r] * twist[q] + shear * slip[r] * slip[q]);
            }
        }
    }
    k
}

/// Springs against deflection, `stiffness` N/m per metre, and against turning about the line, `turning` N·m a radian per metre.
pub(super) fn springs(a: Point, b: Point, stiffness: f64, turning: f64) -> Link {
    let mut k = [[0.0; 9]; 9];
    let l = distance(a, b);
    let [c, s] = sub(b, a).map(|v| v / l);
    let across = [s, -c];
    for (r, row) in [[4.0, -1.0, 2.0], [-1.0, 4.0, 2.0], [2.0, 2.0, 16.0]].iter().enumerate() {
        for (q, v) in row.iter().enumerate() {
            let share = v * l / 30.0;
            k[3 * r][3 * q] = stiffness * share;
            for i in 0..2 {
                for j in 0..2 {
                    k[3 * r + 1 + i][3 * q + 1 + j] = turning * share * across[i] * across[j];
                }
            }
        }
    }
    k
}
