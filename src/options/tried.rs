//! One option judged: screen after screen, the cheapest first, until one refuses it.

use uom::si::f64::{Angle, Mass};

use super::yard::TOO_LITTLE;
use super::{Hang, Yard};
use crate::case::Case;
use crate::job::Job;
use crate::quantity::{Dimensioned, Measure, Text};
use crate::rig::Missing;
use crate::rules::{self, Family, Judged, Limit, Rule, Verdict};
use crate::written::Slip;

/// Families that are judged together, before the next screen is.
#[derive(Debug, PartialEq)]
pub struct Screen {
    /// What it is about, in words.
    pub name: &'static str,
    /// The families.
    pub families: &'static [Family],
}

/// The screens, the cheapest first: numbers of the papers, then heights and widths, then weights, then what floats and swings, at
/// last what bends.
pub const SCREENS: [Screen; 7] = [
    Screen { name: "plate and power", families: &[Family::Power] },
    Screen { name: "height and room", families: &[Family::Height, Family::Fit] },
    Screen { name: "weight", families: &[Family::Weight] },
    Screen { name: "afloat", families: &[Family::Stern] },
    Screen { name: "tilt and lock", families: &[Family::Swing] },
    Screen {
        name: "rigging and running",
        families: &[
            Family::Steering,
            Family::Fuel,
            Family::Electrical,
            Family::Controls,
            Family::Network,
            Family::Trailer,
            Family::Running,
            Family::Trial,
            Family::Worth,
        ],
    },
    Screen { name: "strength", families: &[Family::Strength] },
];

/// A finding without its working.
#[derive(Clone, Debug)]
pub struct Said {
    /// The rule.
    pub rule: &'static Rule,
    /// Its answer.
    pub verdict: Verdict,
    /// The answer in a sentence.
    pub summary: Text,
    /// What was found.
    pub found: Option<Measure>,
    /// What it is held against.
    pub limit: Option<Limit>,
    /// What to do about it.
    pub remedy: Option<Text>,
    /// What it waits for.
    pub missing: Vec<Missing>,
}

impl Said {
    /// What a rule said.
    pub fn of(judged: Judged) -> Said {
        let Judged { rule, finding } = judged;
        Said {
            rule,
            verdict: finding.verdict,
            summary: finding.summary,
            found: finding.found,
            limit: finding.limit,
            remedy: finding.remedy,
            missing: finding.missing,
        }
    }

    /// Room to the limit, negative beyond it.
    pub fn margin(&self) -> Option<Measure> {
        Some(self.limit?.margin(self.found?))
    }
}

/// An option that was judged, as far as it came.
#[derive(Clone, Debug)]
pub struct Tried {
    /// What it is.
    pub hang: Hang,
    /// The screen that refused it; none where it came through.
    pub refused: Option<usize>,
    /// What the rules said: all of them of one that came through, those that refuse of another.
    pub said: Vec<Said>,
    /// All that hangs on the transom.
    pub hung: Option<Mass>,
    /// Greatest change of trim, by the bow or by the stern.
    pub trim: Option<Angle>,
}

/// The rule that tells how her trim changes.
const TRIM: &str = "stern/trim-change";
/// The rules that look at the hole row: of a row that misses the window where another meets it, the option is the other row.
const ROW: &str = "height/plate-window";
const SHAFT: &str = "height/shaft-match";

impl Tried {
    /// Judges an option. What `is_aside` names fails whatever hangs there, and refuses nothing.
    pub fn of(yard: &Yard, hang: Hang, is_aside: &dyn Fn(&Rule) -> bool) -> Tried {
        let job = hang.job(yard);
        Tried::judged(yard, hang, &job, is_aside)
    }

    /// The same of a job that was changed besides.
    pub(super) fn judged(yard: &Yard, hang: Hang, job: &Job, is_aside: &dyn Fn(&Rule) -> bool) -> Tried {
        let looked = yard.look(job, |case| through(case, yard.underpowered, is_aside));
        let (refused, said, hung) = looked.unwrap_or_else(|slips| (Some(0), slips.iter().map(unknown).collect(), None));
        let trim = said.iter().find(|said| said.rule.id == TRIM).and_then(|said| said.found);
        Tried { hang, refused, trim: trim.map(|trim| Angle::from_si(trim.si)), said, hung }
    }

    /// How many findings have this verdict.
    pub fn count(&self, verdict: Verdict) -> usize {
        self.said.iter().filter(|said| said.verdict == verdict).count()
    }

    /// Whether nothing of it waits for a reading that somebody could take.
    pub fn is_decided(&self) -> bool {
        self.refused.is_none() && self.said.iter().all(|said| said.missing.is_empty())
    }
}

/// Whether a job passes through all screens, and what was said.
fn through(
    case: &Case,
    underpowered: bool,
    is_aside: &dyn Fn(&Rule) -> bool,
) -> (Option<usize>, Vec<Said>, Option<Mass>) {
    let hung = case.rig.after.hung().ok();
    let hung = hung.map(|parts| Mass::from_si(parts.iter().map(|(_, mass)| mass.si()).sum()));
    let mut all = Vec::with_capacity(rules::ALL.len());
    for (i, screen) in SCREENS.iter().enumerate() {
        let judged = rules::judge_families(case, |family| screen.families.contains(&family));
        let shaft_fits =
            |judged: &[Judged]| judged.iter().any(|one| one.rule.id == SHAFT && one.finding.verdict == Verdict::Pass);
        let other_row = shaft_fits(&judged);
        let refuses = |one: &Judged| {
            let verdict = one.finding.verdict;
            let wrong_row = other_row && one.rule.id == ROW && verdict == Verdict::Warn;
            let too_little = !underpowered && one.rule.id == TOO_LITTLE && verdict == Verdict::Warn;
            (verdict == Verdict::Fail || wrong_row || too_little) && !is_aside(one.rule)
        };
        if judged.iter().any(refuses) {
            return (Some(i), judged.into_iter().filter(refuses).map(Said::of).collect(), hung);
        }
        all.extend(judged.into_iter().map(Said::of));
    }
    all.sort_by_key(|said| rules::ALL.iter().position(|rule| rule.id == said.rule.id));
    (None, all, hung)
}

/// Every finding of a job, in the order of the report.
///
/// # Errors
/// Names that the catalog does not have.
pub fn all_said(yard: &Yard, job: &Job) -> Result<Vec<Said>, Vec<Slip>> {
    yard.look(job, |case| rules::judge(case).into_iter().map(Said::of).collect())
}

/// A name that leads nowhere: only where a price list or a job was read with another catalog.
fn unknown(slip: &Slip) -> Said {
    Said {
        rule: rules::ALL[0],
        verdict: Verdict::Fail,
        summary: Text::from(slip.message.as_str()),
        found: None,
        limit: None,
        remedy: None,
        missing: Vec::new(),
    }
}
