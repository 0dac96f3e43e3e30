//! Wet wood: Wood Handbook, USDA (values from memory): coast Douglas-fir green has 0.80 of its modulus and 0.52 of its strength dry,
//! and falls no further past fibre saturation at about 30 %. Joinery is dry at 15 % (common practice, no source).

use sternknee::physics::strength::knockdown::{KnockDown, by_moisture};

use crate::common::near;

#[test]
fn wood_keeps_all_when_dry_and_what_green_wood_has_when_soaked() {
    for (percent, stiffness, strength) in
        [(0.0, 1.0, 1.0), (15.0, 1.0, 1.0), (22.5, 0.90, 0.76), (30.0, 0.80, 0.52), (80.0, 0.80, 0.52)]
    {
        let left = by_moisture(percent).expect("a moisture");
        near(left.stiffness, stiffness, 1e-12);
        near(left.strength, strength, 1e-12);
    }
    assert_eq!(by_moisture(9.0), Some(KnockDown::SOUND));
}

#[test]
fn what_is_no_moisture_tells_nothing() {
    for percent in [-1.0, f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
        assert_eq!(by_moisture(percent), None, "{percent}");
    }
}
