//! The force square to its shaft that a propeller makes where water meets its disk at an angle.

use uom::si::f64::{Force, Length, MassDensity, Ratio, Velocity};

use super::curves::{Sized, Turning};
use crate::quantity::Dimensioned;
use crate::working::{Figure, Sheet, Term};

/// Part of the radius at which a blade's torque is taken to work, and its speed to be met. Common practice, no source.
pub const WORKS_AT: f64 = 0.7;
/// Its square times π.
const LEVER: f64 = 1.5394;

/// `K_N / sin ψ = N / (ρ n² D⁴ sin ψ) = (2 K_Q − J K_Q') J / (0.7² π)`: the force square to the shaft over the sine of the angle
/// between water and shaft, on the side to which the water crosses the disk. `slope` is `K_Q' = dK_Q/dJ`.
///
/// A blade that goes against the crossing water meets `2π n · 0.7 R + V sin ψ`, the one across from it as much less; each asks for
/// torque as a propeller that turned as fast, `ρ n² D⁵ K_Q(J)` with its own n and J, and the mean over a turn of what that
/// pushes at 0.7 R is this, to the first order of ψ. Source: quasi-steady blades, after F. Gutsche, 1964, from memory; the
/// derivation is this program's, and a test sums the blades round a turn. That `V cos ψ` goes along the shaft is left out of J.
///
/// Blades that the water has no time to follow, that break the surface or cavitate, are not told. Ribner's fin (NACA Report 820,
/// 1943, from memory) has two to five times as much: this is the more careful of the two.
pub fn square_to_shaft<N: Figure>(torque: N, slope: N, advance: N) -> N {
    (N::number(2.0) * torque - advance.clone() * slope) * advance / N::number(LEVER)
}

impl Sized {
    /// `dK_Q/dJ` at this advance.
    pub fn torque_slope(&self, advance: f64) -> f64 {
        self.curves.torque_slope((advance / self.stretch).min(self.curves.no_thrust))
    }

    /// Force square to the shaft over the sine of the angle between water and shaft, N.
    pub fn square_to_shaft(&self, turning: &Turning) -> f64 {
        let advance = turning.open_water.advance;
        let coefficient = square_to_shaft(turning.open_water.torque, self.torque_slope(advance), advance);
        coefficient * self.density * turning.turns * turning.turns * self.diameter.powi(4)
    }
}

/// Writes down the force of one propeller square to its shaft, over the sine of the angle at which the water meets it.
pub fn write_square_to_shaft(sheet: &mut Sheet, sized: &Sized, turning: &Turning) -> Term<Force> {
    let ratio = |symbol: &str, value: f64| Term::new(symbol, Ratio::from_si(value));
    let advance = turning.open_water.advance;
    let coefficient = sheet.set(
        "KN",
        "what the blades push square to the shaft over the sine of the angle at which water meets it",
        square_to_shaft(
            ratio("KQ", turning.open_water.torque),
            ratio("KQ'", sized.torque_slope(advance)),
            ratio("J", advance),
        ),
    );
    let turns = Term::new("nD", Velocity::from_si(turning.turns * sized.diameter));
    let diameter = Term::new("D", Length::from_si(sized.diameter));
    let density = Term::new("ρ", MassDensity::from_si(sized.density));
    sheet.set(
        "N1",
        "the same as a force, one propeller",
        coefficient * density * &turns * &turns * &diameter * &diameter,
    )
}
