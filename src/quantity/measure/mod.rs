//! A value with its kind, shown the way a tape or a scale is read.

mod closer;
mod compared;
mod figures;

use super::units::{UNITS, Unit};
use super::{Dimensioned, Kind};

pub use compared::Compared;
use figures::FACTOR_WITHOUT_END as FACTOR_HIDES;
pub use figures::grouped;
use figures::{
    SIXTEENTHS, decimals, exact_digits, factor, factor_places, factor_within, feet_and_inches, sixteenths,
    three_digit_places, two_digit_places, two_digits,
};

/// Which units a report speaks.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Units {
    /// US customary.
    #[default]
    Us,
    /// Metric.
    Si,
    /// US customary with metric behind it.
    Both,
}

impl Units {
    /// Metric, or US customary.
    pub fn from_metric(metric: bool) -> Units {
        if metric { Units::Si } else { Units::Us }
    }
}

/// How a length or a volume is read; other kinds have one way each.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Style {
    /// Decimals: `5.66 in`, `143.8 mm`.
    #[default]
    Plain,
    /// As on a tape: inches to the nearest sixteenth, or whole millimetres.
    Tape,
    /// As a boat is described: feet and inches, or metres.
    FeetInches,
    /// Decimal feet, or metres, as the capacity formulas want them.
    Feet,
    /// A volume of foam or of a hull: cubic feet, or litres. Other volumes are liquids, in gallons.
    Bulk,
    /// A ratio of strength to load: two digits, and what they are worth.
    Factor,
    /// What a pump or a cylinder displaces: cubic inches, or cubic centimetres.
    Displacement,
    /// How far she goes: miles, or nautical miles.
    Distance,
    /// How far two temperatures lie apart.
    Difference,
    /// A suction: inches of Hg, or kilopascals.
    Suction,
    /// What readings of a yard deserve: two digits.
    Round,
    /// A share, in per cent: two digits.
    Share,
    /// What a question put outright comes to: three digits at least.
    Digits,
}

/// Told in place of a number that is without end or undefined. Findings with such a number are undecided before it comes to
/// that.
const NO_FIGURE: &str = "no figure";

/// Times below this are shown in seconds, s.
const SHORT: f64 = 120.0;

/// A quantity whose dimension has been erased for showing: value in the coherent SI unit, kind, style.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measure {
    /// Value in the coherent SI unit of the kind.
    pub si: f64,
    /// What sort of quantity it is.
    pub kind: Kind,
    /// How it is to be read.
    pub style: Style,
}

impl Measure {
    /// The quantity, shown in decimals.
    pub fn of<Q: Dimensioned>(quantity: Q) -> Self {
        Measure { si: quantity.si(), kind: Q::KIND, style: Style::Plain }
    }

    /// The quantity, shown in this style.
    pub fn styled<Q: Dimensioned>(quantity: Q, style: Style) -> Self {
        Measure { style, ..Measure::of(quantity) }
    }

    /// The length as a tape reads it.
    pub fn tape(length: uom::si::f64::Length) -> Self {
        Measure::styled(length, Style::Tape)
    }

    /// The measure in words and figures: `12-7/8 in (327 mm)`.
    pub fn show(&self, units: Units) -> String {
        // The one place where a number becomes words: what is none is not told as one.
        if !self.si.is_finite() {
            return NO_FIGURE.to_owned();
        }
        if self.kind == Kind::Ratio {
            return match self.style {
                Style::Factor => factor(self.si),
                Style::Round => two_digits(self.si),
                Style::Share => format!("{} %", two_digits(100.0 * self.si)),
                _ => decimals(self.si, self.places(false, self.si)),
            };
        }
        match units {
            Units::Us => self.show_in(false),
            Units::Si => self.show_in(true),
            Units::Both => {
                let (us, si) = (self.show_in(false), self.show_in(true));
                if us == si { us } else { format!("{us} ({si})") }
            }
        }
    }

    /// The measure with what it is worth, both as it is shown: `12-7/8 in ± 1/8 in`.
    pub fn show_with(&self, worth: Measure, units: Units) -> String {
        if self.kind == Kind::Ratio && self.style == Style::Factor {
            return factor_within(self.si, worth.si);
        }
        format!("{} ± {}", self.show(units), worth.show(units))
    }

    /// The measure with every digit of up to ten, and six decimals at least, but none that it has not:
    /// `1 ft (0.3048 m)`, `0.0000125 in`. For the constants of a formula, which are not read off anything.
    pub fn show_exact(&self, units: Units) -> String {
        if !self.si.is_finite() {
            return NO_FIGURE.to_owned();
        }
        let exact = |metric| {
            let unit = self.unit(metric);
            let value = exact_digits((self.si - self.zero(unit)) / unit.factor);
            format!("{value} {}", unit.name)
        };
        match units {
            _ if self.kind == Kind::Ratio => self.si.to_string(),
            Units::Us => exact(false),
            Units::Si => exact(true),
            Units::Both if exact(false) == exact(true) => exact(true),
            Units::Both => format!("{} ({})", exact(false), exact(true)),
        }
    }

    /// Value and unit name as a machine wants them: unrounded, in the unit that [`Measure::show`] uses.
    pub fn in_unit(&self, units: Units) -> (f64, &'static str) {
        if self.kind == Kind::Ratio {
            return (self.si, "");
        }
        let unit = self.unit(units == Units::Si);
        ((self.si - self.zero(unit)) / unit.factor, unit.name)
    }

    /// Half of the last digit or mark shown, in the coherent SI unit: what rounding may have taken.
    pub fn shown_precision(&self, units: Units) -> f64 {
        if self.kind == Kind::Ratio && self.style == Style::Factor {
            return 0.5 * 0.1_f64.powi(factor_places(self.si));
        }
        if self.kind == Kind::Ratio && self.style == Style::Share {
            return 0.005 * 0.1_f64.powi(two_digit_places(100.0 * self.si));
        }
        if self.kind == Kind::Ratio {
            return 0.5 * 0.1_f64.powi(self.places(false, self.si));
        }
        let metric = units == Units::Si;
        let unit = self.unit(metric);
        let step = match self.length_style() {
            Style::Tape if !metric => 1.0 / SIXTEENTHS,
            Style::FeetInches if !metric => {
                return 0.5 * named(Kind::Length, "in").factor / SIXTEENTHS;
            }
            _ => 0.1_f64.powi(self.places(metric, (self.si - self.zero(unit)) / unit.factor)),
        };
        0.5 * step * unit.factor
    }

    /// What the unit counts from.
    fn zero(&self, unit: &Unit) -> f64 {
        if self.style == Style::Difference { 0.0 } else { unit.zero() }
    }

    /// The style, which only lengths have.
    fn length_style(&self) -> Style {
        match self.kind {
            Kind::Length => self.style,
            _ => Style::Plain,
        }
    }

    fn show_in(&self, metric: bool) -> String {
        let unit = self.unit(metric);
        let value = (self.si - self.zero(unit)) / unit.factor;
        if self.style == Style::Round {
            return format!("{} {}", two_digits(value), unit.name);
        }
        match self.length_style() {
            Style::Tape if !metric => format!("{} in", sixteenths(value)),
            Style::FeetInches if !metric => feet_and_inches(value),
            _ => format!("{} {}", decimals(value, self.places(metric, value)), unit.name),
        }
    }

    fn unit(&self, metric: bool) -> &'static Unit {
        let name = match (self.kind, metric) {
            (Kind::Length, false) => match self.style {
                Style::Plain
                | Style::Tape
                | Style::Bulk
                | Style::Factor
                | Style::Displacement
                | Style::Suction
                | Style::Round
                | Style::Share
                | Style::Digits
                | Style::Difference => "in",
                Style::FeetInches | Style::Feet => "ft",
                Style::Distance => "mi",
            },
            (Kind::Length, true) => match self.style {
                Style::Plain
                | Style::Tape
                | Style::Bulk
                | Style::Factor
                | Style::Displacement
                | Style::Suction
                | Style::Round
                | Style::Share
                | Style::Digits
                | Style::Difference => "mm",
                Style::FeetInches | Style::Feet => "m",
                Style::Distance => "nmi",
            },
            (Kind::Mass, false) => "lb",
            (Kind::Mass, true) => "kg",
            (Kind::Force, false) => "lbf",
            (Kind::Force, true) => "kN",
            (Kind::Power, false) => "hp",
            (Kind::Power, true) => "kW",
            (Kind::Angle, _) => "deg",
            (Kind::Volume, false) if self.style == Style::Bulk => "ft³",
            (Kind::Volume, false) if self.style == Style::Displacement => "in³",
            (Kind::Volume, true) if self.style == Style::Displacement => "cm³",
            (Kind::Volume, false) => "gal",
            (Kind::Volume, true) => "L",
            (Kind::Area, false) if self.si.abs() < 0.1 => "in²",
            (Kind::Area, false) => "ft²",
            (Kind::Area, true) if self.si.abs() < 0.1 => "mm²",
            (Kind::Area, true) => "m²",
            (Kind::Speed, false) => "mph",
            (Kind::Speed, true) => "kn",
            (Kind::RotationRate, _) => "rpm",
            (Kind::Pressure, false) if self.style == Style::Suction => "inHg",
            (Kind::Pressure, true) if self.style == Style::Suction => "kPa",
            (Kind::Pressure, false) => "psi",
            (Kind::Pressure, true) => "MPa",
            (Kind::Moment, false) => "lbf·ft",
            (Kind::Moment, true) => "N·m",
            (Kind::Current, _) => "A",
            (Kind::Voltage, _) => "V",
            (Kind::Density, false) => "lb/ft³",
            (Kind::Density, true) => "kg/m³",
            (Kind::MassPerLength, false) => "lb/in",
            (Kind::MassPerLength, true) => "kg/cm",
            (Kind::FlowRate, false) => "gal/h",
            (Kind::FlowRate, true) => "L/h",
            (Kind::Acceleration, _) => "gn",
            (Kind::Charge, _) => "Ah",
            (Kind::Resistance, _) => "mΩ",
            (Kind::Resistivity, _) => "nΩ·m",
            (Kind::Viscosity, _) => "mm²/s",
            (Kind::Duration, _) if self.si.abs() < SHORT => "s",
            (Kind::Duration, _) => "h",
            (Kind::Temperature, false) => "°F",
            (Kind::Temperature, true) => "°C",
            (Kind::DistancePerVolume, false) => "mi/gal",
            (Kind::DistancePerVolume, true) => "nmi/L",
            (Kind::Ratio, _) => "%",
        };
        named(self.kind, name)
    }

    /// Decimals worth showing: about what the instrument of the trade resolves.
    fn places(&self, metric: bool, value: f64) -> i32 {
        let small = value.abs() < 10.0;
        match self.kind {
            _ if self.style == Style::Round => two_digit_places(value),
            _ if self.style == Style::Digits => {
                Measure { style: Style::Plain, ..*self }.places(metric, value).max(three_digit_places(value))
            }
            Kind::Length => match (self.style, metric) {
                (Style::Tape, true) => 0,
                (Style::Distance, _) => 1,
                (Style::Plain | Style::Bulk, true) => 1,
                _ => 2,
            },
            Kind::Mass | Kind::Force if !metric => i32::from(small),
            Kind::Mass => i32::from(small),
            Kind::Force => 2,
            Kind::Power if metric => 1,
            Kind::Power => i32::from((value - value.round()).abs() > 0.05),
            Kind::Volume if self.style == Style::Displacement => 1,
            Kind::Angle | Kind::Volume | Kind::Speed | Kind::FlowRate => 1,
            Kind::Voltage => 1 + i32::from(value.abs() < 0.995),
            Kind::Area | Kind::Acceleration | Kind::DistancePerVolume => 2,
            Kind::RotationRate => 0,
            Kind::Moment => 0,
            Kind::Current => i32::from(small),
            Kind::Pressure if self.style == Style::Suction => 1,
            Kind::Pressure if metric => 2,
            Kind::Pressure => 0,
            Kind::Density => i32::from(!metric),
            Kind::MassPerLength => 1,
            Kind::Charge => i32::from(small),
            Kind::Resistance | Kind::Resistivity => 2,
            Kind::Viscosity => 3,
            Kind::Temperature => 0,
            Kind::Duration => 1,
            Kind::Ratio => ratio_places(value),
        }
    }
}

/// Whole ratios bare, small ones to three decimals.
fn ratio_places(value: f64) -> i32 {
    if (value - value.round()).abs() < 1e-9 {
        0
    } else if value.abs() < 10.0 {
        3
    } else {
        2
    }
}

/// The unit of this kind and name. The table holds every name that [`Measure`] asks for (a test walks them).
fn named(kind: Kind, name: &str) -> &'static Unit {
    UNITS.iter().find(|unit| unit.kind == kind && unit.name == name).unwrap_or(&UNITS[0])
}
