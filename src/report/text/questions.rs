//! What is asked back, as text.

use super::layout::{block, head, wrap};
use crate::report::Report;
use crate::report::questions::{how, told, untold};

/// The questions under their head.
pub(super) fn questions(report: &Report) -> String {
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
