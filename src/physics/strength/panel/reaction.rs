//! What the supports give back, and whether it balances the loads.

use std::collections::BTreeMap;

use super::assembly::System;
use super::element::Element;
use super::mesh::Mesh;
use super::reference::NODES;
use super::stiffness::PlateStiffness;
use super::support::{Cushion, Holds, Spring, SupportPart};
use super::vector::Point;

/// A force along x and its moments about the panel's axes through the origin of panel coordinates.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Resultant {
    /// Positive along x, N.
    pub force: f64,
    /// About y, N·m: a force `F` at height `z` gives `+z F` (x forward, y to port, z up, right-handed).
    pub moment_y: f64,
    /// About z, N·m: a force `F` at `y` gives `−y F`.
    pub moment_z: f64,
}

impl Resultant {
    fn add_node(&mut self, [y, z]: Point, [force, along_y, along_z]: [f64; 3], share: f64) {
        // A tilt about y by α moves the panel by w = α z, so β = (0, −α); about z: w = −α y, β = (α, 0).
        self.force += share * force;
        self.moment_y += share * (z * force - along_z);
        self.moment_z += share * (-y * force + along_y);
    }

    fn plus(self, other: Self) -> Self {
        Self {
            force: self.force + other.force,
            moment_y: self.moment_y + other.moment_y,
            moment_z: self.moment_z + other.moment_z,
        }
    }

    /// The sum of many.
    pub fn total(all: impl IntoIterator<Item = Self>) -> Self {
        all.into_iter().fold(Self::default(), Self::plus)
    }
}

/// What one support carries.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reaction {
    /// Which support.
    pub part: SupportPart,
    /// Its push on the panel.
    pub push: Resultant,
}

/// The loads' resultant from nodal forces.
pub(super) fn of_forces(mesh: &Mesh, forces: &[f64]) -> Resultant {
    let mut sum = Resultant::default();
    for (p, f) in mesh.nodes.iter().zip(forces) {
        sum.add_node(*p, [*f, 0.0, 0.0], 1.0);
    }
    sum
}

/// Reactions, one for each part that holds the panel, in the order edges then lines. A node that several parts hold
/// shares its reaction among them evenly.
pub(super) fn reactions(
    mesh: &Mesh,
    stiffness: &[PlateStiffness],
    holds: &Holds,
    forces: &[f64],
    values: &[[f64; 3]],
) -> Vec<Reaction> {
    let mut found: BTreeMap<SupportPart, Resultant> = BTreeMap::new();
    let nodal = unbalanced(mesh, stiffness, holds, forces, values);
    for spring in &holds.springs {
        let Some(part) = spring.part else { continue };
        for (push, n) in link_forces(spring, mesh, values).into_iter().zip(spring.nodes) {
            found.entry(part).or_default().add_node(mesh.nodes[n as usize], push, -1.0);
        }
    }
    for cushion in &holds.cushions {
        for (push, n) in cushion_forces(cushion, values).into_iter().zip(cushion.nodes) {
            found.entry(cushion.part).or_default().add_node(mesh.nodes[n as usize], [push, 0.0, 0.0], -1.0);
        }
    }
    for (n, parts) in holds.parts.iter().enumerate() {
        for part in parts {
            found.entry(*part).or_default().add_node(mesh.nodes[n], nodal[n], 1.0 / parts.len() as f64);
        }
    }
    found.into_iter().map(|(part, push)| Reaction { part, push }).collect()
}

/// The solution after one step of iterative refinement, so that what rounding left over does not show in the reactions.
pub(super) fn polished(
    system: &System,
    mesh: &Mesh,
    stiffness: &[PlateStiffness],
    holds: &Holds,
    forces: &[f64],
    mut values: Vec<[f64; 3]>,
) -> Vec<[f64; 3]> {
    let left: Vec<[f64; 3]> =
        unbalanced(mesh, stiffness, holds, forces, &values).iter().map(|n| n.map(|v| -v)).collect();
    for (value, change) in values.iter_mut().zip(system.solve(&left)) {
        (0..3).for_each(|k| value[k] += change[k]);
    }
    values
}

/// What each node would need from outside to be in balance: the reaction where it is held, rounding elsewhere.
///
/// Each triangle's rigid motion is taken out first: it strains nothing, and would drown small strains in rounding.
fn unbalanced(
    mesh: &Mesh,
    stiffness: &[PlateStiffness],
    holds: &Holds,
    forces: &[f64],
    values: &[[f64; 3]],
) -> Vec<[f64; 3]> {
    let mut nodal: Vec<[f64; 3]> = forces.iter().map(|f| [-f, 0.0, 0.0]).collect();
    for (t, nodes) in mesh.triangles.iter().enumerate() {
        let (k, _) = Element::new(mesh.corners(t), &stiffness[mesh.parts[t] as usize]).stiffness_matrix();
        let u = strained(mesh, nodes, values);
        for (row, matrix) in k.iter().enumerate() {
            nodal[nodes[row / 3] as usize][row % 3] += matrix.iter().zip(&u).map(|(a, b)| a * b).sum::<f64>();
        }
    }
    for spring in &holds.springs {
        for (push, n) in link_forces(spring, mesh, values).into_iter().zip(spring.nodes) {
            (0..3).for_each(|c| nodal[n as usize][c] += push[c]);
        }
    }
    for cushion in &holds.cushions {
        for (push, n) in cushion_forces(cushion, values).into_iter().zip(cushion.nodes) {
            nodal[n as usize][0] += push;
        }
    }
    nodal
}

/// The unknowns of some nodes less the rigid motion of the first.
fn strained(mesh: &Mesh, nodes: &[u32], values: &[[f64; 3]]) -> Vec<f64> {
    let (at, [w, by, bz]) = (mesh.nodes[nodes[0] as usize], values[nodes[0] as usize]);
    nodes
        .iter()
        .flat_map(|&n| {
            let ([y, z], v) = (mesh.nodes[n as usize], values[n as usize]);
            [(v[0] - w) + by * (y - at[0]) + bz * (z - at[1]), v[1] - by, v[2] - bz]
        })
        .collect()
}

/// Forces and couples that a spring or beam draws from its nodes.
fn link_forces(spring: &Spring, mesh: &Mesh, values: &[[f64; 3]]) -> [[f64; 3]; 3] {
    // A beam strains as the plate does; springs to ground feel the whole deflection.
    let u = match spring.part {
        None => strained(mesh, &spring.nodes, values),
        Some(_) => spring.nodes.iter().flat_map(|&n| values[n as usize]).collect(),
    };
    [0, 1, 2].map(|i| [0, 1, 2].map(|c| spring.link[3 * i + c].iter().zip(&u).map(|(a, b)| a * b).sum()))
}

/// Forces that a triangle's part of a bed draws from its nodes.
fn cushion_forces(cushion: &Cushion, values: &[[f64; 3]]) -> [f64; NODES] {
    std::array::from_fn(|i| {
        cushion.nodes.iter().enumerate().map(|(j, n)| cushion.link[i][j] * values[*n as usize][0]).sum()
    })
}
