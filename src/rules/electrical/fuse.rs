//! `electrical/fuse`

use super::told;
use crate::case::Case;
use crate::case::rigging::current;
use crate::job::rigging::{self, Chosen};
use crate::quantity::{Dimensioned, Measure, Text, inches, say};
use crate::reading::reading;
use crate::rig::Missing;
use crate::rules::mend::{self, Change, Remedy};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use uom::si::f64::Length;

rule! {
    /// Each circuit's fuse: no larger than its wire may carry, no smaller than what it draws, and near the battery.
    ///
    /// **Why.** A fuse protects the wire: one too large, or too far along it, lets the wire burn first.
    ///
    /// **Limit.** From the circuit's current to what its wire may carry; within 7 in of the battery along the wire, 72 in where
    /// it is sheathed.
    ///
    /// **Source.** ABYC E-11 (places and sizes, from memory).
    ///
    /// **When it warns.** It fails where the fuse is larger than the wire may carry; it warns of one that is too small or too far
    /// from the battery.
    FUSE = Electrical "electrical/fuse", judge;
}

/// From the battery to the fuse, along the wire, bare and sheathed. Source: ABYC E-11, values from memory, in.
const BARE_IN: f64 = 7.0;
const SHEATHED_IN: f64 = 72.0;

fn judge(case: &Case) -> Judgement {
    let electrical = told(case)?;
    if electrical.circuits.is_empty() {
        return Ok(Finding::not_applicable(Text::from("The job tells of no circuits.")));
    }
    let mut worst: Option<Finding> = None;
    let mut missing = Vec::new();
    for (i, circuit) in electrical.circuits.iter().enumerate() {
        let name = current::circuit_name(circuit, i);
        let rating = circuit.fuse.spec().and_then(|fuse| fuse.rating.as_ref());
        let (Some(rating), Some(draws), Some(carries)) = (rating, &circuit.current, current::carries(circuit)) else {
            missing.push(Missing { measurement: reading!(rigging::Circuit.fuse), of: Some(name) });
            continue;
        };
        let (found, least, most) = (Measure::of(rating.value), Measure::of(draws.value), Measure::of(carries));
        let limit = Limit::Within(least, most);
        let near = inches(if circuit.sheathed { SHEATHED_IN } else { BARE_IN });
        let far = circuit.fuse_from_battery.as_ref().filter(|far| far.value.exceeds(near));
        let finding = if rating.value.exceeds(carries) {
            Finding::new(
                Verdict::Fail,
                say!("The {}'s fuse is of {}; its wire may carry {}.", name.as_str(), found, most),
            )
            .remedy(fitting((&name, i), least, most, far.map(|_| near)))
            .buys(format!("fuse for the {name}"), say!("{} to {}", least, most))
        } else if draws.value.exceeds(rating.value) {
            Finding::new(Verdict::Warn, say!("The {} draws {} through a fuse of {}.", name.as_str(), least, found))
                .remedy(fitting((&name, i), least, most, far.map(|_| near)))
                .buys(format!("fuse for the {name}"), say!("{} to {}", least, most))
        } else if let Some(far) = far {
            Finding::new(
                Verdict::Warn,
                say!("The {}'s fuse sits {} along the wire from the battery.", name.as_str(), Measure::tape(far.value)),
            )
            .remedy(mend::change(
                say!("Move the fuse of the {} within {}.", name.as_str(), Measure::tape(near)),
                [Change::told(format!("rigging.electrical.circuits[{i}].fuse_from_battery"), Measure::tape(near))],
            ))
        } else {
            Finding::new(
                Verdict::Pass,
                say!(
                    "The {}'s fuse of {} lies between what it draws and what its wire may carry.",
                    name.as_str(),
                    found
                ),
            )
        };
        finding.against(found, limit).keep_worse(&mut worst);
    }
    Ok(match worst {
        Some(finding) if missing.is_empty() || finding.verdict == Verdict::Fail => finding,
        _ => Finding::unmeasured(missing),
    })
}

/// A fuse between what is drawn and what the wire may carry; where it may carry less than is drawn, the wire comes first.
fn fitting((name, index): (&str, usize), least: Measure, most: Measure, within: Option<Length>) -> Remedy {
    if least.si > most.si {
        return mend::first(
            "The wire is too thin for what is drawn: rewire it first, as “ampacity” says.",
            "electrical/ampacity",
        );
    }
    let entry = format!("rigging.electrical.circuits[{index}].fuse");
    let fuse = format!("(rating: {})", mend::quoted(most));
    let mut changes = vec![Change::out(format!("{entry}.class")), Change::to(format!("{entry}.described"), fuse)];
    let words = match within {
        Some(near) => {
            let from_battery = format!("rigging.electrical.circuits[{index}].fuse_from_battery");
            changes.push(Change::told(from_battery, Measure::tape(near)));
            say!(
                "Fit the {} with a fuse between {} and {}, within {} of the battery.",
                name,
                least,
                most,
                Measure::tape(near)
            )
        }
        None => say!("Fit the {} with a fuse between {} and {}.", name, least, most),
    };
    mend::change(words, changes)
}
