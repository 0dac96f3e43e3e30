//! What is asked back, before anything else.

use maud::{Markup, html};
use serde_json::{Value, json as value};

use super::text::{block, head, wrap};
use super::{Report, page::prose};
use crate::rig::Question;

/// Questions told one by one; who is asked more mends these first.
const MOST_TOLD: usize = 12;

/// How a question is answered.
fn how(question: &Question) -> String {
    format!("Put it right, or, where it was looked at again and stands, write {}", question.answer())
}

fn told<'r>(report: &'r Report<'_>) -> impl Iterator<Item = &'r Question> {
    report.case.rig.questions().take(MOST_TOLD)
}

fn untold(report: &Report) -> usize {
    report.case.rig.questions().count().saturating_sub(MOST_TOLD)
}

/// As text.
pub(super) fn text(report: &Report) -> String {
    let mut out = String::new();
    for question in told(report) {
        if out.is_empty() {
            out.push_str(&head("asked back"));
        }
        out.push_str(&wrap(&question.said.show(report.units), "  "));
        out.push_str(&block("at", &question.entries.join(", ")));
        out.push_str(&block("do", &how(question)));
        out.push_str(&block("why", question.why));
        out.push_str(&block("source", question.source));
    }
    if untold(report) > 0 {
        out.push_str(&wrap(&format!("And {} more.", untold(report)), "  "));
    }
    out
}

/// As a part of the page.
pub(super) fn markup(report: &Report) -> Markup {
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

/// As data.
pub fn as_json(report: &Report) -> Value {
    let one = |question: &Question| {
        value!({
            "relation": question.relation,
            "entries": question.entries,
            "question": question.said.show(report.units),
            "why": question.why,
            "answer": question.answer(),
            "source": question.source,
        })
    };
    report.case.rig.questions().map(one).collect()
}
