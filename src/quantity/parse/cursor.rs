//! Numbers and units, taken off the front of a text.

use super::{Problem, excerpt};
use crate::quantity::Kind;
use crate::quantity::units::Unit;

/// What is left of the text.
pub(super) struct Cursor<'a> {
    pub rest: &'a str,
}

/// A number and the step of its last digit or fraction: 0.1 for `12.5`, 1/8 for `12-7/8`.
#[derive(Clone, Copy)]
pub(super) struct Number {
    pub value: f64,
    pub step: f64,
}

impl<'a> Cursor<'a> {
    pub(super) fn skip_spaces(&mut self) {
        self.rest = self.rest.trim_start();
    }

    pub(super) fn take_sign(&mut self) -> bool {
        self.skip_spaces();
        let negative = self.rest.starts_with('-');
        if negative || (self.rest.starts_with('+') && !self.rest.starts_with("+/-")) {
            self.rest = &self.rest[1..];
        }
        negative
    }

    fn digits(&mut self) -> &'a str {
        let end = self.rest.find(|c: char| !c.is_ascii_digit()).unwrap_or(self.rest.len());
        let (digits, rest) = self.rest.split_at(end);
        self.rest = rest;
        digits
    }

    /// `7/8` at the cursor, if one stands there.
    fn fraction(&mut self) -> Result<Option<Number>, Problem> {
        let mut ahead = Cursor { rest: self.rest };
        let numerator = ahead.digits();
        let Some(rest) = ahead.rest.strip_prefix('/') else {
            return Ok(None);
        };
        ahead.rest = rest;
        let denominator = ahead.digits();
        if numerator.is_empty() || denominator.is_empty() {
            return Ok(None);
        }
        let denominator = decimal(denominator)?;
        if denominator == 0.0 {
            return Err(Problem::ZeroDenominator);
        }
        self.rest = ahead.rest;
        Ok(Some(Number { value: decimal(numerator)? / denominator, step: 1.0 / denominator }))
    }

    /// A whole number, a decimal, a fraction or a mixed number; `None` where no digit stands.
    pub(super) fn number(&mut self) -> Result<Option<Number>, Problem> {
        self.skip_spaces();
        if let Some(fraction) = self.fraction()? {
            return Ok(Some(fraction));
        }
        let mut whole = self.digits().to_owned();
        let grouped = !whole.is_empty() && whole.len() <= 3;
        while let Some(rest) = self.rest.strip_prefix(',') {
            self.rest = rest;
            let group = self.digits();
            if !grouped || group.len() != 3 {
                return Err(Problem::Comma);
            }
            whole.push_str(group);
        }
        if let Some(rest) = self.rest.strip_prefix('.') {
            self.rest = rest;
            let decimals = self.digits();
            if whole.is_empty() && decimals.is_empty() {
                return Ok(None);
            }
            let value = decimal(&format!("{whole}.{decimals}"))?;
            return Ok(Some(Number { value, step: decimals.chars().fold(1.0, |step, _| step / 10.0) }));
        }
        if whole.is_empty() {
            return Ok(None);
        }
        let mut number = Number { value: decimal(&whole)?, step: 1.0 };
        let mut ahead = Cursor { rest: self.rest.trim_start() };
        if let Some(rest) = ahead.rest.strip_prefix('-') {
            ahead.rest = rest.trim_start();
        }
        if let Some(fraction) = ahead.fraction()? {
            number = Number { value: number.value + fraction.value, step: fraction.step };
            self.rest = ahead.rest;
        }
        Ok(Some(number))
    }

    /// The unit at the cursor; a plain ratio needs none.
    pub(super) fn unit(&mut self, kind: Kind) -> Result<Unit, Problem> {
        self.skip_spaces();
        let dash = self.rest.strip_prefix('-').map(str::trim_start);
        let text = match dash {
            Some(after) if after.starts_with(|c: char| c.is_alphabetic()) => after,
            _ => self.rest,
        };
        match Unit::at_start(text, kind) {
            Some((unit, length)) if unit.kind == kind => {
                // A point that abbreviates: `8 ft. 6 in.`
                let (word, rest) = text.split_at(length);
                let point = rest.strip_prefix('.').filter(|after| !after.starts_with(|c: char| c.is_ascii_digit()));
                self.rest = point.filter(|_| word.ends_with(|c: char| c.is_alphabetic())).unwrap_or(rest);
                Ok(*unit)
            }
            Some((unit, _)) => Err(Problem::WrongKind { unit: unit.name, found: unit.kind }),
            None if kind == Kind::Ratio => Ok(Unit { kind, name: "", spellings: &[], factor: 1.0 }),
            None => {
                let word: String = text.chars().take_while(|c| !c.is_whitespace() && !c.is_ascii_digit()).collect();
                if word.is_empty() || word.starts_with(['±', '+']) {
                    Err(Problem::NoUnit)
                } else {
                    Err(Problem::UnknownUnit(excerpt(&word, 20)))
                }
            }
        }
    }
}

fn decimal(digits: &str) -> Result<f64, Problem> {
    match digits.parse::<f64>() {
        Ok(value) if value.is_finite() => Ok(value),
        _ => Err(Problem::TooLarge),
    }
}
