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
    let mut worst: Option<current::Wired> = None;
    for (i, entry) in current::starting(electrical) {
        match current::starter_cable(case, entry, i) {
            Ok(wired) if worst.as_ref().is_some_and(|worst| worst.drop.value().si() >= wired.drop.value().si()) => {}
            Ok(wired) => worst = Some(wired),
            Err(missing) => return Ok(Finding::unmeasured(missing)),
        }
    }
    let Some(wired) = worst else {
        return Ok(Finding::unmeasured(vec![Missing::one(reading!(rigging::Electrical.batteries))]));
    };
    let (found, limit) = (wired.drop.measure(), Measure::of(permitted));
    let run = Measure::styled(wired.length, Style::FeetInches);
    let summary = say!(
        "The cable of the {} loses {} in {} each way while the starter draws {}.",
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
                say!("Fit {} there and back, or put the battery nearer.", wire.as_str()),
                current::starting(electrical)
                    .filter(|(i, entry)| current::battery_name(entry, *i) == wired.name)
                    .flat_map(|(i, _)| Change::class(&format!("rigging.electrical.batteries[{i}].cable.wire"), &wire)),
            ))
            .buys("battery cables, red and black", say!("{}, {} each", wire.as_str(), run)),
        (true, None) => Finding::new(Verdict::Warn, summary)
            .remedy(mend::yard("No wire of the catalog is thick enough: put the battery nearer.")),
    };
    Ok(finding.against(found, Limit::AtMost(limit)).working(wired.sheet))
}
