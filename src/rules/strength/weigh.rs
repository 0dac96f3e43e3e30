//! How a factor of the transom becomes a verdict: by itself, by what was not told, and by what hung there before.

use super::{BREAKS, factor, limit, told};
use crate::case::Case;
use crate::case::strength::{Open, Strength, Way};
use crate::quantity::{Text, say};
use crate::rig::{Missing, Ran};
use crate::rules::{Finding, Verdict};

/// How much more than the old engines' load a transom that bore those soundly for years is trusted with. Common practice,
/// no source: within what one engine of a class differs from the next.
const PROVEN: f64 = 1.1;

/// A factor of the transom with what is known of it.
pub(super) struct Weighed {
    /// With what was not told at its least, and at its best.
    pub range: [f64; 2],
    /// The least that is asked.
    pub required: f64,
    /// With the old engines, all else alike.
    pub old: Option<f64>,
    /// Whether the old engines ran soundly long enough to prove it; `None` where nobody said.
    pub ran: Option<bool>,
}

impl Weighed {
    pub(super) fn of(case: &Case, strength: &Strength, way: Way, required: f64) -> Self {
        let old = strength.before.as_ref().ok().map(|laden| laden.bent.factor(way));
        let ran = case.rig.ran.as_ref().and_then(Ran::soundly);
        let least = strength.after.bent.factor(way);
        // What is enough at its least is not looked at any further.
        let range = if told(least) >= required { [least; 2] } else { strength.range(way) };
        Weighed { range, required, old, ran }
    }

    /// Demand new over old.
    fn more(&self) -> Option<f64> {
        self.old.map(|old| old / self.range[0].max(f64::MIN_POSITIVE))
    }

    /// Whether the old engines have proved it for the new ones.
    fn is_proven(&self) -> bool {
        self.ran == Some(true) && self.more().is_some_and(|more| more <= PROVEN)
    }

    /// Whether the reckoning says that the old engines broke what they did not break.
    fn is_refuted(&self) -> bool {
        self.ran == Some(true) && self.old.is_some_and(|old| old * self.range[1] < BREAKS * self.range[0])
    }

    /// The verdict, by the figures as they are told.
    pub(super) fn verdict(&self) -> Verdict {
        let [least, best] = self.range.map(told);
        if least >= self.required || self.is_proven() {
            Verdict::Pass
        } else if best < BREAKS && !self.is_refuted() {
            Verdict::Fail
        } else if best < self.required {
            Verdict::Warn
        } else {
            Verdict::Unmeasured
        }
    }

    /// The finding: what is so many times as strong as its load, and what stands beside that.
    pub(super) fn finding(&self, case: &Case, strength: &Strength, way: Way, what: Text) -> Finding {
        let verdict = self.verdict();
        let summary = what.then(self.proof()).then(self.between()).then(self.beside());
        let mut finding = Finding::new(verdict, summary).against(factor(self.range[0]), limit(self.required));
        if verdict == Verdict::Unmeasured {
            let missing: Vec<Missing> = strength.decides(case.rig, way).into_iter().map(Open::missing).collect();
            if let Some(first) = missing.first() {
                finding.summary = finding.summary.then(say!(" What decides most: {}.", first.name()));
            }
            finding.missing = missing;
        }
        finding
    }

    /// Why it passes below the limit, in a sentence, where it does.
    pub(super) fn proof(&self) -> Text {
        match self.more() {
            Some(more) if self.is_proven() && told(self.range[0]) < self.required => say!(
                " The new engines load it {} times as hard as the old ones did, and it bore those for years: that is the better test.",
                factor(more)
            ),
            _ => Text::default(),
        }
    }

    /// Between what it lies by what was not told, in a sentence, where that matters.
    pub(super) fn between(&self) -> Text {
        let [least, best] = self.range;
        if told(best) > told(least) && self.verdict() != Verdict::Pass {
            return say!(
                " By what was not told of the transom it lies between {} and {}.",
                factor(least),
                factor(best)
            );
        }
        Text::default()
    }

    /// What hung there before, in a sentence.
    fn beside(&self) -> Text {
        let (Some(old), Some(more)) = (self.old, self.more()) else { return Text::default() };
        if self.is_refuted() {
            return say!(
                " The old engines would have broken it by this reckoning ({}), and did not: the reckoning is wrong, or a reading is.",
                factor(old)
            );
        }
        if more <= 1.0 {
            return say!(" With what hung there before it was {}.", factor(old));
        }
        if more.is_finite() && more < 1e3 {
            return say!(
                " With what hung there before it was {}: the new engines load it {} times as hard.",
                factor(old),
                factor(more)
            );
        }
        Text::from(" What hung there before hardly worked on it.")
    }
}
