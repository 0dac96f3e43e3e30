//! `strength/tabbing`

use super::weigh::Weighed;
use super::{DESIGN_FACTOR, factor};
use crate::case::Case;
use crate::case::strength::show::force;
use crate::case::strength::{Strength, Way, support};
use crate::job::{self, Bond, Sign};
use crate::quantity::{Text, say};
use crate::reading::reading;
use crate::rig::Missing;
use crate::rules::mend::{self, Change};
use crate::rules::rule::rule;
use crate::rules::{Finding, Verdict};
use crate::working::Sheet;

rule! {
    /// What ties the transom to the hull's sides and bottom: whether it holds, and what it bears of what the engines bring.
    ///
    /// **Why.** What the engines bring to the transom goes on into sides and bottom through their tabbing
    /// or welds. Where that has let go, knees and skins carry all of it, until they follow.
    ///
    /// **Limit.** Sides and bottom hold it, by tabbing, bedding or weld, or moulded in one; and the pull that a length of tab
    /// bears, the lesser of what its bond and its laminate bear, is at least twice what comes to it. The hull's edge and what
    /// else stands behind are taken as lines on which the force is linear, as in a group of welds.
    ///
    /// **Source.** Shigley, Mechanical Engineering Design, section 9-4 (a seam as a line), from memory; ISO 12215-5, design
    /// stress half of the ultimate, value from memory; common practice, no source (what bond and tab bear, and their usual size).
    ///
    /// **When it warns.** It fails where any of it has let go: grind it off and lay it up anew, or weld it
    /// again, before an engine runs on it.
    TABBING = Strength "strength/tabbing", judge;
}

/// Step in which a tab is told wider and thicker. Common practice, no source.
const TAB_STEP: f64 = 0.5;

fn judge(case: &Case) -> Finding {
    if let Some(finding) = let_go(case) {
        return finding;
    }
    let said = &case.rig.structure.said;
    match (said.sides, said.bottom, case.strength()) {
        (Some(_), Some(_), Ok(strength)) => torn(case, strength),
        (Some(sides), Some(bottom), _) => Finding::new(
            Verdict::Pass,
            say!("The hull's sides hold the transom ({}), and so does its bottom ({}).", sides.words(), bottom.words()),
        ),
        // A job that says nothing of strength is asked for no more than the other checks of strength ask for.
        (_, _, Err(waits)) if !case.rig.structure.asked => waits.into(),
        _ => Finding::unmeasured(vec![Missing::one(reading!(job::Structure.sides))]),
    }
}

/// What the tabs bear of what comes to them.
fn torn(case: &Case, strength: &Strength) -> Finding {
    let (index, used) = strength.after.bent.worst(Way::Tabbing);
    let Some((part, push)) = used.push else {
        return Finding::new(Verdict::Pass, Text::from("Nothing comes to what holds the transom."));
    };
    let case_name = strength.after.cases[index].name();
    let mut sheet = Sheet::default();
    sheet.remark(say!("a metre of the ").then(support(part, &strength.board)).then(say!(
        " hands over {}, {}; its tab bears {}",
        force(push),
        case_name,
        force(strength.board.tab)
    )));
    let what = say!("The tab of the ").then(support(part, &strength.board)).then(say!(
        " bears {} times what comes to it, {}.",
        factor(used.factor()),
        case_name
    ));
    let finding = Weighed::of(case, strength, Way::Tabbing, DESIGN_FACTOR)
        .finding(case, strength, Way::Tabbing, what)
        .working(sheet);
    if matches!(finding.verdict, Verdict::Warn | Verdict::Fail) {
        let times = (DESIGN_FACTOR / used.factor() / TAB_STEP).ceil() * TAB_STEP;
        let words = say!(
            "Lay a tab {} times as wide and as thick round sides and bottom; grind to sound laminate first.",
            factor(times)
        );
        return finding.remedy(match &case.rig.structure.said.tabbing {
            Some(tab) => {
                let [width, thickness] = [tab.width.value, tab.thickness.value].map(|one| mend::exactly(one * times));
                let changes = [("width", width), ("thickness", thickness)]
                    .map(|(field, value)| Change::to(format!("structure.tabbing.{field}"), value));
                mend::change(words, changes)
            }
            None => mend::yard(words),
        });
    }
    finding
}

/// What fails by words alone: tabbing that was found loose.
pub(in crate::rules) fn let_go(case: &Case) -> Option<Finding> {
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
    Some(Finding::new(Verdict::Fail, summary).remedy(mend::yard(
        "Run no engine on it. Have it ground off and laid up anew, or welded again, by a licensed marine technician, and have the core sounded while it is open.")))
}
