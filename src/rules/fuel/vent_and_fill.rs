//! `fuel/vent-and-fill`

use super::told;
use crate::case::Case;
use crate::job::Fuel;
use crate::quantity::{Dimensioned, Measure, Text, inches, say};
use crate::reading::All;
use crate::rules::mend::{self, Change};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};

rule! {
    /// The inside of the built-in tank's vent and fill hoses.
    ///
    /// **Why.** A tank that cannot breathe is sucked flat by two thirsty engines, or spits fuel back at whoever fills it.
    ///
    /// **Limit.** Vent at least 7/16 in, fill at least 1-1/2 in inside.
    ///
    /// **Source.** ISO 10088 and ABYC H-24 (from memory; check the clause before relying on it).
    ///
    /// **When it warns.** It warns of a smaller one. It does not apply to portable tanks.
    VENT_AND_FILL = Fuel "fuel/vent-and-fill", judge;
}

/// Least insides, in. Source: ISO 10088, values from memory: 11 mm and 38 mm.
const VENT_IN: f64 = 7.0 / 16.0;
const FILL_IN: f64 = 1.5;
/// Half a millimetre, in inches: the standard's figures are metric, and hoses are sold in both.
const SAME_IN: f64 = 0.02;

fn judge(case: &Case) -> Judgement {
    let rig = told(case)?;
    if case.rig.job.boat.fuel == Some(Fuel::PortableTanks) {
        return Ok(Finding::not_applicable(Text::from("A portable tank has vent and fill in its cap.")));
    }
    let (vent, fill) = (rig.vent().ask(), rig.fill().ask()).all()?;
    let mut worst: Option<Finding> = None;
    for (what, hose, least) in [("vent", vent, VENT_IN), ("fill", fill, FILL_IN)] {
        let (found, limit) = (Measure::tape(hose.value), Measure::tape(inches(least)));
        if inches(least - SAME_IN).exceeds(hose.value) {
            Finding::new(Verdict::Warn, say!("The {} hose is {} inside.", what, found))
                .remedy(mend::change(
                    say!("Fit a {} hose of at least {} with its fitting.", what, limit),
                    [Change::told(format!("rigging.fuel.{what}"), limit)],
                ))
                .buys(format!("{what} hose and fitting"), say!("at least {} inside", limit))
                .against(found, Limit::AtLeast(limit))
                .keep_worse(&mut worst);
        }
    }
    Ok(worst.unwrap_or_else(|| {
        Finding::new(
            Verdict::Pass,
            say!("Vent {} and fill {} inside.", Measure::tape(vent.value), Measure::tape(fill.value)),
        )
        .against(Measure::tape(vent.value), Limit::AtLeast(Measure::tape(inches(VENT_IN))))
    }))
}
