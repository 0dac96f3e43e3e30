//! Moments, shear forces and stresses from a solution.

use std::collections::{HashMap, HashSet};

use super::arrange::{Arrangement, Origin};
use super::assembly::corner_values;
use super::element::Element;
use super::layup::PlyStress;
use super::mesh::Mesh;
use super::model::{PlateStiffness, Point, Section};

/// Moments and shear forces at a node, averaged over the triangles of one part of the panel on one side of any line.
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

/// Which corners of triangles share an average: those at one node, in one part, on one side of any line. Across a
/// line that carries or stiffens the panel the section forces jump, and an average over it would be wrong on both sides.
pub(super) struct Corners {
    /// Index into `places` for each corner of each triangle.
    slots: Vec<[u32; 3]>,
    /// Node and part.
    places: Vec<(u32, u32)>,
}

const UNSET: u32 = u32::MAX;

impl Corners {
    pub fn new(mesh: &Mesh, arrangement: &Arrangement) -> Self {
        let lines: HashSet<[u32; 2]> = mesh
            .sides
            .iter()
            .filter(|s| arrangement.pieces[s.piece as usize].origins.iter().any(|o| matches!(o, Origin::Line(_))))
            .map(|s| sorted(s.nodes))
            .collect();
        let mut on_line: HashMap<u32, Vec<usize>> = lines.iter().flatten().map(|&n| (n, Vec::new())).collect();
        let mut corners = Self { slots: vec![[UNSET; 3]; mesh.triangles.len()], places: Vec::new() };
        let mut latest: Vec<u32> = vec![UNSET; mesh.nodes.len()];
        // Parts run one after the other, so that a node's latest slot tells whether it is of this part.
        for part in 0..=mesh.parts.iter().copied().max().unwrap_or(0) {
            for t in (0..mesh.triangles.len()).filter(|&t| mesh.parts[t] == part) {
                for (i, &n) in mesh.triangles[t].iter().enumerate() {
                    if let Some(around) = on_line.get_mut(&n) {
                        around.push(t);
                        continue;
                    }
                    let slot = &mut latest[n as usize];
                    if *slot == UNSET || corners.places[*slot as usize].1 != part {
                        *slot = corners.places.len() as u32;
                        corners.places.push((n, part));
                    }
                    corners.slots[t][i] = *slot;
                }
            }
        }
        let mut nodes: Vec<u32> = on_line.keys().copied().collect();
        nodes.sort_unstable();
        for n in nodes {
            corners.split(mesh, &lines, n, &on_line[&n]);
        }
        corners
    }

    /// Gives the triangles around a node on a line one slot for each side.
    fn split(&mut self, mesh: &Mesh, lines: &HashSet<[u32; 2]>, n: u32, around: &[usize]) {
        let index = |t: usize| mesh.triangles[t].iter().position(|&m| m == n).unwrap_or(0);
        for &start in around {
            if self.slots[start][index(start)] != UNSET {
                continue;
            }
            let slot = self.places.len() as u32;
            self.places.push((n, mesh.parts[start]));
            self.slots[start][index(start)] = slot;
            let mut open = vec![start];
            while let Some(t) = open.pop() {
                let reachable = |o: usize| {
                    mesh.parts[o] == mesh.parts[t]
                        && mesh.triangles[o].iter().any(|&m| {
                            m != n && mesh.triangles[t].contains(&m) && !lines.contains(&sorted([n, m]))
                        })
                };
                for &o in around {
                    if self.slots[o][index(o)] == UNSET && reachable(o) {
                        self.slots[o][index(o)] = slot;
                        open.push(o);
                    }
                }
            }
        }
    }
}

fn sorted([a, b]: [u32; 2]) -> [u32; 2] {
    [a.min(b), a.max(b)]
}

fn corner(i: usize) -> [f64; 3] {
    let mut n = [0.0; 3];
    n[i] = 1.0;
    n
}

/// Averaged section forces, one for each of the corners' places.
pub(super) fn section_forces(
    mesh: &Mesh,
    corners: &Corners,
    stiffness: &[PlateStiffness],
    values: &[[f64; 3]],
) -> Vec<SectionForces> {
    // Area, then the five forces times area.
    let mut sums = vec![[0.0_f64; 6]; corners.places.len()];
    for (t, nodes) in mesh.triangles.iter().enumerate() {
        let element = Element::new(mesh.corners(t), &stiffness[mesh.parts[t] as usize]);
        let u = corner_values(*nodes, values);
        for i in 0..3 {
            let (m, q) = (element.moments(corner(i), &u), element.shears(corner(i), &u));
            let sum = &mut sums[corners.slots[t][i] as usize];
            for (s, v) in sum.iter_mut().zip([1.0, m[0], m[1], m[2], q[0], q[1]]) {
                *s += element.area * v;
            }
        }
    }
    sums.iter()
        .zip(&corners.places)
        .map(|(&[area, m1, m2, m3, q1, q2], &(node, part))| SectionForces {
            node,
            part,
            moment: [m1 / area, m2 / area, m3 / area],
            shear: [q1 / area, q2 / area],
        })
        .collect()
}

/// The work (J) that the errors of two solutions do on each other, triangle by triangle, each error taken as what a
/// triangle's own section forces miss the averaged ones by (O. C. Zienkiewicz and J. Z. Zhu). With a unit load's solution
/// as the second, its sum is the error of the deflection there (R. Becker and R. Rannacher's dual weighting).
pub(super) fn error_work(
    mesh: &Mesh,
    corners: &Corners,
    stiffness: &[PlateStiffness],
    values: [&[[f64; 3]]; 2],
) -> Vec<f64> {
    let averaged = values.map(|v| section_forces(mesh, corners, stiffness, v));
    (0..mesh.triangles.len())
        .map(|t| {
            let d = &stiffness[mesh.parts[t] as usize];
            let element = Element::new(mesh.corners(t), d);
            let determinant = d.d11 * d.d22 - d.d12 * d.d12;
            let u = values.map(|v| corner_values(mesh.triangles[t], v));
            let work: f64 = (0..3)
                .map(|i| {
                    let [(m, q), (n, r)] = [0, 1].map(|k| {
                        let smooth = &averaged[k][corners.slots[t][i] as usize];
                        let (m, q) = (element.moments(corner(i), &u[k]), element.shears(corner(i), &u[k]));
                        ([0, 1, 2].map(|c| m[c] - smooth.moment[c]), [0, 1].map(|c| q[c] - smooth.shear[c]))
                    });
                    (d.d22 * m[0] * n[0] - d.d12 * (m[0] * n[1] + m[1] * n[0]) + d.d11 * m[1] * n[1]) / determinant
                        + m[2] * n[2] / d.d66
                        + q[0] * r[0] / d.s1
                        + q[1] * r[1] / d.s2
                })
                .sum();
            element.area / 3.0 * work
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
