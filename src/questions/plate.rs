//! What a plate says, beside the boat that carries it.

use uom::si::f64::{Mass, Power};

use super::{Odd, Relation, si};
use crate::job::{Plate, bounds};
use crate::physics::power::in_horsepower;
use crate::quantity::{Dimensioned, Measure, say};
use crate::reading::{Amount, hp, lb, square_foot};

/// The unit of a US plate.
pub(super) const HORSEPOWER: Relation = Relation {
    name: "a US capacity plate says horsepower",
    why: "33 CFR 183.23 has the plate say horsepower: a kilowatt written for it is a third more than was meant.",
    source: "33 CFR 183.23, value from memory.",
    look: |known| {
        let Some(Plate::Capacity { power: Some(power), .. }) = &known.case.rig.job.plate else { return Vec::new() };
        let metric = power.written.as_ref().is_some_and(|written| written.unit == "kW");
        let asked = metric.then(|| Odd {
            entries: vec!["plate.power".to_owned()],
            said: say!(
                "{} is {}. A US capacity plate says horsepower: is that what the plate says?",
                format!("{} kW", crate::quantity::grouped(&format!("{:.0}", power.value.si() / KILOWATT), false)),
                Measure::of(in_horsepower(power.value).value)
            ),
        });
        asked.into_iter().collect()
    },
};

/// Watts of a kilowatt.
const KILOWATT: f64 = 1000.0;

/// Power over length by breadth.
pub(super) const POWER_FOR_HER_SIZE: Relation = Relation {
    name: "power is in keeping with her size",
    why: "The formula of 33 CFR 183.53 allows twice length by breadth in feet; no builder's rating is far beyond double of that.",
    source: "Common practice, no source (the limit); 33 CFR 183.53 (the measure).",
    look: |known| {
        let Some(area) = known.sizes.area() else { return Vec::new() };
        let most = HP_PER_SQUARE_FOOT * area / square_foot(1.0).si() * hp(1.0).si() + hp(ANY_HP).si();
        let of_her = known.of_sort(&[bounds::BOAT_POWER]);
        let of_her = of_her.filter(|told| told.path.starts_with("plate") || told.path.starts_with("boat"));
        of_her
            .filter_map(|told| {
                let power = si(told).filter(|power| *power > most)?;
                Some(Odd::of(
                    told,
                    say!(
                        "The {} is written as {}, on a boat of her length and beam. Is that so?",
                        told.name(),
                        Measure::of(Power::from_si(power))
                    ),
                ))
            })
            .collect()
    },
};

/// Horsepower to a square foot of length by breadth, and that much on any boat. Common practice, no source.
const HP_PER_SQUARE_FOOT: f64 = 4.0;
const ANY_HP: f64 = 50.0;

/// Persons over length by breadth.
pub(super) const PERSONS_FOR_HER_SIZE: Relation = Relation {
    name: "persons are in keeping with her size",
    why: "The trade reckons length by breadth in feet over 15; three times that stand shoulder to shoulder.",
    source: "Common practice, no source (the limit); the boater's rule of length by breadth over 15, value from memory.",
    look: |known| {
        let Some(area) = known.sizes.area() else { return Vec::new() };
        let most = PERSONS_PER_SQUARE_FOOT * area / square_foot(1.0).si() + ANY_PERSONS;
        let counts = known.of_sort(&[bounds::PERSONS, bounds::CREW]);
        counts
            .filter_map(|told| {
                let persons = si(told).filter(|persons| *persons > most)?;
                Some(Odd::of(
                    told,
                    say!(
                        "The {} are written as {}, on a boat of her length and beam. Is that so?",
                        told.name(),
                        format!("{persons:.0}")
                    ),
                ))
            })
            .collect()
    },
};

/// Persons to a square foot of length by breadth at the very most, and that many on any boat. Common practice, no source.
const PERSONS_PER_SQUARE_FOOT: f64 = 3.0 / 15.0;
const ANY_PERSONS: f64 = 4.0;

/// What a plate gives a person.
pub(super) const WEIGHT_OF_A_PERSON: Relation = Relation {
    name: "persons weigh what persons weigh",
    why: "The plate's persons share the weight that stands beside them.",
    source: "Common practice, no source: 33 CFR 183.39 reckons with 141 lb, and boats are now plated with up to 185 lb.",
    look: |known| {
        let Some(Plate::Capacity { persons: Some(persons), persons_weight: Some(weight), .. }) =
            &known.case.rig.job.plate
        else {
            return Vec::new();
        };
        let each = weight.value.si() / f64::from((*persons).max(1));
        let likely = LEAST_PERSON.si()..=MOST_PERSON.si();
        let asked = (!likely.contains(&each)).then(|| Odd {
            entries: vec!["plate.persons_weight".to_owned(), "plate.persons".to_owned()],
            said: say!(
                "The plate is written as {} persons or {}: {} each. Is that what the plate says?",
                u32::from(*persons),
                Measure::of(weight.value),
                Measure::of(Mass::from_si(each))
            ),
        });
        asked.into_iter().collect()
    },
};

/// Between these a plate's person weighs. Common practice, no source.
const LEAST_PERSON: Amount = lb(60.0);
const MOST_PERSON: Amount = lb(400.0);
