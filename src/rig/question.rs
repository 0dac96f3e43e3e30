//! What hardly can be of a job's readings, and is asked back.

use std::sync::Arc;

use super::Rig;
use crate::quantity::Text;

/// A question back: readings that hardly can be as they are written.
#[derive(Clone, Debug, PartialEq)]
pub struct Question {
    /// The relation that they break, by its name.
    pub relation: &'static str,
    /// Their entries in the job; the first is the one to look at first.
    pub entries: Vec<String>,
    /// What hardly can be, and what is asked.
    pub said: Text,
    /// Why the relation holds.
    pub why: &'static str,
    /// Where the relation is from.
    pub source: &'static str,
}

impl Question {
    /// What a job says once they were looked at again and stand.
    pub fn answer(&self) -> String {
        format!("sure: [\"{}\"]", self.entries.first().map_or("", String::as_str))
    }
}

/// Questions with the boat as she would be judged if nobody had taken the readings that they are about: what is found
/// otherwise then leans on them.
#[derive(Clone, Debug)]
pub struct Suspect {
    /// What is asked.
    pub questions: Vec<Question>,
    /// The rig without those readings; nothing where no job is left without them.
    pub without: Option<Arc<Rig>>,
}
