//! `fuel/boiling`

use super::{lines, told};
use crate::case::Case;
use crate::case::rigging::fuel::temperature;
use crate::physics::rigging::fuel;
use crate::quantity::{Dimensioned, Measure, Reading, Style, Text, say};
use crate::rules::mend;
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use uom::si::f64::Pressure;
use uom::si::pressure::psi;

rule! {
    /// How far the fuel at each engine's pump is from boiling on the hottest day.
    ///
    /// **Why.** Fuel that boils in the hose is vapour lock: the engine dies hot, after a stop at the fuel dock, and does not
    /// start again.
    ///
    /// **Limit.** 1 psi over the vapour pressure, at the engine, with the suction that fuel/suction finds. Without a temperature
    /// 38 °C, without a Reid figure 9 psi.
    ///
    /// **Source.** Common practice, no source (the margin); vapour pressure fitted to EPA AP-42, table 7.1-2 (values from memory).
    ///
    /// **When it warns.** It warns under it: less suction, a cooler run of hose, fresh summer fuel.
    BOILING = Fuel "fuel/boiling", judge;
}

/// Reid vapour pressure where nobody says. Common practice, no source: summer gasoline, psi.
const SUMMER_PSI: f64 = 9.0;
/// What shall be left over boiling. Common practice, no source, psi.
const LEFT_PSI: f64 = 1.0;

fn judge(case: &Case) -> Judgement {
    let rig = told(case)?;
    let lines = lines(case, rig)?;
    let reid = rig.reid.as_ref().map_or(Pressure::new::<psi>(SUMMER_PSI), |reid| reid.value);
    let heat = temperature(rig);
    let worst = lines.into_iter().reduce(|a, b| if b.suction.value().si() > a.suction.value().si() { b } else { a });
    let Some(mut worst) = worst else {
        return Ok(Finding::not_applicable(Text::from("There is no fuel line.")));
    };
    // The day on which the hose was reckoned is another, and milder.
    let from = Reading::origin(rig.temperature.as_ref());
    worst.sheet.given("Th", "temperature of the fuel on the hottest day", heat, from);
    worst.sheet.told("RVP", rig.reid.as_ref());
    let left = fuel::over_boiling(&mut worst.sheet, reid, heat, worst.suction.value());
    let (found, least) = (Measure::styled(left.value(), Style::Round), Pressure::new::<psi>(LEFT_PSI));
    let fuel = say!("With fuel of {} and a Reid pressure of {}", Measure::of(heat), Measure::of(reid));
    let line = worst.name.as_str();
    let summary = if found.si < 0.0 {
        let short = Measure { si: -found.si, ..found };
        fuel.then(say!(" it boils at the engine ({}): {} more would have to hold it down.", line, short))
    } else {
        fuel.then(say!(", {} is left over boiling at the engine ({}).", found, line))
    };
    let finding = if least.exceeds(left.value()) {
        Finding::new(Verdict::Warn, summary).remedy(mend::yard(say!(
            "Lay the hose out of the sun and away from engine and exhaust, lessen the suction ({}), and run on summer fuel.",
            Measure::styled(worst.suction.value(), Style::Suction)
        )))
    } else {
        Finding::new(Verdict::Pass, summary)
    };
    Ok(finding.against(found, Limit::AtLeast(Measure::of(least))).working(worst.sheet))
}
