//! How far the method goes.

use std::ops::RangeInclusive;

use uom::si::angle::degree;
use uom::si::f64::{Angle, Ratio};

use crate::quantity::Dimensioned;

/// Speed coefficients that the method was fitted to. Source: Savitsky 1964.
pub const SPEEDS: RangeInclusive<f64> = 0.60..=13.0;
/// Trims that it was fitted to, degrees. Source: the same.
pub const TRIMS: RangeInclusive<f64> = 2.0..=15.0;
/// Longest mean wetted length over the beam that it was fitted to. Source: the same.
pub const LONGEST_WETTED: f64 = 4.0;

/// Why she is not told.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum Outside {
    /// Her speed coefficient lies outside [`SPEEDS`].
    #[error("her speed over √(g b) is {0:.2}: the method was fitted to 0.60 to 13")]
    Speed(f64),
    /// Her trim, degrees, lies outside [`TRIMS`].
    #[error("she would trim {0:.1} deg: the method was fitted to 2 to 15")]
    Trim(f64),
    /// Her mean wetted length over the beam is more than [`LONGEST_WETTED`].
    #[error("she would wet {0:.1} beams of her bottom: the method was fitted to 4 at most")]
    Wetted(f64),
    /// Her volume Froude number lies below [`super::hump::FROM`].
    #[error("her speed over √(g ∇^⅓) is {0:.2}: below 1 she floats more than she planes")]
    Floats(f64),
    /// No trim balances her, or her beam, weight, speed or what her bottom carries is not above zero.
    #[error("no trim balances weight, pressure and thrust")]
    NoBalance,
}

/// Whether the method was fitted to how she runs: her speed coefficient, the trim of her keel, and the mean wetted length over the
/// beam.
///
/// # Errors
/// What lies outside.
pub(in crate::physics) fn within(speed: Ratio, trim: Angle, wetted: Ratio) -> Result<(), Outside> {
    let (speed, trim, wetted) = (speed.si(), trim.get::<degree>(), wetted.si());
    if !SPEEDS.contains(&speed) {
        return Err(Outside::Speed(speed));
    }
    if !TRIMS.contains(&trim) {
        return Err(Outside::Trim(trim));
    }
    if wetted > LONGEST_WETTED {
        return Err(Outside::Wetted(wetted));
    }
    Ok(())
}
