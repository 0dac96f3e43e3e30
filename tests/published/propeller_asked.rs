//! A propeller asked about outright: what is told of it against the definitions of its coefficients (Carlton, Marine Propellers and
//! Propulsion, chapter 6: `J = V / (n D)`, `T = KT ρ n² D⁴`, `Q = KQ ρ n² D⁵`, `η = J KT / (2π KQ)`; from memory).

use std::f64::consts::TAU;

use sternknee::case::Case;
use sternknee::catalog::Catalog;
use sternknee::{job, rig};

/// What a study of a propeller of 14 in by 19 in, three blades, told so besides, tells: by its keys.
fn told(asked: &str) -> impl Fn(&str) -> f64 + use<> {
    let text = format!(
        r#"(sitting: study, propeller_study: (blades: 3, diameter: "14 in", pitch: "19 in", area_ratio: "0.65", water: fresh, {asked}))"#
    );
    let (job, _) = job::load("job.ron", &text).unwrap_or_else(|faults| panic!("{faults}\n{text}"));
    let catalog = Catalog::built_in().expect("the built-in catalog is sound");
    let rig = rig::resolve(&job, &catalog).unwrap_or_else(|unresolved| panic!("{unresolved:?}"));
    let answered = Case::new(&rig).studies().swap_remove(0);
    move |key| {
        let figure = answered.figures.iter().find(|figure| figure.key == key);
        figure.unwrap_or_else(|| panic!("nothing told of {key}")).value
    }
}

#[test]
fn its_thrust_torque_and_power_are_those_of_its_coefficients() {
    let told = told(r#"speed: "30 mph", rpm: "2,800 rpm""#);
    let (turns, diameter, speed, water) = (2800.0 / 60.0, 14.0 * 0.0254, 30.0 * 0.44704, 1000.0);
    let near = |key: &str, wanted: f64, share: f64| {
        let found = told(key);
        assert!((found / wanted - 1.0).abs() < share, "{key}: {found} is not {wanted}");
    };
    near("advance", speed / (turns * diameter), 1e-12);
    near("efficiency", told("advance") * told("kt") / (TAU * told("kq")), 1e-12);
    // Fresh water is within 2 kg/m³ of a thousand.
    near("thrust_n", told("kt") * water * turns.powi(2) * diameter.powi(4), 2e-3);
    near("torque_nm", told("kq") * water * turns.powi(2) * diameter.powi(5), 2e-3);
    near("power_w", TAU * turns * told("torque_nm"), 1e-12);
    near("efficiency", told("thrust_n") * speed / told("power_w"), 1e-12);
    near("turns_per_second", turns, 1e-12);
    near("speed_m_s", speed, 1e-12);
}

/// Two of speed, turns and advance tell the third, whichever they are.
#[test]
fn any_two_of_speed_turns_and_advance_ask_the_same() {
    let first = told(r#"speed: "30 mph", rpm: "2,800 rpm""#);
    let advance = first("advance");
    let by_turns = told(&format!(r#"rpm: "2,800 rpm", advance: "{advance}""#));
    let by_speed = told(&format!(r#"speed: "30 mph", advance: "{advance}""#));
    for key in ["thrust_n", "torque_nm", "power_w", "turns_per_second", "speed_m_s"] {
        for other in [&by_turns, &by_speed] {
            assert!((other(key) / first(key) - 1.0).abs() < 1e-9, "{key}");
        }
    }
}
