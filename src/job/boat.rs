//! The boat, her plate and her transom.

use serde::Deserialize;
use uom::si::f64::{Angle, Length, Mass, Power};

use super::engines::Across;
use crate::quantity::Reading;

/// The boat herself.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Boat {
    /// Her name or description.
    pub name: Option<String>,
    /// What sort of craft she is; a regulation may not apply to some.
    pub craft: Option<Craft>,
    /// The shape of her bottom, as the power formula distinguishes it.
    pub bottom: Option<Bottom>,
    /// Straight horizontal overall length over the deck, without outboard brackets, bow sprits and
    /// the like (33 CFR 183.3).
    pub length: Option<Reading<Length>>,
    /// Greatest beam.
    pub beam: Option<Reading<Length>>,
    /// Greatest width of the transom, handles and fittings excluded.
    pub transom_width: Option<Reading<Length>>,
    /// Broadest beam in the aftermost quarter of the length: asked for where there is no full transom.
    pub aft_quarter_beam: Option<Reading<Length>>,
    /// Deadrise at the transom.
    pub deadrise: Option<Reading<Angle>>,
    /// Beam between the chines at the transom.
    pub chine_beam: Option<Reading<Length>>,
    /// From the bottom of the hull up to the sheer, at the transom.
    pub depth: Option<Reading<Length>>,
    /// The year she was designed or built.
    pub year: Option<u16>,
    /// Design category.
    pub category: Option<Category>,
    /// Weight found in the stability test of 33 CFR 183.41, where she was put to it.
    pub stability_test: Option<Reading<Mass>>,
    /// How she carries her fuel.
    pub fuel: Option<Fuel>,
    /// How hull and transom are built.
    pub construction: Option<Construction>,
    /// What her builder lets the transom carry.
    pub transom_rating: Option<Reading<Mass>>,
    /// What her builder rates her for in power, where it is not on a plate.
    pub power_rating: Option<Reading<Power>>,
}

/// The sort of craft.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Craft {
    /// One hull, made for outboard power.
    Monohull,
    Multihull,
    Sailboat,
    Canoe,
    Kayak,
    Inflatable,
}

impl Craft {
    /// The craft in words.
    pub fn words(self) -> &'static str {
        match self {
            Craft::Monohull => "monohull",
            Craft::Multihull => "multihull",
            Craft::Sailboat => "sailboat",
            Craft::Canoe => "canoe",
            Craft::Kayak => "kayak",
            Craft::Inflatable => "inflatable",
        }
    }
}

/// The shape of the bottom.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Bottom {
    /// Flat with hard chines: the power formula allows it less.
    FlatHardChine,
    Vee,
    Round,
    /// Several vees side by side under one deck.
    Cathedral,
}

impl Bottom {
    /// The bottom in words.
    pub fn words(self) -> &'static str {
        match self {
            Bottom::FlatHardChine => "flat with hard chines",
            Bottom::Vee => "vee",
            Bottom::Round => "round",
            Bottom::Cathedral => "cathedral",
        }
    }
}

/// How hull and transom are built.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Construction {
    /// Skins of glass moulded over a core.
    MouldedGlass,
    /// Plywood on frames, with or without a thin sheath.
    PlywoodOnFrames,
    /// Riveted metal plate, a board behind it at the transom.
    RivetedPlate,
    /// Welded metal plate, stiffened or with a board behind it.
    WeldedPlate,
}

/// How fuel is carried, as 33 CFR 183.41 distinguishes it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Fuel {
    /// In tanks built in; counted with the boat's own weight.
    PermanentTanks,
    /// In portable tanks; counted against the weight capacity.
    PortableTanks,
}

/// Design category (ISO 12217).
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
pub enum Category {
    A,
    B,
    C,
    D,
}

/// The plate at the helm or on the transom.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Plate {
    /// A US capacity plate (33 CFR 183, subpart B).
    Capacity {
        /// "… persons"
        persons: Option<u16>,
        /// "… or … lb"
        persons_weight: Option<Reading<Mass>>,
        /// "persons, motor, gear"
        total_weight: Option<Reading<Mass>>,
        /// "motor"
        power: Option<Reading<Power>>,
    },
    /// A builder's plate (ISO 14945).
    Builders {
        /// Persons.
        persons: Option<u16>,
        /// Greatest load that the plate gives.
        load: Option<Reading<Mass>>,
        /// Greatest power, where it gives one.
        power: Option<Reading<Power>>,
    },
    /// There is none.
    None,
    /// There is one that cannot be read.
    Illegible,
}

/// The transom, at the engines.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Transom {
    /// From its top, where the engine hangs, along it to the bottom of the hull at the centreline.
    pub height: Option<Reading<Length>>,
    /// The same off the centreline, where it was taken.
    pub heights: Vec<OffCentreHeight>,
    /// From vertical, top aft.
    pub angle: Option<Reading<Angle>>,
    /// Through everything that the bolts go through.
    pub thickness: Option<Reading<Length>>,
    /// What it is made of: a name from the catalog's materials.
    pub material: Option<String>,
    /// What was found of its core.
    pub core: Option<Core>,
    /// Width of the cutout in which the engines hang.
    pub cutout_width: Option<Reading<Length>>,
    /// Said where there is no cutout to measure.
    pub cutout: Option<Cutout>,
    /// How its top edge is finished.
    pub top_edge: Option<TopEdge>,
    /// The splash-well inside of it.
    pub splash_well: Option<SplashWell>,
    /// From its top down to the upper bolt holes of the new engines, as fitted or as planned.
    pub upper_holes: Option<Reading<Length>>,
    /// Holes that are there already.
    pub holes: Vec<Hole>,
}

/// Where the top is not cut down for the engines.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Cutout {
    /// There is none: the top is level all across.
    None,
}

/// The splash-well inside of the transom.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum SplashWell {
    /// There is none: the inside of the transom is open down to the bilge or the sole.
    None,
    /// From the transom's top down to the well's floor.
    Floor(Reading<Length>),
}

/// What sounding and probing said of the core.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Core {
    Sound,
    /// Damp or doubtful.
    Suspect,
    Soft,
}

impl Core {
    /// The core in a word.
    pub fn words(self) -> &'static str {
        match self {
            Core::Sound => "sound",
            Core::Suspect => "suspect",
            Core::Soft => "soft",
        }
    }
}

/// How the top of the transom is finished.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum TopEdge {
    /// Glassed over or solid.
    Sealed,
    /// Under a metal or plastic cap.
    Capped,
    /// The core shows.
    Bare,
}

impl TopEdge {
    /// The finish in a word.
    pub fn words(self) -> &'static str {
        match self {
            TopEdge::Sealed => "sealed",
            TopEdge::Capped => "capped",
            TopEdge::Bare => "bare",
        }
    }
}

/// A transom height taken off the centreline.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct OffCentreHeight {
    /// Where.
    pub at: Across,
    /// From the top along the transom to the bottom of the hull there.
    pub height: Reading<Length>,
}

/// A hole in the transom.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Hole {
    /// Where across.
    pub at: Across,
    /// From the transom's top down to its centre.
    pub below: Reading<Length>,
    /// Its diameter.
    pub diameter: Option<Reading<Length>>,
    /// Whether it was plugged and glassed over: then it weakens nothing.
    #[serde(default)]
    pub filled: bool,
}

/// How she is steered.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Steering {
    Tiller,
    /// Wheel with a mechanical cable.
    RemoteMechanical,
    /// Wheel with a hydraulic cylinder.
    RemoteHydraulic,
    /// Wheel with an electric actuator.
    RemoteElectric,
}

impl Steering {
    /// Whether a wheel steers her from away from the engine, as 33 CFR 183.53 has it.
    pub fn is_remote(self) -> bool {
        self != Steering::Tiller
    }

    /// The steering in words.
    pub fn words(self) -> &'static str {
        match self {
            Steering::Tiller => "tiller",
            Steering::RemoteMechanical => "remote mechanical",
            Steering::RemoteHydraulic => "remote hydraulic",
            Steering::RemoteElectric => "remote electric",
        }
    }
}
