//! What findings have in common: those that one change would settle stand together, the first of them for all.
//!
//! The causes of `rules/cause.rs` cannot serve the first screen alone: of the findings that fail or warn on the boats of the
//! corpus two in three come from none, and would each be an entry of its own, in no order of a yard.

use super::{Report, plain};
use crate::rules::mend::Mend;
use crate::rules::{Family, Judged, Rule, Verdict};

/// What a finding is about, in the order in which a yard settles them: no weight is worth reckoning on a rotten core, no
/// height before the engine is chosen.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Matter {
    Core,
    Power,
    Weight,
    Height,
    Room,
    Bolts,
    Transom,
    Other(Family),
}

impl Matter {
    fn of(rule: &Rule) -> Matter {
        match rule.id {
            "strength/soft-core" | "strength/core-under-bolts" | "strength/tabbing" | "strength/signs" => Matter::Core,
            "steering/rating" => Matter::Power,
            "swing/lifts-clear" | "running/ventilation" | "stern/plate-immersed" => Matter::Height,
            "fit/centre-distance" => Matter::Room,
            "strength/bending"
            | "strength/core-shear"
            | "strength/panel-deflection"
            | "strength/bracket-moment"
            | "strength/knees" => Matter::Transom,
            _ => match rule.family {
                Family::Power => Matter::Power,
                Family::Weight | Family::Stern => Matter::Weight,
                Family::Height => Matter::Height,
                Family::Swing => Matter::Room,
                Family::Fit | Family::Strength => Matter::Bolts,
                other => Matter::Other(other),
            },
        }
    }

    fn words(self) -> &'static str {
        match self {
            Matter::Core => "The transom's core",
            Matter::Power => "Power",
            Matter::Weight => "Weight on the stern",
            Matter::Height => "Height of the engine",
            Matter::Room => "Room to tilt and turn",
            Matter::Bolts => "Bolts",
            Matter::Transom => "Strength of the transom",
            Matter::Other(family) => family.title(),
        }
    }
}

/// Findings of one matter: the gravest first, what goes with it behind.
pub(super) struct Cause<'r> {
    /// What they are about.
    pub title: &'static str,
    /// The finding that stands for all.
    pub first: &'r Judged,
    /// The others that are as grave.
    pub with: Vec<&'r Judged>,
}

impl Cause<'_> {
    /// Them all.
    pub(super) fn all(&self) -> impl Iterator<Item = &Judged> {
        std::iter::once(self.first).chain(self.with.iter().copied())
    }
}

/// The causes of all findings of a verdict, in the order in which they are settled.
pub(super) fn causes<'r>(report: &'r Report, verdict: Verdict) -> Vec<Cause<'r>> {
    let mut sorted: Vec<(Matter, &Judged)> =
        report.with(verdict).map(|judged| (Matter::of(judged.rule), judged)).collect();
    sorted.sort_by_key(|(matter, _)| *matter);
    let groups = sorted.chunk_by(|one, next| one.0 == next.0);
    groups
        .filter_map(|group| {
            // What the others come from stands for them, else what names its remedy for those that do not.
            let leads = |judged: &Judged| judged.finding.cause.is_some_and(|cause| cause.lead == judged.rule.id);
            let lead = group.iter().position(|(_, judged)| leads(judged));
            let mends = || group.iter().position(|(_, judged)| judged.finding.remedy.is_some());
            let lead = lead.or_else(mends).unwrap_or(0);
            let (matter, first) = group.get(lead)?;
            let others = group.iter().enumerate().filter(|(at, _)| *at != lead);
            Some(Cause { title: matter.words(), first, with: others.map(|(_, (_, judged))| *judged).collect() })
        })
        .collect()
}

/// The finding that this one only points at: it has no figure and no remedy of its own, and comes from one that is as grave, or
/// names it.
pub(super) fn brought_on_by<'r>(report: &'r Report, judged: &Judged) -> Option<&'r Judged> {
    let finding = &judged.finding;
    let only_points = finding.mends.iter().all(|mend| matches!(mend, Mend::First(_)));
    if finding.found.is_some() || !only_points {
        return None;
    }
    let said = finding.summary.show(report.units);
    let from = |other: &Judged| finding.cause.is_some_and(|cause| cause.lead == other.rule.id);
    let graver = report.judged.iter().filter(|other| other.finding.verdict <= finding.verdict);
    graver
        .filter(|other| other.rule.id != judged.rule.id)
        .find(|other| from(other) || said.contains(&format!("\u{201c}{}\u{201d}", plain::name(other.rule))))
}

/// The findings that only point at this one.
pub(super) fn brought_on<'r>(report: &'r Report, by: &Judged) -> Vec<&'r Judged> {
    let all = report.judged.iter().filter(|judged| matches!(judged.finding.verdict, Verdict::Fail | Verdict::Warn));
    all.filter(|judged| brought_on_by(report, judged).is_some_and(|cause| cause.rule.id == by.rule.id)).collect()
}
