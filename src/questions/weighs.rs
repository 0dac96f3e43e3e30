//! What she and what is aboard weigh, beside her size.

use uom::si::f64::{Mass, Volume};

use super::{Odd, Relation, si};
use crate::job::bounds;
use crate::quantity::{Dimensioned, Measure, Style, say};
use crate::reading::{Amount, kg_per_m3};

/// Weights of all sorts.
pub(super) const NO_MORE_THAN_SHE_FLOATS: Relation = Relation {
    name: "nothing weighs more than she could float",
    why: "A box of her length, breadth and depth, pressed under, floats no more than this.",
    source: "Archimedes.",
    look: |known| {
        let Some(bulk) = known.sizes.bulk() else { return Vec::new() };
        let most = bulk * SEA.si();
        let weights = known.of_sort(&[bounds::ITEM_WEIGHT, bounds::LOAD, bounds::DISPLACEMENT, bounds::BOAT_WEIGHT]);
        let aboard = weights.filter(|told| !told.path.starts_with("rigging") && !told.path.starts_with("engines_"));
        aboard
            .filter_map(|told| {
                let weight = si(told).filter(|weight| *weight > most)?;
                Some(Odd::of(
                    told,
                    say!(
                        "The {} is written as {}; a box of her length, beam and depth floats {} before it goes under. Is that so?",
                        told.name(),
                        Measure::of(Mass::from_si(weight)),
                        Measure::of(Mass::from_si(most))
                    ),
                ))
            })
            .collect()
    },
};

/// Weight of sea water, rounded up.
const SEA: Amount = kg_per_m3(1030.0);

/// The bare boat.
pub(super) const AS_BOATS_WEIGH: Relation = Relation {
    name: "a boat weighs what boats of her size weigh",
    why: "From a canoe to a plated workboat, length by breadth by depth weighs between these.",
    source: "Common practice, no source.",
    look: |known| {
        let Some(bulk) = known.sizes.bulk() else { return Vec::new() };
        let weights = known.of_sort(&[bounds::BOAT_WEIGHT, bounds::DISPLACEMENT]);
        weights
            .filter_map(|told| {
                let weight = si(told).filter(|weight| !is_a_boat(*weight, bulk))?;
                Some(Odd::of(
                    told,
                    say!(
                        "The {} is written as {}; boats of her length, beam and depth weigh {} to {}. Is that so?",
                        told.name(),
                        Measure::of(Mass::from_si(weight)),
                        Measure::of(Mass::from_si(bulk * LIGHTEST.si())),
                        Measure::of(Mass::from_si(bulk * HEAVIEST.si()))
                    ),
                ))
            })
            .collect()
    },
};

/// Whether a boat of this bulk may weigh so much.
pub(super) fn is_a_boat(kg: f64, bulk: f64) -> bool {
    (bulk * LIGHTEST.si()..=bulk * HEAVIEST.si()).contains(&kg)
}

/// A boat's weight over length by breadth by depth: a canoe's, and a plated workboat's. Common practice, no source.
const LIGHTEST: Amount = kg_per_m3(8.0);
const HEAVIEST: Amount = kg_per_m3(500.0);

/// Tanks.
pub(super) const TANK_IN_HER: Relation = Relation {
    name: "a tank goes into her",
    why: "A tank that fills a third of her length, breadth and depth leaves no boat.",
    source: "Common practice, no source.",
    look: |known| {
        let Some(bulk) = known.sizes.bulk() else { return Vec::new() };
        let most = TANK_OVER_BULK * bulk;
        known
            .of_sort(&[bounds::TANK])
            .filter_map(|told| {
                let volume = si(told).filter(|volume| *volume > most)?;
                Some(Odd::of(
                    told,
                    say!(
                        "The {} is written as {}, more than a third of the boat. Is that so?",
                        told.name(),
                        Measure::styled(Volume::from_si(volume), Style::Plain)
                    ),
                ))
            })
            .collect()
    },
};

const TANK_OVER_BULK: f64 = 1.0 / 3.0;
