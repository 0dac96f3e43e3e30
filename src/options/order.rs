//! By what options are ranked.

use super::{Found, Said, Tried};
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

    /// What it is ranked by: the less the better, what is not known last.
    pub fn key(self, found: &Found, one: &Tried) -> f64 {
        let known = match self {
            By::Warnings => Some(one.count(Verdict::Warn) as f64),
            By::Firmness => found.tightest(one).map(|(_, room)| -percent(room)),
            By::Trim => one.trim.map(|trim| (trim.value / TRIM_STEP).round()),
            By::Weight => one.hung.map(|hung| hung.value),
            By::Power => one.hang.power.map(|power| -power.value * one.hang.count as f64),
            By::Price => one.hang.price,
        };
        known.unwrap_or(f64::INFINITY)
    }
}

/// Changes of trim that differ by less are told alike, rad: a twentieth of a degree. Common practice, no source.
const TRIM_STEP: f64 = 0.05 * std::f64::consts::PI / 180.0;

/// Room as it is told, in whole hundredths.
pub fn percent(room: f64) -> f64 {
    (100.0 * room).round()
}

impl Found {
    /// Those that came through, the best first; equals in the order in which they were put together.
    pub fn ranked(&self, order: &[By]) -> Vec<&Tried> {
        let through = self.tried.iter().filter(|one| one.refused.is_none());
        let keys = |one: &Tried| order.iter().map(|by| by.key(self, one)).collect::<Vec<f64>>();
        let mut keyed: Vec<(Vec<f64>, &Tried)> = through.map(|one| (keys(one), one)).collect();
        keyed.sort_by(|(a, _), (b, _)| {
            let unlike = a.iter().zip(b).map(|(a, b)| a.total_cmp(b)).find(|order| order.is_ne());
            unlike.unwrap_or(std::cmp::Ordering::Equal)
        });
        keyed.into_iter().map(|(_, one)| one).collect()
    }

    /// The check with least room of those that the engines decide and that do not say the same of all, and its room as a part of the
    /// limit.
    pub fn tightest<'t>(&self, one: &'t Tried) -> Option<(&'t Said, f64)> {
        let tells = |said: &&Said| said.rule.family <= Family::Strength && !self.alike.contains(&said.rule.id);
        let rooms = one.said.iter().filter(tells);
        let rooms = rooms.filter_map(|said| Some((said, firmness(said)?)));
        rooms.min_by(|a, b| a.1.total_cmp(&b.1))
    }
}

/// How firm a finding is: its room as a part of its limit, negative beyond it. None where nothing was held against a limit, or what
/// passes lies at it by its nature: a full tilt that is reached, a plate that is used up.
pub fn firmness(said: &Said) -> Option<f64> {
    let judged = matches!(said.verdict, Verdict::Pass | Verdict::Warn | Verdict::Fail);
    let size = match said.limit? {
        Limit::AtMost(limit) | Limit::AtLeast(limit) => limit.si.abs(),
        Limit::Within(least, most) => most.si - least.si,
    };
    let margin = said.margin()?.si;
    let at_it = said.verdict == Verdict::Pass && margin.abs() < AT_LIMIT * size;
    (judged && size > 0.0 && !at_it).then(|| margin / size)
}

/// Nearer to its limit than this part of it, something lies at it: rounding.
const AT_LIMIT: f64 = 1e-9;
