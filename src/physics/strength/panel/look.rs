//! A first look at many sets of loads on one panel: one mesh, one factorisation, no refinement.

use super::arrange::arrange;
use super::assembly::System;
use super::error::PanelError;
use super::load::{self, Load};
use super::model::{Panel, PlateStiffness, Point};
use super::recover::{Corners, Fields, SectionForces};
use super::solve::Peak;
use super::support::holds;

/// What a set of loads does to a panel on its first mesh. How far it is off is not known; [`Panel::solve`] tells.
#[derive(Debug, Clone)]
pub struct Look {
    /// The deflection that is largest in size, with its sign, m.
    pub largest_deflection: f64,
    pub largest_at: Point,
    /// Section forces, each with its place, m.
    pub forces: Vec<(Point, SectionForces)>,
}

impl Panel {
    /// Looks at each set of loads by itself.
    ///
    /// Errors: as [`Panel::solve`].
    pub fn look(&self, sets: &[Vec<Load>]) -> Result<Vec<Look>, PanelError> {
        self.check()?;
        sets.iter().try_for_each(|loads| load::check(self, loads))?;
        let arrangement = arrange(self)?;
        let stiffness: Vec<PlateStiffness> = self.sections().iter().map(|s| s.stiffness).collect();
        let (mesh, size) = self.first_mesh(&arrangement)?;
        let holds = holds(self, &arrangement, &mesh)?;
        let system = System::new(&mesh, &stiffness, &holds)?;
        let corners = Corners::new(&mesh, &arrangement);
        sets.iter()
            .map(|loads| {
                let forces = load::nodal_forces(&mesh, size, loads)?;
                let values =
                    system.solve(&forces.iter().map(|f| [*f, 0.0, 0.0]).collect::<Vec<_>>());
                if values.iter().flatten().any(|v| !v.is_finite()) {
                    return Err(PanelError::Factor {
                        reason: "the deflections are not finite".to_string(),
                    });
                }
                let peak = Peak::find(&mesh, &values);
                let fields = Fields::new(&mesh, &corners, &stiffness, &system, &values);
                Ok(Look {
                    largest_deflection: peak.deflection,
                    largest_at: peak.at(&mesh),
                    forces: fields
                        .section_forces(&corners)
                        .into_iter()
                        .map(|force| (mesh.nodes[force.node as usize], force))
                        .collect(),
                })
            })
            .collect()
    }
}
