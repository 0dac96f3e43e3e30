//! The working: of every finding at the end of a report, and as a page of its own for the student.

use std::sync::Arc;

use maud::{Markup, html};

use super::findings::has_working;
use super::{Stamp, anchor, closing, drawn, formula, kept_together, mark, shell, table};
use crate::case::strength::Sweep;
use crate::quantity::{Measure, Units};
use crate::report::Report;
use crate::report::drawings::{self, Drawing};
use crate::report::legend;
use crate::report::plain::full_name;
use crate::rules::{self, Family};
use crate::working::{Expression, Line, Part};

/// The working of every finding, folded away until it is asked for.
pub(super) fn of_findings(report: &Report) -> Markup {
    let units = report.units;
    html! {
        section class="working" {
            h2 id="working" { "Working" }
            p class="about" { "Every formula, with its numbers put in, as it was calculated. Unfold one here; what is unfolded is printed." }
            p class="unfold screen" {
                input type="checkbox" id="unfold";
                label for="unfold" { "Unfold all" }
            }
            @for judged in report.judged.iter().filter(|judged| has_working(judged)) {
                details id=(anchor("working", judged)) open[report.explain] {
                    summary { (full_name(judged.rule)) " " (mark::worded(judged.finding.verdict)) }
                    @for rows in &judged.finding.tables { (table(rows, units)) }
                    @if let Some(given) = legend::in_words(&judged.finding.working, judged.rule.family, units) {
                        p class="about" { "Given: " (given) "." }
                    }
                    @for line in judged.finding.working.lines() { (formula::step(line, units)) }
                }
            }
        }
    }
}

/// Questions of running that the job puts outright, with their working.
pub(super) fn of_studies(report: &Report) -> Markup {
    html! {
        @for part in report.case.running_study_parts() { (of_part(&part, report.units)) }
    }
}

/// A whole working as a page, with the sweeps drawn.
pub fn work_page(title: &str, topic: &str, parts: &[Part], sweeps: &[Sweep], units: Units, stamp: &Stamp) -> String {
    let heading = format!("{title}: the working, {topic}");
    let drawings: Vec<Drawing> =
        sweeps.iter().filter_map(|sweep| drawings::sweep::drawing(sweep, drawings::one(units))).collect();
    let body = html! {
        header {
            h1 { (title) }
            p class="soft" { "the working: " (topic) }
        }
        main {
            @for part in parts { (of_part(part, units)) }
            (drawn(&drawings, units))
        }
        footer { (closing::small_print(stamp)) }
    };
    shell::document(&heading, &heading, body)
}

fn of_part(part: &Part, units: Units) -> Markup {
    let legend = legend(part);
    html! {
        section {
            h2 { (super::findings::capital(&part.title)) }
            @if !legend.is_empty() {
                table {
                    caption { "Symbols" }
                    thead { tr { th scope="col" { "symbol" } th scope="col" { "what it is" } th scope="col" class="num" { "value" } } }
                    tbody {
                        @for entry in &legend {
                            tr {
                                th scope="row" { math { (formula::identifier(&entry.symbol)) } }
                                td { (entry.meaning) }
                                td class="num" { (kept_together(entry.value, units)) }
                            }
                        }
                    }
                }
            }
            @for rows in &part.tables { (table(rows, units)) }
            @for line in part.sheet.lines() { (formula::step(line, units)) }
        }
    }
}

struct Symbol {
    symbol: String,
    meaning: String,
    value: Measure,
}

/// Every symbol of a part once: those that were worked out with what they mean, those that went in as
/// given.
fn legend(part: &Part) -> Vec<Symbol> {
    let mut symbols: Vec<Symbol> = Vec::new();
    let family = rules::find(&part.title).map(|rule| rule.family);
    for line in part.sheet.lines() {
        if let Line::Step { symbol, meaning, expression, result } = line {
            given(expression, family, &mut symbols);
            put(&mut symbols, symbol, meaning, *result);
        }
    }
    symbols
}

fn put(symbols: &mut Vec<Symbol>, symbol: &str, meaning: &str, value: Measure) {
    let known = symbols.iter().any(|one| one.symbol == symbol && one.value == value);
    if !known {
        symbols.push(Symbol { symbol: symbol.to_owned(), meaning: meaning.to_owned(), value });
    }
}

fn given(expression: &Arc<Expression>, family: Option<Family>, symbols: &mut Vec<Symbol>) {
    match expression.as_ref() {
        Expression::Quantity { symbol, measure } => {
            // A result of an earlier line stands with its meaning already.
            if !symbols.iter().any(|one| one.symbol == *symbol) {
                let meaning = legend::meaning(symbol, measure.kind, family)
                    .map_or_else(|| "given".to_owned(), |what| format!("given: {what}"));
                put(symbols, symbol, &meaning, *measure);
            }
        }
        Expression::Binary(_, left, right) => {
            given(left, family, symbols);
            given(right, family, symbols);
        }
        Expression::Call(_, arguments) => {
            for argument in arguments {
                given(argument, family, symbols);
            }
        }
        Expression::Constant(_) | Expression::Number(_) | Expression::Sign(_) => {}
    }
}
