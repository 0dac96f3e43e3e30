//! Whether it was worth it: costs, use, fuel, and when both are even.

use uom::si::f64::{Time, Velocity, VolumeRate};

use super::Case;
use super::float::Side;
use super::trial::Doubtful;
use crate::job::{Cost, FuelPrice, Worth};
use crate::physics::worth::{Amount, Payback, Season, fuel_money, payback};
use crate::quantity::{Dimensioned, HOUR, Measure, Text, grouped, say};
use crate::working::{Part, Sheet, Table};

/// A line of the costs.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// What is paid for.
    pub what: String,
    /// What it costs, in the job's currency; negative where money comes in.
    pub amount: Amount,
}

/// Hours at a speed, with the fuel they take before and after.
#[derive(Clone, Debug, PartialEq)]
pub struct Used {
    /// The speed that she is used at.
    pub speed: Velocity,
    /// Time in a season at that speed.
    pub hours: Time,
    /// Fuel flow of all engines before and after; nothing where neither trial nor reckoning tells it.
    pub fuel: [Option<Doubtful<VolumeRate>>; 2],
    /// What that fuel costs in a season, before and after; nothing where fuel or price is not told.
    pub money: [Option<Amount>; 2],
}

/// The reckoning.
#[derive(Clone, Debug, PartialEq)]
pub struct Reckoned {
    /// What its money is called, as it stands behind an amount.
    pub currency: String,
    /// The costs whose amounts are told.
    pub lines: Vec<Line>,
    /// All of them together; nothing where none is told, or the amount of one is not.
    pub cost: Option<Amount>,
    /// How she is used in a season, speed by speed.
    pub used: Vec<Used>,
    /// A season before and after, fuel and upkeep.
    pub season: [Option<Amount>; 2],
    /// What a season costs less than before.
    pub saved: Option<Amount>,
    /// When both are even; nothing where the cost or a season is not known.
    pub payback: Option<Payback>,
    /// Seasons that are looked ahead.
    pub seasons: u8,
    /// What money does not count: as the job lists it, or the usual.
    pub not_priced: Vec<String>,
    /// Whether all fuel that is told, before and after, is measured; else some is reckoned.
    pub measured: [bool; 2],
    /// How fuel money and payback came about.
    pub sheet: Sheet,
}

/// Where a flow of fuel is from.
const TRIAL: &str = "the trial";
const RECKONED: &str = "`sternknee work JOB running`";

/// Seasons that are looked ahead. Common practice, no source.
const SEASONS: u8 = 10;
/// What a reckoned fuel flow is worth, as a part: hull, propeller and thirst together. Common practice, no source.
const FUEL_RECKONED: f64 = 0.2;
/// What money does not count, said where the job says nothing.
const NOT_PRICED: [&str; 4] = [
    "noise and smell",
    "hours on the old engines, and whether they bring her home",
    "safety",
    "warranty on the new ones",
];

impl Case<'_> {
    /// Costs against savings; nothing where the job tells no costs and no use.
    pub fn worth(&self) -> Option<Reckoned> {
        self.rig.job.worth.as_ref().map(|worth| Reckoned::of(self, worth))
    }

    /// The working of it.
    pub fn worth_parts(&self) -> Vec<Part> {
        match self.worth() {
            Some(reckoned) => vec![reckoned.part()],
            None => {
                let none =
                    Text::from("The job tells no costs and no use: worth: (costs: [...], season: [...], fuel: (...)).");
                vec![Part::said("costs and use", none)]
            }
        }
    }

    /// Fuel at a speed, of a trial where one was sailed there, else of the reckoning; and whether it was measured.
    fn fuel_at(&self, side: Side, speed: Velocity) -> Option<(Doubtful<VolumeRate>, bool)> {
        let trials = self.trial();
        let trial = trials.and_then(|trials| match side {
            Side::Before => trials.before.as_ref(),
            Side::After => trials.after.as_ref(),
        });
        if let Some(fuel) = trial.and_then(|trial| trial.fuel_at(speed)) {
            return Some((fuel, true));
        }
        let predicted = self.running()?.side(side).as_ref().ok()?;
        let steady =
            predicted.built.craft.steady(speed).ok().filter(|steady| steady.is_held() && steady.fuel.si() > 0.0)?;
        Some((Doubtful { value: steady.fuel, doubt: FUEL_RECKONED * steady.fuel }, false))
    }
}

/// How far off a flow of fuel may be, as a part of it.
fn part_off(fuel: &Doubtful<VolumeRate>) -> f64 {
    (fuel.doubt / fuel.value).si()
}

/// How far off the price may be, as a part of it.
fn price_off(fuel: &FuelPrice) -> f64 {
    if fuel.price == 0.0 { 0.0 } else { fuel.give_or_take.unwrap_or(0.0).abs() / fuel.price }
}

impl Line {
    fn of(cost: &Cost) -> Option<Line> {
        let labour = cost.hours.as_ref().zip(cost.rate).map(|(hours, rate)| hours.value.si() / HOUR * rate);
        let value = match (cost.amount, labour) {
            (Some(amount), Some(labour)) => amount + labour,
            (amount, labour) => amount.or(labour)?,
        };
        let doubt = cost.give_or_take.map_or(0.0, f64::abs);
        Some(Line { what: cost.what.clone(), amount: Amount { value, doubt } })
    }
}

impl Reckoned {
    fn of(case: &Case, worth: &Worth) -> Reckoned {
        let lines: Vec<Line> = worth.costs.iter().filter_map(Line::of).collect();
        let all_lines = !worth.costs.is_empty() && lines.len() == worth.costs.len();
        let cost = lines.iter().map(|line| line.amount).reduce(Amount::plus).filter(|_| all_lines);
        let mut sheet = Sheet::default();
        let mut measured = [true; 2];
        let used: Vec<Used> = worth
            .season
            .iter()
            .map(|one| {
                let told = [Side::Before, Side::After].map(|side| case.fuel_at(side, one.speed.value));
                for (side, told) in measured.iter_mut().zip(&told) {
                    *side &= told.is_none_or(|(_, measured)| measured);
                }
                let from = told.map(|told| if told.is_some_and(|(_, measured)| measured) { TRIAL } else { RECKONED });
                let fuel = told.map(|told| told.map(|(fuel, _)| fuel));
                let mut from = from.into_iter();
                let money = fuel.map(|fuel| {
                    let from = from.next().unwrap_or(RECKONED);
                    let (fuel, price) = (fuel?, worth.fuel.as_ref()?);
                    sheet.told("h", Some(&one.hours));
                    sheet.told("per", Some(&price.per));
                    sheet.origin::<VolumeRate>("f", from);
                    let term = fuel_money(&mut sheet, one.hours.value, fuel.value, price.price, price.per.value);
                    let value = term.value().si();
                    Some(Amount { value, doubt: value * part_off(&fuel).hypot(price_off(price)) })
                });
                Used { speed: one.speed.value, hours: one.hours.value, fuel, money }
            })
            .collect();
        let upkeep = [worth.upkeep_before, worth.upkeep_after].map(|upkeep| upkeep.unwrap_or(0.0));
        let price = worth.fuel.as_ref().map_or(0.0, price_off);
        let seasons = [0, 1].map(|side| {
            let by_flow = |one: &Used| {
                let Amount { value, .. } = one.money[side]?;
                Some(Amount { value, doubt: value * part_off(&one.fuel[side]?) })
            };
            let fuel: Option<Vec<Amount>> = used.iter().map(by_flow).collect();
            let fuel = fuel?.into_iter().reduce(Amount::plus)?;
            Some(Season { fuel, upkeep: upkeep[side] })
        });
        let season = seasons.map(|season| season.map(|season| season.total(price)));
        let saved = seasons[0].zip(seasons[1]).map(|(before, after)| before.over(after, price));
        let payback = match (cost, season, saved) {
            (Some(cost), [Some(before), Some(after)], Some(saved)) => {
                Some(payback(&mut sheet, cost, [before, after], saved))
            }
            _ => None,
        };
        let listed =
            if worth.not_priced.is_empty() { NOT_PRICED.map(str::to_owned).to_vec() } else { worth.not_priced.clone() };
        Reckoned {
            currency: worth.currency.clone().unwrap_or_else(|| "in money".to_owned()),
            lines,
            cost,
            used,
            season,
            saved,
            payback,
            seasons: worth.seasons.unwrap_or(SEASONS),
            not_priced: listed,
            measured,
            sheet,
        }
    }

    /// An amount in whole units of money.
    pub fn money(&self, amount: &Amount) -> Text {
        let whole = |value: f64| grouped(&format!("{:.0}", value.abs()), value < -0.5);
        if amount.doubt >= 0.5 {
            say!("{} ± {} {}", whole(amount.value), whole(amount.doubt), self.currency.as_str())
        } else {
            say!("{} {}", whole(amount.value), self.currency.as_str())
        }
    }

    fn part(&self) -> Part {
        let dash = || Text::from("–");
        let or_dash = |amount: &Option<Amount>| amount.as_ref().map_or_else(dash, |amount| self.money(amount));
        let mut costs: Vec<Vec<Text>> =
            self.lines.iter().map(|line| vec![Text::from(line.what.as_str()), self.money(&line.amount)]).collect();
        costs.push(vec![Text::from("together"), or_dash(&self.cost)]);
        let hours = |time: Time| format!("{:.0} h", time.si() / HOUR);
        let fuel =
            |fuel: &Option<Doubtful<VolumeRate>>| fuel.map_or_else(dash, |fuel| Text::from(Measure::of(fuel.value)));
        let mut season: Vec<Vec<Text>> = self
            .used
            .iter()
            .map(|one| {
                vec![
                    Text::from(Measure::of(one.speed)),
                    say!("{}", hours(one.hours)),
                    fuel(&one.fuel[0]),
                    fuel(&one.fuel[1]),
                    or_dash(&one.money[0]),
                    or_dash(&one.money[1]),
                ]
            })
            .collect();
        season.push(vec![
            Text::from("with upkeep"),
            Text::default(),
            Text::default(),
            Text::default(),
            or_dash(&self.season[0]),
            or_dash(&self.season[1]),
        ]);
        let mut sheet = self.sheet.clone();
        for (word, measured) in ["before", "after"].iter().zip(self.measured) {
            if !measured && !self.used.is_empty() {
                sheet.remark(say!("Fuel {} is reckoned, not measured, and worth a fifth either way.", *word));
            }
        }
        sheet.remark(say!("Not priced: ").then(Text::from(self.not_priced.join("; ").as_str())).then(Text::from(".")));
        Part {
            title: "costs and use".to_owned(),
            tables: vec![
                Table::new("what it costs", &["", "amount"], costs),
                Table::new(
                    "a season",
                    &["at", "hours", "fuel before", "fuel after", "money before", "money after"],
                    season,
                ),
            ],
            sheet,
        }
    }
}
