//! Coefficients and pull at rest of engines and propellers against numpy (`check.py`, which finds the engine's speed at rest by
//! bisection and has a table of its own).

use serde_json::Value;
use sternknee::physics::propeller::{Drive, Propeller, rated_turning, thrust_at_rest};
use sternknee::quantity::Dimensioned;
use sternknee::working::Sheet;
use uom::si::angular_velocity::revolution_per_minute;
use uom::si::f64::{AngularVelocity, Length, Power, Ratio};
use uom::si::{length::inch, power::watt};

const PAIRS: &str = include_str!("pairs.json");
const RESULTS: &str = include_str!("results.json");
/// Of coefficients, absolute; of the pull at rest, relative.
const TOLERANCE: f64 = 1e-9;
/// By definition: 550 foot-pounds a second; a pound-force.
const HORSEPOWER: f64 = 550.0 * 0.3048 * POUND_FORCE;
const POUND_FORCE: f64 = 0.453_592_37 * 9.806_65;

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap()
}

fn numbers(value: &Value) -> Vec<f64> {
    value.as_array().unwrap().iter().map(number).collect()
}

#[test]
fn propellers_of_the_series_agree_with_numpy() {
    let (asked, kept): (Value, Value) = (serde_json::from_str(PAIRS).unwrap(), serde_json::from_str(RESULTS).unwrap());
    assert!(kept["versions"]["numpy"].is_string());
    let advances = numbers(&asked["advances"]);
    let pairs = asked["pairs"].as_array().unwrap();
    assert!(pairs.len() >= 6 && pairs.len() == kept["pairs"].as_array().unwrap().len());
    let (mut worst, mut worst_pull) = (0.0_f64, 0.0_f64);
    for (pair, theirs) in pairs.iter().zip(kept["pairs"].as_array().unwrap()) {
        assert_eq!(pair["name"], theirs["name"]);
        let of = |key: &str| number(&pair[key]);
        let blades = u8::try_from(pair["blades"].as_u64().unwrap()).unwrap();
        let propeller = Propeller::new(blades, of("area_ratio"), of("pitch_in") / of("diameter_in")).unwrap();
        let (thrust, torque) = (numbers(&theirs["thrust"]), numbers(&theirs["torque"]));
        for (i, advance) in advances.iter().enumerate() {
            let ours = propeller.open_water(*advance).unwrap();
            worst = worst.max((ours.thrust - thrust[i]).abs()).max((ours.torque - torque[i]).abs());
        }
        let drive = Drive {
            power: Power::new::<watt>(of("power_hp") * HORSEPOWER),
            rated_speed: AngularVelocity::new::<revolution_per_minute>(of("rated_rpm")),
            gear_ratio: Ratio::from_si(of("gear_ratio")),
            diameter: Length::new::<inch>(of("diameter_in")),
        };
        let mut sheet = Sheet::default();
        let turning = rated_turning(&mut sheet, &drive);
        let pull = thrust_at_rest(&mut sheet, &drive, &turning, &propeller).value().si() / POUND_FORCE;
        worst_pull = worst_pull.max((pull / number(&theirs["pull_lbf"]) - 1.0).abs());
    }
    println!("{} propellers: coefficients within {worst:.1e}, pull at rest within {worst_pull:.1e}", pairs.len());
    assert!(worst < TOLERANCE && worst_pull < TOLERANCE, "{worst} {worst_pull}");
}
