//! `steering/actuator`

use super::steered;
use crate::case::Case;
use crate::case::rigging::{asked, current};
use crate::job::Steering;
use crate::job::rigging;
use crate::quantity::{Dimensioned, Measure, say};
use crate::reading::{All, reading};
use crate::rules::mend::{self, Change};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};

rule! {
    /// The electric steering actuator: the voltage that is left at it when it draws most.
    ///
    /// **Why.** It draws most when she turns hardest; a thin wire then takes away what it needs, and it stops.
    ///
    /// **Limit.** No less than its papers ask for, from 12 V at the battery.
    ///
    /// **Source.** The actuator's papers; resistance of copper by IEC 60028, section by ASTM B258.
    ///
    /// **When it warns.** It warns where less is left, and names the wire that leaves enough.
    ACTUATOR = Steering "steering/actuator", judge;
}

fn judge(case: &Case) -> Judgement {
    let rig = steered(case, Steering::RemoteElectric)?;
    let declared = reading!(rigging::SteeringRig.actuator);
    let actuator = asked(rig.actuator.as_ref(), declared).ask()?;
    let (current, length, least) = (
        asked(actuator.current.as_ref(), declared).ask(),
        asked(actuator.length.as_ref(), declared).ask(),
        asked(actuator.least_voltage.as_ref(), declared).ask(),
    )
        .all()?;
    let wired = match current::run("the actuator", &actuator.wire, length, current, declared) {
        Ok(wired) => wired,
        Err(missing) => return Ok(Finding::unmeasured(vec![missing])),
    };
    let left = current::supply() - wired.drop.value();
    let (found, limit) = (Measure::of(left), Measure::of(least.value));
    let permitted = current::supply() - least.value;
    let finding = if least.value.exceeds(left) {
        let wire = current::thinnest(case.rig, length.value, current.value, permitted);
        let remedy = match &wire {
            Some(name) => mend::change(
                say!("Wire the actuator with {}.", name.as_str()),
                Change::class("rigging.steering.actuator.wire", name),
            ),
            None => mend::yard("Shorten the run: no wire of the catalog leaves enough."),
        };
        Finding::new(
            Verdict::Warn,
            say!("At {} the actuator gets {}; it wants {}.", Measure::of(current.value), found, limit),
        )
        .remedy(remedy)
        .buys("wire to the steering actuator", say!("{}", wire.unwrap_or_else(|| "shorter run".to_owned())))
    } else {
        Finding::new(Verdict::Pass, say!("At {} the actuator gets {}.", Measure::of(current.value), found))
    };
    Ok(finding.against(found, Limit::AtLeast(limit)).working(wired.sheet))
}
