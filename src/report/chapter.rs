//! Answers that are lists under heads, and what they are as text.

use super::drawings::Drawing;
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
