//! How she floats: the hull's shape, her freeboards as measured, what is aboard, the edges where water
//! comes in, and the loadings to look at.

use serde::Deserialize;
use uom::si::f64::{Length, Mass, MassDensity, Ratio, Volume};

use super::Item;
use super::engines::Across;
use crate::quantity::Reading;

/// The shape of the hull, in one of three ways.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum HullShape {
    /// A handful of sections read with a tape and a level, from the transom forward.
    Tape {
        /// The sections.
        sections: Vec<Section>,
        /// How the lines run between them.
        #[serde(default)]
        lines: Lines,
    },
    /// A table of offsets, from the transom forward.
    Offsets {
        /// The stations.
        stations: Vec<OffsetStation>,
        /// How the lines run between them.
        #[serde(default)]
        lines: Lines,
    },
    /// A closed surface of triangles in boat axes: a stereolithography (STL) file.
    Mesh {
        /// The file, from the folder of the job.
        file: String,
        /// What one unit of the file is.
        unit: Reading<Length>,
    },
}

/// How lines run between sections.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Lines {
    /// Fair, never bulging past the sections.
    #[default]
    Fair,
    /// Straight from section to section.
    Straight,
}

/// One section of a hull with a chine.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Section {
    /// Forward of the transom, at the keel.
    pub forward: Reading<Length>,
    /// Height of the bottom on the centreline.
    pub keel: Reading<Length>,
    /// Knuckles between keel and chine, from the keel out.
    #[serde(default)]
    pub bottom_knuckles: Vec<Offset>,
    /// The chine.
    pub chine: Offset,
    /// Knuckles between chine and sheer, upward.
    #[serde(default)]
    pub side_knuckles: Vec<Offset>,
    /// The sheer.
    pub sheer: Offset,
}

/// One station of a table of offsets.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct OffsetStation {
    /// Forward of the transom, at the keel.
    pub forward: Reading<Length>,
    /// From the keel up to the sheer.
    pub points: Vec<Offset>,
}

/// A point of a section.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Offset {
    /// Half-breadth: from the centreline out.
    pub out: Reading<Length>,
    /// Above the baseline.
    pub up: Reading<Length>,
}

/// The water and how she lies in it.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Afloat {
    /// The water.
    pub water: Option<Water>,
    /// Freeboards or waterline marks as measured.
    pub marks: Vec<Mark>,
    /// Which engines hung on her then; the old ones before ordering, the new ones as fitted.
    pub engines: Option<EnginesThen>,
    /// Who was aboard then, and where.
    pub crew: Vec<CrewAt>,
    /// What else was aboard then that is no part of her: sandbags, tools.
    pub also: Vec<Item>,
}

/// The water she floats in.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Water {
    Salt,
    Fresh,
    /// Water of this density.
    Density(Reading<MassDensity>),
}

/// Which engines hung on her when the marks were taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum EnginesThen {
    Old,
    New,
    None,
}

/// A point of the boat and its height above the water.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Mark {
    /// What it is.
    pub what: Option<String>,
    /// Forward of the transom.
    pub forward: Option<Reading<Length>>,
    /// Which side, and how far off the centreline.
    pub across: Option<Across>,
    /// Above the baseline.
    pub up: Option<Reading<Length>>,
    /// Above the water, plumb: a freeboard; zero on the waterline.
    pub above_water: Option<Reading<Length>>,
}

/// Weights of the boat and of what is aboard.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Weights {
    /// The bare boat: no engines, brackets, liquids, persons or gear.
    pub boat: BoatWeight,
    /// Tanks and live wells.
    pub tanks: Vec<TankEntry>,
    /// Places of persons.
    pub places: Vec<Seat>,
    /// What one person weighs.
    pub person: Option<Reading<Mass>>,
    /// How many go out in her.
    pub crew: Option<u16>,
    /// Gear that is usually aboard.
    pub gear: Vec<Item>,
}

/// The bare boat.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct BoatWeight {
    /// Her weight.
    pub weight: Option<Reading<Mass>>,
    /// Her centre forward of the transom.
    pub forward: Option<Reading<Length>>,
    /// Her centre off the centreline.
    pub across: Option<Across>,
    /// Her centre above the baseline.
    pub above: Option<Reading<Length>>,
}

/// A tank.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct TankEntry {
    /// What it is called.
    pub what: String,
    /// What is in it.
    pub holds: Liquid,
    /// How much it takes.
    pub capacity: Option<Reading<Volume>>,
    /// How full it was when the marks were taken.
    pub fill: Option<Reading<Ratio>>,
    /// Its centre forward of the transom.
    pub forward: Option<Reading<Length>>,
    /// Its centre off the centreline.
    pub across: Option<Across>,
    /// Its centre above the baseline.
    pub above: Option<Reading<Length>>,
    /// Its length fore and aft, inside.
    pub length: Option<Reading<Length>>,
    /// Its width athwart, inside; between baffles, where they divide it.
    pub width: Option<Reading<Length>>,
}

/// What a tank holds.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Liquid {
    #[default]
    Fuel,
    Water,
    /// Water of the sea or lake, for bait or catch.
    LiveWell,
}

/// A place for persons.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Seat {
    /// What it is called.
    pub what: String,
    /// How many it holds; one where nothing is said.
    pub holds: Option<u16>,
    /// Forward of the transom.
    pub forward: Option<Reading<Length>>,
    /// Off the centreline.
    pub across: Option<Across>,
    /// Centre of a person there, above the baseline.
    pub above: Option<Reading<Length>>,
}

/// So many persons at a place.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct CrewAt {
    /// How many; one where nothing is said.
    pub persons: Option<u16>,
    /// A place of the job…
    pub at: Option<String>,
    /// …or where they are: forward of the transom,
    pub forward: Option<Reading<Length>>,
    /// off the centreline,
    pub across: Option<Across>,
    /// and above the baseline.
    pub above: Option<Reading<Length>>,
}

/// An edge where water can come in, or from which it must run off.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Edge {
    /// What it is called.
    pub name: String,
    /// What sort it is.
    pub kind: EdgeKind,
    /// Forward of the transom; negative behind it.
    pub forward: Option<Reading<Length>>,
    /// Off the centreline.
    pub across: Option<Across>,
    /// Whether the same stands on the other side too.
    pub both_sides: bool,
    /// Above the baseline.
    pub up: Option<Reading<Length>>,
}

/// What sort of edge.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum EdgeKind {
    /// Lowest point where water comes in over the motorwell or the transom.
    Well,
    /// Outlet of a scupper.
    Scupper,
    /// Cockpit sole at its lowest.
    Sole,
    /// Sheer or washboard.
    Sheer,
    /// Any other opening.
    #[default]
    Other,
}

/// A loading of the boat.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Condition {
    /// What it is called.
    pub name: String,
    /// How full the fuel tanks are.
    pub fuel: Option<Reading<Ratio>>,
    /// How full the water tanks are.
    pub water: Option<Reading<Ratio>>,
    /// How full the live wells are.
    pub live_well: Option<Reading<Ratio>>,
    /// Who is aboard, and where.
    pub crew: Vec<CrewAt>,
    /// Whether the usual gear stays ashore.
    pub gear_ashore: bool,
    /// What else is aboard.
    pub also: Vec<Item>,
}

/// A well that the water fills up to its level outside: a motorwell with open drains.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Flooded {
    /// What it is called.
    pub what: String,
    /// Its after end forward of the transom; at the transom where it is left out.
    pub forward: Option<Reading<Length>>,
    /// Its middle off the centreline.
    pub across: Option<Across>,
    /// Its length fore and aft.
    pub length: Option<Reading<Length>>,
    /// Its width.
    pub width: Option<Reading<Length>>,
    /// Its floor above the baseline.
    pub floor: Option<Reading<Length>>,
}
