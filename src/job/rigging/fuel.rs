//! From the tank to the engines.

use uom::si::f64::{Length, Pressure, Time, Velocity, VolumeRate};

use super::declare::rigged;
use super::parts::{Chosen, HoseSpec};
use crate::quantity::Temperature;

rigged! {
    /// How the engines are fed.
    FuelRig
    read {
        /// Of the fuel on the hottest day that she runs.
        temperature: Temperature = "temperature of the fuel on the hottest day", Plain, "0 °F", "160 °F";
        /// Reid vapour pressure of the gasoline sold there.
        reid: Pressure = "Reid vapour pressure of the gasoline", Plain, "5 psi", "16 psi";
        /// Inside of the tank's vent hose.
        vent: Length = "inside of the vent hose", Plain, "1/8 in", "3 in";
        /// Inside of the fill hose.
        fill: Length = "inside of the fill hose", Plain, "1/2 in", "6 in";
        /// What all engines burn at the cruise of the trial.
        burn: VolumeRate = "fuel burnt at cruise in the trial", Plain, "0.05 gal/h", "300 gal/h";
        /// The speed of that cruise.
        cruise: Velocity = "speed of that cruise", Plain, "1 mph", "120 mph";
        /// How far she shall go on a tank.
        distance: Length = "how far she shall go on a tank", Distance, "1 mi", "2,000 mi";
        /// How long at full throttle.
        hours: Time = "how long she shall run at full throttle", Plain, "0.1 h", "48 h";
    }
    have {}
    hold {
        /// Lines from the tank to an engine.
        lines: Vec<FuelLine>;
    }
}

rigged! {
    /// One line from a tank to an engine.
    FuelLine
    read {
        /// From the pick-up to the engine.
        length: Length = "length of the fuel line", FeetInches, "4 in", "100 ft";
        /// From the tank's bottom up to the engine's pump.
        lift: Length = "lift from the tank's bottom to the engine's pump", Tape, "-10 ft", "15 ft";
        /// What flows, where it is asked outright.
        flow: VolumeRate = "flow in the fuel line", Plain, "0.01 gal/h", "300 gal/h";
    }
    have {
        /// What it is called.
        name: Option<String>;
        /// How many engines it feeds; one where left out.
        engines: Option<u8>;
        /// Elbows, barbed ends and valves on the way.
        elbows: u8;
        barbs: u8;
        valves: u8;
        /// Whether an anti-siphon valve stands at the tank, a primer bulb in the line, a water separator.
        anti_siphon: Option<bool>;
        bulb: Option<bool>;
        separator: Option<bool>;
        /// Age of the hose in years.
        years: Option<f64>;
    }
    hold {
        /// The hose.
        hose: Chosen<HoseSpec>;
        /// What its filter takes off.
        filter: Option<Filter>;
    }
}

rigged! {
    /// What a filter takes off when it is clean.
    Filter
    read {
        /// The flow that it is rated for.
        flow: VolumeRate = "flow that the filter is rated for", Plain, "1 gal/h", "1,000 gal/h";
        /// What it takes off then.
        drop: Pressure = "what the filter takes off at that flow", Suction, "0 inHg", "10 inHg";
    }
    have {}
    hold {}
}
