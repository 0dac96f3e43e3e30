//! Steering by hand: displacement of cylinders and helms, the pull at the wheel; cables round their bends; the linkage of two
//! engines. The trade's check values: 4 in saved at a right angle, nine turns lock to lock of two cylinders on one helm.

use proptest::prelude::*;
use sternknee::physics::rigging::cable::{self, Bend};
use sternknee::physics::rigging::steering::{self, Cylinder};
use sternknee::physics::rigging::tie_bar::Linkage;
use sternknee::quantity::{Dimensioned, Units, degrees, horsepower, inches};
use sternknee::working::{Sheet, Term};
use uom::si::f64::{Force, Velocity, Volume};

const IN3: f64 = 0.0254 * 0.0254 * 0.0254;
const LBF: f64 = 4.448_221_615_260_5;

fn cylinder() -> Cylinder {
    Cylinder { bore: inches(1.5), rod: inches(0.75), stroke: inches(8.0), balanced: true }
}

fn helm(cubic_inches: f64) -> Volume {
    Volume::from_si(cubic_inches * IN3)
}

#[test]
fn the_pins_feel_the_side_force_over_the_lever() {
    // 0.65 · 150 hp at 40 mph is 914.1 lbf of thrust; 0.15 of it 9 in behind the axis, held 8 in before it: 154.2 lbf.
    let speed = Velocity::from_si(40.0 * 0.447_04);
    let load = steering::side_load(&mut Sheet::default(), horsepower(150.0), speed).value().si() / LBF;
    assert!((load - 154.2).abs() < 0.1, "{load}");
}

#[test]
fn the_parallel_bar_is_as_long_as_the_pins_are_apart_with_both_engines_ahead() {
    // Axes 0.7 m apart, arms of 0.2 m turned inboard by 5 degrees: the pins stand 0.2 sin 5° = 0.017431 m inboard each.
    let linkage = Linkage { spread: 0.7, arm: 0.2, splay: 5.0_f64.to_radians(), bar: 0.0 };
    let bar = linkage.parallel_bar();
    assert!((bar - 0.665_138).abs() < 1e-6, "{bar}");
    assert!(Linkage { bar, ..linkage }.toe(0.0).unwrap().abs() < 1e-12);
}

#[test]
fn turns_are_the_displacement_over_the_helms() {
    // π/4 (1.5² − 0.75²) = 1.3254 in²; times 8 in 10.603 in³; over 1.7 in³ 6.237 turns.
    let mut sheet = Sheet::default();
    let turns = steering::turns(&mut sheet, &cylinder(), 1, helm(1.7)).value().si();
    assert!((turns - 6.237).abs() < 1e-3, "{turns}");
    assert!(sheet.lines().iter().any(|line| line.show(Units::Us).ends_with("10.6 in³")), "{sheet:#?}");
    // Without balance the full side: 1.7671 in² · 8 in / 1.7 in³.
    let unbalanced = Cylinder { balanced: false, ..cylinder() };
    let turns = steering::turns(&mut Sheet::default(), &unbalanced, 1, helm(1.7)).value().si();
    assert!((turns - 8.316).abs() < 1e-3, "{turns}");
}

#[test]
fn two_cylinders_on_one_large_helm_take_about_nine_turns() {
    let turns = steering::turns(&mut Sheet::default(), &cylinder(), 2, helm(2.4)).value().si();
    assert!((turns - 8.84).abs() < 5e-3, "{turns}");
}

#[test]
fn the_rim_pulls_what_the_pressure_turns() {
    // 400 lbf on 1.3254 in²: 301.8 psi; 301.8 · 1.7 / 2π / 0.85 = 96.1 lbf·in; over 7.5 in 12.8 lbf.
    let mut sheet = Sheet::default();
    let load = Term::new("F", Force::from_si(400.0 * LBF));
    let pressure = steering::pressure(&mut sheet, &cylinder(), 1, &load);
    assert!((pressure.value().si() / 6_894.757 - 301.8).abs() < 0.1);
    let pull = steering::rim_pull(&mut sheet, &pressure, helm(1.7), inches(15.0)).value().si() / LBF;
    assert!((pull - 12.81).abs() < 0.01, "{pull}");
}

#[test]
fn a_right_angle_of_9_3_in_saves_the_trades_four_inches() {
    let bend = Bend { angle: degrees(90.0), radius: inches(9.32) };
    let found = cable::length(&mut Sheet::default(), &[inches(60.0), inches(40.0)], &[bend]).value();
    assert!((found.si() / 0.0254 - 96.0).abs() < 0.01, "{}", found.si() / 0.0254);
}

#[test]
fn a_parallelogram_never_toes() {
    let linkage = Linkage { spread: 0.7, arm: 0.2, splay: 0.0, bar: 0.7 };
    let (toe, _) = linkage.largest_toe(0.6).unwrap();
    assert!(toe.abs() < 1e-12, "{toe}");
}

/// Euclid: opposite sides of a parallelogram stay parallel, however far its arms are swung, past square to the boat too, to either side.
#[test]
fn engines_on_a_bar_as_long_as_their_axes_are_apart_stand_alike() {
    for arm in [0.05, 0.2, 0.6] {
        let linkage = Linkage { spread: 0.7, arm, splay: 0.0, bar: 0.7 };
        // At a right angle all four pins stand in line: there it may fold over.
        for degrees in (-170_i32..=170).filter(|degrees| degrees.abs() != 90) {
            let port = f64::from(degrees).to_radians();
            let starboard = linkage.follows(port).expect("it joins");
            assert!((starboard - port).abs() < 1e-7, "arm {arm}, {degrees} degrees: {starboard}");
        }
    }
}

/// The largest toe of a sweep is the toe where it says it is, and no angle of the sweep, to either side, has more.
#[test]
fn no_angle_of_the_sweep_toes_more_than_the_largest_toe() {
    for (splay, off) in [(0.1, 0.0), (-0.1, 0.0), (0.05, 0.01), (0.05, -0.01), (0.0, 0.02), (-0.08, -0.015)] {
        let mut linkage = Linkage { spread: 0.7, arm: 0.2, splay, bar: 0.0 };
        linkage.bar = linkage.parallel_bar() + off;
        let (toe, at) = linkage.largest_toe(0.6).expect("it joins");
        assert!((toe - linkage.toe(at).expect("it joins")).abs() < 1e-12 && at.abs() <= 0.6 + 1e-12, "{toe} at {at}");
        // Half way between two of its steps the toe is no more than they have, but for their bend.
        for step in -240..=240 {
            let there = linkage.toe(0.6 * f64::from(step) / 240.0).expect("it joins");
            assert!(there.abs() <= toe.abs() * (1.0 + 1e-3), "{splay} {off}: {there} at {step} against {toe}");
        }
        assert!(toe.abs() > 1e-3, "{splay} {off}: it toes");
    }
}

#[test]
fn a_long_bar_spreads_the_arms_and_the_law_of_cosines_says_how_far() {
    // Both engines ahead at once would want 0.7; with 0.71 the starboard arm goes 0.01/0.2 rad to starboard, nearly.
    let linkage = Linkage { spread: 0.7, arm: 0.2, splay: 0.0, bar: 0.71 };
    let starboard = linkage.follows(0.0).unwrap();
    assert!((starboard + 0.0503).abs() < 1e-3, "{starboard}");
    let joined = |port: f64, starboard: f64| {
        let y = 0.7 + 0.2 * port.sin() - 0.2 * starboard.sin();
        let x = 0.2 * port.cos() - 0.2 * starboard.cos();
        y.hypot(x)
    };
    assert!((joined(0.0, starboard) - 0.71).abs() < 1e-12);
    assert!(Linkage { bar: 1.2, ..linkage }.follows(0.0).is_err());
}

proptest! {
    /// Pins as far apart as the bar is long, wherever the engines stand: it does not stretch.
    #[test]
    fn a_bar_is_as_long_when_steered_as_ahead(spread in 0.5f64..1.0, arm in 0.15f64..0.25, splay in -0.1f64..0.1, off in -0.01f64..0.01, port in -0.5f64..0.5) {
        let mut linkage = Linkage { spread, arm, splay, bar: 0.0 };
        linkage.bar = linkage.parallel_bar() + off;
        let starboard = linkage.follows(port).unwrap();
        let pin = |side: f64, angle: f64| [side * spread / 2.0 + arm * (angle - side * splay).sin(), arm * (angle - side * splay).cos()];
        let ([y, x], [other_y, other_x]) = (pin(1.0, port), pin(-1.0, starboard));
        prop_assert!(((y - other_y).hypot(x - other_x) - linkage.bar).abs() < 1e-9);
    }

    #[test]
    fn a_linkage_mirrored_toes_as_much_the_other_way(spread in 0.5f64..1.0, arm in 0.15f64..0.25, splay in -0.1f64..0.1, off in -0.01f64..0.01, port in -0.5f64..0.5) {
        let mut linkage = Linkage { spread, arm, splay, bar: 0.0 };
        linkage.bar = linkage.parallel_bar() + off;
        let starboard = linkage.follows(port).unwrap();
        // Seen in a mirror the starboard engine leads at the mirrored angle, and the port one follows.
        let mirrored = linkage.follows(-starboard).unwrap();
        prop_assert!((mirrored + port).abs() < 1e-9, "{mirrored} {port}");
    }

    #[test]
    fn a_smaller_helm_takes_more_turns_and_pulls_less(displacement in 1.0f64..3.0, less in 0.5f64..0.99) {
        let turns = |v: f64| steering::turns(&mut Sheet::default(), &cylinder(), 1, helm(v)).value().si();
        let pull = |v: f64| {
            let mut sheet = Sheet::default();
            let load = Term::new("F", Force::from_si(1000.0));
            let pressure = steering::pressure(&mut sheet, &cylinder(), 1, &load);
            steering::rim_pull(&mut sheet, &pressure, helm(v), inches(15.0)).value().si()
        };
        prop_assert!(turns(displacement * less) > turns(displacement));
        prop_assert!(pull(displacement * less) < pull(displacement));
        // What the hand does is the same either way.
        let work = |v: f64| turns(v) * pull(v);
        prop_assert!((work(displacement * less) / work(displacement) - 1.0).abs() < 1e-9);
    }
}
