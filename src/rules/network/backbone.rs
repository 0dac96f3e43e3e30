//! `network/backbone`

use super::told;
use crate::case::Case;
use crate::case::rigging::asked;
use crate::job::rigging;
use crate::physics::rigging::network::{DROP_M, DROPS_M, longest};
use crate::quantity::{Dimensioned, Measure, Style, Text, nth, say};
use crate::reading::{All, reading};
use crate::rules::mend;
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use uom::si::f64::Length;

rule! {
    /// Length of the backbone by its cable, each drop, and all drops together.
    ///
    /// **Why.** Beyond these lengths messages echo and get lost: gauges freeze, and nobody finds out why.
    ///
    /// **Limit.** 100 m of light or mid cable, 200 m of heavy; 6 m a drop, 78 m all together.
    ///
    /// **Source.** NMEA 2000 and IEC 61162-3 (from memory).
    ///
    /// **When it warns.** It warns of what is longer.
    BACKBONE = Network "network/backbone", judge;
}

fn judge(case: &Case) -> Judgement {
    let network = told(case)?;
    let shown = |length| Measure::styled(length, Style::FeetInches);
    let (cable, length) =
        (asked(network.cable.as_ref(), reading!(rigging::Rigging.network)).ask(), network.length().ask()).all()?;
    let drops = network.devices.iter().enumerate().filter_map(|(i, device)| {
        let name = device.name.clone().unwrap_or_else(|| nth("device", i));
        Some((name, device.drop.as_ref()?.value))
    });
    let together = drops.clone().fold(Length::from_si(0.0), |sum, (_, drop)| sum + drop);
    let mut worst: Option<Finding> = None;
    let mut hold = |what: Text, found: Length, most: Length, cure: Text| {
        if found.exceeds(most) {
            Finding::new(Verdict::Warn, what.then(say!(": {}.", shown(found))))
                .remedy(mend::yard(cure))
                .against(shown(found), Limit::AtMost(shown(most)))
                .keep_worse(&mut worst);
        }
    };
    let cure = Text::from("Use heavy cable for the backbone, or divide it.");
    hold(Text::from("Backbone"), length.value, longest(*cable), cure);
    for (name, drop) in drops {
        let cure = say!("Move the backbone to the {}, so that its drop is short.", name.as_str());
        hold(say!("Drop to the {}", name.as_str()), drop, Length::from_si(DROP_M), cure);
    }
    let cure = Text::from("Move the backbone to the devices, so that their drops are short.");
    hold(Text::from("Drops together"), together, Length::from_si(DROPS_M), cure);
    Ok(worst.unwrap_or_else(|| {
        Finding::new(
            Verdict::Pass,
            say!(
                "A backbone of {} {} cable; drops of {} together.",
                shown(length.value),
                cable.words(),
                shown(together)
            ),
        )
        .against(shown(length.value), Limit::AtMost(shown(longest(*cable))))
    }))
}
