//! The root finder keeps what its authors prove of it: I. F. D. Oliveira and R. H. C. Takahashi, An enhancement of the bisection
//! method average performance preserving minmax optimality, ACM Transactions on Mathematical Software 47 (2021).

use proptest::prelude::*;
use sternknee::physics::root::root;

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
