//! Propellers at a speed: the Wageningen B-series as cubics of the advance, its correction for Reynolds number (Oosterveld and van
//! Oossanen 1975, values from memory), cavitation (Gawn and Burrill as fitted by Blount and Hubble 1981, values from memory).

use proptest::prelude::*;
use sternknee::physics::propeller::{
    Curves, Propeller, REYNOLDS, Sized, Turning, cavitation, cavitation_limit, projected,
};

fn sized(blades: u8, area: f64, pitch: f64) -> Sized {
    let curves = Curves::of(&Propeller::new(blades, area, pitch).unwrap());
    Sized { curves, diameter: 0.38, density: 1026.0, stretch: 1.0, pitch: pitch * 0.38 }
}

#[test]
fn the_cubics_are_the_polynomials() {
    for blades in 2..=7 {
        for (area, pitch) in [(0.35, 0.6), (0.55, 1.0), (0.9, 1.35)] {
            let propeller = Propeller::new(blades, area, pitch).unwrap();
            let curves = Curves::of(&propeller);
            for advance in [0.0, 0.3, 0.7, 1.1] {
                let (one, other) = (propeller.open_water(advance).unwrap(), curves.at(advance));
                assert!((one.thrust - other.thrust).abs() < 1e-14 && (one.torque - other.torque).abs() < 1e-14);
            }
            assert!(curves.at(curves.no_thrust).thrust.abs() < 1e-12);
        }
    }
}

/// The correction comes to nothing at the number that the series stands for, and lowers torque above it.
#[test]
fn the_correction_for_reynolds_number_begins_at_the_series_own() {
    for (blades, area, pitch) in [(3, 0.5, 0.8), (3, 0.55, 1.1), (4, 0.55, 1.0), (5, 0.7, 1.2)] {
        let propeller = Propeller::new(blades, area, pitch).unwrap();
        let (own, same, more) =
            (Curves::of(&propeller), Curves::at_reynolds(&propeller, REYNOLDS), Curves::at_reynolds(&propeller, 2e7));
        let at = |curves: &Curves| curves.at(0.75 * pitch);
        let (own, same, more) = (at(&own), at(&same), at(&more));
        println!(
            "{blades} {area} {pitch}: KT {:.5} {:.5} {:.5}, 10 KQ {:.5} {:.5} {:.5}",
            own.thrust,
            same.thrust,
            more.thrust,
            10.0 * own.torque,
            10.0 * same.torque,
            10.0 * more.torque
        );
        assert!((same.thrust - own.thrust).abs() < 1.5e-3 && (same.torque - own.torque).abs() < 1.5e-4);
        assert!(more.torque < own.torque && more.efficiency() > own.efficiency());
    }
}

#[test]
fn the_cavitation_line_by_hand() {
    // 0.494 · 0.5^0.88 = 0.2684; projected over expanded at P/D 1: 0.838.
    assert!((cavitation_limit(0.5) - 0.2684).abs() < 1e-4);
    assert!((projected(1.0) - 0.838_f64).abs() < 1e-12);
}

/// Burrill's figures by hand: at 0.7 of the radius of 190 mm, 30 turns a second and 12 m/s the blades meet 772.5 m²/s², 396.3 kPa
/// of head; 103.6 kPa of air and water over it is σ = 0.2615; 3,000 N on 523 cm² of projected blades is τ = 0.1448 where
/// the line says 0.1518.
#[test]
fn a_propeller_near_the_cavitation_line_by_hand() {
    let sized = sized(3, 0.55, 1.0);
    let propeller = Propeller::new(3, 0.55, 1.0).unwrap();
    let turning = Turning { thrust: 3000.0, ..sized.turning(30.0, 12.0) };
    let load = cavitation(&sized, &propeller, &turning, 12.0, 0.4, 9.806_65);
    assert!((load - 0.9543).abs() < 1e-4, "{load}");
    let deeper = cavitation(&sized, &propeller, &turning, 12.0, 1.4, 9.806_65);
    assert!(deeper < load, "what is held down by more water cavitates later");
}

proptest! {
    #[test]
    fn pulling_gives_the_thrust_asked_for_and_more_asks_for_more_turns(
        blades in 3u8..=5, area in 0.4..0.8f64, pitch in 0.6..1.4f64, speed in 2.0..25.0f64, load in 0.01..0.5f64,
    ) {
        let sized = sized(blades, area, pitch);
        let thrust = load * 1026.0 * (speed * 0.38f64).powi(2);
        let (one, more) = (sized.pulling(thrust, speed), sized.pulling(1.05 * thrust, speed));
        prop_assert!((one.thrust / thrust - 1.0).abs() < 1e-9);
        prop_assert!(more.turns > one.turns && more.power > one.power);
        prop_assert!(one.open_water.efficiency() > 0.0 && one.open_water.efficiency() < 1.0);
    }

    /// At equal slip a stretched propeller is as efficient.
    #[test]
    fn a_stretched_pitch_keeps_its_efficiency_at_equal_slip(pitch in 0.7..1.3f64, stretch in 0.85..1.2f64, part in 0.3..0.9f64) {
        let plain = sized(3, 0.55, pitch);
        let stretched = Sized { stretch, ..plain };
        let speed = 10.0;
        let turns = speed / (part * plain.curves.no_thrust * 0.38);
        let (one, other) = (plain.turning(turns, speed), stretched.turning(turns / stretch, speed));
        prop_assert!((one.open_water.efficiency() / other.open_water.efficiency() - 1.0).abs() < 1e-9);
    }
}
