//! A quantity that remembers how it came about.

use std::ops::{Add, Div, Mul, Sub};
use std::sync::Arc;

use uom::si::angle::radian;
use uom::si::f64::{Angle, Area, Length, Ratio};

use super::expression::{Expression, Operator};
use crate::quantity::{Dimensioned, Measure, Style};

/// A value with the expression that gave it. Arithmetic on terms is arithmetic on the values.
#[derive(Clone, Debug)]
pub struct Term<Q> {
    value: Q,
    expression: Arc<Expression>,
}

impl<Q: Copy> Term<Q> {
    /// The value.
    pub fn value(&self) -> Q {
        self.value
    }

    /// How it came about.
    pub fn expression(&self) -> &Arc<Expression> {
        &self.expression
    }

    fn called(&self, name: &'static str, value: Q) -> Self {
        Term { value, expression: Arc::new(Expression::Call(name, vec![self.expression.clone()])) }
    }
}

impl<Q: Dimensioned> Term<Q> {
    /// A named quantity, shown in decimals.
    pub fn new(symbol: impl Into<String>, value: Q) -> Self {
        Term::styled(symbol, value, Style::Plain)
    }

    /// A named quantity, shown in this style.
    pub fn styled(symbol: impl Into<String>, value: Q, style: Style) -> Self {
        let measure = Measure::styled(value, style);
        Term { value, expression: Arc::new(Expression::Quantity { symbol: symbol.into(), measure }) }
    }

    /// A quantity that stands in a formula as itself, such as the 1 in of a rule of thumb.
    pub fn constant(value: Q) -> Self {
        Term::constant_styled(value, Style::Plain)
    }

    /// The same, shown in this style.
    pub fn constant_styled(value: Q, style: Style) -> Self {
        Term { value, expression: Arc::new(Expression::Constant(Measure::styled(value, style))) }
    }

    /// The value for showing, in decimals.
    pub fn measure(&self) -> Measure {
        Measure::of(self.value)
    }
}

impl Term<Length> {
    /// The length as a tape reads it.
    pub fn tape(&self) -> Measure {
        Measure::tape(self.value)
    }
}

/// A plain number in a formula.
pub fn number(value: f64) -> Term<Ratio> {
    Term { value: Ratio::from_si(value), expression: Arc::new(Expression::Number(value)) }
}

/// The ratio of a circle's circumference to its diameter.
pub fn pi() -> Term<Ratio> {
    Term { value: Ratio::from_si(std::f64::consts::PI), expression: Arc::new(Expression::Sign("π")) }
}

/// Tangent of an angle.
pub fn tan(angle: Term<Angle>) -> Term<Ratio> {
    Term {
        value: Ratio::from_si(angle.value.get::<radian>().tan()),
        expression: Arc::new(Expression::Call("tan", vec![angle.expression])),
    }
}

/// Cosine of an angle.
pub fn cos(angle: Term<Angle>) -> Term<Ratio> {
    Term {
        value: Ratio::from_si(angle.value.get::<radian>().cos()),
        expression: Arc::new(Expression::Call("cos", vec![angle.expression])),
    }
}

/// Sine of an angle.
pub fn sin(angle: Term<Angle>) -> Term<Ratio> {
    Term {
        value: Ratio::from_si(angle.value.get::<radian>().sin()),
        expression: Arc::new(Expression::Call("sin", vec![angle.expression])),
    }
}

/// A ratio raised to a power.
pub fn power(base: Term<Ratio>, exponent: Term<Ratio>) -> Term<Ratio> {
    Term {
        value: Ratio::from_si(base.value.si().powf(exponent.value.si())),
        expression: Arc::new(Expression::Call("power", vec![base.expression, exponent.expression])),
    }
}

/// The exponential function of a ratio.
pub fn exp(ratio: Term<Ratio>) -> Term<Ratio> {
    ratio.called("exp", Ratio::from_si(ratio.value.si().exp()))
}

/// Square root of a ratio.
pub fn sqrt(ratio: Term<Ratio>) -> Term<Ratio> {
    ratio.called("sqrt", Ratio::from_si(ratio.value.si().sqrt()))
}

/// Side of a square of this area: what the root of a sum of squared lengths is.
pub fn root(area: Term<Area>) -> Term<Length> {
    let side = Length::from_si(area.value.si().sqrt());
    Term { value: side, expression: Arc::new(Expression::Call("sqrt", vec![area.expression])) }
}

/// Cube root of a ratio.
pub fn cbrt(ratio: Term<Ratio>) -> Term<Ratio> {
    ratio.called("cbrt", Ratio::from_si(ratio.value.si().cbrt()))
}

/// What a product such as 10 ft · 3.55 ft may miss its half, or 0.8 · 50 − 25 its whole number, by in the
/// last bits.
const LAST_BITS: f64 = 1e-9;

/// The nearest whole number; a half goes up, as in the regulation's rounding.
pub fn round(ratio: Term<Ratio>) -> Term<Ratio> {
    let whole = (ratio.value.si() + 0.5 + LAST_BITS).floor();
    ratio.called("round", Ratio::from_si(whole))
}

/// The ratio raised to the next multiple of a step, unless it is one already.
pub fn ceil_to_multiple(ratio: Term<Ratio>, step: f64) -> Term<Ratio> {
    let steps = ratio.value.si() / step;
    let whole = if (steps - steps.round()).abs() < LAST_BITS { steps.round() } else { steps.ceil() };
    Term {
        value: Ratio::from_si(whole * step),
        expression: Arc::new(Expression::Call(
            "next multiple",
            vec![ratio.expression, Arc::new(Expression::Number(step))],
        )),
    }
}

/// The lesser of two.
pub fn min<Q: Dimensioned>(a: Term<Q>, b: Term<Q>) -> Term<Q> {
    let value = Q::from_si(a.value.si().min(b.value.si()));
    Term { value, expression: Arc::new(Expression::Call("least of", vec![a.expression, b.expression])) }
}

/// The greater of two.
pub fn max<Q: Dimensioned>(a: Term<Q>, b: Term<Q>) -> Term<Q> {
    let value = Q::from_si(a.value.si().max(b.value.si()));
    Term { value, expression: Arc::new(Expression::Call("greatest of", vec![a.expression, b.expression])) }
}

/// Root of the sum of the squares of two that stand square to each other.
pub fn root_of_squares<Q: Dimensioned>(a: Term<Q>, b: Term<Q>) -> Term<Q> {
    let value = Q::from_si(a.value.si().hypot(b.value.si()));
    Term { value, expression: Arc::new(Expression::Call("root of squares of", vec![a.expression, b.expression])) }
}

macro_rules! operator {
    ($trait:ident, $method:ident, $operator:ident) => {
        impl<A: $trait<B>, B> $trait<Term<B>> for Term<A> {
            type Output = Term<A::Output>;

            fn $method(self, right: Term<B>) -> Self::Output {
                Term {
                    value: self.value.$method(right.value),
                    expression: Arc::new(Expression::Binary(Operator::$operator, self.expression, right.expression)),
                }
            }
        }

        impl<A: $trait<B> + Copy, B: Copy> $trait<&Term<B>> for &Term<A> {
            type Output = Term<A::Output>;

            fn $method(self, right: &Term<B>) -> Self::Output {
                self.clone().$method(right.clone())
            }
        }

        impl<A: $trait<B> + Copy, B: Copy> $trait<&Term<B>> for Term<A> {
            type Output = Term<A::Output>;

            fn $method(self, right: &Term<B>) -> Self::Output {
                self.$method(right.clone())
            }
        }

        impl<A: $trait<B> + Copy, B: Copy> $trait<Term<B>> for &Term<A> {
            type Output = Term<A::Output>;

            fn $method(self, right: Term<B>) -> Self::Output {
                self.clone().$method(right)
            }
        }
    };
}

operator!(Add, add, Plus);
operator!(Sub, sub, Minus);
operator!(Mul, mul, Times);
operator!(Div, div, Over);
