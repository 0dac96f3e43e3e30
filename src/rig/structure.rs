//! The transom's structure, the bolts and the driving, with every name of the catalog looked up.

use uom::si::f64::{Length, Velocity};

use super::{Missing, Slot};
use crate::catalog::{BoltGrade, BoltSize, Entry, Material};
use crate::job::{self, BoltStudy, Bolting, Bond, Operating, PanelStudy, Upright};
use crate::quantity::Reading;

/// What the job says of strength.
#[derive(Clone, Debug)]
pub struct Structure {
    /// Whether it says anything of it.
    pub asked: bool,
    /// The transom's layers from the outside in.
    pub lay_up: Slot<Vec<Layer>>,
    /// How it is held, and what was found of its core.
    pub said: job::Structure,
    /// Knees, where somebody looked for them.
    pub knees: Slot<Vec<Upright>>,
    /// Stringers that end on it, where somebody looked for them.
    pub stringers: Slot<Vec<Upright>>,
    /// How the hull's sides hold it.
    pub sides: Slot<Bond>,
    /// How the hull's bottom holds it.
    pub bottom: Slot<Bond>,
    /// How the splash-well's floor holds it.
    pub well_floor: Slot<Bond>,
    /// Whether its layers were told one by one, and not only what it is of and how thick.
    pub layers_told: bool,
    /// Skins for a core whose skins were not told.
    pub usual_skin: [Option<Entry<Material>>; 2],
    /// What the top edge is stiffened with.
    pub stiffener_material: Option<Material>,
    /// Greatest speed.
    pub top_speed: Slot<Reading<Velocity>>,
    /// How hard she is driven.
    pub operating: Operating,
    /// A panel given outright, with its layers' materials.
    pub panel_study: Option<(PanelStudy, Vec<Layer>)>,
    /// A bolt group given outright.
    pub bolt_study: Option<(BoltStudy, Entry<BoltSize>, Option<Entry<BoltGrade>>)>,
}

/// A layer with its material.
#[derive(Clone, Debug)]
pub struct Layer {
    /// What it is made of.
    pub material: Entry<Material>,
    /// How thick it is.
    pub thickness: Length,
}

/// Bolts with what the catalog says of them.
#[derive(Clone, Debug, Default)]
pub struct Bolts {
    /// What the job says.
    pub said: Bolting,
    /// The thread.
    pub size: Option<Entry<BoltSize>>,
    /// The grade.
    pub grade: Option<Entry<BoltGrade>>,
    /// What the backing plate is made of.
    pub plate: Option<Entry<Material>>,
}

impl Structure {
    /// The readings that open the door to every check of strength, where the job says nothing of it.
    pub fn door(&self) -> Vec<Missing> {
        let missing = [self.lay_up.ask().err(), self.top_speed.ask().err()];
        missing.into_iter().flatten().collect()
    }
}
