//! `strength/knees`

use super::core_first;
use super::strengthen::fitted;
use crate::physics::strength::knockdown::KnockDown;
use crate::rules::mend::{self, Remedy};
use uom::si::f64::Length;

use crate::case::Case;
use crate::quantity::{Dimensioned, Measure, Text, inches, say};
use crate::reading::All;
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Verdict};

rule! {
    /// Whether anything behind the transom carries the moment of engines that hang far aft on a bracket.
    ///
    /// **Why.** A bracket that sets the engines two feet aft turns the transom inward at every sea. Knees or tall
    /// stringers take that moment into the bottom; where they were cut away for a tank or a hatch, the skins
    /// have it all and tire, whatever they bear once.
    ///
    /// **Limit.** With 20 in of setback or more, a knee or a stringer on each side that reaches half up the transom.
    ///
    /// **Source.** Common practice, no source.
    ///
    /// **When it warns.** Fit knees from the transom to the stringers beside the bracket before it is hung.
    KNEES = Strength "strength/knees", judge;
}

/// Setback from which a bracket wants knees. Common practice, no source.
const FAR_AFT_IN: f64 = 20.0;
/// How far up the transom a knee or a stringer must reach to count. Common practice, no source.
const REACH: f64 = 0.5;

fn judge(case: &Case) -> Judgement {
    let rig = case.rig;
    rig.after.ask()?;
    let far: Vec<(&str, Length)> = rig
        .after
        .groups
        .iter()
        .filter_map(|group| {
            let setback = group.setback().reading()?.value;
            let name = group.bracket.as_ref()?.name.as_str();
            (setback >= inches(FAR_AFT_IN)).then_some((name, setback))
        })
        .collect();
    let Some((name, setback)) = far.first() else {
        return Ok(Finding::not_applicable(Text::from("No bracket sets the engines 20 in aft or more.")));
    };
    if !rig.structure.asked {
        return Ok(match case.strength() {
            Err(waits) => waits.into(),
            Ok(_) => Finding::unmeasured(Vec::new()),
        });
    }
    let (knees, height) = (rig.structure.knees.ask(), rig.job.transom.height().ask()).all()?;
    let stringers = rig.structure.stringers.reading().map_or(&[][..], Vec::as_slice);
    let tall = knees.iter().chain(stringers).filter(|upright| match &upright.height {
        Some(up) => up.value >= REACH * height.value,
        None => true,
    });
    let [mut port, mut starboard] = [false; 2];
    for upright in tall {
        let y = upright.at.y();
        port |= y >= Length::default();
        starboard |= y <= Length::default();
    }
    if port && starboard {
        return Ok(Finding::new(
            Verdict::Pass,
            say!("Knees or tall stringers stand behind `{}`, {} aft.", *name, Measure::tape(*setback)),
        ));
    }
    Ok(Finding::new(
        Verdict::Warn,
        say!(
            "`{}` sets the engines {} aft, and no knee or tall stringer stands behind the transom on each side.",
            *name,
            Measure::tape(*setback)
        ),
    )
    .remedy(fit_knees(case)))
}

/// A pair of knees beside the bracket, where the panel bears more with them.
fn fit_knees(case: &Case) -> Remedy {
    let Some((knee, strength)) = case.strength().ok().and_then(|strength| Some((strength.knee_beside()?, strength)))
    else {
        return mend::yard(
            "Have knees drawn beside each side of the bracket, half up the transom at the least, tied to the stringers.",
        );
    };
    if strength.left() != KnockDown::SOUND {
        return core_first();
    }
    let tape = |metres: f64| Measure::tape(Length::from_si(metres));
    mend::change(
        say!(
            "Fit a pair of knees {} each side of the centreline, {} high, tied to the stringers.",
            tape(knee.y.abs()),
            tape(knee.to - knee.from)
        ),
        fitted(case.rig, &knee),
    )
}
