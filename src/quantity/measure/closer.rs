//! More digits than usual, for a figure that others are worked out from.

use super::figures::{SIXTEENTHS, as_printed, decimals, factor_places, two_digit_places};
use super::{Kind, Measure, NO_FIGURE, Style, Units};

/// Unit of a temperature from absolute zero.
const ABSOLUTE: &str = "K";
/// Its decimals.
const ABSOLUTE_PLACES: i32 = 2;

/// The number without the noughts at its end, but for so many decimals.
fn without_noughts(number: String, places: i32) -> String {
    let Some((whole, decimals)) = number.split_once('.') else {
        return number;
    };
    let kept = decimals.trim_end_matches('0').len().max(usize::try_from(places).unwrap_or(0)).min(decimals.len());
    if kept == 0 { whole.to_owned() } else { format!("{whole}.{}", &decimals[..kept]) }
}

impl Measure {
    /// The measure with so many digits more than [`Measure::show`] has; without what a factor is worth, which no formula
    /// takes in. A tape's reading then stands in decimals.
    pub fn show_closer(&self, more: i32, units: Units) -> String {
        if !self.si.is_finite() {
            return NO_FIGURE.to_owned();
        }
        let factor = self.kind == Kind::Ratio && self.style == Style::Factor;
        if more == 0 && !factor && !self.is_absolute() {
            return self.show(units);
        }
        let one = |metric| {
            let (value, unit) = self.in_figures(metric);
            let number =
                without_noughts(decimals(value, self.closer_places(more, metric)), self.closer_places(0, metric));
            if unit.is_empty() { number } else { format!("{number} {unit}") }
        };
        match units {
            _ if self.kind == Kind::Ratio => one(false),
            Units::Us => one(false),
            Units::Si => one(true),
            Units::Both if one(false) == one(true) => one(true),
            Units::Both => format!("{} ({})", one(false), one(true)),
        }
    }

    /// What the same figure says when it is read again, in the coherent SI unit.
    pub fn closer(&self, more: i32, metric: bool) -> f64 {
        let tape = more == 0 && !metric && self.kind == Kind::Length;
        if tape && matches!(self.style, Style::Tape | Style::FeetInches) {
            let inch = super::named(Kind::Length, "in").factor;
            return (self.si / inch * SIXTEENTHS).round() / SIXTEENTHS * inch;
        }
        let (value, unit) = self.in_figures(metric);
        let places = self.closer_places(more, metric);
        let step = 0.1_f64.powi(places);
        let two_digits = more == 0 && matches!(self.style, Style::Round | Style::Share);
        let read = as_printed(if two_digits { (value / step).round() * step } else { value }, places);
        match (self.kind, unit) {
            (Kind::Ratio, "%") => read / 100.0,
            (Kind::Ratio, _) | (Kind::Temperature, ABSOLUTE) => read,
            _ => {
                let unit = self.unit(metric);
                read * unit.factor + self.zero(unit)
            }
        }
    }

    /// The number that is printed, and the unit behind it.
    fn in_figures(&self, metric: bool) -> (f64, &'static str) {
        match (self.kind, self.style) {
            (Kind::Ratio, Style::Share) => (100.0 * self.si, "%"),
            (Kind::Ratio, _) => (self.si, ""),
            _ if self.is_absolute() => (self.si, ABSOLUTE),
            _ => {
                let unit = self.unit(metric);
                ((self.si - self.zero(unit)) / unit.factor, unit.name)
            }
        }
    }

    /// A temperature goes into a formula from absolute zero.
    fn is_absolute(&self) -> bool {
        self.kind == Kind::Temperature && self.style != Style::Difference
    }

    fn closer_places(&self, more: i32, metric: bool) -> i32 {
        let (value, _) = self.in_figures(metric);
        let usual = match (self.kind, self.style) {
            (Kind::Ratio, Style::Factor) => factor_places(value),
            (Kind::Ratio, Style::Round | Style::Share) => two_digit_places(value),
            (Kind::Length, Style::Tape) if !metric && more > 0 => 1,
            _ if self.is_absolute() => ABSOLUTE_PLACES,
            _ => self.places(metric, value),
        };
        if more > 0 { usual.max(0) + more } else { usual }
    }
}
