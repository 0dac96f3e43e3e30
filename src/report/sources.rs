//! Sources by number: each stands once, in a list at the end.

use super::Report;
use crate::job::Sitting;
use crate::quantity::capitalised;
use crate::rules::{Judged, Rule, Verdict};

/// The sources of some findings, in the order in which they are first named.
pub(super) struct Sources {
    all: Vec<String>,
    /// How many of them a study has asked for: they come first.
    asked: usize,
}

impl Sources {
    /// Of every finding of a report that applies.
    pub(super) fn of_report(report: &Report) -> Sources {
        let study = report.case.rig.job.sitting == Sitting::Study;
        let applies = report.judged.iter().filter(|judged| judged.finding.verdict != Verdict::NotApplicable);
        let unasked =
            |judged: &&Judged| study && judged.finding.verdict == Verdict::Unmeasured && !judged.finding.is_answer();
        let (unasked, asked): (Vec<&Judged>, Vec<&Judged>) = applies.partition(unasked);
        let mut all: Vec<String> = Vec::new();
        let add = |all: &mut Vec<String>, judged: &Judged| {
            for source in judged.rule.sources() {
                let source = capitalised(&source);
                if !all.contains(&source) {
                    all.push(source);
                }
            }
        };
        asked.into_iter().for_each(|judged| add(&mut all, judged));
        let asked = all.len();
        unasked.into_iter().for_each(|judged| add(&mut all, judged));
        Sources { all, asked }
    }

    /// The numbers of a rule's sources, from 1.
    pub(super) fn numbers(&self, rule: &Rule) -> Vec<usize> {
        let sources = rule.sources();
        let place = |source: &String| self.all.iter().position(|known| *known == capitalised(source));
        sources.iter().filter_map(place).map(|at| at + 1).collect()
    }

    /// Them all, in order, and whether something that was asked names it.
    pub(super) fn list(&self) -> impl Iterator<Item = (&str, bool)> {
        self.all.iter().enumerate().map(|(i, source)| (source.as_str(), i < self.asked))
    }
}
