//! R. S. Khurmi and J. K. Gupta, A Textbook of Machine Design, chapter 11, eccentric load perpendicular to the axis of bolts:
//! a wall bracket with 12 kN at 400 mm, two bolts 50 mm and two 375 mm above its lower edge. Values from memory, derived again.

use sternknee::physics::strength::bolts::{Bolt, Foot, GroupLoad, bolt_forces};

#[test]
fn the_crane_bracket_pulls_its_upper_bolts_with_6_29_kn_and_shears_each_with_3_kn() {
    let bolts: Vec<Bolt> =
        [(-0.1, 0.05), (0.1, 0.05), (-0.1, 0.375), (0.1, 0.375)].map(|(y, z)| Bolt { y, z, area: 1e-4 }).to_vec();
    let foot = Foot { bottom: 0.0, top: 0.425, starboard: -0.15, port: 0.15 };
    // A weight on the side that pulls away (aft on a transom): M_y = −W L.
    let load =
        GroupLoad { at: [0.0, 0.2125], push: 0.0, shear: [0.0, -12e3], twist: 0.0, pitch: -12e3 * 0.4, yaw: 0.0 };
    let forces = bolt_forces(&bolts, foot, load).unwrap();
    let derived = 12e3 * 0.4 * 0.375 / (2.0 * (0.05_f64.powi(2) + 0.375_f64.powi(2)));
    let upper = forces.bolts[2];
    assert!((upper.tension / derived - 1.0).abs() < 1e-12);
    assert!((upper.tension / 6.29e3 - 1.0).abs() < 1e-3, "{}", upper.tension);
    assert!((upper.shear - 3e3).abs() < 1e-9);
    // Equivalent pull of the book: ½ (6.29 + √(6.29² + 4·3²)) = 7.49 kN.
    let equivalent = 0.5 * (upper.tension + (upper.tension.powi(2) + 4.0 * upper.shear.powi(2)).sqrt());
    assert!((equivalent / 7.49e3 - 1.0).abs() < 2e-3, "{equivalent}");
}
