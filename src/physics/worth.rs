//! What it costs, what it saves, how long until both are even. Money is a plain number in the job's currency.

use uom::si::f64::{Ratio, Time, Volume, VolumeRate};

use crate::quantity::Dimensioned;
use crate::working::{Sheet, Term, number};

/// An amount with how far off it may be.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Amount {
    /// As told or reckoned.
    pub value: f64,
    /// How far off that may be, either way.
    pub doubt: f64,
}

impl Amount {
    /// Both together; what is not known of one is not known for other reasons of the other.
    pub fn plus(self, other: Amount) -> Self {
        Amount { value: self.value + other.value, doubt: self.doubt.hypot(other.doubt) }
    }
}

/// What a season costs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Season {
    /// Fuel money, with what the flow of fuel is worth; not what its price is.
    pub fuel: Amount,
    /// What else it costs, known for certain.
    pub upkeep: f64,
}

impl Season {
    /// All of it, the price of fuel known to this part of it.
    pub fn total(self, price: f64) -> Amount {
        let Amount { value, doubt } = self.fuel;
        Amount { value: value + self.upkeep, doubt: doubt.hypot(price * value) }
    }

    /// What it costs more than another with the same price: a price that is off is off for both.
    pub fn over(self, other: Season, price: f64) -> Amount {
        let fuel = self.fuel.value - other.fuel.value;
        let doubt = self.fuel.doubt.hypot(other.fuel.doubt).hypot(price * fuel);
        Amount { value: fuel + self.upkeep - other.upkeep, doubt }
    }
}

/// Fuel money of so many hours at one speed, `h · f · c`: `price` for a volume.
pub fn fuel_money(sheet: &mut Sheet, hours: Time, fuel: VolumeRate, price: f64, volume: Volume) -> Term<Ratio> {
    let burnt = Term::new("h", hours) * Term::new("f", fuel);
    let price = Term::new("c", Ratio::from_si(price)) / Term::new("per", volume);
    sheet.set("m", "fuel money", burnt * price)
}

/// Seasons until what is saved has paid what it cost; `None` where nothing is saved.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Payback {
    /// At best: the least cost, the most saved.
    pub soonest: Option<f64>,
    /// As reckoned.
    pub seasons: Option<f64>,
    /// At worst: the most cost, the least saved.
    pub latest: Option<f64>,
}

/// The seasons, `K / (before − after)`, with what is not known of the cost and of what is saved at its best and its worst.
pub fn payback(sheet: &mut Sheet, cost: Amount, [before, after]: [Amount; 2], saved: Amount) -> Payback {
    let money = |symbol: &str, value: f64| Term::new(symbol, Ratio::from_si(value));
    let saving = sheet.set(
        "E",
        "saved in a season",
        money("a season before", before.value) - money("a season after", after.value),
    );
    let seasons = |cost: f64, saved: f64| (saved > 0.0).then_some((cost / saved).max(0.0));
    if saved.value > 0.0 {
        sheet.set("N", "seasons until it is even", number(1.0) * money("K", cost.value) / saving);
    }
    Payback {
        soonest: seasons(cost.value - cost.doubt, saved.value + saved.doubt),
        seasons: seasons(cost.value, saved.value),
        latest: seasons(cost.value + cost.doubt, saved.value - saved.doubt),
    }
}
