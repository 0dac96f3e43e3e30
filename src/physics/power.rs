//! Powers as engines and plates have them printed.

use uom::si::f64::{Mass, Power, Velocity};

use crate::quantity::{Dimensioned, HOUR, MILE, Reading, Written, horsepower, metric_horsepower, pounds};
use crate::working::{Sheet, Term, number, sqrt};

/// How the power of engines stands to a power that is printed.
#[derive(Clone, Debug)]
pub enum Against {
    /// It is no more.
    Within,
    /// It is the same power, printed in other units.
    Same {
        /// The engines' power as the other figure counts it.
        found: Term<Power>,
        /// What that figure stands for with its rounding.
        most: Term<Power>,
    },
    /// It is more.
    Over,
}

/// The power of engines together, against a power that is printed. Where one is written in horsepower and the other
/// in kilowatts, the trade's pairs count as equal: 150 hp and 110 kW, 200 and 147, 250 and 184, 300 and 221. For
/// kilowatts are printed rounded, once an engine, and count metric horsepower. Common practice, no source.
pub fn against(sheet: &mut Sheet, engines: &[(String, &Reading<Power>)], rated: &Reading<Power>) -> Against {
    let zero = Power::from_si(0.0);
    let sum = engines.iter().fold(zero, |sum, (_, power)| sum + power.value);
    if !sum.exceeds(rated.value) {
        return Against::Within;
    }
    let counted: Vec<(Term<Power>, Power)> =
        engines.iter().map(|(name, power)| as_printed(name, power, rated)).collect();
    let rounding = counted.iter().fold(zero, |sum, (_, rounding)| sum + *rounding);
    let Some(found) = counted.into_iter().map(|(power, _)| power).reduce(|a, b| a + b) else {
        return Against::Within;
    };
    let most = Term::new("Pr", rated.value) + Term::new("e", rounding);
    if found.value().exceeds(most.value()) {
        return Against::Over;
    }
    Against::Same {
        found: sheet.set("Pm", "the engines' power as the other figure counts it", found),
        most: sheet.set("Pe", "what that figure stands for with its rounding", most),
    }
}

/// The power of an engine as another figure counts it, and what rounding may have taken between the two.
fn as_printed(name: &str, engine: &Reading<Power>, rated: &Reading<Power>) -> (Term<Power>, Power) {
    let power = Term::new(name, engine.value);
    let (Some(own), Some(other)) = (engine.written.as_deref(), rated.written.as_deref()) else {
        return (power, Power::from_si(0.0));
    };
    if own.unit == other.unit {
        return (power, Power::from_si(0.0));
    }
    let rounded = [own, other].into_iter().filter(|written| written.unit == KILOWATT);
    let rounding = Power::from_si(0.5 * rounded.map(|written| written.step).fold(0.0, f64::max));
    if own.unit != HORSEPOWER {
        return (power, rounding);
    }
    let metric = Term::constant(metric_horsepower(1.0)) / Term::constant(horsepower(1.0));
    (power * metric, rounding)
}

/// What a planing outboard boat runs at the most: Crouch's formula, `V = C √(P / W)`, miles an hour, horsepower and pounds.
/// Source: Crouch's formula, value from memory; C of 150 to 200 for open outboard boats, common practice, no source.
pub fn likely_top_speed(sheet: &mut Sheet, power: Power, weight: Mass, constant: f64) -> Term<Velocity> {
    let share = (Term::new("P", power) / Term::constant(horsepower(1.0)))
        / (Term::new("W", weight) / Term::constant(pounds(1.0)));
    let speed = number(constant) * sqrt(share) * Term::constant(MILE / HOUR * Velocity::from_si(1.0));
    sheet.set("V", "top speed, by Crouch's formula", speed)
}

/// Names of the two units in which powers are printed.
const HORSEPOWER: &str = "hp";
const KILOWATT: &str = "kW";

/// A power that a formula gives in whole horsepower, as one that is printed.
pub fn in_horsepower(power: Power) -> Reading<Power> {
    let written = Some(Box::new(Written { unit: HORSEPOWER, step: horsepower(1.0).si() }));
    Reading { written, ..Reading::catalog(power) }
}
