//! The rules: a folder a family, a file a rule; a family names its rules, and here they stand together.

#![allow(clippy::result_large_err, reason = "a finding is made once a rule, whether early or late")]

mod asked_back;
mod cause;
mod cautions;
mod comes;
mod controls;
mod doubt;
mod electrical;
mod family;
mod finding;
mod fit;
mod fuel;
mod height;
mod judged;
pub mod mend;
mod network;
mod power;
pub mod rule;
mod running;
mod steering;
mod stern;
mod strength;
mod swing;
mod trailer;
mod trial;
mod weight;
mod worth;

pub use cause::by_cause;
pub use cautions::cautions;
pub use comes::{Cause, Comes};
pub(crate) use controls::goes;
pub use doubt::{Decides, Doubt, Taken};
pub use family::Family;
pub use finding::{Finding, Judgement, Limit, ToBuy, Verdict};
pub use judged::{Judged, doubt_by_reading, measure_next};
pub use rule::Rule;
pub(crate) use strength::DESIGN_FACTOR;

use crate::case::Case;
use crate::working::{Part, Sheet};

/// A family's rules, in the order of the report.
const fn rules_of(family: Family) -> &'static [&'static Rule] {
    match family {
        Family::Power => power::RULES,
        Family::Weight => weight::RULES,
        Family::Height => height::RULES,
        Family::Fit => fit::RULES,
        Family::Stern => stern::RULES,
        Family::Swing => swing::RULES,
        Family::Strength => strength::RULES,
        Family::Steering => steering::RULES,
        Family::Fuel => fuel::RULES,
        Family::Electrical => electrical::RULES,
        Family::Controls => controls::RULES,
        Family::Network => network::RULES,
        Family::Trailer => trailer::RULES,
        Family::Running => running::RULES,
        Family::Trial => trial::RULES,
        Family::Worth => worth::RULES,
    }
}

/// Every rule, in the order of the report.
pub const ALL: &[&Rule] = &all();

/// How many rules there are.
const COUNT: usize = {
    let (mut family, mut count) = (0, 0);
    while family < Family::ALL.len() {
        count += rules_of(Family::ALL[family]).len();
        family += 1;
    }
    count
};

const fn all() -> [&'static Rule; COUNT] {
    let mut all = [power::RULES[0]; COUNT];
    let (mut family, mut at) = (0, 0);
    while family < Family::ALL.len() {
        let rules = rules_of(Family::ALL[family]);
        let mut i = 0;
        while i < rules.len() {
            all[at] = rules[i];
            (i, at) = (i + 1, at + 1);
        }
        family += 1;
    }
    all
}

/// The rule of this id.
pub fn find(id: &str) -> Option<&'static Rule> {
    ALL.iter().copied().find(|rule| rule.id == id)
}

/// The working of a family whose findings are calculations by themselves: a part for each, with what it says.
pub fn parts(case: &Case, family: Family) -> Vec<Part> {
    rules_of(family)
        .iter()
        .map(|rule| {
            let finding = (rule.judge)(case);
            let mut sheet = Sheet::default();
            sheet.remark(finding.summary);
            sheet.append(finding.working);
            Part { title: rule.full_name(), tables: finding.tables, sheet }
        })
        .collect()
}

/// Judges a case by every rule. A pure function: the same rig gives the same findings.
pub fn judge(case: &Case) -> Vec<Judged> {
    judge_families(case, |_| true)
}

/// Judges a case by the rules of some families.
pub fn judge_families(case: &Case, wanted: impl Fn(Family) -> bool) -> Vec<Judged> {
    let rules: Vec<&Rule> = ALL.iter().copied().filter(|rule| wanted(rule.family)).collect();
    let mut findings: Vec<(usize, Finding)> = Vec::new();
    for turn in turns(&rules) {
        let made = case.each(turn.len(), |i| (rules[turn[i]].judge)(case));
        findings.extend(turn.into_iter().zip(made));
    }
    findings.sort_by_key(|(i, _)| *i);
    let judged = rules.into_iter().zip(findings).map(|(rule, (_, finding))| Judged { rule, finding, doubt: None });
    let mut judged: Vec<Judged> = judged.collect();
    asked_back::hold_back(case.rig, &mut judged);
    cause::settle(case, &mut judged);
    judged
}

/// In what order several hands take the rules: the first of each slow family before all others, for it makes what the rest of them
/// share; that rest in a turn of its own, so that no hand waits for what another makes.
fn turns(rules: &[&Rule]) -> [Vec<usize>; 2] {
    const SLOW: [Family; 3] = [Family::Strength, Family::Running, Family::Swing];
    let firsts = SLOW.map(|family| rules.iter().position(|rule| rule.family == family));
    let place = |i: &usize| firsts.iter().position(|first| *first == Some(*i)).unwrap_or(SLOW.len());
    let (mut now, later): (Vec<usize>, Vec<usize>) =
        (0..rules.len()).partition(|i| place(i) < SLOW.len() || !SLOW.contains(&rules[*i].family));
    now.sort_by_key(place);
    [now, later]
}
