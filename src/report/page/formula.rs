//! A step of a calculation, typeset: MathML from the expression that ran, never from its words.
//!
//! A browser does not break a formula over two lines, so each side of an equation, and each term of a
//! long sum, is a piece of its own that can go to the next line.

use maud::{Markup, html};

use crate::quantity::{Measure, Units};
use crate::working::{Expression, Line, Operator};

/// The line as it stands on the page.
pub(super) fn step(line: &Line, units: Units) -> Markup {
    match line {
        Line::Remark(text) => html! {
            div class="step" { p class="remark" { (super::prose(text, units)) } }
        },
        Line::Step {
            symbol,
            meaning,
            expression,
            result,
        } => {
            // In both units the result stands in both; a formula with all its numbers twice is not read.
            let inner = if units == Units::Both {
                Units::Us
            } else {
                units
            };
            let mut sides: Vec<Vec<Markup>> = Vec::new();
            let mut said = vec![symbol.clone()];
            // A side that says the same as one before it is left out, as in the text.
            let mut side = |words: String, pieces: Vec<Markup>| {
                if !said.contains(&words) {
                    said.push(words);
                    sides.push(pieces);
                }
            };
            side(
                expression.symbols(inner),
                pieces(expression, Face::Symbols, inner),
            );
            side(
                expression.numbers(inner),
                pieces(expression, Face::Numbers, inner),
            );
            side(result.show(inner), vec![math(measure(*result, inner))]);
            if units == Units::Both {
                let metric = result.show(Units::Si);
                side(metric, vec![math(measure(*result, Units::Si))]);
            }
            html! {
                div class="step" {
                    p { (meaning) }
                    div class="equation" {
                        (math(identifier(symbol)))
                        @for side in sides {
                            @for (i, piece) in side.into_iter().enumerate() {
                                @if i == 0 { (math(operator("="))) }
                                (piece)
                            }
                        }
                    }
                }
            }
        }
    }
}

/// Whether symbols stand in a formula, or their values.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Face {
    Symbols,
    Numbers,
}

fn math(inner: Markup) -> Markup {
    html! { math { (inner) } }
}

fn operator(sign: &str) -> Markup {
    html! { mo { (sign) } }
}

/// Longest sum that is set above the line of a fraction; a longer one would not fit a page's width.
const LONGEST_NUMERATOR: usize = 2;

/// The expression in pieces, broken at its outermost sums, and at those of a long numerator, which then
/// stands in brackets before a stroke.
fn pieces(expression: &Expression, face: Face, units: Units) -> Vec<Markup> {
    if let Expression::Binary(Operator::Over, left, right) = expression
        && terms_of(left) > LONGEST_NUMERATOR
    {
        let mut all = vec![math(operator("("))];
        all.extend(pieces(left, face, units));
        let below = write(right, face, units);
        let compound = matches!(right.as_ref(), Expression::Binary(..));
        let below = if compound { fenced(below) } else { below };
        all.push(math(
            html! { mrow { (operator(")")) (operator("/")) (below) } },
        ));
        return all;
    }
    let mut terms = Vec::new();
    collect(expression, None, &mut terms);
    terms
        .into_iter()
        .map(|(sign, term)| {
            let inner = write(term, face, units);
            let inner = if sign == Some(Operator::Minus) && is_sum(term) {
                fenced(inner)
            } else {
                inner
            };
            match sign {
                Some(sign) => {
                    math(html! { mrow { (operator(sign.sign())) (guarded(term, face, inner)) } })
                }
                None => math(inner),
            }
        })
        .collect()
}

fn terms_of(expression: &Expression) -> usize {
    let mut terms = Vec::new();
    collect(expression, None, &mut terms);
    terms.len()
}

fn collect<'e>(
    expression: &'e Expression,
    sign: Option<Operator>,
    terms: &mut Vec<(Option<Operator>, &'e Expression)>,
) {
    match expression {
        Expression::Binary(op @ (Operator::Plus | Operator::Minus), left, right) => {
            collect(left, sign, terms);
            terms.push((Some(*op), right));
        }
        other => terms.push((sign, other)),
    }
}

fn is_sum(expression: &Expression) -> bool {
    matches!(
        expression,
        Expression::Binary(Operator::Plus | Operator::Minus, ..)
    )
}

/// A negative number behind a sign stands in brackets.
fn guarded(expression: &Expression, face: Face, inner: Markup) -> Markup {
    let negative = match expression {
        Expression::Quantity { measure, .. } => face == Face::Numbers && measure.si < 0.0,
        Expression::Constant(measure) => measure.si < 0.0,
        Expression::Number(value) => *value < 0.0,
        Expression::Binary(..) | Expression::Call(..) => false,
    };
    if negative { fenced(inner) } else { inner }
}

fn fenced(inner: Markup) -> Markup {
    html! { mrow { mo stretchy="true" { "(" } (inner) mo stretchy="true" { ")" } } }
}

fn write(expression: &Expression, face: Face, units: Units) -> Markup {
    match expression {
        Expression::Quantity {
            symbol,
            measure: value,
        } => match face {
            Face::Symbols => identifier(symbol),
            Face::Numbers => measure(*value, units),
        },
        Expression::Constant(value) => shown(&expression_words(expression, units), *value, units),
        Expression::Number(value) => html! { mn { (value) } },
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
    expression.numbers(units)
}

fn shown(words: &str, measure: Measure, units: Units) -> Markup {
    if words.is_empty() {
        self::measure(measure, units)
    } else {
        number_and_unit(words)
    }
}

/// A value with its unit upright behind it.
fn measure(measure: Measure, units: Units) -> Markup {
    number_and_unit(&measure.show(units))
}

fn number_and_unit(words: &str) -> Markup {
    match words.split_once(' ') {
        Some((number, unit)) => html! {
            mrow { mn { (number) } mspace width="0.2em" {} mtext { (unit) } }
        },
        None => html! { mn { (words) } },
    }
}

/// Longest symbol that is set as one: others are names in words.
const LONGEST_SYMBOL: usize = 4;

/// A symbol: one letter, with what follows it below the line; a name in words upright.
pub(super) fn identifier(symbol: &str) -> Markup {
    let chars: Vec<char> = symbol.chars().collect();
    let is_word = chars.len() > LONGEST_SYMBOL
        || chars.is_empty()
        || !chars.iter().all(|c| c.is_alphanumeric());
    if is_word {
        return html! { mtext { (symbol) } };
    }
    let head = usize::from(chars[0] == 'Δ' && chars.len() > 1) + 1;
    let (letter, below): (String, String) = (
        chars[..head].iter().collect(),
        chars[head..].iter().collect(),
    );
    let lowered = below
        .chars()
        .next()
        .is_some_and(|c| c.is_lowercase() || c.is_ascii_digit());
    if below.is_empty() {
        html! { mi { (letter) } }
    } else if lowered {
        html! { msub { mi { (letter) } mrow { @if below.chars().all(|c| c.is_ascii_digit()) { mn { (below) } } @else { mi { (below) } } } } }
    } else {
        html! { mi { (symbol) } }
    }
}
