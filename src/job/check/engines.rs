//! What the engines hung on a transom must not say, and where they must not stand.

use uom::si::f64::Length;

use super::Checker;
use super::boat::across;
use super::specs::weights;
use crate::job::{Boat, EngineGroup};
use crate::quantity::Dimensioned;
use crate::reading::{Amount, inch};

/// Two engines closer than this are written at one place. Common practice, no source: the smallest
/// outboards are about 10 in wide.
pub(crate) const ONE_PLACE: Amount = inch(8.0);

pub(super) fn engine_group(checker: &mut Checker, path: &str, group: &EngineGroup) {
    one_of(checker, path, group.class.is_some(), group.described.is_some(), "an engine");
    if let Some(spec) = &group.described {
        weights(checker, &format!("{path}.described"), spec);
    }
    match &group.bracket {
        Some(hung) => {
            let path = format!("{path}.bracket");
            one_of(checker, &path, hung.class.is_some(), hung.described.is_some(), "a bracket");
        }
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

/// No two engines of a list at one place, and none outside the transom.
pub(super) fn places(checker: &mut Checker, side: &str, groups: &[EngineGroup], boat: &Boat) {
    let one_place = Length::from_si(ONE_PLACE.si());
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
