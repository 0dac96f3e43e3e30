//! Deflection and use of strength over the panel, ready for drawing.

use super::Bent;
use crate::physics::strength::panel::{Factored, Loaded, Panel, Point, Solution};

/// Fields over a mesh. Places `[y, z]` in m: to port, and up the transom from the bottom on the centreline.
#[derive(Clone, Debug, PartialEq)]
pub struct Fields {
    /// Corners first, then the middles of sides.
    pub nodes: Vec<Point>,
    /// Three corners, then the middles of sides 0–1, 1–2, 2–0.
    pub triangles: Vec<[u32; 6]>,
    /// At each node, m, forward positive.
    pub deflection: Vec<f64>,
    /// Stress over strength at each node, the worst of its layers; 1 breaks. Zeros where no strength is known.
    pub use_of_strength: Vec<f64>,
}

impl Fields {
    /// The fields of a studied panel.
    pub fn of(panel: &Panel, solution: &Solution) -> Fields {
        let mut used = vec![0.0_f64; solution.mesh.nodes.len()];
        if let Some(layup) = &panel.section.layup {
            for force in &solution.forces {
                let worst = layup.worst(force.moment, force.shear).map_or(0.0, |stress| stress.utilisation);
                let at = &mut used[force.node as usize];
                *at = at.max(worst);
            }
        }
        Fields {
            nodes: solution.mesh.nodes.clone(),
            triangles: solution.mesh.triangles.clone(),
            deflection: solution.deflection.clone(),
            use_of_strength: used,
        }
    }

    /// The fields of a transom: bending by its mean moments, as it is judged.
    fn of_means(factored: &Factored, loaded: &Loaded) -> Fields {
        let mesh = factored.mesh();
        let mut used = vec![0.0_f64; mesh.nodes.len()];
        if let Some(layup) = &factored.panel().section.layup {
            for (used, mean) in used.iter_mut().zip(factored.moments_at_nodes(loaded)) {
                *used = layup.bent(mean.moment).utilisation;
            }
        }
        Fields {
            nodes: mesh.nodes.clone(),
            triangles: mesh.triangles.clone(),
            deflection: factored.deflections(loaded),
            use_of_strength: used,
        }
    }
}

impl Bent {
    /// The fields of a case in the state in which its bending is told.
    pub fn bending_fields(&self, case: usize) -> Option<Fields> {
        self.told(case).map(|(factored, stood)| Fields::of_means(factored, &stood.loaded))
    }

    /// The fields of a case with all that stands behind the panel, in which its deflection is told.
    pub fn deflection_fields(&self, case: usize) -> Option<Fields> {
        let effect = self.effects.get(case)?;
        Some(Fields::of_means(self.panels.braced(), &effect.braced().loaded))
    }
}
