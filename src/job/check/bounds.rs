//! Between what and what each sort of reading can be.

use crate::quantity::{Dimensioned, parse};

/// The range in which a value of this sort can be: outside it, somebody slipped.
/// Source of all of them: common practice, no source; wide of anything that floats with outboards.
#[derive(Clone, Copy)]
pub(super) struct Bounds {
    pub(super) least: &'static str,
    pub(super) most: &'static str,
}

pub(super) const fn bounds(least: &'static str, most: &'static str) -> Bounds {
    Bounds { least, most }
}

pub(super) const BOAT_LENGTH: Bounds = bounds("5 ft", "80 ft");
pub(super) const BEAM: Bounds = bounds("2 ft", "30 ft");
pub(super) const WIDTH: Bounds = bounds("1 ft", "30 ft");
pub(super) const DEADRISE: Bounds = bounds("0 deg", "60 deg");
pub(super) const TRANSOM_HEIGHT: Bounds = bounds("6 in", "60 in");
pub(super) const TRANSOM_ANGLE: Bounds = bounds("-10 deg", "40 deg");
pub(super) const THICKNESS: Bounds = bounds("1/4 in", "8 in");
pub(super) const ON_TRANSOM: Bounds = bounds("0 in", "60 in");
pub(super) const HOLE_DIAMETER: Bounds = bounds("1/8 in", "4 in");
pub(super) const SETBACK: Bounds = bounds("0 in", "72 in");
pub(super) const DROP: Bounds = bounds("-24 in", "36 in");
pub(super) const ACROSS: Bounds = bounds("0 in", "15 ft");
pub(super) const ENGINE_POWER: Bounds = bounds("0.2 hp", "700 hp");
pub(super) const BOAT_POWER: Bounds = bounds("1 hp", "4,000 hp");
pub(super) const ENGINE_WEIGHT: Bounds = bounds("10 lb", "1,600 lb");
pub(super) const LOAD: Bounds = bounds("50 lb", "60,000 lb");
pub(super) const ITEM_WEIGHT: Bounds = bounds("0 lb", "20,000 lb");
pub(super) const ALONG: Bounds = bounds("-10 ft", "80 ft");
pub(super) const HEIGHT: Bounds = bounds("-10 ft", "30 ft");
pub(super) const SHAFT: Bounds = bounds("10 in", "45 in");
pub(super) const SMALL_LENGTH: Bounds = bounds("0 in", "80 in");
pub(super) const ON_BRACKET: Bounds = bounds("-16 in", "16 in");
pub(super) const OFFSET: Bounds = bounds("-60 in", "60 in");
pub(super) const BRACKET_FACE: Bounds = bounds("4 in", "36 in");
pub(super) const PROPELLER: Bounds = bounds("4 in", "36 in");
pub(super) const PITCH: Bounds = bounds("2 in", "48 in");
/// Blade area and blades of a propeller: as far as the series of propellers goes that it is taken for.
pub(super) const BLADE_AREA: Bounds = bounds("0.3", "1.05");
pub(super) const BLADES: std::ops::RangeInclusive<u8> = 2..=7;
pub(super) const ROTATION: Bounds = bounds("200 rpm", "12,000 rpm");
pub(super) const GEAR: Bounds = bounds("0.5", "10");
pub(super) const TRIM: Bounds = bounds("-20 deg", "40 deg");
pub(super) const TILT: Bounds = bounds("20 deg", "110 deg");
pub(super) const STEER: Bounds = bounds("5 deg", "180 deg");
pub(super) const CURRENT: Bounds = bounds("0 A", "2,000 A");
pub(super) const FUEL_RATE: Bounds = bounds("0 gal/h", "100 gal/h");
pub(super) const VOLUME: Bounds = bounds("0 L", "5,000 L");
pub(super) const TORQUE: Bounds = bounds("0.1 lbf·ft", "300 lbf·ft");
/// Rows of holes that an engine bracket may have.
pub(super) const HOLE_ROWS: std::ops::RangeInclusive<u8> = 1..=12;

/// The value of a bound in the coherent SI unit.
pub(super) fn si<Q: Dimensioned>(text: &str) -> f64 {
    parse(text, Q::KIND).map_or(f64::NAN, |parsed| parsed.si)
}
