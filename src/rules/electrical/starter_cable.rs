//! `electrical/starter-cable`

use super::told;
use crate::case::Case;
use crate::case::rigging::current;
use crate::job::rigging;
use crate::physics::rigging::wire::OTHER_DROP;
use crate::quantity::{Dimensioned, Measure, Style, Text, say};
use crate::reading::reading;
use crate::rig::Missing;
use crate::rules::mend::{self, Change};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use uom::si::f64::ElectricPotential;

rule! {
    /// Voltage that the battery cable loses while the starter turns, there and back.
    ///
    /// **Why.** A starter that gets 10 V turns slowly and draws more; the engine's computer resets and the engine will not start.
    ///
    /// **Limit.** A tenth of 12 V over the round trip, at the starter's current.
    ///
    /// **Source.** ABYC E-11 (the tenth, from memory); resistance of copper by IEC 60028, section by ASTM B258.
    ///
    /// **When it warns.** It warns over it, and names the thinnest wire of the catalog that keeps it.
    STARTER_CABLE = Electrical "electrical/starter-cable", judge;
}

fn judge(case: &Case) -> Judgement {
    let electrical = told(case)?;
    if current::pulled_by_hand(case) {
        return Ok(Finding::not_applicable(Text::from("Her engines are pulled by hand.")));
    }
    let permitted = current::supply() * OTHER_DROP;
    let mut worst: Option<Finding> = None;
    for (i, entry) in current::starting(electrical) {
        match current::starter_cable(case, entry, i) {
            Ok(wired) => of_cable(case, i, wired, permitted).keep_worse(&mut worst),
            Err(missing) => return Ok(Finding::unmeasured(missing)),
        }
    }
    Ok(worst.unwrap_or_else(|| Finding::unmeasured(vec![Missing::one(reading!(rigging::Electrical.batteries))])))
}

/// What is said of the cable of the battery in this place of the list.
fn of_cable(case: &Case, index: usize, wired: current::Wired, permitted: ElectricPotential) -> Finding {
    let (found, limit) = (wired.drop.measure(), Measure::of(permitted));
    let run = Measure::styled(wired.length, Style::FeetInches);
    let summary = say!(
        "The cable of the {} loses {} in {} each way while the starter, turning, draws {}.",
        wired.name.as_str(),
        found,
        run,
        Measure::of(wired.current)
    );
    let wire = current::thinnest(case.rig, wired.length, wired.current, permitted);
    let finding = match (wired.drop.value().exceeds(permitted), wire) {
        (false, _) => Finding::new(Verdict::Pass, summary),
        (true, Some(wire)) => Finding::new(Verdict::Warn, summary)
            .remedy(mend::change(
                say!("Fit {} there and back to the {}, or put it nearer.", wire.as_str(), wired.name.as_str()),
                Change::class(&format!("rigging.electrical.batteries[{index}].cable.wire"), &wire),
            ))
            .buys(format!("cables to the {}, red and black", wired.name), say!("{}, {} each", wire.as_str(), run)),
        (true, None) => Finding::new(Verdict::Warn, summary).remedy(mend::yard(say!(
            "No wire of the catalog is thick enough: put the {} nearer.",
            wired.name.as_str()
        ))),
    };
    finding.against(found, Limit::AtMost(limit)).working(wired.sheet)
}
