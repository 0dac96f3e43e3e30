//! `strength/bolt-torque`

use uom::si::f64::{Force, Length, Ratio};

use super::{CORE_FIRST, ready};
use crate::case::Case;
use crate::case::strength::{Footing, Laden, Strength};
use crate::job::{ThreadState, tape};
use crate::physics::strength::bolts::{
    Condition, PRELOAD_OF_PROOF, crushing_capacity, nut_factor, preload, tightening_torque, washer_area,
};
use crate::physics::strength::knockdown::KnockDown;
use crate::quantity::{Dimensioned, Measure, Moment, Text, say};
use crate::rig::Missing;
use crate::rules::rule::{given, rule};
use crate::rules::{Finding, Limit, Verdict};
use crate::working::{Sheet, Table, Term, min};

rule! {
    /// The torque of the mounting bolts: what bolt and core bear, and whether the joint stays shut.
    ///
    /// **Why.** A nut turned too far sinks into the core and is slack by the next season; one turned too
    /// little lets the bracket work.
    ///
    /// **Limit.** At most the torque that preloads the bolt to three quarters of its proof load or the
    /// core to three quarters of its crushing strength, whichever is less; and preload enough to outlast the
    /// greatest pull.
    ///
    /// **Source.** Shigley, Mechanical Engineering Design, section 8-8 and table 8-15 (preload and nut
    /// factors), values from memory; common practice, no source (nut factor of stainless with paste,
    /// share of the crushing strength).
    ///
    /// **When it warns.** Tighten to the torque given, or spread the nuts over a backing plate so that
    /// more torque can be used. It fails where the torque stretches the bolt for good.
    BOLT_TORQUE = Strength "strength/bolt-torque", judge;
}

/// How much of the crushing strength a standing preload may use, as of a bolt's proof load. Common practice, no source.
const STANDING: f64 = PRELOAD_OF_PROOF;

fn judge(case: &Case) -> Finding {
    let strength = given!(ready(case));
    let mut worst: Option<Finding> = None;
    for footing in &strength.after.footings {
        one(footing, strength).keep_worse(&mut worst);
    }
    worst.unwrap_or_else(|| Finding::unmeasured(vec![case.rig.after.missing()]))
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

/// The greatest pull on a bolt of this face, N.
fn pull(footing: &Footing) -> f64 {
    footing.forces.iter().flat_map(|group| &group.bolts).map(|bolt| bolt.tension).fold(0.0, f64::max)
}

/// What a bolt may be preloaded to, and by what torque.
struct Allowed {
    /// Preload, N.
    preload: f64,
    torque: Moment,
    /// Whether the core gives before the bolt.
    core_governs: bool,
    /// Torque over preload and diameter.
    nut_factor: f64,
    /// The state of the thread, in words.
    thread: &'static str,
}

fn allowed(footing: &Footing, strength: &Strength, sheet: &mut Sheet) -> Allowed {
    let length = Length::from_si;
    let proof = footing.tension_capacity(sheet);
    let by_bolt = preload(sheet, PRELOAD_OF_PROOF, &proof);
    let across = footing.spread(&strength.board, strength.left());
    let area = washer_area(sheet, length(across), length(footing.hole()));
    let crushing = strength.left().strength * strength.board.core_material().crushing_strength.value;
    let crushes = crushing_capacity(sheet, crushing, &area);
    let part = Term::new("cs", Ratio::from_si(STANDING));
    let by_core = sheet.set("Fc", "preload that the core bears for years", part * crushes);
    let core_governs = by_core.value() < by_bolt.value();
    let preload = sheet.set("Fa", "preload allowed", min(by_bolt, by_core));
    let (state, thread) = condition(footing);
    let nut_factor = nut_factor(state);
    let torque = tightening_torque(sheet, nut_factor, length(footing.diameter()), &preload);
    Allowed { preload: preload.value().si(), torque: torque.value(), core_governs, nut_factor, thread }
}

fn one(footing: &Footing, strength: &Strength) -> Finding {
    let force = |newtons| Measure::of(Force::from_si(newtons));
    let mut sheet = Sheet::default();
    let allowed = allowed(footing, strength, &mut sheet);
    let most = allowed.torque;
    let limit = Limit::AtMost(Measure::of(most));
    let greatest = pull(footing);
    let opens = greatest > allowed.preload;
    let name = footing.name.as_str();
    let bears = if allowed.core_governs { "the core bears no more" } else { "the bolt bears no more" };
    let opening = say!(
        " Even so the greatest pull, {}, opens the joint: the core lets the bolts be preloaded to {} only.",
        force(greatest),
        force(allowed.preload)
    );
    let advice = say!(
        "Tighten {} {} at the {} to {} at most: {}.",
        footing.size.name.as_str(),
        allowed.thread,
        name,
        Measure::of(most),
        bears
    );
    let Some(given) = &footing.given.said.torque else {
        let missing = Missing { measurement: &tape::BOLT_TORQUE, of: Some(name.to_owned()) };
        return Finding {
            missing: vec![missing],
            ..Finding::new(Verdict::Unmeasured, advice.then(if opens { opening } else { Text::default() }))
                .limit(limit)
                .working(sheet)
        };
    };
    let preloaded = given.value.si() / (allowed.nut_factor * footing.diameter());
    sheet.remark(say!("the torque given, {}, preloads a bolt to {}", Measure::of(given.value), force(preloaded)));
    let found = Measure::of(given.value);
    let finding = if preloaded > footing.tension_capacity(&mut Sheet::default()).value().si() {
        Finding::new(Verdict::Fail, say!("{} stretches the bolts of the {} for good.", found, name)).remedy(advice)
    } else if given.value > most && strength.left() != KnockDown::SOUND {
        Finding::new(
            Verdict::Warn,
            say!("{} is more than what is left of the core under the nuts of the {} bears.", found, name),
        )
        .remedy(Text::from(CORE_FIRST))
    } else if given.value > most {
        Finding::new(
            Verdict::Warn,
            say!("{} is more than the core under the nuts of the {} bears for long.", found, name),
        )
        .remedy(advice)
    } else if greatest > preloaded {
        let need = Measure::of(<Moment as Dimensioned>::from_si(allowed.nut_factor * footing.diameter() * greatest));
        let remedy = if opens {
            say!("Set a backing plate (strength/washer-crush), then tighten to {}.", need)
        } else {
            say!("Tighten to between {} and {}.", need, Measure::of(most))
        };
        Finding::new(
            Verdict::Warn,
            say!(
                "{} preloads the bolts of the {} to less than the greatest pull: the joint opens and works.",
                found,
                name
            ),
        )
        .remedy(remedy)
    } else {
        Finding::new(Verdict::Pass, say!("{} holds the joint of the {} shut, and bolt and core bear it.", found, name))
    };
    finding.against(found, limit).working(sheet).table(before_after(strength))
}

/// The greatest pull before and after.
fn before_after(strength: &Strength) -> Table {
    let greatest = |laden: &Laden| laden.footings.iter().map(pull).fold(0.0, f64::max);
    let after = greatest(&strength.after);
    let mut rows = Vec::new();
    if let Ok(before) = &strength.before {
        rows.push(vec![Text::from("before"), Text::from(Measure::of(Force::from_si(greatest(before))))]);
    }
    rows.push(vec![Text::from("after"), Text::from(Measure::of(Force::from_si(after)))]);
    Table::new("greatest pull that a preload must outlast", &["", "pull"], rows)
}
