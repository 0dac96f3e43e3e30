//! The expression behind a term, for showing.

use std::sync::Arc;

use crate::quantity::{Kind, Measure, Units};

/// Digits that may be added to a formula's numbers.
const MORE_DIGITS: i32 = 8;
/// Part of half a digit by which a result worked out from printed numbers stays clear of being rounded the other way.
const CLEAR_OF_A_HALF: f64 = 1e-3;

/// What arithmetic may leave in the last bits of a half.
const LAST_BITS: f64 = 1e-9;

/// One of the four operations.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Operator {
    /// Both added.
    Plus,
    /// The right taken from the left.
    Minus,
    /// Both multiplied.
    Times,
    /// The left divided by the right.
    Over,
}

/// How a term came about.
#[derive(Clone, Debug, PartialEq)]
pub enum Expression {
    /// A named quantity.
    Quantity {
        /// As the formula shows it.
        symbol: String,
        /// Its value, and how it is shown.
        measure: Measure,
    },
    /// A quantity that has no name of its own: shown as its value.
    Constant(Measure),
    /// A plain number in the formula.
    Number(f64),
    /// A number that has a sign of its own, such as π.
    Sign(&'static str),
    /// Two expressions under an operator.
    Binary(Operator, Arc<Expression>, Arc<Expression>),
    /// A named function of expressions.
    Call(&'static str, Vec<Arc<Expression>>),
}

impl Expression {
    /// The formula in symbols: `y · tan(β)`.
    pub fn symbols(&self, units: Units) -> String {
        self.write(&|expression| match expression {
            Expression::Quantity { symbol, .. } => symbol.clone(),
            other => other.leaf(units),
        })
    }

    /// The formula with the numbers put in, each with so many digits more than usual: `14 in · tan(22 deg)`.
    pub fn numbers(&self, more: i32, units: Units) -> String {
        self.write(&|expression| match expression {
            Expression::Quantity { measure, .. } => measure.show_closer(more, units),
            other => other.leaf(units),
        })
    }

    /// How many digits more than usual its numbers need, so that whoever works it out from what is printed finds the printed
    /// result.
    pub fn digits_for(&self, result: &Measure, units: Units) -> i32 {
        let enough = |more: i32, metric: bool, part: f64| {
            let found = self.work_out(&|measure| measure.closer(more, metric));
            let off = result.shown_precision(Units::from_metric(metric)) * part;
            found.is_some_and(|found| (found - result.closer(0, metric)).abs() <= off)
        };
        let both = |more: i32, part: f64| match units {
            Units::Us => enough(more, false, part),
            Units::Si => enough(more, true, part),
            Units::Both => enough(more, false, part) && enough(more, true, part),
        };
        // A result that is itself a half of the last digit never comes clear of it.
        let clear = (0..=MORE_DIGITS).find(|more| both(*more, 1.0 - CLEAR_OF_A_HALF));
        clear.or_else(|| (0..=MORE_DIGITS).find(|more| both(*more, 1.0 + LAST_BITS))).unwrap_or(0)
    }

    /// The value, its quantities taken so, in coherent SI units; nothing where a function is not known.
    pub fn work_out(&self, quantity: &dyn Fn(&Measure) -> f64) -> Option<f64> {
        Some(match self {
            Expression::Quantity { measure, .. } => quantity(measure),
            Expression::Constant(measure) if measure.kind == Kind::Temperature => quantity(measure),
            Expression::Constant(measure) => measure.si,
            Expression::Number(value) => *value,
            Expression::Sign(_) => std::f64::consts::PI,
            Expression::Binary(operator, left, right) => {
                let (left, right) = (left.work_out(quantity)?, right.work_out(quantity)?);
                match operator {
                    Operator::Plus => left + right,
                    Operator::Minus => left - right,
                    Operator::Times => left * right,
                    Operator::Over => left / right,
                }
            }
            Expression::Call(name, arguments) => {
                let values: Vec<f64> = arguments.iter().map(|one| one.work_out(quantity)).collect::<Option<_>>()?;
                match (*name, values.as_slice()) {
                    ("tan", [x]) => x.tan(),
                    ("cos", [x]) => x.cos(),
                    ("sin", [x]) => x.sin(),
                    ("exp", [x]) => x.exp(),
                    ("sqrt", [x]) => x.sqrt(),
                    ("cbrt", [x]) => x.cbrt(),
                    ("abs", [x]) => x.abs(),
                    ("round", [x]) => (x + 0.5).floor(),
                    ("power", [x, y]) => x.powf(*y),
                    ("next multiple", [x, step]) => (x / step).ceil() * step,
                    ("least of", [x, y]) => x.min(*y),
                    ("greatest of", [x, y]) => x.max(*y),
                    ("root of squares of", [x, y]) => x.hypot(*y),
                    _ => return None,
                }
            }
        })
    }

    fn leaf(&self, units: Units) -> String {
        match self {
            Expression::Quantity { measure, .. } => measure.show(units),
            // A temperature goes into a formula from absolute zero.
            Expression::Constant(measure) if measure.kind == Kind::Temperature => measure.show_closer(0, units),
            Expression::Constant(measure) => measure.show_exact(units),
            Expression::Number(value) => value.to_string(),
            Expression::Sign(sign) => (*sign).to_string(),
            Expression::Binary(..) | Expression::Call(..) => String::new(),
        }
    }

    fn write(&self, leaf: &dyn Fn(&Expression) -> String) -> String {
        match self {
            Expression::Binary(operator, left, right) => {
                let side = |expression: &Expression, parenthesised: bool| {
                    let text = expression.write(leaf);
                    if parenthesised { format!("({text})") } else { text }
                };
                format!(
                    "{} {} {}",
                    side(left, left.binds_looser_than(*operator, false)),
                    operator.sign(),
                    side(right, right.binds_looser_than(*operator, true))
                )
            }
            Expression::Call("power", both) if both.len() == 2 => {
                let base = both[0].write(leaf);
                let plain = !matches!(*both[0], Expression::Binary(..));
                let base = if plain { base } else { format!("({base})") };
                let exponent = both[1].write(leaf);
                if matches!(*both[1], Expression::Binary(..)) {
                    format!("{base}^({exponent})")
                } else {
                    format!("{base}^{exponent}")
                }
            }
            Expression::Call(name, arguments) => {
                let arguments: Vec<_> = arguments.iter().map(|a| a.write(leaf)).collect();
                format!("{name}({})", arguments.join(", "))
            }
            other => leaf(other),
        }
    }

    /// Whether the expression needs parentheses beside this operator.
    fn binds_looser_than(&self, operator: Operator, on_the_right: bool) -> bool {
        let Expression::Binary(inner, ..) = self else {
            return false;
        };
        inner.rank() < operator.rank()
            || (on_the_right && inner.rank() == operator.rank() && matches!(operator, Operator::Minus | Operator::Over))
            || (operator == Operator::Times && *inner == Operator::Over)
    }
}

impl Operator {
    /// How it is written.
    pub fn sign(self) -> &'static str {
        match self {
            Operator::Plus => "+",
            Operator::Minus => "−",
            Operator::Times => "·",
            Operator::Over => "/",
        }
    }

    fn rank(self) -> u8 {
        match self {
            Operator::Plus | Operator::Minus => 1,
            Operator::Times | Operator::Over => 2,
        }
    }
}
