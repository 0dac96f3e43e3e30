//! Levers, switches, gauges, tubes, and the instruments' network.

use serde::Deserialize;
use uom::si::f64::Length;

use super::declare::rigged;
use super::steering::{BendEntry, LegEntry};

/// How throttle and shift get to an engine.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Reach {
    /// By push-pull cables.
    Cables,
    /// By wire.
    Electronic,
    /// Both sit on the tiller.
    Tiller,
}

/// The switch that stops the engine when the operator is thrown from the helm.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum CutOff {
    /// There is none.
    None,
    /// The switch is there, its link is not.
    SwitchAlone,
    /// Switch and link: a lanyard or a wireless fob.
    WithLink,
}

/// The cable of a network's backbone.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Backbone {
    /// Light, as drops are.
    Light,
    Mid,
    Heavy,
}

impl Backbone {
    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            Backbone::Light => "light",
            Backbone::Mid => "mid",
            Backbone::Heavy => "heavy",
        }
    }
}

/// What an engine or a gauge understands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Speaks {
    Analogue,
    Digital,
    Both,
}

impl Speaks {
    /// Whether one understands the other.
    pub fn understands(self, other: Speaks) -> bool {
        self == other || self == Speaks::Both || other == Speaks::Both
    }
}

/// A sort of thing that comes off with old engines, or stays.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum OldPart {
    OilTank,
    OilLine,
    SteeringCable,
    SteeringHelm,
    SteeringCylinder,
    ControlCable,
    ControlBox,
    TieBar,
    Gauge,
    KeySwitch,
    FuelLine,
    Harness,
    Battery,
}

impl OldPart {
    /// The part in words.
    pub fn words(self) -> &'static str {
        match self {
            OldPart::OilTank => "oil tank",
            OldPart::OilLine => "oil line",
            OldPart::SteeringCable => "steering cable",
            OldPart::SteeringHelm => "steering helm",
            OldPart::SteeringCylinder => "steering cylinder",
            OldPart::ControlCable => "control cable",
            OldPart::ControlBox => "control box",
            OldPart::TieBar => "tie bar",
            OldPart::Gauge => "gauge",
            OldPart::KeySwitch => "key switch",
            OldPart::FuelLine => "fuel line",
            OldPart::Harness => "engine harness",
            OldPart::Battery => "battery",
        }
    }
}

/// Something of the old rigging that stays.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Kept {
    /// What sort of thing.
    pub part: OldPart,
    /// How old it is, in years.
    #[serde(default)]
    pub years: Option<f64>,
}

rigged! {
    /// Levers, switches, gauges.
    Controls
    read {}
    have {
        /// Helm stations.
        stations: Option<u8>;
        /// How the levers reach the engines.
        levers: Option<Reach>;
        /// What the new engines take.
        engines_take: Option<Reach>;
        /// What the new engines tell their gauges.
        engines_speak: Option<Speaks>;
        /// The switch that stops them when the operator is thrown.
        cut_off: Option<CutOff>;
        /// Whether they can be started in gear: no, where the control keeps them from it.
        starts_in_gear: Option<bool>;
        /// The gauges that stay or are new.
        gauges: Vec<Gauge>;
    }
    hold {
        /// Throttle and shift cables.
        cables: Vec<ControlCable>;
    }
}

/// A gauge at the helm.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Gauge {
    /// What it shows.
    pub shows: String,
    /// What it understands.
    pub reads: Speaks,
}

rigged! {
    /// A push-pull cable for throttle or shift.
    ControlCable
    read {
        /// As it is marked.
        length: Length = "marked length of the control cable", FeetInches, "2 ft", "100 ft";
    }
    have {
        /// What it moves.
        name: Option<String>;
        /// How many run the same way.
        count: Option<u8>;
        /// How old it is, in years.
        years: Option<f64>;
    }
    hold {
        /// From corner to corner, the lever first.
        legs: Vec<LegEntry>;
        /// The bends between them.
        bends: Vec<BendEntry>;
    }
}

rigged! {
    /// A tube that cables, hoses and wires pass through.
    Tube
    read {
        /// Its inside.
        inside: Length = "inside of the rigging tube", Tape, "1/2 in", "12 in";
        /// Radius of its sharpest bend.
        bend: Length = "radius of the rigging tube's sharpest bend", Tape, "1 in", "20 ft";
    }
    have {
        /// What it is called.
        name: Option<String>;
        /// Whether its ends are smooth or bushed.
        smooth_ends: Option<bool>;
        /// Whether water runs out of it.
        drains: Option<bool>;
    }
    hold {
        /// What passes through.
        through: Vec<Passing>;
    }
}

rigged! {
    /// Something that passes through a tube.
    Passing
    read {
        /// Across it; across its end, where that must pass too.
        diameter: Length = "across what passes through the tube", Plain, "1/32 in", "8 in";
    }
    have {
        /// What it is.
        what: Option<String>;
        /// How many of them; one where left out.
        count: Option<u8>;
    }
    hold {}
}

rigged! {
    /// The instruments' network.
    Network
    read {
        /// End to end.
        length: Length = "length of the network's backbone", FeetInches, "1 ft", "1,000 ft";
        /// Where power enters, from its first end.
        power_at: Length = "where power enters the backbone", FeetInches, "0 ft", "1,000 ft";
    }
    have {
        /// Its cable.
        cable: Option<Backbone>;
        /// Terminators on it.
        terminators: Option<u8>;
        /// Whether the new engines reach it: by themselves or through a gateway each.
        engines_reach_it: Option<bool>;
    }
    hold {
        /// What hangs on it.
        devices: Vec<Device>;
    }
}

rigged! {
    /// A device on the network.
    Device
    read {
        /// From the backbone's first end.
        at: Length = "where the device joins the backbone", FeetInches, "0 ft", "1,000 ft";
        /// Its drop cable.
        drop: Length = "length of the drop cable", FeetInches, "0 ft", "100 ft";
    }
    have {
        /// What it is.
        name: Option<String>;
        /// Its load equivalents, as its plate says: 50 mA each.
        equivalents: Option<u8>;
    }
    hold {}
}
