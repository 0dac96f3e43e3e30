//! Every finding, family by family: found, limit, margin, remedy, source.

use maud::{Markup, html};

use super::answer::priority;
use super::{anchor, mark, prose};
use crate::quantity::Text;
use crate::report::{Report, doubt};
use crate::rules::{Judged, Verdict};

pub(super) fn all(report: &Report) -> Markup {
    let mut families: Vec<Vec<&Judged>> = Vec::new();
    for judged in report.judged {
        match families.last_mut() {
            Some(family) if family[0].rule.family == judged.rule.family => family.push(judged),
            _ => families.push(vec![judged]),
        }
    }
    html! {
        section {
            h2 id="findings" { "All findings" }
            @for family in &families {
                @let name = family[0].rule.family.word();
                section {
                    h3 id=(format!("family-{name}")) { (capital(name)) }
                    @if let Some(said) = alike(family) {
                        details {
                            summary { (prose(said, report.units)) }
                            @for judged in family { (finding(judged, report)) }
                        }
                    } @else {
                        @for judged in family { (finding(judged, report)) }
                    }
                }
            }
        }
    }
}

/// What all findings of a family say, where none applies and all say the same.
fn alike<'j>(family: &[&'j Judged]) -> Option<&'j Text> {
    let (first, rest) = family.split_first()?;
    let said = &first.finding.summary;
    let same = |judged: &&Judged| judged.finding.summary == *said;
    let none = family.iter().all(|judged| judged.finding.verdict == Verdict::NotApplicable);
    (none && !rest.is_empty() && rest.iter().all(same)).then_some(said)
}

/// The word with a capital letter.
pub(in super::super) fn capital(word: &str) -> String {
    let mut chars = word.chars();
    chars.next().map(|first| first.to_uppercase().chain(chars).collect()).unwrap_or_default()
}

fn finding(judged: &Judged, report: &Report) -> Markup {
    let (rule, finding, units) = (judged.rule, &judged.finding, report.units);
    let figures = doubt::figures(judged, units);
    let priority = priority(report.case.rig.job.sitting, finding.verdict);
    html! {
        article class="finding" id=(anchor("finding", judged)) data-rule=(rule.id) data-verdict=(finding.verdict.word()) {
            h4 {
                span { (rule.id) }
                (mark::worded(finding.verdict))
            }
            p class="summary" { (prose(&finding.summary, units)) }
            @if !figures.is_empty() {
                dl class="figures" {
                    @for (name, figure) in &figures { div { dt { (name) } dd class=(name) { (figure) } } }
                }
            }
            @if let Some(hangs) = doubt::hangs_on(judged) {
                p class="hangs" { b { "How sure: " } (prose(&hangs, units)) }
            }
            @if let Some(remedy) = &finding.remedy {
                p class="next" { b { "Next: " } span class="remedy" { (prose(remedy, units)) } }
            }
            @if !priority.is_empty() && finding.verdict != Verdict::Pass {
                p { span class="label" { "When: " } (priority) }
            }
            p class="source" {
                "Source: " (rule.sources().join("; ")) "."
                @if has_working(judged) {
                    " " a href=(format!("#{}", anchor("working", judged))) { "Working of " (rule.id) }
                }
            }
        }
    }
}

/// Whether there is anything to show of how it was worked out.
pub(super) fn has_working(judged: &Judged) -> bool {
    !judged.finding.working.lines().is_empty() || !judged.finding.tables.is_empty()
}
