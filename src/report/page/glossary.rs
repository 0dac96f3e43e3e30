//! Words that a reader of the page may not know, or that mean several things.

use maud::{Markup, html};

/// Words and what they mean here.
const WORDS: [(&str, &str); 16] = [
    ("she, it", "she is the boat, it is an engine or a part"),
    ("plate (of an engine)", "the flat plate over the propeller that keeps air from it; heights are told of it"),
    ("plate (of the boat)", "the capacity plate: what the builder lets her carry, and of which power"),
    ("plate (behind the transom)", "a backing plate under the nuts, in place of washers"),
    ("plate (in the working)", "the transom itself, reckoned as a board that bends"),
    ("window", "the heights between which an engine's plate runs well"),
    ("row, holes up", "the rows of bolt holes of an engine's bracket; 0 is its lowest mounting"),
    ("setback", "how far aft of the transom an engine hangs"),
    ("rest", "what of the engine's bracket lies on top of the transom"),
    ("edge, lip", "where water would first come in"),
    ("loading", "what is aboard and where: fuel, persons, gear"),
    ("trim", "bow up or down, in degrees; of an engine, its tilt while running"),
    ("factor", "how many times what works on a part it would bear"),
    ("margin", "the room that is left to the limit; negative beyond it"),
    ("proven", "what the old engines did for years without a sign, the new ones may do within a tenth more"),
    ("unmeasured", "a reading is missing; that is never a pass"),
];

/// The list.
pub(super) fn words() -> Markup {
    html! {
        section class="glossary" {
            h2 id="words" { "Words" }
            dl { @for (word, meaning) in WORDS { div { dt { (word) } dd { (meaning) } } } }
        }
    }
}
