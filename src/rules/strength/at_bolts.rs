//! A part at the bolts: which of them is nearest to giving way, and whether enough is told to judge it.

use super::entry;
use super::weigh::Weighed;
use super::{factor, first, limit, old_factor};
use crate::case::strength::show::force;
use crate::case::strength::{Board, FROM_WORK, Footing, Laden, Part, Strength, Worst};
use crate::job::{self, BracketKind};
use crate::physics::fit;
use crate::quantity::{Dimensioned, Text, inches, say};
use crate::reading::{Declared, reading};
use crate::rig::{Group, Missing, Ran, Rig};
use crate::rules::mend::{self, Change, Remedy};
use crate::rules::{Finding, Verdict};
use crate::working::{Sheet, Term};
use uom::si::f64::{Force, Length};

/// Force that counts as none, N.
const NOTHING: f64 = 1e-6;

/// "the upper bolt 6 in to port of the engine, in slamming with thrust".
fn which(footing: &Footing, laden: &Laden, worst: &Worst) -> Text {
    say!("the ").then(footing.bolt(worst.bolt)).then(say!(
        " of the {}, {}",
        footing.name.as_str(),
        laden.cases[worst.case].name()
    ))
}

/// A finding about the bolt nearest to giving way in one part; what does not pull at all passes.
pub(super) struct Judged<'s> {
    pub worst: Worst,
    pub footing: &'s Footing,
    pub finding: Finding,
}

/// Why bolts are not asked about where there are none.
pub(super) const CLAMPED: &str = "A small engine of whose bolts nothing is said is held by its clamp screws, not by bolts; where it is bolted through, say so under bolts.";

/// Judges a part at the bolts. What is not told is reckoned as usual bolts and plain washers: that is enough to let pass,
/// and not to say that anything fails.
pub(super) fn at_bolts<'s>(
    part: Part,
    required: f64,
    what: &str,
    rig: &Rig,
    strength: &'s Strength,
) -> Result<Judged<'s>, Finding> {
    let after = &strength.after;
    if after.footings.iter().all(|footing| footing.clamped) {
        return Err(Finding::not_applicable(Text::from(CLAMPED)));
    }
    let worst = |told: bool| {
        let of = |footing: &Footing| footing.lacks(part).is_empty() == told;
        let worst = after.worst_of(part, rig, strength, strength.left(), of);
        worst.map(|worst| at_bolt(worst, part, required, what, rig, strength))
    };
    let (told, usual) = (worst(true), worst(false));
    let grave = |judged: &Judged| judged.finding.verdict < Verdict::Pass;
    match (told, usual) {
        (Some(told), _) if grave(&told) => Ok(told),
        (_, Some(usual)) if grave(&usual) => Err(waits(part, what, usual)),
        (Some(told), Some(usual)) if told.worst.factor() <= usual.worst.factor() => Ok(told),
        (_, Some(mut usual)) => {
            usual.finding.summary = usual.finding.summary.then(reckoned(part, usual.footing));
            Ok(usual)
        }
        (Some(told), None) => Ok(told),
        (None, None) => Err(Finding::new(Verdict::Unmeasured, Text::from("No bolt is known."))),
    }
}

/// What stands in for what the job does not tell: "bolts of 1/2-13 in A4-70 and plain washers".
fn stand_ins(footing: &Footing, missing: &[Missing]) -> Text {
    let bolts = say!("bolts of {} in {}", footing.size.name.as_str(), footing.grade.name.as_str());
    let lacks = |measurement: &Declared| missing.iter().any(|one| one.measurement == measurement);
    match (lacks(reading!(job::EngineGroup.bolts)), lacks(reading!(job::Bolting.washer))) {
        (true, true) => bolts.then(Text::from(" and plain washers")),
        (true, false) => bolts,
        (false, _) => Text::from("plain washers, the least that are set"),
    }
}

/// " That is with plain washers: what is there was not read."
fn reckoned(part: Part, footing: &Footing) -> Text {
    say!(" That is with ").then(stand_ins(footing, &footing.lacks(part))).then(say!(": what is there was not read."))
}

/// The finding that waits for bolts or washers, where the usual ones would not be enough.
fn waits(part: Part, what: &str, usual: Judged) -> Finding {
    let missing = usual.footing.lacks(part);
    let summary = say!("With ").then(stand_ins(usual.footing, &missing)).then(say!(
        " the {} would hold {} times what works on it; what is there was not read. ",
        what,
        factor(usual.worst.factor())
    ));
    let summary = summary.then(Missing::awaited(&missing));
    Finding { missing, ..Finding::new(Verdict::Unmeasured, summary) }
}

/// What is said of a part at one bolt.
fn at_bolt<'s>(worst: Worst, part: Part, required: f64, what: &str, rig: &Rig, strength: &'s Strength) -> Judged<'s> {
    let footing = &strength.after.footings[worst.footing];
    let value = worst.factor();
    if worst.demand <= NOTHING {
        let finding = Finding::new(Verdict::Pass, say!("Nothing works on the {} in any case.", what));
        return Judged { worst, footing, finding };
    }
    let old = |laden: &Laden| laden.worst(part, rig, strength).map(|worst| worst.factor());
    let best = strength.best.as_ref().map_or(value, |board| {
        let capacity = footing.capacity(&mut Sheet::default(), part, rig, board, strength.left(), worst.bolt);
        value.max(Worst { capacity, ..worst }.factor())
    });
    let weighed = Weighed {
        range: [value, best],
        required,
        old: strength.before.as_ref().ok().and_then(old),
        ran: rig.ran.as_ref().and_then(Ran::soundly),
    };
    let summary = say!("The {} holds {} times ", what, factor(value))
        .then(if part == Part::Combined {
            Text::from("what works on it")
        } else {
            say!("the greatest force on it, {}", force(worst.demand))
        })
        .then(Text::from(": "))
        .then(which(footing, &strength.after, &worst))
        .then(Text::from("."))
        .then(weighed.proof())
        .then(weighed.between())
        .then(old_factor(strength, value, old))
        .then(first(strength, rig, part.words()));
    let mut finding = Finding::new(weighed.verdict(), summary).against(factor(value), limit(required));
    if finding.verdict == Verdict::Unmeasured {
        finding.missing = vec![Missing::one(reading!(job::Structure.lay_up))];
    }
    Judged { worst, footing, finding }
}

/// The sheet of one part: capacity, then the factor.
pub(super) fn capacity_sheet(part: Part, judged: &Judged, rig: &Rig, strength: &Strength) -> Sheet {
    let mut sheet = Sheet::default();
    let worst = &judged.worst;
    judged.footing.written(&mut sheet, worst.case, worst.bolt, part);
    judged.footing.say_origins(&mut sheet, rig, &strength.board, strength.left());
    judged.footing.capacity(&mut sheet, part, rig, &strength.board, strength.left(), worst.bolt);
    if worst.demand > NOTHING {
        let (bears, works) = (held(part, &strength.board), if part == Part::Shear { "V" } else { "N" });
        let upward = "greatest upward force on the bolt";
        let load = Force::from_si(worst.demand);
        let load = if part == Part::Tear { sheet.given("Nt", upward, load, FROM_WORK) } else { Term::new(works, load) };
        let bears = Term::new(bears, Force::from_si(worst.capacity));
        sheet.set("f", "strength over load", bears / load);
    }
    sheet
}

/// The symbol under which what a part bears is worked out.
fn held(part: Part, board: &Board) -> &'static str {
    match part {
        Part::Tension => "Fp",
        Part::Shear => "Fv",
        Part::Crush if board.core_has_grain() => "Ni",
        Part::Crush => "Nc",
        Part::Punch => "Fs",
        Part::Tear => "Fe",
        Part::Combined | Part::Bearing => "F",
    }
}

/// The least bolt of the catalog with which pull and shear together leave the factor: of the same series of threads, and no
/// thicker than the holes take.
fn next_bolt(footing: &Footing, required: f64, rig: &Rig, strength: &Strength) -> Option<String> {
    let metric = footing.size.name.starts_with('M');
    let most = if rig.after.groups.get(footing.group).is_some_and(is_drilled) {
        inches(fit::BOLT_DIAMETER_IN)
    } else {
        Length::from_si(f64::INFINITY)
    };
    rig.tables
        .bolt_sizes
        .iter()
        .filter(|entry| entry.name.starts_with('M') == metric && entry.spec.diameter.value <= most)
        .filter(|entry| strength.after.combined_with(footing, entry, strength.driving) >= required)
        .min_by(|a, b| a.spec.stress_area.value.si().total_cmp(&b.spec.stress_area.value.si()))
        .map(|entry| entry.name.clone())
}

/// Whether the face comes drilled for the trade association's pattern: an engine's own bracket, a setback or jack plate.
fn is_drilled(group: &Group) -> bool {
    let kind = group.bracket.as_ref().map(|bracket| bracket.spec.kind);
    matches!(kind, None | Some(None | Some(BracketKind::SetbackPlate | BracketKind::JackPlate)))
}

/// What to do about bolts that are too weak: a size that bears pull and shear together, or more of them.
pub(super) fn stronger_bolts(judged: &Judged, required: f64, rig: &Rig, strength: &Strength) -> Remedy {
    let footing = judged.footing;
    match next_bolt(footing, required, rig, strength) {
        Some(name) => mend::change(
            say!(
                "Set {} bolts of {} in place of {} at the {}.",
                name.as_str(),
                footing.grade.name.as_str(),
                footing.size.name.as_str(),
                footing.name.as_str()
            ),
            [Change::to(format!("{}.bolts.size", entry(rig, footing)), format!("{name:?}"))],
        ),
        None => {
            let factor = strength.after.combined_with(footing, &footing.size, strength.driving);
            mend::yard(say!(
                "No bolt of {} that goes through its holes is enough: share the load over {} bolts or more of {} at the {}, spread over a taller face.",
                footing.grade.name.as_str(),
                (footing.bolts.len() as f64 * required / factor).ceil() as usize,
                footing.size.name.as_str(),
                footing.name.as_str()
            ))
        }
    }
}
