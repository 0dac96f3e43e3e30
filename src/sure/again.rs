//! The same boat judged again, with readings a little off.

use std::sync::Arc;

use super::worth::Loosely;
use crate::case::strength::Store;
use crate::case::{Begun, Case};
use crate::catalog::Catalog;
use crate::job::Job;
use crate::quantity::Kind;
use crate::reading::Part;
use crate::rig::{self, Files, Rig};
use crate::rules::{Finding, Judged, Verdict};

/// A rig, and what it takes to resolve it again.
pub(super) struct Again<'a> {
    pub rig: &'a Rig,
    pub catalog: &'a Catalog,
    pub files: &'a Files,
    pub readings: &'a [Loosely],
    /// Panels that are the same are factored once.
    pub store: Arc<Store>,
}

/// What a rule says, as far as it can be compared.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Outcome {
    pub verdict: Verdict,
    /// What was found, and its kind.
    pub found: Option<(f64, Kind)>,
    /// Room to the limit.
    pub room: Option<f64>,
}

impl Outcome {
    pub fn of(finding: &Finding) -> Self {
        Outcome {
            verdict: finding.verdict,
            found: finding.found.map(|found| (found.si, found.kind)),
            room: finding.margin().map(|margin| margin.si).filter(|room| room.is_finite()),
        }
    }

    /// What was found, where it can be set against what another found.
    pub fn found_beside(&self, other: &Outcome) -> Option<f64> {
        let ((found, kind), (_, others)) = (self.found?, other.found?);
        (kind == others && found.is_finite()).then_some(found)
    }

    /// Whether it says yes or no.
    pub fn is_judged(&self) -> bool {
        matches!(self.verdict, Verdict::Fail | Verdict::Warn | Verdict::Pass)
    }
}

impl Again<'_> {
    /// What these rules say where readings are off: each by its number here, and by so many of its tolerance. Nothing where the
    /// job cannot be resolved so.
    pub fn judge(&self, off: &[(usize, f64)], judged: &[Judged], rules: &[usize]) -> Option<Vec<Outcome>> {
        let rig = rig::resolve_again(&self.shifted(off), self.catalog, self.files).ok()?;
        let case = Case::beside(&rig, Begun::default(), self.store.clone());
        Some(rules.iter().map(|rule| Outcome::of(&(judged[*rule].rule.judge)(&case))).collect())
    }

    fn shifted(&self, off: &[(usize, f64)]) -> Job {
        let mut job = Job::clone(&self.rig.job);
        let mut to: Vec<(usize, f64)> = off
            .iter()
            .map(|(reading, by)| (self.readings[*reading].number, self.readings[*reading].off_by(*by)))
            .collect();
        to.sort_by_key(|(number, _)| *number);
        let (mut numbers, mut to) = (0.., to.into_iter().peekable());
        job.change(&mut |loose| {
            let number = numbers.next();
            if let Some((_, si)) = to.next_if(|(at, _)| Some(*at) == number) {
                loose.si = si;
            }
        });
        job
    }
}
