//! Reports: text, JSON, pages and drawings from the same findings.

mod causes;
mod chapter;
mod compare;
mod doubt;
pub mod drawings;
mod json;
mod legend;
mod mark;
mod measures;
mod needed;
mod options;
mod page;
mod plain;
mod questions;
mod rank;
mod readings;
mod rigging;
mod running;
mod sheet;
mod sources;
mod swing;
mod text;

use crate::case::Case;
use crate::catalog::Tables;
use crate::job::Sitting;
use crate::quantity::{Text, Units};
use crate::rig::Missing;
use crate::rules::{Judged, Verdict, cautions};

pub use compare::{COMPARE_SCHEMA, Comparison, compare_json, compare_page, compare_text};
pub use json::{SCHEMA, WORK_SCHEMA, findings, harmless, json, work_json};
pub use legend::{meanings, unnamed, unsourced};
pub use needed::{NEEDED_SCHEMA, WhatIsNeeded, needed_json, needed_text};
pub use options::{OPTIONS_SCHEMA, Options, options_json, options_line, options_page, options_text};
pub use page::{
    Embedded, Stamp, blank_sheet, drawing_files, figures, measuring_sheet, page, sketch, trial_sheet, work_page,
};
#[cfg(feature = "terminal")]
pub(crate) use page::{GENERATOR, marks, style};
pub use questions::as_json as questions;
pub use sheet::{Waiting, measuring_list, waiting};
pub use text::{brief, catalog_entry, catalog_list, explain_rule, rule_list, text, text_of_all, work_text};

/// What a report is made from.
pub struct Report<'a> {
    /// The case that was judged.
    pub case: &'a Case<'a>,
    /// What the rules said of it.
    pub judged: &'a [Judged],
    /// Units to speak.
    pub units: Units,
    /// Whether the working is shown.
    pub explain: bool,
}

/// To whom and to what every report defers.
pub const DEFERRAL: &str = "This is advice from the readings given, not an approval. A licensed marine technician decides what goes on this boat, by the builder's and the engine maker's instructions, the standards in force where she is used (in the US 33 CFR 183 and the ABYC standards, elsewhere the ISO small craft standards) and the local codes.";

/// Said where nothing was said to be invented but a class of the catalog stood in for an engine.
pub const CLASS_NOT_ENGINE: &str = "Classes of the catalog carry plausible values, not a maker's: before anything is ordered or drilled, the mounting sheet of the very engine takes the place of its class.";

impl Report<'_> {
    /// How many findings have this verdict.
    pub fn count(&self, verdict: Verdict) -> usize {
        self.with(verdict).count()
    }

    /// The findings of this verdict.
    pub fn with(&self, verdict: Verdict) -> impl Iterator<Item = &Judged> {
        self.judged.iter().filter(move |judged| judged.finding.verdict == verdict)
    }

    /// The gravest verdict that decides the answer.
    pub fn overall(&self) -> Verdict {
        let study = self.case.rig.job.sitting == Sitting::Study;
        [Verdict::Fail, Verdict::Unmeasured, Verdict::Warn]
            .into_iter()
            .find(|verdict| {
                let asked = *verdict == Verdict::Unmeasured && !self.case.rig.suspects.is_empty();
                asked || (self.count(*verdict) > 0 && !(study && *verdict == Verdict::Unmeasured))
            })
            .unwrap_or(Verdict::Pass)
    }

    /// The answer in a few words.
    pub fn answer(&self) -> &'static str {
        match (self.case.rig.job.sitting, self.overall()) {
            (Sitting::Study, Verdict::Fail) => "Worked out: something fails.",
            (Sitting::Study, Verdict::Warn) => "Worked out: something to mind.",
            (Sitting::Study, Verdict::Unmeasured) => "Asked back.",
            (Sitting::Study, _) => "Worked out.",
            (Sitting::AsFitted, Verdict::Fail) => "No, not as fitted.",
            (_, Verdict::Fail) => "No, not as written.",
            (_, Verdict::Unmeasured) => "Not decided yet.",
            (_, Verdict::Warn) => "Nothing forbids it; mind what follows.",
            _ => "Nothing found here speaks against it.",
        }
    }

    /// The answer in one line.
    pub fn headline(&self) -> String {
        match self.case.rig.questions().count() {
            0 => self.headline_of_findings(),
            1 => format!("{} First comes a question back: a reading hardly can be right.", self.headline_of_findings()),
            n => {
                format!("{} First come {n} questions back: readings hardly can be right.", self.headline_of_findings())
            }
        }
    }

    fn headline_of_findings(&self) -> String {
        let (fails, warns, unmeasured) =
            (self.count(Verdict::Fail), self.count(Verdict::Warn), self.count(Verdict::Unmeasured));
        if self.case.rig.job.sitting == Sitting::Study {
            let all = self.answers().count() + self.case.studies().len() + self.count(Verdict::Pass);
            let full = if self.is_answered_in_full() { " in full" } else { "" };
            let of_it = match (fails, warns) {
                (0, 0) => "nothing fails and nothing warns of what was judged".to_owned(),
                (0, some) => counted(some, "check warns", "checks warn"),
                (some, 0) => counted(some, "check fails", "checks fail"),
                (some, more) => {
                    format!("{}, {}", counted(some, "check fails", "checks fail"), counted(more, "warns", "warn"))
                }
            };
            return format!("Study: {} answered{full}, {of_it}.", all + fails + warns);
        }
        match (fails, warns, unmeasured) {
            (0, 0, 0) => "Nothing fails and nothing warns.".to_owned(),
            (0, 0, n) => format!(
                "Undecided: nothing fails or warns so far, but {} for readings.",
                counted(n, "check waits", "checks wait")
            ),
            (0, w, 0) => format!("Nothing fails; {}.", counted(w, "check warns", "checks warn")),
            (0, w, n) => format!(
                "Undecided: nothing fails so far, {}, and {}.",
                counted(w, "check warns", "checks warn"),
                counted(n, "waits for readings", "wait for readings")
            ),
            (f, w, n) => {
                let lead = match self.case.rig.job.sitting {
                    Sitting::AsFitted => "Not right as fitted",
                    _ => "Does not fit as written",
                };
                let mut line = format!("{lead}: {}", counted(f, "check fails", "checks fail"));
                if w > 0 {
                    line.push_str(&format!(", {}", counted(w, "warns", "warn")));
                }
                if n > 0 {
                    line.push_str(&format!(", {}", counted(n, "waits for readings", "wait for readings")));
                }
                line + "."
            }
        }
    }

    /// Whether all that a job puts outright is answered as far as such questions can be.
    fn is_answered_in_full(&self) -> bool {
        let studies = self.case.studies();
        !studies.is_empty() && studies.iter().all(|answer| answer.in_full)
    }

    /// Findings of a study that answer its question though there was nothing to judge.
    pub fn answers(&self) -> impl Iterator<Item = &Judged> {
        self.with(Verdict::Unmeasured).filter(|judged| judged.finding.is_answer())
    }

    /// What was taken for granted.
    pub fn assumed(&self) -> Vec<Text> {
        let mut assumed = self.case.rig.assumed.clone();
        if let Ok(float) = self.case.float() {
            assumed.extend(float.built.assumed.iter().chain(&float.assumed).cloned());
        }
        assumed.extend(self.case.swing().assumed.clone());
        if let Ok(strength) = self.case.strength() {
            assumed.extend(strength.assumed.iter().cloned());
        }
        if let Some(runs) = self.case.running() {
            assumed.extend(runs.assumed());
        }
        if let Some(trials) = self.case.trial() {
            assumed.extend(trials.assumed());
        }
        let from_catalog = [&self.case.rig.before, &self.case.rig.after]
            .into_iter()
            .flat_map(|outfit| outfit.engines())
            .any(|(_, engine)| {
                engine.power.reading().is_some_and(|power| power.basis == crate::quantity::Basis::Catalog)
            });
        if from_catalog {
            assumed.push(Text::from(CLASS_NOT_ENGINE));
        }
        assumed
    }

    /// Cautions that this job calls for.
    pub fn cautions(&self) -> Vec<&'static str> {
        cautions(self.case.rig, self.judged)
    }

    /// Every missing reading once.
    pub fn missing(&self) -> Vec<&Missing> {
        let mut all: Vec<&Missing> = Vec::new();
        for judged in self.judged {
            for missing in &judged.finding.missing {
                if !all.contains(&missing) {
                    all.push(missing);
                }
            }
        }
        all
    }
}

/// Citation and edition of each table of regulation that stands in the catalog.
fn citations(tables: &Tables) -> Vec<(&str, &str)> {
    let power = tables.power_capacity.as_ref();
    let weights = tables.engine_weights.as_ref();
    let power = power.map(|table| (table.citation.as_str(), table.edition.as_str()));
    let weights = weights.map(|table| (table.citation.as_str(), table.edition.as_str()));
    power.into_iter().chain(weights).collect()
}

/// `1 check fails`, `3 checks fail`.
fn counted(count: usize, one: &str, many: &str) -> String {
    format!("{count} {}", if count == 1 { one } else { many })
}
