//! Which of these: all options of a boat, told.

mod chapters;
mod json;

use super::chapter::{self, Chapter};
use super::page::{self, Stamp};
use super::text;
use super::{CLASS_NOT_ENGINE, DEFERRAL};
use crate::options::{By, Found, Hang, Near, Said, Tried, Yard};
use crate::quantity::{Dimensioned, Units, grouped};
use crate::rules::Verdict;

pub use json::{OPTIONS_SCHEMA, options_json, options_line};

/// What was found, and how it is to be told.
pub struct Options<'a> {
    /// The boat in the yard.
    pub yard: &'a Yard<'a>,
    /// What was found.
    pub found: &'a Found,
    /// What is nearest of the refused.
    pub near: &'a [Near],
    /// By what it is ranked, the first before the second.
    pub order: &'a [By],
    /// What the list's money is called.
    pub currency: &'a str,
    /// Units to speak.
    pub units: Units,
    /// How many of each sort are told in text.
    pub most: usize,
    /// How the first of all would stand in the job: entry and value.
    pub entries: &'a [(String, String)],
}

/// Options that differ in spacing and hole row alone, the best first.
struct Like<'a> {
    best: &'a Tried,
    others: Vec<&'a Tried>,
}

impl Options<'_> {
    fn title(&self) -> &str {
        self.yard.job.title.as_deref().unwrap_or("untitled job")
    }

    /// Those that came through, the best of each kind first.
    fn through(&self) -> Vec<Like<'_>> {
        let mut all: Vec<Like> = Vec::new();
        for one in self.found.ranked(self.order) {
            let alike =
                |like: &&mut Like| like.best.hang.is_like(&one.hang) && like.best.is_decided() == one.is_decided();
            match all.iter_mut().find(alike) {
                Some(like) => like.others.push(one),
                None => all.push(Like { best: one, others: Vec::new() }),
            }
        }
        all
    }

    /// What warns, in the same words, with everything that came through.
    fn common_warnings(&self) -> Vec<&Said> {
        let first = self.found.tried.iter().find(|one| one.refused.is_none());
        let same = |said: &&Said| said.verdict == Verdict::Warn && self.found.alike.contains(&said.rule.id);
        first.map_or_else(Vec::new, |first| first.said.iter().filter(same).collect())
    }

    /// What waits for a reading with everything that came through.
    fn common_waits(&self) -> Vec<&'static str> {
        let mut through = self.found.tried.iter().filter(|one| one.refused.is_none());
        let waits = |one: &Tried| -> Vec<&'static str> {
            one.said.iter().filter(|said| !said.missing.is_empty()).map(|said| said.rule.id).collect()
        };
        let Some(first) = through.next() else { return Vec::new() };
        let mut common = waits(first);
        for one in through {
            let own = waits(one);
            common.retain(|id| own.contains(id));
        }
        common
    }

    fn headline(&self) -> String {
        let through: Vec<&Tried> = self.found.tried.iter().filter(|one| one.refused.is_none()).collect();
        let decided = through.iter().filter(|one| one.is_decided()).count();
        let waiting = through.len() - decided;
        let all = figures(self.found.tried.len());
        let whole = if self.found.is_whole() {
            format!("{all} options tried.")
        } else {
            format!("Stopped early: {all} of {} options tried.", figures(self.found.of))
        };
        let but = if self.found.aside.is_empty() { "" } else { ", but for what fails with all of them" };
        let told = match (decided, waiting) {
            (0, 0) => "With each of them something fails".to_owned(),
            (some, 0) => format!("With {} of them nothing fails{but}", figures(some)),
            (0, some) => format!("With {} of them nothing fails so far{but}, and readings are missing", figures(some)),
            (some, more) => format!(
                "With {} of them nothing fails{but}; with {} more nothing fails so far, and readings are missing",
                figures(some),
                figures(more)
            ),
        };
        let waits = self.common_waits().len();
        let waits = if waits < MANY_WAIT {
            String::new()
        } else {
            format!(" {waits} checks wait for readings whichever hangs there: `sternknee tape` first, then this again.")
        };
        format!("{whole} {told}.{waits}")
    }

    fn order_words(&self) -> String {
        let priced = self.found.tried.iter().any(|one| one.hang.price.is_some());
        let words: Vec<&str> =
            self.order.iter().filter(|by| priced || **by != By::Price).map(|by| by.words()).collect();
        format!("Ranked by {}.", words.join(", then "))
    }

    fn chapters(&self) -> Vec<Chapter> {
        let through = self.through();
        let (decided, waiting): (Vec<&Like>, Vec<&Like>) = through.iter().partition(|like| like.best.is_decided());
        let mut all = vec![self.aside()];
        all.push(self.list("nothing fails", &decided));
        all.push(self.list("nothing fails so far, readings missing", &waiting));
        all.push(self.as_the_job_has_it());
        all.push(self.nearly());
        all.push(self.refused());
        all.push(self.whatever());
        all
    }
}

/// So many checks that wait with all of them leave little of an answer. Common practice, no source.
const MANY_WAIT: usize = 12;

/// A count with commas.
fn figures(count: usize) -> String {
    grouped(&count.to_string(), false)
}

/// As text.
pub fn options_text(options: &Options) -> String {
    let invented = if options.yard.job.made_up { " · an invented scenario" } else { "" };
    let mut out = text::wrap(options.title(), "");
    out.push_str(&format!("which engines would do{invented}\n{}\n\n", text::rule()));
    out.push_str(&text::bold(&text::wrap(&options.headline(), "")));
    out.push_str(&chapter::as_text(&options.chapters(), options.units));
    out.push('\n');
    out.push_str(&text::wrap(CLASS_NOT_ENGINE, ""));
    out.push_str(&text::wrap(DEFERRAL, ""));
    out
}

/// As a page.
pub fn options_page(options: &Options, stamp: &Stamp) -> String {
    page::of_chapters(
        options.title(),
        "which engines would do",
        options.yard.job.made_up,
        &options.headline(),
        &options.chapters(),
        options.units,
        stamp,
    )
}

/// A hang's figures as data.
fn hang_json(hang: &Hang) -> serde_json::Value {
    serde_json::json!({
        "class": hang.class,
        "count": hang.count,
        "shaft_m": hang.shaft.map(Dimensioned::si),
        "apart_m": (hang.count > 1).then(|| crate::quantity::inches(hang.apart).si()),
        "bracket": hang.bracket,
        "holes_up": hang.row,
        "power_w": hang.power.map(|power| power.si() * hang.count as f64),
        "price": hang.price,
    })
}
