//! `trailer/load`

use super::{loaded, told};
use crate::case::Case;
use crate::job::rigging::{self, Chosen};
use crate::physics::rigging::trailer;
use crate::quantity::{Dimensioned, Measure, Text, pounds, say};
use crate::reading::reading;
use crate::rig::Missing;
use crate::rules::mend::{self, Change, Mend, Remedy};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::{Sheet, Table};
use uom::si::f64::Mass;

rule! {
    /// All that stands on the road against the ratings of trailer, axles, tyres and coupling.
    ///
    /// **Why.** Heavier engines, their bracket and a second battery often take the last of a trailer's rating, and tyres fail
    /// first.
    ///
    /// **Limit.** The plate of each. Axles and tyres carry all but what stands on the coupling. Weights are those of the ledger with
    /// nobody aboard, in the heaviest such loading, or as told outright.
    ///
    /// **Source.** The trailer's plate and the print on its tyres.
    ///
    /// **When it warns.** It fails over a rating.
    LOAD = Trailer "trailer/load", judge;
}

/// A rating as it is looked for: up to the next 10 lb.
fn rounded_up(mass: Mass) -> Mass {
    let step = pounds(RATED_LB);
    step * (mass / step).si().ceil()
}

/// Step in which a rating is looked for. Common practice, no source, lb.
const RATED_LB: f64 = 10.0;

fn judge(case: &Case) -> Judgement {
    let towed = told(case)?;
    let road = loaded(case, towed)?;
    let Some(spec) = towed.trailer.spec().filter(|spec| spec.rated.is_some()) else {
        return Ok(Finding::unmeasured(vec![Missing::one(reading!(rigging::Towed.trailer))]));
    };
    let mut sheet = Sheet::default();
    let all_up = trailer::all_up(&mut sheet, &road.weights);
    let on_axles = match &road.stand {
        Ok(stand) => {
            let coupling = trailer::coupling(&mut Sheet::default(), &road.weights, stand).value();
            let coupling = sheet.given("Wc", "weight on the coupling", coupling, "worked out under “coupling”");
            sheet.set("Wa", "what the axles carry", &all_up - coupling).value()
        }
        Err(_) => all_up.value(),
    };
    let tyres = spec.tyre.as_ref().zip(spec.tyres).map(|(tyre, count)| tyre.value * f64::from(count));
    let value = |reading: &Option<crate::quantity::Reading<Mass>>| reading.as_ref().map(|reading| reading.value);
    let against = [
        ("the trailer", all_up.value(), value(&spec.rated)),
        ("its axles", on_axles, value(&spec.axles)),
        ("its tyres", on_axles, tyres),
        ("its coupling", all_up.value(), value(&spec.coupling)),
    ];
    let rows = against
        .iter()
        .filter_map(|(what, found, most)| {
            Some(vec![Text::from(*what), Measure::of(*found).into(), Measure::of((*most)?).into()])
        })
        .collect();
    let table = Table::new("against its ratings", &["part", "carries", "rated"], rows);
    let known = against.iter().filter_map(|(what, found, most)| Some((*what, *found, (*most)?)));
    let worst = known.reduce(|a, b| if b.1.si() / b.2.si() > a.1.si() / a.2.si() { b } else { a });
    let Some((what, found, most)) = worst else {
        return Ok(Finding::unmeasured(vec![Missing::one(reading!(rigging::Towed.trailer))]));
    };
    let (shown, limit) = (Measure::of(found), Measure::of(most));
    let summary = say!("Of a load of {} all told, {} comes on {}, rated for {}.", all_up.measure(), shown, what, limit);
    let finding = if found.exceeds(most) {
        Finding::new(Verdict::Fail, summary)
            .remedy(Remedy::new(
                say!(
                    "Take {} off her for the road, fuel and water first, or get a trailer that is rated for her.",
                    Measure::of(found - most)
                ),
                [Mend::Care, Mend::Change(rated(spec, rounded_up(all_up.value())))],
            ))
            .buys("trailer, tyres or axles", say!("rated for at least {}", Measure::of(rounded_up(found))))
    } else {
        Finding::new(Verdict::Pass, summary)
    };
    Ok(finding.against(shown, Limit::AtMost(limit)).working(sheet).table(table))
}

/// A trailer like this one that is rated for so much in every part.
fn rated(spec: &rigging::TrailerSpec, load: Mass) -> Vec<Change> {
    let one = Measure::of(load);
    let mut fields = vec![("rated", mend::quoted(one))];
    fields.extend(spec.axles.is_some().then(|| ("axles", mend::quoted(one))));
    fields.extend(spec.coupling.is_some().then(|| ("coupling", mend::quoted(one))));
    let tyres = spec.tyres.filter(|tyres| *tyres > 0 && spec.tyre.is_some());
    fields.extend(tyres.map(|tyres| ("tyre", mend::weighing(load / f64::from(tyres)))));
    Change::like("rigging.towed.trailer", spec, &fields).to_vec()
}
