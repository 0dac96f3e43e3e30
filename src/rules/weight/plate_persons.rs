//! `weight/plate-persons`

use crate::rules::mend::{self, Change};
use uom::si::f64::Mass;

use super::outside_small_boats;
use crate::case::Case;
use crate::job::{self, Plate};
use crate::physics::capacity;
use crate::quantity::{Dimensioned, Measure, Text, pounds, say};
use crate::reading::reading;
use crate::rig::{Missing, Rig};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::{Sheet, Term};

rule! {
    /// The crew against the number of persons on the plate; that number against the one that the persons'
    /// weight on a capacity plate holds, and that weight against the builder's stability test where one is
    /// given.
    ///
    /// **Why.** The plate is what the owner goes by: nobody goes out beyond it. Its two figures must agree,
    /// and a small boat that heels too far with her people on one side must not carry what her displacement
    /// alone allows.
    ///
    /// **Limit.** No more crew than the persons on her plate, a capacity plate or a builder's, where a crew
    /// is told. Persons = (lb + 32) / 141 to the nearest whole number. Below a capacity of 550 lb the weight
    /// is at most A / 0.6, A being the weight found in the stability test.
    ///
    /// **Source.** 33 CFR 183.25 (US plate) and ISO 14945 (builder's plate), taken as ratings; 33 CFR 183.41;
    /// Coast Guard boatbuilder's handbook (worked figures).
    ///
    /// **When it warns.** Ask the builder, by the hull number, which of the two figures holds, and go by
    /// the lesser until then. It fails where the crew is more than the plate says: leave the others ashore.
    PLATE_PERSONS = Weight "weight/plate-persons", judge;
}

fn judge(case: &Case) -> Judgement {
    let rig = case.rig;
    if let Some(finding) = overcrowded(rig) {
        return Ok(finding);
    }
    // A desk question may give the weight alone; where boat and length are known, they must be covered.
    if let Ok(Some(why)) = outside_small_boats(rig) {
        return Ok(Finding::not_applicable(why));
    }
    let test = rig.job.boat.stability_test().reading().map(|test| test.value);
    if test.is_none() {
        rig.job.plate().ask()?;
    }
    let (persons, weight) = match rig.job.plate().reading() {
        Some(Plate::Capacity { persons, persons_weight, .. }) => {
            (*persons, persons_weight.as_ref().map(|weight| weight.value))
        }
        Some(Plate::Builders { .. } | Plate::None) if test.is_none() => {
            return Ok(Finding::not_applicable(Text::from(
                "No US capacity plate: the builder's figures hold for what she may carry.",
            )));
        }
        Some(_) | None => (None, None),
    };
    let mut sheet = Sheet::default();
    sheet.told("A", rig.job.boat.stability_test().reading());
    sheet.origin::<Mass>("Wp", "the plate");
    let tested = test
        .filter(|_| weight.is_none_or(|weight| pounds(capacity::STABILITY_TEST_BELOW_LB).exceeds(weight)))
        .map(|test| capacity::by_stability_test(&mut sheet, test));
    let Some(holds) = lesser(weight, tested.as_ref()) else {
        return Ok(Finding::unmeasured(vec![Missing::one(reading!(job::Plate.persons_weight))]));
    };
    let number = capacity::persons(&mut sheet, &holds);
    let (weight_shown, limit) = (holds.measure(), Limit::AtMost(number.measure()));
    let over_test = match (weight, &tested) {
        (Some(weight), Some(tested)) => weight.exceeds(tested.value()),
        _ => false,
    };
    let finding = match persons {
        _ if over_test => Finding::new(
            Verdict::Warn,
            say!(
                "The plate gives persons {}; the stability test holds {}.",
                Measure::of(weight.unwrap_or(holds.value())),
                weight_shown
            ),
        ),
        None => {
            let mut finding = Finding::unmeasured(vec![Missing::one(reading!(job::Plate.persons))]);
            finding.summary = say!(
                "{} of persons holds {} of them; the plate's number is not given.",
                weight_shown,
                number.measure()
            );
            return Ok(finding.limit(limit).working(sheet));
        }
        Some(persons) if f64::from(persons) > number.value().si() => Finding::new(
            Verdict::Warn,
            say!(
                "The plate says {} persons; {} holds {} by the formula.",
                u32::from(persons),
                weight_shown,
                number.measure()
            ),
        ),
        Some(persons) => Finding::new(
            Verdict::Pass,
            say!("The plate's {} persons agree with its {}.", u32::from(persons), weight_shown),
        ),
    };
    let finding = if finding.verdict == Verdict::Warn {
        finding.remedy(mend::ask(
            "Ask the builder, by the hull number, which figure holds, and go by the lesser until then.",
        ))
    } else {
        finding
    };
    Ok(match persons {
        Some(persons) => finding.against(count(persons), limit),
        None => finding.limit(limit),
    }
    .working(sheet))
}

/// The lesser of the plate's weight and the tested one, under the name that the formula uses.
fn lesser(weight: Option<Mass>, tested: Option<&Term<Mass>>) -> Option<Term<Mass>> {
    let plate = weight.map(|weight| Term::new("Wp", weight));
    match (plate, tested) {
        (Some(plate), Some(tested)) if plate.value().exceeds(tested.value()) => Some(tested.clone()),
        (Some(plate), _) => Some(plate),
        (None, tested) => tested.cloned(),
    }
}

/// More crew than the plate says, whatever her length and whoever put the plate on her.
fn overcrowded(rig: &Rig) -> Option<Finding> {
    let crew = rig.job.weights.crew?;
    let plate = match rig.job.plate().reading()? {
        Plate::Capacity { persons, .. } | Plate::Builders { persons, .. } => (*persons)?,
        Plate::None | Plate::Illegible => return None,
    };
    let over = crew.checked_sub(plate).filter(|over| *over > 0)?;
    let finding = Finding::new(
        Verdict::Fail,
        say!("A crew of {} goes out in her; the plate says {} persons.", u32::from(crew), u32::from(plate)),
    );
    let remedy = say!("Leave {} of them ashore: never carry more persons than the plate says.", u32::from(over));
    let leave = [Change::to("weights.crew", plate.to_string())];
    Some(finding.remedy(mend::change(remedy, leave)).against(count(crew), Limit::AtMost(count(plate))))
}

fn count(persons: u16) -> Measure {
    Measure::of(uom::si::f64::Ratio::from_si(f64::from(persons)))
}
