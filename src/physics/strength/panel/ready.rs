//! A panel on its first mesh, its equations factored: ready for any loads.

use super::arrange::{Arrangement, arrange};
use super::assembly::System;
use super::error::PanelError;
use super::load::{self, Load};
use super::mesh::{self, Mesh};
use super::model::{LineKind, Panel, PlateStiffness, Point, Section};
use super::outline;
use super::peak::Peak;
use super::recover::{Corners, Fields, SectionForces};
use super::support::{Holds, holds};

/// Triangles of the first mesh, about: panel area over half the square of its size.
const FIRST_TRIANGLES: f64 = 150.0;

/// One mesh with its factored equations.
pub(super) struct Stage {
    pub mesh: Mesh,
    pub holds: Holds,
    pub system: System,
    pub corners: Corners,
}

/// What a set of loads does on one mesh.
pub(super) struct Bending {
    /// On each node, N.
    pub forces: Vec<f64>,
    /// `w, βy, βz` of each node.
    pub values: Vec<[f64; 3]>,
    pub peak: Peak,
    pub fields: Fields,
}

/// A panel on its first mesh, factored once for all sets of loads.
pub struct Ready<'a> {
    pub(super) panel: &'a Panel,
    pub(super) stiffness: Vec<PlateStiffness>,
    pub(super) first: Stage,
    arrangement: Arrangement,
    /// Of the first mesh's triangles, m.
    size: f64,
}

/// What a set of loads does to a panel on its first mesh. How far it is off is not known; [`Ready::solve`] tells.
#[derive(Debug, Clone)]
pub struct Look {
    /// The deflection that is largest in size, with its sign, m.
    pub largest_deflection: f64,
    pub largest_at: Point,
    /// Section forces, each with its place, m.
    pub forces: Vec<(Point, SectionForces)>,
}

impl Ready<'_> {
    /// A first look at a set of loads.
    ///
    /// Errors: as [`Panel::solve`].
    pub fn look(&self, loads: &[Load]) -> Result<Look, PanelError> {
        load::check(self.panel, loads)?;
        let stage = &self.first;
        let bent = self.bend(stage, loads)?;
        Ok(Look {
            largest_deflection: bent.peak.deflection,
            largest_at: bent.peak.at(&stage.mesh),
            forces: bent
                .fields
                .section_forces(&stage.corners)
                .into_iter()
                .map(|force| (stage.mesh.nodes[force.node as usize], force))
                .collect(),
        })
    }

    pub(super) fn stage(&self, mesh: Mesh) -> Result<Stage, PanelError> {
        Stage::new(self.panel, &self.arrangement, &self.stiffness, mesh)
    }

    pub(super) fn bend(&self, stage: &Stage, loads: &[Load]) -> Result<Bending, PanelError> {
        let Stage {
            mesh,
            system,
            corners,
            ..
        } = stage;
        let forces = load::nodal_forces(mesh, self.size, loads)?;
        let values = system.solve(&forces.iter().map(|f| [*f, 0.0, 0.0]).collect::<Vec<_>>());
        if values.iter().flatten().any(|v| !v.is_finite()) {
            return Err(PanelError::Factor {
                reason: "the deflections are not finite".to_string(),
            });
        }
        Ok(Bending {
            peak: Peak::find(mesh, &values),
            fields: Fields::new(mesh, corners, &self.stiffness, system, &values),
            forces,
            values,
        })
    }
}

impl Stage {
    fn new(
        panel: &Panel,
        arrangement: &Arrangement,
        stiffness: &[PlateStiffness],
        mesh: Mesh,
    ) -> Result<Self, PanelError> {
        let holds = holds(panel, arrangement, &mesh)?;
        let system = System::new(&mesh, stiffness, &holds)?;
        let corners = Corners::new(&mesh, arrangement);
        Ok(Self {
            mesh,
            holds,
            system,
            corners,
        })
    }
}

impl Panel {
    /// Meshes and factors.
    ///
    /// Errors: a panel that is no plate, or that nothing holds.
    pub fn ready(&self) -> Result<Ready<'_>, PanelError> {
        self.check()?;
        let arrangement = arrange(self)?;
        let stiffness: Vec<PlateStiffness> = self.sections().iter().map(|s| s.stiffness).collect();
        let (mesh, size) = self.first_mesh(&arrangement)?;
        let first = Stage::new(self, &arrangement, &stiffness, mesh)?;
        Ok(Ready {
            panel: self,
            stiffness,
            first,
            arrangement,
            size,
        })
    }

    /// The panel's own section, then its regions'.
    pub(super) fn sections(&self) -> Vec<&Section> {
        std::iter::once(&self.section)
            .chain(self.regions.iter().map(|r| &r.section))
            .collect()
    }

    fn check(&self) -> Result<(), PanelError> {
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

    fn first_mesh(&self, arrangement: &Arrangement) -> Result<(Mesh, f64), PanelError> {
        let extent = outline::extent(&self.outline);
        // A very long strip gets a mesh no coarser than its own width asks for.
        let size = (2.0 * outline::area(&self.outline).abs() / FIRST_TRIANGLES)
            .sqrt()
            .max(extent / 500.0);
        Ok((mesh::triangulate(self, arrangement, size)?, size))
    }
}
