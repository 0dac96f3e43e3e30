//! What is asked back, on the page.

use maud::{Markup, html};

use super::prose;
use crate::reading::{self, Told};
use crate::report::Report;
use crate::report::questions::{how, told, untold};
use crate::rig::Question;

/// The questions under their head.
pub(super) fn questions(report: &Report) -> Markup {
    let readings = reading::told(&*report.case.rig.job);
    html! {
        @if !report.case.rig.suspects.is_empty() {
            section {
                h2 id="asked-back" { "Asked back" }
                ol class="brief" {
                    @for question in told(report) {
                        li {
                            span aria-hidden="true" { "?" }
                            div {
                                p class="said" { (prose(&question.said, report.units)) }
                                p class="next" { b { "Next: " } (how(question)) }
                                p class="where" { (named(question, &readings)) " · " (question.why) }
                            }
                        }
                    }
                }
                @if untold(report) > 0 { p { "And " (untold(report)) " more." } }
            }
        }
    }
}

/// What a question is about, by the names of its readings.
fn named(question: &Question, readings: &[Told]) -> String {
    let name =
        |entry: &String| readings.iter().find(|one| one.path == *entry).map_or_else(|| entry.clone(), Told::name);
    question.entries.iter().map(name).collect::<Vec<_>>().join(", ")
}
