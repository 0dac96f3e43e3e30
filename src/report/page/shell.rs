//! The sheet of paper that every page is written on: one file, no script, nothing fetched.

use maud::{DOCTYPE, Markup, PreEscaped, html};

use crate::report::drawings::LETTERING;
use crate::written::is_unsafe;

/// What stands in the head of every page of this program, by which it knows its own files.
pub(crate) const GENERATOR: &str = concat!("sternknee ", env!("CARGO_PKG_VERSION"));
const STYLE: &str = include_str!("style.css");

/// The style of every page of this program.
#[cfg(feature = "terminal")]
pub(crate) fn style() -> String {
    format!("{STYLE}{LETTERING}")
}

/// The document.
pub(super) fn document(title: &str, running: &str, body: Markup) -> String {
    let style = format!("{STYLE}{LETTERING}{}", page_box(running));
    let page = html! {
        (DOCTYPE)
        html lang="en" {
            head {
                meta charset="utf-8";
                meta name="generator" content=(GENERATOR);
                meta name="viewport" content="width=device-width, initial-scale=1";
                meta name="referrer" content="no-referrer";
                link rel="icon" href="data:,";
                title { (title) }
                style { (PreEscaped(style)) }
            }
            body { (body) }
        }
    };
    harmless(&page.into_string())
}

/// Running head and page numbers, where the browser prints margin boxes; others print the page's title
/// and number of their own.
fn page_box(running: &str) -> String {
    let words = css_string(running);
    format!(
        "@page{{margin:18mm 16mm 18mm;@top-left{{content:{words};font:9pt system-ui,sans-serif;color:#515d69;vertical-align:bottom;padding-bottom:4mm}}@bottom-left{{content:\"Advice, not approval\";font:9pt system-ui,sans-serif;color:#515d69;vertical-align:top;padding-top:4mm}}@bottom-right{{content:\"page \" counter(page) \" of \" counter(pages);font:9pt system-ui,sans-serif;color:#515d69;vertical-align:top;padding-top:4mm}}}}"
    )
}

/// Longest running head, in characters.
const LONGEST_HEAD: usize = 70;

/// A string of a style sheet in which every character that is not a plain letter, digit or space is
/// written by its number, so that nothing can end it.
fn css_string(words: &str) -> String {
    let mut out = String::from("\"");
    let mut chars = words.chars();
    for c in chars.by_ref().take(LONGEST_HEAD) {
        if c.is_ascii_alphanumeric() || c == ' ' {
            out.push(c);
        } else if !is_unsafe(c) {
            // The blank ends the number; without it one that follows would be taken for its end.
            out.push_str(&format!("\\{:06x} ", c as u32));
        }
    }
    if chars.next().is_some() {
        out.push_str("\\002026");
    }
    out + "\""
}

/// Without signs that a page or a drawing must not hold, or that turn the direction of the words after them.
pub(super) fn harmless(page: &str) -> String {
    page.chars()
        .map(|c| {
            if c == '\t' {
                ' '
            } else if is_unsafe(c) {
                '\u{fffd}'
            } else {
                c
            }
        })
        .collect()
}
