//! `strength/bolt-torque`

use super::{core_first, entry};
use crate::rig::Rig;
use crate::rules::mend::{self, Change, Remedy};
use uom::si::f64::{Force, Length};

use super::at_bolts::CLAMPED;
use super::ready_with_core;
use crate::case::Case;
use crate::case::strength::{Footing, Laden, Part, Strength};
use crate::job::{self, ThreadState};
use crate::physics::strength::bolts::{
    Condition, PRELOAD_OF_PROOF, nut_factor, preload, preload_by_torque, tightening_torque,
};
use crate::physics::strength::knockdown::KnockDown;
use crate::physics::strength::loads::Case as Kind;
use crate::quantity::{Dimensioned, Measure, Moment, Text, say};
use crate::reading::reading;
use crate::rig::Missing;
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::{Sheet, Table, min};

rule! {
    /// The torque of the mounting bolts: what bolt and core bear, and whether the joint stays shut.
    ///
    /// **Why.** A nut turned too far sinks into the core and is slack by the next season; one turned too
    /// little lets the bracket work.
    ///
    /// **Limit.** The torque of the mounting sheet, where it gives one, and a tenth. Where not, the
    /// torque that preloads the bolt to three quarters of its proof load, or that presses wood under
    /// the whole washer to three times its proportional limit (foams and boards: to three quarters of
    /// what crushes them), whichever is less. And preload enough to outlast the greatest pull of ordinary running.
    ///
    /// **Source.** The mounting sheet; Shigley, Mechanical Engineering Design, section 8-8 and table 8-15
    /// (preload and nut factors), values from memory; EN 1995-1-1, 8.5.2 (wood under washers), value
    /// from memory; common practice, no source (nut factor of stainless with paste, the tenth,
    /// the three quarters of foams and boards).
    ///
    /// **When it warns.** Tighten to the torque given, or spread the nuts over a backing plate so that
    /// more torque can be used. It fails where the torque stretches the bolt for good.
    BOLT_TORQUE = Strength "strength/bolt-torque", judge;
}

/// How far above the sheet's torque a wrench may have gone. Common practice, no source.
const ABOVE_SHEET: f64 = 1.1;

fn judge(case: &Case) -> Judgement {
    let strength = ready_with_core(case)?;
    let mut worst: Option<Finding> = None;
    for footing in &strength.after.footings {
        let finding = if footing.clamped {
            Finding::not_applicable(Text::from(CLAMPED))
        } else {
            one(case.rig, footing, strength)
        };
        finding.keep_worse(&mut worst);
    }
    Ok(worst.unwrap_or_else(|| Finding::unmeasured(vec![case.rig.after.missing()])))
}

fn condition(footing: &Footing) -> (Condition, &'static str) {
    match footing.given.said.thread {
        Some(ThreadState::Dry) => (Condition::Dry, "dry"),
        Some(ThreadState::Oiled) => (Condition::Lubricated, "oiled"),
        Some(ThreadState::Paste) => (Condition::StainlessWithPaste, "with paste"),
        None if footing.grade.spec.stainless => (Condition::StainlessWithPaste, "with anti-seize paste"),
        None => (Condition::Lubricated, "oiled"),
    }
}

/// The greatest pull on a bolt of this face in ordinary running, N. A jolt of a sea or of the road, which opens the joint
/// for an instant, does not count.
fn pull(footing: &Footing, laden: &Laden) -> f64 {
    let ordinary = laden.cases.iter().zip(&footing.forces);
    let ordinary = ordinary.filter(|(case, _)| !matches!(case.kind, Kind::Slamming | Kind::Trailer));
    ordinary.flat_map(|(_, group)| &group.bolts).map(|bolt| bolt.tension).fold(0.0, f64::max)
}

/// What sets the limit of a torque.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Bears {
    /// The mounting sheet gives it.
    Sheet,
    /// The bolt would be stretched.
    Bolt,
    /// The washer would sink in.
    Core,
}

/// What a bolt may be tightened to.
struct Allowed {
    torque: Moment,
    by: Bears,
    /// The torque that the core would bear under plain washers, where nobody looked what is there and it is the lesser.
    plain: Option<Moment>,
    /// Torque over preload and diameter.
    nut_factor: f64,
    /// The state of the thread, in words.
    thread: &'static str,
}

fn allowed(footing: &Footing, strength: &Strength, sheet: &mut Sheet) -> Allowed {
    let (state, thread) = condition(footing);
    let nut_factor = nut_factor(state);
    let proof = footing.tension_capacity(sheet);
    if let Some(torque) = footing.sheet_torque {
        sheet.remark(say!("torque that the mounting sheet gives: {}", Measure::of(torque)));
        return Allowed { torque, by: Bears::Sheet, plain: None, nut_factor, thread };
    }
    let diameter = Length::from_si(footing.diameter());
    let by_bolt = preload(sheet, PRELOAD_OF_PROOF, &proof);
    let mut aside = Sheet::default();
    let by_core = footing.drawn_up_capacity(&mut aside, &strength.board, strength.left());
    let core_governs = by_core.value() < by_bolt.value();
    if core_governs && !footing.lacks(Part::Crush).is_empty() {
        let plain = tightening_torque(&mut aside, nut_factor, diameter, &by_core).value();
        let torque = tightening_torque(sheet, nut_factor, diameter, &by_bolt).value();
        return Allowed { torque, by: Bears::Bolt, plain: Some(plain), nut_factor, thread };
    }
    sheet.append(aside);
    let by = if core_governs { Bears::Core } else { Bears::Bolt };
    let preload = sheet.set("Fa", "preload allowed", min(by_bolt, by_core));
    let torque = tightening_torque(sheet, nut_factor, diameter, &preload).value();
    Allowed { torque, by, plain: None, nut_factor, thread }
}

fn one(rig: &Rig, footing: &Footing, strength: &Strength) -> Finding {
    let mut sheet = Sheet::default();
    footing.say_origins(&mut sheet, rig, &strength.board, strength.left());
    let allowed = allowed(footing, strength, &mut sheet);
    let name = footing.name.as_str();
    let Some(given) = &footing.given.said.torque else {
        let mut missing = vec![Missing { measurement: reading!(job::Bolting.torque), of: Some(name.to_owned()) }];
        if allowed.plain.is_some() {
            missing.extend(footing.lacks(Part::Crush));
        }
        let finding = Finding { missing, ..Finding::new(Verdict::Unmeasured, advice(&allowed, footing)) };
        return finding.limit(Limit::AtMost(Measure::of(allowed.torque))).working(sheet);
    };
    let found = Measure::of(given.value);
    let diameter = Length::from_si(footing.diameter());
    let preloaded = preload_by_torque(&mut sheet, allowed.nut_factor, diameter, given.value).value();
    let greatest = Force::from_si(pull(footing, &strength.after));
    let need = allowed.nut_factor * diameter * greatest;
    let bolts = footing.lacks(Part::Tension);
    let finding = if preloaded > footing.tension_capacity(&mut Sheet::default()).value() {
        let summary = say!("{} stretches the bolts of the {} for good.", found, name);
        told(Finding::new(Verdict::Fail, summary).remedy(slacker(rig, &allowed, footing)), bolts)
    } else if given.value > tolerated(&allowed) {
        beyond(rig, &allowed, footing, strength, (found, need))
    } else if allowed.plain.is_some_and(|plain| given.value > plain) {
        Finding::unmeasured(footing.lacks(Part::Crush))
    } else if greatest > preloaded {
        let summary = say!(
            "{} preloads the bolts of the {} to {}, less than the greatest pull of ordinary running, {}: the joint opens and works.",
            found,
            name,
            Measure::of(preloaded),
            Measure::of(greatest)
        );
        told(Finding::new(Verdict::Warn, summary).remedy(tighter(rig, &allowed, footing, need)), bolts)
    } else {
        Finding::new(Verdict::Pass, say!("{} holds the joint of the {} shut, and bolt and core bear it.", found, name))
    };
    if finding.verdict == Verdict::Unmeasured {
        return finding.working(sheet);
    }
    let limit = Limit::AtMost(Measure::of(tolerated(&allowed)));
    finding.against(found, limit).working(sheet).table(before_after(strength))
}

/// To what to tighten, and why not further.
fn advice(allowed: &Allowed, footing: &Footing) -> Text {
    say!(
        "Tighten {} {} at the {} to {}{}.",
        footing.size.name.as_str(),
        allowed.thread,
        footing.name.as_str(),
        Measure::of(allowed.torque),
        match allowed.by {
            Bears::Sheet => ", as its mounting sheet says",
            Bears::Bolt if allowed.plain.is_some() =>
                " at most: the bolt bears no more, and the core perhaps less, by what washers or plate are there",
            Bears::Bolt => " at most: the bolt bears no more",
            Bears::Core => " at most: the core bears no more",
        }
    )
}

/// Below this nobody tightens a mounting bolt; such a core wants something let in or a plate, N·m. Common practice, no source.
const LEAST_NM: f64 = 7.0;

/// Tightened to no more than what is borne; where that is next to nothing, what is wrong is no torque.
fn slacker(rig: &Rig, allowed: &Allowed, footing: &Footing) -> Remedy {
    if allowed.torque < Moment::from_si(LEAST_NM) {
        return mend::yard(say!(
            "No torque worth the name is borne at the {}: set a backing plate or sleeves in the core first.",
            footing.name.as_str()
        ));
    }
    let entry = format!("{}.bolts.torque", entry(rig, footing));
    mend::change(advice(allowed, footing), [Change::to(entry, newton_metres(allowed.torque * JUST_BELOW))])
}

/// A torque that is told as the greatest is set this much short of it. Common practice, no source: nobody reads a wrench closer.
const JUST_BELOW: f64 = 0.99;

/// A torque, to be written in a job.
fn newton_metres(torque: Moment) -> String {
    format!("\"{:.3} N·m\"", torque.si())
}

/// The torque above which it is too much.
fn tolerated(allowed: &Allowed) -> Moment {
    if allowed.by == Bears::Sheet { ABOVE_SHEET * allowed.torque } else { allowed.torque }
}

/// The finding, or the one that waits where it leans on what the job does not tell.
fn told(finding: Finding, missing: Vec<Missing>) -> Finding {
    if missing.is_empty() { finding } else { Finding::unmeasured(missing) }
}

/// A torque beyond what is allowed; `need` keeps the joint shut.
fn beyond(
    rig: &Rig,
    allowed: &Allowed,
    footing: &Footing,
    strength: &Strength,
    (found, need): (Measure, Moment),
) -> Finding {
    let name = footing.name.as_str();
    let soft = strength.left() != KnockDown::SOUND;
    let (summary, missing) = match allowed.by {
        Bears::Sheet => (say!("{} is more than the mounting sheet of the {} gives.", found, name), Vec::new()),
        Bears::Bolt => (
            say!("{} preloads the bolts of the {} to more than three quarters of their proof load.", found, name),
            footing.lacks(Part::Tension),
        ),
        Bears::Core if soft => {
            (say!("{} is more than what is left of the core under the nuts of the {} bears.", found, name), Vec::new())
        }
        Bears::Core => (say!("{} sinks the washers of the {} into the core.", found, name), Vec::new()),
    };
    let remedy = match allowed.by {
        Bears::Core if soft => core_first(),
        Bears::Core if need > allowed.torque => tighter(rig, allowed, footing, need),
        _ => slacker(rig, allowed, footing),
    };
    told(Finding::new(Verdict::Warn, summary).remedy(remedy), missing)
}

/// How a joint is kept shut that opens.
fn tighter(rig: &Rig, allowed: &Allowed, footing: &Footing, need: Moment) -> Remedy {
    let (shuts, most) = (Measure::of(need), Measure::of(allowed.torque));
    let set = |torque: Moment| vec![Change::to(format!("{}.bolts.torque", entry(rig, footing)), newton_metres(torque))];
    match allowed.by {
        Bears::Sheet if need <= allowed.torque => {
            mend::change(say!("Tighten to {}, as the mounting sheet says.", most), set(allowed.torque))
        }
        Bears::Bolt | Bears::Core if need <= allowed.torque => {
            mend::change(say!("Tighten to between {} and {}.", shuts, most), set((need + allowed.torque) / 2.0))
        }
        Bears::Core => {
            mend::yard(say!("Set larger washers or a backing plate under the nuts, then tighten to {}.", shuts))
        }
        Bears::Bolt | Bears::Sheet => mend::yard("No torque that the bolts may have keeps it shut: set stronger ones."),
    }
}

/// The greatest pull before and after.
fn before_after(strength: &Strength) -> Table {
    let greatest = |laden: &Laden| laden.footings.iter().map(|footing| pull(footing, laden)).fold(0.0, f64::max);
    let after = greatest(&strength.after);
    let mut rows = Vec::new();
    if let Ok(before) = &strength.before {
        rows.push(vec![Text::from("before"), Text::from(Measure::of(Force::from_si(greatest(before))))]);
    }
    rows.push(vec![Text::from("after"), Text::from(Measure::of(Force::from_si(after)))]);
    Table::new("greatest pull of ordinary running, which a preload must outlast", &["", "pull"], rows)
}
