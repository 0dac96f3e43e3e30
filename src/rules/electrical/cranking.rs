//! `electrical/cranking`

use super::told;
use crate::case::Case;
use crate::case::rigging::{asked_of, current};
use crate::job::rigging::{self, Chosen};
use crate::physics::rigging::battery;
use crate::quantity::{Dimensioned, Measure, Reading, Text, say};
use crate::reading::reading;
use crate::rig::Missing;
use crate::rules::mend::{self, Change};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::Sheet;
use uom::si::f64::{ElectricCurrent, Ratio};

rule! {
    /// Each starting battery's cranking current in the coldest that she is started in, against what the starter asks for.
    ///
    /// **Why.** A larger four-stroke asks for far more than the two-stroke that it replaces; the old battery turns it in June and
    /// not in November.
    ///
    /// **Limit.** Two and a half times the starter's own current, where the manual's figure is not told. A battery gives its cold
    /// cranking current at −18 °C and a quarter more at freezing; a frost is taken where nobody says.
    ///
    /// **Source.** The engine's manual; SAE J537 (the rating, from memory); common practice, no source (the factor, the cold).
    ///
    /// **When it warns.** It warns where the battery gives less, and names what it must be rated for. Engines that are pulled by
    /// hand ask for none.
    CRANKING = Electrical "electrical/cranking", judge;
}

/// Cold cranking current as it is ordered: up to the next 10 A.
fn order(current: ElectricCurrent) -> Measure {
    Measure::of(ElectricCurrent::from_si((current.si() / ORDERED_A).ceil() * ORDERED_A))
}

/// Step in which batteries are rated. Common practice, no source, A.
const ORDERED_A: f64 = 10.0;

fn judge(case: &Case) -> Judgement {
    let electrical = told(case)?;
    if current::pulled_by_hand(case) {
        return Ok(Finding::not_applicable(Text::from("Her engines are pulled by hand.")));
    }
    let mut missing = Vec::new();
    let batteries = reading!(rigging::Electrical.batteries);
    if current::starting(electrical).next().is_none() {
        missing.push(Missing::one(batteries));
    }
    let starter = current::starter(case);
    missing.extend(starter.as_ref().err().cloned());
    let (Ok(starter), true) = (starter, missing.is_empty()) else { return Ok(Finding::unmeasured(missing)) };
    let cold = current::coldest(electrical);
    let mut worst: Option<Finding> = None;
    for (i, entry) in current::starting(electrical) {
        let name = current::battery_name(entry, i);
        let rated = entry.battery.spec().and_then(|battery| battery.cranking.as_ref());
        let rated = asked_of(rated, batteries, &name).ask()?;
        let mut sheet = Sheet::default();
        sheet.told("Is", Some(starter));
        sheet.told("CCA", Some(rated));
        sheet.origin::<Ratio>("t °C", Reading::origin(electrical.coldest.as_ref()));
        let asked = battery::asked(&mut sheet, starter.value);
        let gives = battery::cranking(&mut sheet, rated.value, cold);
        let (found, wants) = (gives.measure(), asked.measure());
        let limit = Limit::AtLeast(wants);
        let summary = say!(
            "At {} the {} gives {} of cranking current; for a starter that draws {} it shall give {} times that, {}.",
            Measure::of(cold),
            name.as_str(),
            found,
            Measure::of(starter.value),
            battery::CRANKING_OVER_STARTER.to_string(),
            wants
        );
        let finding = if asked.value().exceeds(gives.value()) {
            let needs = ElectricCurrent::from_si(rated.value.si() * asked.value().si() / gives.value().si());
            Finding::new(Verdict::Warn, summary)
                .remedy(mend::change(
                    say!(
                        "In place of the {} fit one of at least {} cold cranking current.",
                        name.as_str(),
                        order(needs)
                    ),
                    entry.battery.spec().map_or(Vec::new(), |spec| {
                        let fields = [("cranking", mend::quoted(order(needs)))];
                        Change::like(&format!("rigging.electrical.batteries[{i}].battery"), spec, &fields).to_vec()
                    }),
                ))
                .buys(
                    format!("starting battery in place of the {name}"),
                    say!("at least {} cold cranking current", order(needs)),
                )
        } else {
            Finding::new(Verdict::Pass, summary)
        };
        finding.against(found, limit).working(sheet).keep_worse(&mut worst);
    }
    Ok(worst.unwrap_or_else(|| Finding::unmeasured(vec![Missing::one(batteries)])))
}
