//! What goes with the readings on paper: what had been planned, and photographs.

use uom::si::f64::{Length, Mass, Power};

use super::bounds;
use crate::quantity::Reading;
use crate::reading::*;

things! {
    /// What had been planned or ordered before an install that is surveyed: shown beside what was found.
    pub struct Planned {
        /// Where it is from: an order, a drawing, a letter.
        from: Option<String>,
        /// Rated power of the main engines together.
        power: Option<Reading<Power>> = called("power of the main engines").within(bounds::BOAT_POWER),
        /// Weight of all that hangs on the transom.
        hung_weight: Option<Reading<Mass>> = called("weight that hangs on the transom").within(bounds::LOAD),
        /// Shaft length of the main engines, by the trade's name for it.
        shaft: Option<Reading<Length>> = called("shaft of the main engines").within(bounds::SHAFT),
        /// How many holes up the main engines are mounted.
        holes_up: Option<u8> = called("hole row of the main engines").within(bounds::HOLES_UP),
        /// Setback of the main engines.
        setback: Option<Reading<Length>> = called("setback of the main engines").within(bounds::SETBACK),
        /// Between the centres of neighbouring main engines.
        centre_distance: Option<Reading<Length>> = called("between centres of neighbours").within(bounds::SMALL_LENGTH),
        /// From the transom's top down to the upper bolt holes.
        upper_holes: Option<Reading<Length>> = called("upper bolt holes below the top").within(bounds::ON_TRANSOM),
    }
}

things! {
    /// A photograph that goes with the report.
    pub struct Photograph {
        /// Its file, by a path from the folder of the job downwards.
        file: String = named_file(&[".jpg", ".jpeg", ".png"]),
        /// What it shows.
        caption: Option<String>,
        /// The check beside whose finding it stands, such as `fit/top-edge`.
        finding: Option<String>,
    }
}
