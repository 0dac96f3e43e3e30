//! What the transom is built of, what holds it, how it is bolted to, and how hard she is driven.

use serde::Deserialize;
use uom::si::f64::{Acceleration, Length, Mass, Ratio, Velocity};

use super::{Across, Signs};
use crate::quantity::{Moment, Reading};

/// How the transom is built and held.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Structure {
    /// Its layers from the outside in; where left out, all of it is the transom's material.
    pub lay_up: Vec<Layer>,
    /// How the hull's sides hold it.
    pub sides: Option<Bond>,
    /// How the hull's bottom holds it.
    pub bottom: Option<Bond>,
    /// How the splash-well's floor holds it.
    pub well_floor: Option<Bond>,
    /// Knees that stand against its inside.
    pub knees: Option<Vec<Upright>>,
    /// Stringers that end on its inside.
    pub stringers: Option<Vec<Upright>>,
    /// How the deck holds the transom's upper edges beside the cutout.
    pub deck: Option<Bond>,
    /// The tabs that bond it to hull, knees and stringers.
    pub tabbing: Option<Tabbing>,
    /// A member that stiffens its top edge where the engines hang.
    pub top_stiffener: Option<Stiffener>,
    /// Its upper corners above the bottom of the hull on the centreline, along the transom.
    pub corner_height: Option<Reading<Length>>,
    /// Moisture of the core by weight.
    pub moisture: Option<Reading<Ratio>>,
    /// What the hammer says of the core.
    pub percussion: Option<Sound>,
    /// How far the top edge moved under a weight on the lower unit.
    pub flex: Option<Flex>,
    /// What is seen of the transom.
    pub signs: Option<Signs>,
}

/// A layer of the transom.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Layer {
    /// A name from the catalog's materials.
    pub material: String,
    /// Its thickness.
    pub thickness: Reading<Length>,
}

/// How an edge of the transom is held.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Bond {
    /// Not at all, or no more.
    Loose,
    /// Tabbed or bedded: it cannot move, but it can turn.
    Bonded,
    /// Moulded or welded in one with the hull: it can neither move nor turn.
    BuiltIn,
}

impl Bond {
    /// The bond in words.
    pub fn words(self) -> &'static str {
        match self {
            Bond::Loose => "loose",
            Bond::Bonded => "bonded",
            Bond::BuiltIn => "built in",
        }
    }
}

/// A knee or a stringer's end on the inside of the transom.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Upright {
    /// Where across.
    pub at: Across,
    /// How far up the transom it reaches, from the bottom of the hull there.
    pub height: Option<Reading<Length>>,
    /// How wide it is itself.
    pub width: Option<Reading<Length>>,
    /// How far its fillet reaches on each side.
    pub fillet: Option<Reading<Length>>,
}

/// Laminate laid round the corner between the transom and what it is bonded to.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Tabbing {
    /// How far it lies on the transom.
    pub width: Reading<Length>,
    /// How thick it is.
    pub thickness: Reading<Length>,
}

/// A member along the top edge.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Stiffener {
    /// A name from the catalog's materials.
    pub material: String,
    /// Fore and aft.
    pub depth: Reading<Length>,
    /// Up and down.
    pub height: Reading<Length>,
}

/// What the hammer says.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Sound {
    Sharp,
    /// Duller than its surroundings.
    Dull,
    /// Dead, or the hammer marks it.
    Dead,
}

impl Sound {
    /// The sound in a word.
    pub fn words(self) -> &'static str {
        match self {
            Sound::Sharp => "sharp",
            Sound::Dull => "dull",
            Sound::Dead => "dead",
        }
    }
}

/// A weight hung on the lower unit of an engine whose leg is tilted level, and what the top edge did.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Flex {
    /// The weight: a person who leans on the gearcase.
    pub weight: Reading<Mass>,
    /// From the transom's face aft to the weight.
    pub arm: Reading<Length>,
    /// Of which engine, by its place; the centreline where left out.
    pub engine_at: Option<Across>,
    /// How far the transom's top edge moved there.
    pub moved: Reading<Length>,
}

/// How hard she is driven.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Operating {
    /// Greatest speed with the new engines, run or expected.
    pub top_speed: Option<Reading<Velocity>>,
    /// Greatest speed with the old ones.
    pub old_top_speed: Option<Reading<Velocity>>,
    /// Slamming on top of gravity, where somebody knows it better than the formula.
    pub acceleration: Option<Reading<Acceleration>>,
    /// What she weighs laden.
    pub displacement: Option<Reading<Mass>>,
}

/// The bolts that hold an engine, or its bracket, to the transom.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Bolting {
    /// A name from the catalog's bolt sizes.
    pub size: Option<String>,
    /// A name from the catalog's bolt grades.
    pub grade: Option<String>,
    /// Where they stand; where left out, the standard pattern, or a bracket's usual two rows.
    pub at: Vec<BoltPlace>,
    /// Outside diameter of the washers inside.
    pub washer: Option<Reading<Length>>,
    /// How thick they are; the bolt size's plain washer where left out.
    pub washer_thickness: Option<Reading<Length>>,
    /// The plate behind them, one for all, or one like it for each.
    pub backing_plate: Option<BackingPlate>,
    /// To what they are tightened.
    pub torque: Option<Reading<Moment>>,
    /// How thread and nut face are found.
    pub thread: Option<ThreadState>,
    /// The face that lies on the transom.
    pub face: Option<Face>,
    /// What fills the core where they go through it.
    pub inserts: Option<Inserts>,
}

/// What the core was filled with at the bolts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Inserts {
    /// Nothing: the bolts go through the bare core.
    None,
    /// Compression sleeves, one round each bolt.
    Sleeves,
    /// Solid wood or laminate let in, in place of the core.
    Solid,
}

impl Inserts {
    /// The filling in words.
    pub fn words(self) -> &'static str {
        match self {
            Inserts::None => "none",
            Inserts::Sleeves => "compression sleeves",
            Inserts::Solid => "solid wood or laminate",
        }
    }
}

/// A bolt's place.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BoltPlace {
    /// Where across.
    pub at: Across,
    /// Below the transom's top.
    pub below: Reading<Length>,
}

/// A plate on the inside, under the nuts.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BackingPlate {
    /// A name from the catalog's materials.
    pub material: String,
    /// Across.
    pub width: Reading<Length>,
    /// Up and down.
    pub height: Reading<Length>,
    /// Its thickness.
    pub thickness: Reading<Length>,
}

/// How a thread is found.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum ThreadState {
    Dry,
    Oiled,
    /// Stainless with anti-seize paste.
    Paste,
}

/// The face of an engine's clamp bracket, or of a setback bracket, that lies on the transom.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Face {
    /// Its upper edge below the transom's top.
    pub below: Reading<Length>,
    /// Across.
    pub width: Reading<Length>,
    /// Up and down.
    pub height: Reading<Length>,
}
