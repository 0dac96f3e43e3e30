//! What a formula tells: worked out again from its own quantities it comes to the value that ran. By hand.

use sternknee::quantity::{Dimensioned, Measure, degrees};
use sternknee::working::{
    Term, cbrt, ceil_to_multiple, cos, exp, max, min, number, pi, power, root, root_of_squares, round, sin, sqrt, tan,
};
use uom::si::f64::{Area, Length, Ratio};

#[track_caller]
fn comes_to<Q: Dimensioned>(term: Term<Q>, by_hand: f64) {
    let again = term.expression().work_out(&|measure: &Measure| measure.si).expect("every function is known");
    assert!((term.value().si() - by_hand).abs() < 1e-12, "{} is not {by_hand}", term.value().si());
    assert!((again - by_hand).abs() < 1e-12, "worked out again {again}, not {by_hand}");
}

#[test]
fn every_operation_comes_to_its_value_again() {
    let ratio = |value: f64| Term::new("x", Ratio::from_si(value));
    let length = |value: f64| Term::new("l", Length::from_si(value));
    let angle = |value: f64| Term::new("β", degrees(value));
    comes_to(ratio(6.0) + ratio(1.5), 7.5);
    comes_to(ratio(6.0) - ratio(1.5), 4.5);
    comes_to(length(6.0) * length(1.5), 9.0);
    comes_to(length(6.0) / length(1.5), 4.0);
    comes_to(tan(angle(45.0)), 1.0);
    comes_to(sin(angle(30.0)), 0.5);
    comes_to(cos(angle(60.0)), 0.5);
    comes_to(exp(ratio(0.0)), 1.0);
    comes_to(sqrt(ratio(2.25)), 1.5);
    comes_to(cbrt(ratio(27.0)), 3.0);
    comes_to(root(Term::new("A", Area::from_si(9.0))), 3.0);
    comes_to(power(ratio(2.0), number(3.0)), 8.0);
    comes_to(number(2.0) * pi(), std::f64::consts::TAU);
    comes_to(min(length(2.0), length(3.0)), 2.0);
    comes_to(max(length(2.0), length(3.0)), 3.0);
    comes_to(root_of_squares(length(3.0), length(4.0)), 5.0);
}

/// A half goes up, as in the capacity formulas of 33 CFR 183.
#[test]
fn whole_numbers_and_multiples_come_to_their_value_again() {
    let ratio = |value: f64| Term::new("x", Ratio::from_si(value));
    for (value, whole) in [(2.5, 3.0), (2.4, 2.0), (2.6, 3.0), (150.0, 150.0)] {
        comes_to(round(ratio(value)), whole);
    }
    for (value, multiple) in [(152.0, 155.0), (155.0, 155.0), (155.1, 160.0)] {
        comes_to(ceil_to_multiple(ratio(value), 5.0), multiple);
    }
}
