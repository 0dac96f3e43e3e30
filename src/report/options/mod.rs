//! Which of these: all options of a boat, told.

mod json;

use super::chapter::{self, Chapter};
use super::page::{self, Stamp};
use super::text;
use super::{CLASS_NOT_ENGINE, DEFERRAL, counted};
use crate::options::{By, Found, Hang, Near, SCREENS, Said, Tried, Yard, percent};
use crate::quantity::{Dimensioned, Measure, Text, Units, grouped, say};
use crate::rules::{Rule, Verdict};
use crate::working::Table;

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
            format!("{all} options tried")
        } else {
            format!("Stopped early: {all} of {} options tried", figures(self.found.of))
        };
        let but = if self.found.aside.is_empty() { "" } else { ", but for what fails with all of them" };
        let told = match (decided, waiting) {
            (0, 0) => "none of them passes as she is".to_owned(),
            (some, 0) => format!("nothing fails of {}{but}", figures(some)),
            (0, some) => format!("nothing fails so far of {}{but}; all wait for readings", figures(some)),
            (some, more) => format!(
                "nothing fails of {}, and so far of {} that wait for readings{but}",
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
        format!("{whole}; {told}.{waits}")
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
        all.push(self.into_the_job());
        all.push(self.nearly());
        all.push(self.refused());
        all.push(self.whatever());
        all
    }

    fn aside(&self) -> Chapter {
        let mut chapter = Chapter::of("fails with all that was tried");
        chapter.about = Some(Text::from(
            "Put this right first: nothing that was tried passes before. The rest of this answer leaves it aside.",
        ));
        chapter.entries = self.found.aside.iter().map(finding).collect();
        chapter
    }

    fn list(&self, head: &str, likes: &[&Like]) -> Chapter {
        let mut chapter = Chapter::of(head);
        let common: Vec<&str> = self.common_warnings().iter().map(|said| said.rule.id).collect();
        let told = likes.iter().take(self.most).enumerate();
        chapter.entries = told.map(|(i, like)| self.entry(i, like, &common)).collect();
        let left: usize = likes.len().saturating_sub(self.most);
        if left > 0 {
            chapter.entries.push(vec![say!("… and {} more; --show tells more of them.", left)]);
        }
        chapter.about = Some(Text::from(self.order_words().as_str()));
        chapter
    }

    fn entry(&self, i: usize, like: &Like, common: &[&str]) -> Vec<Text> {
        let best = like.best;
        let mut lines = vec![say!("{}. ", i + 1).then(best.hang.words())];
        let mut figures: Vec<Text> = Vec::new();
        if let Some(power) = best.hang.power {
            figures.push(Measure::of(power * best.hang.count as f64).into());
        }
        if let Some(hung) = best.hung {
            figures.push(say!("{} on the transom", Measure::of(hung)));
        }
        if let Some(trim) = best.trim {
            figures.push(say!("trim changes by {}", Measure::of(trim)));
        }
        if let Some(price) = best.hang.price {
            figures.push(say!("{} {}", grouped(&format!("{price:.0}"), false), self.currency));
        }
        lines.push(Text::join(figures, " · "));
        if let Some((said, room)) = self.found.tightest(best) {
            lines.push(room_words(said, room));
        }
        let warns: Vec<&str> = best
            .said
            .iter()
            .filter(|said| said.verdict == Verdict::Warn && !common.contains(&said.rule.id))
            .map(|said| said.rule.id)
            .collect();
        if !warns.is_empty() {
            lines.push(say!("warns: {}", warns.join(", ")));
        }
        let always = self.common_waits();
        let waits: Vec<&str> = best
            .said
            .iter()
            .filter(|said| !said.missing.is_empty() && !always.contains(&said.rule.id))
            .map(|said| said.rule.id)
            .collect();
        if !waits.is_empty() {
            lines.push(say!("waits for a reading: {}", waits.join(", ")));
        }
        if let Some(text) = others(best, &like.others) {
            lines.push(text);
        }
        lines
    }

    fn nearly(&self) -> Chapter {
        let mut chapter = Chapter::of("nearly");
        chapter.about = Some(Text::from(
            "One check refuses each; single changes were tried by judging them. Whoever makes one takes the reading again.",
        ));
        chapter.entries = self.near.iter().map(|near| self.near(near)).collect();
        chapter
    }

    fn near(&self, near: &Near) -> Vec<Text> {
        let mut lines = vec![near.tried.hang.words()];
        for said in &near.tried.said {
            lines.push(say!("{} {}: ", said.verdict.word(), said.rule.id).then(said.summary.clone()));
        }
        match &near.change {
            Some((words, then)) => {
                let warns = then.count(Verdict::Warn);
                let waits = then.said.iter().filter(|said| !said.missing.is_empty()).count();
                let mut line = Text::from("nothing fails ").then(words.clone());
                if warns > 0 {
                    line = line.then(say!("; {}", counted(warns, "check warns", "checks warn")));
                }
                if waits > 0 {
                    line = line.then(say!("; {}", counted(waits, "waits for a reading", "wait for readings")));
                }
                lines.push(line.then(Text::from(".")));
            }
            None => {
                lines.push(Text::from("No single change that was tried lets it pass."));
                lines.extend(near.tried.said.iter().filter_map(|said| said.remedy.clone()));
            }
        }
        lines
    }

    /// How many were refused by which check of which screen.
    fn refused(&self) -> Chapter {
        let mut chapter = Chapter::of("refused");
        let mut rows = Vec::new();
        for (i, screen) in SCREENS.iter().enumerate() {
            let there: Vec<&Tried> = self.found.tried.iter().filter(|one| one.refused == Some(i)).collect();
            let mut checks: Vec<(&'static Rule, usize)> = Vec::new();
            for said in there.iter().flat_map(|one| &one.said) {
                match checks.iter_mut().find(|(rule, _)| rule.id == said.rule.id) {
                    Some((_, count)) => *count += 1,
                    None => checks.push((said.rule, 1)),
                }
            }
            checks.sort_by(|a, b| b.1.cmp(&a.1));
            for (rule, count) in checks {
                rows.push(vec![Text::from(screen.name), Text::from(rule.id), Text::from(figures(count).as_str())]);
            }
        }
        if !rows.is_empty() {
            chapter.tables.push(Table::new(
                "at the first screen that refused them",
                &["screen", "check", "options"],
                rows,
            ));
        }
        chapter
    }

    fn whatever(&self) -> Chapter {
        let mut chapter = Chapter::of("the same whichever hangs there");
        chapter.entries = self.common_warnings().into_iter().map(finding).collect();
        let waits = self.common_waits();
        if !waits.is_empty() {
            chapter.entries.push(vec![say!(
                "{} for readings with all of them: {}. `sternknee tape` prints how to take each.",
                counted(waits.len(), "check waits", "checks wait"),
                waits.join(", ")
            )]);
        }
        chapter
    }

    fn into_the_job(&self) -> Chapter {
        let mut chapter = Chapter::of("the first of them, as a job has it");
        chapter.about = Some(Text::from("In place of the job's own; then `sternknee check` judges it in full."));
        let lines = self.entries.iter().map(|(entry, value)| format!("{entry}: {value},"));
        chapter.verbatim = lines.flat_map(|entry| entry.lines().map(str::to_owned).collect::<Vec<_>>()).collect();
        chapter
    }
}

/// So many checks that wait with all of them leave little of an answer. Common practice, no source.
const MANY_WAIT: usize = 12;

/// A count with commas.
fn figures(count: usize) -> String {
    grouped(&count.to_string(), false)
}

/// A finding in two lines.
fn finding(said: &Said) -> Vec<Text> {
    vec![say!("{} {}", said.verdict.word(), said.rule.id), said.summary.clone()]
}

fn room_words(said: &Said, room: f64) -> Text {
    let part = percent(room.abs());
    let figures = match (said.found, said.limit) {
        (Some(found), Some(limit)) => say!(" ({}, limit ", found).then(limit_words(&limit)).then(Text::from(")")),
        _ => Text::default(),
    };
    let lead = if room < 0.0 { "beyond its limit" } else { "least room" };
    say!("{}: {} % in {}", lead, format!("{part:.0}"), said.rule.id).then(figures)
}

fn limit_words(limit: &crate::rules::Limit) -> Text {
    match limit {
        crate::rules::Limit::AtMost(most) => say!("at most {}", *most),
        crate::rules::Limit::AtLeast(least) => say!("at least {}", *least),
        crate::rules::Limit::Within(least, most) => say!("{} to {}", *least, *most),
    }
}

/// In which other rows and at which other distances it would do as well as far as failing goes.
fn others(best: &Tried, others: &[&Tried]) -> Option<Text> {
    let same_distance = |one: &&&Tried| one.hang.apart == best.hang.apart;
    let mut rows: Vec<u8> = others.iter().filter(same_distance).filter_map(|one| one.hang.row).collect();
    rows.sort_unstable();
    let mut distances: Vec<f64> =
        others.iter().map(|one| one.hang.apart).filter(|apart| *apart != best.hang.apart).collect();
    distances.sort_by(f64::total_cmp);
    distances.dedup();
    let mut parts = Vec::new();
    if !rows.is_empty() {
        let unit = if rows == [1] { "hole" } else { "holes" };
        let rows: Vec<String> = rows.iter().map(u8::to_string).collect();
        parts.push(say!("{} {} up", rows.join(" and "), unit));
    }
    if !distances.is_empty() {
        let distances = distances.iter().map(|apart| Measure::tape(crate::quantity::inches(*apart)).into());
        parts.push(Text::join(distances, ", ").then(Text::from(" apart")));
    }
    (!parts.is_empty()).then(|| Text::from("does too: ").then(Text::join(parts, "; ")))
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
