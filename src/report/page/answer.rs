//! What a reader sees in the first ten seconds: what was asked, the answer, what stops it, what is next.

use maud::{Markup, html};

use super::{anchor, mark, prose};
use crate::job::Sitting;
use crate::report::{Report, counted, waiting};
use crate::rig::{Outfit, Rig};
use crate::rules::{Judged, Verdict};

/// The question, the answer, the counts.
pub(super) fn top(report: &Report) -> Markup {
    let verdict = report.overall();
    html! {
        @if let Some(asked) = asked(report.case.rig) { p class="asked" { (asked) } }
        div class=(format!("answer {}", mark::class(verdict))) {
            (mark::icon(verdict))
            div {
                p class="word" { (report.answer()) }
                p { (report.headline()) }
            }
        }
        ul class="counts" {
            @for verdict in Verdict::ALL {
                @if report.count(verdict) > 0 {
                    li { (mark::icon(verdict)) " " (report.count(verdict)) " " (verdict.word()) }
                }
            }
        }
    }
}

/// What was asked, in a sentence.
fn asked(rig: &Rig) -> Option<String> {
    let boat = rig.job.boat.name.as_deref().unwrap_or("this boat");
    match rig.job.sitting {
        Sitting::Study => None,
        _ if rig.after.is_empty() => Some(format!("What must be known of {boat} before engines are chosen for her?")),
        Sitting::BeforeOrdering => {
            let old = engines(&rig.before);
            let instead = if old.is_empty() { String::new() } else { format!(", in place of {old}") };
            Some(format!("May {} go on the {boat}{instead}?", engines(&rig.after)))
        }
        Sitting::AsFitted => Some(format!("Does what hangs on the {boat} belong there: {}?", engines(&rig.after))),
    }
}

/// The engines of an outfit in words: "two four-stroke 150 hp inline-4 on a box bracket".
fn engines(outfit: &Outfit) -> String {
    let groups: Vec<String> = outfit
        .groups
        .iter()
        .filter_map(|group| {
            let first = group.engines.first()?;
            let bracket = group
                .bracket
                .as_ref()
                .map(|bracket| format!(" on the {}", bracket.name.trim_start_matches("the ")))
                .unwrap_or_default();
            Some(format!("{} {}{bracket}", count_word(group.engines.len()), first.class.trim_start_matches("the ")))
        })
        .collect();
    groups.join(" and ")
}

fn count_word(count: usize) -> String {
    let words = ["no", "one", "two", "three", "four", "five", "six"];
    words.get(count).map_or_else(|| count.to_string(), |word| (*word).to_owned())
}

/// When a finding wants to be seen to, in words of this program.
pub(super) fn priority(sitting: Sitting, verdict: Verdict) -> &'static str {
    match (sitting, verdict) {
        (Sitting::Study, _) | (_, Verdict::NotApplicable) => "",
        (Sitting::AsFitted, Verdict::Fail) => "put right before she goes out again",
        (Sitting::AsFitted, Verdict::Warn) => "have it seen to this season, and mind it until then",
        (_, Verdict::Fail) => "settle before anything is ordered",
        (_, Verdict::Warn) => "weigh before ordering",
        (_, Verdict::Unmeasured) => "measure, then judge again",
        (_, Verdict::Pass) => "nothing to do",
    }
}

/// What stops the job, each with what is next.
pub(super) fn stops(report: &Report) -> Markup {
    let title = match report.case.rig.job.sitting {
        Sitting::Study => "What fails",
        Sitting::AsFitted => "What must be put right",
        Sitting::BeforeOrdering => "What stops it",
    };
    brief("stops", title, report, Verdict::Fail)
}

/// What to mind.
pub(super) fn minds(report: &Report) -> Markup {
    brief("mind", "What to mind", report, Verdict::Warn)
}

fn brief(id: &str, title: &str, report: &Report, verdict: Verdict) -> Markup {
    let findings: Vec<&Judged> = report.with(verdict).collect();
    html! {
        @if !findings.is_empty() {
            section {
                h2 id=(id) { (title) }
                ol class="brief" {
                    @for judged in findings { (item(judged, report)) }
                }
            }
        }
    }
}

fn item(judged: &Judged, report: &Report) -> Markup {
    let finding = &judged.finding;
    html! {
        li {
            (mark::icon(finding.verdict))
            div {
                p class="said" { (prose(&finding.summary, report.units)) }
                @if let Some(remedy) = &finding.remedy {
                    p class="next" { b { "Next: " } (prose(remedy, report.units)) }
                }
                p class="where" {
                    (finding.verdict.word()) " · "
                    a href=(format!("#{}", anchor("finding", judged))) { (judged.rule.id) }
                    @if let Some(margin) = finding.margin() {
                        " · margin " span class="n" { (margin.show(report.units)) }
                    }
                }
            }
        }
    }
}

/// The readings that are still missing; in a study, the answers instead.
pub(super) fn unmeasured(report: &Report) -> Markup {
    if report.case.rig.job.sitting == Sitting::Study {
        return answers(report);
    }
    let missing = waiting(report.judged);
    html! {
        @if !missing.is_empty() {
            section {
                h2 id="unmeasured" { "What is still unmeasured" }
                p {
                    "Unmeasured is not pass. " (counted(missing.len(), "reading is", "readings are"))
                    " missing; " b { "next: " }
                    @if missing.len() == 1 { "take it, and have her judged again." }
                    @else { "take them, those at the top first, and have her judged again." }
                }
                table {
                    caption class="soft" { "Readings to take" }
                    thead { tr { th scope="col" { "reading" } th scope="col" { "where and how" } } }
                    tbody {
                        @for entry in &missing {
                            @let how = entry.missing.measurement;
                            tr {
                                th scope="row" { (entry.missing.name()) }
                                td {
                                    (how.place()) ": " (how.how())
                                    @if let Some(closely) = how.closely { ". To within " span class="n" { (closely) } }
                                    p class="where" { "Decides " (entry.rules.join(", ")) }
                                }
                            }
                        }
                    }
                }
            }
        }
    }
}

fn answers(report: &Report) -> Markup {
    let answers: Vec<&Judged> = report.answers().collect();
    html! {
        @if !answers.is_empty() {
            section {
                h2 id="answers" { "Answers" }
                ol class="brief" {
                    @for judged in answers {
                        li {
                            span aria-hidden="true" { "→" }
                            div {
                                @if let Some(limit) = judged.finding.limit {
                                    p class="said" { (limit.show(report.units)) }
                                }
                                p { (prose(&judged.finding.summary, report.units)) }
                                p class="where" { a href=(format!("#{}", anchor("finding", judged))) { (judged.rule.id) } }
                            }
                        }
                    }
                }
            }
        }
    }
}
