//! Her shape, in whichever way it was given.

use std::collections::BTreeMap;
use std::sync::Arc;

use uom::si::f64::{Angle, Length};

use super::Slot;
use crate::job::{self, Craft, HullShape, Job};
use crate::reading::reading;

/// The bytes of the files that a job names, by name.
pub type Files = BTreeMap<String, Arc<[u8]>>;

/// A hull's shape, ready to be built.
#[derive(Clone, Debug)]
pub enum Shape {
    /// Sections or offsets.
    Lines(HullShape),
    /// A closed surface of triangles.
    Mesh {
        /// All that is in its file.
        bytes: Arc<[u8]>,
        /// What one unit of the file is.
        unit: Length,
    },
    /// The least that a hull can be made from.
    Least {
        /// Overall, over the deck.
        length: Length,
        /// Between the chines at the transom.
        chine_beam: Length,
        /// At the transom.
        deadrise: Angle,
        /// From the bottom up to the sheer, at the transom.
        depth: Length,
    },
}

pub(super) fn shape(job: &Job, files: &Files) -> Slot<Shape> {
    Slot::new(shape_of(job, files), reading!(job::Job.hull))
}

fn shape_of(job: &Job, files: &Files) -> Option<Shape> {
    match &job.hull {
        Some(HullShape::Mesh { file, unit }) => {
            files.get(file).map(|bytes| Shape::Mesh { bytes: bytes.clone(), unit: unit.value })
        }
        Some(lines) => Some(Shape::Lines(lines.clone())),
        // Drawn from a few readings a hull of several would be one.
        None if job.boat.craft == Some(Craft::Multihull) => None,
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
