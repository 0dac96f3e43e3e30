//! `electrical/ampacity`

use super::told;
use crate::case::Case;
use crate::case::rigging::current;
use crate::job::rigging;
use crate::quantity::{Dimensioned, Measure, Text, say};
use crate::reading::reading;
use crate::rig::Missing;
use crate::rules::mend::{self, Change};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};

rule! {
    /// Current in each circuit against what its wire may carry where it lies.
    ///
    /// **Why.** A wire that carries too much ages its insulation and starts fires, in the engine space first.
    ///
    /// **Limit.** The amperage of its gauge and insulation, less in an engine space.
    ///
    /// **Source.** ABYC E-11's table of allowable amperage and its factors for engine spaces (values from memory).
    ///
    /// **When it warns.** It fails where a circuit draws more than its wire may carry.
    AMPACITY = Electrical "electrical/ampacity", judge;
}

fn judge(case: &Case) -> Judgement {
    let electrical = told(case)?;
    if electrical.circuits.is_empty() {
        return Ok(Finding::not_applicable(Text::from("The job tells of no circuits.")));
    }
    let mut worst: Option<Finding> = None;
    let mut missing = Vec::new();
    for (i, circuit) in electrical.circuits.iter().enumerate() {
        let name = current::circuit_name(circuit, i);
        let (Some(draws), Some(carries)) = (&circuit.current, current::carries(circuit)) else {
            missing.push(Missing { measurement: reading!(rigging::Electrical.circuits), of: Some(name) });
            continue;
        };
        let (found, limit) = (Measure::of(draws.value), Measure::of(carries));
        let summary = say!("The {} draws {}; its wire may carry {} where it lies.", name.as_str(), found, limit);
        let finding = if draws.value.exceeds(carries) {
            let wire = current::carrying(case.rig, circuit, draws.value);
            let finding = Finding::new(Verdict::Fail, summary);
            match wire {
                Some(wire) => finding
                    .remedy(mend::change(
                        say!("Rewire the {} with {}.", name.as_str(), wire.as_str()),
                        Change::class(&format!("rigging.electrical.circuits[{i}].wire"), &wire),
                    ))
                    .buys(format!("wire to the {name}"), Text::from(wire.as_str())),
                None => finding
                    .remedy(mend::yard(say!(
                        "Rewire the {} with heavier wire, or divide it in two circuits.",
                        name.as_str()
                    )))
                    .buys(format!("wire to the {name}"), Text::from("heavier wire, or two circuits")),
            }
        } else {
            Finding::new(Verdict::Pass, summary)
        };
        finding.against(found, Limit::AtMost(limit)).keep_worse(&mut worst);
    }
    Ok(match worst {
        Some(finding) if missing.is_empty() || finding.verdict == Verdict::Fail => finding,
        _ => Finding::unmeasured(missing),
    })
}
