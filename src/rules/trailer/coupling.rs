//! `trailer/coupling`

use super::{loaded, say_origins, told};
use crate::case::Case;
use crate::job::rigging;
use crate::physics::rigging::trailer::{self, COUPLING_SHARE};
use crate::quantity::{Dimensioned, Measure, Style, Text, inches, say};
use crate::rules::mend::{self, Change, Mend};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::Sheet;
use uom::si::f64::{Length, Ratio};

rule! {
    /// Weight on the coupling, from where the axle stands and where the weight is, the engines tilted as she is towed.
    ///
    /// **Why.** New engines put weight aft: the coupling goes light, and the trailer begins to sway as it is overtaken.
    ///
    /// **Limit.** 5 to 10 % of all of it.
    ///
    /// **Source.** Common practice, no source; moments about the axle.
    ///
    /// **When it warns.** It warns outside, and says how far the axle, or the boat with her winch post, would have to move.
    COUPLING = Trailer "trailer/coupling", judge;
}

fn judge(case: &Case) -> Judgement {
    let towed = told(case)?;
    let road = loaded(case, towed)?;
    let stand = match &road.stand {
        Ok(stand) => stand,
        Err(missing) => return Ok(Finding::unmeasured(missing.clone())),
    };
    let mut sheet = Sheet::default();
    say_origins(towed, &mut sheet);
    let all_up = trailer::all_up(&mut sheet, &road.weights);
    let coupling = trailer::coupling(&mut sheet, &road.weights, stand);
    let share = trailer::share(&mut sheet, &coupling, &all_up);
    let ratio = |share| Measure::styled(Ratio::from_si(share), Style::Share);
    let limit = Limit::Within(ratio(COUPLING_SHARE.0), ratio(COUPLING_SHARE.1));
    let lifts = coupling.value().si() < 0.0;
    let summary = if lifts {
        say!("The coupling lifts by {}, with {} on the road.", Measure::of(-coupling.value()), all_up.measure())
    } else {
        say!("{} stands on the coupling, {} of {}.", coupling.measure(), ratio(share.value().si()), all_up.measure())
    };
    let finding = if (COUPLING_SHARE.0..=COUPLING_SHARE.1).contains(&share.value().si()) {
        Finding::new(Verdict::Pass, summary)
    } else {
        let wanted = Ratio::from_si((COUPLING_SHARE.0 + COUPLING_SHARE.1) / 2.0);
        let axle = trailer::move_axle(coupling.value(), wanted, all_up.value(), stand);
        let boat = trailer::move_boat(&mut sheet, &coupling, wanted, &all_up, road.boat, stand);
        Finding::new(Verdict::Warn, summary).remedy(mend::Remedy::new(
            say!("Move the axle ")
                .then(way(axle, "aft", "forward"))
                .then(Text::from(", or the winch post, and her with it, "))
                .then(way(boat.value(), "forward", "aft"))
                .then(say!(": then {} of it stands there.", Measure::styled(wanted, Style::Share))),
            moved(towed, to_the_inch(axle), to_the_inch(boat.value())),
        ))
    };
    Ok(finding.against(ratio(share.value().si()), limit).working(sheet))
}

/// How far, and which way.
fn way(far: Length, on: &str, back: &str) -> Text {
    say!("{} {}", Measure::tape(to_the_inch(far).abs()), if far.si() >= 0.0 { on } else { back })
}

/// A way as it is told: to the inch.
fn to_the_inch(far: Length) -> Length {
    inches((far / inches(1.0)).si().round())
}

/// The axle moved aft by so much; or she, forward on the trailer by so much.
fn moved(towed: &rigging::Towed, aft: Length, forward: Length) -> Vec<Mend> {
    let (Some(axle), Some(coupling)) = (&towed.axle, &towed.coupling) else { return vec![Mend::Yard] };
    let axle_at = |at: Length| Change::to("rigging.towed.axle", mend::exactly(at));
    let long = Change::to("rigging.towed.coupling", mend::exactly(coupling.value + aft));
    vec![Mend::Change(vec![axle_at(axle.value - aft), long]), Mend::Change(vec![axle_at(axle.value - forward)])]
}
