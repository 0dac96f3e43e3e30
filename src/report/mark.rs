//! The mark of each verdict: a shape of its own, so that it is told apart without its colour, in grey,
//! and when it is small. The word always stands beside it.

use maud::{Markup, html};

use crate::rules::Verdict;

/// Colour of a verdict's words and shape. Dark enough on white to be read (contrast above 4.5 to 1).
pub(super) fn colour(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Fail => "#a32a06",
        Verdict::Warn => "#7a5200",
        Verdict::Unmeasured => "#5d4a8c",
        Verdict::Pass => "#0a5a88",
        Verdict::NotApplicable => "#5a6672",
    }
}

/// The class of a verdict in the page's style sheet.
pub(super) fn class(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Fail => "fail",
        Verdict::Warn => "warn",
        Verdict::Unmeasured => "unmeasured",
        Verdict::Pass => "pass",
        Verdict::NotApplicable => "not-applicable",
    }
}

/// The shape alone, in a box of 20 by 20: a filled octagon with a bar, a triangle with a stroke, a broken
/// ring with a question, a filled disc with a tick, a dash.
fn shape(verdict: Verdict) -> Markup {
    let ink = colour(verdict);
    match verdict {
        Verdict::Fail => html! {
            path d="M6.3 1h7.4L19 6.3v7.4L13.7 19H6.3L1 13.7V6.3z" fill=(ink) {}
            path d="M5 10h10" stroke="#fff" stroke-width="3.2" fill="none" {}
        },
        Verdict::Warn => html! {
            path d="M10 1.8 19 18H1z" fill="#f4bd3c" stroke=(ink) stroke-width="1.6" stroke-linejoin="round" {}
            path d="M10 7v5.6M10 14.2v2" stroke="#1d2733" stroke-width="2.1" fill="none" {}
        },
        Verdict::Unmeasured => html! {
            circle cx="10" cy="10" r="8.4" fill="#fff" stroke=(ink) stroke-width="1.8" stroke-dasharray="3.4 1.9" {}
            path d="M7.2 8a2.8 2.8 0 1 1 3.9 2.6c-.8.4-1.1.8-1.1 1.9M10 14v1.8" stroke=(ink) stroke-width="1.9" fill="none" {}
        },
        Verdict::Pass => html! {
            circle cx="10" cy="10" r="9" fill=(ink) {}
            path d="M5.6 10.4l3 3 5.8-6.6" stroke="#fff" stroke-width="2.4" fill="none" {}
        },
        Verdict::NotApplicable => html! {
            path d="M4 10h12" stroke=(ink) stroke-width="2" fill="none" {}
        },
    }
}

/// Every shape once, for a document that uses it often: under names that begin with this.
pub(super) fn shapes(lead: &str) -> Markup {
    html! {
        defs {
            @for verdict in Verdict::ALL {
                symbol id=(format!("{lead}-{}", class(verdict))) viewBox="0 0 20 20" { (shape(verdict)) }
            }
        }
    }
}

/// Begin of the names of a page's own shapes.
const OF_PAGE: &str = "mark";

/// The shapes that a page's marks use, in an element that shows nothing.
pub(super) fn of_page() -> Markup {
    html! { svg width="0" height="0" class="shapes" aria-hidden="true" { (shapes(OF_PAGE)) } }
}

/// The mark in a line of text, without words: the word stands beside it.
pub(super) fn icon(verdict: Verdict) -> Markup {
    html! {
        svg class="mark" aria-hidden="true" { use href=(format!("#{OF_PAGE}-{}", class(verdict))) {} }
    }
}

/// Mark and word.
pub(super) fn worded(verdict: Verdict) -> Markup {
    html! {
        span class=(format!("verdict {}", class(verdict))) { (icon(verdict)) " " (verdict.word()) }
    }
}
