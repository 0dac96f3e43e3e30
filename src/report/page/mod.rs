//! The pages that are handed over: the report, the measuring sheet, the working. Each is one file that
//! opens from a mail, reads on a phone and prints.

mod answer;
mod chapters;
mod closing;
mod contents;
mod findings;
mod formula;
mod glossary;
mod outfits;
mod questions;
mod rigging;
mod sheet;
mod shell;
mod sure;
mod trial_sheet;
mod working;

use maud::{Markup, html};

use super::chapter::Chapter;
use super::drawings::{self, Drawing};
use super::sources::Sources;
use super::{CLASS_NOT_ENGINE, DEFERRAL, Report, mark};
use crate::quantity::{Measure, Piece, Text, Units};
use crate::rules::Judged;

pub use sheet::{blank_sheet, measuring_sheet};
#[cfg(feature = "terminal")]
pub(crate) use shell::{GENERATOR, style};
pub use trial_sheet::trial_sheet;
pub use working::work_page;

/// What a page is matched by: the job's bytes and the tables that judged it.
#[derive(Clone, Debug, Default)]
pub struct Stamp {
    /// Name of the job's file, without its folders.
    pub job: String,
    /// SHA-256 of the job's bytes, in hexadecimal.
    pub job_hash: String,
    /// The catalogs, each with its own hash.
    pub catalogs: String,
}

/// A photograph, ready to go into a page.
#[derive(Clone, Debug)]
pub struct Embedded {
    /// Its picture as a data address; nothing where it is only named.
    pub address: Option<String>,
    /// Its file, as the job names it.
    pub file: String,
    /// What it shows.
    pub caption: Option<String>,
    /// The rule's id beside whose finding it stands.
    pub finding: Option<String>,
}

/// The drawing that stands on the first sheet: the stern from the side, after.
const ON_THE_FIRST_SHEET: &str = "side-after";

/// The report as one HTML document.
pub fn page(report: &Report, stamp: &Stamp, photographs: &[Embedded]) -> String {
    let rig = report.case.rig;
    let (stern, figures): (Vec<Drawing>, Vec<Drawing>) =
        drawings::all(report).into_iter().partition(|drawing| drawing.name == ON_THE_FIRST_SHEET);
    let sources = Sources::of_report(report);
    let body = html! {
        (mark::of_page())
        header {
            h1 { (rig.title()) }
            p class="soft" {
                (rig.job.sitting.words())
                @if rig.job.made_up { " · " span class="invented" { "an invented scenario" } }
                (answer::taken(report))
            }
            (answer::top(report))
        }
        main {
            div class="first" { (answer::first_sheet(report, stern.first())) }
            (contents::list(report, photographs.iter().any(|one| one.finding.is_none()), !figures.is_empty()))
            (answer::unmeasured(report))
            (sure::how_sure(report))
            (drawn(&figures, report.units))
            (working::of_studies(report))
            (findings::all(report, &sources, photographs))
            (closing::cautions(report))
            (rigging::list(report))
            (outfits::before_and_after(report))
            (outfits::planned(report))
            (closing::photographs(photographs))
            (working::of_findings(report))
            (closing::readings(report))
            (closing::assumed(report))
            (closing::sources(&sources))
            (glossary::words())
        }
        footer { (closing::end(report, stamp)) }
    };
    shell::document(rig.title(), rig.title(), body)
}

/// Lists under heads as one HTML document.
pub(super) fn of_chapters(
    title: &str,
    topic: &str,
    made_up: bool,
    headline: &str,
    chapters: &[Chapter],
    units: Units,
    stamp: &Stamp,
) -> String {
    let heading = format!("{title}: {topic}");
    let body = html! {
        header {
            h1 { (title) }
            p class="soft" { (topic) @if made_up { " · " span class="invented" { "an invented scenario" } } }
            p { b { (headline) } }
        }
        main { (chapters::as_page(chapters, units)) }
        footer {
            p { (CLASS_NOT_ENGINE) }
            p class="deferral" { (DEFERRAL) }
            (closing::small_print(stamp))
        }
    };
    shell::document(&heading, &heading, body)
}

/// The drawings as files of their own: name and text.
pub fn drawing_files(report: &Report) -> Vec<(String, String)> {
    drawings::all(report)
        .iter()
        .map(|drawing| (format!("{}.svg", drawing.name), shell::harmless(&drawing.file())))
        .collect()
}

/// The drawings with their captions, as they stand in a page: name and HTML.
pub fn figures(report: &Report) -> Vec<(&'static str, String)> {
    drawings::all(report)
        .iter()
        .map(|drawing| (drawing.name, shell::harmless(&figure(drawing).into_string())))
        .collect()
}

/// The measuring sheet's sketch without a number on it, as an element of a page.
pub fn sketch() -> String {
    drawings::places::drawing(&[]).inline().into_string()
}

/// The marks of the verdicts, which a page holds once.
#[cfg(feature = "terminal")]
pub(crate) fn marks() -> String {
    mark::of_page().into_string()
}

/// The drawings of a page, where there are any.
fn drawn(figures: &[Drawing], units: Units) -> Markup {
    html! {
        @if !figures.is_empty() {
            section class="drawings" { h2 id="drawings" { "Drawings" } @if units == Units::Both { p class="soft" { "Lettered in US units." } } div class="drawn" { @for drawing in figures { (figure(drawing)) } } }
        }
    }
}

/// A drawing with its caption.
pub(super) fn figure(drawing: &Drawing) -> Markup {
    html! {
        figure id=(format!("figure-{}", drawing.name)) {
            figcaption { b { (drawing.title) } }
            @if let Some(narrow) = drawing.inline_narrow() {
                div class="wide" { (drawing.inline()) }
                div class="narrow" { (narrow) }
            } @else {
                div role="group" tabindex="0" aria-label=(format!("{}; scrolls sideways on a narrow screen", drawing.title)) { (drawing.inline()) }
            }
            @if !drawing.notes.is_empty() {
                ul class="notes" { @for note in &drawing.notes { li { (note) } } }
            }
        }
    }
}

/// A sentence whose numbers stay together with their units, and whose names stand in quotation marks.
pub(super) fn prose(text: &Text, units: Units) -> Markup {
    let mut open = false;
    html! {
        @for piece in text.pieces() {
            @match piece {
                Piece::Words(words) => (quoted(words, &mut open)),
                Piece::Measure(measure) => span class="n" { (measure.show(units)) },
            }
        }
    }
}

/// Words of a sentence, its names in quotation marks.
fn quoted_words(words: &str) -> String {
    quoted(words, &mut false)
}

/// Words with quotation marks for the strokes that set off a name in plain text; `open` says whether one is
/// open.
fn quoted(words: &str, open: &mut bool) -> String {
    words
        .chars()
        .map(|c| {
            if c == '`' {
                *open = !*open;
                if *open { '\u{201c}' } else { '\u{201d}' }
            } else {
                c
            }
        })
        .collect()
}

/// A number that fills a cell: in both units it may break between them, and nowhere else.
fn kept_together(measure: Measure, units: Units) -> String {
    let parts = measure.show(units).replace(' ', "\u{a0}");
    parts.replace("\u{a0}(", " (")
}

/// The fragment of a rule's finding, or of its working.
fn anchor(lead: &str, judged: &Judged) -> String {
    format!("{lead}-{}", judged.rule.id.replace('/', "-"))
}

/// A table with a caption; columns whose cells are numbers are set to the right.
pub(super) fn table(rows: &crate::working::Table, units: Units) -> Markup {
    let numeric = |column: usize| {
        rows.rows.iter().any(|row| row.get(column).is_some_and(|cell| cell.as_measure().is_some()))
            && rows.rows.iter().all(|row| {
                row.get(column).is_none_or(|cell| cell.as_measure().is_some() || cell.pieces().is_empty() || column > 0)
            })
    };
    let class = |column: usize| numeric(column).then_some("num");
    let table = html! {
        table {
            caption { (quoted_words(&rows.title)) }
            thead { tr { @for (i, head) in rows.heads.iter().enumerate() { @if head.is_empty() { td {} } @else { th scope="col" class=[class(i)] { (quoted_words(head)) } } } } }
            tbody {
                @for row in &rows.rows {
                    tr { @for (i, cell) in row.iter().enumerate() { td class=[class(i)] {
                        @match cell.as_measure().filter(|_| class(i).is_some()) {
                            Some(measure) => (kept_together(measure, units)),
                            None => (prose(cell, units)),
                        }
                    } } }
                }
            }
        }
    };
    // A table of many columns is moved sideways on a narrow screen rather than squeezed.
    html! {
        @if rows.heads.len() > 3 {
            div class="scroll" role="group" tabindex="0" aria-label=(quoted_words(&rows.title)) { (table) }
        } @else {
            (table)
        }
    }
}
