//! A number that a solver counts with, or a term that writes down how it came about: a formula stands once for both.

use std::ops::{Add, Div, Mul, Sub};

use uom::si::f64::Ratio;

use super::{Term, exp, number, power, sqrt};

/// What a formula of plain numbers can be worked out in. A solver asks it a hundred times in `f64`; the sheet asks it once, in
/// terms, and so shows the very formula.
pub trait Figure:
    Clone + Add<Output = Self> + Sub<Output = Self> + Mul<Output = Self> + Div<Output = Self> + Sized
{
    /// A number in the formula.
    fn number(value: f64) -> Self;
    /// To a power.
    fn power(self, exponent: f64) -> Self;
    /// Square root.
    fn root(self) -> Self;
    /// Exponential.
    fn exponential(self) -> Self;
}

impl Figure for f64 {
    fn number(value: f64) -> Self {
        value
    }

    fn power(self, exponent: f64) -> Self {
        self.powf(exponent)
    }

    fn root(self) -> Self {
        self.sqrt()
    }

    fn exponential(self) -> Self {
        self.exp()
    }
}

impl Figure for Term<Ratio> {
    fn number(value: f64) -> Self {
        number(value)
    }

    fn power(self, exponent: f64) -> Self {
        power(self, number(exponent))
    }

    fn root(self) -> Self {
        sqrt(self)
    }

    fn exponential(self) -> Self {
        exp(self)
    }
}
