//! `electrical/voltage-drop`

use super::told;
use crate::case::Case;
use crate::case::rigging::current;
use crate::job::rigging;
use crate::physics::rigging::wire::{ESSENTIAL_DROP, OTHER_DROP};
use crate::quantity::{Dimensioned, Measure, Style, Text, say};
use crate::reading::reading;
use crate::rig::Missing;
use crate::rules::mend::{self, Change};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::Table;
use uom::si::f64::ElectricPotential;

rule! {
    /// Voltage lost in each circuit's wire, there and back.
    ///
    /// **Why.** Lamps go dim, a bilge pump throws half, a radio drops out as it transmits.
    ///
    /// **Limit.** 3 % of 12 V where safety hangs on it, 10 % elsewhere; copper of 30 °C.
    ///
    /// **Source.** ABYC E-11 (from memory); resistance of copper by IEC 60028, section by ASTM B258.
    ///
    /// **When it warns.** It tells the circuit that is worst off and the others beyond their limit, and names the thinnest wires that keep it.
    VOLTAGE_DROP = Electrical "electrical/voltage-drop", judge;
}

fn judge(case: &Case) -> Judgement {
    let electrical = told(case)?;
    if electrical.circuits.is_empty() {
        return Ok(Finding::not_applicable(Text::from("The job tells of no circuits.")));
    }
    let mut all: Vec<(current::Wired, ElectricPotential)> = Vec::new();
    let mut missing = Vec::new();
    for (i, circuit) in electrical.circuits.iter().enumerate() {
        let share = if circuit.essential { ESSENTIAL_DROP } else { OTHER_DROP };
        match current::circuit(circuit, i) {
            Ok(wired) => all.push((wired, current::supply() * share)),
            Err(lacking) => Missing::gather(&mut missing, lacking),
        }
    }
    if !missing.is_empty() {
        return Ok(Finding::unmeasured(missing));
    }
    let rows = all
        .iter()
        .map(|(wired, permitted)| {
            let length = Measure::styled(wired.length, Style::FeetInches);
            vec![
                Text::from(wired.name.as_str()),
                length.into(),
                Measure::of(wired.current).into(),
                wired.drop.measure().into(),
                Measure::of(*permitted).into(),
            ]
        })
        .collect();
    let table = Table::new("circuits", &["circuit", "one way", "current", "lost", "permitted"], rows);
    let mut worst: Option<Finding> = None;
    for (i, (wired, permitted)) in all.into_iter().enumerate() {
        let (found, limit, name) = (wired.drop.measure(), Measure::of(permitted), wired.name.as_str());
        let run = Measure::styled(wired.length, Style::FeetInches);
        let summary = say!("The wire to the {} loses {} at {}.", name, found, Measure::of(wired.current));
        let wire = current::thinnest(case.rig, wired.length, wired.current, permitted);
        let finding = match (wired.drop.value().exceeds(permitted), wire) {
            (false, _) => Finding::new(Verdict::Pass, summary),
            (true, Some(wire)) => Finding::new(Verdict::Warn, summary)
                .remedy(mend::change(
                    say!("Lay {} to the {} and back.", wire.as_str(), name),
                    Change::class(&format!("rigging.electrical.circuits[{i}].wire"), &wire),
                ))
                .buys(format!("wire to the {name}"), say!("{}, {} each way", wire.as_str(), run)),
            (true, None) => Finding::new(Verdict::Warn, summary)
                .remedy(mend::yard(say!("No wire of the catalog is thick enough for the {}: shorten the run.", name))),
        };
        finding.against(found, Limit::AtMost(limit)).working(wired.sheet).keep_worse(&mut worst);
    }
    let worst = worst.ok_or_else(|| Finding::unmeasured(vec![Missing::one(reading!(rigging::Electrical.circuits))]))?;
    Ok(worst.table(table))
}
