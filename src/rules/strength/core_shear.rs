//! `strength/core-shear`

use super::strengthen::strengthen;
use super::weigh::Weighed;
use super::{DESIGN_FACTOR, by_case, factor, first, ready_with_core};
use crate::case::Case;
use crate::case::strength::show::{force, place, ratio};
use crate::case::strength::{Laden, Way, support};
use crate::quantity::{Text, say};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Verdict};
use crate::working::Sheet;

rule! {
    /// The core against shear along what holds the transom: the force that sides, bottom, knees, stringers and the
    /// well's floor hand over.
    ///
    /// **Why.** A core that shears keeps its skins and its looks, and the transom goes limp.
    ///
    /// **Limit.** The strength in shear through the thickness, lowered by what was read of the core, at least
    /// twice the stress. Edges, knees and stringers are taken as lines on which the force is
    /// linear, as in a group of welds; each side of a knee takes half.
    ///
    /// **Source.** Shigley, Mechanical Engineering Design, section 9-4 (a seam as a line), from memory; ISO 12215-5, design
    /// stress half of the ultimate, value from memory.
    ///
    /// **When it warns.** Fit knees where the finding says, or build the transom up. It fails where the stress is
    /// beyond the strength even with the best of what was not told.
    CORE_SHEAR = Strength "strength/core-shear", judge;
}

fn judge(case: &Case) -> Judgement {
    let strength = ready_with_core(case)?;
    let (index, used) = strength.after.bent.worst(Way::Shear);
    let Some(push) = used.push else {
        return Ok(Finding::new(Verdict::Pass, Text::from("Nothing that holds the transom is loaded.")));
    };
    let mut sheet = Sheet::default();
    sheet.remark(
        say!("the ")
            .then(support(push.0, &strength.board))
            .then(say!(" pushes with {} a metre, ", force(push.1)))
            .then(place(used.at, strength.board.top))
            .then(say!(", {}; shear over strength ", strength.after.cases[index].name()))
            .then(ratio(used.part)),
    );
    let what = say!("Along the ")
        .then(support(push.0, &strength.board))
        .then(say!(
            " the core bears {} times the shear on it, {}.",
            factor(used.factor()),
            strength.after.cases[index].name()
        ))
        .then(first(strength, case.rig, Way::Shear.words()));
    let effects = |laden: &Laden| laden.bent.effects.iter().map(|one| one.used[Way::Shear as usize].part).collect();
    let table = by_case("shear beside supports: load over strength", strength, effects, ratio);
    let weighed = Weighed::of(case, strength, Way::Shear, DESIGN_FACTOR);
    let finding = weighed.finding(case, strength, Way::Shear, what).working(sheet).table(table);
    if matches!(finding.verdict, Verdict::Warn | Verdict::Fail) {
        return Ok(finding.remedy(strengthen(case.rig, strength)));
    }
    Ok(finding)
}
