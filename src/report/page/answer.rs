//! What a reader sees in the first ten seconds: what was asked, the answer, what stops it, what is next.

use maud::{Markup, html};

use super::{anchor, figure, mark, prose, quoted_words};
use crate::job::Sitting;
use crate::report::causes::{Cause, causes};
use crate::report::drawings::Drawing;
use crate::report::plain::{first_sentence, name, names};
use crate::report::{Report, counted, doubt, rank, waiting};
use crate::rig::{Outfit, Rig};
use crate::rules::{Family, Judged, Verdict};

/// When, by whom and for whom the readings were taken.
pub(super) fn taken(report: &Report) -> String {
    let job = &report.case.rig.job;
    let parts = [("readings of", &job.date), ("by", &job.by), ("for", &job.for_whom)];
    let told = parts.iter().filter_map(|(lead, words)| words.as_ref().map(|words| format!(" · {lead} {words}")));
    told.collect()
}

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
    let boat = rig.job.boat.name.as_ref().map_or_else(|| "this boat".to_owned(), |name| format!("the {name}"));
    // A name with something set off behind it wants the second comma too.
    let pause = if boat.contains(',') { "," } else { "" };
    match rig.job.sitting {
        Sitting::Study => None,
        _ if rig.after.is_empty() => {
            Some(format!("What must be known of {boat}{pause} before engines are chosen for her?"))
        }
        Sitting::BeforeOrdering => {
            let old = engines(&rig.before);
            let instead = if old.is_empty() { String::new() } else { format!(", in place of {old}") };
            Some(format!("May {} go on {boat}{instead}?", engines(&rig.after)))
        }
        Sitting::AsFitted => Some(format!("Does what hangs on {boat}{pause} belong there: {}?", engines(&rig.after))),
    }
}

/// The engines of an outfit in words: "two four-stroke 150 hp inline-4 on a box bracket".
fn engines(outfit: &Outfit) -> String {
    let groups: Vec<String> = outfit
        .groups
        .iter()
        .filter_map(|group| {
            let first = group.engines.first()?;
            let bracket = group.bracket.as_ref().map(|bracket| format!(" on the {}", bracket.name)).unwrap_or_default();
            Some(format!("{} {}{bracket}", count_word(group.engines.len()), first.class))
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

/// The first sheet, which can be handed over alone: what stops it or is to mind, each with what is next; what was not seen;
/// the stern as it will be; a line to sign.
pub(super) fn first_sheet(report: &Report, stern: Option<&Drawing>) -> Markup {
    let study = report.case.rig.job.sitting == Sitting::Study;
    html! {
        (super::questions::questions(report))
        @if study { (answers(report)) }
        (causes_told(report))
        div class="tail" {
            @if !study { (not_seen(report)) }
            @if let Some(stern) = stern { (figure(stern)) }
        }
        @if !study {
            div class="sign" { p { "Name" } p { "Date" } p { "Signature" } }
            p class="soft" { "Whoever signs answers for it. The program signs nothing: it advises, and a licensed marine technician decides." }
        }
    }
}

/// What fails, in the order in which it is settled; where nothing does, what warns.
fn causes_told(report: &Report) -> Markup {
    let (fails, warns) = (causes(report, Verdict::Fail), causes(report, Verdict::Warn));
    let (title, told) = match report.case.rig.job.sitting {
        _ if fails.is_empty() => ("What to mind", &warns),
        Sitting::Study => ("What fails", &fails),
        Sitting::AsFitted => ("What must be put right, in this order", &fails),
        Sitting::BeforeOrdering => ("What stops it, in the order to settle it", &fails),
    };
    html! {
        @if !told.is_empty() {
            section {
                h2 id="stops" { (title) }
                ol class="brief" { @for cause in told { (item(cause, report)) } }
                @if !fails.is_empty() && !warns.is_empty() {
                    p id="mind" { b { "To mind besides: " } (warns.iter().map(|cause| besides(cause, &fails)).collect::<Vec<_>>().join("; ")) "." }
                }
            }
        }
    }
}

/// What a cause is about; with the checks that warn of it where others fail for the same.
fn besides(cause: &Cause, fails: &[Cause]) -> String {
    if fails.iter().all(|fail| fail.title != cause.title) {
        return cause.title.to_owned();
    }
    let checks: Vec<String> = cause.all().map(|judged| name(judged.rule)).collect();
    format!("{} ({})", cause.title, checks.join(", "))
}

fn item(cause: &Cause, report: &Report) -> Markup {
    let finding = &cause.first.finding;
    let summary = finding.summary.show(report.units);
    html! {
        li {
            (mark::icon(finding.verdict))
            div {
                p class="said" { (cause.title) ". " (quoted_words(first_sentence(&summary))) }
                @if let Some(remedy) = &finding.remedy {
                    p class="next" { b { "Next: " } (quoted_words(first_sentence(&remedy.show(report.units)))) }
                }
                p class="where" {
                    (finding.verdict.word()) ", " (rank::of(cause.first).words()) " · "
                    a href=(format!("#{}", anchor("finding", cause.first))) { (name(cause.first.rule)) }
                    @for judged in &cause.with {
                        ", " a href=(format!("#{}", anchor("finding", judged))) { (name(judged.rule)) }
                    }
                    @if let Some(margin) = doubt::figure(cause.first, "margin", report.units) {
                        " · margin " span class="n" { (margin) }
                    }
                }
            }
        }
    }
}

/// Missing readings named on the first sheet; the others are counted.
const NAMED: usize = 6;

/// What a job did not tell where it tells nothing that a family judges: something of steering or trailer may stand in it.
fn untold(family: Family) -> &'static str {
    match family {
        Family::Steering => "the rigging of the steering",
        Family::Fuel => "how the engines are fed",
        Family::Electrical => "batteries and wires",
        Family::Controls => "levers, switches and gauges",
        Family::Network => "the instruments' network",
        Family::Trailer => "the load on the trailer",
        Family::Running => "how she runs",
        Family::Trial => "a trial",
        Family::Worth => "costs",
        other => other.word(),
    }
}

/// What was not measured, not asked and taken for granted.
fn not_seen(report: &Report) -> Markup {
    let missing: Vec<String> = waiting(report.judged).iter().map(|entry| entry.missing.name()).collect();
    let unasked: Vec<&str> = Family::ALL
        .iter()
        .filter(|family| {
            let mut of = report.judged.iter().filter(|judged| judged.rule.family == **family).peekable();
            of.peek().is_some() && of.all(|judged| judged.finding.verdict == Verdict::NotApplicable)
        })
        .map(|family| untold(*family))
        .collect();
    let assumed = report.assumed().len();
    let more = missing.len().saturating_sub(NAMED);
    html! {
        section {
            h2 id="not-seen" { "What was not seen" }
            ul {
                @if !missing.is_empty() {
                    li {
                        "Not measured, and unmeasured is not pass: " (missing.iter().take(NAMED).cloned().collect::<Vec<_>>().join("; "))
                        @if more > 0 { "; and " (more) " more" } "; " a href="#unmeasured" { "how to take " (if missing.len() == 1 { "it" } else { "them" }) } " follows."
                    }
                }
                @if !unasked.is_empty() { li { "Nothing told, so nothing judged: " (unasked.join(", ")) "." } }
                @if assumed > 0 { li { (counted(assumed, "thing was", "things were")) " taken for granted; the " a href="#assumed" { "annex" } " lists " (if assumed == 1 { "it" } else { "them" }) "." } }
                li { "What no reading tells: the state of anything that was not opened, and how she is handled." }
            }
        }
    }
}

/// The readings that are still missing; a study asks for none.
pub(super) fn unmeasured(report: &Report) -> Markup {
    if report.case.rig.job.sitting == Sitting::Study {
        return html! {};
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
                                    (quoted_words(how.place())) ": " (quoted_words(how.how()))
                                    @if let Some(closely) = how.closely { ". To within " span class="n" { (closely) } }
                                    p class="where" { "Decides " (names(&entry.rules)) }
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
                                p class="where" { a href=(format!("#{}", anchor("finding", judged))) { (judged.rule.full_name()) } }
                            }
                        }
                    }
                }
            }
        }
    }
}
