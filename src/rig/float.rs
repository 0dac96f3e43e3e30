//! Her shape, how she lay at the dock, and what is aboard.

use std::collections::BTreeMap;
use std::sync::Arc;

use uom::si::f64::{Angle, Length, Mass};

use super::Slot;
use crate::job::{self, BoatWeight, Condition, CrewAt, Edge, HullShape, Item, Job, Mark, Water};
use crate::quantity::Reading;
use crate::reading::reading;

/// The bytes of the files that a job names, by name.
pub type Files = BTreeMap<String, Arc<[u8]>>;

/// What the job says of how she floats.
#[derive(Clone, Debug)]
pub struct Afloat {
    /// Her shape, in whichever way it was given.
    pub shape: Slot<Shape>,
    /// Wells that the water fills.
    pub flooded: Vec<job::Flooded>,
    /// The water.
    pub water: Option<Water>,
    /// Her marks.
    pub marks: Slot<Vec<Mark>>,
    /// Which engines hung on her when they were taken.
    pub engines: Option<job::EnginesThen>,
    /// Who was aboard then.
    pub crew_then: Vec<CrewAt>,
    /// What else was aboard then.
    pub also_then: Vec<Item>,
    /// The bare boat's weight.
    pub boat_weight: Slot<Reading<Mass>>,
    /// Her centre.
    pub boat: BoatWeight,
    /// Tanks.
    pub tanks: Vec<job::TankEntry>,
    /// Places of persons.
    pub places: Vec<job::Seat>,
    /// Weight of a person.
    pub person: Option<Reading<Mass>>,
    /// Persons who go out in her.
    pub crew: Option<u16>,
    /// Gear.
    pub gear: Vec<Item>,
    /// Edges.
    pub edges: Slot<Vec<Edge>>,
    /// The user's own loadings.
    pub conditions: Vec<Condition>,
}

/// A hull's shape, ready to be built.
#[derive(Clone, Debug)]
pub enum Shape {
    /// Sections or offsets.
    Lines(HullShape),
    /// A file's bytes, and the length of its unit.
    Mesh { bytes: Arc<[u8]>, unit: Length },
    /// The least that a hull can be made from.
    Least { length: Length, chine_beam: Length, deadrise: Angle, depth: Length },
}

impl Afloat {
    /// Whether the job says anything of how she floats.
    pub fn is_asked(&self) -> bool {
        self.shape.reading().is_some()
            || self.marks.reading().is_some()
            || self.boat_weight.reading().is_some()
            || self.edges.reading().is_some()
            || !self.tanks.is_empty()
            || !self.conditions.is_empty()
    }
}

pub(super) fn resolve(job: &Job, files: &Files) -> Afloat {
    let afloat = job.afloat.clone().unwrap_or_default();
    let weights = &job.weights;
    Afloat {
        shape: Slot::new(shape(job, files), reading!(job::Job.hull)),
        flooded: job.flooded.clone(),
        water: afloat.water,
        marks: Slot::new(Some(afloat.marks).filter(|marks| !marks.is_empty()), reading!(job::Afloat.marks)),
        engines: afloat.engines,
        crew_then: afloat.crew,
        also_then: afloat.also,
        boat_weight: Slot::new(weights.boat.weight.clone(), reading!(job::BoatWeight.weight)),
        boat: weights.boat.clone(),
        tanks: weights.tanks.clone(),
        places: weights.places.clone(),
        person: weights.person.clone(),
        crew: weights.crew,
        gear: weights.gear.clone(),
        edges: Slot::new(Some(job.edges.clone()).filter(|edges| !edges.is_empty()), reading!(job::Job.edges)),
        conditions: job.conditions.clone(),
    }
}

fn shape(job: &Job, files: &Files) -> Option<Shape> {
    match &job.hull {
        Some(HullShape::Mesh { file, unit }) => {
            files.get(file).map(|bytes| Shape::Mesh { bytes: bytes.clone(), unit: unit.value })
        }
        Some(lines) => Some(Shape::Lines(lines.clone())),
        None => {
            let boat = &job.boat;
            Some(Shape::Least {
                length: boat.length.as_ref()?.value,
                chine_beam: boat.chine_beam.as_ref()?.value,
                deadrise: boat.deadrise.as_ref()?.value,
                depth: boat.depth.as_ref()?.value,
            })
        }
    }
}
