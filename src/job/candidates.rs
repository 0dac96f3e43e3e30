//! Sets of engines that are weighed against each other.

use uom::si::f64::Velocity;

use super::bounds;
use super::{EngineGroup, Item, Job};
use crate::quantity::Reading;
use crate::reading::*;

things! {
    /// One set of engines of several that could go on: what of the job is another with it.
    pub struct Candidate {
        /// What it is called.
        name: String = label(),
        /// Its engines, in place of the job's.
        engines_on: Vec<EngineGroup> = called("engines of a candidate"),
        /// What goes on with them, in place of the job's.
        goes_on: Option<Vec<Item>> = called("what goes on with a candidate"),
        /// Greatest speed with them, in place of the job's.
        top_speed: Option<Reading<Velocity>> = called("greatest speed with a candidate").within(bounds::SPEED),
    }
}

impl Candidate {
    /// The job with this set in place of its own.
    pub fn job(&self, job: &Job) -> Job {
        let mut job = job.clone();
        job.candidates.clear();
        job.engines_on = self.engines_on.clone();
        if let Some(items) = &self.goes_on {
            job.goes_on = items.clone();
        }
        if let Some(speed) = &self.top_speed {
            job.operating.get_or_insert_default().top_speed = Some(speed.clone());
        }
        job
    }
}
