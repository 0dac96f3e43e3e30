//! All options as one document, and a boat as one line.

use serde_json::{Value, json as value};

use super::{Options, hang_json};
use crate::options::{SCREENS, Said, Tried, firmness};
use crate::quantity::{Dimensioned, Units};
use crate::report::DEFERRAL;
use crate::report::json::harmless;
use crate::report::measures::measure;
use crate::rules::Verdict;

/// Name and version of the document's shape.
pub const OPTIONS_SCHEMA: &str = "sternknee-options/1";

/// Every option: those that came through ranked, with every finding; the refused with their screen and what refuses.
pub fn options_json(options: &Options) -> Value {
    let units = options.units;
    let refused = options.found.tried.iter().filter(|one| one.refused.is_some());
    let mut all = head(options);
    let nearly = options.near.iter().map(|near| {
        let mut one = tried(options, &near.tried);
        one["change"] = near.change.as_ref().map(|(words, _)| words.show(units)).into();
        one["then"] = near.change.as_ref().map(|(_, then)| tried(options, then)).into();
        one
    });
    all["nearly"] = nearly.collect();
    all["through"] = options.found.ranked(options.order).into_iter().map(|one| tried(options, one)).collect();
    all["refused"] = refused.map(|one| tried(options, one)).collect();
    all["take_into_job"] =
        options.entries.iter().map(|(entry, text)| value!({ "entry": entry, "text": text })).collect();
    all["deferral"] = DEFERRAL.into();
    harmless(all)
}

/// A boat of a fleet in one line: what was counted, and the best.
pub fn options_line(options: &Options) -> Value {
    let mut all = head(options);
    let by_screen = SCREENS.iter().enumerate().map(|(i, screen)| {
        let count = options.found.tried.iter().filter(|one| one.refused == Some(i)).count();
        (screen.name.to_owned(), Value::from(count))
    });
    all["refused_by"] = Value::Object(by_screen.collect());
    let best = options.through();
    all["best"] = best.iter().take(options.most).map(|like| brief(options, like.best)).collect();
    harmless(all)
}

fn head(options: &Options) -> Value {
    let found = options.found;
    let through = || found.tried.iter().filter(|one| one.refused.is_none());
    value!({
        "schema": OPTIONS_SCHEMA,
        "title": options.title(),
        "made_up": options.yard.job.made_up,
        "headline": options.headline(),
        "ranked_by": options.order.iter().map(|by| by.word()).collect::<Vec<_>>(),
        "options": found.of,
        "tried": found.tried.len(),
        "nothing_fails": through().filter(|one| one.is_decided()).count(),
        "nothing_fails_so_far": through().filter(|one| !one.is_decided()).count(),
        "fails_whatever_hangs": found.aside.iter().map(|one| said(one, options.units)).collect::<Vec<_>>(),
    })
}

fn brief(options: &Options, one: &Tried) -> Value {
    let mut all = hang_json(&one.hang);
    all["words"] = one.hang.words().show(Units::Us).into();
    all["decided"] = one.is_decided().into();
    all["warns"] = one.count(Verdict::Warn).into();
    all["hung_kg"] = one.hung.map(Dimensioned::si).into();
    all["trim_change_rad"] = one.trim.map(Dimensioned::si).into();
    all["tightest"] =
        options.found.tightest(one).map(|(said, room)| value!({ "rule": said.rule.id, "room": room })).into();
    all
}

fn tried(options: &Options, one: &Tried) -> Value {
    let mut all = brief(options, one);
    all["refused_by"] = one.refused.map(|screen| SCREENS[screen].name).into();
    all["findings"] = one.said.iter().map(|one| said(one, options.units)).collect();
    all
}

fn said(said: &Said, units: Units) -> Value {
    value!({
        "rule": said.rule.id,
        "verdict": said.verdict.word(),
        "summary": said.summary.show(units),
        "found": said.found.map(|found| measure(found, units)),
        "limit": said.limit.map(|limit| crate::report::measures::limit_of(limit, units)),
        "margin": said.margin().map(|margin| measure(margin, units)),
        "room": firmness(said),
        "remedy": said.remedy.as_ref().map(|remedy| remedy.show(units)),
    })
}
