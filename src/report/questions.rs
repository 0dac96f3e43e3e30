//! What is asked back, before anything else.

use serde_json::{Value, json as value};

use super::Report;
use crate::rig::Question;

/// Questions told one by one; who is asked more mends these first.
const MOST_TOLD: usize = 12;

/// How a question is answered.
pub(super) fn how(question: &Question) -> String {
    format!("Put it right, or, where it was looked at again and stands, write {}", question.answer())
}

pub(super) fn told<'r>(report: &'r Report<'_>) -> impl Iterator<Item = &'r Question> {
    report.case.rig.questions().take(MOST_TOLD)
}

pub(super) fn untold(report: &Report) -> usize {
    report.case.rig.questions().count().saturating_sub(MOST_TOLD)
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
