//! A panel as a plate: its meshes, their factored equations, and what loads do on them.

use std::sync::Arc;

use super::arrange::{Arrangement, arrange};
use super::assembly::{Equations, System};
use super::error::PanelError;
use super::load::{self, Load};
use super::mesh::{self, Mesh};
use super::model::{LineKind, Panel, Section};
use super::outline;
use super::peak::Peak;
use super::recover::{Corners, Fields};
use super::stiffness::PlateStiffness;
use super::support::{Holds, held};

/// Triangles of the first mesh, about: panel area over half the square of its size.
const FIRST_TRIANGLES: f64 = 150.0;

/// One mesh with its factored equations.
pub(super) struct Stage {
    pub mesh: Arc<Mesh>,
    pub holds: Holds,
    pub system: System,
    pub corners: Arc<Corners>,
}

/// The same before its beds: what panels that differ by those alone share.
pub(super) struct Bare {
    mesh: Arc<Mesh>,
    holds: Holds,
    equations: Arc<Equations>,
    corners: Arc<Corners>,
}

impl Bare {
    /// With the beds of a panel, factored.
    ///
    /// Errors: a panel that nothing holds.
    pub(super) fn on_beds(&self, panel: &Panel) -> Result<Stage, PanelError> {
        let Bare { mesh, holds, equations, corners } = self;
        let holds = holds.with_beds(panel, mesh)?;
        let system = System::new(equations, &holds.cushions)?;
        Ok(Stage { mesh: mesh.clone(), holds, system, corners: corners.clone() })
    }
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

/// A panel that can be meshed.
pub(super) struct Plate<'a> {
    pub panel: &'a Panel,
    /// Of each part, as [`Mesh::parts`] numbers them.
    pub stiffness: Vec<PlateStiffness>,
    arrangement: Arrangement,
    /// Of the first mesh's triangles, m.
    size: f64,
}

impl<'a> Plate<'a> {
    /// A panel with its first mesh.
    ///
    /// Errors: a panel that is no plate.
    pub(super) fn of(panel: &'a Panel) -> Result<(Self, Mesh), PanelError> {
        panel.check()?;
        let arrangement = arrange(panel)?;
        let (mesh, size) = panel.first_mesh(&arrangement)?;
        let plate =
            Self { panel, stiffness: panel.sections().iter().map(|s| s.stiffness).collect(), arrangement, size };
        Ok((plate, mesh))
    }

    /// A panel with a mesh of its own.
    ///
    /// Errors: a panel that is no plate.
    pub(super) fn on(panel: &'a Panel, arrangement: Arrangement, size: f64) -> Result<Self, PanelError> {
        panel.check()?;
        let stiffness = panel.sections().iter().map(|s| s.stiffness).collect();
        Ok(Self { panel, stiffness, arrangement, size })
    }

    /// Assembles and factors.
    ///
    /// Errors: a panel that nothing holds.
    pub(super) fn stage(&self, mesh: Mesh) -> Result<Stage, PanelError> {
        self.bare(mesh)?.on_beds(self.panel)
    }

    /// Assembles all but the beds.
    ///
    /// Errors: a mesh too large for the solver.
    pub(super) fn bare(&self, mesh: Mesh) -> Result<Bare, PanelError> {
        let holds = held(self.panel, &self.arrangement, &mesh);
        let equations = Arc::new(Equations::new(&mesh, &self.stiffness, &holds)?);
        let corners = Arc::new(Corners::new(&mesh, &self.arrangement));
        Ok(Bare { mesh: Arc::new(mesh), holds, equations, corners })
    }

    /// What each of several sets of loads does.
    ///
    /// Errors: deflections that are not finite, of a panel that all but nothing holds.
    pub(super) fn bend<'l>(
        &self,
        stage: &Stage,
        sets: impl Iterator<Item = &'l [Load]>,
    ) -> Result<Vec<Bending>, PanelError> {
        let Stage { mesh, system, corners, .. } = stage;
        let sets: Vec<&[Load]> = sets.collect();
        let forces = load::nodal_forces_of(mesh, self.size, &sets)?;
        let values = system.solve_all(&forces);
        if values.iter().flatten().flatten().any(|v| !v.is_finite()) {
            return Err(PanelError::Factor { reason: "the deflections are not finite".to_string() });
        }
        let bending = |(forces, values): (Vec<f64>, Vec<[f64; 3]>)| Bending {
            peak: Peak::find(mesh, &values),
            fields: Fields::new(mesh, corners, system, &values),
            forces,
            values,
        };
        Ok(forces.into_iter().zip(values).map(bending).collect())
    }
}

impl Panel {
    /// Whether these sets of loads are on the panel.
    ///
    /// Errors: the first that is not.
    pub fn check_loads<L: AsRef<[Load]>>(&self, sets: &[L]) -> Result<(), PanelError> {
        sets.iter().try_for_each(|loads| load::check(self, loads.as_ref()))
    }

    /// The panel's own section, then its regions'.
    pub(super) fn sections(&self) -> Vec<&Section> {
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
        Ok((mesh::triangulate(self, arrangement, size)?, size))
    }
}
