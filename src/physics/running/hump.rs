//! What the prism's drag lacks about the hump.

use crate::working::Figure;

/// Volume Froude number from which the correction is told, and any boat by it. Source: Blount and Fox 1976, value from memory.
pub const FROM: f64 = 1.0;

/// Her drag over the prism's, `0.98 + 2 (LCG/B)^1.45 e^(−2 (F∇ − 0.85)) − 3 (LCG/B) e^(−3 (F∇ − 0.85))`. Source: D. Blount and
/// D. Fox, "Small-craft power prediction", Marine Technology 13 (1), 1976; value from memory.
pub fn factor<N: Figure>(centre_over_beam: N, froude: N) -> N {
    let n = N::number;
    let past = froude - n(0.85);
    n(0.98) + n(2.0) * centre_over_beam.clone().power(1.45) * (n(-2.0) * past.clone()).exponential()
        - n(3.0) * centre_over_beam * (n(-3.0) * past).exponential()
}

/// Volume Froude number `V / √(g ∇^⅓)`: speed in m/s, volume in m³.
pub fn volume_froude(speed: f64, volume: f64, gravity: f64) -> f64 {
    speed / (gravity * volume.cbrt()).sqrt()
}
