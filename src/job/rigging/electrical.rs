//! Batteries, wires, fuses, a day's current.

use crate::job::bounds;
use crate::quantity::Reading;
use crate::reading::*;
use uom::si::f64::{ElectricCurrent, Length, Time};

use super::parts::{ChosenBattery, ChosenFuse, ChosenWire};
use crate::job::Across;
use crate::quantity::Temperature;

things! {
    /// How the engines are started, and what else runs on their current.
    pub struct Electrical {
        /// How batteries are joined.
        parallel: Option<Parallel> = called("how the batteries are joined")
            .taken(Stop::Aboard, "at the batteries",
                "one of none, switch, isolator").spot(190, 76),
        /// What the anodes of engines and bracket look like.
        anodes: Option<Anodes> = called("anodes and bonding")
            .taken(Stop::Engine, "engines and bracket, out of the water",
                "anodes: none, worn or sound; bonded: whether engines and bracket are joined by wire").spot(70, 140),
        /// Whether engines and a metal bracket are bonded together.
        bonded: Option<bool>,
        /// The coldest that she is started in.
        coldest: Option<Reading<Temperature>> = called("coldest that she is started in").within(between(fahrenheit(-40.0), fahrenheit(110.0)))
            .taken(Stop::Papers, "local papers, or the owner",
                "the morning of the coldest trip"),
        /// Of a day: engines at cruise.
        cruising: Option<Reading<Time>> = called("hours a day at cruise").within(between(hour(0.0), hour(24.0)))
            .taken(Stop::Papers, "the owner, or his log on paper: papers",
                "hours a day with the engines at cruise, and at idle or trolling"),
        /// Of a day: engines at idle or trolling.
        idling: Option<Reading<Time>> = called("hours a day at idle or trolling").within(between(hour(0.0), hour(24.0)))
            .taken(Stop::Papers, "the owner", "hours of a day with the engines at idle or trolling"),
        /// The batteries.
        batteries: Vec<BatteryEntry> = called("the starting batteries")
            .taken(Stop::Aboard, "plate on the battery",
                "cold cranking current, what it is for, how many engines it starts").spot(190, 76),
        /// Wires to what draws current.
        circuits: Vec<Circuit> = called("wires and what they carry")
            .taken(Stop::Aboard, "battery to device, and the print on the wire",
                "gauge, length one way, current; whether safety hangs on it").closely(inch(6.0)).spot(190, 76),
        /// What draws current in a day.
        loads: Vec<HouseLoad> = called("what draws current in a day")
            .taken(Stop::Aboard, "plates on what draws current, and the owner",
                "each with its current and the hours that it runs").spot(190, 76),
    }
}

words! {
    /// What a battery is for.
    pub enum Does {
        Starts = "starts";
        House = "house";
        Both = "both";
    }
}

words! {
    /// How batteries are joined.
    pub enum Parallel {
        /// They are not.
        None = "none";
        /// By a switch that a hand turns.
        Switch = "switch";
        /// By a relay or isolator that lets charge through and holds the starting battery back.
        Isolator = "isolator";
    }
}

words! {
    /// What the anodes look like.
    pub enum Anodes {
        None = "none";
        Worn = "worn";
        Sound = "sound";
    }
}

words! {
    /// For what the insulation of a wire is made, °C.
    pub enum Insulation [Default] {
        Sixty = "sixty";
        [default] SeventyFive = "seventy_five", "seventy five";
        HundredFive = "hundred_five", "hundred five";
    }
}

things! {
    /// A battery with what it is for.
    pub struct BatteryEntry {
        /// What it is called.
        name: Option<String> = label(),
        /// What it is for.
        does: Option<Does>,
        /// How many engines it starts.
        engines: Option<u8> = called("engines").within(bounds::ENGINES),
        /// Whether it goes on with the new engines, and so into the ledger.
        goes_on: bool,
        /// Which side, and how far off the centreline.
        across: Option<Across> = called("off the centreline").within(bounds::ACROSS),
        /// Distance of its centre forward of the transom.
        forward: Option<Reading<Length>> = called("battery, forward of the transom").within(between(foot(-10.0), foot(80.0))),
        /// Height of its centre above the baseline.
        above: Option<Reading<Length>> = called("battery, above the bottom").within(between(foot(-10.0), foot(30.0))),
        /// The battery itself.
        battery: ChosenBattery,
        /// Its cable to the engine.
        cable: Option<StarterCable> = called("battery cable")
            .taken(Stop::Aboard, "battery to starter, and the print on it",
                "gauge, and length one way").closely(inch(6.0)).spot(190, 76),
    }
}

things! {
    /// The cable from a battery to a starter.
    pub struct StarterCable {
        /// One way.
        length: Option<Reading<Length>> = called("length of the battery cable, one way").within(between(inch(4.0), foot(100.0))).in_feet(),
        /// The wire.
        wire: ChosenWire,
    }
}

things! {
    /// A wire to something that draws current.
    pub struct Circuit {
        /// What it feeds.
        name: Option<String> = label(),
        /// Whether safety hangs on it: lights, bilge pump, radio, engine.
        essential: bool,
        /// Whether it passes through an engine space.
        engine_space: bool,
        /// For what its insulation is made; for 75 °C where left out.
        insulation: Insulation,
        /// Whether it lies in a sheath or conduit all the way to its fuse.
        sheathed: bool,
        /// One way.
        length: Option<Reading<Length>> = called("length of the wire, one way").within(between(inch(4.0), foot(100.0))).in_feet()
            .taken(Stop::Aboard, "along the wire",
                "battery to device, one way").closely(inch(6.0)).spot(190, 76),
        /// What it draws.
        current: Option<Reading<ElectricCurrent>> = called("current in the wire").within(between(ampere(0.01), ampere(1000.0)))
            .taken(Stop::Aboard, "plate on what the wire feeds",
                "the greatest current that it draws").spot(190, 76),
        /// From the battery to its fuse, along the wire.
        fuse_from_battery: Option<Reading<Length>> = called("from the battery to the fuse").within(between(inch(0.0), foot(100.0)))
            .closely(inch(0.5)),
        /// The wire.
        wire: ChosenWire,
        /// Its fuse.
        fuse: ChosenFuse = called("the fuse")
            .taken(Stop::Aboard, "at the battery, and the print on the fuse",
                "its rating, and how far along the wire from the battery it sits").closely(inch(1.0)).spot(190, 76),
    }
}

things! {
    /// Something that draws current in a day.
    pub struct HouseLoad {
        /// What it is.
        name: Option<String> = label(),
        /// What it draws.
        current: Option<Reading<ElectricCurrent>> = called("current of a load").within(between(ampere(0.001), ampere(1000.0))),
        /// How long in a day.
        hours: Option<Reading<Time>> = called("hours a day of a load").within(between(hour(0.0), hour(24.0))),
    }
}
