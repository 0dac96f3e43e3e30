//! Solving a panel to a stated accuracy.

use super::error::PanelError;
use super::load::{self, Load};
use super::mesh::Mesh;
use super::model::{Panel, Point};
use super::outline;
use super::reaction::{self, Reaction, Resultant};
use super::ready::{Bending, Ready, Stage};
use super::recover::{self, Fields, SectionForces, Utilisation};
use super::reference::shape;
use super::refine;

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

/// Share of all errors whose triangles are divided in each pass (W. Dörfler's marking).
const MARKED_SHARE: f64 = 0.6;
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
    /// Solves for one set of loads, with meshes ever finer where the section forces jump, until the largest deflection is
    /// within `accuracy.relative`.
    ///
    /// Errors: [`PanelError`]; an accuracy that the unknowns allowed cannot reach is no error, see [`Solution::converged`].
    pub fn solve(&self, loads: &[Load], accuracy: Accuracy) -> Result<Solution, PanelError> {
        self.ready()?.solve(loads, accuracy)
    }
}

impl Ready<'_> {
    /// As [`Panel::solve`], which it spares the first mesh.
    ///
    /// Errors: as there.
    pub fn solve(&self, loads: &[Load], accuracy: Accuracy) -> Result<Solution, PanelError> {
        load::check(self.panel, loads)?;
        let smallest = SMALLEST_SIDE * outline::extent(&self.panel.outline);
        let mut levels = Vec::new();
        let mut finer: Option<Stage> = None;
        loop {
            let stage = finer.as_ref().unwrap_or(&self.first);
            let bent = self.bend(stage, loads)?;
            let errors = Errors::of(self, stage, &bent);
            levels.push(errors.level);
            let error = error_of(&levels);
            let done = error <= accuracy.relative && errors.fields <= accuracy.fields;
            let marked =
                heaviest(&errors.weights(accuracy, |t| stage.mesh.longest_side(t) < smallest));
            if done || marked.is_empty() || GROWTH * stage.system.size() > accuracy.most_unknowns {
                return Ok(self.solution(stage, bent, error, errors.fields, done, levels));
            }
            finer = Some(self.stage(refine::divide(&stage.mesh, &marked))?);
        }
    }

    fn solution(
        &self,
        stage: &Stage,
        bent: Bending,
        error: f64,
        field_error: f64,
        converged: bool,
        levels: Vec<Level>,
    ) -> Solution {
        let Stage {
            mesh,
            holds,
            system,
            corners,
        } = stage;
        let section_forces = bent.fields.section_forces(corners);
        let values = reaction::polished(
            system,
            mesh,
            &self.stiffness,
            holds,
            &bent.forces,
            bent.values,
        );
        Solution {
            deflection: values.iter().map(|v| v[0]).collect(),
            rotation: values.iter().map(|v| [v[1], v[2]]).collect(),
            reactions: reaction::reactions(mesh, &self.stiffness, holds, &bent.forces, &values),
            load: reaction::of_forces(mesh, &bent.forces),
            largest_deflection: bent.peak.deflection,
            largest_at: bent.peak.at(mesh),
            error,
            field_error,
            converged,
            levels,
            weakest: recover::weakest(mesh, &self.panel.sections(), &section_forces),
            forces: section_forces,
            mesh: mesh.clone(),
        }
    }
}

/// What the jumps of the section forces between triangles tell of a mesh.
struct Errors {
    level: Level,
    /// [`Solution::field_error`].
    fields: f64,
    /// What each triangle may hide of the largest deflection, m.
    work: Vec<f64>,
    /// The energy of each triangle's error, J.
    energy: Vec<f64>,
}

impl Errors {
    fn of(ready: &Ready, stage: &Stage, bent: &Bending) -> Self {
        let Stage {
            mesh,
            system,
            corners,
            ..
        } = stage;
        let stiffness = &ready.stiffness;
        // A unit load where the deflection is largest tells how much each triangle's error counts there.
        let mut unit = vec![[0.0; 3]; bent.values.len()];
        for (node, share) in mesh.triangles[bent.peak.triangle]
            .iter()
            .zip(shape(bent.peak.within))
        {
            unit[*node as usize][0] += share;
        }
        let dual = Fields::new(mesh, corners, stiffness, system, &system.solve(&unit));
        let work = recover::error_work(mesh, corners, stiffness, [&bent.fields, &dual]);
        let energy = recover::error_work(mesh, corners, stiffness, [&bent.fields, &bent.fields]);
        let level = Level {
            nodes: mesh.nodes.len(),
            unknowns: system.size(),
            deflection: bent.peak.deflection.abs(),
            energy: 0.5
                * bent
                    .values
                    .iter()
                    .zip(&bent.forces)
                    .map(|(v, f)| v[0] * f)
                    .sum::<f64>(),
            missing: work.iter().map(|v| v.abs()).sum(),
        };
        let fields = if level.energy > 0.0 {
            (energy.iter().sum::<f64>() / (2.0 * level.energy)).sqrt()
        } else {
            0.0
        };
        Self {
            level,
            fields,
            work,
            energy,
        }
    }

    /// What dividing each triangle is worth. While the fields are too rough, half of the weight goes to them; then all to
    /// the largest deflection.
    fn weights(&self, accuracy: Accuracy, whole: impl Fn(usize) -> bool) -> Vec<f64> {
        let total = |of: &[f64]| {
            of.iter()
                .map(|w| w.abs())
                .sum::<f64>()
                .max(f64::MIN_POSITIVE)
        };
        let rough = if self.fields > accuracy.fields {
            1.0 / total(&self.energy)
        } else {
            0.0
        };
        let work = total(&self.work);
        (0..self.work.len())
            .map(|t| {
                if whole(t) {
                    0.0
                } else {
                    self.work[t].abs() / work + rough * self.energy[t]
                }
            })
            .collect()
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
