//! Batteries, wires, fuses, a day's current.

use serde::Deserialize;
use uom::si::f64::{ElectricCurrent, Length, Time};

use super::declare::rigged;
use super::parts::{BatterySpec, Chosen, FuseSpec, WireSpec};
use crate::job::Across;
use crate::quantity::Temperature;

rigged! {
    /// How the engines are started, and what else runs on their current.
    Electrical
    read {
        /// The coldest that she is started in.
        coldest: Temperature = "coldest that she is started in", Plain, "-40 °F", "110 °F";
        /// Of a day: engines at cruise, and at idle or trolling.
        cruising: Time = "hours a day at cruise", Plain, "0 h", "24 h";
        idling: Time = "hours a day at idle or trolling", Plain, "0 h", "24 h";
    }
    have {
        /// How batteries are joined.
        parallel: Option<Parallel>;
        /// What the anodes of engines and bracket look like.
        anodes: Option<Anodes>;
        /// Whether engines and a metal bracket are bonded together.
        bonded: Option<bool>;
    }
    hold {
        /// The batteries.
        batteries: Vec<BatteryEntry>;
        /// Wires to what draws current.
        circuits: Vec<Circuit>;
        /// What draws current in a day.
        loads: Vec<HouseLoad>;
    }
}

/// What a battery is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Does {
    Starts,
    House,
    Both,
}

/// How batteries are joined.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Parallel {
    /// They are not.
    None,
    /// By a switch that a hand turns.
    Switch,
    /// By a relay or isolator that lets charge through and holds the starting battery back.
    Isolator,
}

/// What the anodes look like.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Anodes {
    None,
    Worn,
    Sound,
}

/// For what the insulation of a wire is made, °C.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Insulation {
    Sixty,
    #[default]
    SeventyFive,
    HundredFive,
}

rigged! {
    /// A battery with what it is for.
    BatteryEntry
    read {
        /// Distance of its centre forward of the transom.
        forward: Length = "battery, forward of the transom", Tape, "-10 ft", "80 ft";
        /// Height of its centre above the baseline.
        above: Length = "battery, above the bottom", Tape, "-10 ft", "30 ft";
    }
    have {
        /// What it is called.
        name: Option<String>;
        /// What it is for.
        does: Option<Does>;
        /// How many engines it starts.
        engines: Option<u8>;
        /// Whether it goes on with the new engines, and so into the ledger.
        goes_on: bool;
        /// Which side, and how far off the centreline.
        across: Option<Across>;
    }
    hold {
        /// The battery itself.
        battery: Chosen<BatterySpec>;
        /// Its cable to the engine.
        cable: Option<StarterCable>;
    }
}

rigged! {
    /// The cable from a battery to a starter.
    StarterCable
    read {
        /// One way.
        length: Length = "length of the battery cable, one way", FeetInches, "4 in", "100 ft";
    }
    have {}
    hold {
        /// The wire.
        wire: Chosen<WireSpec>;
    }
}

rigged! {
    /// A wire to something that draws current.
    Circuit
    read {
        /// One way.
        length: Length = "length of the wire, one way", FeetInches, "4 in", "100 ft";
        /// What it draws.
        current: ElectricCurrent = "current in the wire", Plain, "0.01 A", "1,000 A";
        /// From the battery to its fuse, along the wire.
        fuse_from_battery: Length = "from the battery to the fuse", Tape, "0 in", "100 ft";
    }
    have {
        /// What it feeds.
        name: Option<String>;
        /// Whether safety hangs on it: lights, bilge pump, radio, engine.
        essential: bool;
        /// Whether it passes through an engine space.
        engine_space: bool;
        /// For what its insulation is made; for 75 °C where left out.
        insulation: Insulation;
        /// Whether it lies in a sheath or conduit all the way to its fuse.
        sheathed: bool;
    }
    hold {
        /// The wire.
        wire: Chosen<WireSpec>;
        /// Its fuse.
        fuse: Chosen<FuseSpec>;
    }
}

rigged! {
    /// Something that draws current in a day.
    HouseLoad
    read {
        /// What it draws.
        current: ElectricCurrent = "current of a load", Plain, "0.001 A", "1,000 A";
        /// How long in a day.
        hours: Time = "hours a day of a load", Plain, "0 h", "24 h";
    }
    have {
        /// What it is.
        name: Option<String>;
    }
    hold {}
}
