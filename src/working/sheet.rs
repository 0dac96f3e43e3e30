//! The lines of a calculation, in the order in which they ran.

use std::sync::Arc;

use super::{Expression, Term};
use crate::quantity::{Dimensioned, Measure, Style, Text, Units};

/// A calculation, line by line.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Sheet {
    lines: Vec<Line>,
}

/// One line of a calculation.
#[derive(Clone, Debug, PartialEq)]
pub enum Line {
    /// A symbol, what it means, how it was computed, what came out.
    Step { symbol: String, meaning: String, expression: Arc<Expression>, result: Measure },
    /// A remark: an input, a choice made, a solver's residual.
    Remark(Text),
}

impl Sheet {
    /// Names the term, writes its line, and hands it on under its name.
    pub fn set<Q: Dimensioned>(&mut self, symbol: &str, meaning: &str, term: Term<Q>) -> Term<Q> {
        self.set_styled(symbol, meaning, term, Style::Plain)
    }

    /// The same, shown in this style.
    pub fn set_styled<Q: Dimensioned>(&mut self, symbol: &str, meaning: &str, term: Term<Q>, style: Style) -> Term<Q> {
        self.lines.push(Line::Step {
            symbol: symbol.to_owned(),
            meaning: meaning.to_owned(),
            expression: term.expression().clone(),
            result: Measure::styled(term.value(), style),
        });
        Term::styled(symbol, term.value(), style)
    }

    /// Writes a remark.
    pub fn remark(&mut self, text: impl Into<Text>) {
        self.lines.push(Line::Remark(text.into()));
    }

    /// Appends another sheet's lines.
    pub fn append(&mut self, mut other: Sheet) {
        self.lines.append(&mut other.lines);
    }

    /// The lines in order.
    pub fn lines(&self) -> &[Line] {
        &self.lines
    }
}

impl Line {
    /// The line as text: `Δh = y · tan(β) = 14.00 in · tan(22.0 deg) = 5.66 in`.
    pub fn show(&self, units: Units) -> String {
        match self {
            Line::Remark(text) => text.show(units),
            Line::Step { symbol, expression, result, .. } => {
                let mut text = symbol.clone();
                let symbols = expression.symbols(units);
                let numbers = expression.numbers(expression.digits_for(result, units), units);
                for part in [&symbols, &numbers, &result.show(units)] {
                    if !text.ends_with(&format!("= {part}")) && *part != *symbol {
                        text.push_str(" = ");
                        text.push_str(part);
                    }
                }
                text
            }
        }
    }

    /// What the symbol means, where the line has one.
    pub fn meaning(&self) -> Option<&str> {
        match self {
            Line::Step { meaning, .. } => Some(meaning),
            Line::Remark(_) => None,
        }
    }
}
