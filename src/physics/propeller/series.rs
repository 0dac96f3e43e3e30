//! Thrust and torque of a propeller of the series in open water.

use std::ops::RangeInclusive;

use super::table::{Monomial, THRUST, TORQUE};

/// Numbers of blades of the series. Source: as the polynomials.
pub const BLADES: RangeInclusive<u8> = 2..=7;
/// Expanded blade area over the disc's. Source: as the polynomials.
pub const AREA_RATIOS: RangeInclusive<f64> = 0.3..=1.05;
/// Pitch over diameter. Source: as the polynomials.
pub const PITCH_RATIOS: RangeInclusive<f64> = 0.5..=1.4;

/// A propeller of the series, whatever its size.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Propeller {
    blades: u8,
    area_ratio: f64,
    pitch_ratio: f64,
}

/// What a propeller gives at one advance.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OpenWater {
    /// `J = V_A / (n D)`, n in turns a second.
    pub advance: f64,
    /// `K_T = T / (ρ n² D⁴)`.
    pub thrust: f64,
    /// `K_Q = Q / (ρ n² D⁵)`.
    pub torque: f64,
}

/// Why the series does not know a propeller.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum PropellerError {
    /// Fewer or more blades than [`BLADES`].
    #[error("{0} blades: the series has 2 to 7")]
    Blades(u8),
    /// An expanded blade area over the disc's outside [`AREA_RATIOS`].
    #[error("a blade area of {0} of the disc: the series has 0.3 to 1.05")]
    AreaRatio(f64),
    /// A pitch over diameter outside [`PITCH_RATIOS`].
    #[error("a pitch of {0} of the diameter: the series has 0.5 to 1.4")]
    PitchRatio(f64),
    /// An advance below zero, or one that is no number.
    #[error("an advance of {0}: zero or more is expected")]
    Advance(f64),
}

impl Propeller {
    /// A propeller by its blades, their expanded area over the disc's, and its pitch over its diameter.
    ///
    /// # Errors
    /// Which of them the series does not reach.
    pub fn new(blades: u8, area_ratio: f64, pitch_ratio: f64) -> Result<Self, PropellerError> {
        if !BLADES.contains(&blades) {
            return Err(PropellerError::Blades(blades));
        }
        if !AREA_RATIOS.contains(&area_ratio) {
            return Err(PropellerError::AreaRatio(area_ratio));
        }
        if !PITCH_RATIOS.contains(&pitch_ratio) {
            return Err(PropellerError::PitchRatio(pitch_ratio));
        }
        Ok(Propeller { blades, area_ratio, pitch_ratio })
    }

    /// Its blades.
    pub fn blades(&self) -> u8 {
        self.blades
    }

    /// Expanded blade area over the disc's.
    pub fn area_ratio(&self) -> f64 {
        self.area_ratio
    }

    /// Pitch over diameter.
    pub fn pitch_ratio(&self) -> f64 {
        self.pitch_ratio
    }

    /// What it gives at the advance `J = V_A / (n D)`. Beyond the advance at which it stops pulling the thrust comes out
    /// negative, and soon after that the polynomials mean nothing. Source: as the polynomials (Reynolds number 2·10⁶,
    /// not corrected).
    ///
    /// # Errors
    /// An advance below zero, or one that is no number.
    pub fn open_water(&self, advance: f64) -> Result<OpenWater, PropellerError> {
        if !(advance.is_finite() && advance >= 0.0) {
            return Err(PropellerError::Advance(advance));
        }
        Ok(self.coefficients(advance))
    }

    /// The same, of an advance that is known to be sound.
    pub(super) fn coefficients(&self, advance: f64) -> OpenWater {
        let of = |terms: &[Monomial]| -> f64 {
            let bases = [advance, self.pitch_ratio, self.area_ratio, f64::from(self.blades)];
            terms
                .iter()
                .map(|(coefficient, powers)| {
                    bases
                        .iter()
                        .zip(powers)
                        .fold(*coefficient, |product, (base, power)| product * base.powi(i32::from(*power)))
                })
                .sum()
        };
        OpenWater { advance, thrust: of(&THRUST), torque: of(&TORQUE) }
    }
}

impl OpenWater {
    /// Power of the thrust over power at the shaft, `η = J K_T / (2π K_Q)`.
    pub fn efficiency(&self) -> f64 {
        self.advance * self.thrust / (2.0 * std::f64::consts::PI * self.torque)
    }
}
