//! Maximum displacement and capacities in the way of 33 CFR part 183, subpart C.

use nalgebra::Point3;
use uom::si::f64::{Angle, Length, Mass, MassDensity};
use uom::si::mass::{kilogram, pound};
use uom::si::mass_density::kilogram_per_cubic_meter;

use super::equilibrium::positive;
use super::error::FloatError;
use super::hull::Hull;
use super::water::{Attitude, WaterPlane};
use crate::physics::capacity::{PERSON_LB, PERSONS_OFFSET_LB, RESERVE_OVER_CAPACITY, STABILITY_TEST_SHARE};

/// Capacity from which on no stability test is asked, lb: 33 CFR 183.41.
const NO_TEST_FROM_LB: f64 = 550.0;

/// The water that she displaces when, level or at a given trim, it just reaches the first of some points.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MaximumDisplacement {
    /// Mass of the displaced water.
    pub mass: Mass,
    /// Index of the point that the water reaches first.
    pub first: usize,
    /// How far the origin then lies under water: level, the height of that point above the baseline.
    pub draft: Length,
}

/// Maximum displacement: in calm water and upright, sunk until the water reaches the lowest of the points where
/// it could come aboard (33 CFR 183.35). `trim`, positive bow up, is what is called level: none, and she is level
/// in boat axes.
///
/// # Errors
/// [`FloatError`] where a number is not finite, the density is not positive, or there are no points.
pub fn maximum_displacement(
    hull: &Hull,
    openings: &[Point3<f64>],
    water: MassDensity,
    trim: Angle,
) -> Result<MaximumDisplacement, FloatError> {
    positive("the density of the water", water.get::<kilogram_per_cubic_meter>())?;
    if !openings.iter().flat_map(|p| p.iter()).all(|c| c.is_finite()) {
        return Err(FloatError::NotFinite { what: "a point where water comes aboard" });
    }
    let level = WaterPlane::at(Attitude { trim, ..Attitude::default() })?;
    let height = |point: &Point3<f64>| level.height_above(point);
    let lowest = openings.iter().map(height).enumerate().min_by(|(_, a), (_, b)| a.value.total_cmp(&b.value));
    let Some((first, draft)) = lowest else {
        return Err(FloatError::TooFewPoints { what: "the level at which water comes aboard" });
    };
    let plane = WaterPlane::at(Attitude { sinkage: draft, trim, ..Attitude::default() })?;
    Ok(MaximumDisplacement { mass: water * hull.cut(&plane).volume, first, draft })
}

/// The greatest maximum weight capacity: (maximum displacement − boat weight) / 5 (33 CFR 183.35),
/// not below zero.
#[must_use]
pub fn weight_capacity(maximum_displacement: Mass, boat: Mass) -> Mass {
    let reserve = (maximum_displacement - boat).get::<kilogram>().max(0.0);
    Mass::new::<kilogram>(reserve / RESERVE_OVER_CAPACITY)
}

/// Persons capacity by the stability test: A / 0.6 for a test weight A (33 CFR 183.41).
#[must_use]
pub fn persons_capacity_by_test(test_weight: Mass) -> Mass {
    test_weight / STABILITY_TEST_SHARE
}

/// Persons capacity of an outboard boat, and what set it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PersonsCapacity {
    /// The greatest persons capacity.
    pub mass: Mass,
    /// What set it.
    pub by: PersonsLimit,
}

/// What sets the persons capacity.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PersonsLimit {
    /// Weight capacity less motor, control, battery and portable tank; no test is asked.
    WeightCapacity,
    /// The same, with the stability test made and no lower.
    WeightCapacityWithTest,
    /// The stability test.
    StabilityTest,
    /// The weight capacity, but the capacity is under 550 lb and the stability test has not been made.
    TestMissing,
}

/// Persons capacity (33 CFR 183.41): weight capacity less machinery weight, and where that is under
/// 550 lb no more than the stability test allows.
///
/// `machinery` is motor and control, dry battery and full portable tank of the table in 183.75;
/// `test_weight` is the weight A of the stability test, if it was made.
#[must_use]
pub fn persons_capacity(weight_capacity: Mass, machinery: Mass, test_weight: Option<Mass>) -> PersonsCapacity {
    let reserve = (weight_capacity - machinery).get::<kilogram>().max(0.0);
    let mass = Mass::new::<kilogram>(reserve);
    if mass.get::<pound>() >= NO_TEST_FROM_LB {
        return PersonsCapacity { mass, by: PersonsLimit::WeightCapacity };
    }
    match test_weight.map(persons_capacity_by_test) {
        None => PersonsCapacity { mass, by: PersonsLimit::TestMissing },
        Some(tested) if tested < mass => PersonsCapacity { mass: tested, by: PersonsLimit::StabilityTest },
        Some(_) => PersonsCapacity { mass, by: PersonsLimit::WeightCapacityWithTest },
    }
}

/// Persons in number before rounding: (lb + 32) / 141 (33 CFR 183.41).
#[must_use]
pub fn persons_unrounded(persons_capacity: Mass) -> f64 {
    (persons_capacity.get::<pound>() + PERSONS_OFFSET_LB) / PERSON_LB
}

/// Persons in number, to the nearest whole; 0 for a capacity that is not a positive number.
#[must_use]
pub fn persons_in_number(persons_capacity: Mass) -> u32 {
    if persons_capacity.get::<pound>() <= 0.0 {
        return 0;
    }
    // The cast saturates and takes NaN for 0.
    persons_unrounded(persons_capacity).round() as u32
}
