//! The lines of a calculation, in the order in which they ran.

use std::sync::Arc;

use super::{Expression, Term};
use crate::quantity::{Dimensioned, Kind, Measure, Reading, Style, Text, Units};

/// A calculation, line by line.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Sheet {
    lines: Vec<Line>,
    origins: Vec<Origin>,
}

/// Where a value is from that goes into lines under a symbol.
#[derive(Clone, Debug, PartialEq)]
pub struct Origin {
    /// The line from which on it holds, counted from 0.
    pub line: usize,
    /// The symbol, for values of this kind.
    pub symbol: String,
    /// That kind: one symbol may stand for values of several.
    pub kind: Kind,
    /// What it is, where no table of symbols says it.
    pub meaning: Option<String>,
    /// "measured", "catalog class", or words on what it was worked out from.
    pub from: String,
}

/// One line of a calculation.
#[derive(Clone, Debug, PartialEq)]
pub enum Line {
    /// A quantity worked out.
    Step {
        /// What formulas call it from here on.
        symbol: String,
        /// What it is, in words.
        meaning: String,
        /// How it was computed.
        expression: Arc<Expression>,
        /// What came out.
        result: Measure,
    },
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

    /// A quantity that goes in: what it is, and where it is from.
    pub fn given<Q: Dimensioned>(&mut self, symbol: &str, meaning: &str, value: Q, from: &str) -> Term<Q> {
        self.note(symbol, Q::KIND, Some(meaning), from);
        Term::new(symbol, value)
    }

    /// Where what goes in under this symbol from here on is from.
    pub fn origin<Q: Dimensioned>(&mut self, symbol: &str, from: &str) {
        self.note(symbol, Q::KIND, None, from);
    }

    /// The same of a reading of the job, or of what is taken where there is none.
    pub fn told<Q: Dimensioned>(&mut self, symbol: &str, reading: Option<&Reading<Q>>) {
        self.origin::<Q>(symbol, Reading::origin(reading));
    }

    fn note(&mut self, symbol: &str, kind: Kind, meaning: Option<&str>, from: &str) {
        let (symbol, meaning, from) = (symbol.to_owned(), meaning.map(str::to_owned), from.to_owned());
        self.origins.push(Origin { line: self.lines.len(), symbol, kind, meaning, from });
    }

    /// What was said of a symbol when the line of this number was written.
    pub fn origin_of(&self, line: usize, symbol: &str, kind: Kind) -> Option<&Origin> {
        self.origins.iter().rev().find(|one| one.line <= line && one.symbol == symbol && one.kind == kind)
    }

    /// Appends another sheet's lines.
    pub fn append(&mut self, mut other: Sheet) {
        let before = self.lines.len();
        self.origins.extend(other.origins.into_iter().map(|one| Origin { line: before + one.line, ..one }));
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
