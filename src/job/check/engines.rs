//! What the engines hung on a transom must not say, and where they must not stand.

use uom::si::f64::Length;

use super::boat::across;
use super::bounds::{BLADE_AREA, BLADES, DROP, ENGINE_WEIGHT, HOLE_ROWS, PITCH, PROPELLER, SETBACK, SHAFT, TILT, si};
use super::specs::{check_bracket, check_engine};
use super::{Checker, swing};
use crate::job::{Boat, EngineGroup, Hung};
use crate::quantity::Dimensioned;

/// Two engines closer than this are written at one place. Common practice, no source: the smallest
/// outboards are about 10 in wide.
const ONE_PLACE: &str = "8 in";

pub(super) fn engine_group(checker: &mut Checker, path: &str, group: &EngineGroup) {
    one_of(checker, path, group.class.is_some(), group.described.is_some(), "an engine");
    if let Some(spec) = &group.described {
        check_engine(checker, &format!("{path}.described"), spec);
    }
    checker.within(&format!("{path}.shaft"), group.shaft.as_ref(), SHAFT);
    checker.within(&format!("{path}.weighed"), group.weighed.as_ref(), ENGINE_WEIGHT);
    checker.within(&format!("{path}.tilt_stop"), group.tilt_stop.as_ref(), TILT);
    if let Some(sheet) = &group.sheet {
        swing::sheet(checker, &format!("{path}.sheet"), sheet);
    }
    if let Some(propeller) = &group.propeller {
        let at = |field: &str| format!("{path}.propeller.{field}");
        checker.count(&at("blades"), propeller.blades, BLADES);
        checker.within(&at("diameter"), propeller.diameter.as_ref(), PROPELLER);
        checker.within(&at("pitch"), propeller.pitch.as_ref(), PITCH);
        checker.within(&at("area_ratio"), propeller.area_ratio.as_ref(), BLADE_AREA);
    }
    checker.within(&format!("{path}.setback"), group.setback.as_ref(), SETBACK);
    checker.within(&format!("{path}.drop"), group.drop.as_ref(), DROP);
    checker.count(&format!("{path}.holes_up"), group.holes_up, 0..=*HOLE_ROWS.end());
    match &group.bracket {
        Some(hung) => bracket(checker, &format!("{path}.bracket"), hung),
        None => {
            for (field, given) in [
                ("setback", group.setback.as_ref().is_some_and(|one| one.value.si() > 0.0)),
                ("drop", group.drop.is_some()),
            ] {
                if given {
                    checker.fault(
                        &format!("{path}.{field}"),
                        format!("a {field} is given, but no bracket that makes it"),
                        "name it: bracket: (class: \"setback plate 6 in\"), or leave the field out",
                    );
                }
            }
        }
    }
    if !group.propellers.is_empty() && group.propellers.len() != group.places().len() {
        checker.fault(
            &format!("{path}.propellers"),
            format!("as many propellers as engines expected: {} for {}", group.propellers.len(), group.places().len()),
            "one hand for each place in `at`, in the same order",
        );
    }
}

fn one_of(checker: &mut Checker, path: &str, class: bool, described: bool, what: &str) {
    if class == described {
        let message = if class {
            format!("{what} is both named and described")
        } else {
            format!("{what} is neither named nor described")
        };
        checker.fault(
            path,
            message,
            "give `class: \"…\"` (see `sternknee catalog`) or `described: (…)`, one of the two",
        );
    }
}

fn bracket(checker: &mut Checker, path: &str, hung: &Hung) {
    one_of(checker, path, hung.class.is_some(), hung.described.is_some(), "a bracket");
    if let Some(spec) = &hung.described {
        check_bracket(checker, &format!("{path}.described"), spec);
    }
}

/// No two engines of a list at one place, and none outside the transom.
pub(super) fn places(checker: &mut Checker, side: &str, groups: &[EngineGroup], boat: &Boat) {
    let one_place = Length::from_si(si::<Length>(ONE_PLACE));
    let mut taken: Vec<Length> = Vec::new();
    for (i, group) in groups.iter().enumerate() {
        for (j, at) in group.places().iter().enumerate() {
            let path = format!("{side}[{i}].at[{j}]");
            across(checker, &path, at, boat);
            if taken.iter().any(|y| (*y - at.y()).abs() < one_place) {
                checker.fault(
                    &path,
                    "another engine stands at this place",
                    format!("centres of two engines are {ONE_PLACE} apart at the very least"),
                );
            }
            taken.push(at.y());
        }
    }
}
