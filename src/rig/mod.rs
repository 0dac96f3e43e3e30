//! The rig: a job with every catalog reference resolved and every reading in SI. Physics and rules
//! see this and nothing else.

mod engine;
mod float;
mod question;
mod ran;
mod resolve;
mod sheet;
mod slot;
mod structure;
mod trial;

use std::sync::Arc;

use crate::catalog::{Entry, Material, Tables};
use crate::job::Job;
use crate::quantity::Text;

pub use crate::reading::Missing;
pub use engine::{Bracket, Engine, Group, ItemOfOutfit, Outfit};
pub use float::{Files, Shape};
pub use question::{Question, Suspect};
pub use ran::Ran;
pub use resolve::{resolve, resolve_again, resolve_with_files};
pub use sheet::SwingSheet;
pub use slot::Slot;
pub use structure::{Bolts, Layer, Structure};
pub use trial::{Sailing, Trial};

/// Everything that a rule can look at.
#[derive(Clone, Debug)]
pub struct Rig {
    /// The job with every class of its engines and brackets written out in place, as every reading of it was used.
    pub job: Arc<Job>,
    /// What hangs on her now, or hung before.
    pub before: Outfit,
    /// What shall hang on her, or hangs there now.
    pub after: Outfit,
    /// What her transom is made of, where the job says it in a word.
    pub material: Option<Entry<Material>>,
    /// Her shape, in whichever way it was given.
    pub shape: Slot<Shape>,
    /// How she has run with the engines that come off, where the job says.
    pub ran: Option<Ran>,
    /// Her trials, with their files read.
    pub trial: Option<Trial>,
    /// How the transom is built and bolted to, and how hard she is driven.
    pub structure: Structure,
    /// The tables of regulations and standards.
    pub tables: Arc<Tables>,
    /// What hardly can be of its readings, and is asked back.
    pub suspects: Vec<Suspect>,
    /// What was taken for granted in resolving the job, in sentences.
    pub assumed: Vec<Text>,
}

impl Rig {
    /// Everything that is asked back.
    pub fn questions(&self) -> impl Iterator<Item = &Question> {
        self.suspects.iter().flat_map(|suspect| &suspect.questions)
    }

    /// What the job is called.
    pub fn title(&self) -> &str {
        self.job.title.as_deref().unwrap_or("untitled job")
    }

    /// Whether the job says anything of how she floats.
    pub fn floats(&self) -> bool {
        let job = &self.job;
        self.shape.reading().is_some()
            || job.afloat.marks().reading().is_some()
            || job.weights.boat.weight.is_some()
            || job.edges().reading().is_some()
            || !job.weights.tanks.is_empty()
            || !job.conditions.is_empty()
    }
}
