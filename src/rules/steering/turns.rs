//! `steering/turns`

use super::{count, cylinder, say_origins, steered};
use crate::case::Case;
use crate::case::rigging::asked;
use crate::job::Steering;
use crate::job::rigging::{self, Chosen};
use crate::physics::rigging::steering::{self, FEWEST_TURNS, HELMS_M3, MOST_TURNS, USUAL_TURNS};
use crate::quantity::{Dimensioned, Measure, Style, Text, say};
use crate::reading::{All, reading};
use crate::rules::mend::{self, Change};
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

/// Up to so many turns two digits tell a tenth of one.
const TWO_DIGITS_TO: f64 = 10.0;

fn judge(case: &Case) -> Judgement {
    let rig = steered(case, Steering::RemoteHydraulic)?;
    let displaces = rig.helm.spec().and_then(|helm| helm.displacement.as_ref());
    let cylinder = cylinder(rig);
    let (helm, cylinder) = (asked(displaces, reading!(rigging::SteeringRig.helm)).ask(), cylinder).all()?;
    let mut sheet = Sheet::default();
    say_origins(rig, &mut sheet);
    let turns = steering::turns(&mut sheet, &cylinder, count(rig), helm.value);
    let ratio = |turns: f64| {
        Measure::styled(Ratio::from_si(turns), if turns < TWO_DIGITS_TO { Style::Round } else { Style::Plain })
    };
    let limit = Limit::Within(ratio(FEWEST_TURNS), ratio(MOST_TURNS));
    let found = ratio(turns.value().si());
    let summary = say!("The wheel takes {} turns from lock to lock.", found);
    let usual = (USUAL_TURNS.0..=USUAL_TURNS.1).contains(&turns.value().si());
    let finding = if (FEWEST_TURNS..=MOST_TURNS).contains(&turns.value().si()) {
        Finding::new(Verdict::Pass, summary.then(Text::from(if usual { "" } else { " Four to seven are usual." })))
    } else {
        cure(Finding::new(Verdict::Warn, summary), rig, helm.value, turns.value().si())
    };
    Ok(finding.against(found, limit).working(sheet))
}

/// The helm that brings the turns nearest to the usual ones, of those that are made; else one cylinder less.
fn cure(finding: Finding, rig: &rigging::SteeringRig, helm: Volume, turns: f64) -> Finding {
    // Turns go with the inverse of the helm's displacement.
    let wanted = helm.si() * turns / ((USUAL_TURNS.0 + USUAL_TURNS.1) / 2.0);
    let made = wanted.clamp(HELMS_M3.0, HELMS_M3.1);
    let then = turns * helm.si() / made;
    if !(FEWEST_TURNS..=MOST_TURNS).contains(&then) {
        let words = if count(rig) > 1 {
            "No helm that is made does: steer with one cylinder and a tie bar, or with power assistance."
        } else {
            "No helm that is made does: fit a cylinder of another bore or stroke."
        };
        return finding
            .remedy(mend::yard(words))
            .buys("steering cylinder", Text::from("of another size, or one instead of two"));
    }
    let better = Measure::styled(Volume::from_si(made), Style::Displacement);
    finding
        .remedy(mend::change(
            say!(
                "Fit a helm of about {} a turn: it takes {} turns.",
                better,
                Measure::styled(Ratio::from_si(then), Style::Round)
            ),
            rig.helm.spec().map_or(Vec::new(), |helm| {
                Change::like("rigging.steering.helm", helm, &[("displacement", mend::quoted(better))]).to_vec()
            }),
        ))
        .buys("hydraulic helm", say!("about {} a turn", better))
}
