//! `network/backbone`

use super::told;
use crate::case::Case;
use crate::case::rigging::asked;
use crate::job::rigging;
use crate::physics::rigging::network::{DROP_M, DROPS_M, longest};
use crate::quantity::{Dimensioned, Measure, Style, Text, say};
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
    let drops: Vec<Length> = network.devices.iter().filter_map(|device| Some(device.drop.as_ref()?.value)).collect();
    let longest_drop = drops.iter().copied().fold(Length::from_si(0.0), |a, b| if b.si() > a.si() { b } else { a });
    let together = drops.iter().copied().fold(Length::from_si(0.0), |sum, drop| sum + drop);
    for (what, found, most) in [
        ("backbone", length.value, longest(*cable)),
        ("longest drop", longest_drop, Length::from_si(DROP_M)),
        ("drops together", together, Length::from_si(DROPS_M)),
    ] {
        if found.exceeds(most) {
            return Ok(Finding::new(Verdict::Warn, say!("{}: {}.", what, shown(found)))
                .remedy(mend::yard(Text::from(if what == "backbone" {
                    "Use heavy cable, or divide it."
                } else {
                    "Move the backbone to the device, so that its drop is short."
                })))
                .against(shown(found), Limit::AtMost(shown(most))));
        }
    }
    Ok(Finding::new(
        Verdict::Pass,
        say!("A backbone of {} {} cable; drops of {} together.", shown(length.value), cable.words(), shown(together)),
    )
    .against(shown(length.value), Limit::AtMost(shown(longest(*cable)))))
}
