//! What stands under each head of the answer.

use super::{Like, Options, figures};
use crate::options::{Near, SCREENS, Said, Tried, percent};
use crate::quantity::{Measure, Text, grouped, inches, say};
use crate::report::chapter::Chapter;
use crate::report::{counted, plain};
use crate::rules::{Limit, Rule, Verdict};
use crate::working::Table;

impl Options<'_> {
    pub(super) fn aside(&self) -> Chapter {
        let mut chapter = Chapter::of("fails with all that was tried");
        chapter.about = Some(Text::from(
            "Put this right first: nothing that was tried passes before. The rest of this answer leaves it aside.",
        ));
        chapter.entries = self.found.aside.iter().map(finding).collect();
        chapter
    }

    pub(super) fn list(&self, head: &str, likes: &[&Like]) -> Chapter {
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
            lines.push(say!("warns: {}", plain::names(&warns)));
        }
        let always = self.common_waits();
        let waits: Vec<&str> = best
            .said
            .iter()
            .filter(|said| !said.missing.is_empty() && !always.contains(&said.rule.id))
            .map(|said| said.rule.id)
            .collect();
        if !waits.is_empty() {
            lines.push(say!("waits for a reading: {}", plain::names(&waits)));
        }
        if let Some(text) = others(best, &like.others) {
            lines.push(text);
        }
        lines
    }

    pub(super) fn nearly(&self) -> Chapter {
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
            lines.push(say!("{} {}: ", said.verdict.word(), said.rule.full_name()).then(said.summary.clone()));
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
    pub(super) fn refused(&self) -> Chapter {
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
            checks.sort_by_key(|check| std::cmp::Reverse(check.1));
            for (rule, count) in checks {
                rows.push(vec![
                    Text::from(screen.name),
                    Text::from(rule.full_name().as_str()),
                    Text::from(figures(count).as_str()),
                ]);
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

    pub(super) fn whatever(&self) -> Chapter {
        let mut chapter = Chapter::of("the same whichever hangs there");
        chapter.entries = self.common_warnings().into_iter().map(finding).collect();
        let waits = self.common_waits();
        if !waits.is_empty() {
            chapter.entries.push(vec![say!(
                "{} for readings with all of them: {}. `sternknee tape` prints how to take each.",
                counted(waits.len(), "check waits", "checks wait"),
                plain::names(&waits)
            )]);
        }
        chapter
    }

    pub(super) fn as_the_job_has_it(&self) -> Chapter {
        let mut chapter = Chapter::of("the first of them, as a job has it");
        chapter.about = Some(Text::from("In place of the job's own; then `sternknee check` judges it in full."));
        let lines = self.entries.iter().map(|(entry, value)| format!("{entry}: {value},"));
        chapter.verbatim = lines.flat_map(|entry| entry.lines().map(str::to_owned).collect::<Vec<_>>()).collect();
        chapter
    }
}

/// A finding in two lines.
fn finding(said: &Said) -> Vec<Text> {
    vec![say!("{} {}", said.verdict.word(), said.rule.full_name()), said.summary.clone()]
}

fn room_words(said: &Said, room: f64) -> Text {
    let part = percent(room.abs());
    let figures = match (said.found, said.limit) {
        (Some(found), Some(limit)) => say!(" ({}, limit ", found).then(limit_words(&limit)).then(Text::from(")")),
        _ => Text::default(),
    };
    let lead = if room < 0.0 { "beyond its limit" } else { "least room" };
    say!("{}: {} % in {}", lead, format!("{part:.0}"), plain::name(said.rule)).then(figures)
}

fn limit_words(limit: &Limit) -> Text {
    match limit {
        Limit::AtMost(most) => say!("at most {}", *most),
        Limit::AtLeast(least) => say!("at least {}", *least),
        Limit::Within(least, most) => say!("{} to {}", *least, *most),
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
        let distances = distances.iter().map(|apart| Measure::tape(inches(*apart)).into());
        parts.push(Text::join(distances, ", ").then(Text::from(" apart")));
    }
    (!parts.is_empty()).then(|| Text::from("does too: ").then(Text::join(parts, "; ")))
}
