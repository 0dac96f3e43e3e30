//! Solving a panel to a stated accuracy.

use super::arrange::{Arrangement, arrange};
use super::assembly::{System, holds};
use super::error::PanelError;
use super::load::{self, Load};
use super::mesh::{self, Mesh};
use super::model::{LineKind, Panel, PlateStiffness, Point, Section};
use super::outline;
use super::reaction::{self, Reaction, Resultant};
use super::recover::{self, SectionForces, Utilisation};
use super::refine;

/// How good the answer must be, and how much it may cost.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Accuracy {
    /// Error of the largest deflection, as a part of it.
    pub relative: f64,
    /// No mesh with more unknowns than about this is solved.
    pub most_unknowns: usize,
}

impl Default for Accuracy {
    fn default() -> Self {
        Self { relative: 0.005, most_unknowns: 60_000 }
    }
}

/// Triangles of the first mesh, about: panel area over half the square of its size.
const FIRST_TRIANGLES: f64 = 150.0;
/// Longest-side bisections about each kink of the solution before the mesh is halved as a whole.
const GRADING_ROUNDS: usize = 4;
/// Safety factor on the error that Richardson's extrapolation foretells from three meshes (P. J. Roache's grid
/// convergence index; ASME V&V 20), and from two meshes.
const SAFETY: [f64; 2] = [1.25, 3.0];
/// Orders of convergence that are believed: smooth solutions have 2, kinks lower it.
const ORDERS: [f64; 2] = [0.5, 2.0];

/// One mesh of the sequence.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Level {
    pub nodes: usize,
    pub unknowns: usize,
    /// Largest deflection in size, m.
    pub deflection: f64,
    /// Half the work of the loads, J.
    pub energy: f64,
}

/// A solved panel, on the finest mesh.
#[derive(Debug, Clone)]
pub struct Solution {
    pub mesh: Mesh,
    /// At each node, m.
    pub deflection: Vec<f64>,
    /// `βy, βz` at each node: minus the slopes, but for shear.
    pub rotation: Vec<[f64; 2]>,
    pub forces: Vec<SectionForces>,
    pub reactions: Vec<Reaction>,
    /// Resultant of the loads.
    pub load: Resultant,
    /// The deflection that is largest in size, with its sign, m.
    pub largest_deflection: f64,
    pub largest_at: Point,
    /// Estimated error of `largest_deflection`, as a part of it.
    pub error: f64,
    /// Whether `error` is within what was asked.
    pub converged: bool,
    pub levels: Vec<Level>,
    /// Highest utilisation; beside a point load, a kink or a held corner it grows with the mesh.
    pub weakest: Option<Utilisation>,
}

impl Panel {
    /// Solves for one set of loads, with ever finer meshes until the largest deflection is within `accuracy.relative`.
    ///
    /// Errors: [`PanelError`]; an accuracy that the unknowns allowed cannot reach is no error, see [`Solution::converged`].
    pub fn solve(&self, loads: &[Load], accuracy: Accuracy) -> Result<Solution, PanelError> {
        self.check()?;
        load::check(self, loads)?;
        let arrangement = arrange(self)?;
        let sections = self.sections();
        let stiffness: Vec<PlateStiffness> = sections.iter().map(|s| s.stiffness).collect();
        let (mut mesh, mut size) = self.first_mesh(&arrangement)?;
        let mut levels = Vec::new();
        loop {
            let holds = holds(self, &arrangement, &mesh)?;
            let forces = load::nodal_forces(&mesh, size, loads)?;
            let system = System::new(&mesh, &stiffness, &holds)?;
            let values = system.solve(&forces);
            if values.iter().flatten().any(|v| !v.is_finite()) {
                return Err(PanelError::Factor { reason: "the deflections are not finite".to_string() });
            }
            let largest = (0..values.len()).max_by(|&a, &b| values[a][0].abs().total_cmp(&values[b][0].abs())).unwrap_or(0);
            levels.push(Level {
                nodes: mesh.nodes.len(),
                unknowns: system.size(),
                deflection: values[largest][0].abs(),
                energy: 0.5 * values.iter().zip(&forces).map(|(v, f)| v[0] * f).sum::<f64>(),
            });
            let error = error_of(&levels);
            let done = error <= accuracy.relative;
            if done || 4 * system.size() > accuracy.most_unknowns {
                let section_forces = recover::section_forces(&mesh, &stiffness, &values);
                return Ok(Solution {
                    deflection: values.iter().map(|v| v[0]).collect(),
                    rotation: values.iter().map(|v| [v[1], v[2]]).collect(),
                    reactions: reaction::reactions(&mesh, &stiffness, &holds, &forces, &values),
                    load: reaction::of_forces(&mesh, &forces),
                    largest_deflection: values[largest][0],
                    largest_at: mesh.nodes[largest],
                    error,
                    converged: done,
                    levels,
                    weakest: recover::weakest(&mesh, &sections, &section_forces),
                    forces: section_forces,
                    mesh,
                });
            }
            mesh = refine::quarter(&mesh);
            size *= 0.5;
        }
    }

    /// The panel's own section, then its regions'.
    fn sections(&self) -> Vec<&Section> {
        std::iter::once(&self.section).chain(self.regions.iter().map(|r| &r.section)).collect()
    }

    fn check(&self) -> Result<(), PanelError> {
        if self.edges.len() != self.outline.len() {
            return Err(PanelError::Outline { corners: self.outline.len(), supports: self.edges.len() });
        }
        outline::check(&self.outline)?;
        self.sections().iter().try_for_each(|s| s.stiffness.check())?;
        for line in &self.lines {
            let (what, values) = match line.kind {
                LineKind::Supported | LineKind::Clamped => continue,
                LineKind::Elastic { stiffness } => ("the stiffness of a line", vec![stiffness]),
                LineKind::Beam { bending, torsion } => ("the stiffness of a beam", vec![bending, torsion]),
            };
            for value in values {
                if !value.is_finite() {
                    return Err(PanelError::NotFinite { what });
                }
                if value < 0.0 {
                    return Err(PanelError::NotPositive { what, value });
                }
            }
        }
        Ok(())
    }

    fn first_mesh(&self, arrangement: &Arrangement) -> Result<(Mesh, f64), PanelError> {
        let extent = outline::extent(&self.outline);
        // A very long strip gets a mesh no coarser than its own width asks for.
        let size = (2.0 * outline::area(&self.outline).abs() / FIRST_TRIANGLES).sqrt().max(extent / 500.0);
        let mut mesh = mesh::triangulate(self, arrangement, size)?;
        let near = 4.0 * outline::COINCIDENT * extent;
        refine::grade(&mut mesh, &mesh::kinks(self, arrangement), near, GRADING_ROUNDS);
        Ok((mesh, size))
    }
}

/// Estimated relative error of the last level's deflection.
fn error_of(levels: &[Level]) -> f64 {
    let w: Vec<f64> = levels.iter().rev().map(|l| l.deflection).collect();
    match w[..] {
        [] | [_] => f64::INFINITY,
        [0.0, ..] => 0.0,
        [fine, coarse] => SAFETY[1] * (fine - coarse).abs() / fine,
        [fine, middle, coarse, ..] => {
            let (last, first) = ((fine - middle).abs(), (middle - coarse).abs());
            let order = if last > 0.0 { (first / last).log2().clamp(ORDERS[0], ORDERS[1]) } else { ORDERS[1] };
            SAFETY[0] * last / (order.exp2() - 1.0) / fine
        }
    }
}
