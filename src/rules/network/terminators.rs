//! `network/terminators`

use super::told;
use crate::case::Case;
use crate::physics::rigging::network;
use crate::quantity::Dimensioned;
use crate::quantity::{Measure, Text, say};
use crate::rules::mend::{self, Change};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use uom::si::f64::Ratio;

rule! {
    /// Terminators on the backbone.
    ///
    /// **Why.** With one or with three, messages bounce: it works at the dock and stops at sea.
    ///
    /// **Limit.** Two of 120 Ω, one at each end.
    ///
    /// **Source.** NMEA 2000 and IEC 61162-3 (from memory).
    ///
    /// **When it warns.** It warns of any other number.
    TERMINATORS = Network "network/terminators", judge;
}

fn judge(case: &Case) -> Judgement {
    let network = told(case)?;
    let count = network.terminators().ask()?;
    let of = |count: u8| Measure::of(Ratio::from_si(f64::from(count)));
    let finding = if *count == network::TERMINATORS {
        Finding::new(Verdict::Pass, Text::from("Two terminators."))
    } else {
        let finding = Finding::new(Verdict::Warn, say!("{} {}.", usize::from(*count), if *count == 1 { "terminator" } else { "terminators" }))
            .remedy(mend::change("Put one at each end of the backbone and nowhere else; with power off, 60 Ω stands between its two signal wires.", [Change::to("rigging.network.terminators", network::TERMINATORS.to_string())]));
        if *count < network::TERMINATORS {
            finding.buys("terminator", say!("{}", usize::from(network::TERMINATORS - *count)))
        } else {
            finding
        }
    };
    Ok(finding.against(of(*count), Limit::Within(of(network::TERMINATORS), of(network::TERMINATORS))))
}
