//! `steering/effort`

use super::{count, cylinder, driven, say_origins, steered};
use crate::case::Case;
use crate::case::rigging::asked;
use crate::job::Steering;
use crate::job::rigging::{self, Chosen};
use crate::physics::rigging::steering::{self, RIM_PULL_N};
use crate::quantity::{Dimensioned, Measure, Style, say};
use crate::reading::{All, reading};
use crate::rules::mend::{self, Change, Mend, Remedy};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::Sheet;
use uom::si::f64::{Force, Volume};

rule! {
    /// Pressure in the steering at full speed, and the pull at the wheel's rim that holds it.
    ///
    /// **Why.** A wheel that wants both arms tires whoever steers, and one that reaches the helm's relief pressure turns
    /// without the engines.
    ///
    /// **Limit.** Pressure no more than the helm's relief pressure; 25 lbf at the rim. The side force is taken as 0.15 of
    /// the thrust at speed, 9 in behind the steering axis, against a pin 8 in from it.
    ///
    /// **Source.** The helm's papers (its relief pressure); common practice, no source (side force, arms, pull).
    ///
    /// **When it warns.** It warns over either; a helm that displaces less in a turn pulls less and takes more turns.
    EFFORT = Steering "steering/effort", judge;
}

/// Step in which a helm's displacement is told: a tenth of a cubic inch, in m³.
const TOLD_M3: f64 = 1.638_706_4e-6;

fn judge(case: &Case) -> Judgement {
    let rig = steered(case, Steering::RemoteHydraulic)?;
    let helm = rig.helm.spec();
    let displaces = helm.and_then(|helm| helm.displacement.as_ref());
    let (power, speed) = driven(case);
    let power = power.map_err(|missing| missing.into_iter().next().unwrap_or_else(|| case.rig.after.missing()));
    let (helm_turn, cylinder, wheel, power, speed) =
        (asked(displaces, reading!(rigging::SteeringRig.helm)).ask(), cylinder(rig), rig.wheel().ask(), power, speed)
            .all()?;
    let mut sheet = Sheet::default();
    say_origins(rig, &mut sheet);
    sheet.told("P", case.rig.after.mains().first().and_then(|engine| engine.power.reading()));
    sheet.told("v", case.rig.structure.top_speed.reading());
    sheet.told("Dw", Some(wheel));
    let load = steering::side_load(&mut sheet, power, speed);
    let pressure = steering::pressure(&mut sheet, &cylinder, count(rig), &load);
    let pull = steering::rim_pull(&mut sheet, &pressure, helm_turn.value, wheel.value);
    let most = Force::from_si(RIM_PULL_N);
    let (found, limit) = (pull.measure(), Limit::AtMost(Measure::of(most)));
    let relief = helm.and_then(|helm| helm.relief.as_ref());
    if let Some(relief) = relief
        && pressure.value().exceeds(relief.value)
    {
        return Ok(Finding::new(
            Verdict::Warn,
            say!(
                "In a turn at full speed the steering asks for {}; the helm lets go at {}.",
                pressure.measure(),
                Measure::of(relief.value)
            ),
        )
        .remedy(mend::yard(say!("Fit a cylinder of larger bore, or two, or power assistance.")))
        .buys("larger steering cylinder, or power assistance", say!("for {} at the pins", load.measure()))
        .against(pressure.measure(), Limit::AtMost(Measure::of(relief.value)))
        .working(sheet));
    }
    let finding = if pull.value().exceeds(most) {
        let better = helm_turn.value.si() * RIM_PULL_N / pull.value().si();
        // Down to the step in which it is told: a larger one pulls more.
        let better = Volume::from_si((better / TOLD_M3).floor() * TOLD_M3);
        let better = Measure::styled(better, Style::Displacement);
        Finding::new(Verdict::Warn, say!("In a turn at full speed the rim pulls {}.", found))
            .remedy(Remedy::new(
                say!(
                    "Fit a helm of at most {} a turn, or power assistance; “turns” says what that does to the turns.",
                    better
                ),
                [
                    Mend::Change(helm.map_or(Vec::new(), |helm| {
                        Change::like("rigging.steering.helm", helm, &[("displacement", mend::quoted(better))]).to_vec()
                    })),
                    Mend::Yard,
                ],
            ))
            .buys("smaller helm, or power assistance", say!("at most {} a turn", better))
    } else {
        Finding::new(Verdict::Pass, say!("In a turn at full speed the rim pulls {}.", found))
    };
    Ok(finding.against(found, limit).working(sheet))
}
