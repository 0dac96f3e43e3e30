//! `strength/tabbing`

use super::ready;
use crate::case::Case;
use crate::job::{Bond, Sign, tape};
use crate::quantity::{Text, say};
use crate::rig::Missing;
use crate::rules::rule::rule;
use crate::rules::{Finding, Verdict};

rule! {
    /// What ties the transom to the hull's sides and bottom.
    ///
    /// **Why.** What the engines bring to the transom goes on into sides and bottom through their tabbing
    /// or welds. Where that has let go, knees and skins carry all of it, until they follow.
    ///
    /// **Limit.** Sides and bottom hold it, by tabbing, bedding or weld, or moulded in one.
    ///
    /// **Source.** Common practice, no source.
    ///
    /// **When it warns.** It fails where any of it has let go: grind it off and lay it up anew, or weld it
    /// again, before an engine runs on it.
    TABBING = Strength "strength/tabbing", judge;
}

fn judge(case: &Case) -> Finding {
    if let Some(finding) = let_go(case) {
        return finding;
    }
    let said = &case.rig.structure.said;
    match (said.sides, said.bottom, ready(case)) {
        (Some(sides), Some(bottom), _) => Finding::new(
            Verdict::Pass,
            say!("The hull's sides hold the transom ({}), and so does its bottom ({}).", sides.words(), bottom.words()),
        ),
        // A job that says nothing of strength is asked for no more than the other checks of strength ask for.
        (_, _, Err(waits)) if !case.rig.structure.asked => *waits,
        _ => Finding::unmeasured(vec![Missing::one(&tape::HELD)]),
    }
}

/// What fails by words alone: tabbing that was found loose.
pub(super) fn let_go(case: &Case) -> Option<Finding> {
    let rig = case.rig;
    let said = &rig.structure.said;
    let signs = [said.signs.as_ref(), rig.ran.as_ref().and_then(|ran| ran.then.as_ref())];
    let seen = signs.into_iter().flatten().any(|signs| signs.seen().contains(&Sign::TabbingLetGo));
    let loose = |bond: Option<Bond>| bond == Some(Bond::Loose);
    let where_loose = match (loose(said.sides), loose(said.bottom)) {
        (true, true) => "What ties the transom to the hull's sides and bottom has let go",
        (true, false) => "What ties the transom to the hull's sides has let go",
        (false, true) => "What ties the transom to the hull's bottom has let go",
        (false, false) if seen => "Tabbing of the transom was seen to have let go",
        (false, false) => return None,
    };
    let held = [said.sides, said.bottom].into_iter().flatten().any(|bond| bond != Bond::Loose);
    let agrees = if seen && held && !loose(said.sides) && !loose(said.bottom) {
        " That does not agree with what is said of sides and bottom; the worse of them counts."
    } else {
        ""
    };
    let summary = say!("{}: what the engines bring to it has nowhere else to go.{}", where_loose, agrees);
    Some(Finding::new(Verdict::Fail, summary).remedy(Text::from(
        "Run no engine on it. Have it ground off and laid up anew, or welded again, by a licensed marine technician, and have the core sounded while it is open.",
    )))
}
