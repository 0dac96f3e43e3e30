//! `strength/bending`

use super::core_first;
use super::panel_deflection::allowed_movement;
use crate::case::strength::Knee;
use crate::rig::Rig;
use crate::rules::mend::{self, Change, Remedy};
use uom::si::f64::Length;

use super::weigh::Weighed;
use super::{DESIGN_FACTOR, by_case, factor, first, limit, ready_with_core, verdict};
use crate::case::Case;
use crate::case::strength::show::{place, ratio};
use crate::case::strength::{Bent, Cure, Laden, Strength, Way, ply, solved, support};
use crate::physics::strength::knockdown::KnockDown;
use crate::quantity::{Dimensioned, Measure, Text, say};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Verdict};
use crate::working::{Sheet, Table};

rule! {
    /// The transom as a plate, bent up and across by the engines, held by the hull, its knees and stringers:
    /// the stress in skins and core against the strength of each, and what knees and stringers hold it with. Where
    /// these would let go, what it bears without them.
    ///
    /// **Why.** More moment bends the transom in and out at every sea. Cracks in the gelcoat round the
    /// bracket and at the corners of the cutout are its first words.
    ///
    /// **Limit.** The strength of each layer, lowered by what was read of the core, at least twice the
    /// stress in the worst case. Moments are means over the transom's thickness, 2 in at the least.
    ///
    /// **Source.** Reissner–Mindlin plate solved by finite elements; ISO 12215-5, design stress half of
    /// the ultimate, value from memory; EN 1995-2, 5.1.2 (how a load spreads through the thickness), value from memory;
    /// common practice, no source (the width of the mean).
    ///
    /// **When it warns.** Fit knees where the finding says, or build the transom up. It fails where the
    /// stress is beyond the strength even with the best of what was not told.
    BENDING = Strength "strength/bending", judge;
}

fn judge(case: &Case) -> Judgement {
    if let Some(answer) = study(case) {
        return Ok(answer);
    }
    let strength = ready_with_core(case)?;
    let (index, used) = strength.after.bent.worst(Way::Bending);
    let mut sheet = Sheet::default();
    solved(&mut sheet, "worst case", &strength.after, index, strength);
    if let Ok(before) = &strength.before {
        solved(&mut sheet, "worst case before", before, before.bent.worst(Way::Bending).0, strength);
    }
    let what = say!(
        "The transom bears {} times what bends it most, {}: ",
        factor(used.factor()),
        strength.after.cases[index].name()
    )
    .then(match (&used.stress, &used.push) {
        (Some(stress), _) => say!("in the {}, ", ply(stress, strength)),
        (None, Some(push)) => say!("the ").then(support(push.0, &strength.board)).then(Text::from(" lets go, ")),
        (None, None) => Text::default(),
    })
    .then(place(used.at, strength.board.top))
    .then(Text::from("."))
    .then(first(strength, case.rig, Way::Bending.words()));
    let weighed = Weighed::of(case, strength, Way::Bending, DESIGN_FACTOR);
    let mut finding = weighed.finding(case, strength, Way::Bending, what).working(sheet).table(cases(strength));
    if matches!(finding.verdict, Verdict::Warn | Verdict::Fail) {
        finding = finding.remedy(strengthen(case.rig, strength));
    }
    Ok(finding)
}

/// What makes the transom strong enough in bending and in shear beside what holds it: one remedy for both.
///
/// Where its movement can be held too, it is: one remedy for all three.
pub(super) fn strengthen(rig: &Rig, strength: &Strength) -> Remedy {
    let least = |bent: &Bent| bent.factor(Way::Bending).min(bent.factor(Way::Shear));
    let strong = |bent: &Bent| least(bent) >= OF_THE_PLACE * DESIGN_FACTOR;
    let becomes = |bent: &Bent| {
        say!(
            "it then bears {} times what bends it and {} times the shear beside what holds it",
            factor(bent.factor(Way::Bending)),
            factor(bent.factor(Way::Shear))
        )
    };
    let moves = |bent: &Bent| bent.deflection().1.largest_deflection.abs();
    let stiff = |bent: &Bent| moves(bent) * OF_THE_PLACE <= allowed_movement(&strength.board);
    let limber = !stiff(&strength.after.bent);
    if limber && strength.cure(&|bent| strong(bent) && stiff(bent)).is_some() {
        return remedy(rig, strength, &|bent| strong(bent) && stiff(bent), &|bent| {
            becomes(bent).then(say!(
                ", and moves {} at most",
                Measure::tape(mend::up(Length::from_si(moves(bent)), SIXTEENTH_IN))
            ))
        });
    }
    remedy(rig, strength, &strong, &becomes)
}

/// What a tape shows of a movement, in.
const SIXTEENTH_IN: f64 = 0.0625;

/// What a knee that stands a sixteenth beside its named place can take off the factor. Common practice, no source: half a
/// percent was found, four times that is allowed for.
pub(super) const OF_THE_PLACE: f64 = 1.02;

/// Knees where they are enough, else a thicker transom, both solved; a core that was found soft is no ground to build on.
pub(super) fn remedy(
    rig: &Rig,
    strength: &Strength,
    is_enough: &dyn Fn(&Bent) -> bool,
    becomes: &dyn Fn(&Bent) -> Text,
) -> Remedy {
    if strength.left() != KnockDown::SOUND {
        return core_first();
    }
    let tape = |metres: f64| Measure::tape(Length::from_si(metres));
    let core = strength.board.layers[strength.board.core].material.name.as_str();
    let Some((Cure { knees, more }, bent)) = strength.cure(is_enough) else {
        return mend::yard(
            "No pair of knees beside the bracket and no build-up of 2 in is enough: lighter or weaker engines, less setback, or a transom that is designed anew.",
        );
    };
    let pair = knees.map_or(Text::default(), |knee| {
        say!(
            "Fit a pair of knees {} each side of the centreline, {} high, tied to the stringers",
            tape(knee.y.abs()),
            tape(knee.to - knee.from)
        )
    });
    let built = match (knees, more > Length::default()) {
        (_, false) => Text::default(),
        (Some(_), true) => say!(", and build the transom up by {} of {} over its width", Measure::tape(more), core),
        (None, true) => say!("Build the transom up by {} of {} over its width", Measure::tape(more), core),
    };
    let changes = knees
        .map(|knee| fitted(rig, &knee))
        .into_iter()
        .chain((more > Length::default()).then(|| mend::thicker(rig, more)));
    mend::change(pair.then(built).then(Text::from(": ")).then(becomes(bent)).then(Text::from(".")), changes.flatten())
}

/// Stress over strength of each case before and after.
fn cases(strength: &Strength) -> Table {
    let effects = |laden: &Laden| laden.bent.effects.iter().map(|one| one.used[Way::Bending as usize].part).collect();
    by_case("bending: load over strength", strength, effects, ratio)
}

/// The answer where a panel is given outright with its strengths.
fn study(case: &Case) -> Option<Finding> {
    let answer = case.panel_study()?.ok()?;
    let (_, stress) = answer.weakest.as_ref()?;
    let value = 1.0 / stress.utilisation.max(f64::MIN_POSITIVE);
    let mut sheet = Sheet::default();
    sheet.remark(answer.remark());
    sheet.remark(Text::from("beside a point load, a kink or a held corner the stress grows with the mesh: a plate's theory knows no end of it there"));
    let finding = Finding::new(
        verdict(value, DESIGN_FACTOR),
        say!("The panel's strength is {} times the stress on it.", factor(value)),
    )
    .against(factor(value), limit(DESIGN_FACTOR));
    Some(answer.tables().into_iter().fold(finding.working(sheet), Finding::table))
}

/// A pair of knees like this one, beside those that stand there.
pub(super) fn fitted(rig: &Rig, knee: &Knee) -> Vec<Change> {
    let there = rig.structure.knees.reading().map_or(0, Vec::len);
    let height = mend::quoted(Measure::tape(Length::from_si(knee.to - knee.from)));
    let at = Measure::tape(Length::from_si(knee.y.abs()));
    let one = |side: &str| format!("(at: {side}({}), height: {height})", mend::quoted(at));
    if there == 0 {
        return vec![Change::to("structure.knees", format!("[{}, {}]", one("port"), one("starboard")))];
    }
    let sides = ["port", "starboard"].into_iter().enumerate();
    sides.map(|(i, side)| Change::to(format!("structure.knees[{}]", there + i), one(side))).collect()
}
