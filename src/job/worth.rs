//! Whether it was worth it: what it costs, how she is used, what fuel costs. Money is a plain number, in one currency.

use uom::si::f64::{Time, Velocity, Volume};

use super::bounds;
use crate::quantity::Reading;
use crate::reading::*;

things! {
    /// Costs and use.
    pub struct Worth {
        /// What its money is called: "USD".
        currency: Option<String>,
        /// What is paid, line by line; what the old engines fetch is negative.
        costs: Vec<Cost> = called("cost")
            .taken(Stop::Papers, "offers and bills",
                "line by line: engines, rigging, labour hours at a rate, haul-out, trial, less what the old ones fetch"),
        /// Hours in a season at each speed.
        season: Vec<Use> = called("use in a season")
            .taken(Stop::Papers, "the owner's log, or the hour meter",
                "hours in a season at each speed: season: [(speed: \"27 mph\", hours: \"120 h\")]"),
        /// The price of fuel.
        fuel: Option<FuelPrice> = called("price of fuel")
            .taken(Stop::Papers, "the fuel dock", "what a volume costs: fuel: (price: 4.20, per: \"1 gal\")"),
        /// Upkeep in a season besides fuel, with the old engines.
        upkeep_before: Option<f64> = called("upkeep of a season before").within(bounds::MONEY)
            .taken(Stop::Papers, "bills of the last seasons", "service and repairs of the engines in a season, in the same money"),
        /// The same with the new engines.
        upkeep_after: Option<f64> = called("upkeep of a season after").within(bounds::MONEY)
            .taken(Stop::Papers, "the offer, or the dealer", "service of the new engines in a season, in the same money"),
        /// Seasons that are looked ahead; ten where left out.
        seasons: Option<u8> = called("seasons looked ahead").within(bounds::SEASONS)
            .taken(Stop::Papers, "the owner", "how many seasons to look ahead"),
        /// What money does not count, listed and not priced.
        not_priced: Vec<String> = called("what is not priced"),
    }
}

things! {
    /// A line of the costs: an amount, or hours at a rate.
    pub struct Cost {
        /// What it is.
        what: String = label(),
        /// All of it; negative where it comes in.
        amount: Option<f64> = called("amount").within(bounds::MONEY),
        /// Hours of labour…
        hours: Option<Reading<Time>> = called("hours of labour").within(bounds::LABOUR),
        /// …and what an hour costs.
        rate: Option<f64> = called("rate of an hour").within(bounds::MONEY),
        /// How far off it may be.
        give_or_take: Option<f64> = called("give or take").within(bounds::MONEY),
    }
}

things! {
    /// Hours at a speed.
    pub struct Use [whole] {
        /// The speed.
        speed: Reading<Velocity> = called("speed that she is used at").within(bounds::TRIAL_SPEED),
        /// Hours in a season.
        hours: Reading<Time> = called("hours in a season").within(bounds::USED),
    }
}

things! {
    /// What fuel costs.
    pub struct FuelPrice [whole] {
        /// The price…
        price: f64 = called("price of fuel").within(bounds::MONEY),
        /// …of this much.
        per: Reading<Volume> = called("volume of fuel at its price").within(bounds::FUEL_ABOARD),
        /// How far off it may be.
        give_or_take: Option<f64> = called("give or take").within(bounds::MONEY),
    }
}
