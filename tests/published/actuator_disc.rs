//! Static thrust of the ideal actuator disc (momentum theory, Rankine and Froude), figures derived for salt water of 1025 kg/m³;
//! thrust at speed; ISO 12215-5's acceleration (formula from memory); and the load cases that stand on them.

use sternknee::physics::strength::bolts::{Bolt, Foot, bolt_forces};
use sternknee::physics::strength::loads::{
    Case, Engine, FaceLoad, LoadError, Outfit, acceleration_at_gravity_centre, both, cases, static_thrust,
    thrust_at_speed,
};
use sternknee::physics::strength::panel::Load;
use sternknee::physics::strength::panel_loads;
use sternknee::quantity::Dimensioned;
use sternknee::working::Sheet;
use uom::si::f64::{Angle, Length, Mass, Power, Ratio, Velocity};
use uom::si::{angle::degree, length::inch, length::meter, mass::kilogram, power::horsepower, velocity::knot};

#[test]
fn static_thrust_is_that_of_the_ideal_disc() {
    for (hp, kilonewtons) in [(150.0, 14.6), (300.0, 23.2)] {
        let power = Power::new::<horsepower>(hp);
        let thrust = static_thrust(&mut Sheet::default(), power, Length::new::<inch>(15.5), 1.0).value().si();
        assert!((thrust / 1e3 / kilonewtons - 1.0).abs() < 4e-3, "{thrust}");
        let area = std::f64::consts::FRAC_PI_4 * (15.5_f64 * 0.0254).powi(2);
        let closed = (2.0 * 1025.0 * area * power.si().powi(2)).cbrt();
        assert!((thrust / closed - 1.0).abs() < 1e-12);
    }
}

#[test]
fn thrust_at_speed_is_power_over_speed_times_efficiency() {
    // 150 hp = 111.9 kW at 40 kn = 20.58 m/s and 0.6: 3.26 kN.
    let thrust =
        thrust_at_speed(&mut Sheet::default(), Power::new::<horsepower>(150.0), Velocity::new::<knot>(40.0), 0.6);
    assert!((thrust.value().si() / 3.26e3 - 1.0).abs() < 2e-3);
}

#[test]
fn the_acceleration_follows_its_formula() {
    let n = acceleration_at_gravity_centre(
        &mut Sheet::default(),
        Length::new::<meter>(6.0),
        Length::new::<meter>(2.0),
        Angle::new::<degree>(20.0),
        Velocity::new::<knot>(30.0),
        Mass::new::<kilogram>(2000.0),
    );
    // 0.32 (6/20 + 0.084) 30 · 900 · 4 / 2000 = 6.636.
    assert!((n.value().si() - 6.635_52).abs() < 1e-9, "{}", n.value().si());
}

fn engine() -> Engine {
    Engine {
        mass: Mass::new::<kilogram>(220.0),
        power: Power::new::<horsepower>(150.0),
        propeller: Length::new::<inch>(15.0),
        weight_aft: Length::new::<meter>(0.35),
        tilted_aft: Length::new::<meter>(0.65),
        weight_up: Length::new::<meter>(0.1),
        shaft_down: Length::new::<meter>(0.8),
        propeller_aft: Length::new::<meter>(0.5),
        steering: Angle::new::<degree>(30.0),
    }
}

fn outfit() -> Outfit {
    Outfit {
        speed: Velocity::new::<knot>(40.0),
        slamming: Ratio::from_si(3.0),
        disc_efficiency: 1.0,
        overall_efficiency: 0.6,
    }
}

fn of(case: Case) -> FaceLoad {
    cases(&mut Sheet::default(), &engine(), &outfit()).unwrap().into_iter().find(|(c, _)| *c == case).unwrap().1
}

#[test]
fn weight_and_thrust_ahead_both_press_the_heel_and_pull_the_upper_bolts() {
    let weight = 220.0 * 9.80665;
    let still = of(Case::Static);
    assert!((still.force[2] + weight).abs() < 1e-9 && (still.moment[1] + weight * 0.35).abs() < 1e-9);
    let pushed = of(Case::StaticThrust);
    assert!(pushed.force[0] > 10e3 && pushed.moment[1] < still.moment[1]);
    assert!((pushed.moment[1] - still.moment[1] + 0.8 * pushed.force[0]).abs() < 1e-6);
    assert!(of(Case::Astern).moment[1] > still.moment[1]);
    let slam = of(Case::Slamming);
    assert!((slam.force[2] + 4.0 * weight).abs() < 1e-9);
    let turn = of(Case::HardOver);
    assert!(turn.force[1] != 0.0 && turn.moment[2] != 0.0);
}

#[test]
fn setback_lengthens_the_weights_arm_and_nothing_else_of_the_static_case() {
    let mut far = engine();
    far.weight_aft += Length::new::<inch>(10.0);
    let load = cases(&mut Sheet::default(), &far, &outfit()).unwrap()[0].1;
    let near = of(Case::Static);
    assert_eq!(load.force, near.force);
    assert!((load.moment[1] - near.moment[1] + 220.0 * 9.80665 * 0.254).abs() < 1e-9);
}

#[test]
fn one_engine_alone_of_a_pair_turns_the_transom_and_two_do_not() {
    let (run, hang) = (of(Case::StaticThrust), of(Case::Static));
    let pair = both(&[(0.33, run), (-0.33, run)]);
    assert!(pair.moment[2].abs() < 1e-9 && pair.moment[0].abs() < 1e-9);
    let single = both(&[(0.33, run), (-0.33, hang)]);
    assert!((single.moment[2] + 0.33 * run.force[0]).abs() < 1e-9);
}

#[test]
fn the_foots_patches_carry_the_push_onto_the_panel() {
    let bolts: Vec<Bolt> =
        [(0.16, 0.45), (-0.16, 0.45), (0.125, 0.25), (-0.125, 0.25)].map(|(y, z)| Bolt { y, z, area: 9e-5 }).to_vec();
    let foot = Foot { bottom: 0.15, top: 0.5, starboard: -0.2, port: 0.2 };
    for case in Case::ALL {
        let load = of(case).on_bolts([0.0, 0.35]);
        let forces = bolt_forces(&bolts, foot, load).unwrap();
        let patches = panel_loads(&bolts, foot, &forces, &[[0.05, 0.05]; 4], 0.01);
        let sum: f64 = patches
            .iter()
            .map(|p| match p {
                Load::Patch { force, .. } => *force,
                other => panic!("{other:?}"),
            })
            .sum();
        assert!((sum - load.push).abs() < 1e-6 * 1e4, "{case:?}: {sum} {}", load.push);
    }
}

#[test]
fn nonsense_loads_are_errors() {
    let light = Engine { mass: Mass::new::<kilogram>(0.0), ..engine() };
    let error = cases(&mut Sheet::default(), &light, &outfit()).unwrap_err();
    assert_eq!(error, LoadError::NotPositive { what: "the engine's weight" });
    let nan = Engine { shaft_down: Length::new::<meter>(f64::NAN), ..engine() };
    assert!(cases(&mut Sheet::default(), &nan, &outfit()).is_err());
}
