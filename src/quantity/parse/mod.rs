//! Reading a quantity from text: `9'8-1/2" ± 1/8 in`.

mod cursor;
mod glyphs;

use super::Kind;
use super::units::Unit;
use cursor::Cursor;
use glyphs::plain_notation;

/// The longest text taken for a quantity; a longer one is a slip of the pen, not a reading.
const LONGEST_TEXT: usize = 200;
/// The largest magnitude accepted, in coherent SI units of any kind: far beyond a boat (the
/// stiffest metal has 2e11 Pa), and small enough that no formula overflows on it.
const LARGEST: f64 = 1e13;

/// A unit is a whole part of a larger one to so small a part.
const WHOLE: f64 = 1e-9;

/// What a text says: a value and, where one is given, how closely it was read.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Parsed {
    /// The value in the coherent SI unit of its kind.
    pub si: f64,
    /// The tolerance behind the value.
    pub tolerance: Option<Tolerance>,
    /// How it is written.
    pub written: Written,
}

/// How a figure is written: in which unit, and to which place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Written {
    /// Name of the unit; of the smallest, where there are several.
    pub unit: &'static str,
    /// The step of its last digit or fraction in the coherent SI unit: 1 kW for `110 kW`.
    pub step: f64,
}

/// A symmetric tolerance.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Tolerance {
    /// Half-width in the coherent SI unit of the value's kind.
    Absolute(f64),
    /// Half-width as a fraction of the value.
    Relative(f64),
}

impl Tolerance {
    /// The half-width for this value, in the value's own unit.
    pub fn half_width(self, value: f64) -> f64 {
        match self {
            Tolerance::Absolute(width) => width,
            Tolerance::Relative(fraction) => fraction * value.abs(),
        }
    }
}

/// Why a text is not a quantity. The message names the text, the kind expected and an example.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[error("{} expected, such as {}; {problem} in `{text}`", kind.name(), kind.example())]
pub struct QuantityError {
    /// The text, cut where it is long.
    pub text: String,
    /// The kind that the place asks for.
    pub kind: Kind,
    /// What is wrong with the text.
    pub problem: Problem,
}

/// What is wrong with a text that should be a quantity.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum Problem {
    #[error("nothing is written")]
    Empty,
    #[error("there are more than {LONGEST_TEXT} characters")]
    TooLong,
    #[error("no number stands")]
    NoNumber,
    #[error("no unit follows the number")]
    NoUnit,
    #[error("`{0}` is not a unit known here")]
    UnknownUnit(String),
    #[error("`{unit}` is the unit of {}", found.name())]
    WrongKind { unit: &'static str, found: Kind },
    #[error("a comma that does not group thousands stands (write decimals with a point)")]
    Comma,
    #[error("a fraction over zero stands")]
    ZeroDenominator,
    #[error("the number is too large for any boat")]
    TooLarge,
    #[error("a smaller unit must follow a larger one")]
    UnitOrder,
    #[error("units that are no whole part of each other stand")]
    Mixed,
    #[error("a negative tolerance stands")]
    NegativeTolerance,
    #[error("`{0}` is left over")]
    LeftOver(String),
}

/// Reads a quantity of the expected kind.
///
/// # Errors
/// Says what is wrong with the text, naming it, the kind expected and an example.
pub fn parse(text: &str, kind: Kind) -> Result<Parsed, QuantityError> {
    let fail = |problem| QuantityError { text: excerpt(text, 40), kind, problem };
    if text.chars().count() > LONGEST_TEXT {
        return Err(fail(Problem::TooLong));
    }
    let plain = plain_notation(text);
    let mut cursor = Cursor { rest: &plain };
    cursor.skip_spaces();
    if cursor.rest.is_empty() {
        return Err(fail(Problem::Empty));
    }
    read(&mut cursor, kind).map_err(fail)
}

/// The text up to so many characters, for quoting in a message.
pub(super) fn excerpt(text: &str, longest: usize) -> String {
    let mut cut: String = text.chars().take(longest).collect();
    if cut.len() < text.len() {
        cut.push('…');
    }
    cut
}

fn read(cursor: &mut Cursor, kind: Kind) -> Result<Parsed, Problem> {
    let negative = cursor.take_sign();
    let (magnitude, unit, written) = compound(cursor, kind)?;
    let (factor, zero) = (unit.factor, unit.zero());
    let si = if negative { zero - magnitude } else { zero + magnitude };
    let tolerance = tolerance(cursor, kind, factor)?;
    cursor.skip_spaces();
    if !cursor.rest.is_empty() {
        return Err(Problem::LeftOver(excerpt(cursor.rest, 20)));
    }
    if !si.is_finite() || si.abs() > LARGEST {
        return Err(Problem::TooLarge);
    }
    Ok(Parsed { si, tolerance, written })
}

/// One number and unit, or several with falling units: `9 ft 8-1/2 in`; the last unit, and how all of it is written.
fn compound(cursor: &mut Cursor, kind: Kind) -> Result<(f64, Unit, Written), Problem> {
    let mut total = 0.0;
    let mut last: Option<f64> = None;
    loop {
        let number = cursor.number()?.ok_or(Problem::NoNumber)?;
        let unit = cursor.unit(kind)?;
        let factor = unit.factor;
        if let Some(larger) = last {
            if factor >= larger {
                return Err(Problem::UnitOrder);
            }
            let parts = larger / factor;
            if (parts - parts.round()).abs() > WHOLE * parts {
                return Err(Problem::Mixed);
            }
        }
        total += number.value * factor;
        last = Some(factor);
        let ahead = cursor.rest.trim_start_matches([' ', '-']);
        if !ahead.starts_with(|c: char| c.is_ascii_digit() || c == '.') {
            return Ok((total, unit, Written { unit: unit.name, step: number.step * factor }));
        }
        cursor.rest = ahead;
    }
}

/// `± 1/8 in`, `+/- 3 mm`, `± 2 ft 6 in`, `±2%`; without a unit, the unit of the value.
fn tolerance(cursor: &mut Cursor, kind: Kind, unit: f64) -> Result<Option<Tolerance>, Problem> {
    cursor.skip_spaces();
    let Some(rest) = ["±", "+/-", "+-"].iter().find_map(|sign| cursor.rest.strip_prefix(sign)) else {
        return Ok(None);
    };
    cursor.rest = rest;
    cursor.skip_spaces();
    if cursor.rest.starts_with('-') {
        return Err(Problem::NegativeTolerance);
    }
    let begin = cursor.rest;
    let number = cursor.number()?.ok_or(Problem::NoNumber)?;
    cursor.skip_spaces();
    if kind != Kind::Ratio
        && let Some(rest) = cursor.rest.strip_prefix('%')
    {
        cursor.rest = rest;
        return Ok(Some(Tolerance::Relative(number.value / 100.0)));
    }
    let width = if cursor.rest.is_empty() {
        number.value * unit
    } else {
        cursor.rest = begin;
        compound(cursor, kind)?.0
    };
    if !width.is_finite() || width > LARGEST {
        return Err(Problem::TooLarge);
    }
    Ok(Some(Tolerance::Absolute(width)))
}
