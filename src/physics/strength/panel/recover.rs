//! Moments, shear forces and stresses from a solution.

use super::assembly::corner_values;
use super::element::Element;
use super::layup::PlyStress;
use super::mesh::Mesh;
use super::model::{PlateStiffness, Point, Section};

/// Moments and shear forces at a node, averaged over the triangles of one part of the panel.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SectionForces {
    pub node: u32,
    /// As [`Mesh::parts`].
    pub part: u32,
    /// `M_y, M_z, M_yz`, N·m per metre; positive stretches the face at positive x.
    pub moment: [f64; 3],
    /// `Q_y, Q_z`, N/m.
    pub shear: [f64; 2],
}

/// The place nearest to its strength.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Utilisation {
    pub at: Point,
    pub part: u32,
    pub stress: PlyStress,
}

/// Section forces at every node, once for each part that meets there.
pub(super) fn section_forces(mesh: &Mesh, stiffness: &[PlateStiffness], values: &[[f64; 3]]) -> Vec<SectionForces> {
    let count = mesh.nodes.len();
    // Area, then the five forces times area; parts are few, so a full table is the shortest way.
    let mut sums = vec![[0.0_f64; 6]; count * stiffness.len()];
    for (t, nodes) in mesh.triangles.iter().enumerate() {
        let part = mesh.parts[t] as usize;
        let element = Element::new(mesh.corners(t), &stiffness[part]);
        let u = corner_values(*nodes, values);
        for (i, &n) in nodes.iter().enumerate() {
            let mut corner = [0.0; 3];
            corner[i] = 1.0;
            let (m, q) = (element.moments(corner, &u), element.shears(corner, &u));
            let sum = &mut sums[part * count + n as usize];
            for (s, v) in sum.iter_mut().zip([1.0, m[0], m[1], m[2], q[0], q[1]]) {
                *s += element.area * v;
            }
        }
    }
    sums.iter()
        .enumerate()
        .filter(|(_, s)| s[0] > 0.0)
        .map(|(i, &[area, m1, m2, m3, q1, q2])| SectionForces {
            node: (i % count) as u32,
            part: (i / count) as u32,
            moment: [m1 / area, m2 / area, m3 / area],
            shear: [q1 / area, q2 / area],
        })
        .collect()
}

/// The energy (J) by which each triangle's own section forces miss the averaged ones: O. C. Zienkiewicz and J. Z. Zhu's
/// measure of where the mesh is too coarse.
pub(super) fn roughness(
    mesh: &Mesh,
    stiffness: &[PlateStiffness],
    values: &[[f64; 3]],
    averaged: &[SectionForces],
) -> Vec<f64> {
    let count = mesh.nodes.len();
    let mut index = vec![u32::MAX; count * stiffness.len()];
    for (i, f) in averaged.iter().enumerate() {
        index[f.part as usize * count + f.node as usize] = i as u32;
    }
    let corner = |i: usize| {
        let mut n = [0.0; 3];
        n[i] = 1.0;
        n
    };
    (0..mesh.triangles.len())
        .map(|t| {
            let part = mesh.parts[t] as usize;
            let d = &stiffness[part];
            let element = Element::new(mesh.corners(t), d);
            let u = corner_values(mesh.triangles[t], values);
            let determinant = d.d11 * d.d22 - d.d12 * d.d12;
            let energy: f64 = (0..3)
                .map(|i| {
                    let smooth = &averaged[index[part * count + mesh.triangles[t][i] as usize] as usize];
                    let (m, q) = (element.moments(corner(i), &u), element.shears(corner(i), &u));
                    let [a, b, c] = [0, 1, 2].map(|k| m[k] - smooth.moment[k]);
                    let [e, f] = [0, 1].map(|k| q[k] - smooth.shear[k]);
                    (d.d22 * a * a - 2.0 * d.d12 * a * b + d.d11 * b * b) / determinant
                        + c * c / d.d66
                        + e * e / d.s1
                        + f * f / d.s2
                })
                .sum();
            element.area / 6.0 * energy
        })
        .collect()
}

/// The highest utilisation among all plies and nodes; `None` where no part has plies.
pub(super) fn weakest(mesh: &Mesh, sections: &[&Section], forces: &[SectionForces]) -> Option<Utilisation> {
    let mut worst: Option<Utilisation> = None;
    for force in forces {
        let Some(layup) = &sections[force.part as usize].layup else { continue };
        let Some(stress) = layup.worst(force.moment, force.shear) else { continue };
        if worst.is_none_or(|w| stress.utilisation > w.stress.utilisation) {
            worst = Some(Utilisation { at: mesh.nodes[force.node as usize], part: force.part, stress });
        }
    }
    worst
}
