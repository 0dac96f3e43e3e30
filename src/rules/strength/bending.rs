//! `strength/bending`

use super::strengthen::strengthen;
use super::weigh::Weighed;
use super::{DESIGN_FACTOR, by_case, factor, first, ready_with_core};
use crate::case::Case;
use crate::case::strength::show::{place, ratio};
use crate::case::strength::{Laden, Strength, Way, ply, solved, support};
use crate::quantity::{Text, say};
use crate::rules::rule::rule;
use crate::rules::{Judgement, Verdict};
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

/// Stress over strength of each case before and after.
fn cases(strength: &Strength) -> Table {
    let effects = |laden: &Laden| laden.bent.effects.iter().map(|one| one.used[Way::Bending as usize].part).collect();
    by_case("bending: load over strength", strength, effects, ratio)
}
