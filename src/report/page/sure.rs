//! How sure the verdicts are: those that hang on a reading, what to take again first, and which readings bring the doubt.

use maud::{Markup, html};

use super::{anchor, mark, prose};
use crate::report::{Report, doubt};
use crate::rules::{Judged, doubt_by_reading};

/// How many readings the chart names.
const CHARTED: usize = 10;

/// What the readings leave open, where that was asked.
pub(super) fn how_sure(report: &Report) -> Markup {
    let shares = doubt_by_reading(report.judged);
    let open: Vec<&Judged> =
        report.judged.iter().filter(|judged| judged.doubt.as_ref().is_some_and(|doubt| !doubt.is_firm())).collect();
    let next = doubt::next(report);
    html! {
        @if !shares.is_empty() {
            section {
                h2 id="sure" { "How sure this is" }
                p { "Each reading is worth what stands behind it, or what such a reading is usually worth. Every figure is shown with what that makes of it, in nineteen cases of twenty (JCGM 100 and 101)." }
                @if open.is_empty() {
                    p { "Every verdict holds within what the readings are worth." }
                } @else {
                    h3 { "Verdicts that hang on a reading" }
                    ul class="brief" {
                        @for judged in open {
                            li {
                                (mark::icon(judged.finding.verdict))
                                div {
                                    @if let Some(hangs) = doubt::hangs_on(judged) { p class="said" { (prose(&hangs, report.units)) } }
                                    p class="where" { a href=(format!("#{}", anchor("finding", judged))) { (judged.rule.full_name()) } }
                                }
                            }
                        }
                    }
                    @if !next.is_empty() {
                        h3 { "Take again first" }
                        ol { @for line in &next { li { (prose(line, report.units)) } } }
                    }
                }
                table {
                    caption { "Which readings bring the doubt, each finding counted the same" }
                    thead { tr { th scope="col" { "reading" } th scope="col" { "taken to" } th scope="col" { "share" } } }
                    tbody {
                        @for (taken, share) in shares.iter().take(CHARTED) {
                            tr {
                                th scope="row" { (taken.name) }
                                td { "± " span class="n" { (taken.tolerance.show(report.units)) } }
                                td { (bar(*share / shares[0].1)) " " (format!("{:.0} %", 100.0 * share)) }
                            }
                        }
                    }
                }
            }
        }
    }
}

/// A bar of this part of the longest.
fn bar(part: f64) -> Markup {
    html! {
        svg class="share" viewBox="0 0 100 8" width="100" height="8" aria-hidden="true" {
            rect width=(format!("{:.1}", 100.0 * part)) height="8" fill="currentColor" {}
        }
    }
}
