//! The trims between which she begins to porpoise: by two published limits, which differ by up to a degree.

use std::ops::RangeInclusive;

use uom::si::angle::degree;
use uom::si::f64::{Angle, Ratio};

use crate::quantity::{Dimensioned, degrees};
use crate::working::Figure;

/// Deadrises, degrees, for which Celano's limit is told: the formula has no sense near 0, and boats of up to 25 are commonly read
/// off by it. Source: Celano 1998, from memory; the bounds common practice, no source.
pub const DEADRISES: RangeInclusive<f64> = 5.0..=25.0;
/// Roots of half the lift coefficient, √(CL/2), for which the limits are told. Savitsky's curves reach from 0.13 to 0.30 (value
/// from memory). Beyond 0.30 an exponential soars and she does not plane yet; below 0.13, where fast boats run, Celano's formula
/// goes on evenly. Common practice, no source, for the 0.10.
pub const ROOTS: RangeInclusive<f64> = 0.10..=0.30;

/// The trims between which she begins to porpoise: below the first by neither limit, above the second by both.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Porpoising {
    /// The lower of both limits.
    pub from: Angle,
    /// The higher of both.
    pub to: Angle,
}

/// Critical trim in degrees, `0.1197 β^0.7651 exp(15.7132 √(CL/2) β^−0.2629)`, β in degrees. Source: T. Celano, "The
/// prediction of porpoising inception for modern planing craft", 1998, a fit to trials of models; value from memory.
pub fn critical_degrees<N: Figure>(deadrise: N, lift: N) -> N {
    let n = N::number;
    n(0.1197)
        * deadrise.clone().power(0.7651)
        * (n(15.7132) * (lift / n(2.0)).root() * deadrise.power(-0.2629)).exponential()
}

/// The deadrise at which Celano's formula is taken: a bottom flatter than it tells is taken as one of 5 degrees.
pub fn taken_at(deadrise: Angle) -> Angle {
    let least = degrees(*DEADRISES.start());
    if least.exceeds(deadrise) { least } else { deadrise }
}

/// The trim above which she porpoises by Celano's formula; `None` for a deadrise or a lift that it does not tell.
pub fn critical_trim(deadrise: Angle, lift: Ratio) -> Option<Angle> {
    let deadrise = deadrise.get::<degree>();
    let told = DEADRISES.contains(&deadrise) && ROOTS.contains(&root(lift));
    told.then(|| degrees(critical_degrees(deadrise, lift.si())))
}

/// Savitsky's curves as they are drawn: √(CL/2), and the trims, degrees, of 0, 10 and 20 degrees of deadrise. Source: D. Savitsky,
/// "Hydrodynamic design of planing hulls", 1964, after Day and Haag 1952; points to a
/// tenth of a degree, from memory.
const CURVES: [(f64, [f64; 3]); 6] = [
    (0.13, [1.1, 2.7, 3.4]),
    (0.16, [2.1, 3.5, 4.3]),
    (0.20, [3.8, 5.0, 5.8]),
    (0.24, [5.9, 6.8, 7.6]),
    (0.27, [7.6, 8.2, 9.0]),
    (0.30, [9.3, 9.8, 10.5]),
];
/// Deadrise from one curve to the next, degrees.
const APART: f64 = 10.0;

/// Savitsky's limit in degrees: straight between the points and between the curves, and straight on past the first and last.
pub fn curves(deadrise: f64, root: f64) -> f64 {
    let trim = |[flat, ten, twenty]: [f64; 3]| {
        let part = deadrise / APART;
        if part < 1.0 { flat + part * (ten - flat) } else { ten + (part - 1.0) * (twenty - ten) }
    };
    let next = CURVES.iter().position(|(at, _)| *at >= root).unwrap_or(CURVES.len() - 1).max(1);
    let ((a, low), (b, high)) = (CURVES[next - 1], CURVES[next]);
    let part = (root - a) / (b - a);
    trim(low) + part * (trim(high) - trim(low))
}

/// The trims between which she begins to porpoise, by both limits; a bottom flatter than Celano's formula tells is taken by it as
/// one of 5 degrees. `None` for what neither tells.
pub fn porpoising(deadrise: Angle, lift: Ratio) -> Option<Porpoising> {
    let celano = taken_at(deadrise).get::<degree>();
    let (deadrise, root) = (deadrise.get::<degree>(), root(lift));
    if !(0.0..=*DEADRISES.end()).contains(&deadrise) || !ROOTS.contains(&root) {
        return None;
    }
    let celano = critical_degrees(celano, lift.si());
    let drawn = curves(deadrise, root);
    Some(Porpoising { from: degrees(celano.min(drawn)), to: degrees(celano.max(drawn)) })
}

fn root(lift: Ratio) -> f64 {
    (0.5 * lift.si()).sqrt()
}
