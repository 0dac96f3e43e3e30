//! What goes with the readings on paper: what had been planned, and photographs.

use serde::Deserialize;
use uom::si::f64::{Length, Mass, Power};

use crate::quantity::Reading;

/// What had been planned or ordered before an install that is surveyed: shown beside what was found.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Planned {
    /// Where it is from: an order, a drawing, a letter.
    pub from: Option<String>,
    /// Rated power of the main engines together.
    pub power: Option<Reading<Power>>,
    /// Weight of all that hangs on the transom.
    pub hung_weight: Option<Reading<Mass>>,
    /// Shaft length of the main engines, by the trade's name for it.
    pub shaft: Option<Reading<Length>>,
    /// How many holes up the main engines are mounted.
    pub holes_up: Option<u8>,
    /// Setback of the main engines.
    pub setback: Option<Reading<Length>>,
    /// Between the centres of neighbouring main engines.
    pub centre_distance: Option<Reading<Length>>,
    /// From the transom's top down to the upper bolt holes.
    pub upper_holes: Option<Reading<Length>>,
}

/// A photograph that goes with the report.
#[derive(Clone, Debug, Default, PartialEq, Eq, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Photograph {
    /// Its file, by a path from the folder of the job downwards.
    pub file: String,
    /// What it shows.
    pub caption: Option<String>,
}
