//! How she runs, before and after: the rig put through planing, propellers and engines once, corrected by the trial before.

mod bottom;
mod craft;
mod parts;
mod porpoise;
mod predicted;

use super::Case;
use crate::physics::matched::Fit;
use crate::quantity::Text;
use crate::reading::Absent;

pub use craft::{Built, Screw};
pub use porpoise::{BLADE_SETBACK_IN, Cures, Enough, FourthBlade, Held, Nearest};
pub use predicted::{Doubts, Predicted, Rung, Top};

use super::float::Side;

/// How she runs with the old engines and with the new ones.
#[derive(Debug)]
pub struct Runs {
    /// With the old engines, or why it is not told.
    pub before: Result<Predicted, Absent>,
    /// With the new ones, or why it is not told.
    pub after: Result<Predicted, Absent>,
    /// What the trial before says of drag and pitch.
    pub fit: Option<Fit>,
    /// Doubts of drag and pitch for the new engines.
    pub doubts: Doubts,
}

impl Case<'_> {
    /// How she runs; nothing where the job does not ask.
    pub fn running(&self) -> Option<&Runs> {
        self.running.get_or_init(|| self.rig.job.running.as_ref().map(|asked| Runs::of(self, asked))).as_ref()
    }
}

impl Runs {
    /// Of this side.
    pub fn side(&self, side: Side) -> &Result<Predicted, Absent> {
        match side {
            Side::Before => &self.before,
            Side::After => &self.after,
        }
    }

    /// What was assumed, in sentences, each once.
    pub fn assumed(&self) -> Vec<Text> {
        let mut all: Vec<Text> = Vec::new();
        for one in [&self.before, &self.after].into_iter().filter_map(|side| side.as_ref().ok()) {
            for text in &one.built.assumed {
                if !all.contains(text) {
                    all.push(text.clone());
                }
            }
        }
        all
    }
}
