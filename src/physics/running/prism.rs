//! What a planing prism feels: lift, where it acts, friction.
//!
//! Source: D. Savitsky, "Hydrodynamic design of planing hulls", Marine Technology 1 (1), 1964; equations from memory, held
//! against the paper's own example. Trim and deadrise are in degrees, as the paper fits them; lengths over the beam.

use crate::working::Figure;

/// Lift coefficient of a flat bottom, `τ^1.1 (0.0120 λ^½ + 0.0055 λ^2.5 / Cv²)`. Source: Savitsky 1964, eq. 15.
pub fn flat_lift<N: Figure>(trim: N, wetted: N, speed: N) -> N {
    let n = N::number;
    trim.power(TRIM_POWER)
        * (n(DYNAMIC) * wetted.clone().root() + n(BUOYANT) * wetted.power(BUOYANT_POWER) / speed.power(2.0))
}

/// Lift coefficient of a bottom of this deadrise whose flat one would have `flat`, `CL0 − 0.0065 β CL0^0.6`. Source: Savitsky
/// 1964, eq. 16.
pub fn lift<N: Figure>(flat: N, deadrise: N) -> N {
    flat.clone() - N::number(DEADRISE_LOSS) * deadrise * flat.power(DEADRISE_POWER)
}

/// Centre of pressure over the mean wetted length, from the transom, `0.75 − 1 / (5.21 Cv²/λ² + 2.39)`. Source: Savitsky 1964.
pub fn centre_of_pressure<N: Figure>(speed: N, wetted: N) -> N {
    let n = N::number;
    n(0.75) - n(1.0) / (n(5.21) * speed.power(2.0) / wetted.power(2.0) + n(2.39))
}

/// The dynamic part of the flat bottom's lift coefficient, `0.0120 τ^1.1 λ^½`. Source: Savitsky 1964.
pub fn dynamic_lift<N: Figure>(trim: N, wetted: N) -> N {
    N::number(DYNAMIC) * trim.power(TRIM_POWER) * wetted.root()
}

/// Square of the mean speed of the water along the bottom over her speed, `1 − CLd / (λ cos τ)`. Source: Savitsky 1964.
pub fn bottom_speed_squared<N: Figure>(dynamic_lift: N, wetted: N, cos_trim: N) -> N {
    N::number(1.0) - dynamic_lift / (wetted * cos_trim)
}

const TRIM_POWER: f64 = 1.1;
const DYNAMIC: f64 = 0.0120;
const BUOYANT: f64 = 0.0055;
const BUOYANT_POWER: f64 = 2.5;
const DEADRISE_LOSS: f64 = 0.0065;
const DEADRISE_POWER: f64 = 0.6;

/// What roughness adds to the friction coefficient. Source: Savitsky 1964, after the towing tanks' conference.
pub const ROUGHNESS: f64 = 0.0004;
/// Steps after which a solver gives up: each of these converges in a few.
const STEPS: usize = 60;
/// Relative change at which a root is as good as it gets.
const STILL: f64 = 1e-15;

/// The flat bottom's lift coefficient that leaves this much at the deadrise (degrees): the root of [`lift`], by Newton's method
/// from above, where the curve is convex.
pub fn flat_lift_for(lift_coefficient: f64, deadrise: f64) -> f64 {
    let k = DEADRISE_LOSS * deadrise;
    let mut flat = (lift_coefficient + k).max(lift_coefficient / (1.0 - k).max(f64::MIN_POSITIVE));
    for _ in 0..STEPS {
        let left = lift(flat, deadrise);
        let step = (left - lift_coefficient) / (1.0 - DEADRISE_POWER * (flat - left) / flat);
        flat -= step;
        if step.abs() <= STILL * flat.abs() {
            break;
        }
    }
    flat
}

/// The mean wetted length over the beam that gives a flat bottom this lift: the root of [`flat_lift`], by Newton's method in the
/// square root of the length, from above.
pub fn wetted_for(flat: f64, trim: f64, speed: f64) -> f64 {
    let lift = flat / trim.powf(TRIM_POWER);
    let buoyant = BUOYANT / (speed * speed);
    let mut root = (lift / DYNAMIC).min((lift / buoyant).powf(1.0 / (2.0 * BUOYANT_POWER)));
    for _ in 0..STEPS {
        let fourth = root.powi(4);
        let step = (DYNAMIC * root + buoyant * fourth * root - lift) / (DYNAMIC + 5.0 * buoyant * fourth);
        root -= step;
        if step.abs() <= STILL * root.abs() {
            break;
        }
    }
    root * root
}

/// Friction coefficient of a smooth plate at this Reynolds number: the root of `0.242 / √Cf = log10(Re Cf)`, by Newton's method.
/// Source: Schoenherr's line, as Savitsky 1964 uses it.
pub fn friction_coefficient(reynolds: f64) -> f64 {
    let reynolds = reynolds.max(LEAST_REYNOLDS);
    // In the root: g(x) = 0.242 / x − log10(Re x²).
    let mut root = SCHOENHERR / (LEAST_GUESS * reynolds).log10();
    for _ in 0..STEPS {
        let miss = SCHOENHERR / root - (reynolds * root * root).log10();
        let slope = -SCHOENHERR / (root * root) - 2.0 / (root * std::f64::consts::LN_10);
        let step = miss / slope;
        root = (root - step).max(0.5 * root);
        if step.abs() <= STILL * root.abs() {
            break;
        }
    }
    root * root
}

const SCHOENHERR: f64 = 0.242;
/// A first guess of the coefficient.
const LEAST_GUESS: f64 = 2e-3;
/// Below this the line means nothing, and no boat planes.
const LEAST_REYNOLDS: f64 = 1e5;
