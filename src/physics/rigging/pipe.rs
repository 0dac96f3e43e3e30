//! Flow in pipes: laminar, turbulent and between, as a plain numeric kernel.

/// Below this Reynolds number the flow is laminar. Source: Moody 1944, value from memory.
pub const LAMINAR_TO: f64 = 2300.0;
/// From this Reynolds number it is turbulent. Source: Moody 1944, value from memory.
pub const TURBULENT_FROM: f64 = 4000.0;
/// Steps of the iteration for Colebrook's formula: each gains about a digit, so this is far beyond rounding.
const STEPS: usize = 60;

/// A Darcy friction factor, and by how much Colebrook's formula misses it (none where it is laminar).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Friction {
    /// Darcy's factor.
    pub factor: f64,
    /// What is left of `1/√f + 2 log10(…)`.
    pub residual: f64,
}

/// Darcy's friction factor at a Reynolds number, in a pipe of this roughness over its diameter: `64/Re` to 2,300,
/// Colebrook's from 4,000, a straight line between, so that nothing jumps. Source: Darcy and Weisbach; Hagen and
/// Poiseuille; C. F. Colebrook 1939 (values from memory).
///
/// A Reynolds number that is not above zero has no factor: it is zero then, as nothing flows.
pub fn friction(reynolds: f64, relative_roughness: f64) -> Friction {
    if reynolds.is_nan() || reynolds <= 0.0 {
        return Friction { factor: 0.0, residual: 0.0 };
    }
    if reynolds <= LAMINAR_TO {
        return Friction { factor: 64.0 / reynolds, residual: 0.0 };
    }
    let turbulent = colebrook(reynolds.max(TURBULENT_FROM), relative_roughness);
    if reynolds >= TURBULENT_FROM {
        return turbulent;
    }
    let along = (reynolds - LAMINAR_TO) / (TURBULENT_FROM - LAMINAR_TO);
    let laminar = 64.0 / LAMINAR_TO;
    Friction { factor: laminar + along * (turbulent.factor - laminar), residual: turbulent.residual }
}

/// `1/√f = −2 log10(ε/3.7D + 2.51/(Re √f))`, by repeated substitution, which draws together for every pipe.
fn colebrook(reynolds: f64, roughness: f64) -> Friction {
    let right = |x: f64| -2.0 * (roughness / 3.7 + 2.51 * x / reynolds).log10();
    let mut x = 7.0;
    for _ in 0..STEPS {
        x = right(x);
    }
    Friction { factor: 1.0 / (x * x), residual: x - right(x) }
}
