//! The end of a report: readings, assumptions, cautions, to whom it defers, what it was made with.

use crate::quantity::capitalised;
use maud::{Markup, html};

use super::{Embedded, Stamp, prose, shell};
use crate::report::readings;
use crate::report::sources::Sources;
use crate::report::{DEFERRAL, Report, citations};

/// Photographs that stand beside no finding.
pub(super) fn photographs(photographs: &[Embedded]) -> Markup {
    html! {
        @if photographs.iter().any(|one| one.finding.is_none()) {
            section {
                h2 id="photographs" { "Photographs" }
                (pictures(photographs, |finding| finding.is_none()))
            }
        }
    }
}

/// Those of the photographs that belong to such a finding, with their captions and their numbers among all.
pub(super) fn pictures(photographs: &[Embedded], belongs: impl Fn(Option<&str>) -> bool) -> Markup {
    let these: Vec<(usize, &Embedded)> =
        photographs.iter().enumerate().filter(|(_, one)| belongs(one.finding.as_deref())).collect();
    html! {
        @if !these.is_empty() {
            div class="photographs" {
                @for (i, one) in these {
                    @let caption = one.caption.as_deref().unwrap_or(&one.file);
                    figure {
                        @if let Some(address) = &one.address {
                            img src=(address) alt=(caption);
                        }
                        figcaption {
                            (i + 1) ". " (caption)
                            @if one.address.is_none() { span class="soft" { " (" (one.file) ", not in this page)" } }
                        }
                    }
                }
            }
        }
    }
}

/// The basis of most readings, which paper leaves out.
const MEASURED: &str = "measured";

/// Every reading with its basis and tolerance.
pub(super) fn readings(report: &Report) -> Markup {
    let groups = readings::readings(&report.case.rig.job);
    html! {
        @if !groups.is_empty() {
            section class="readings" {
                h2 id="readings" { "Readings used" }
                p class="about" { "Measured: taken on this boat. Builder: from her builder or the engine's, for this very one. Catalog: a class, not this one. Assumed: nobody looked. On paper what was measured stands without the word." }
                @for group in &groups {
                    table class="fixed" {
                        caption { (capitalised(&group.of)) }
                        thead { tr { th scope="col" { "reading" } th scope="col" { "value" } th scope="col" { "basis" } } }
                        tbody { @for row in &group.rows {
                            tr {
                                th scope="row" { (row.name) }
                                td { (prose(&row.value, report.units)) }
                                td class=[(row.basis == MEASURED).then_some("measured")] { (row.basis) }
                            }
                        } }
                    }
                }
            }
        }
    }
}

pub(super) fn assumed(report: &Report) -> Markup {
    let assumed = report.assumed();
    html! {
        @if !assumed.is_empty() {
            section class="assumed" {
                h2 id="assumed" { "Assumed" }
                ul { @for text in &assumed { li { (prose(text, report.units)) } } }
            }
        }
    }
}

pub(super) fn cautions(report: &Report) -> Markup {
    let cautions = report.cautions();
    html! {
        @if !cautions.is_empty() {
            section class="cautions" {
                h2 id="cautions" { "Cautions" }
                ul { @for caution in &cautions { li { (caution) } } }
            }
        }
    }
}

/// Each source once, by its number.
pub(super) fn sources(sources: &Sources) -> Markup {
    html! {
        section class="sources" {
            h2 id="sources" { "Sources" }
            ol { @for (i, (source, asked)) in sources.list().enumerate() { li id=(format!("source-{}", i + 1)) class=[(!asked).then_some("screen")] { (source) } } }
        }
    }
}

/// Papers, deferral, versions.
pub(super) fn end(report: &Report, stamp: &Stamp) -> Markup {
    let rig = report.case.rig;
    let job = &rig.job;
    let rows = [
        ("Boat", &job.boat.name),
        ("Readings taken", &job.date),
        ("By", &job.by),
        ("For", &job.for_whom),
        ("Notes", &job.notes),
    ];
    html! {
        section {
            h2 id="deferral" { "Who decides" }
            p class="deferral" { (DEFERRAL) }
            @if rows.iter().any(|(_, value)| value.is_some()) {
                dl class="papers" {
                    @for (name, value) in rows { @if let Some(value) = value { dt { (name) } dd { (value) } } }
                }
            }
        }
        section {
            h2 id="versions" { "Made with" }
            ul {
                @for (citation, edition) in citations(&rig.tables) { li { (citation) " (" (edition) ")" } }
            }
        }
        (small_print(stamp))
    }
}

/// Program, catalogs and the job's hash.
pub(super) fn small_print(stamp: &Stamp) -> Markup {
    html! {
        dl class="papers soft" {
            dt { "Program" } dd { (shell::GENERATOR) }
            dt { "Catalogs" } dd class="hash" { (stamp.catalogs) }
            @if !stamp.job_hash.is_empty() {
                dt { "Job" } dd class="hash" { (stamp.job) ", SHA-256 " (stamp.job_hash) }
            }
        }
    }
}
