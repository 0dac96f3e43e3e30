//! A place across the boat.

use uom::si::f64::Length;

use crate::quantity::{Dimensioned, Reading};
use crate::reading::*;

choices! {
    /// A place across the boat, from the centreline.
    pub enum Across {
        /// On the centreline.
        Centre = "centre";
        /// So far to port of it.
        Port = "port", "to port" (Reading<Length>);
        /// So far to starboard of it.
        Starboard = "starboard", "to starboard" (Reading<Length>);
    }
}

impl Across {
    /// Distance to port of the centreline; negative to starboard.
    pub fn y(&self) -> Length {
        match self {
            Across::Centre => Length::from_si(0.0),
            Across::Port(reading) => reading.value,
            Across::Starboard(reading) => -reading.value,
        }
    }

    /// The reading, where there is one.
    pub fn reading(&self) -> Option<&Reading<Length>> {
        match self {
            Across::Centre => None,
            Across::Port(reading) | Across::Starboard(reading) => Some(reading),
        }
    }
}
