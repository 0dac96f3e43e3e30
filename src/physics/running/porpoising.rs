//! The trim above which she begins to porpoise.

use std::ops::RangeInclusive;

use uom::si::angle::degree;
use uom::si::f64::{Angle, Ratio};

use crate::quantity::{Dimensioned, degrees};
use crate::working::Figure;

/// Deadrises, degrees, for which the limit is told: Savitsky's curves reach from 0 to 20, the formula has no sense near 0, and
/// boats of up to 25 are commonly read off by it. Source: Celano 1998, from memory; the bounds common practice, no source.
pub const DEADRISES: RangeInclusive<f64> = 5.0..=25.0;

/// Critical trim in degrees, `0.1197 β^0.7651 exp(15.7132 √(CL/2) β^−0.2629)`, β in degrees. Source: T. Celano, "The
/// prediction of porpoising inception for modern planing craft", 1998, a fit to Savitsky's curves; value from memory.
pub fn critical_degrees<N: Figure>(deadrise: N, lift: N) -> N {
    let n = N::number;
    n(0.1197)
        * deadrise.clone().power(0.7651)
        * (n(15.7132) * (lift / n(2.0)).root() * deadrise.power(-0.2629)).exponential()
}

/// The trim above which she porpoises; `None` for a deadrise that the formula was not fitted to.
pub fn critical_trim(deadrise: Angle, lift: Ratio) -> Option<Angle> {
    let deadrise = deadrise.get::<degree>();
    let told = DEADRISES.contains(&deadrise) && lift.si().is_finite() && lift.si() > 0.0;
    told.then(|| degrees(critical_degrees(deadrise, lift.si())))
}
