//! On the road.

use uom::si::f64::{Length, Mass};

use super::declare::rigged;
use super::parts::{Chosen, TrailerSpec};

rigged! {
    /// What she weighs on the road, and where.
    Towed
    read {
        /// The axle, or the middle between two, forward of the transom.
        axle: Length = "axle, forward of the transom", Tape, "-3 ft", "40 ft";
        /// The coupling forward of the axle.
        coupling: Length = "coupling, forward of the axle", FeetInches, "2 ft", "60 ft";
        /// How far the engines stand out behind the trailer's lamps.
        behind: Length = "how far the engines stand out behind the lamps", Tape, "0 in", "15 ft";
    }
    have {
        /// Whether the lamps and the number plate are seen behind the engines.
        lamps_seen: Option<bool>;
        /// Whether the engines are held up on the road by a support, not by their own lift.
        supported: Option<bool>;
    }
    hold {
        /// The trailer.
        trailer: Chosen<TrailerSpec>;
        /// All that stands on it, where it is asked outright; else what the ledger says.
        carries: Vec<TowedWeight>;
        /// What comes with her on the road besides: gear, ice, water that was not let out.
        besides: Vec<TowedWeight>;
    }
}

rigged! {
    /// A weight on the trailer.
    TowedWeight
    read {
        /// What it weighs.
        weight: Mass = "a weight on the trailer", Plain, "1 lb", "60,000 lb";
        /// Forward of the transom.
        forward: Length = "its place forward of the transom", Tape, "-10 ft", "60 ft";
    }
    have {
        /// What it is.
        what: Option<String>;
    }
    hold {}
}
