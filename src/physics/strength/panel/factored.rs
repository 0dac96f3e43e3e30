//! A panel meshed and factored once, for any number of loads: what it does under each, on one mesh that no load changes.
//!
//! A moment is told as its mean about a place, weighed by a tent that falls to nothing at a stated width away. A plate's
//! theory knows no end of the moments at a re-entrant corner or beside a pressed edge; their mean over a width has one, and
//! finer meshes agree on it.

use std::sync::Arc;

use super::assembly::triangle_values;
use super::error::PanelError;
use super::layup::{Layup, PlyStress};
use super::load::{self, Load, Locator};
use super::mesh::Mesh;
use super::meshed::{MeanMoment, Meshed, means};
use super::model::{Bed, Panel};
use super::peak::Peak;
use super::plate::Stage;
use super::reaction::{self, Reaction, Resultant};
use super::recover::{Fields, SectionForces};
use super::reference::shape;
use super::stiffness::PlateStiffness;
use super::support::SupportPart;
use super::vector::{Point, distance, lerp};

/// A panel ready for loads.
pub struct Factored {
    panel: Panel,
    stage: Stage,
    stiffness: Vec<PlateStiffness>,
    size: f64,
    meshed: Arc<Meshed>,
    rests: Vec<Rest>,
}

/// A bed, with places along it.
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

/// A set of loads on the nodes of a mesh, N: the same for all panels on that.
pub type Pressed = Arc<[f64]>;

/// What one set of loads does.
#[derive(Debug, Clone)]
pub struct Loaded {
    /// The deflection that is largest in size, with its sign, m.
    pub largest_deflection: f64,
    /// Where that is, `[y, z]`, m.
    pub largest_at: Point,
    /// `w, βy, βz` at each node.
    values: Vec<[f64; 3]>,
    /// On each node, N.
    forces: Pressed,
}

/// Force with which a bed pushes the panel, at a place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Push {
    /// Which bed.
    pub part: SupportPart,
    /// On the bed's middle line, `[y, z]`, m.
    pub at: Point,
    /// N/m along that line; positive pushes along x.
    pub per_length: f64,
}

impl std::fmt::Debug for Factored {
    fn fmt(&self, f: &mut std::fmt::Formatter) -> std::fmt::Result {
        write!(f, "Factored({} unknowns)", self.unknowns())
    }
}

impl Panel {
    /// Makes what it shares on this mesh with panels that differ from it by their beds alone.
    ///
    /// Errors: a panel that is no plate.
    pub fn begin(&self, meshed: &Meshed) -> Result<(), PanelError> {
        meshed.bare(self).map(drop)
    }

    /// Factors a panel whose outline is the mesh's shape; its supports are edges and beds.
    ///
    /// Errors: a panel that is no plate, or that nothing holds.
    pub fn factored(self, meshed: &Arc<Meshed>) -> Result<Factored, PanelError> {
        let stage = meshed.bare(&self)?.on_beds(&self)?;
        let stiffness = self.sections().iter().map(|section| section.stiffness).collect();
        let size = meshed.fineness.size;
        let rests = rests(&self, &stage.mesh, size);
        Ok(Factored { panel: self, stage, stiffness, size, meshed: meshed.clone(), rests })
    }
}

/// Places along a bed, whatever its length: so that none comes or goes with it.
const STEPS: usize = 64;

/// The beds with places along them.
fn rests(panel: &Panel, mesh: &Mesh, size: f64) -> Vec<Rest> {
    let locator = Locator::new(mesh, size);
    let beds = panel.beds.iter().enumerate();
    beds.map(|(i, Bed { from, to, stiffness, .. })| {
        let places = (0..=STEPS)
            .filter_map(|i| {
                let at = lerp(*from, *to, i as f64 / STEPS as f64);
                let (triangle, within) = locator.find(at)?;
                Some((at, Within { triangle, within }))
            })
            .collect();
        let step = distance(*from, *to) / STEPS as f64;
        Rest { part: SupportPart::Bed(i), stiffness: *stiffness, step, places }
    })
    .filter(|rest: &Rest| !rest.places.is_empty())
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
        self.bend_pressed(&self.pressed(sets)?)
    }

    /// Several sets of loads on the nodes.
    ///
    /// Errors: a load off the panel.
    pub fn pressed<L: AsRef<[Load]>>(&self, sets: &[L]) -> Result<Vec<Pressed>, PanelError> {
        self.panel.check_loads(sets)?;
        let forces = load::nodal_forces_of(self.mesh(), self.size, sets)?;
        Ok(forces.into_iter().map(Pressed::from).collect())
    }

    /// What each of several sets of loads does that were put on this mesh.
    ///
    /// Errors: deflections that are not finite.
    pub fn bend_pressed(&self, sets: &[Pressed]) -> Result<Vec<Loaded>, PanelError> {
        let values = self.stage.system.solve_all(sets);
        if values.iter().flatten().flatten().any(|v| !v.is_finite()) {
            return Err(PanelError::Factor { reason: "the deflections are not finite".to_string() });
        }
        Ok(sets.iter().zip(values).map(|(forces, values)| self.loaded(forces.clone(), values)).collect())
    }

    /// Moments at the three samples of every triangle, N·m per metre.
    fn sampled<'a>(&'a self, Loaded { values, .. }: &'a Loaded) -> impl Iterator<Item = [[f64; 3]; 3]> + 'a {
        let Stage { mesh, system, .. } = &self.stage;
        let elements = mesh.triangles.iter().zip(system.elements(mesh));
        elements.map(|(nodes, (element, bubble))| element.moments(bubble, &triangle_values(*nodes, values)))
    }

    /// The mean moments about every node, for drawing.
    pub fn moments_at_nodes(&self, loaded: &Loaded) -> Vec<MeanMoment> {
        let mesh = self.mesh();
        let means = means(mesh, &mesh.nodes, self.meshed.fineness.width);
        let sampled: Vec<_> = self.sampled(loaded).collect();
        (0..means.count()).map(|place| means.of(place, &sampled)).collect()
    }

    fn loaded(&self, forces: Pressed, values: Vec<[f64; 3]>) -> Loaded {
        let mesh = self.mesh();
        let peak = Peak::find(mesh, &values);
        Loaded { largest_deflection: peak.deflection, largest_at: peak.at(mesh), values, forces }
    }

    /// The mean moments that use most of what `layup` bears in bending under each of several sets of loads, with the stress;
    /// `None` where nothing bends it.
    pub fn most_bent(&self, layup: &Layup, loaded: &[Loaded]) -> Vec<Option<(MeanMoment, PlyStress)>> {
        let units = [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]].map(|moment| layup.bent(moment).utilisation);
        let used = |moment| {
            let stress = layup.bent(moment);
            (stress.utilisation, stress)
        };
        // One room for all of them: a room each would be fetched from the system page by page.
        let mut sampled = Vec::new();
        let most = |loaded| {
            sampled.clear();
            sampled.extend(self.sampled(loaded));
            self.meshed.most(&sampled, units, used)
        };
        loaded.iter().map(most).collect()
    }

    /// Forces with which the beds push, along each of them, as means over a tent that falls to nothing `width` (m) away.
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
