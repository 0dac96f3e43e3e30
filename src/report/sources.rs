//! Sources by number: each stands once, in a list at the end.

use super::Report;
use crate::job::Sitting;
use crate::rules::{Judged, Rule, Verdict};

/// The sources of some findings, in the order in which they are first named.
pub(super) struct Sources(Vec<String>);

impl Sources {
    fn of<'r>(judged: impl IntoIterator<Item = &'r Judged>) -> Sources {
        let mut all: Vec<String> = Vec::new();
        for source in judged.into_iter().flat_map(|judged| judged.rule.sources()) {
            let source = capital(&source);
            if !all.contains(&source) {
                all.push(source);
            }
        }
        Sources(all)
    }

    /// Of every finding of a report that applies; of a study those that it asks for.
    pub fn of_report(report: &Report) -> Sources {
        let study = report.case.rig.job.sitting == Sitting::Study;
        Sources::of(report.judged.iter().filter(|judged| match judged.finding.verdict {
            Verdict::NotApplicable => false,
            Verdict::Unmeasured => !study || judged.finding.is_answer(),
            _ => true,
        }))
    }

    /// The numbers of a rule's sources, from 1.
    pub fn numbers(&self, rule: &Rule) -> Vec<usize> {
        let sources = rule.sources();
        let place = |source: &String| self.0.iter().position(|known| *known == capital(source));
        sources.iter().filter_map(place).map(|at| at + 1).collect()
    }

    /// Them all, in order.
    pub fn list(&self) -> &[String] {
        &self.0
    }
}

/// A source begins with a capital wherever it stood.
fn capital(source: &str) -> String {
    crate::quantity::capitalised(source)
}
