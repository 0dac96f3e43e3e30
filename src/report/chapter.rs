//! Answers that are lists under heads, as text and as a page.

use maud::{Markup, html};

use super::drawings::Drawing;
use super::page;
use super::text;
use crate::quantity::{Text, Units};
use crate::working::Table;

/// What stands under one head.
#[derive(Default)]
pub(super) struct Chapter {
    /// The head.
    pub head: String,
    /// What is to be known of all of it.
    pub about: Option<Text>,
    /// Entries: a first line, and what is said of it.
    pub entries: Vec<Vec<Text>>,
    /// Rows of figures.
    pub tables: Vec<Table>,
    /// Lines to be copied as they stand.
    pub verbatim: Vec<String>,
    /// Drawings, on a page.
    pub drawings: Vec<Drawing>,
}

impl Chapter {
    /// Nothing yet under a head.
    pub(super) fn of(head: impl Into<String>) -> Chapter {
        Chapter { head: head.into(), ..Chapter::default() }
    }

    /// Whether there is nothing to tell.
    pub(super) fn is_empty(&self) -> bool {
        self.entries.is_empty() && self.tables.is_empty() && self.verbatim.is_empty() && self.drawings.is_empty()
    }
}

/// As text.
pub(super) fn as_text(chapters: &[Chapter], units: Units) -> String {
    let mut out = String::new();
    for chapter in chapters.iter().filter(|chapter| !chapter.is_empty()) {
        out.push_str(&text::head(&chapter.head));
        if let Some(about) = &chapter.about {
            out.push_str(&text::wrap(&about.show(units), "  "));
        }
        for entry in &chapter.entries {
            for (i, line) in entry.iter().enumerate() {
                let [first, more] = if i == 0 { ["  ", "    "] } else { ["    ", "    "] };
                out.push_str(&text::fill(&line.show(units), first, more));
            }
        }
        for table in &chapter.tables {
            out.push_str(&text::rows(table, units));
        }
        for line in &chapter.verbatim {
            out.push_str(&format!("    {}\n", text::one_line(line)));
        }
    }
    out
}

/// As parts of a page.
pub(super) fn as_page(chapters: &[Chapter], units: Units) -> Markup {
    html! {
        @for chapter in chapters.iter().filter(|chapter| !chapter.is_empty()) {
            section {
                h2 { (page::capital(&chapter.head)) }
                @if let Some(about) = &chapter.about { p class="about" { (page::prose(about, units)) } }
                @if !chapter.entries.is_empty() {
                    ul {
                        @for entry in &chapter.entries {
                            li { @for (i, line) in entry.iter().enumerate() {
                                @if i > 0 { br; span class="soft" { (page::prose(line, units)) } } @else { (page::prose(line, units)) }
                            } }
                        }
                    }
                }
                @for table in &chapter.tables { (page::table(table, units)) }
                @if !chapter.verbatim.is_empty() { pre { (chapter.verbatim.join("\n")) } }
                @for drawing in &chapter.drawings { (page::figure(drawing)) }
            }
        }
    }
}
