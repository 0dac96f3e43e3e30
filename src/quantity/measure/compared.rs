//! A figure beside its limits, printed so that whoever subtracts the printed figures finds the printed room.

use super::figures::{
    SIXTEENTHS, as_printed, decimals, factor_places, factor_worth, feet_and_inches, sixteenths, two_digit_places,
};
use super::{FACTOR_HIDES, Measure, Style, Units};
use crate::quantity::Kind;

/// Digits that may be added to the usual ones to show on which side of its limit a figure lies.
const MORE_DIGITS: i32 = 8;
/// A room below this part of the figure is rounding: 300 hp of 300.
const ROUNDING: f64 = 1e-9;

/// What was found, its limits and the room between as they are printed: in one unit and to one step, fine enough that the
/// printed figures are on the same side of each other as the true ones.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Compared {
    /// What was found.
    pub found: String,
    /// The least that it may be.
    pub least: Option<String>,
    /// The most that it may be.
    pub most: Option<String>,
    /// The printed room to the nearer of them; negative beyond it.
    pub room: String,
}

impl Compared {
    /// A figure beside its limits.
    pub fn of(found: Measure, least: Option<Measure>, most: Option<Measure>, units: Units) -> Compared {
        let one = |metric| Printed::of(found, least, most, metric);
        match units {
            _ if found.kind == Kind::Ratio => one(false),
            Units::Us => one(false),
            Units::Si => one(true),
            Units::Both => one(false).beside(one(true)),
        }
    }

    /// The same with the metric figures behind.
    fn beside(self, other: Compared) -> Compared {
        let both = |us: String, si: String| if us == si { us } else { format!("{us} ({si})") };
        let maybe = |us: Option<String>, si: Option<String>| us.zip(si).map(|(us, si)| both(us, si));
        Compared {
            found: both(self.found, other.found),
            least: maybe(self.least, other.least),
            most: maybe(self.most, other.most),
            room: both(self.room, other.room),
        }
    }
}

/// How figures of one comparison are printed.
struct Printed {
    style: Style,
    kind: Kind,
    unit: &'static str,
    /// Sixteenths of an inch; else decimals.
    tape: bool,
    places: i32,
}

impl Printed {
    fn of(found: Measure, least: Option<Measure>, most: Option<Measure>, metric: bool) -> Compared {
        if !found.si.is_finite() {
            let show = |measure: Measure| measure.show(if metric { Units::Si } else { Units::Us });
            return Compared {
                found: show(found),
                least: least.map(show),
                most: most.map(show),
                room: show(Measure { si: f64::NAN, ..found }),
            };
        }
        let limits = [least, most];
        let style = if limits.iter().flatten().any(|limit| limit.style == Style::Tape) && found.style == Style::Plain {
            Style::Tape
        } else {
            found.style
        };
        let found = Measure { style, ..found };
        let same = |limit: Measure| Measure { style, ..limit };
        let scale = |measure: &Measure| found.scaled(measure.si, metric);
        let (value, low, high) = (scale(&found), least.as_ref().map(scale), most.as_ref().map(scale));
        let usual = |measure: &Measure| found.usual_places(scale(measure), metric);
        let wanted = limits.iter().flatten().map(|limit| usual(&same(*limit))).chain([usual(&found)]);
        let places = if style == Style::Factor { usual(&found) } else { wanted.max().unwrap_or(0) };
        let tape = found.is_tape(metric);
        // A factor is judged as it is told, in two digits.
        let judged = if style == Style::Factor { as_printed(value, places) } else { value };
        let truth = room(judged, low, high);
        let size = [Some(value), low, high].into_iter().flatten().fold(0.0_f64, |most, one| most.max(one.abs()));
        let mut printed = Printed { style, kind: found.kind, unit: found.unit_name(metric), tape, places };
        for more in 0..MORE_DIGITS {
            if more > 0 {
                (printed.tape, printed.places) = (false, places.max(if tape { 1 } else { 0 }) + more);
            }
            let told = room(printed.round(value), low.map(|v| printed.round(v)), high.map(|v| printed.round(v)));
            let beyond = truth < -ROUNDING * size;
            if beyond == (told < -0.5 * printed.step()) {
                break;
            }
        }
        let told = room(printed.round(value), low.map(|v| printed.round(v)), high.map(|v| printed.round(v)));
        Compared {
            found: printed.show(value, true),
            least: low.map(|limit| printed.limit(limit)),
            most: high.map(|limit| printed.limit(limit)),
            room: if style == Style::Factor && value > FACTOR_HIDES {
                format!("over {}", decimals(FACTOR_HIDES - low.unwrap_or(0.0), 0))
            } else {
                printed.room(told, value)
            },
        }
    }

    fn step(&self) -> f64 {
        if self.tape { 1.0 / SIXTEENTHS } else { 0.1_f64.powi(self.places) }
    }

    fn round(&self, value: f64) -> f64 {
        match self.style {
            _ if self.tape => (value / self.step()).round() * self.step(),
            Style::Round | Style::Share => as_printed((value / self.step()).round() * self.step(), self.places),
            _ => as_printed(value, self.places),
        }
    }

    fn show(&self, value: f64, worth: bool) -> String {
        if self.style == Style::Factor && worth {
            if value > FACTOR_HIDES {
                return format!("over {}", decimals(FACTOR_HIDES, 0));
            }
            return format!("{} ± {}", decimals(value, self.places), factor_worth(value, 0.0, self.places));
        }
        self.with_unit(value)
    }

    /// The room of a factor is worth what the factor is.
    fn room(&self, room: f64, found: f64) -> String {
        match self.style {
            Style::Factor => format!("{} ± {}", decimals(room, self.places), factor_worth(found, 0.0, self.places)),
            _ => self.with_unit(room),
        }
    }

    /// A limit: without the noughts that only the figure beside it needs.
    fn limit(&self, value: f64) -> String {
        let whole = (value - value.round()).abs() < 1e-9 * value.abs().max(1.0);
        if whole && !self.tape && self.places > 0 && (self.kind == Kind::Ratio || self.style == Style::Round) {
            return Printed { places: 0, ..*self }.with_unit(value);
        }
        self.with_unit(value)
    }

    fn with_unit(&self, value: f64) -> String {
        match (self.tape, self.style) {
            (true, Style::FeetInches) => feet_and_inches(value / 12.0),
            (true, _) => format!("{} in", sixteenths(value)),
            _ if self.unit.is_empty() => self.number(value),
            _ => format!("{} {}", self.number(value), self.unit),
        }
    }

    fn number(&self, value: f64) -> String {
        decimals(self.round(value), self.places)
    }
}

fn room(found: f64, least: Option<f64>, most: Option<f64>) -> f64 {
    let low = least.map_or(f64::INFINITY, |least| found - least);
    low.min(most.map_or(f64::INFINITY, |most| most - found))
}

impl Measure {
    /// The value in the unit in which figures of this one's kind are compared: feet and inches in inches.
    fn scaled(&self, si: f64, metric: bool) -> f64 {
        if self.kind == Kind::Ratio {
            return if self.style == Style::Share { 100.0 * si } else { si };
        }
        let unit = if self.is_tape(metric) { super::named(Kind::Length, "in") } else { self.unit(metric) };
        (si - self.zero(unit)) / unit.factor
    }

    fn is_tape(&self, metric: bool) -> bool {
        !metric && matches!(self.length_style(), Style::Tape | Style::FeetInches)
    }

    fn unit_name(&self, metric: bool) -> &'static str {
        match (self.kind, self.style) {
            (Kind::Ratio, Style::Share) => "%",
            (Kind::Ratio, _) => "",
            _ if self.is_tape(metric) => "in",
            _ => self.unit(metric).name,
        }
    }

    fn usual_places(&self, value: f64, metric: bool) -> i32 {
        match (self.kind, self.style) {
            (Kind::Ratio, Style::Factor) => factor_places(value),
            (Kind::Ratio, Style::Round | Style::Share) => two_digit_places(value),
            _ => self.places(metric, value),
        }
    }
}
