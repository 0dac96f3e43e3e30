//! What is asked back, on the page.

use maud::{Markup, html};

use super::prose;
use crate::report::Report;
use crate::report::questions::{how, told, untold};

/// The questions under their head.
pub(super) fn questions(report: &Report) -> Markup {
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
                                p class="where" { (question.entries.join(", ")) " · " (question.why) }
                            }
                        }
                    }
                }
                @if untold(report) > 0 { p { "And " (untold(report)) " more." } }
            }
        }
    }
}
