//! How far one reading may go, told.

use serde_json::{Value, json as value};

use super::chapter::{self, Chapter};
use super::measures::measure;
use super::{DEFERRAL, plain, text};
use crate::options::{Needed, Said};
use crate::quantity::{Measure, Text, Units, say};

/// Name and version of the document's shape.
pub const NEEDED_SCHEMA: &str = "sternknee-needed/1";

/// What was found, and how it is to be told.
pub struct WhatIsNeeded<'a> {
    /// What the job is called.
    pub title: &'a str,
    /// Whether it was invented.
    pub made_up: bool,
    /// Each question with its answer.
    pub all: &'a [Needed],
    /// Units to speak.
    pub units: Units,
}

fn chapter(one: &Needed) -> Chapter {
    let moved = &one.moved;
    let mut chapter = Chapter::of(moved.asked);
    let shown = |value: f64| -> Measure { moved.shown(value) };
    let within = shown(moved.within);
    let mut lines = Vec::new();
    let word = if moved.greatest { "at most" } else { "at least" };
    match (one.end, one.stops.is_empty()) {
        (None, _) => lines.push(say!(
            "From {} to {} something fails wherever it is; as the job has it: {}.",
            shown(moved.from),
            shown(moved.to),
            shown(moved.now)
        )),
        (Some(end), true) => lines.push(say!(
            "Nothing more fails as far as {} was tried; as the job has it: {}.",
            shown(end),
            shown(moved.now)
        )),
        (Some(end), false) => lines.push(
            say!("{} {}, to within {}", word, shown(end), within)
                .then(say!("; as the job has it: {}.", shown(moved.now))),
        ),
    }
    for said in &one.stops {
        lines.push(say!("then fails {}: ", plain::name(said.rule)).then(said.summary.clone()));
    }
    if let Some((value, said)) = &one.warns {
        lines.push(say!("No more warns than now as far as {}:", shown(*value)));
        lines.extend(said.iter().map(|said| say!("then {}: ", plain::name(said.rule)).then(said.summary.clone())));
    }
    if !one.waits.is_empty() {
        let names: Vec<String> = one.waits.iter().map(|said| plain::name(said.rule)).collect();
        lines.push(say!("not judged, for readings are missing; any of these may stop it sooner: {}", names.join(", ")));
    }
    if !one.aside.is_empty() {
        let names: Vec<String> = one.aside.iter().map(|said| plain::name(said.rule)).collect();
        lines.push(say!("left aside, for it fails wherever this is moved: {}", names.join(", ")));
    }
    chapter.about = Some(say!("{}; every check judged anew at each of {} places.", moved.what, one.judged));
    chapter.entries.push(lines);
    chapter
}

/// As text.
pub fn needed_text(what: &WhatIsNeeded) -> String {
    let invented = if what.made_up { " · an invented scenario" } else { "" };
    let mut out = text::wrap(what.title, "");
    out.push_str(&format!("what would just do{invented}\n{}\n", text::rule()));
    let chapters: Vec<Chapter> = what.all.iter().map(chapter).collect();
    if chapters.is_empty() {
        let lead = Text::from(
            "There is nothing to move yet: it takes engines with a weight, a transom or bracket with a height, or a well with an edge.",
        );
        out.push_str(&text::wrap(&lead.show(what.units), ""));
    }
    out.push_str(&chapter::as_text(&chapters, what.units));
    out.push('\n');
    out.push_str(&text::wrap("One reading is moved at a time; all others stay as the job has them.", ""));
    out.push_str(&text::wrap(DEFERRAL, ""));
    out
}

/// As one document.
pub fn needed_json(what: &WhatIsNeeded) -> Value {
    let units = what.units;
    let said = |all: &[Said]| -> Vec<Value> {
        all.iter().map(|one| value!({ "rule": one.rule.id, "summary": one.summary.show(units) })).collect()
    };
    let one = |one: &Needed| {
        let shown = |at: f64| measure(one.moved.shown(at), units);
        value!({
            "asked": one.moved.asked,
            "what": one.moved.what,
            "now": shown(one.moved.now),
            "from": shown(one.moved.from),
            "to": shown(one.moved.to),
            "within": shown(one.moved.within),
            "end": one.end.map(shown),
            "then_fails": said(&one.stops),
            "no_more_warns_to": one.warns.as_ref().map(|(at, _)| shown(*at)),
            "then_warns": one.warns.as_ref().map(|(_, all)| said(all)),
            "left_aside": said(&one.aside),
            "not_judged": said(&one.waits),
            "judged": one.judged,
        })
    };
    value!({
        "schema": NEEDED_SCHEMA,
        "title": what.title,
        "made_up": what.made_up,
        "needed": what.all.iter().map(one).collect::<Vec<_>>(),
        "deferral": DEFERRAL,
    })
}
