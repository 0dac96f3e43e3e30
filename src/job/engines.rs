//! Engines as a job names them: which, where, on what.

use uom::si::f64::{Angle, Length, Mass, Ratio};

use super::Bolting;
use super::across::Across;
use super::bounds;
use super::specs::{BracketSpec, EngineSpec};
use super::swing::MountingNumbers;
use crate::quantity::Reading;
use crate::reading::*;

things! {
    /// Engines of one sort that hang on one thing: a single, a pair on a bracket, a small one beside.
    pub struct EngineGroup {
        /// A class of the catalog…
        class: Option<String> = label(),
        /// …or the engine described in place.
        described: Option<EngineSpec> = called("what the engine is")
            .taken(Stop::Engine, "its plate and mounting sheet", "what the sheet gives of it"),
        /// Which of its shaft lengths, by the trade's name for it (20 in, 25 in…).
        shaft: Option<Reading<Length>> = called("shaft length").within(bounds::SHAFT)
            .taken(Stop::Engine, "engine, or the offer",
                "from the bracket's rest straight down to the anti-ventilation plate; the trade names it after the \
                transom height").closely(inch(0.25)).spot(450, 346),
        /// One engine's weight as it hangs, where it was put on a scale.
        weighed: Option<Reading<Mass>> = called("weight on a scale").within(bounds::ENGINE_WEIGHT)
            .taken(Stop::Engine, "a crane scale", "one engine as it hangs, with fluids and propeller").closely(lb(5.0)),
        /// Numbers of its mounting sheet, in place of the class's.
        sheet: Option<MountingNumbers> = called("the engine's tilt, steering and powerhead")
            .taken(Stop::Engine, "mounting sheet",
                "full_tilt, steering, transom_angle, width, height, forward_at_full_tilt, height_at_full_tilt; an \
                engine described in place needs its trim, propeller_diameter and plate_to_propeller_shaft too")
            .closely(inch(0.25)),
        /// Where the tilt is stopped short of full tilt, from upright.
        tilt_stop: Option<Reading<Angle>> = called("stop of its tilt").within(bounds::TILT)
            .taken(Stop::Engine, "beside the engine, tilted up to the stop", "angle finder on the leg, from upright")
            .closely(deg(1.0)).spot(410, 236),
        /// Where each stands across the boat; on the centreline where none is given.
        at: Vec<Across> = called("where the engines stand").up_to(12).within(bounds::ACROSS)
            .taken(Stop::Engine, "the offer, or on the transom", "from the boat's centreline to each engine's")
            .closely(inch(0.25)).spot(62, 88),
        /// What they are for; where left out, a small engine beside a large one is taken to be the auxiliary.
        role: Option<Role> = called("what it is for"),
        /// The hand of each propeller, in the order of `at`.
        propellers: Vec<Hand> = called("hand of each propeller")
            .taken(Stop::Engine, "on the propeller or its papers",
                "seen from astern, going ahead: right turns clockwise").spot(410, 416),
        /// The propeller of each, as far as it is known.
        propeller: Option<PropellerSpec> = called("propeller")
            .taken(Stop::Engine, "on its hub, or its papers",
                "blades, and the two numbers on the hub: diameter, then pitch: propeller: (blades: 3, diameter: \
                \"15-1/2 in\", pitch: \"17 in\")").spot(410, 416),
        /// How many holes up they are mounted: 0 with the bracket's rest on the transom's top.
        holes_up: Option<u8> = called("hole row in which the engine hangs").within(bounds::HOLES_UP)
            .taken(Stop::Engine, "engine bracket",
                "0 with the bracket's rest on the transom's top, one more for each hole up").spot(442, 314),
        /// What they hang on, where it is not the transom itself.
        bracket: Option<Hung> = called("what it hangs on"),
        /// Setback as measured, from the transom's face to the bracket's; the catalog's where left out.
        setback: Option<Reading<Length>> = called("setback").within(bounds::SETBACK)
            .taken(Stop::Bracket, "between transom and bracket face",
                "from the transom's face to the face on which the engine hangs, square to it")
            .closely(inch(0.125)).spot(494, 322),
        /// How far the bracket's top stands below the transom's top, plumb from a level line; the catalog's where left
        /// out.
        drop: Option<Reading<Length>> = called("drop of the bracket's top").within(bounds::DROP)
            .taken(Stop::Bracket, "behind the transom",
                "straightedge level from the transom's top aft over the bracket; plumb down from it to the top of \
                the bracket's face").closely(inch(0.125)).spot(478, 262),
        /// The bolts that hold each of them, or the bracket, to the transom.
        bolts: Option<Bolting> = called("size and grade of the mounting bolts")
            .taken(Stop::Bolts, "bolt heads outside, nuts inside the transom",
                "thread size with a gauge or a known nut, the grade as the head is marked: bolts: (size: \
                \"1/2-13\", grade: \"A4-70\"); before the engines hang, the bolts that they shall get").spot(200, 325),
    }
}

impl EngineGroup {
    /// Where the engines stand: one on the centreline where nothing is said.
    pub fn places(&self) -> Vec<Across> {
        if self.at.is_empty() { vec![Across::Centre] } else { self.at.clone() }
    }
}

things! {
    /// A propeller by the marks on its hub.
    pub struct PropellerSpec {
        /// Its blades.
        blades: Option<u8> = called("blades of its propeller").within(bounds::BLADES),
        /// Diameter: the first of the two numbers on its hub.
        diameter: Option<Reading<Length>> = called("diameter of its propeller").within(bounds::PROPELLER),
        /// Pitch: the second of them.
        pitch: Option<Reading<Length>> = called("pitch of its propeller").within(bounds::PITCH),
        /// Area of its blades over that of its disc, where its maker tells it.
        area_ratio: Option<Reading<Ratio>> = called("blade area of its propeller, of the disc's").within(bounds::BLADE_AREA),
    }
}

things! {
    /// A bracket or setback device.
    pub struct Hung {
        /// A class of the catalog…
        class: Option<String> = label(),
        /// …or the device described in place.
        described: Option<BracketSpec> = called("what the bracket is")
            .taken(Stop::Bracket, "its plate or papers", "what its maker gives of it"),
        /// Its lowest point above the bottom of the hull, as fitted or as drawn.
        bottom: Option<Reading<Length>> = called("height of the bracket's lowest point").within(bounds::UP)
            .taken(Stop::Bracket, "behind the transom",
                "straightedge along the bottom out past the transom; up to the bracket's lowest point")
            .closely(inch(0.25)).spot(505, 342),
        /// Its width, where it is a box.
        width: Option<Reading<Length>> = called("width of the bracket's box").within(bounds::TANK_SIZE)
            .taken(Stop::Bracket, "behind the transom", "across, at its widest").closely(inch(0.25)).spot(470, 330),
        /// How far a lifting bracket goes up, along the transom; its class's where left out.
        travel: Option<Reading<Length>> = called("travel of the lifting bracket").within(bounds::TRAVEL)
            .taken(Stop::Bracket, "beside the engine on its lifting bracket",
                "mark where its rest stands at the bottom of the travel and at the top; between the marks, along the \
                transom. Where it is carried lower than that under way, tell that as raised")
            .closely(inch(0.25)).spot(486, 276),
        /// How high of that it is raised at most, above the bottom: so it is carried under way. All of its travel where left
        /// out.
        raised: Option<Reading<Length>> = called("height to which the lifting bracket is raised").within(bounds::TRAVEL),
    }
}

words! {
    /// What an engine is for.
    pub enum Role [Default] {
        /// It drives her, and counts against the power limit.
        [default] Main = "main";
        /// It brings her home, or trolls.
        Auxiliary = "auxiliary";
    }
}

words! {
    /// The way a propeller turns, seen from astern, going ahead.
    pub enum Hand {
        Right = "right";
        Left = "left";
        /// Two propellers on one shaft line, turning against each other.
        Counter = "counter", "two, turning against each other";
    }
}
