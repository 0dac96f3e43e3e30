//! Two papers of Marine Technology 13 (1976), equations from memory: D. Savitsky and P. Brown on trim tabs; D. Blount and D. Fox on
//! the drag at the hump. Each by hand at a point.

use proptest::prelude::*;
use sternknee::physics::running::{Beside, Planing, Tabs, hump};
use sternknee::quantity::{Dimensioned, degrees, feet};
use uom::si::angle::degree;
use uom::si::f64::{MassDensity, Velocity};
use uom::si::force::pound_force;
use uom::si::mass_density::slug_per_cubic_foot;
use uom::si::velocity::foot_per_second;

use super::savitsky_1964::example;

#[test]
fn a_tab_lifts_and_drags_as_savitsky_and_brown_have_it() {
    // Two tabs of 1 ft by 3 ft on a beam of 12 ft, 5 deg down, at 50 ft/s in water of 2 slugs/ft³: head 2,500 lbf/ft².
    let tabs = Tabs { span: feet(6.0), chord: feet(1.0), deflection: degrees(5.0) };
    let density = MassDensity::new::<slug_per_cubic_foot>(2.0);
    let speed = Velocity::new::<foot_per_second>(50.0);
    let beside = tabs.at(speed, density, feet(12.0), degrees(3.0), feet(20.0));
    // 0.046 · 1 · 5 · 6 · 2,500 = 3,450 lbf; 0.0052 · 3,450 · 8 = 143.5 lbf; centre 0.6 · 12 + 1 · (1 − 0.5) from the trailing edge.
    assert!((beside.lift.get::<pound_force>() - 3450.0).abs() < 0.1, "{:?}", beside.lift);
    assert!((beside.drag.get::<pound_force>() - 143.52).abs() < 0.01);
    let arm = beside.bow_down.si() / beside.lift.si();
    assert!((arm / feet(1.0).si() - (20.0 - (7.2 + 0.5 - 1.0))).abs() < 1e-9);
}

#[test]
fn the_hump_is_raised_as_blount_and_fox_have_it() {
    // LCG/B 1.2, F∇ 1.85: past 1; 0.98 + 2 · 1.2^1.45 · e^−2 − 3 · 1.2 · e^−3 = 0.98 + 0.35258 − 0.17923.
    let by_hand = 0.98 + 2.0 * 1.302_65 * 0.135_335 - 3.6 * 0.049_787;
    assert!((hump::factor(1.2, 1.85) - by_hand).abs() < 1e-4, "{}", hump::factor(1.2, 1.85));
    assert!((hump::factor(1.2, 12.0) - 0.98).abs() < 1e-6);
}

fn run(change: impl Fn(&mut Planing)) -> Option<f64> {
    let mut asked = example();
    change(&mut asked);
    asked.balance().ok().map(|running| running.trim.get::<degree>())
}

proptest! {
    /// Weight forward, tabs, a thrust line that lifts the stern: each takes trim off her.
    #[test]
    fn what_holds_the_bow_down_takes_trim_off(
        forward in 20.0..27.0f64, more in 0.05..3.0f64, lift in 100.0..3000.0f64, angle in -8.0..4.0f64,
    ) {
        let at = |change: &dyn Fn(&mut Planing)| run(|p| {
            p.centre_forward = feet(forward);
            p.thrust.angle = degrees(angle);
            change(p);
        });
        let plain = at(&|_| {});
        let shifted = at(&|p| p.centre_forward = feet(forward + more));
        let tabbed = at(&|p| {
            let down = lift * (forward - 8.0);
            p.beside = Beside {
                lift: uom::si::f64::Force::new::<pound_force>(lift),
                bow_down: sternknee::quantity::Moment::from_si(down * 0.3048 * 4.448_222),
                ..Beside::default()
            };
        });
        if let (Some(plain), Some(shifted)) = (plain, shifted) {
            prop_assert!(shifted < plain, "{plain} -> {shifted}");
        }
        if let (Some(plain), Some(tabbed)) = (plain, tabbed) {
            prop_assert!(tabbed < plain, "{plain} -> {tabbed}");
        }
    }

    /// No reading makes her jump.
    #[test]
    fn a_little_more_of_anything_changes_little(forward in 18.0..32.0f64, weight in 30_000.0..90_000.0f64, knots in 20.0..60.0f64) {
        let at = |forward: f64, weight: f64, knots: f64| run(|p| {
            p.centre_forward = feet(forward);
            p.weight = uom::si::f64::Force::new::<pound_force>(weight);
            p.speed = Velocity::new::<uom::si::velocity::knot>(knots);
        });
        let here = at(forward, weight, knots);
        for there in [at(forward * 1.001, weight, knots), at(forward, weight * 1.001, knots), at(forward, weight, knots * 1.001)] {
            if let (Some(here), Some(there)) = (here, there) {
                prop_assert!((there / here - 1.0).abs() < 0.01, "{here} -> {there}");
            }
        }
    }
}
