//! What boat, plate and transom must not say.

use std::ops::RangeInclusive;

use uom::si::f64::Length;

use super::Checker;
use super::bounds::{
    ACROSS, BEAM, BOAT_LENGTH, BOAT_POWER, DEADRISE, HOLE_DIAMETER, LOAD, ON_TRANSOM, THICKNESS, TRANSOM_ANGLE,
    TRANSOM_HEIGHT, WIDTH, si,
};
use crate::job::{Across, Boat, Plate, SplashWell, Transom};
use crate::quantity::{Dimensioned, Measure, Units};

/// Years in which a boat may have been built.
const YEARS: RangeInclusive<u16> = 1900..=2100;
/// Persons that a plate may give.
const PERSONS: RangeInclusive<u16> = 1..=200;

/// How far beyond the transom's side a centre may stand: a bracket may overhang. Common practice, no source.
const OVERHANG: &str = "2 in";

pub(super) fn boat(checker: &mut Checker, boat: &Boat) {
    checker.within("boat.length", boat.length.as_ref(), BOAT_LENGTH);
    checker.within("boat.beam", boat.beam.as_ref(), BEAM);
    checker.within("boat.transom_width", boat.transom_width.as_ref(), WIDTH);
    checker.within("boat.aft_quarter_beam", boat.aft_quarter_beam.as_ref(), WIDTH);
    checker.within("boat.chine_beam", boat.chine_beam.as_ref(), WIDTH);
    checker.within("boat.deadrise", boat.deadrise.as_ref(), DEADRISE);
    checker.within("boat.transom_rating", boat.transom_rating.as_ref(), LOAD);
    checker.within("boat.stability_test", boat.stability_test.as_ref(), LOAD);
    checker.within("boat.power_rating", boat.power_rating.as_ref(), BOAT_POWER);
    checker.count("boat.year", boat.year, YEARS);
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
    match plate {
        Some(Plate::Capacity { persons, persons_weight, total_weight, power }) => {
            checker.count("plate.persons", *persons, PERSONS);
            checker.within("plate.persons_weight", persons_weight.as_ref(), LOAD);
            checker.within("plate.total_weight", total_weight.as_ref(), LOAD);
            checker.within("plate.power", power.as_ref(), BOAT_POWER);
            if let (Some(persons), Some(total)) = (persons_weight, total_weight)
                && persons.value > total.value
            {
                checker.fault(
                    "plate.persons_weight",
                    "the persons weigh more than persons, motor and gear together",
                    "check both against the plate",
                );
            }
        }
        Some(Plate::Builders { persons, load, power }) => {
            checker.count("plate.persons", *persons, PERSONS);
            checker.within("plate.load", load.as_ref(), LOAD);
            checker.within("plate.power", power.as_ref(), BOAT_POWER);
        }
        Some(Plate::None | Plate::Illegible) | None => {}
    }
}

pub(super) fn transom(checker: &mut Checker, transom: &Transom, boat: &Boat) {
    checker.within("transom.height", transom.height.as_ref(), TRANSOM_HEIGHT);
    checker.within("transom.angle", transom.angle.as_ref(), TRANSOM_ANGLE);
    checker.within("transom.thickness", transom.thickness.as_ref(), THICKNESS);
    checker.within("transom.cutout_width", transom.cutout_width.as_ref(), WIDTH);
    if transom.cutout.is_some() && transom.cutout_width.is_some() {
        checker.fault("transom.cutout", "there is a cutout_width too", "leave out one of the two");
    }
    if let Some(SplashWell::Floor(floor)) = &transom.splash_well {
        checker.within("transom.splash_well", Some(floor), ON_TRANSOM);
    }
    checker.within("transom.upper_holes", transom.upper_holes.as_ref(), ON_TRANSOM);
    for (i, height) in transom.heights.iter().enumerate() {
        let path = format!("transom.heights[{i}]");
        across(checker, &format!("{path}.at"), &height.at, boat);
        checker.within(&format!("{path}.height"), Some(&height.height), TRANSOM_HEIGHT);
    }
    for (i, hole) in transom.holes.iter().enumerate() {
        let path = format!("transom.holes[{i}]");
        across(checker, &format!("{path}.at"), &hole.at, boat);
        checker.within(&format!("{path}.below"), Some(&hole.below), ON_TRANSOM);
        checker.within(&format!("{path}.diameter"), hole.diameter.as_ref(), HOLE_DIAMETER);
    }
    if let (Some(cutout), Some(width)) = (
        checker.sound("transom.cutout_width", &transom.cutout_width),
        checker.sound("boat.transom_width", &boat.transom_width),
    ) && cutout.value > width.value
    {
        checker.fault("transom.cutout_width", "wider than the transom", "check both widths");
    }
}

/// A place must lie on the transom, as far as its width is known.
pub(super) fn across(checker: &mut Checker, path: &str, at: &Across, boat: &Boat) {
    checker.within(path, at.reading(), ACROSS);
    let width = checker.sound("boat.transom_width", &boat.transom_width);
    let Some(width) = width.or(checker.sound("boat.beam", &boat.beam)) else {
        return;
    };
    let reach = width.value / 2.0 + Length::from_si(si::<Length>(OVERHANG));
    if at.y().abs() > reach && at.y().si().abs() <= si::<Length>(ACROSS.most) {
        checker.fault(
            path,
            format!("{} off the centreline is outside the transom", Measure::tape(at.y().abs()).show(Units::Both)),
            format!("the transom is {} wide: half of it each way", Measure::tape(width.value).show(Units::Both)),
        );
    }
}
