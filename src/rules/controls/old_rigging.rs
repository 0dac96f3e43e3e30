//! `controls/old-rigging`

use crate::case::Case;
use crate::job::rigging::{self, Kept, OldPart, Reach};
use crate::job::{Cycle, Sitting};
use crate::quantity::{Measure, Text, say};
use crate::reading::reading;
use crate::rig::Missing;
use crate::rules::mend::{self, Change};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Verdict};
use crate::working::Table;

rule! {
    /// What comes out with the old engines, and whether what stays can serve the new ones.
    ///
    /// **Why.** Old oil tanks, cables and harnesses that are left in the well are weight, chafe and a puzzle; parts that stay without
    /// being looked at fail first.
    ///
    /// **Limit.** No oil tank or oil line with four-strokes; no engine harness or key switch of the old engines; no control cables
    /// with electronic controls; cables no older than 10 years, batteries no older than 5.
    ///
    /// **Source.** Common practice, no source.
    ///
    /// **When it warns.** It warns of each part that stays and should not; the table lists what comes out, with its weight.
    OLD_RIGGING = Controls "controls/old-rigging", judge;
}

/// Years that cables and hoses, and batteries, last. Common practice, no source.
const CABLE_YEARS: f64 = 10.0;
const BATTERY_YEARS: f64 = 5.0;

fn judge(case: &Case) -> Judgement {
    let rig = case.rig;
    let comes_out = rig.before.items.iter().filter(|entry| entry.item.part.is_some());
    let rows: Vec<Vec<Text>> = comes_out
        .map(|entry| {
            let count = usize::from(entry.item.count.unwrap_or(1));
            let weight =
                entry.weight.reading().map_or(Text::from("not given"), |weight| Measure::of(weight.value).into());
            vec![Text::from(entry.item.what.as_str()), say!("{}", count), weight]
        })
        .collect();
    let kept = &rig.job.rigging.kept;
    if rows.is_empty() && kept.is_empty() {
        let levers = rig.job.rigging.controls.as_ref().and_then(|controls| controls.levers);
        let asked = levers.is_some_and(|levers| levers != Reach::Tiller)
            && rig.job.sitting != Sitting::AsFitted
            && !rig.before.is_empty();
        return Ok(if asked {
            Finding::unmeasured(vec![Missing::one(reading!(rigging::Rigging.kept))])
        } else {
            Finding::not_applicable(Text::from(super::NOTHING_TOLD))
        });
    }
    let wrong: Vec<Text> =
        kept.iter().filter(|kept| !told_elsewhere(case, kept)).filter_map(|kept| goes(case, kept)).collect();
    let table = Table::new("comes out with the old engines", &["part", "how many", "weight"], rows.clone());
    let finding = if wrong.is_empty() {
        Finding::new(
            Verdict::Pass,
            Text::from(if rows.is_empty() {
                "What stays can serve."
            } else {
                "What comes out is listed, and what stays can serve. Plug the holes that they leave."
            }),
        )
    } else {
        Finding::new(
            Verdict::Warn,
            Text::from("What should not stay: ").then(Text::join(wrong, "; ")).then(Text::from(".")),
        )
        .remedy(mend::change(
            "Take these out too, or replace them, and plug the holes that they leave.",
            // From the last on, so that the others keep their places.
            kept.iter()
                .enumerate()
                .rev()
                .filter(|(_, kept)| !told_elsewhere(case, kept) && goes(case, kept).is_some())
                .map(|(i, _)| Change::out(format!("rigging.kept[{i}]"))),
        ))
    };
    Ok(finding.table(table))
}

/// Whether a part's age is judged where it is told by itself, and so only once.
fn told_elsewhere(case: &Case, kept: &Kept) -> bool {
    let rigging = &case.rig.job.rigging;
    match kept.part {
        OldPart::FuelLine => {
            rigging.fuel.as_ref().is_some_and(|fuel| fuel.lines.iter().any(|line| line.years.is_some()))
        }
        OldPart::ControlCable => {
            let controls = rigging.controls.as_ref();
            let takes_none = controls.and_then(|controls| controls.engines_take) == Some(Reach::Electronic);
            !takes_none && controls.is_some_and(|controls| controls.cables.iter().any(|cable| cable.years.is_some()))
        }
        _ => false,
    }
}

/// Why a part should not stay; nothing where it may.
pub(crate) fn goes(case: &Case, kept: &Kept) -> Option<Text> {
    let mains = case.rig.after.mains();
    let four_strokes = !mains.is_empty() && mains.iter().all(|engine| engine.spec.cycle != Some(Cycle::TwoStroke));
    let electronic =
        case.rig.job.rigging.controls.as_ref().and_then(|controls| controls.engines_take) == Some(Reach::Electronic);
    let older = |years: f64| kept.years.is_some_and(|age| age > years);
    let part = kept.part.words();
    match kept.part {
        OldPart::OilTank | OldPart::OilLine if four_strokes => Some(say!("{}: the new engines burn no oil", part)),
        OldPart::Harness | OldPart::KeySwitch => Some(say!("{}: belongs to the old engines", part)),
        OldPart::ControlCable | OldPart::ControlBox if electronic => {
            Some(say!("{}: the new engines take no cables", part))
        }
        OldPart::ControlCable | OldPart::SteeringCable | OldPart::FuelLine if older(CABLE_YEARS) => {
            Some(say!("{}: older than {} years", part, CABLE_YEARS.to_string()))
        }
        OldPart::Battery if older(BATTERY_YEARS) => {
            Some(say!("{}: older than {} years", part, BATTERY_YEARS.to_string()))
        }
        _ => None,
    }
}
