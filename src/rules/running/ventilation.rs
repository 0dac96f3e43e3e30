//! `running/ventilation`

use crate::rules::mend;
use uom::si::f64::Length;

use super::ready;
use crate::case::Case;
use crate::quantity::{Dimensioned, Measure, Text, inches, say};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::Sheet;

rule! {
    /// How deep the upper blade tips work under the water behind the transom, going straight and banked in
    /// a hard turn.
    ///
    /// **Why.** Tips that come near the surface draw air: the engine races, she loses way, and in a turn
    /// the stern lets go.
    ///
    /// **Limit.** Going straight, tips no more than an inch and a half above the line of the bottom, which the water
    /// behind it leaves by an inch in ten of setback.
    ///
    /// **Source.** Common practice, no source (how the water comes up, the inch and a half, the bank of a turn).
    ///
    /// **When it warns.** Set the engine a hole lower, or fit a larger or cupped blade; see
    /// height/plate-window.
    VENTILATION = Running "running/ventilation", judge;
}

/// How far tips may stand above the water. Common practice, no source.
const ABOVE_IN: f64 = 1.5;

fn judge(case: &Case) -> Judgement {
    let (_, predicted) = ready(case)?;
    let built = &predicted.built;
    let tips = Length::from_si(built.tips);
    let turn = Length::from_si(built.tips_in_turn);
    let stands = |tips: Length| {
        let word = if tips.si() < 0.0 { "over" } else { "under" };
        say!("{} {} the water", Measure::tape(tips.abs()), word)
    };
    let mut sheet = Sheet::default();
    let shaft = say!(
        "Shaft {} under the water behind the transom, half the propeller's diameter {}; banked by 15 degrees the tips of the outer engine stand ",
        Measure::tape(Length::from_si(built.shaft)),
        Measure::tape(built.screw.diameter * 0.5)
    );
    sheet.remark(shaft.then(stands(turn)).then(Text::from(".")));
    sheet.remark(Text::from("A bound, not a reckoning: what air a propeller draws is not told."));
    let least = -inches(ABOVE_IN);
    let verdict = if least.exceeds(tips) { Verdict::Warn } else { Verdict::Pass };
    let turned = if tips == turn {
        Text::from(".")
    } else {
        Text::from("; in a hard turn those of the outer engine ").then(stands(turn)).then(Text::from("."))
    };
    let summary = Text::from("Going straight the upper tips work ").then(stands(tips)).then(turned);
    let finding = Finding::new(verdict, summary)
        .against(Measure::tape(tips), Limit::AtLeast(Measure::tape(least)))
        .working(sheet);
    Ok(match verdict {
        Verdict::Warn => finding.remedy(mend::first(
            "Set the engines lower by the holes that “plate window” names.",
            "height/plate-window",
        )),
        _ => finding,
    })
}
