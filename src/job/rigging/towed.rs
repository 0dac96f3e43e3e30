//! On the road.

use crate::quantity::Reading;
use crate::reading::*;
use uom::si::f64::{Length, Mass};

use super::parts::ChosenTrailer;

things! {
    /// What she weighs on the road, and where.
    pub struct Towed {
        /// Whether the lamps and the number plate are seen behind the engines.
        lamps_seen: Option<bool> = called("whether lamps and number plate are seen behind the engines")
            .taken(Stop::Trailer, "behind the trailer, engines as towed",
                "from a car's length behind it, at a driver's height").spot(585, 400),
        /// Whether the engines are held up on the road by a support, not by their own lift.
        supported: Option<bool>,
        /// The axle, or the middle between two, forward of the transom.
        axle: Option<Reading<Length>> = called("axle, forward of the transom").within(between(foot(-3.0), foot(40.0)))
            .taken(Stop::Trailer, "beside the trailer, boat on it",
                "plumb from the transom and from the axle to the ground, and between the marks; negative where the axle stands behind the transom").closely(inch(1.0)).spot(585, 400),
        /// The coupling forward of the axle.
        coupling: Option<Reading<Length>> = called("coupling, forward of the axle").within(between(foot(2.0), foot(60.0))).in_feet()
            .taken(Stop::Trailer, "beside the trailer",
                "from the axle to the middle of the coupling").closely(inch(1.0)).spot(585, 400),
        /// How far the engines stand out behind the trailer's lamps.
        behind: Option<Reading<Length>> = called("how far the engines stand out behind the lamps").within(between(inch(0.0), foot(15.0)))
            .taken(Stop::Trailer, "behind the trailer, engines as towed",
                "from the lamps aft to the farthest point").closely(inch(1.0)).spot(585, 400),
        /// The trailer.
        trailer: ChosenTrailer = called("the trailer's ratings")
            .taken(Stop::Trailer, "plate on the trailer, print on tyres and coupling",
                "empty weight, rated weight, axles, tyres, coupling, brakes; or a class of the catalog"),
        /// All that stands on it, where it is asked outright; else what the ledger says.
        carries: Vec<TowedWeight>,
        /// What comes with her on the road besides: gear, ice, water that was not let out.
        besides: Vec<TowedWeight>,
    }
}

things! {
    /// A weight on the trailer.
    pub struct TowedWeight {
        /// What it is.
        what: Option<String> = label(),
        /// What it weighs.
        weight: Option<Reading<Mass>> = called("a weight on the trailer").within(between(lb(1.0), lb(60000.0)))
            .taken(Stop::Items, "a scale, or its papers", "all of it together"),
        /// Forward of the transom.
        forward: Option<Reading<Length>> = called("its place forward of the transom").within(between(foot(-10.0), foot(60.0)))
            .taken(Stop::Items, "on the boat", "its centre forward of the transom; negative behind it"),
    }
}
