//! Quantities as the trade writes them: tape notation in, SI inside, tape notation out.
//!
//! [`parse`] reads `12-7/8 in ± 1/8 in`; [`Measure`] shows a value as a tape or a scale is read;
//! [`Reading`] is a number on a job with its tolerance and its basis; [`Text`] is a sentence whose
//! numbers wait for the reader's choice of units.

mod kind;
mod measure;
mod parse;
mod reading;
mod text;
mod units;

pub use kind::{Dimensioned, DistancePerVolume, Kind, Moment, Temperature, Viscosity};
pub use measure::{Compared, Measure, Style, Units, grouped};
pub use parse::{Parsed, QuantityError, Tolerance, Written, parse};
pub use reading::{Basis, Reading};
pub use text::{Piece, Text};
pub(crate) use text::{capitalised, nth, say};
pub use units::{
    HOUR, MILE, MINUTE, NAUTICAL_MILE, UNITS, Unit, celsius, degrees, feet, gallons, gallons_per_hour, horsepower,
    in_celsius, inches, inches_hg, metric_horsepower, pounds, pounds_per_cubic_foot, standard_gravity, units_of,
};
