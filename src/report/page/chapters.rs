//! Lists under heads as parts of a page.

use maud::{Markup, html};

use super::{figure, prose};
use crate::quantity::{Units, capitalised};
use crate::report::chapter::Chapter;

/// As parts of a page.
pub(super) fn as_page(chapters: &[Chapter], units: Units) -> Markup {
    html! {
        @for chapter in chapters.iter().filter(|chapter| !chapter.is_empty()) {
            section {
                h2 { (capitalised(&chapter.head)) }
                @if let Some(about) = &chapter.about { p class="about" { (prose(about, units)) } }
                @if !chapter.entries.is_empty() {
                    ul {
                        @for entry in &chapter.entries {
                            li { @for (i, line) in entry.iter().enumerate() {
                                @if i > 0 { br; span class="soft" { (prose(line, units)) } } @else { (prose(line, units)) }
                            } }
                        }
                    }
                }
                @for table in &chapter.tables { (super::table(table, units)) }
                @if !chapter.verbatim.is_empty() { pre { (chapter.verbatim.join("\n")) } }
                @for drawing in &chapter.drawings { (figure(drawing)) }
            }
        }
    }
}
