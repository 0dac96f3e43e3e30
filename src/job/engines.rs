//! Engines as a job names them: which, where, on what.

use serde::Deserialize;
use uom::si::f64::{Angle, Length, Mass, Ratio};

use super::Bolting;
use super::specs::{BracketSpec, EngineSpec};
use super::swing::MountingNumbers;
use crate::quantity::{Dimensioned, Reading};

/// Engines of one sort that hang on one thing: a single, a pair on a bracket, a small one beside.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct EngineGroup {
    /// A class of the catalog…
    pub class: Option<String>,
    /// …or the engine described in place.
    pub described: Option<EngineSpec>,
    /// Which of its shaft lengths, by the trade's name for it (20 in, 25 in…).
    pub shaft: Option<Reading<Length>>,
    /// One engine's weight as it hangs, where it was put on a scale.
    pub weighed: Option<Reading<Mass>>,
    /// Numbers of its mounting sheet, in place of the class's.
    pub sheet: Option<MountingNumbers>,
    /// Where the tilt is stopped short of full tilt, from upright.
    pub tilt_stop: Option<Reading<Angle>>,
    /// Where each stands across the boat; on the centreline where none is given.
    pub at: Vec<Across>,
    /// What they are for.
    pub role: Role,
    /// The hand of each propeller, in the order of `at`.
    pub propellers: Vec<Hand>,
    /// The propeller of each, as far as it is known.
    pub propeller: Option<PropellerSpec>,
    /// How many holes up they are mounted: 0 with the bracket's rest on the transom's top.
    pub holes_up: Option<u8>,
    /// What they hang on, where it is not the transom itself.
    pub bracket: Option<Hung>,
    /// Setback as measured, from the transom's face to the bracket's; the catalog's where left out.
    pub setback: Option<Reading<Length>>,
    /// How far the bracket's top stands below the transom's top, plumb from a level line; the catalog's where left
    /// out.
    pub drop: Option<Reading<Length>>,
    /// The bolts that hold each of them, or the bracket, to the transom.
    pub bolts: Option<Bolting>,
}

impl EngineGroup {
    /// Where the engines stand: one on the centreline where nothing is said.
    pub fn places(&self) -> Vec<Across> {
        if self.at.is_empty() { vec![Across::Centre] } else { self.at.clone() }
    }
}

/// A propeller by the marks on its hub.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct PropellerSpec {
    /// Its blades.
    pub blades: Option<u8>,
    /// Diameter: the first of the two numbers on its hub.
    pub diameter: Option<Reading<Length>>,
    /// Pitch: the second of them.
    pub pitch: Option<Reading<Length>>,
    /// Area of its blades over that of its disc, where its maker tells it.
    pub area_ratio: Option<Reading<Ratio>>,
}

/// A bracket or setback device.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Hung {
    /// A class of the catalog…
    pub class: Option<String>,
    /// …or the device described in place.
    pub described: Option<BracketSpec>,
    /// Its lowest point above the bottom of the hull, as fitted or as drawn.
    pub bottom: Option<Reading<Length>>,
    /// Its width, where it is a box.
    pub width: Option<Reading<Length>>,
}

/// What an engine is for.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Role {
    /// It drives her, and counts against the power limit.
    #[default]
    Main,
    /// It brings her home, or trolls.
    Auxiliary,
}

/// The way a propeller turns, seen from astern, going ahead.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Hand {
    Right,
    Left,
    /// Two propellers on one shaft line, turning against each other.
    Counter,
}

impl Hand {
    /// The hand in words.
    pub fn words(self) -> &'static str {
        match self {
            Hand::Right => "right",
            Hand::Left => "left",
            Hand::Counter => "two, turning against each other",
        }
    }
}

/// A place across the boat, from the centreline.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Across {
    Centre,
    Port(Reading<Length>),
    Starboard(Reading<Length>),
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
