//! What boat, plate and transom must not say.

use uom::si::f64::Length;

use super::Checker;
use crate::job::bounds::{ACROSS, ON_TRANSOM};
use crate::job::{Across, Boat, Job, Plate, Transom};
use crate::quantity::{Dimensioned, Measure, Units};
use crate::reading::{Amount, Part, Place, Value, inch};

/// How far beyond the transom's side a centre may stand: a bracket may overhang. Common practice, no source.
const OVERHANG: Amount = inch(2.0);

pub(super) fn boat(checker: &mut Checker, boat: &Boat) {
    for (path, part) in [
        ("boat.transom_width", &boat.transom_width),
        ("boat.aft_quarter_beam", &boat.aft_quarter_beam),
        ("boat.chine_beam", &boat.chine_beam),
    ] {
        if let (Some(beam), Some(part)) = (checker.sound("boat.beam", &boat.beam), checker.sound(path, part))
            && part.value > beam.value
        {
            checker.fault(path, "wider than the boat's greatest beam", "check this and `beam`");
        }
    }
    if let (Some(length), Some(beam)) =
        (checker.sound("boat.length", &boat.length), checker.sound("boat.beam", &boat.beam))
        && beam.value > length.value
    {
        checker.fault("boat.beam", "the boat is wider than long", "check `beam` and `length`");
    }
}

pub(super) fn plate(checker: &mut Checker, plate: Option<&Plate>) {
    if let Some(Plate::Capacity { persons_weight: Some(persons), total_weight: Some(total), .. }) = plate
        && persons.value > total.value
    {
        checker.fault(
            "plate.persons_weight",
            "the persons weigh more than persons, motor and gear together",
            "check both against the plate",
        );
    }
}

pub(super) fn transom(checker: &mut Checker, transom: &Transom, boat: &Boat) {
    if transom.cutout.is_some() && transom.cutout_width.is_some() {
        checker.fault("transom.cutout", "there is a cutout_width too", "leave out one of the two");
    }
    for (i, height) in transom.heights.iter().enumerate() {
        let path = format!("transom.heights[{i}]");
        across(checker, &format!("{path}.at"), &height.at, boat);
    }
    for (i, hole) in transom.holes.iter().enumerate() {
        let path = format!("transom.holes[{i}]");
        across(checker, &format!("{path}.at"), &hole.at, boat);
    }
    if let (Some(cutout), Some(width)) = (
        checker.sound("transom.cutout_width", &transom.cutout_width),
        checker.sound("boat.transom_width", &boat.transom_width),
    ) && cutout.value > width.value
    {
        checker.fault("transom.cutout_width", "wider than the transom", "check both widths");
    }
}

/// What is measured down the transom ends on it: holes, bolts, the floor of the splash-well, and whatever else is declared
/// with those bounds.
pub(super) fn on_transom(checker: &mut Checker, job: &Job) {
    let Some(height) = checker.sound("transom.height", &job.transom.height) else { return };
    let most = height.value + height.tolerance.unwrap_or_default();
    job.visit(&Place::root(""), &mut |at, value| {
        let (Value::Number(number), Some(ON_TRANSOM)) = (value, at.declared().and_then(|declared| declared.bounds))
        else {
            return;
        };
        if number.si - number.tolerance.unwrap_or(0.0) >= most.si() && ON_TRANSOM.hold(number.si) {
            checker.fault(
                &at.path(),
                format!(
                    "{} below the top is outside the transom",
                    Measure::tape(Length::from_si(number.si)).show(Units::Both)
                ),
                format!("the transom is {} high at the centreline", Measure::tape(height.value).show(Units::Both)),
            );
        }
    });
}

/// A place must lie on the transom, as far as its width is known.
pub(super) fn across(checker: &mut Checker, path: &str, at: &Across, boat: &Boat) {
    let width = checker.sound("boat.transom_width", &boat.transom_width);
    let Some(width) = width.or(checker.sound("boat.beam", &boat.beam)) else {
        return;
    };
    let reach = width.value / 2.0 + Length::from_si(OVERHANG.si());
    if at.y().abs() > reach && at.y().si().abs() <= ACROSS.most() {
        checker.fault(
            path,
            format!("{} off the centreline is outside the transom", Measure::tape(at.y().abs()).show(Units::Both)),
            format!("the transom is {} wide: half of it each way", Measure::tape(width.value).show(Units::Both)),
        );
    }
}
