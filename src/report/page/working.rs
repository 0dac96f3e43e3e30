//! The working: of every finding at the end of a report, and as a page of its own for the student.

use maud::{Markup, html};

use super::findings::has_working;
use super::{Stamp, anchor, closing, drawn, formula, kept_together, mark, prose, quoted_words, shell, table};
use crate::case::strength::Sweep;
use crate::quantity::{Measure, Units, capitalised};
use crate::report::Report;
use crate::report::drawings::{self, Drawing};
use crate::report::legend;
use crate::rules::Family;
use crate::working::{Line, Part};

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
                    summary { (judged.rule.full_name()) " " (mark::worded(judged.finding.verdict)) }
                    @for rows in &judged.finding.tables { (table(rows, units)) }
                    @if let Some(given) = legend::in_words(&judged.finding.working, judged.rule.family, units) {
                        p class="about" { (quoted_words(&given)) "." }
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
        @for answer in report.case.studies() {
            section {
                h2 { (capitalised(answer.title)) }
                (table(&answer.answer(), report.units))
                @for note in &answer.notes { p { (prose(note, report.units)) } }
                p class="source" { "Source: " (quoted_words(answer.source)) "." }
            }
            (of_part(&answer.working(), None, report.units))
        }
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
            @for part in parts { (of_part(part, legend::family_of(topic), units)) }
            (drawn(&drawings, units))
        }
        footer { (closing::small_print(stamp)) }
    };
    shell::document(&heading, &heading, body)
}

fn of_part(part: &Part, family: Option<Family>, units: Units) -> Markup {
    let legend = legend(part, family);
    html! {
        section {
            h2 { (capitalised(&part.title)) }
            @if !legend.is_empty() {
                div class="scroll" role="group" tabindex="0" aria-label=(format!("Symbols: {}", part.title)) {
                    table {
                        caption { "Symbols" }
                        thead { tr { th scope="col" { "symbol" } th scope="col" { "what it is" } th scope="col" class="num" { "value" } th scope="col" { "where from" } } }
                        tbody {
                            @for entry in &legend {
                                tr {
                                    th scope="row" { math { (formula::identifier(&entry.symbol)) } }
                                    td { (quoted_words(&entry.meaning)) }
                                    td class="num" { (kept_together(entry.value, units)) }
                                    td { (quoted_words(&entry.from)) }
                                }
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
    from: String,
}

/// Every symbol of a part once, for each value that it has: those that went in as given first, then those that were worked out
/// with what they mean.
fn legend(part: &Part, family: Option<Family>) -> Vec<Symbol> {
    let given = legend::given(&part.sheet, family).into_iter().map(|one| Symbol {
        symbol: one.symbol,
        meaning: one.meaning.unwrap_or_else(|| "as given".to_owned()),
        value: one.value,
        from: one.from.unwrap_or_else(|| "given".to_owned()),
    });
    let mut symbols: Vec<Symbol> = given.collect();
    for line in part.sheet.lines() {
        let Line::Step { symbol, meaning, result, .. } = line else { continue };
        if !symbols.iter().any(|one| one.symbol == *symbol && one.value == *result) {
            let (symbol, meaning) = (symbol.clone(), meaning.clone());
            symbols.push(Symbol { symbol, meaning, value: *result, from: "a line below".to_owned() });
        }
    }
    symbols
}
