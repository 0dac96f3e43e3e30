//! Moments, shear forces and stresses from a solution.

use std::collections::{HashMap, HashSet};

use super::arrange::{Arrangement, Origin};
use super::assembly::{System, triangle_values};
use super::element::section_forces;
use super::layup::PlyStress;
use super::mesh::{Mesh, double_area};
use super::model::Section;
use super::reference::NODES;
use super::stiffness::PlateStiffness;
use super::vector::Point;

/// Moments and shear forces at a node, averaged over the triangles of one part of the panel on one side of any line.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SectionForces {
    /// Index into [`Mesh::nodes`].
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
    /// A node, `[y, z]`, m.
    pub at: Point,
    /// As [`Mesh::parts`].
    pub part: u32,
    /// Of the ply that is nearest to its strength there.
    pub stress: PlyStress,
}

/// Which corners of triangles share an average: those at one node, in one part, on one side of any line. Across a
/// line that carries or stiffens the panel the section forces jump, and an average over it would be wrong on both sides.
pub(super) struct Corners {
    /// Index into `places` for each corner of each triangle.
    slots: Vec<[u32; NODES]>,
    /// Node and part.
    places: Vec<(u32, u32)>,
}

const UNSET: u32 = u32::MAX;

impl Corners {
    pub(super) fn new(mesh: &Mesh, arrangement: &Arrangement) -> Self {
        let lines: Vec<[u32; 3]> = mesh
            .sides
            .iter()
            .filter(|s| arrangement.pieces[s.piece as usize].origins.iter().any(|o| matches!(o, Origin::Line(_))))
            .map(|s| s.nodes)
            .collect();
        let mut on_line: HashMap<u32, Vec<usize>> = lines.iter().flatten().map(|&n| (n, Vec::new())).collect();
        // A side is told by its middle.
        let lines: HashSet<u32> = lines.iter().map(|l| l[2]).collect();
        let mut corners = Self { slots: vec![[UNSET; NODES]; mesh.triangles.len()], places: Vec::new() };
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
    fn split(&mut self, mesh: &Mesh, lines: &HashSet<u32>, n: u32, around: &[usize]) {
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
                        && mesh.triangles[o][3..]
                            .iter()
                            .any(|m| *m != n && mesh.triangles[t][3..].contains(m) && !lines.contains(m))
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

/// A solution's section forces: at the nodes of each triangle, and averaged at each of the corners' places.
pub(super) struct Fields {
    own: Vec<[[f64; 5]; NODES]>,
    averaged: Vec<[f64; 5]>,
}

impl Fields {
    pub(super) fn new(mesh: &Mesh, corners: &Corners, system: &System, values: &[[f64; 3]]) -> Self {
        let mut sums = vec![(0.0_f64, [0.0_f64; 5]); corners.places.len()];
        let samplers = system.samplers(mesh);
        let own: Vec<_> = (0..mesh.triangles.len())
            .map(|t| {
                let forces = section_forces(&samplers[t], &triangle_values(mesh.triangles[t], values));
                let share = double_area(mesh.corners(t));
                for (slot, force) in corners.slots[t].iter().zip(&forces) {
                    let (area, sum) = &mut sums[*slot as usize];
                    *area += share;
                    sum.iter_mut().zip(force).for_each(|(s, f)| *s += share * f);
                }
                forces
            })
            .collect();
        Self { own, averaged: sums.into_iter().map(|(area, sum)| sum.map(|s| s / area)).collect() }
    }

    /// The averaged forces with their nodes and parts.
    pub(super) fn section_forces(&self, corners: &Corners) -> Vec<SectionForces> {
        self.averaged
            .iter()
            .zip(&corners.places)
            .map(|(&[m1, m2, m3, q1, q2], &(node, part))| SectionForces {
                node,
                part,
                moment: [m1, m2, m3],
                shear: [q1, q2],
            })
            .collect()
    }
}

/// The work (J) that the errors of two solutions do on each other, triangle by triangle, each error taken as what a
/// triangle's own section forces miss the averaged ones by (O. C. Zienkiewicz and J. Z. Zhu). With a unit load's solution
/// as the second, its sum is the error of the deflection there (R. Becker and R. Rannacher's dual weighting).
pub(super) fn error_work(
    mesh: &Mesh,
    corners: &Corners,
    stiffness: &[PlateStiffness],
    [first, second]: [&Fields; 2],
) -> Vec<f64> {
    (0..mesh.triangles.len())
        .map(|t| {
            let d = &stiffness[mesh.parts[t] as usize];
            let determinant = d.d11 * d.d22 - d.d12 * d.d12;
            let work: f64 = (0..NODES)
                .map(|i| {
                    let [a, b] = [first, second].map(|f| {
                        let smooth = &f.averaged[corners.slots[t][i] as usize];
                        let own = &f.own[t][i];
                        [0, 1, 2, 3, 4].map(|c| own[c] - smooth[c])
                    });
                    (d.d22 * a[0] * b[0] - d.d12 * (a[0] * b[1] + a[1] * b[0]) + d.d11 * a[1] * b[1]) / determinant
                        + a[2] * b[2] / d.d66
                        + a[3] * b[3] / d.s1
                        + a[4] * b[4] / d.s2
                })
                .sum();
            0.5 * double_area(mesh.corners(t)) / NODES as f64 * work
        })
        .collect()
}

/// The largest moment of each kind, in size, and the furthest that a triangle's own value is from the common one, at any node of
/// the triangles about its place.
pub(super) fn largest_moments(corners: &Corners, fields: &Fields) -> ([f64; 3], [f64; 3]) {
    let averaged = |slot: u32, k: usize| fields.averaged[slot as usize][k];
    let places = [0, 1, 2].map(|k| {
        let size = |slot: &u32| averaged(*slot, k).abs();
        (0..fields.averaged.len() as u32).max_by(|a, b| size(a).total_cmp(&size(b))).unwrap_or(UNSET)
    });
    let mut jumps = [0.0_f64; 3];
    for (slots, own) in corners.slots.iter().zip(&fields.own) {
        for (k, _) in places.iter().enumerate().filter(|(_, place)| slots.contains(place)) {
            let off = slots.iter().zip(own).map(|(slot, own)| (own[k] - averaged(*slot, k)).abs());
            jumps[k] = off.fold(jumps[k], f64::max);
        }
    }
    ([0, 1, 2].map(|k| if places[k] == UNSET { 0.0 } else { averaged(places[k], k).abs() }), jumps)
}

/// The highest utilisation among all plies and nodes; `None` where no part has plies.
pub(super) fn weakest(mesh: &Mesh, sections: &[&Section], forces: &[SectionForces]) -> Option<Utilisation> {
    let mut worst: Option<Utilisation> = None;
    for force in forces {
        let Some(layup) = &sections[force.part as usize].layup else {
            continue;
        };
        let Some(stress) = layup.worst(force.moment, force.shear) else {
            continue;
        };
        if worst.is_none_or(|w| stress.utilisation > w.stress.utilisation) {
            worst = Some(Utilisation { at: mesh.nodes[force.node as usize], part: force.part, stress });
        }
    }
    worst
}
