//! Holes, bolts and room on a transom.

use uom::si::f64::Length;

use crate::quantity::{Dimensioned, inches};
use crate::working::{Sheet, Term, ceil_to_multiple, number};

/// Distance between the upper pair of bolts. Source: trade association layout in general use.
pub const UPPER_PAIR_IN: f64 = 12.875;
/// Distance between the lower pair. Source: the same.
pub const LOWER_PAIR_IN: f64 = 9.875;
/// From the upper pair down to the lower. Source: the same.
pub const BETWEEN_PAIRS_IN: f64 = 8.0;
/// From the transom's top down to the upper holes. Source: the same.
pub const UPPER_BELOW_TOP_IN: f64 = 1.875;
/// What that distance must never fall below. Source: the same.
pub const UPPER_BELOW_TOP_LEAST_IN: f64 = 1.75;
/// Diameter of the mounting bolts. Source: the same.
pub const BOLT_DIAMETER_IN: f64 = 0.5;
/// Power from which engines are bolted by the pattern; smaller ones hang on clamp screws. Common practice, no source.
pub const BOLTED_FROM_HP: f64 = 25.0;
/// Threads that show beyond a tightened nut. Common practice, no source.
pub const THREADS_SHOWING: f64 = 2.0;
/// Thickness of the engine bracket's flange under the bolt heads. Common practice, no source.
pub const FLANGE_IN: f64 = 0.625;
/// Washers under head and nut. Common practice, no source.
pub const WASHERS: f64 = 2.0;
/// Steps in which long bolts are stocked. Common practice, no source.
pub const BOLT_STEP_IN: f64 = 0.5;

/// Where a bolt hole is on the transom.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HolePlace {
    /// To port of the centreline; negative to starboard.
    pub y: Length,
    /// Below the transom's top.
    pub below: Length,
}

/// The four holes of the pattern for an engine on this centreline: upper port, upper starboard,
/// lower port, lower starboard.
pub fn pattern(y: Length) -> [HolePlace; 4] {
    let upper = inches(UPPER_BELOW_TOP_IN);
    let lower = inches(UPPER_BELOW_TOP_IN + BETWEEN_PAIRS_IN);
    let half_upper = inches(UPPER_PAIR_IN / 2.0);
    let half_lower = inches(LOWER_PAIR_IN / 2.0);
    [(y + half_upper, upper), (y - half_upper, upper), (y + half_lower, lower), (y - half_lower, lower)]
        .map(|(y, below)| HolePlace { y, below })
}

/// Centre distance of two holes.
pub fn apart(a: HolePlace, b: HolePlace) -> Length {
    Length::from_si((a.y - b.y).si().hypot((a.below - b.below).si()))
}

/// A bolt's dimensions that decide its length.
#[derive(Clone, Copy, Debug)]
pub struct BoltDimensions {
    /// Along the bolt.
    pub nut_height: Length,
    /// Of one washer.
    pub washer_thickness: Length,
    /// From one turn of the thread to the next.
    pub pitch: Length,
}

/// The bolt length that a grip asks for, to the next stock length.
pub fn bolt_length(sheet: &mut Sheet, thickness: Length, bolt: BoltDimensions) -> Term<Length> {
    let transom = Term::new("t", thickness);
    let flange = Term::new("f", inches(FLANGE_IN));
    let washer = Term::new("tw", bolt.washer_thickness);
    let nut = Term::new("m", bolt.nut_height);
    let pitch = Term::new("p", bolt.pitch);
    let least = sheet.set(
        "l",
        "transom, bracket flange, washers, nut and two threads showing",
        transom + flange + number(WASHERS) * washer + nut + number(THREADS_SHOWING) * pitch,
    );
    let inch = Term::constant(inches(1.0));
    sheet.set("lb", "next stock length", ceil_to_multiple(least / &inch, BOLT_STEP_IN) * inch)
}

/// Room that two engines ask for between their centres: half of what each asks beside its like.
pub fn centres_needed(sheet: &mut Sheet, one: Length, other: Length) -> Term<Length> {
    let one = Term::new("c1", one);
    let other = Term::new("c2", other);
    sheet.set("c", "least distance between centres", (one + other) / number(2.0))
}

/// Half width that an engine off the centreline sweeps at full lock: |y| and its reach.
pub fn swept_half_width(sheet: &mut Sheet, y: Length, reach: Length) -> Term<Length> {
    let y = Term::new("y", y.abs());
    let reach = Term::new("k", reach);
    sheet.set("e", "reach of the powerhead from the boat's centreline", y + reach)
}
