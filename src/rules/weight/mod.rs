//! Weight: may it hang there, and may she carry it?

mod bracket_rating;
mod capacity_left;
mod old_to_new;
mod plate_persons;
mod rated_basis;
mod swamped_flotation;
mod transom_rating;

use uom::si::f64::{Mass, Power};

use crate::job::Craft;
use crate::physics::capacity;
use crate::quantity::{Dimensioned, Style, Text, pounds, say};
use crate::rig::{Missing, Rig};
use crate::rules::Rule;

/// Its rules, in the order of the report.
pub(super) const RULES: &[&Rule] = &[
    &transom_rating::TRANSOM_RATING,
    &rated_basis::RATED_BASIS,
    &bracket_rating::BRACKET_RATING,
    &plate_persons::PLATE_PERSONS,
    &capacity_left::CAPACITY_LEFT,
    &swamped_flotation::SWAMPED_FLOTATION,
    &old_to_new::OLD_TO_NEW,
];

/// Why 33 CFR 183's loading and flotation rules do not cover her, if they do not.
///
/// # Errors
/// The readings that are needed to tell.
pub(super) fn outside_small_boats(rig: &Rig) -> Result<Option<Text>, Vec<Missing>> {
    let (craft, length) = (rig.job.boat.craft().ask(), rig.job.boat.length().ask());
    match (craft, length) {
        (Ok(craft), _) if *craft != Craft::Monohull => {
            Ok(Some(say!("33 CFR 183 does not cover a {} here; the builder's figures hold.", craft.words())))
        }
        (_, Ok(length)) if !capacity::regulated_length().exceeds(length.value) => Ok(Some(say!(
            "33 CFR 183 covers boats under 20 ft here, and she is {}.",
            length.measure(Style::FeetInches)
        ))),
        (Ok(_), Ok(_)) => Ok(None),
        (craft, length) => Err([craft.err(), length.err()].into_iter().flatten().collect()),
    }
}

/// Half of the pound to which weights are told: 1,150 lb do not exceed a rating of 1,150 lb.
const TOLD_WITHIN_LB: f64 = 0.5;

/// Whether a weight is more than a rating, as far as both are told.
fn overweight(weight: Mass, rating: Mass) -> bool {
    (weight - rating).exceeds(pounds(TOLD_WITHIN_LB))
}

/// Power of one main engine when the plate's power is spread over so many.
fn share(power: Power, count: usize) -> Power {
    power / count.max(1) as f64
}
