//! From the tank to the engines.

use crate::job::{Role, bounds};
use crate::quantity::Reading;
use crate::quantity::Style;
use crate::reading::*;
use uom::si::f64::{Length, Pressure, Time, Velocity, VolumeRate};

use super::parts::ChosenHose;
use crate::quantity::Temperature;

things! {
    /// How the engines are fed.
    pub struct FuelRig {
        /// Of the fuel on the hottest day that she runs.
        temperature: Option<Reading<Temperature>> = called("temperature of the fuel on the hottest day").within(between(fahrenheit(0.0), fahrenheit(160.0)))
            .taken(Stop::Papers, "thermometer in the tank, or local papers",
                "in summer, after a day in the sun"),
        /// Reid vapour pressure of the gasoline sold there.
        reid: Option<Reading<Pressure>> = called("Reid vapour pressure of the gasoline").within(between(psi(5.0), psi(16.0)))
            .taken(Stop::Papers, "papers of the fuel dock", "as sold there in that season"),
        /// Inside of the tank's vent hose.
        vent: Option<Reading<Length>> = called("inside of the vent hose").within(between(inch(0.125), inch(3.0)))
            .taken(Stop::Aboard, "print on the hose, at the deck fitting",
                "its inside").closely(inch(0.0625)).spot(256, 108),
        /// Inside of the fill hose.
        fill: Option<Reading<Length>> = called("inside of the fill hose").within(between(inch(0.5), inch(6.0)))
            .taken(Stop::Aboard, "print on the hose, at the deck fitting",
                "its inside").closely(inch(0.125)).spot(256, 108),
        /// What all engines burn at the cruise of the trial.
        burn: Option<Reading<VolumeRate>> = called("fuel burnt at cruise in the trial").within(between(gallon_per_hour(0.05), gallon_per_hour(300.0)))
            .taken(Stop::Helm, "on a sea trial, from the gauges",
                "all engines together at the usual cruise, both ways").closely(gallon_per_hour(0.5)).spot(318, 62),
        /// The speed of that cruise.
        cruise: Option<Reading<Velocity>> = called("speed of that cruise").within(between(mph(1.0), mph(120.0)))
            .taken(Stop::Papers, "the owner", "the speed at which she usually goes far"),
        /// How far she shall go on a tank.
        distance: Option<Reading<Length>> = called("how far she shall go on a tank").within(between(mile(1.0), mile(2000.0))).shown(Style::Distance)
            .taken(Stop::Papers, "the owner", "how far she must come on one filling"),
        /// How long at full throttle.
        hours: Option<Reading<Time>> = called("how long she shall run at full throttle").within(between(hour(0.1), hour(48.0)))
            .taken(Stop::Papers, "the owner", "hours at full throttle on one filling"),
        /// Lines from the tank to an engine.
        lines: Vec<FuelLine> = called("the fuel lines")
            .taken(Stop::Aboard, "tank to engine",
                "length, elbows, barbed ends and valves; how many engines each feeds; to: auxiliary where it is the kicker's own").closely(inch(6.0)).spot(256, 108),
    }
}

things! {
    /// One line from a tank to an engine.
    pub struct FuelLine {
        /// What it is called.
        name: Option<String> = label(),
        /// How many engines it feeds; one where left out.
        engines: Option<u8> = called("engines").within(bounds::ENGINES),
        /// What the engine that it feeds is for; a main engine where left out.
        to: Option<Role> = called("what the engine that it feeds is for"),
        /// Elbows on the way.
        elbows: u8 = called("elbows").within(bounds::FITTINGS),
        /// Barbed ends on the way.
        barbs: u8 = called("barbs").within(bounds::FITTINGS),
        /// Valves on the way.
        valves: u8 = called("valves").within(bounds::FITTINGS),
        /// Whether an anti-siphon valve stands at the tank.
        anti_siphon: Option<bool>,
        /// Whether a primer bulb lies in it.
        bulb: Option<bool>,
        /// Whether it passes a water separator.
        separator: Option<bool>,
        /// Age of the hose in years.
        years: Option<f64> = called("age of the fuel hose").within(bounds::YEARS)
            .taken(Stop::Aboard, "print on the hose",
                "the year that stands on it").spot(256, 108),
        /// From the pick-up to the engine.
        length: Option<Reading<Length>> = called("length of the fuel line").within(between(inch(4.0), foot(100.0))).in_feet()
            .taken(Stop::Aboard, "tank to engine",
                "along the hose from the pick-up to the engine").closely(inch(6.0)).spot(256, 108),
        /// From the tank's bottom up to the engine's pump.
        lift: Option<Reading<Length>> = called("lift from the tank's bottom to the engine's pump").within(between(foot(-10.0), foot(15.0)))
            .taken(Stop::Aboard, "tank and engine, boat level",
                "plumb from the pick-up's end up to the engine's pump; negative where the tank stands higher").closely(inch(1.0)).spot(256, 108),
        /// What flows, where it is asked outright.
        flow: Option<Reading<VolumeRate>> = called("flow in the fuel line").within(between(gallon_per_hour(0.01), gallon_per_hour(300.0))),
        /// The hose.
        hose: ChosenHose = called("the fuel hose")
            .taken(Stop::Aboard, "print on the hose",
                "inside, whether it is for gasoline and fire tested; or a class of the catalog").spot(256, 108),
        /// What its filter takes off.
        filter: Option<Filter>,
    }
}

things! {
    /// What a filter takes off when it is clean.
    pub struct Filter {
        /// The flow that it is rated for.
        flow: Option<Reading<VolumeRate>> = called("flow that the filter is rated for").within(between(gallon_per_hour(1.0), gallon_per_hour(1000.0))),
        /// What it takes off then.
        drop: Option<Reading<Pressure>> = called("what the filter takes off at that flow").within(between(inch_hg(0.0), inch_hg(10.0))).shown(Style::Suction),
    }
}
