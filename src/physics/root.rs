//! Where a function changes its sign.

/// The place between two at which a function of one sign change comes to nothing, to within `near` of it. `values` are what it is at
/// the ends; where they have the same sign, the end that is nearer to nothing.
///
/// Interpolates, cut short towards the middle, so that it never takes more than a step more than halving does. Source: I. F. D.
/// Oliveira and R. H. C. Takahashi, An enhancement of the bisection method average performance preserving minmax optimality, ACM
/// Transactions on Mathematical Software 47 (2021); the method and its usual constants from memory.
pub(super) fn root(ends: [f64; 2], values: [f64; 2], near: f64, mut of: impl FnMut(f64) -> f64) -> f64 {
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

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    proptest! {
        #[test]
        fn cubics_come_to_nothing_where_they_were_built_to(
            place in 0.05..0.95_f64, slope in 0.01..10.0_f64, bend in 0.0..10.0_f64, sign in prop::sample::select(vec![-1.0, 1.0]),
        ) {
            let of = |x: f64| sign * (slope * (x - place) + bend * (x - place).powi(3));
            let mut calls = 0;
            let found = root([0.0, 1.0], [of(0.0), of(1.0)], 1e-13, |x| { calls += 1; of(x) });
            prop_assert!((found - place).abs() <= 2e-13, "{} {}", found, place);
            // Halving takes 43.
            prop_assert!(calls <= 44, "{}", calls);
        }
    }

    #[test]
    fn a_steep_end_costs_no_more_than_halving() {
        let of = |x: f64| x.powi(9) - 1e-6;
        let mut calls = 0;
        let found = root([0.0, 10.0], [of(0.0), of(10.0)], 1e-12, |x| {
            calls += 1;
            of(x)
        });
        assert!((found - 1e-6_f64.powf(1.0 / 9.0)).abs() < 2e-12, "{found}");
        assert!(calls <= 44, "{calls}");
    }

    #[test]
    fn without_a_change_of_sign_it_is_the_end_nearer_to_nothing() {
        assert_eq!(root([1.0, 2.0], [3.0, 1.0], 1e-9, |_| 0.0), 2.0);
    }

    /// A function and where to begin.
    type Smooth = (fn(f64) -> f64, f64);

    /// Where a function is smooth the method closes in faster than in proportion, as its authors show; halving takes 40 calls here.
    #[test]
    fn a_smooth_function_costs_a_quarter_of_halving() {
        let smooth: [Smooth; 3] = [(|x| x.powi(3) - 2.0, 1.0), (|x| x.exp() - 3.0, 0.5), (|x| x * x - 2.0, 1.0)];
        for (of, from) in smooth {
            let mut calls = 0;
            let found = root([from, 2.0], [of(from), of(2.0)], 1e-12, |x| {
                calls += 1;
                of(x)
            });
            assert!(of(found).abs() < 1e-11 && calls <= 10, "{found} after {calls}");
        }
    }
}
