//! More digits than usual, for a figure that others are worked out from.

use super::figures::{SIXTEENTHS, decimals, factor_places, two_digit_places};
use super::{Kind, Measure, NO_FIGURE, Style, Units};

impl Measure {
    /// The measure with so many digits more than [`Measure::show`] has; without what a factor is worth, which no formula
    /// takes in. A tape's reading then stands in decimals.
    pub fn show_closer(&self, more: i32, units: Units) -> String {
        if !self.si.is_finite() {
            return NO_FIGURE.to_owned();
        }
        if more == 0 && !(self.kind == Kind::Ratio && self.style == Style::Factor) {
            return self.show(units);
        }
        let one = |metric| {
            let (value, unit) = self.in_figures(metric);
            let number = decimals(value, self.closer_places(more, metric));
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
        let tape = more == 0 && !metric;
        let step = match (self.kind, self.style) {
            (Kind::Length, Style::Tape | Style::FeetInches) if tape => {
                let inch = super::named(Kind::Length, "in").factor;
                return (self.si / inch * SIXTEENTHS).round() / SIXTEENTHS * inch;
            }
            _ => 0.1_f64.powi(self.closer_places(more, metric)),
        };
        let (value, unit) = self.in_figures(metric);
        let read = (value / step).round() * step;
        match (self.kind, unit) {
            (Kind::Ratio, "%") => read / 100.0,
            (Kind::Ratio, _) => read,
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
            _ => {
                let unit = self.unit(metric);
                ((self.si - self.zero(unit)) / unit.factor, unit.name)
            }
        }
    }

    fn closer_places(&self, more: i32, metric: bool) -> i32 {
        let (value, _) = self.in_figures(metric);
        let usual = match (self.kind, self.style) {
            (Kind::Ratio, Style::Factor) => factor_places(value),
            (Kind::Ratio, Style::Round | Style::Share) => two_digit_places(value),
            (Kind::Ratio, _) => super::ratio_places(value),
            (Kind::Length, Style::Tape) if !metric && more > 0 => 1,
            _ => self.places(metric, value),
        };
        if more > 0 { usual.max(0) + more } else { usual }
    }
}
