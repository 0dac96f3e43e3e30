//! By what options are ranked.

use std::cmp::Ordering;

use super::{Said, Tried};
use crate::rules::{Family, Limit, Verdict};

/// What one option is better in than another.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum By {
    /// Fewer checks warn.
    Warnings,
    /// More room where there is least.
    Firmness,
    /// Her trim changes less.
    Trim,
    /// Less hangs on the transom.
    Weight,
    /// More power.
    Power,
    /// It costs less.
    Price,
}

impl By {
    /// All of them.
    pub const ALL: [By; 6] = [By::Warnings, By::Firmness, By::Trim, By::Weight, By::Power, By::Price];
    /// What counts where nobody says otherwise, the first before the second.
    pub const USUAL: [By; 5] = [By::Warnings, By::Firmness, By::Trim, By::Weight, By::Price];

    /// Its word.
    pub fn word(self) -> &'static str {
        match self {
            By::Warnings => "warnings",
            By::Firmness => "firmness",
            By::Trim => "trim",
            By::Weight => "weight",
            By::Power => "power",
            By::Price => "price",
        }
    }

    /// What comes first by it.
    pub fn words(self) -> &'static str {
        match self {
            By::Warnings => "fewest warnings",
            By::Firmness => "most room where there is least",
            By::Trim => "least change of trim",
            By::Weight => "least weight aft",
            By::Power => "most power",
            By::Price => "least price",
        }
    }

    /// The better first; what is not known last.
    pub fn compare(self, a: &Tried, b: &Tried) -> Ordering {
        let least = |value: fn(&Tried) -> Option<f64>| {
            let known = |one: &Tried| value(one).unwrap_or(f64::INFINITY);
            known(a).total_cmp(&known(b))
        };
        match self {
            By::Warnings => a.count(Verdict::Warn).cmp(&b.count(Verdict::Warn)),
            By::Firmness => least(|one| one.tightest().map(|(_, room)| -percent(room))),
            By::Trim => least(|one| one.trim.map(|trim| (trim.value / TRIM_STEP).round())),
            By::Weight => least(|one| one.hung.map(|hung| hung.value)),
            By::Power => least(|one| one.hang.power.map(|power| -power.value * one.hang.count as f64)),
            By::Price => least(|one| one.hang.price),
        }
    }
}

/// Changes of trim that differ by less are told alike, rad: a twentieth of a degree. Common practice, no source.
const TRIM_STEP: f64 = 0.05 * std::f64::consts::PI / 180.0;

/// Room as it is told, in whole hundredths.
pub fn percent(room: f64) -> f64 {
    (100.0 * room).round()
}

impl Tried {
    /// The check with least room of those that the engines decide, and its room as a part of the limit.
    pub fn tightest(&self) -> Option<(&Said, f64)> {
        let rooms = self.said.iter().filter(|said| said.rule.family <= Family::Strength);
        let rooms = rooms.filter_map(|said| Some((said, firmness(said)?)));
        rooms.min_by(|a, b| a.1.total_cmp(&b.1))
    }
}

/// How firm a finding is: its room as a part of its limit, negative beyond it. None where nothing was held against a limit.
pub fn firmness(said: &Said) -> Option<f64> {
    let judged = matches!(said.verdict, Verdict::Pass | Verdict::Warn | Verdict::Fail);
    let size = match said.limit? {
        Limit::AtMost(limit) | Limit::AtLeast(limit) => limit.si.abs(),
        Limit::Within(least, most) => most.si - least.si,
    };
    let margin = said.margin()?.si;
    (judged && size > 0.0).then(|| margin / size)
}
