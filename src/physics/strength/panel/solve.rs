//! Solving a panel to a stated accuracy.

use super::error::PanelError;
use super::estimate::{Accuracy, Errors, Level, error_of, moment_errors_of};
use super::load::Load;
use super::mesh::Mesh;
use super::model::Panel;
use super::outline;
use super::plate::{Bending, Plate, Stage};
use super::reaction::{self, Reaction, Resultant};
use super::recover::{self, SectionForces, Utilisation};
use super::refine;
use super::vector::{Point, distance_to_triangle};

/// Share of all errors whose triangles are divided in each pass (W. Dörfler's marking).
const MARKED_SHARE: f64 = 0.6;
/// About how many times more unknowns the next mesh may have.
const GROWTH: usize = 2;
/// A mesh of more triangles is made no finer near places alone.
const MOST_TRIANGLES: usize = 10_000;
/// Triangles whose longest side is shorter than this part of the panel's extent are left whole: half a millimetre on a
/// transom, far less than its thickness.
const SMALLEST_SIDE: f64 = 2e-4;

/// A solved panel, on the finest mesh.
#[derive(Debug, Clone)]
pub struct Solution {
    /// The mesh that all of it is told on.
    pub mesh: Mesh,
    /// At each node, m.
    pub deflection: Vec<f64>,
    /// `βy, βz` at each node: minus the slopes, but for shear.
    pub rotation: Vec<[f64; 2]>,
    /// Moments and shear forces at the nodes.
    pub forces: Vec<SectionForces>,
    /// One for each part that holds it: edges, then lines, then beds.
    pub reactions: Vec<Reaction>,
    /// Resultant of the loads.
    pub load: Resultant,
    /// The deflection that is largest in size, with its sign, m.
    pub largest_deflection: f64,
    /// Where that is, `[y, z]`, m.
    pub largest_at: Point,
    /// Estimated error of `largest_deflection`, as a part of it.
    pub error: f64,
    /// Estimated error of moments and shear forces over the whole panel, as a part of them, weighed by energy. Beside
    /// kinks and patch edges it is larger.
    pub field_error: f64,
    /// Estimated error of the largest moment of each kind (across, up, twisting), as a part of it. Beside a point load, a kink
    /// or a held corner the moment has no limit, and this does not fall.
    pub moment_errors: [f64; 3],
    /// Whether the errors of deflection and fields are within what was asked.
    pub converged: bool,
    /// The meshes by which the errors were estimated, coarsest first.
    pub levels: Vec<Level>,
    /// Highest utilisation; beside a point load, a kink or a held corner it grows with the mesh.
    pub weakest: Option<Utilisation>,
}

/// What is asked of a mesh that several sets of loads share.
#[derive(Debug, Clone, Default)]
pub struct Wanted {
    /// Sets of loads by index, and how good each must be.
    pub sets: Vec<(usize, Accuracy)>,
    /// Where stress is read: a place and a length (m) about it within which no triangle's side is to be longer.
    pub places: Vec<(Point, f64)>,
}

/// Several sets of loads on one mesh.
pub struct Solved<'a> {
    plate: Plate<'a>,
    stage: Stage,
    sets: Vec<Set>,
}

/// One of them.
struct Set {
    bent: Bending,
    levels: Vec<Level>,
    /// Of the largest deflection, and of the fields; nothing is known of a set that was never asked for.
    errors: [f64; 2],
    /// Whether both were within what was asked for.
    converged: bool,
}

impl Set {
    fn new(bent: Bending) -> Self {
        Self { bent, levels: Vec::new(), errors: [f64::INFINITY; 2], converged: false }
    }
}

impl Panel {
    /// Solves for one set of loads, with meshes ever finer where the section forces jump, until the largest deflection and
    /// the fields are within `accuracy`.
    ///
    /// Errors: [`PanelError`]; an accuracy that the unknowns allowed cannot reach is no error, see [`Solution::converged`].
    pub fn solve(&self, loads: &[Load], accuracy: Accuracy) -> Result<Solution, PanelError> {
        let solved = self.solve_all(&[loads], |_| Wanted { sets: vec![(0, accuracy)], places: Vec::new() })?;
        Ok(solved.solution(0))
    }

    /// Solves for each of several sets of loads by itself, all on the same mesh. `wanted` sees them all on a mesh and says what
    /// it wants better; the mesh is made finer for that, and it is asked again, until it wants nothing more.
    ///
    /// Errors: as [`Panel::solve`].
    pub fn solve_all<'a, L: AsRef<[Load]>>(
        &'a self,
        loads: &[L],
        mut wanted: impl FnMut(&Solved) -> Wanted,
    ) -> Result<Solved<'a>, PanelError> {
        let (plate, mesh) = Plate::of(self)?;
        self.check_loads(loads)?;
        let stage = plate.stage(mesh)?;
        let bent = plate.bend(&stage, loads.iter().map(AsRef::as_ref))?;
        let sets = bent.into_iter().map(Set::new).collect();
        let mut solved = Solved { plate, stage, sets };
        let mut asked: Vec<(usize, Accuracy)> = Vec::new();
        loop {
            let Wanted { sets, places } = wanted(&solved);
            let before = asked.len();
            for (set, accuracy) in sets {
                if !asked.iter().any(|(other, _)| *other == set) {
                    asked.push((set, accuracy));
                }
            }
            let coarse = coarse_near(&solved.stage.mesh, &places);
            if asked.len() == before && coarse.is_empty() {
                return Ok(solved);
            }
            let (seen, others): (Vec<usize>, Vec<usize>) =
                (0..loads.len()).partition(|set| asked.iter().any(|(other, _)| other == set));
            let mut marked = coarse;
            loop {
                marked.extend(solved.wanting(&asked));
                if marked.is_empty() || solved.is_large(&asked) {
                    break;
                }
                marked.sort_unstable();
                marked.dedup();
                let mut finer = refine::divide(&solved.stage.mesh, &marked);
                // Where it must be fine whatever comes, nothing is solved in between.
                loop {
                    marked = coarse_near(&finer, &places);
                    if marked.is_empty() || finer.triangles.len() > MOST_TRIANGLES {
                        break;
                    }
                    finer = refine::divide(&finer, &marked);
                }
                solved.stage = solved.plate.stage(finer)?;
                solved.bend(loads, &seen)?;
            }
            solved.bend(loads, &others)?;
            if solved.is_large(&asked) {
                return Ok(solved);
            }
        }
    }
}

impl Solved<'_> {
    /// Bends some of the sets on the mesh as it is now.
    fn bend<L: AsRef<[Load]>>(&mut self, loads: &[L], some: &[usize]) -> Result<(), PanelError> {
        let bent = self.plate.bend(&self.stage, some.iter().map(|set| loads[*set].as_ref()))?;
        for (set, bent) in some.iter().zip(bent) {
            self.sets[*set].bent = bent;
        }
        Ok(())
    }

    /// Whether no finer mesh is allowed.
    fn is_large(&self, asked: &[(usize, Accuracy)]) -> bool {
        let allowed = asked.iter().map(|(_, accuracy)| accuracy.most_unknowns);
        GROWTH * self.stage.system.size() > allowed.max().unwrap_or(0)
    }

    /// Estimates the errors of the sets asked for, and says which triangles are to be divided for those that are not good
    /// enough.
    fn wanting(&mut self, asked: &[(usize, Accuracy)]) -> Vec<usize> {
        let Self { plate, stage, sets } = self;
        let bent: Vec<&Bending> = asked.iter().map(|(set, _)| &sets[*set].bent).collect();
        let errors = Errors::of(plate, stage, &bent);
        let mut weights = vec![0.0; stage.mesh.triangles.len()];
        for ((set, accuracy), seen) in asked.iter().zip(errors) {
            let set = &mut sets[*set];
            // Those asked for before are seen once more on the same mesh.
            let unknowns = seen.level.unknowns;
            if set.levels.last().is_none_or(|last| last.unknowns != unknowns) {
                set.levels.push(seen.level);
            }
            set.errors = [error_of(&set.levels), seen.fields];
            let [error, fields] = set.errors;
            set.converged = error <= accuracy.relative && fields <= accuracy.fields;
            seen.weigh(error, *accuracy, &mut weights);
        }
        if asked.iter().all(|(set, _)| sets[*set].converged) {
            return Vec::new();
        }
        let smallest = SMALLEST_SIDE * outline::extent(&plate.panel.outline);
        for (t, weight) in weights.iter_mut().enumerate() {
            if stage.mesh.longest_side(t) < smallest {
                *weight = 0.0;
            }
        }
        heaviest(&weights)
    }

    /// The deflection of a set of loads that is largest in size, with its sign, m.
    pub fn largest_deflection(&self, set: usize) -> f64 {
        self.sets[set].bent.peak.deflection
    }

    /// Section forces of a set of loads, each with its place, m.
    pub fn section_forces(&self, set: usize) -> impl Iterator<Item = (Point, SectionForces)> {
        let Stage { mesh, corners, .. } = &self.stage;
        self.sets[set]
            .bent
            .fields
            .section_forces(corners)
            .into_iter()
            .map(|force| (mesh.nodes[force.node as usize], force))
    }

    /// All of one set of loads.
    pub fn solution(&self, set: usize) -> Solution {
        let Self { plate, stage, sets } = self;
        let Set { bent, levels, errors: [error, field_error], converged } = &sets[set];
        let Stage { mesh, holds, system, corners } = stage;
        let section_forces = bent.fields.section_forces(corners);
        let values = reaction::polished(system, mesh, &plate.stiffness, holds, &bent.forces, bent.values.clone());
        Solution {
            deflection: values.iter().map(|v| v[0]).collect(),
            rotation: values.iter().map(|v| [v[1], v[2]]).collect(),
            reactions: reaction::reactions(mesh, &plate.stiffness, holds, &bent.forces, &values),
            load: reaction::of_forces(mesh, &bent.forces),
            largest_deflection: bent.peak.deflection,
            largest_at: bent.peak.at(mesh),
            error: *error,
            field_error: *field_error,
            moment_errors: moment_errors_of(levels),
            converged: *converged,
            levels: levels.clone(),
            weakest: recover::weakest(mesh, &plate.panel.sections(), &section_forces),
            forces: section_forces,
            mesh: Mesh::clone(mesh),
        }
    }
}

/// Triangles near these places that are larger than is wanted there.
fn coarse_near(mesh: &Mesh, places: &[(Point, f64)]) -> Vec<usize> {
    (0..mesh.triangles.len())
        .filter(|&t| {
            let side = mesh.longest_side(t);
            places.iter().any(|(at, reach)| side > *reach && distance_to_triangle(mesh.corners(t), *at) <= *reach)
        })
        .collect()
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
