//! Solving a panel to a stated accuracy.

use super::arrange::{Arrangement, arrange};
use super::assembly::System;
use super::error::PanelError;
use super::load::{self, Load};
use super::mesh::{self, Mesh};
use super::model::{LineKind, Panel, PlateStiffness, Point, Section};
use super::outline;
use super::reaction::{self, Reaction, Resultant};
use super::recover::{self, Corners, Fields, SectionForces, Utilisation};
use super::reference::shape;
use super::refine;
use super::support::holds;

/// How good the answer must be, and how much it may cost.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Accuracy {
    /// Error of the largest deflection, as a part of it.
    pub relative: f64,
    /// Error of moments and shear forces over the whole panel, as a part of them, weighed by energy.
    pub fields: f64,
    /// No mesh with more unknowns than about this is solved.
    pub most_unknowns: usize,
}

impl Default for Accuracy {
    fn default() -> Self {
        Self {
            relative: 0.005,
            fields: 0.1,
            most_unknowns: 60_000,
        }
    }
}

/// Triangles of the first mesh, about: panel area over half the square of its size.
const FIRST_TRIANGLES: f64 = 150.0;
/// Share of all errors whose triangles are divided in each pass (W. Dörfler's marking).
const MARKED_SHARE: f64 = 0.5;
/// About how many times more unknowns the next mesh may have.
const GROWTH: usize = 2;
/// Safety factor on the step to the limit that the last two meshes foretell (P. J. Roache's grid convergence index, the
/// figure for a known order).
const STEP_SAFETY: f64 = 1.25;
/// Power of the number of unknowns with which the error falls: 2 for quadratic triangles divided where it counts, of which
/// 1.5 is believed.
const RATE: f64 = 1.5;
/// Triangles whose longest side is shorter than this part of the panel's extent are left whole: half a millimetre on a
/// transom, far less than its thickness.
const SMALLEST_SIDE: f64 = 2e-4;

/// One mesh of the sequence.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Level {
    pub nodes: usize,
    pub unknowns: usize,
    /// Largest deflection in size, m.
    pub deflection: f64,
    /// Half the work of the loads, J.
    pub energy: f64,
    /// What the jumps of the section forces between triangles may hide of `deflection`, m.
    pub missing: f64,
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
    /// Estimated error of moments and shear forces over the whole panel, as a part of them, weighed by energy. Beside
    /// kinks and patch edges it is larger.
    pub field_error: f64,
    /// Whether both errors are within what was asked.
    pub converged: bool,
    pub levels: Vec<Level>,
    /// Highest utilisation; beside a point load, a kink or a held corner it grows with the mesh.
    pub weakest: Option<Utilisation>,
}

impl Panel {
    /// Solves for one set of loads, with meshes ever finer where the section forces jump, until the largest deflection is within `accuracy.relative`.
    ///
    /// Errors: [`PanelError`]; an accuracy that the unknowns allowed cannot reach is no error, see [`Solution::converged`].
    pub fn solve(&self, loads: &[Load], accuracy: Accuracy) -> Result<Solution, PanelError> {
        self.check()?;
        load::check(self, loads)?;
        let arrangement = arrange(self)?;
        let sections = self.sections();
        let stiffness: Vec<PlateStiffness> = sections.iter().map(|s| s.stiffness).collect();
        let (mut mesh, size) = self.first_mesh(&arrangement)?;
        let smallest = SMALLEST_SIDE * outline::extent(&self.outline);
        let mut levels = Vec::new();
        loop {
            let holds = holds(self, &arrangement, &mesh)?;
            let forces = load::nodal_forces(&mesh, size, loads)?;
            let system = System::new(&mesh, &stiffness, &holds)?;
            let values = system.solve(&forces.iter().map(|f| [*f, 0.0, 0.0]).collect::<Vec<_>>());
            if values.iter().flatten().any(|v| !v.is_finite()) {
                return Err(PanelError::Factor {
                    reason: "the deflections are not finite".to_string(),
                });
            }
            let corners = Corners::new(&mesh, &arrangement);
            let fields = Fields::new(&mesh, &corners, &stiffness, &system, &values);
            let peak = Peak::find(&mesh, &values);
            // A unit load where the deflection is largest tells how much each triangle's error counts there.
            let mut unit = vec![[0.0; 3]; values.len()];
            for (node, share) in mesh.triangles[peak.triangle].iter().zip(shape(peak.within)) {
                unit[*node as usize][0] += share;
            }
            let dual = Fields::new(&mesh, &corners, &stiffness, &system, &system.solve(&unit));
            let mut work = recover::error_work(&mesh, &corners, &stiffness, [&fields, &dual]);
            levels.push(Level {
                nodes: mesh.nodes.len(),
                unknowns: system.size(),
                deflection: peak.deflection.abs(),
                energy: 0.5
                    * values
                        .iter()
                        .zip(&forces)
                        .map(|(v, f)| v[0] * f)
                        .sum::<f64>(),
                missing: work.iter().map(|v| v.abs()).sum(),
            });
            let error = error_of(&levels);
            let energy = recover::error_work(&mesh, &corners, &stiffness, [&fields, &fields]);
            let field_error = match levels.last() {
                Some(level) if level.energy > 0.0 => {
                    (energy.iter().sum::<f64>() / (2.0 * level.energy)).sqrt()
                }
                _ => 0.0,
            };
            let done = error <= accuracy.relative && field_error <= accuracy.fields;
            // While the fields are too rough, half of the weight goes to them; then all to the largest deflection.
            let sums = [&work, &energy].map(|v| {
                v.iter()
                    .map(|w| w.abs())
                    .sum::<f64>()
                    .max(f64::MIN_POSITIVE)
            });
            let rough = if field_error > accuracy.fields {
                1.0 / sums[1]
            } else {
                0.0
            };
            for (t, w) in work.iter_mut().enumerate() {
                let weight = w.abs() / sums[0] + rough * energy[t];
                *w = if mesh.longest_side(t) < smallest {
                    0.0
                } else {
                    weight
                };
            }
            let marked = heaviest(&work);
            if done || marked.is_empty() || GROWTH * system.size() > accuracy.most_unknowns {
                let section_forces = fields.section_forces(&corners);
                let values =
                    reaction::polished(&system, &mesh, &stiffness, &holds, &forces, values);
                return Ok(Solution {
                    deflection: values.iter().map(|v| v[0]).collect(),
                    rotation: values.iter().map(|v| [v[1], v[2]]).collect(),
                    reactions: reaction::reactions(&mesh, &stiffness, &holds, &forces, &values),
                    load: reaction::of_forces(&mesh, &forces),
                    largest_deflection: peak.deflection,
                    largest_at: peak.at(&mesh),
                    error,
                    field_error,
                    converged: done,
                    levels,
                    weakest: recover::weakest(&mesh, &sections, &section_forces),
                    forces: section_forces,
                    mesh,
                });
            }
            mesh = refine::divide(&mesh, &marked);
        }
    }

    /// The panel's own section, then its regions'.
    pub(super) fn sections(&self) -> Vec<&Section> {
        std::iter::once(&self.section)
            .chain(self.regions.iter().map(|r| &r.section))
            .collect()
    }

    pub(super) fn check(&self) -> Result<(), PanelError> {
        if self.edges.len() != self.outline.len() {
            return Err(PanelError::Outline {
                corners: self.outline.len(),
                supports: self.edges.len(),
            });
        }
        outline::check(&self.outline)?;
        self.sections()
            .iter()
            .try_for_each(|s| s.stiffness.check())?;
        for line in &self.lines {
            let (what, values) = match line.kind {
                LineKind::Supported | LineKind::Clamped => continue,
                LineKind::Elastic { stiffness } => ("the stiffness of a line", vec![stiffness]),
                LineKind::Beam { bending, torsion } => {
                    ("the stiffness of a beam", vec![bending, torsion])
                }
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

    pub(super) fn first_mesh(&self, arrangement: &Arrangement) -> Result<(Mesh, f64), PanelError> {
        let extent = outline::extent(&self.outline);
        // A very long strip gets a mesh no coarser than its own width asks for.
        let size = (2.0 * outline::area(&self.outline).abs() / FIRST_TRIANGLES)
            .sqrt()
            .max(extent / 500.0);
        Ok((mesh::triangulate(self, arrangement, size)?, size))
    }
}

/// Where the deflection is largest in size.
pub(super) struct Peak {
    triangle: usize,
    within: [f64; 3],
    pub(super) deflection: f64,
}

/// Steps to a side in which the triangles about the largest node are searched.
const SEARCH_STEPS: usize = 8;

impl Peak {
    pub(super) fn find(mesh: &Mesh, values: &[[f64; 3]]) -> Self {
        let largest = (0..values.len())
            .max_by(|&a, &b| values[a][0].abs().total_cmp(&values[b][0].abs()))
            .unwrap_or(0) as u32;
        let mut peak = Self {
            triangle: 0,
            within: [1.0, 0.0, 0.0],
            deflection: 0.0,
        };
        for t in (0..mesh.triangles.len()).filter(|&t| mesh.triangles[t].contains(&largest)) {
            let w = mesh.triangles[t].map(|n| values[n as usize][0]);
            for i in 0..=SEARCH_STEPS {
                for j in 0..=SEARCH_STEPS - i {
                    let [a, b] = [i, j].map(|k| k as f64 / SEARCH_STEPS as f64);
                    let within = [1.0 - a - b, a, b];
                    let deflection = shape(within).iter().zip(w).map(|(s, w)| s * w).sum::<f64>();
                    if deflection.abs() >= peak.deflection.abs() {
                        peak = Self {
                            triangle: t,
                            within,
                            deflection,
                        };
                    }
                }
            }
        }
        peak
    }

    pub(super) fn at(&self, mesh: &Mesh) -> Point {
        let corners = mesh.corners(self.triangle);
        [0, 1].map(|k| (0..3).map(|i| self.within[i] * corners[i][k]).sum())
    }
}

/// Estimated relative error of the last level's deflection: the greater of what the jumps and what the last step say.
fn error_of(levels: &[Level]) -> f64 {
    let [before @ .., last] = levels else {
        return f64::INFINITY;
    };
    if last.deflection == 0.0 {
        return 0.0;
    }
    let Some(before) = before.last() else {
        return f64::INFINITY;
    };
    let gain = (last.unknowns as f64 / before.unknowns as f64).powf(RATE) - 1.0;
    let step =
        STEP_SAFETY * (last.deflection - before.deflection).abs() / last.deflection / gain.max(0.1);
    // The jumps say about twice the true error, by the transoms that were compared with meshes far finer.
    let jumps = last.missing / last.deflection;
    step.max(jumps)
}

/// The fewest triangles that hold [`MARKED_SHARE`] of all weights.
fn heaviest(weights: &[f64]) -> Vec<usize> {
    let mut order: Vec<usize> = (0..weights.len()).collect();
    order.sort_unstable_by(|&a, &b| weights[b].total_cmp(&weights[a]));
    let goal = MARKED_SHARE * weights.iter().sum::<f64>();
    let mut sum = 0.0;
    order
        .into_iter()
        .take_while(|&t| {
            let short = sum < goal;
            sum += weights[t];
            short
        })
        .collect()
}
