//! The place that moves most.

use super::mesh::Mesh;
use super::reference::shape;
use super::vector::Point;

/// Where the deflection is largest in size.
pub(super) struct Peak {
    pub triangle: usize,
    /// Barycentric.
    pub within: [f64; 3],
    pub deflection: f64,
}

/// Steps to a side in which the triangles about the largest node are searched.
const SEARCH_STEPS: usize = 8;

impl Peak {
    pub(super) fn find(mesh: &Mesh, values: &[[f64; 3]]) -> Self {
        let largest =
            (0..values.len()).max_by(|&a, &b| values[a][0].abs().total_cmp(&values[b][0].abs())).unwrap_or(0) as u32;
        let mut peak = Self { triangle: 0, within: [1.0, 0.0, 0.0], deflection: 0.0 };
        for t in (0..mesh.triangles.len()).filter(|&t| mesh.triangles[t].contains(&largest)) {
            let w = mesh.triangles[t].map(|n| values[n as usize][0]);
            for i in 0..=SEARCH_STEPS {
                for j in 0..=SEARCH_STEPS - i {
                    let [a, b] = [i, j].map(|k| k as f64 / SEARCH_STEPS as f64);
                    let within = [1.0 - a - b, a, b];
                    let deflection = shape(within).iter().zip(w).map(|(s, w)| s * w).sum::<f64>();
                    if deflection.abs() >= peak.deflection.abs() {
                        peak = Self { triangle: t, within, deflection };
                    }
                }
            }
        }
        peak
    }

    /// Whether both stand at the same place of the same mesh.
    pub(super) fn is_at(&self, other: &Self) -> bool {
        self.triangle == other.triangle && self.within == other.within
    }

    pub(super) fn at(&self, mesh: &Mesh) -> Point {
        let corners = mesh.corners(self.triangle);
        [0, 1].map(|k| (0..3).map(|i| self.within[i] * corners[i][k]).sum())
    }
}
