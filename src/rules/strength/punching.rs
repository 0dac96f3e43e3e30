//! `strength/punching`

use super::at_bolts::{at_bolts, capacity_sheet};
use super::plate::plate;
use super::weigh::Weighed;
use super::{DESIGN_FACTOR, beside, build_up, factor, limit, ready_with_core};
use crate::case::Case;
use crate::case::strength::show::force;
use crate::case::strength::{FROM_WORK, Part, Pressed, Side, Strength};
use crate::job;
use crate::quantity::{Dimensioned, say};
use crate::reading::reading;
use crate::rig::{Missing, Ran};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Verdict};
use crate::working::{Sheet, Term};
use uom::si::f64::Force;

rule! {
    /// The transom round the nuts and under the pressed edge of a face: whether they punch through it.
    ///
    /// **Why.** A thin transom, or one whose core has gone, lets a nut through with a plug of itself
    /// round it; the engine hangs on the other bolts then.
    ///
    /// **Limit.** The force that shears every layer, each by its own strength through the thickness, on
    /// a perimeter half the transom's thickness outside washer, plate or pressed edge, at least
    /// twice the greatest force on it.
    ///
    /// **Source.** ACI 318, 22.6.4 (where a slab is punched through: half its depth outside the pad),
    /// value from memory; common practice, no source (the same for wood); ISO 12215-5, design stress
    /// half of the ultimate, value from memory.
    ///
    /// **When it warns.** Set a backing plate behind the bolts, of the size that the finding gives;
    /// under a pressed edge, build the transom up. It fails where the force is more than what
    /// punches through.
    PUNCHING = Strength "strength/punching", judge;
}

fn judge(case: &Case) -> Judgement {
    let strength = ready_with_core(case)?;
    let nuts = Finding::from(under_nuts(case, strength));
    let Some(edge) = strength.after.pressed(strength).map(|pressed| under_edge(case, &pressed, strength)) else {
        return Ok(nuts);
    };
    let (edge_first, both) = (edge.verdict < nuts.verdict, edge.remedy.is_some() && nuts.remedy.is_some());
    let remedies = [&nuts, &edge].map(Finding::to_do);
    let worse = if edge_first { edge } else { nuts };
    Ok(
        // A plate behind the bolts does nothing for the wood under the edge.
        match remedies {
            [Some(nuts), Some(edge)] if both => worse.remedy(nuts.and_too(edge)),
            _ => worse,
        },
    )
}

fn under_nuts(case: &Case, strength: &Strength) -> Judgement {
    let judged = at_bolts(Part::Punch, DESIGN_FACTOR, "transom round the nut", case.rig, strength)?;
    let sheet = capacity_sheet(Part::Punch, &judged, case.rig, strength);
    let mut finding =
        judged.finding.clone().working(sheet).table(beside("greatest pull on a bolt", Part::Punch, strength));
    if finding.verdict < Verdict::Unmeasured {
        finding = finding.remedy(plate(Part::Punch, DESIGN_FACTOR, &judged, case.rig, strength));
    }
    Ok(finding)
}

/// The same under the edge of a face that presses on the transom.
fn under_edge(case: &Case, pressed: &Pressed, strength: &Strength) -> Finding {
    let footing = &strength.after.footings[pressed.footing];
    let mut sheet = Sheet::default();
    footing.say_origins(&mut sheet, case.rig, &strength.board, strength.left());
    footing.edge_capacity(&mut sheet, pressed.side, &strength.board, strength.left());
    let load = Force::from_si(pressed.demand);
    let load = sheet.given("E", "force of the edge that is pressed on", load, FROM_WORK);
    sheet.set("f", "strength over load", Term::new("Fs", Force::from_si(pressed.capacity)) / load);
    let edge = match pressed.side {
        Side::Level => "lower or upper edge",
        Side::Upright => "side edge",
    };
    let value = pressed.factor();
    let summary = say!(
        "The transom under the {} of the {} holds {} times the greatest force on it, {}: {}.",
        edge,
        footing.name.as_str(),
        factor(value),
        force(pressed.demand),
        strength.after.cases[pressed.case].name()
    );
    let best = strength.best.as_ref().map_or(value, |board| {
        let capacity = footing.edge_capacity(&mut Sheet::default(), pressed.side, board, strength.left());
        value.max(Pressed { capacity, ..*pressed }.factor())
    });
    let ran = case.rig.ran.as_ref().and_then(Ran::soundly);
    let old = strength.before.as_ref().ok().and_then(|laden| laden.pressed(strength)).map(|pressed| pressed.factor());
    let weighed = Weighed { range: [value, best], required: DESIGN_FACTOR, old, ran };
    let summary = summary.then(weighed.proof()).then(weighed.between());
    let mut finding =
        Finding::new(weighed.verdict(), summary).against(factor(value), limit(DESIGN_FACTOR)).working(sheet);
    if finding.verdict == Verdict::Unmeasured {
        finding.missing = vec![Missing::one(reading!(job::Structure.lay_up))];
    }
    if finding.verdict >= Verdict::Unmeasured {
        finding
    } else {
        // Perimeter and depth both grow with the thickness: in proportion to it is more than enough.
        finding.remedy(build_up(case.rig, strength, DESIGN_FACTOR / value))
    }
}
