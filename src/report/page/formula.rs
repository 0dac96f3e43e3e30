//! A step of a calculation, typeset: MathML from the expression that ran, never from its words.
//!
//! A browser does not break a formula over two lines, so each side of an equation, and each part of a
//! long one, is a piece of its own that can go to the next line.

use maud::{Markup, html};

use crate::quantity::{Measure, Units};
use crate::working::{Expression, Line, Operator};

/// The line as it stands on the page.
pub(super) fn step(line: &Line, units: Units) -> Markup {
    match line {
        Line::Remark(text) => html! {
            div class="step" { p class="remark" { (super::prose(text, units)) } }
        },
        Line::Step { symbol, meaning, expression, result } => {
            // In both units the result stands in both; a formula with all its numbers twice is not read.
            let inner = if units == Units::Both { Units::Us } else { units };
            let mut sides: Vec<Vec<Markup>> = Vec::new();
            let mut said = vec![symbol.clone()];
            // A side that says the same as one before it is left out, as in the text.
            let mut side = |words: String, pieces: Vec<Markup>| {
                if !said.contains(&words) {
                    said.push(words);
                    sides.push(pieces);
                }
            };
            side(expression.symbols(inner), pieces(expression, Face::Symbols, inner));
            let more = expression.digits_for(result, inner);
            side(expression.numbers(more, inner), pieces(expression, Face::Numbers(more), inner));
            side(result.show(inner), vec![figure(&result.show(inner))]);
            if units == Units::Both {
                let metric = result.show(Units::Si);
                side(metric.clone(), vec![figure(&metric)]);
            }
            html! {
                div class="step" {
                    p { (super::quoted_words(meaning)) }
                    div class="equation" {
                        math { (identifier(symbol)) }
                        @for side in sides {
                            @for (i, piece) in side.into_iter().enumerate() {
                                math { @if i == 0 { (operator("=")) } (piece) }
                            }
                        }
                    }
                }
            }
        }
    }
}

/// Whether symbols stand in a formula, or their values with so many digits more than usual.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Face {
    Symbols,
    Numbers(i32),
}

fn operator(sign: &str) -> Markup {
    html! { mo { (sign) } }
}

/// Longest formula that is set in one piece, in characters: about what fits the width of a phone.
const LONGEST_PIECE: usize = 24;

/// The expression in pieces, so that it can go over several lines: whole where it is short, else broken
/// at its operations, the outermost first; each becomes a `math` of its own. A long fraction is then set before and behind a stroke.
fn pieces(expression: &Expression, face: Face, units: Units) -> Vec<Markup> {
    let words = match face {
        Face::Symbols => expression.symbols(units),
        Face::Numbers(more) => expression.numbers(more, units),
    };
    if words.chars().count() <= LONGEST_PIECE {
        return vec![write(expression, face, units)];
    }
    let bracketed = |expression: &Expression, needed: bool| {
        let inner = pieces(expression, face, units);
        if needed { in_brackets(inner) } else { inner }
    };
    let negative = |expression: &Expression| is_negative(expression, face);
    match expression {
        Expression::Binary(op, left, right) => {
            let compound = |side: &Expression| matches!(side, Expression::Binary(..));
            let (around_left, around_right) = match op {
                Operator::Plus => (false, negative(right)),
                Operator::Minus => (false, is_sum(right) || negative(right)),
                Operator::Times => (is_sum(left), is_sum(right) || negative(right)),
                Operator::Over => (compound(left), compound(right) || negative(right)),
            };
            let mut all = bracketed(left, around_left);
            all.push(operator(op.sign()));
            all.extend(bracketed(right, around_right));
            all
        }
        Expression::Call(name, arguments) => {
            let mut inner = Vec::new();
            for (i, argument) in arguments.iter().enumerate() {
                if i > 0 {
                    inner.push(operator(","));
                }
                inner.extend(pieces(argument, face, units));
            }
            let mut all = vec![html! { mtext { (name) } }];
            all.extend(in_brackets(inner));
            all
        }
        leaf => vec![write(leaf, face, units)],
    }
}

fn in_brackets(inner: Vec<Markup>) -> Vec<Markup> {
    let mut all = vec![operator("(")];
    all.extend(inner);
    all.push(operator(")"));
    all
}

fn is_sum(expression: &Expression) -> bool {
    matches!(expression, Expression::Binary(Operator::Plus | Operator::Minus, ..))
}

/// A negative number behind a sign stands in brackets.
fn guarded(expression: &Expression, face: Face, inner: Markup) -> Markup {
    if is_negative(expression, face) { fenced(inner) } else { inner }
}

fn is_negative(expression: &Expression, face: Face) -> bool {
    match expression {
        Expression::Quantity { measure, .. } => face != Face::Symbols && measure.si < 0.0,
        Expression::Constant(measure) => measure.si < 0.0,
        Expression::Number(value) => *value < 0.0,
        _ => false,
    }
}

fn fenced(inner: Markup) -> Markup {
    html! { mrow { mo stretchy="true" { "(" } (inner) mo stretchy="true" { ")" } } }
}

fn write(expression: &Expression, face: Face, units: Units) -> Markup {
    match expression {
        Expression::Quantity { symbol, measure: value } => match face {
            Face::Symbols => identifier(symbol),
            Face::Numbers(more) => number_and_unit(&value.show_closer(more, units)),
        },
        Expression::Constant(value) => shown(&expression_words(expression, units), *value, units),
        Expression::Number(value) => html! { mn { (value) } },
        Expression::Sign(sign) => html! { mn { (sign) } },
        Expression::Binary(Operator::Over, left, right) => html! {
            mfrac { mrow { (write(left, face, units)) } mrow { (write(right, face, units)) } }
        },
        Expression::Binary(op, left, right) => {
            let side = |expression: &Expression, on_the_right: bool| {
                let inner = write(expression, face, units);
                let product = *op == Operator::Times;
                if is_sum(expression) && (product || (on_the_right && *op == Operator::Minus)) {
                    fenced(inner)
                } else if on_the_right {
                    guarded(expression, face, inner)
                } else {
                    inner
                }
            };
            html! { mrow { (side(left, false)) (operator(op.sign())) (side(right, true)) } }
        }
        Expression::Call(name, arguments) => match (*name, arguments.as_slice()) {
            ("sqrt", [argument]) => html! { msqrt { (write(argument, face, units)) } },
            ("cbrt", [argument]) => html! { mroot { (write(argument, face, units)) mn { "3" } } },
            ("power", [base, exponent]) => {
                let inner = write(base, face, units);
                let plain =
                    matches!(**base, Expression::Quantity { .. } | Expression::Number(_)) && !is_negative(base, face);
                html! { msup { @if plain { (inner) } @else { (fenced(inner)) } (write(exponent, face, units)) } }
            }
            ("abs", [argument]) => html! {
                mrow { mo { "|" } (write(argument, face, units)) mo { "|" } }
            },
            _ => html! {
                mrow {
                    mtext { (name) }
                    mo stretchy="true" { "(" }
                    @for (i, argument) in arguments.iter().enumerate() {
                        @if i > 0 { mo separator="true" { "," } }
                        (write(argument, face, units))
                    }
                    mo stretchy="true" { ")" }
                }
            },
        },
    }
}

/// A constant as the text shows it.
fn expression_words(expression: &Expression, units: Units) -> String {
    expression.numbers(0, units)
}

fn shown(words: &str, measure: Measure, units: Units) -> Markup {
    if words.is_empty() { self::measure(measure, units) } else { number_and_unit(words) }
}

/// A value with its unit upright behind it.
fn measure(measure: Measure, units: Units) -> Markup {
    number_and_unit(&measure.show(units))
}

fn number_and_unit(words: &str) -> Markup {
    if words.contains(' ') {
        html! { mrow { (figure(words)) } }
    } else {
        figure(words)
    }
}

/// The same where nothing else stands beside it.
fn figure(words: &str) -> Markup {
    match words.split_once(' ') {
        Some((number, unit)) => html! { mn { (number) } mtext { "\u{202f}" (unit) } },
        None => html! { mn { (words) } },
    }
}

/// Longest symbol that is set as one: others are names in words.
const LONGEST_SYMBOL: usize = 4;

/// A symbol: one letter, with what follows it below the line; a name in words upright.
pub(super) fn identifier(symbol: &str) -> Markup {
    let chars: Vec<char> = symbol.chars().collect();
    let is_word = chars.len() > LONGEST_SYMBOL || chars.is_empty() || !chars.iter().all(|c| c.is_alphanumeric());
    if is_word {
        return html! { mtext { (symbol) } };
    }
    let head = usize::from(chars[0] == 'Δ' && chars.len() > 1) + 1;
    let (letter, below): (String, String) = (chars[..head].iter().collect(), chars[head..].iter().collect());
    let lowered = below.chars().next().is_some_and(|c| c.is_lowercase() || c.is_ascii_digit());
    if below.is_empty() {
        html! { mi { (letter) } }
    } else if lowered {
        html! { msub { mi { (letter) } @if below.chars().all(|c| c.is_ascii_digit()) { mn { (below) } } @else { mi { (below) } } } }
    } else {
        html! { mi { (symbol) } }
    }
}
