//! Where a function changes its sign.

/// The place between two at which a function of one sign change comes to nothing, to within `near` of it. `values` are what it is at
/// the ends; where they have the same sign, the end that is nearer to nothing.
///
/// Interpolates, cut short towards the middle, so that it never takes more than a step more than halving does. Source: I. F. D.
/// Oliveira and R. H. C. Takahashi, An enhancement of the bisection method average performance preserving minmax optimality, ACM
/// Transactions on Mathematical Software 47 (2021); the method and its usual constants from memory.
pub fn root(ends: [f64; 2], values: [f64; 2], near: f64, mut of: impl FnMut(f64) -> f64) -> f64 {
    let ([mut a, mut b], [mut at_a, mut at_b]) = (ends, values);
    // Also where one of them is no number.
    if at_a.is_sign_positive() == at_b.is_sign_positive() || at_a == 0.0 || at_b == 0.0 {
        return if at_a.abs() <= at_b.abs() { a } else { b };
    }
    let near = near.max(f64::EPSILON * a.abs().max(b.abs()));
    let cut = CUT / (b - a);
    let steps = ((b - a) / (2.0 * near)).log2().ceil().max(0.0) as i32 + MORE_STEPS;
    // Rounding may leave the last two a hair farther apart: another step would not help.
    for step in 0..steps {
        if b - a <= 2.0 * near {
            break;
        }
        let middle = 0.5 * (a + b);
        let straight = (at_b * a - at_a * b) / (at_b - at_a);
        let side = (middle - straight).signum();
        let short = cut * (b - a).powi(2);
        let trimmed = if short <= (middle - straight).abs() { straight + side * short } else { middle };
        let reach = near * f64::from(steps - step).exp2() - 0.5 * (b - a);
        let x = if (trimmed - middle).abs() <= reach { trimmed } else { middle - side * reach.max(0.0) };
        let at = of(x);
        if at == 0.0 {
            return x;
        }
        if at.is_sign_positive() == at_a.is_sign_positive() {
            (a, at_a) = (x, at);
        } else {
            (b, at_b) = (x, at);
        }
    }
    0.5 * (a + b)
}

/// By how much an interpolation is cut short, over the length to begin with. Source: as the method.
const CUT: f64 = 0.2;
/// Steps that it may take more than halving. Source: as the method.
const MORE_STEPS: i32 = 1;
