//! The expression behind a term, for showing.

use std::sync::Arc;

use crate::quantity::{Measure, Units};

/// One of the four operations.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Operator {
    Plus,
    Minus,
    Times,
    Over,
}

/// How a term came about.
#[derive(Clone, Debug, PartialEq)]
pub enum Expression {
    /// A named quantity.
    Quantity { symbol: String, measure: Measure },
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

    /// The formula with the numbers put in: `14 in · tan(22 deg)`.
    pub fn numbers(&self, units: Units) -> String {
        self.write(&|expression| expression.leaf(units))
    }

    fn leaf(&self, units: Units) -> String {
        match self {
            Expression::Quantity { measure, .. } => measure.show(units),
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
                format!("{base}^({})", both[1].write(leaf))
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
