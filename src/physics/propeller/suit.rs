//! Which pitch suits an engine and a speed.

use uom::si::f64::{AngularVelocity, Length, Power, Ratio, Velocity};

use super::series::{PITCH_RATIOS, Propeller, PropellerError};
use crate::quantity::{Dimensioned, horsepower};
use crate::working::{Sheet, Term, max, min, number, pi};

/// Blades of an outboard's propeller. Common practice, no source.
pub const USUAL_BLADES: u8 = 3;
/// Expanded blade area over the disc's of an outboard's propeller. Common practice, no source.
pub const USUAL_AREA_RATIO: f64 = 0.55;
/// How far a propeller at full speed stays behind its pitch. Common practice, no source: 0.08 to 0.15 for planing boats.
pub const SLIP: f64 = 0.12;
/// Pitch over diameter of what is sold for outboards: a slower boat still gets the least, a faster one the greatest.
/// Common practice, no source.
pub const MATCHED_PITCH_RATIOS: [f64; 2] = [0.6, 1.4];
/// Pitch over diameter where no speed says more: of small engines up to the first power, of those for planing boats from the
/// second on, between them in proportion. Common practice, no source.
const USUAL_PITCH_RATIOS: [f64; 2] = [0.95, 1.1];
const USUAL_PITCH_POWERS_HP: [f64; 2] = [10.0, 40.0];

/// What turns a propeller: an engine as its plate and its mounting sheet give it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Drive {
    /// Rated power.
    pub power: Power,
    /// Speed of the engine at rated power.
    pub rated_speed: AngularVelocity,
    /// Turns of the engine for one of the propeller.
    pub gear_ratio: Ratio,
    /// The propeller's diameter.
    pub diameter: Length,
}

/// A propeller as far as it is known.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Screw {
    /// How many blades.
    pub blades: u8,
    /// Expanded blade area over the disc's.
    pub area_ratio: f64,
    /// Told, or what it is taken by.
    pub pitch: Pitch,
}

/// How the pitch of a propeller is known.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Pitch {
    /// It is told.
    Told(Length),
    /// It is what her full speed asks of it.
    ForSpeed(Velocity),
    /// It is the usual one of the engine's class.
    Usual,
}

/// Pitches over the diameter.
#[derive(Clone, Debug)]
pub struct Pitches {
    /// Of the propeller on the engine.
    pub own: Term<Ratio>,
    /// Of the one usual for the class; the told one where one is told.
    pub usual: Term<Ratio>,
}

/// The propeller's turns a second at rated speed times its diameter, `u = n D / (2π i)`: a speed, on which thrust and
/// torque depend as on that of a disc.
pub fn rated_turning(sheet: &mut Sheet, drive: &Drive) -> Term<Velocity> {
    let turns = Term::new("n", drive.rated_speed) / (number(2.0) * pi() * Term::new("i", drive.gear_ratio));
    sheet.set(
        "u",
        "propeller's turns at rated speed times its diameter (a turn is 2 π radians)",
        turns * Term::new("D", drive.diameter),
    )
}

/// Pitch over diameter: the told one, within the series; the one with which the engine turns at its rated speed when she
/// runs her greatest, `p = V / ((1 − s) u)`, within what is sold; or the usual one. Source: common practice, no source.
pub fn pitches(sheet: &mut Sheet, drive: &Drive, turning: &Term<Velocity>, pitch: Pitch) -> Pitches {
    let within = |ratio: Term<Ratio>, [least, most]: [f64; 2]| min(max(ratio, number(least)), number(most));
    match pitch {
        Pitch::Told(told) => {
            let ratio = Term::new("p", told) / Term::new("D", drive.diameter);
            let series = [*PITCH_RATIOS.start(), *PITCH_RATIOS.end()];
            if !PITCH_RATIOS.contains(&ratio.value().si()) {
                sheet.remark("The series holds pitches of 0.5 to 1.4 diameters; the nearest of them is used.");
            }
            let own = sheet.set("P/D", "pitch over diameter", within(ratio, series));
            Pitches { usual: own.clone(), own }
        }
        Pitch::ForSpeed(speed) => {
            let usual = usual(sheet, drive.power);
            let ratio = Term::new("Vs", speed) / ((number(1.0) - Term::new("sA", Ratio::from_si(SLIP))) * turning);
            let own = sheet.set("P/D", "pitch over diameter for her speed", within(ratio, MATCHED_PITCH_RATIOS));
            Pitches { own, usual }
        }
        Pitch::Usual => {
            let usual = usual(sheet, drive.power);
            Pitches { own: usual.clone(), usual }
        }
    }
}

fn usual(sheet: &mut Sheet, power: Power) -> Term<Ratio> {
    let [[least, most], [from, to]] = [USUAL_PITCH_RATIOS, USUAL_PITCH_POWERS_HP];
    let [from, to] = [from, to].map(|power| Term::constant(horsepower(power)));
    let part = (Term::new("P", power) - &from) / (to - from);
    let part = min(max(part, number(0.0)), number(1.0));
    let w = sheet.set("w", "how far the power is on from a small engine's to a planing boat's", part);
    let between = number(least) * (number(1.0) - &w) + number(most) * w;
    sheet.set("P/Du", "pitch over diameter, usual for the power", between)
}

impl Screw {
    /// The propeller of the series with this pitch.
    ///
    /// # Errors
    /// What the series does not reach.
    pub fn with(&self, pitch_ratio: &Term<Ratio>) -> Result<Propeller, PropellerError> {
        Propeller::new(self.blades, self.area_ratio, pitch_ratio.value().si())
    }
}
