//! Batteries: what they give a starter in the cold, and what a day takes out of them.

use uom::si::f64::{ElectricCharge, ElectricCurrent, Ratio, Time};

use crate::quantity::{Dimensioned, Temperature, in_celsius};
use crate::working::{Sheet, Term, max, min, number};

/// Where cold cranking current is rated, °C. Source: SAE J537, value from memory.
const RATED_C: f64 = -18.0;
/// What a battery gives more for each degree above that. Common practice, no source: a quarter more at freezing.
const A_DEGREE: f64 = 0.25 / 18.0;
/// From here on it gives no more, °C. Common practice, no source.
const WARM_C: f64 = 27.0;
/// Least part that is left where it is colder than the rating goes. Common practice, no source.
const LEAST_LEFT: f64 = 0.3;
/// Cold cranking current asked for, over the starter's own current, where no manual tells it. Common practice, no source:
/// a starter draws some two and a half times as much at the first compression.
pub const CRANKING_OVER_STARTER: f64 = 2.5;
/// Part of an alternator's rating that it gives at idle. Common practice, no source.
pub const AT_IDLE: f64 = 0.3;
/// The same at cruise, when warm. Common practice, no source.
pub const AT_CRUISE: f64 = 0.8;
/// Part of the charge that comes back out. Common practice, no source: flooded lead and acid.
pub const CHARGE_RETURN: f64 = 0.85;
/// Part of a battery that a day may take. Common practice, no source.
pub const USABLE: f64 = 0.5;
/// Voltage of the systems that outboards have.
pub const SYSTEM_V: f64 = 12.0;

/// Cranking current that a battery gives at this temperature.
pub fn cranking(sheet: &mut Sheet, rated: ElectricCurrent, temperature: Temperature) -> Term<ElectricCurrent> {
    let t = Term::new("t °C", Ratio::from_si(in_celsius(temperature)));
    let warmer = min(t, number(WARM_C)) - number(RATED_C);
    let share = max(number(1.0) + number(A_DEGREE) * warmer, number(LEAST_LEFT));
    let share = sheet.set("k", "of its cold cranking rating at this temperature", share);
    sheet.set("Ic", "cranking current that the battery gives", share * Term::new("CCA", rated))
}

/// Cold cranking current asked for by a starter of this current.
pub fn asked(sheet: &mut Sheet, starter: ElectricCurrent) -> Term<ElectricCurrent> {
    sheet.set("Ia", "cranking current asked for", number(CRANKING_OVER_STARTER) * Term::new("Is", starter))
}

/// A part of a day: how long, at which part of the alternators' rating.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Day {
    /// Alternators' ratings together.
    pub alternators: ElectricCurrent,
    /// How long at cruise.
    pub cruising: Time,
    /// How long at idle or trolling.
    pub idling: Time,
}

/// What the alternators put back in a day.
pub fn put_back(sheet: &mut Sheet, day: &Day) -> Term<ElectricCharge> {
    let rated = Term::new("Ig", day.alternators);
    let cruise = number(AT_CRUISE) * &rated * Term::new("tc", day.cruising);
    let idle = number(AT_IDLE) * rated * Term::new("ti", day.idling);
    sheet.set("Qi", "put back in a day", number(CHARGE_RETURN) * (cruise + idle))
}

/// What a load takes in a day.
pub fn taken(
    sheet: &mut Sheet,
    symbol: &str,
    what: &str,
    current: ElectricCurrent,
    hours: Time,
) -> Term<ElectricCharge> {
    sheet.set(symbol, what, Term::new("I", current) * Term::new("t", hours))
}
