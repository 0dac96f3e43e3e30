//! What stands round the engines when they tilt and steer: well, obstacles, steering gear, trailer.
//!
//! Everything is measured from one place, the outside top edge of the transom: forward of it and above
//! it, level; what lies behind or below is negative.

use uom::si::f64::{Angle, Length};

use super::across::Across;
use super::bounds;
use crate::quantity::Reading;
use crate::reading::*;

things! {
    /// The motorwell or splash-well inside the transom. Its floor is `transom.splash_well`.
    pub struct Well {
        /// From the outside of the transom's top forward to the top of the well's forward wall.
        length: Option<Reading<Length>> = called("length of the motorwell").within(bounds::WELL_LENGTH)
            .taken(Stop::Inside, "inside, on the centreline",
                "from the outside of the transom's top, level, forward to the top of the well's forward wall")
            .closely(inch(0.25)).spot(160, 108),
        /// Between its sides; the width of the cutout where left out.
        width: Option<Reading<Length>> = called("width of the motorwell").within(bounds::WIDTH)
            .taken(Stop::Inside, "inside, between the sides of the well",
                "at the height of the transom's top, where it is not the cutout's width")
            .closely(inch(0.25)).spot(148, 120),
        /// Its rim, at the forward wall, above the transom's top; negative below.
        rim_above: Option<Reading<Length>> = called("rim of the motorwell above the transom's top").within(bounds::RIM)
            .taken(Stop::Inside, "inside, at the well's forward wall",
                "straightedge level from the rim aft over the transom; down from it to the transom's top; negative \
                where the rim lies lower").closely(inch(0.25)).spot(622, 300),
    }
}

things! {
    /// Anything else that an engine could strike: a hatch, seat, platform, ladder, bunk. A box with its
    /// sides along the boat.
    pub struct BoxedObstacle [whole] {
        /// What it is.
        name: String = label(),
        /// From and to, forward of the outside of the transom's top; negative aft of it.
        forward: (Reading<Length>, Reading<Length>) = called("forward of the transom's top").within(bounds::FORWARD),
        /// From and to, across.
        across: (Across, Across) = called("off the centreline").within(bounds::ACROSS),
        /// From and to, above the transom's top; negative below it.
        up: (Reading<Length>, Reading<Length>) = called("above the transom's top").within(bounds::OBSTACLE_UP),
    }
}

things! {
    /// What moves with the engines to steer them.
    pub struct SteeringGear {
        /// The steering cylinder or actuator.
        cylinder: Option<Cylinder> = called("steering cylinder")
            .taken(Stop::Inside, "at the tilt tube, engine upright",
                "none, or fitted(forward, above, length, diameter): its centre line from the tilt tube's, the \
                length that it sweeps across, its diameter with fittings and hoses").closely(inch(0.25)).spot(466, 282),
        /// The bar between two engines.
        tie_bar: Option<TieBar> = called("tie bar")
            .taken(Stop::Inside, "between two engines, upright and steered ahead",
                "none, or fitted(forward, above, diameter): its pins from the tilt tube")
            .closely(inch(0.25)).spot(466, 282),
    }
}

choices! {
    /// A steering cylinder or actuator carried by the tilt tube, so that it tilts with the engine.
    pub enum Cylinder {
        /// Nothing of the sort stands forward of the engine.
        None = "none";
        /// It is there; what is left out is taken as common practice has it.
        Fitted = "fitted" {
            /// Its centre line forward of the tilt tube's, engine upright.
            forward: Option<Reading<Length>> = called("its centre line forward of the tilt tube").within(bounds::OFFSET),
            /// Its centre line above the tilt tube's, engine upright.
            above: Option<Reading<Length>> = called("its centre line above the tilt tube").within(bounds::OFFSET),
            /// Length that it sweeps across the boat, rod ends and hose fittings with it.
            length: Option<Reading<Length>> = called("length that it sweeps across the boat").within(bounds::SMALL_LENGTH),
            /// Diameter, fittings and hoses with it.
            diameter: Option<Reading<Length>> = called("diameter").within(bounds::DIAMETER),
        };
    }
}

choices! {
    /// The bar between two engines.
    pub enum TieBar {
        /// There is none.
        None = "none";
        /// It is there; what is left out is taken as common practice has it.
        Fitted = "fitted" {
            /// Its pins forward of the tilt tube, engine upright, steered ahead.
            forward: Option<Reading<Length>> = called("its pins forward of the tilt tube").within(bounds::OFFSET),
            /// Its pins above the tilt tube, engine upright.
            above: Option<Reading<Length>> = called("its pins above the tilt tube").within(bounds::OFFSET),
            /// Diameter.
            diameter: Option<Reading<Length>> = called("diameter").within(bounds::DIAMETER),
        };
    }
}

choices! {
    /// Whether she travels on a trailer.
    pub enum Trailer {
        /// She does not.
        None = "none";
        /// She does.
        On = "on" {
            /// From the road up to the bottom of the hull at the transom.
            keel_above_ground: Option<Reading<Length>> = called("height of the hull over the road").within(bounds::KEEL_HEIGHT)
                .taken(Stop::Trailer, "on the trailer, hitched up, at the transom",
                    "from the road up to the bottom of the hull at the transom").closely(inch(0.5)).spot(560, 426),
            /// How far her bow stands up on it, against her level trim.
            bow_up: Option<Reading<Angle>> = called("bow up on the trailer").within(bounds::BOW_UP)
                .taken(Stop::Trailer, "on the trailer, hitched up",
                    "angle finder on a line that is level when she floats at her trim")
                .closely(deg(0.5)).spot(560, 426),
            /// Tilt at which the engines are towed, from upright; full tilt where left out.
            towing_tilt: Option<Reading<Angle>> = called("tilt at which she is towed").within(bounds::TOWING_TILT)
                .taken(Stop::Trailer, "on the trailer", "angle finder on the leg, from upright")
                .closely(deg(1.0)).spot(560, 426),
            /// Bunks, cross members, lamps.
            [default] parts: Vec<BoxedObstacle> = called("bunks, cross members, lamps"),
        };
    }
}

things! {
    /// Numbers from the mounting sheet of the very engine, in place of its class's.
    pub struct MountingNumbers {
        /// Full tilt, from upright, at the sheet's transom angle.
        full_tilt: Option<Reading<Angle>> = called("full tilt").within(bounds::TILT),
        /// Steering, each way.
        steering: Option<Reading<Angle>> = called("steering, each way").within(bounds::STEER),
        /// Transom angle that the sheet's angles are stated at.
        transom_angle: Option<Reading<Angle>> = called("transom angle of the sheet").within(bounds::TRANSOM_ANGLE),
        /// Greatest width of the powerhead.
        width: Option<Reading<Length>> = called("width of the powerhead").within(bounds::SMALL_LENGTH),
        /// From the bracket's rest to the powerhead's top, engine down.
        height: Option<Reading<Length>> = called("top of the powerhead above the bracket's rest").within(bounds::SMALL_LENGTH),
        /// How far anything comes forward of the mounting face at full tilt.
        forward_at_full_tilt: Option<Reading<Length>> = called("forward of the mounting face at full tilt").within(bounds::SMALL_LENGTH),
        /// Highest point above the bracket's rest at full tilt.
        height_at_full_tilt: Option<Reading<Length>> = called("above the bracket's rest at full tilt").within(bounds::SMALL_LENGTH),
        /// The tilt tube.
        tilt_tube: Option<TiltTube> = called("tilt tube"),
    }
}

things! {
    /// Where the tilt tube is.
    pub struct TiltTube [whole] {
        /// Its centre forward of the mounting face.
        forward: Reading<Length> = called("tilt tube forward of the mounting face").within(bounds::ON_BRACKET),
        /// Its centre above the bracket's rest.
        above: Reading<Length> = called("tilt tube above the bracket's rest").within(bounds::ON_BRACKET),
    }
}
