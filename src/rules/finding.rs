//! What a rule says of a rig.

use std::cmp::Ordering;
use std::iter;

use super::comes::Comes;
use super::mend::{Mend, Remedy};
use crate::quantity::{Measure, Piece, Text, Units};
use crate::reading::{Absent, Missing};
use crate::working::{Sheet, Table};

/// The answer of a rule.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Verdict {
    /// A regulation, a rating, a collision, or a part that cannot be fitted.
    Fail,
    /// A limit of practice.
    Warn,
    /// A reading is missing.
    Unmeasured,
    /// Within its limit.
    Pass,
    /// The rule does not apply, and the finding says why.
    NotApplicable,
}

impl Verdict {
    /// Every verdict, the gravest first.
    pub const ALL: [Verdict; 5] =
        [Verdict::Fail, Verdict::Warn, Verdict::Unmeasured, Verdict::Pass, Verdict::NotApplicable];

    /// The word in a report.
    pub fn word(self) -> &'static str {
        match self {
            Verdict::Fail => "fail",
            Verdict::Warn => "warn",
            Verdict::Unmeasured => "unmeasured",
            Verdict::Pass => "pass",
            Verdict::NotApplicable => "not applicable",
        }
    }
}

/// What the reading is held against.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Limit {
    /// No more than this.
    AtMost(Measure),
    /// No less than this.
    AtLeast(Measure),
    /// From one to the other.
    Within(Measure, Measure),
}

impl Limit {
    /// The limit in words.
    pub fn show(&self, units: Units) -> String {
        match self {
            Limit::AtMost(most) => format!("at most {}", most.show(units)),
            Limit::AtLeast(least) => format!("at least {}", least.show(units)),
            Limit::Within(least, most) => {
                format!("{} to {}", least.show(units), most.show(units))
            }
        }
    }

    /// Room between what was found and the nearest edge of the limit; negative outside it.
    pub fn margin(&self, found: Measure) -> Measure {
        let si = match self {
            Limit::AtMost(most) => most.si - found.si,
            Limit::AtLeast(least) => found.si - least.si,
            Limit::Within(least, most) => (found.si - least.si).min(most.si - found.si),
        };
        Measure { si, ..found }
    }

    /// What of it was used: 1 at the limit, less within, more beyond. Nothing where a limit of zero gives no scale.
    pub fn used(&self, found: Measure) -> Option<f64> {
        let ratio = |part: f64, whole: f64| (whole > 0.0).then(|| part / whole);
        match self {
            Limit::AtMost(most) => ratio(found.si, most.si),
            Limit::AtLeast(least) if least.si <= 0.0 => None,
            Limit::AtLeast(least) => ratio(least.si, found.si).or(Some(f64::INFINITY)),
            Limit::Within(least, most) => {
                let half = (most.si - least.si) / 2.0;
                ratio((found.si - (least.si + half)).abs(), half)
            }
        }
        .filter(|share| !share.is_nan())
        .map(|share| share.max(0.0))
    }
}

/// A line of the rigging list.
#[derive(Clone, Debug, PartialEq)]
pub struct ToBuy {
    /// What.
    pub what: String,
    /// How long, how large.
    pub size: Text,
}

/// What a rule says of a rig.
#[derive(Clone, Debug, PartialEq)]
pub struct Finding {
    /// The answer.
    pub verdict: Verdict,
    /// The answer in a sentence.
    pub summary: Text,
    /// The same of each of several things of which the summary tells the worst: a sentence each.
    pub each: Vec<Text>,
    /// What was found.
    pub found: Option<Measure>,
    /// What it is held against.
    pub limit: Option<Limit>,
    /// What to do about it.
    pub remedy: Option<Text>,
    /// The ways that the remedy names, as changes of the job where they are; each is enough by itself.
    pub mends: Vec<Mend>,
    /// What it comes from, where other findings come from the same.
    pub cause: Option<Comes>,
    /// Readings that the rule waits for.
    pub missing: Vec<Missing>,
    /// The calculation.
    pub working: Sheet,
    /// Rows of figures.
    pub tables: Vec<Table>,
    /// What is to be bought for it.
    pub buys: Vec<ToBuy>,
}

/// What a judgement comes to: a finding, or one that stops it early, by `?` from what is [`Absent`] too.
pub type Judgement = Result<Finding, Finding>;

impl From<Judgement> for Finding {
    fn from(judgement: Judgement) -> Self {
        judgement.unwrap_or_else(|early| early)
    }
}

impl From<Absent> for Finding {
    fn from(absent: Absent) -> Self {
        match absent {
            Absent::Waits(missing) => Finding::unmeasured(missing),
            Absent::NotApplicable(why) => Finding::not_applicable(why),
            Absent::CannotBe(why) => Finding::new(Verdict::Unmeasured, why),
        }
    }
}

impl From<&Absent> for Finding {
    fn from(absent: &Absent) -> Self {
        absent.clone().into()
    }
}

impl From<Missing> for Finding {
    fn from(missing: Missing) -> Self {
        Finding::unmeasured(vec![missing])
    }
}

impl From<Vec<Missing>> for Finding {
    fn from(missing: Vec<Missing>) -> Self {
        Finding::unmeasured(missing)
    }
}

impl Finding {
    /// A finding with this verdict and sentence.
    pub fn new(verdict: Verdict, summary: Text) -> Self {
        Finding {
            verdict,
            summary,
            found: None,
            limit: None,
            remedy: None,
            mends: Vec::new(),
            cause: None,
            missing: Vec::new(),
            working: Sheet::default(),
            tables: Vec::new(),
            each: Vec::new(),
            buys: Vec::new(),
        }
    }

    /// Readings are missing.
    pub fn unmeasured(missing: Vec<Missing>) -> Self {
        let mut finding = Finding::new(Verdict::Unmeasured, Missing::awaited(&missing));
        finding.missing = missing;
        finding
    }

    /// Takes the place of a better finding, which of two alike is the one that uses less of its limit; of equals the first stays.
    /// What the other says is told beside it where it is bad too, and what is to be done about both.
    pub(super) fn keep_worse(self, worst: &mut Option<Finding>) {
        let used = |finding: &Finding| finding.used().unwrap_or(0.0);
        *worst = Some(match worst.take() {
            None => self,
            Some(first) => match first.verdict.cmp(&self.verdict).then(used(&self).total_cmp(&used(&first))) {
                Ordering::Greater => self.beside(first),
                _ => first.beside(self),
            },
        });
    }

    /// With what another finding of the same rule holds against another part of the boat.
    fn beside(mut self, other: Finding) -> Self {
        if !matches!(other.verdict, Verdict::Fail | Verdict::Warn) {
            return self;
        }
        let to_do = match (self.to_do(), other.to_do()) {
            (Some(one), Some(two)) => Some(one.and_too(two)),
            (one, two) => one.or(two),
        };
        // Of a boat whose sides are alike the other side says no more.
        for said in iter::once(other.summary).chain(other.each) {
            let words = sideless(&said);
            if !iter::once(&self.summary).chain(&self.each).any(|known| sideless(known) == words) {
                self.each.push(said);
            }
        }
        let more: Vec<ToBuy> = other.buys.into_iter().filter(|one| !self.buys.contains(one)).collect();
        self.buys.extend(more);
        match to_do {
            Some(to_do) => self.remedy(to_do),
            None => self,
        }
    }

    /// The rule does not apply, for this reason.
    pub fn not_applicable(why: Text) -> Self {
        Finding::new(Verdict::NotApplicable, why)
    }

    /// With what was found, and what it is held against.
    #[must_use]
    pub fn against(mut self, found: Measure, limit: Limit) -> Self {
        self.found = Some(found);
        self.limit = Some(limit);
        self
    }

    /// With a limit that nothing was held against.
    #[must_use]
    pub fn limit(mut self, limit: Limit) -> Self {
        self.limit = Some(limit);
        self
    }

    /// With what to do.
    #[must_use]
    pub fn remedy(mut self, remedy: Remedy) -> Self {
        self.remedy = Some(remedy.words);
        self.mends = remedy.ways;
        self
    }

    /// What is to be done about it, if anything.
    pub(super) fn to_do(&self) -> Option<Remedy> {
        let words = self.remedy.clone()?;
        Some(Remedy { words, ways: self.mends.clone() })
    }

    /// With the calculation.
    #[must_use]
    pub fn working(mut self, working: Sheet) -> Self {
        self.working = working;
        self
    }

    /// With what is told of the others besides the worst.
    #[must_use]
    pub fn each(mut self, each: impl IntoIterator<Item = Text>) -> Self {
        self.each.extend(each);
        self
    }

    /// With something that is to be bought.
    #[must_use]
    pub fn buys(mut self, what: impl Into<String>, size: Text) -> Self {
        self.buys.push(ToBuy { what: what.into(), size });
        self
    }

    /// With rows of figures.
    #[must_use]
    pub fn table(mut self, table: Table) -> Self {
        self.tables.push(table);
        self
    }

    /// With what was found, and nothing to hold it against.
    #[must_use]
    pub fn found(mut self, found: Measure) -> Self {
        self.found = Some(found);
        self
    }

    /// Whether it answers a question though there was nothing to judge: a limit, or something found.
    pub fn is_answer(&self) -> bool {
        self.verdict == Verdict::Unmeasured && (self.limit.is_some() || self.found.is_some())
    }

    /// The finding, undecided where a number in it is without end or undefined.
    #[must_use]
    pub(super) fn with_figures(self) -> Self {
        if self.measures().all(|measure| measure.si.is_finite()) {
            return self;
        }
        Finding::new(
            self.verdict.min(Verdict::Unmeasured),
            Text::from("The calculation came to no figure. Look at the readings that it uses; if they are right, this program is wrong."),
        )
        .working(self.working)
    }

    /// Whether both tell the same, in the digits that are told. Which side is named is no difference: of a boat whose sides are
    /// alike rounding decides it.
    pub(super) fn tells_the_same(&self, other: &Finding) -> bool {
        let told = |finding: &Finding| {
            let words = [Some(&finding.summary), finding.remedy.as_ref()].into_iter().flatten().chain(&finding.each);
            let words: Vec<String> = words.map(sideless).collect();
            let figures = [
                finding.found.map(|found| found.show(Units::Both)),
                finding.limit.map(|limit| limit.show(Units::Both)),
            ];
            (finding.verdict, words, figures)
        };
        told(self) == told(other)
    }

    /// Every number that it tells.
    fn measures(&self) -> impl Iterator<Item = Measure> {
        let limits = match self.limit {
            Some(Limit::AtMost(one) | Limit::AtLeast(one)) => [Some(one), None],
            Some(Limit::Within(least, most)) => [Some(least), Some(most)],
            None => [None, None],
        };
        let words = [Some(&self.summary), self.remedy.as_ref()].into_iter().flatten().chain(&self.each);
        let told = words.flat_map(Text::pieces).filter_map(|piece| match piece {
            Piece::Measure(measure) => Some(*measure),
            Piece::Words(_) => None,
        });
        limits.into_iter().flatten().chain(self.found).chain(told)
    }

    /// Room to the limit; negative beyond it.
    pub fn margin(&self) -> Option<Measure> {
        Some(self.limit?.margin(self.found?))
    }

    /// What of its limit is used, as [`Limit::used`].
    pub fn used(&self) -> Option<f64> {
        self.limit?.used(self.found?)
    }
}

/// The words, whichever side they name.
fn sideless(words: &Text) -> String {
    words.show(Units::Both).replace("starboard", "port")
}
