//! `steering/cable`

use super::steered;
use crate::case::Case;
use crate::case::rigging::way::{STEERING, told, way};
use crate::job::Steering;
use crate::physics::rigging::cable::{FREE_PLAY_DEG, MOST_BENDS_DEG, SOLD_STEP_FT, least_radius};
use crate::quantity::{Dimensioned, Measure, Style, Text, degrees, feet, say};
use crate::rules::mend::{self, Change};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::Sheet;
use uom::si::f64::Length;

rule! {
    /// The mechanical steering cable: its length round the bends, its sharpest bend, all bends together, and free play.
    ///
    /// **Why.** A cable that is too short cannot be hooked up; one with tight or many bends drags, wears, and leaves play that
    /// hides until it matters.
    ///
    /// **Limit.** No shorter than its way; no bend below 8 in radius; 360 degrees of bends together; 15 degrees of free play
    /// at the wheel. A bend that was not measured is taken as a right angle of 8 in.
    ///
    /// **Source.** Common practice, no source; length by geometry, a bend of radius r and angle θ saves 2 r tan(θ/2) − r θ.
    ///
    /// **When it warns.** It fails where the cable does not reach; else it warns. The finding names the length to order.
    CABLE = Steering "steering/cable", judge;
}

fn judge(case: &Case) -> Judgement {
    let rig = steered(case, Steering::RemoteMechanical)?;
    let cable = rig.cable().ask()?;
    let mut sheet = Sheet::default();
    let way = match way(&mut sheet, &cable.legs, &cable.bends, STEERING) {
        Ok(way) => way,
        Err(missing) => return Ok(Finding::unmeasured(vec![missing])),
    };
    let order = to_order(way.length.value());
    let needs = told(way.length.value());
    let limit = Limit::AtLeast(needs);
    let ordered = Measure::styled(order, Style::FeetInches);
    let Some(length) = &cable.length else {
        let mut finding = Finding::unmeasured(vec![super::missing_cable()]).limit(limit).working(sheet);
        finding.summary = say!(
            "Its way is {} round the bends: a cable of {} reaches. Its marked length is not told.",
            needs,
            ordered
        );
        return Ok(finding.buys("steering cable", say!("{}", ordered)));
    };
    let found = Measure::styled(length.value, Style::FeetInches);
    let reaches = !way.length.value().exceeds(length.value);
    let marked = say!("The cable is marked {}; its way is {} round the bends.", found, needs);
    let mut worst: Option<Finding> = None;
    if !reaches {
        Finding::new(Verdict::Fail, marked.clone())
            .remedy(mend::change(
                say!("Fit a steering cable of {}.", ordered),
                [Change::told("rigging.steering.cable.length", ordered)],
            ))
            .buys("steering cable", say!("{}", ordered))
            .against(found, limit)
            .keep_worse(&mut worst);
    }
    let mut wrong: Vec<Text> = Vec::new();
    if let Some(radius) = way.sharpest
        && least_radius().exceeds(radius)
    {
        wrong.push(say!(
            "its sharpest bend has a radius of {}, less than {}",
            Measure::tape(radius),
            Measure::tape(least_radius())
        ));
    }
    if way.turned.exceeds(degrees(MOST_BENDS_DEG)) {
        wrong.push(say!("its bends turn by {} together", Measure::styled(way.turned, Style::Round)));
    }
    if let Some(play) = cable.free_play.as_ref().filter(|play| play.value.exceeds(degrees(FREE_PLAY_DEG))) {
        wrong.push(say!("the wheel turns {} before the engine does", Measure::of(play.value)));
    }
    if !wrong.is_empty() {
        let but = if reaches { "The cable reaches, but " } else { "Of the steering cable " };
        let finding = Finding::new(Verdict::Warn, Text::from(but).then(Text::join(wrong, "; ")).then(Text::from(".")))
            .remedy(mend::yard(say!(
                "Lay the steering cable with bends of at least {}; where play is left, replace cable and helm together.",
                Measure::tape(least_radius())
            )));
        let again = "steering cable, if laying it again does not cure it";
        let finding = if reaches { finding.buys(again, say!("{}", ordered)) } else { finding };
        finding.against(found, limit).keep_worse(&mut worst);
    }
    let finding = worst.unwrap_or_else(|| Finding::new(Verdict::Pass, marked).against(found, limit));
    Ok(finding.working(sheet))
}

/// The next length that cables are sold in.
fn to_order(needs: Length) -> Length {
    let step = feet(SOLD_STEP_FT);
    step * (needs.si() / step.si()).ceil()
}
