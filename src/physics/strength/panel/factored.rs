//! A panel meshed and factored once, for any number of loads: what it does under each, on one mesh that no load changes.
//!
//! A moment is told as its mean about a place, weighed by a tent that falls to nothing at a stated width away. A plate's
//! theory knows no end of the moments at a re-entrant corner or beside a pressed edge; their mean over a width has one, and
//! finer meshes agree on it.

use super::assembly::triangle_values;
use super::element;
use super::error::PanelError;
use super::grid::{Shape, along_edges};
use super::load::{self, Load, Locator};
use super::mesh::{Mesh, double_area};
use super::model::{Bed, EdgeSupport, Panel, PlateStiffness, Point};
use super::peak::Peak;
use super::plate::{Plate, Stage};
use super::reaction::{self, Reaction, Resultant, SupportPart};
use super::recover::{Fields, SectionForces};
use super::reference::{RULE, shape};
use super::vector::{distance, lerp};

/// How fine the mesh is, and over what width moments are told, m.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fineness {
    /// Sides of triangles, about.
    pub size: f64,
    /// Width of the mean.
    pub width: f64,
}

/// A panel ready for loads.
pub struct Factored {
    panel: Panel,
    stage: Stage,
    stiffness: Vec<PlateStiffness>,
    size: f64,
    means: Vec<Mean>,
    rests: Vec<Rest>,
}

/// A support that gives, with places along it.
struct Rest {
    part: SupportPart,
    /// N/m per metre.
    stiffness: f64,
    /// From place to place, m.
    step: f64,
    places: Vec<(Point, Within)>,
}

/// A place on the mesh.
struct Within {
    triangle: usize,
    /// Barycentric.
    within: [f64; 3],
}

impl Within {
    /// The deflection there, m.
    fn value(&self, mesh: &Mesh, loaded: &Loaded) -> f64 {
        let nodes = mesh.triangles[self.triangle];
        shape(self.within).into_iter().zip(nodes).map(|(s, node)| s * loaded.values[node as usize][0]).sum()
    }
}

/// A place with the parts that the moments about it have in their mean.
struct Mean {
    at: Point,
    /// Triangles, with the parts that each of their three samples has.
    parts: Vec<(u32, [f64; 3])>,
}

/// The mean moments about a place: `M_y, M_z, M_yz`, N·m per metre; positive stretches the face at positive x.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MeanMoment {
    pub at: Point,
    pub moment: [f64; 3],
}

/// What one set of loads does.
#[derive(Debug, Clone)]
pub struct Loaded {
    /// Mean moments, in the order of their places.
    pub moments: Vec<MeanMoment>,
    /// The deflection that is largest in size, with its sign, m.
    pub largest_deflection: f64,
    pub largest_at: Point,
    /// `w, βy, βz` at each node.
    values: Vec<[f64; 3]>,
    /// On each node, N.
    forces: Vec<f64>,
}

/// Force (N/m) with which a support pushes the panel, at a place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Push {
    pub part: SupportPart,
    pub at: Point,
    pub per_length: f64,
}

impl std::fmt::Debug for Factored {
    fn fmt(&self, f: &mut std::fmt::Formatter) -> std::fmt::Result {
        write!(f, "Factored({} unknowns)", self.unknowns())
    }
}

impl Panel {
    /// Meshes and factors a panel of a transom's shape; its outline is the shape's, its supports are edges and beds.
    ///
    /// Errors: a panel that is no plate, or that nothing holds.
    pub fn factored(self, shape: Shape, fineness: Fineness) -> Result<Factored, PanelError> {
        let (mesh, arrangement) = along_edges(&self, shape.mesh(fineness.size))?;
        let plate = Plate::on(&self, arrangement, fineness.size)?;
        let stage = plate.stage(mesh)?;
        let stiffness = plate.stiffness;
        let means = means(&stage, fineness.width);
        let rests = rests(&self, &stage.mesh, fineness);
        Ok(Factored { panel: self, stage, stiffness, size: fineness.size, means, rests })
    }
}

/// Places along a support, whatever its length: so that none comes or goes with it.
const STEPS: usize = 64;

/// The supports that give, with places along them.
fn rests(panel: &Panel, mesh: &Mesh, fineness: Fineness) -> Vec<Rest> {
    let locator = Locator::new(mesh, fineness.size);
    let count = panel.outline.len();
    let edges = panel.edges.iter().enumerate().filter_map(|(i, edge)| match edge {
        EdgeSupport::Elastic { deflection, .. } => {
            Some((SupportPart::Edge(i), panel.outline[i], panel.outline[(i + 1) % count], *deflection))
        }
        _ => None,
    });
    let beds = panel.beds.iter().enumerate();
    let beds = beds.map(|(i, Bed { from, to, stiffness, .. })| (SupportPart::Bed(i), *from, *to, *stiffness));
    edges
        .chain(beds)
        .map(|(part, from, to, stiffness)| {
            let length = distance(from, to);
            let places = (0..=STEPS)
                .filter_map(|i| {
                    let at = lerp(from, to, i as f64 / STEPS as f64);
                    let (triangle, within) = locator.find(at)?;
                    Some((at, Within { triangle, within }))
                })
                .collect();
            Rest { part, stiffness, step: length / STEPS as f64, places }
        })
        .filter(|rest: &Rest| !rest.places.is_empty())
        .collect()
}

/// A triangle's points of integration: place, area (m²), and what each of the three samples has of the moment there, which is linear.
type Points = [(Point, f64, [f64; 3]); RULE.len()];

fn points(mesh: &Mesh) -> Vec<Points> {
    (0..mesh.triangles.len())
        .map(|t| {
            let corners = mesh.corners(t);
            let area = 0.5 * double_area(corners);
            RULE.map(|(n, weight)| {
                let at = [0, 1].map(|k| (0..3).map(|i| n[i] * corners[i][k]).sum());
                // Samples stand at 2/3, 1/6, 1/6.
                (at, weight * area, n.map(|own| 2.0 * own - 1.0 / 3.0))
            })
        })
        .collect()
}

/// Means about every node of the mesh.
fn means(stage: &Stage, width: f64) -> Vec<Mean> {
    let mesh = &stage.mesh;
    let points = points(mesh);
    // Sorted by their least y, those about a place are found without looking at all.
    let reach = |t: u32, k: usize| mesh.corners(t as usize).map(|p| p[k]);
    let least = |t: u32, k: usize| reach(t, k).into_iter().fold(f64::INFINITY, f64::min);
    let most = |t: u32, k: usize| reach(t, k).into_iter().fold(f64::NEG_INFINITY, f64::max);
    let mut order: Vec<(f64, u32)> = (0..points.len() as u32).map(|t| (least(t, 0), t)).collect();
    order.sort_unstable_by(|a, b| a.0.total_cmp(&b.0));
    let widest = order.iter().map(|(low, t)| most(*t, 0) - low).fold(0.0, f64::max);
    mesh.nodes
        .iter()
        .map(|&at| {
            let from = order.partition_point(|(low, _)| low + widest <= at[0] - width);
            let mut parts: Vec<(u32, [f64; 3])> = Vec::new();
            let mut sum = 0.0;
            for &(_, t) in order[from..].iter().take_while(|(low, _)| *low < at[0] + width) {
                if least(t, 1) >= at[1] + width || most(t, 1) <= at[1] - width {
                    continue;
                }
                let mut own = [0.0; 3];
                for (place, area, samples) in &points[t as usize] {
                    let tent = |k: usize| (1.0 - (place[k] - at[k]).abs() / width).max(0.0);
                    let part = tent(0) * tent(1) * area;
                    sum += part;
                    (0..3).for_each(|i| own[i] += part * samples[i]);
                }
                parts.push((t, own));
            }
            // Nothing lies so near only where triangles are far larger than the width.
            parts.iter_mut().for_each(|(_, own)| *own = own.map(|part| part / f64::max(sum, f64::MIN_POSITIVE)));
            Mean { at, parts }
        })
        .collect()
}

impl Factored {
    /// The panel.
    pub fn panel(&self) -> &Panel {
        &self.panel
    }

    /// Number of unknowns.
    pub fn unknowns(&self) -> usize {
        self.stage.system.size()
    }

    /// The mesh.
    pub fn mesh(&self) -> &Mesh {
        &self.stage.mesh
    }

    /// What each of several sets of loads does.
    ///
    /// Errors: a load off the panel; deflections that are not finite.
    pub fn bend<L: AsRef<[Load]>>(&self, sets: &[L]) -> Result<Vec<Loaded>, PanelError> {
        self.panel.check_loads(sets)?;
        let Stage { mesh, system, .. } = &self.stage;
        let forces = load::nodal_forces_of(mesh, self.size, sets)?;
        let values = system.solve_all(&forces);
        if values.iter().flatten().flatten().any(|v| !v.is_finite()) {
            return Err(PanelError::Factor { reason: "the deflections are not finite".to_string() });
        }
        Ok(forces.into_iter().zip(values).map(|(forces, values)| self.loaded(forces, values)).collect())
    }

    fn loaded(&self, forces: Vec<f64>, values: Vec<[f64; 3]>) -> Loaded {
        let Stage { mesh, system, .. } = &self.stage;
        let sampled: Vec<[[f64; 3]; 3]> = (0..mesh.triangles.len())
            .map(|t| element::moments(&system.samplers[t], &triangle_values(mesh.triangles[t], &values)))
            .collect();
        let moments = self
            .means
            .iter()
            .map(|mean| {
                let mut moment = [0.0; 3];
                for (t, parts) in &mean.parts {
                    for (part, sample) in parts.iter().zip(&sampled[*t as usize]) {
                        (0..3).for_each(|k| moment[k] += part * sample[k]);
                    }
                }
                MeanMoment { at: mean.at, moment }
            })
            .collect();
        let peak = Peak::find(mesh, &values);
        Loaded { moments, largest_deflection: peak.deflection, largest_at: peak.at(mesh), values, forces }
    }

    /// Forces with which the supports push, along each of them, as means over a tent that falls to nothing `width` (m) away.
    pub fn pushes(&self, loaded: &Loaded, width: f64) -> Vec<Push> {
        let mut all = Vec::new();
        for rest in &self.rests {
            let given: Vec<f64> = rest.places.iter().map(|(_, place)| place.value(self.mesh(), loaded)).collect();
            let last = given.len() - 1;
            let reach = (width / rest.step).ceil() as usize;
            for (i, (at, _)) in rest.places.iter().enumerate() {
                let (mut sum, mut whole) = (0.0, 0.0);
                for (j, value) in given.iter().enumerate().take(i + reach + 1).skip(i.saturating_sub(reach)) {
                    let end = if j == 0 || j == last { 0.5 } else { 1.0 };
                    let tent = end * (1.0 - i.abs_diff(j) as f64 * rest.step / width).max(0.0);
                    sum += tent * value;
                    whole += tent;
                }
                all.push(Push { part: rest.part, at: *at, per_length: -rest.stiffness * sum / whole });
            }
        }
        all
    }

    /// Deflection (m) at a place; `None` off the panel.
    pub fn deflection_at(&self, loaded: &Loaded, at: Point) -> Option<f64> {
        let (triangle, within) = Locator::new(self.mesh(), self.size).find(at)?;
        Some(Within { triangle, within }.value(self.mesh(), loaded))
    }

    /// Deflection of each node, m.
    pub fn deflections(&self, loaded: &Loaded) -> Vec<f64> {
        loaded.values.iter().map(|v| v[0]).collect()
    }

    /// The section forces at the nodes, as the drawings show them.
    pub fn section_forces(&self, loaded: &Loaded) -> Vec<SectionForces> {
        let Stage { mesh, system, corners, .. } = &self.stage;
        Fields::new(mesh, corners, system, &loaded.values).section_forces(corners)
    }

    /// What the supports give back, and the resultant of the loads.
    pub fn reactions(&self, loaded: &Loaded) -> (Vec<Reaction>, Resultant) {
        let Stage { mesh, system, holds, .. } = &self.stage;
        let values = reaction::polished(system, mesh, &self.stiffness, holds, &loaded.forces, loaded.values.clone());
        let reactions = reaction::reactions(mesh, &self.stiffness, holds, &loaded.forces, &values);
        (reactions, reaction::of_forces(mesh, &loaded.forces))
    }
}
