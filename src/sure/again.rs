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
    rig: &'a Rig,
    catalog: &'a Catalog,
    files: &'a Files,
    pub readings: &'a [Loosely],
    /// Panels that are the same are factored once.
    store: Arc<Store>,
    /// The same, only to see whether anything moves at all.
    crude: Arc<Store>,
}

/// Meshes of a transom that is only set beside the same a little off are so many times as fine as those of what is told: a
/// move of some percent is then found to a few percent of itself.
const COARSE: f64 = 0.4;
/// The same where nothing is asked but whether anything moves.
const CRUDE: f64 = 0.2;

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
    pub(super) fn of(finding: &Finding) -> Self {
        Outcome {
            verdict: finding.verdict,
            found: finding.found.map(|found| (found.si, found.kind)),
            room: finding.margin().map(|margin| margin.si).filter(|room| room.is_finite()),
        }
    }

    /// What was found, where it can be set against what another found.
    pub(super) fn found_beside(&self, other: &Outcome) -> Option<f64> {
        let ((found, kind), (_, others)) = (self.found?, other.found?);
        (kind == others && found.is_finite()).then_some(found)
    }

    /// Whether it says yes or no.
    pub(super) fn is_judged(&self) -> bool {
        matches!(self.verdict, Verdict::Fail | Verdict::Warn | Verdict::Pass)
    }
}

impl<'a> Again<'a> {
    /// The rig with these readings.
    pub(super) fn new(rig: &'a Rig, catalog: &'a Catalog, files: &'a Files, readings: &'a [Loosely]) -> Self {
        let [store, crude] = [COARSE, CRUDE].map(|times| Arc::new(Store::of_meshes(times)));
        Again { rig, catalog, files, readings, store, crude }
    }

    /// What these rules say where readings are off: each by its number here, and by so many of its tolerance. Nothing where the
    /// job cannot be resolved so.
    pub(super) fn judge(&self, off: &[(usize, f64)], judged: &[Judged], rules: &[usize]) -> Option<Vec<Outcome>> {
        self.judge_from(&self.store, off, judged, rules)
    }

    /// The same, of no other use than to be set beside itself.
    pub(super) fn judge_crudely(
        &self,
        off: &[(usize, f64)],
        judged: &[Judged],
        rules: &[usize],
    ) -> Option<Vec<Outcome>> {
        self.judge_from(&self.crude, off, judged, rules)
    }

    fn judge_from(
        &self,
        store: &Arc<Store>,
        off: &[(usize, f64)],
        judged: &[Judged],
        rules: &[usize],
    ) -> Option<Vec<Outcome>> {
        let rig = rig::resolve_again(&self.shifted(off), self.catalog, self.files).ok()?;
        let case = Case::beside(&rig, Begun::default(), store.clone());
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
