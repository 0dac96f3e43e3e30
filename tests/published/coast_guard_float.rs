//! Coast Guard boatbuilder's handbook (safe loading and persons capacity), and 33 CFR 183.35 and 183.41.
//! The worked figures were read in a public copy.

use nalgebra::Point3;
use sternknee::physics::float::{
    PersonsLimit, maximum_displacement, persons_capacity, persons_capacity_by_test, persons_in_number,
    persons_unrounded, weight_capacity,
};
use uom::si::f64::Mass;
use uom::si::length::meter;
use uom::si::mass::pound;

use super::shapes::{box_hull, close, deg, density, near};

fn lb(value: f64) -> Mass {
    Mass::new::<pound>(value)
}

#[test]
fn persons_in_number_are_those_of_the_handbook() {
    // The handbook cuts the second decimal off or rounds it: 4.127 is printed 4.12.
    for (pounds, printed, persons) in [(550.0, 4.12, 4), (547.0, 4.10, 4), (546.0, 4.09, 4)] {
        near(persons_unrounded(lb(pounds)), printed, 0.01);
        assert_eq!(persons_in_number(lb(pounds)), persons);
    }
}

#[test]
fn persons_capacity_by_test_is_that_of_the_handbook() {
    // The handbook drops the fraction of a pound.
    for (test, printed) in [(545.0, 908.0), (328.0, 546.0)] {
        let found = persons_capacity_by_test(lb(test)).get::<pound>();
        assert!((0.0..1.0).contains(&(found - printed)), "{found} {printed}");
    }
}

#[test]
fn the_lesser_of_weight_and_test_is_the_persons_capacity() {
    let by = |weight: f64, machinery: f64, test: Option<f64>| {
        let found = persons_capacity(lb(weight), lb(machinery), test.map(lb));
        (found.mass.get::<pound>().round(), found.by)
    };
    assert_eq!(by(900.0, 300.0, None), (600.0, PersonsLimit::WeightCapacity));
    assert_eq!(by(800.0, 253.0, None), (547.0, PersonsLimit::TestMissing));
    let tested = by(800.0, 253.0, Some(545.0));
    assert_eq!(tested, (547.0, PersonsLimit::WeightCapacityWithTest));
    // 300 / 0.6 = 500.
    let tested = by(800.0, 253.0, Some(300.0));
    assert_eq!(tested, (500.0, PersonsLimit::StabilityTest));
    assert_eq!(by(100.0, 253.0, None).0, 0.0);
}

/// A fifth of the reserve: a box of 16 ft × 6 ft that lets water in at 2 ft displaces 192 ft³ of fresh
/// water, 62.4 lb each (handbook), and the lowest opening counts.
#[test]
fn the_maximum_displacement_is_that_at_the_lowest_opening() {
    let foot = 0.3048;
    let hull = box_hull(16.0 * foot, 6.0 * foot, 3.0 * foot);
    let openings = [2.5, 2.0, 3.0].map(|z| Point3::new(0.0, 0.4, z * foot));
    // 62.4 lb/ft³ in kg/m³.
    let water = density(62.4 * 0.453_592_37 / foot.powi(3));
    let found = maximum_displacement(&hull, &openings, water, deg(0.0)).unwrap();
    assert_eq!(found.first, 1);
    close(found.draft.get::<meter>(), 2.0 * foot, 1e-12);
    // The units crate carries the pound to seven digits.
    close(found.mass.get::<pound>(), 192.0 * 62.4, 1e-6);
    let capacity = weight_capacity(found.mass, lb(1000.0)).get::<pound>();
    close(capacity, (192.0 * 62.4 - 1000.0) / 5.0, 1e-6);
    near(weight_capacity(lb(100.0), lb(1000.0)).get::<pound>(), 0.0, 0.0);
}

/// Closed form: a box is cut by a trimmed plane at a mean depth of that in its middle: an opening 2 ft up over the
/// after end, the bow 3 degrees down, lets water in at 2 ft + 8 ft · tan 3°.
#[test]
fn with_her_bow_down_she_displaces_more_before_the_water_reaches_her_stern() {
    let foot = 0.3048;
    let hull = box_hull(16.0 * foot, 6.0 * foot, 3.0 * foot);
    let water = density(62.4 * 0.453_592_37 / foot.powi(3));
    let found = maximum_displacement(&hull, &[Point3::new(0.0, 0.0, 2.0 * foot)], water, deg(-3.0)).unwrap();
    let depth = 2.0 + 8.0 * 3f64.to_radians().tan();
    close(found.mass.get::<pound>(), 16.0 * 6.0 * depth * 62.4, 1e-6);
}
