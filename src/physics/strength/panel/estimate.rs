//! How far a mesh's answer is off, and which triangles are to blame.

use super::plate::{Bending, Plate, Stage};
use super::recover::{self, Fields};
use super::reference::shape;

/// Safety factor on the step to the limit that the last two meshes foretell (P. J. Roache's grid convergence index, the
/// figure for a known order).
const STEP_SAFETY: f64 = 1.25;
/// Power of the number of unknowns with which the error falls: 2 for quadratic triangles divided where it counts, of which
/// 1.5 is believed.
const RATE: f64 = 1.5;

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
        Self { relative: 0.005, fields: 0.1, most_unknowns: 60_000 }
    }
}

/// One mesh of the sequence.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Level {
    /// Nodes of the mesh.
    pub nodes: usize,
    /// Deflections and rotations that no support holds.
    pub unknowns: usize,
    /// Largest deflection in size, m.
    pub deflection: f64,
    /// Half the work of the loads, J.
    pub energy: f64,
    /// What the jumps of the section forces between triangles may hide of `deflection`, m.
    pub missing: f64,
    /// The largest moment of each kind, in size, N·m per metre.
    pub moments: [f64; 3],
    /// How far the triangles about that place are from their common values, N·m per metre.
    pub jumps: [f64; 3],
}

/// What the jumps of the section forces between triangles tell of one set of loads on one mesh.
pub(super) struct Errors {
    pub level: Level,
    /// [`super::Solution::field_error`].
    pub fields: f64,
    /// What each triangle may hide of the largest deflection, m.
    work: Vec<f64>,
    /// The energy of each triangle's error, J.
    energy: Vec<f64>,
}

impl Errors {
    /// For each set of loads.
    pub(super) fn of(plate: &Plate, stage: &Stage, sets: &[&Bending]) -> Vec<Self> {
        let Stage { mesh, system, corners, .. } = stage;
        let stiffness = &plate.stiffness;
        // Sets often move the panel most at the same place: they share its unit load.
        let mut units: Vec<(&Bending, Fields)> = Vec::new();
        sets.iter()
            .map(|bent| {
                let known = units.iter().position(|(other, _)| other.peak.is_at(&bent.peak));
                let index = known.unwrap_or_else(|| {
                    // A unit load where the deflection is largest tells how much each triangle's error counts there.
                    let mut unit = vec![[0.0; 3]; bent.values.len()];
                    for (node, share) in mesh.triangles[bent.peak.triangle].iter().zip(shape(bent.peak.within)) {
                        unit[*node as usize][0] += share;
                    }
                    let values = system.solve(&unit);
                    units.push((*bent, Fields::new(mesh, corners, system, &values)));
                    units.len() - 1
                });
                let work = recover::error_work(mesh, corners, stiffness, [&bent.fields, &units[index].1]);
                let energy = recover::error_work(mesh, corners, stiffness, [&bent.fields, &bent.fields]);
                let (moments, jumps) = recover::largest_moments(corners, &bent.fields);
                let level = Level {
                    moments,
                    jumps,
                    nodes: mesh.nodes.len(),
                    unknowns: system.size(),
                    deflection: bent.peak.deflection.abs(),
                    energy: 0.5 * bent.values.iter().zip(&bent.forces).map(|(v, f)| v[0] * f).sum::<f64>(),
                    missing: work.iter().map(|v| v.abs()).sum(),
                };
                let fields =
                    if level.energy > 0.0 { (energy.iter().sum::<f64>() / (2.0 * level.energy)).sqrt() } else { 0.0 };
                Self { level, fields, work, energy }
            })
            .collect()
    }

    /// Adds each triangle's part of what `accuracy` allows, where this set of loads is not yet within it, to `weights` if
    /// it is more than other sets'.
    pub(super) fn weigh(&self, error: f64, accuracy: Accuracy, weights: &mut [f64]) {
        let part = |allowed: f64, wanted: bool| {
            if wanted && allowed > 0.0 { 1.0 / allowed } else { 0.0 }
        };
        let level = &self.level;
        let work = part(accuracy.relative * level.deflection, error > accuracy.relative);
        let energy = part(2.0 * level.energy * accuracy.fields * accuracy.fields, self.fields > accuracy.fields);
        for (weight, (w, e)) in weights.iter_mut().zip(self.work.iter().zip(&self.energy)) {
            *weight = weight.max(work * w.abs() + energy * e);
        }
    }
}

/// Estimated relative error of the last level's deflection: the greater of what the jumps and what the last step say.
pub(super) fn error_of(levels: &[Level]) -> f64 {
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
    let step = STEP_SAFETY * (last.deflection - before.deflection).abs() / last.deflection / gain.max(0.1);
    // The jumps say about twice the true error, by the transoms that were compared with meshes far finer.
    let jumps = last.missing / last.deflection;
    step.max(jumps)
}

/// Power of the number of unknowns with which the error of a moment is believed to fall: 1 for a smooth field, half of it where
/// the mesh is finer than elsewhere.
const MOMENT_RATE: f64 = 0.5;

/// Estimated relative error of the last level's largest moment of each kind: how far triangles there disagree, and what the
/// last step says is still to come.
pub(super) fn moment_errors_of(levels: &[Level]) -> [f64; 3] {
    let [.., before, last] = levels else {
        return [f64::INFINITY; 3];
    };
    let gain = (last.unknowns as f64 / before.unknowns as f64).powf(MOMENT_RATE) - 1.0;
    [0, 1, 2].map(|k| {
        let moment = last.moments[k];
        if moment == 0.0 {
            return 0.0;
        }
        (last.jumps[k] + (moment - before.moments[k]).abs() / gain.max(0.1)) / moment
    })
}
