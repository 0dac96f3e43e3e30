//! The one table of units: what each is called and how many coherent SI units it holds.
//!
//! `uom` carries the dimensions; its factors for US customary units are rounded to seven digits,
//! so the exact definitions stand here instead.

use uom::si::f64::{Acceleration, Angle, Length, Mass, MassDensity, Power, Pressure, Volume, VolumeRate};

use super::{Dimensioned, Kind, Temperature};

/// A unit that a person may write.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Unit {
    /// What it measures.
    pub kind: Kind,
    /// How it is shown; the first of its spellings.
    pub name: &'static str,
    /// Every other spelling that is read.
    pub spellings: &'static [&'static str],
    /// Coherent SI units in one of it.
    pub factor: f64,
}

/// International inch, exact. Source: NIST SP 811 (2008), appendix B.8.
const INCH: f64 = 0.0254;
/// International foot, exact. Source: NIST SP 811, B.8.
const FOOT: f64 = 12.0 * INCH;
/// Avoirdupois pound, exact. Source: NIST SP 811, B.8.
const POUND: f64 = 0.453_592_37;
/// Standard acceleration of free fall, exact. Source: NIST SP 811, B.8 (CGPM 1901).
const STANDARD_GRAVITY: f64 = 9.806_65;
/// Pound-force. Source: NIST SP 811, B.8.
const POUND_FORCE: f64 = POUND * STANDARD_GRAVITY;
/// Mechanical horsepower, 550 ft·lbf/s. Source: NIST SP 811, B.8.
const HORSEPOWER: f64 = 550.0 * FOOT * POUND_FORCE;
/// Metric horsepower, 75 kgf·m/s. Source: NIST SP 811, B.8.
const METRIC_HORSEPOWER: f64 = 75.0 * STANDARD_GRAVITY;
/// US gallon of 231 in³, exact. Source: NIST SP 811, B.8.
const GALLON: f64 = 231.0 * INCH * INCH * INCH;
/// Litre. Source: SI brochure (2019), table 8.
const LITRE: f64 = 1e-3;
/// Statute mile of 5,280 ft, exact. Source: NIST SP 811, B.8.
pub const MILE: f64 = 5280.0 * FOOT;
/// International nautical mile, exact. Source: NIST SP 811, B.8.
pub const NAUTICAL_MILE: f64 = 1852.0;
/// Conventional inch of Hg of 13,595.1 kg/m³. Source: NIST SP 811, B.8, prints 3.386 389 kPa.
const INCH_HG: f64 = INCH * 13_595.1 * STANDARD_GRAVITY;
/// Degree of Fahrenheit in kelvin, exact. Source: NIST SP 811, B.8.
const FAHRENHEIT: f64 = 5.0 / 9.0;
/// Freezing point of water that Celsius counts from, K; absolute zero to zero Fahrenheit, °F. Source: NIST SP 811, B.8.
const CELSIUS_ZERO: f64 = 273.15;
const FAHRENHEIT_ZERO: f64 = 459.67 * FAHRENHEIT;
/// Hour, in seconds.
pub const HOUR: f64 = 3600.0;
/// Minute, in seconds.
pub const MINUTE: f64 = 60.0;
/// Degree of arc, in radians.
const DEGREE: f64 = std::f64::consts::PI / 180.0;

const fn unit(kind: Kind, factor: f64, name: &'static str, spellings: &'static [&'static str]) -> Unit {
    Unit { kind, name, spellings, factor }
}

/// All units. Within a kind no two share a spelling; across kinds the expected kind decides.
pub const UNITS: &[Unit] = &[
    unit(Kind::Length, INCH, "in", &["inches", "inch", "\""]),
    unit(Kind::Length, FOOT, "ft", &["feet", "foot", "'"]),
    unit(Kind::Length, 1e-3, "mm", &["millimetres", "millimeters"]),
    unit(Kind::Length, 1e-2, "cm", &["centimetres", "centimeters"]),
    unit(Kind::Length, 1.0, "m", &["metres", "meters", "metre", "meter"]),
    unit(Kind::Length, MILE, "mi", &["miles", "mile", "statute miles"]),
    unit(Kind::Length, NAUTICAL_MILE, "nmi", &["nautical miles", "nautical mile", "sea miles"]),
    unit(Kind::Mass, POUND, "lb", &["pounds", "pound", "lbs", "lbm", "#"]),
    unit(Kind::Mass, POUND / 16.0, "oz", &["ounces", "ounce"]),
    unit(Kind::Mass, 1.0, "kg", &["kilograms", "kilogram", "kilos"]),
    unit(Kind::Mass, 1e-3, "g", &["grams", "gram"]),
    unit(Kind::Mass, 1e3, "t", &["tonnes", "tonne"]),
    unit(Kind::Force, POUND_FORCE, "lbf", &["pounds-force"]),
    unit(Kind::Force, 1.0, "N", &["newtons", "newton"]),
    unit(Kind::Force, 1e3, "kN", &["kilonewtons"]),
    unit(Kind::Power, HORSEPOWER, "hp", &["horsepower", "bhp"]),
    unit(Kind::Power, 1e3, "kW", &["kilowatts", "kilowatt"]),
    unit(Kind::Power, 1.0, "W", &["watts", "watt"]),
    unit(Kind::Power, METRIC_HORSEPOWER, "metric hp", &["metric horsepower", "PS", "CV"]),
    unit(Kind::Angle, DEGREE, "deg", &["degrees", "degree", "°"]),
    unit(Kind::Angle, 1.0, "rad", &["radians"]),
    unit(Kind::Volume, GALLON, "gal", &["gallons", "gallon", "gals", "US gal", "US gallons"]),
    unit(Kind::Volume, INCH * INCH * INCH, "in³", &["in3", "in^3", "cu in", "cubic inches"]),
    unit(Kind::Volume, 1e-6, "cm³", &["cm3", "cm^3", "cc"]),
    unit(Kind::Volume, LITRE, "L", &["litres", "liters", "litre", "liter"]),
    unit(Kind::Volume, FOOT * FOOT * FOOT, "ft³", &["ft3", "ft^3", "cu ft", "cubic feet"]),
    unit(Kind::Volume, 1.0, "m³", &["m3", "m^3", "cubic metres"]),
    unit(Kind::Area, FOOT * FOOT, "ft²", &["ft2", "ft^2", "sq ft"]),
    unit(Kind::Area, INCH * INCH, "in²", &["in2", "in^2", "sq in"]),
    unit(Kind::Area, 1e-6, "mm²", &["mm2", "mm^2"]),
    unit(Kind::Area, 1.0, "m²", &["m2", "m^2"]),
    unit(Kind::Speed, MILE / HOUR, "mph", &["mi/h"]),
    unit(Kind::Speed, NAUTICAL_MILE / HOUR, "kn", &["knots", "knot", "kt", "kts"]),
    unit(Kind::Speed, 1e3 / HOUR, "km/h", &["kph", "kmh"]),
    unit(Kind::Speed, 1.0, "m/s", &[]),
    unit(Kind::RotationRate, 2.0 * std::f64::consts::PI / MINUTE, "rpm", &["r/min", "1/min"]),
    unit(Kind::Pressure, POUND_FORCE / (INCH * INCH), "psi", &["lbf/in²", "lbf/in2"]),
    unit(Kind::Pressure, 1e3 * POUND_FORCE / (INCH * INCH), "ksi", &[]),
    unit(Kind::Pressure, 1e6, "MPa", &["N/mm²", "N/mm2"]),
    unit(Kind::Pressure, 1e9, "GPa", &[]),
    unit(Kind::Pressure, 1e3, "kPa", &[]),
    unit(Kind::Pressure, 1.0, "Pa", &[]),
    unit(Kind::Pressure, 1e5, "bar", &[]),
    unit(Kind::Pressure, INCH_HG, "inHg", &["in Hg"]),
    unit(
        Kind::Moment,
        POUND_FORCE * FOOT,
        "lbf·ft",
        &["lbf ft", "lbf*ft", "lbf-ft", "lb·ft", "lb ft", "lb-ft", "ft·lbf", "ft-lbf", "ft-lb", "ft·lb", "ft lb"],
    ),
    unit(Kind::Moment, POUND_FORCE * INCH, "lbf·in", &["lbf in", "lbf*in", "lbf-in", "lb-in", "in-lbf", "in-lb"]),
    unit(Kind::Moment, 1.0, "N·m", &["N m", "N*m", "N-m", "Nm"]),
    unit(Kind::Moment, 1e3, "kN·m", &["kN m", "kN*m", "kN-m", "kNm"]),
    unit(Kind::Current, 1.0, "A", &["amperes", "amps", "amp"]),
    unit(Kind::Voltage, 1.0, "V", &["volts", "volt"]),
    unit(Kind::Density, POUND / (FOOT * FOOT * FOOT), "lb/ft³", &["lb/ft3", "lb/ft^3", "pcf"]),
    unit(Kind::Density, 1.0, "kg/m³", &["kg/m3", "kg/m^3"]),
    unit(Kind::Density, 1e3, "g/cm³", &["g/cm3", "kg/L"]),
    unit(Kind::MassPerLength, POUND / INCH, "lb/in", &[]),
    unit(Kind::MassPerLength, 1.0, "kg/m", &[]),
    unit(Kind::MassPerLength, 1e2, "kg/cm", &[]),
    unit(Kind::FlowRate, GALLON / HOUR, "gal/h", &["gph", "gal/hr"]),
    unit(Kind::FlowRate, LITRE / HOUR, "L/h", &["L/hr", "lph"]),
    unit(Kind::FlowRate, LITRE / MINUTE, "L/min", &[]),
    unit(Kind::FlowRate, GALLON / MINUTE, "gal/min", &["gpm"]),
    unit(Kind::Acceleration, 1.0, "m/s²", &["m/s2", "m/s^2"]),
    unit(Kind::Acceleration, STANDARD_GRAVITY, "gn", &["g0"]),
    unit(Kind::Acceleration, FOOT, "ft/s²", &["ft/s2", "ft/s^2"]),
    unit(Kind::Charge, HOUR, "Ah", &["A·h", "A h", "amp-hours", "amp hours"]),
    unit(Kind::Resistance, 1e-3, "mΩ", &["mohm", "milliohms", "milliohm"]),
    unit(Kind::Resistance, 1.0, "Ω", &["ohm", "ohms"]),
    unit(Kind::Resistivity, 1e-9, "nΩ·m", &[]),
    unit(Kind::Viscosity, 1e-6, "mm²/s", &["mm2/s", "cSt"]),
    unit(Kind::Temperature, FAHRENHEIT, "°F", &["F", "degF", "deg F"]),
    unit(Kind::Temperature, 1.0, "°C", &["C", "degC", "deg C"]),
    unit(Kind::Duration, HOUR, "h", &["hours", "hour", "hr"]),
    unit(Kind::Duration, MINUTE, "min", &["minutes", "minute"]),
    unit(Kind::Duration, 1.0, "s", &["seconds", "second", "sec"]),
    unit(Kind::DistancePerVolume, MILE / GALLON, "mi/gal", &["mpg"]),
    unit(Kind::DistancePerVolume, NAUTICAL_MILE / LITRE, "nmi/L", &[]),
    unit(Kind::DistancePerVolume, NAUTICAL_MILE / GALLON, "nmi/gal", &[]),
    unit(Kind::DistancePerVolume, 1e3 / LITRE, "km/L", &[]),
    unit(Kind::Ratio, 0.01, "%", &["percent", "per cent"]),
];

/// So many inches.
pub fn inches(value: f64) -> Length {
    Length::from_si(value * INCH)
}

/// So many feet.
pub fn feet(value: f64) -> Length {
    Length::from_si(value * FOOT)
}

/// So many pounds (mass).
pub fn pounds(value: f64) -> Mass {
    Mass::from_si(value * POUND)
}

/// So many mechanical horsepower.
pub fn horsepower(value: f64) -> Power {
    Power::from_si(value * HORSEPOWER)
}

/// So many metric horsepower.
pub fn metric_horsepower(value: f64) -> Power {
    Power::from_si(value * METRIC_HORSEPOWER)
}

/// So many degrees of arc.
pub fn degrees(value: f64) -> Angle {
    Angle::from_si(value * DEGREE)
}

/// Standard gravity.
pub fn standard_gravity() -> Acceleration {
    Acceleration::from_si(STANDARD_GRAVITY)
}

/// So many pounds to the cubic foot.
pub fn pounds_per_cubic_foot(value: f64) -> MassDensity {
    MassDensity::from_si(value * POUND / (FOOT * FOOT * FOOT))
}

/// The units of a kind, the one it is named by first.
pub fn units_of(kind: Kind) -> impl Iterator<Item = &'static Unit> {
    UNITS.iter().filter(move |unit| unit.kind == kind)
}

/// So many degrees Celsius.
pub fn celsius(value: f64) -> Temperature {
    Temperature::from_si(value + CELSIUS_ZERO)
}

/// The number of degrees Celsius.
pub fn in_celsius(temperature: Temperature) -> f64 {
    temperature.si() - CELSIUS_ZERO
}

/// So many inches of Hg.
pub fn inches_hg(value: f64) -> Pressure {
    Pressure::from_si(value * INCH_HG)
}

/// So many US gallons.
pub fn gallons(value: f64) -> Volume {
    Volume::from_si(value * GALLON)
}

/// So many US gallons an hour.
pub fn gallons_per_hour(value: f64) -> VolumeRate {
    VolumeRate::from_si(value * GALLON / HOUR)
}

impl Unit {
    /// Where it counts from, in the coherent SI unit: zero for all but degrees of temperature.
    pub const fn zero(&self) -> f64 {
        match self.kind {
            Kind::Temperature if self.factor == 1.0 => CELSIUS_ZERO,
            Kind::Temperature => FAHRENHEIT_ZERO,
            _ => 0.0,
        }
    }

    /// The unit that the text begins with, and the bytes that its spelling takes: the longest
    /// spelling wins, one of the expected kind before any other, the exact case before a folded one.
    pub(super) fn at_start(text: &str, expected: Kind) -> Option<(&'static Unit, usize)> {
        let longest = |wanted: &dyn Fn(&Unit) -> bool, folded: bool| {
            UNITS
                .iter()
                .filter(|unit| wanted(unit))
                .flat_map(|unit| std::iter::once(&unit.name).chain(unit.spellings).map(move |s| (unit, *s)))
                .filter(|(_, spelling)| begins_with(text, spelling, folded))
                .map(|(unit, spelling)| (unit, spelling.len()))
                .max_by_key(|(_, length)| *length)
        };
        let expected_kind = |unit: &Unit| unit.kind == expected;
        longest(&expected_kind, false)
            .or_else(|| longest(&expected_kind, true))
            .or_else(|| longest(&|_| true, false))
            .or_else(|| longest(&|_| true, true))
    }
}

/// Whether the text begins with the spelling, and no letter follows that would make it another word.
fn begins_with(text: &str, spelling: &str, folded: bool) -> bool {
    // Most differ in their first letter.
    if !text.as_bytes().iter().zip(spelling.as_bytes()).take(1).all(|(a, b)| a.eq_ignore_ascii_case(b)) {
        return false;
    }
    let Some(head) = text.get(..spelling.len()) else {
        return false;
    };
    if !(if folded { head.eq_ignore_ascii_case(spelling) } else { head == spelling }) {
        return false;
    }
    let ends_in_letter = spelling.ends_with(|c: char| c.is_alphabetic());
    let goes_on = text[spelling.len()..]
        .starts_with(|c: char| c.is_alphabetic() || matches!(c, '²' | '³' | '^' | '/' | '·' | '*'));
    !(ends_in_letter && goes_on)
}
