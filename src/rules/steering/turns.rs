//! `steering/turns`

use super::{count, cylinder, steered};
use crate::case::Case;
use crate::case::rigging::asked;
use crate::job::Steering;
use crate::job::rigging::{self, Chosen};
use crate::physics::rigging::steering::{self, FEWEST_TURNS, MOST_TURNS, USUAL_TURNS};
use crate::quantity::{Dimensioned, Measure, Style, Text, say};
use crate::reading::{All, reading};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::Sheet;
use uom::si::f64::{Ratio, Volume};

rule! {
    /// Turns of a hydraulic wheel from lock to lock: what the cylinders displace over what the helm displaces in a turn.
    ///
    /// **Why.** Too few turns make the wheel heavy and her nervous; too many, and nobody gets her round in time when a
    /// dock or a swimmer is near.
    ///
    /// **Limit.** From 3 to 9 turns; 4 to 7 are usual, nine a check value of the trade. Of a cylinder whose rod comes out at
    /// one end only, the full side counts.
    ///
    /// **Source.** Common practice, no source (the turns); displacement by geometry.
    ///
    /// **When it warns.** It warns outside; the finding names the helm that takes five and a half turns.
    TURNS = Steering "steering/turns", judge;
}

fn judge(case: &Case) -> Judgement {
    let rig = steered(case, Steering::RemoteHydraulic)?;
    let displaces = rig.helm.spec().and_then(|helm| helm.displacement.as_ref());
    let cylinder = cylinder(rig);
    let (helm, cylinder) =
        (asked(displaces, reading!(rigging::SteeringRig.helm)).ask(), super::Told(cylinder).ask()).all()?;
    let mut sheet = Sheet::default();
    let turns = steering::turns(&mut sheet, &cylinder, count(rig), helm.value);
    let ratio = |turns: f64| Measure::of(Ratio::from_si(turns));
    let limit = Limit::Within(ratio(FEWEST_TURNS), ratio(MOST_TURNS));
    let found = turns.measure();
    let usual = (USUAL_TURNS.0 + USUAL_TURNS.1) / 2.0;
    // Turns go with the inverse of the helm's displacement.
    let better = Measure::styled(Volume::from_si(helm.value.si() * turns.value().si() / usual), Style::Displacement);
    let summary = say!("The wheel takes {} turns from lock to lock.", found);
    let out = !(FEWEST_TURNS..=MOST_TURNS).contains(&turns.value().si());
    let finding = if out {
        Finding::new(Verdict::Warn, summary)
            .remedy(say!("Fit a helm of about {} a turn: it takes about {} turns.", better, ratio(usual)))
            .buys("hydraulic helm", say!("about {} a turn", better))
    } else {
        Finding::new(
            Verdict::Pass,
            summary.then(Text::from(if (USUAL_TURNS.0..=USUAL_TURNS.1).contains(&turns.value().si()) {
                ""
            } else {
                " Four to seven are usual."
            })),
        )
    };
    Ok(finding.against(found, limit).working(sheet))
}
