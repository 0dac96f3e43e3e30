//! Distance for fuel, range, slip.

use std::f64::consts::TAU;

use uom::si::f64::{AngularVelocity, Length, Ratio, Velocity, Volume, VolumeRate};

use crate::quantity::{Dimensioned, DistancePerVolume, Style};
use crate::working::{Sheet, Term, number};

/// Part of the tank that is kept back. Common practice, no source: a tenth.
pub const KEPT_BACK: f64 = 0.1;

/// What a volume of fuel takes her, `V / f`.
pub fn distance_per_volume(
    sheet: &mut Sheet,
    speed: &Term<Velocity>,
    fuel: &Term<VolumeRate>,
) -> Term<DistancePerVolume> {
    sheet.set("e", "distance for a volume of fuel", speed / fuel)
}

/// How far a tank takes her with a tenth kept back, `0.9 · C · e`.
pub fn range_with_reserve(sheet: &mut Sheet, tank: Volume, economy: &Term<DistancePerVolume>) -> Term<Length> {
    let usable = (number(1.0) - number(KEPT_BACK)) * Term::new("C", tank);
    sheet.set_styled("S", "range with a tenth kept back", usable * economy, Style::Distance)
}

/// The tank that gives this range at this speed and fuel, a tenth kept back.
pub fn tank_for(range: Length, speed: Velocity, fuel: VolumeRate) -> Volume {
    Volume::from_si(range.si() * fuel.si() / speed.si() / (1.0 - KEPT_BACK))
}

/// The speed of a propeller that did not slip: its pitch, turned so often.
pub fn pitch_speed(sheet: &mut Sheet, engine: AngularVelocity, gears: Ratio, pitch: Length) -> Term<Velocity> {
    let turns = Term::new("n", engine) / (number(TAU) * Term::new("i", gears));
    sheet.set("Vp", "speed of the pitch: turns of the propeller times its pitch", turns * Term::new("p", pitch))
}

/// Slip, `1 − V / Vp`. Source: common practice, no source: mph = rpm · pitch · (1 − slip) / (ratio · 1056), which is the same.
pub fn slip(sheet: &mut Sheet, speed: &Term<Velocity>, pitch_speed: &Term<Velocity>) -> Term<Ratio> {
    sheet.set("s", "slip", number(1.0) - speed / pitch_speed)
}
