//! Every finding, the gravest first: found, limit, margin, remedy, source.

use crate::quantity::capitalised;
use maud::{Markup, html};

use super::answer::priority;
use super::{Embedded, anchor, closing, mark, prose};
use crate::job::Sitting;
use crate::report::plain::name;
use crate::report::sources::Sources;
use crate::report::{Report, doubt, rank};
use crate::rules::{Judged, Verdict};

pub(super) fn all(report: &Report, sources: &Sources, photographs: &[Embedded]) -> Markup {
    html! {
        section {
            h2 id="findings" { "Findings" }
            p class="about" { "Behind each stands what it holds: a regulation or a rating, a collision, a part that cannot be fitted or cannot carry it, or practice, which warns and never fails." }
            @for verdict in Verdict::ALL { (of_verdict(report, sources, photographs, verdict)) }
        }
    }
}

fn of_verdict(report: &Report, sources: &Sources, photographs: &[Embedded], verdict: Verdict) -> Markup {
    let study = report.case.rig.job.sitting == Sitting::Study;
    let all: Vec<&Judged> = report.with(verdict).collect();
    let priority = priority(report.case.rig.job.sitting, verdict);
    let told = html! { @for judged in &all { (finding(judged, report, sources, photographs)) } };
    let folded = verdict == Verdict::NotApplicable || study && verdict == Verdict::Unmeasured;
    html! {
        @if !all.is_empty() && folded {
            details { summary { @if verdict == Verdict::Unmeasured { "What was not asked" } @else { (title(verdict)) } ": " (all.len()) } (told) }
        } @else if !all.is_empty() {
            section {
                h3 id=(format!("what-{}", mark::class(verdict))) { (title(verdict)) }
                @if !priority.is_empty() && verdict != Verdict::Pass { p class="about" { (capitalised(priority)) "." } }
                div class=(if matches!(verdict, Verdict::Unmeasured | Verdict::Pass) { "short" } else { "grave" }) { (told) }
            }
        }
    }
}

/// The head over findings of a verdict.
fn title(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Fail => "What fails",
        Verdict::Warn => "What warns",
        Verdict::Unmeasured => "What is not decided",
        Verdict::Pass => "What passes",
        Verdict::NotApplicable => "What does not apply",
    }
}

fn finding(judged: &Judged, report: &Report, sources: &Sources, photographs: &[Embedded]) -> Markup {
    let (rule, finding, units) = (judged.rule, &judged.finding, report.units);
    let figures = doubt::figures(judged, units);
    let ranked = matches!(finding.verdict, Verdict::Fail | Verdict::Warn);
    let numbers = if finding.verdict == Verdict::NotApplicable { Vec::new() } else { sources.numbers(rule) };
    html! {
        article class="finding" id=(anchor("finding", judged)) data-rule=(rule.id) data-verdict=(finding.verdict.word()) {
            h4 {
                span { (rule.full_name()) }
                span { (mark::worded(finding.verdict)) @if ranked { span class="rank" { " · " (rank::of(judged).words()) } } }
            }
            p class="summary" { (prose(&finding.summary, units)) }
            @for other in &finding.each { p class="each" { (prose(other, units)) } }
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
            (closing::pictures(photographs, |id| id == Some(rule.id)))
            @if !numbers.is_empty() { p class="source" {
                "Sources: "
                @for number in numbers { a href=(format!("#source-{number}")) { "[" (number) "]" } " " }
                @if has_working(judged) {
                    a class="screen" href=(format!("#{}", anchor("working", judged))) { "Working of " (name(rule)) }
                }
            } }
        }
    }
}

/// Whether there is anything to show of how it was worked out.
pub(super) fn has_working(judged: &Judged) -> bool {
    !judged.finding.working.lines().is_empty() || !judged.finding.tables.is_empty()
}
