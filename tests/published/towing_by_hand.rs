//! Moments of a boat on her trailer, a day of a battery, tubes and the instruments' network, by hand.

use proptest::prelude::*;
use sternknee::physics::rigging::battery::{self, Day};
use sternknee::physics::rigging::network::{self, Load};
use sternknee::physics::rigging::trailer::{self, Stand, Weight};
use sternknee::physics::rigging::tube;
use sternknee::quantity::{Dimensioned, celsius, feet, inches, pounds};
use sternknee::working::Sheet;
use uom::si::f64::{ElectricCurrent, Length, Ratio, Time};

fn weight(name: &str, mass_lb: f64, forward_ft: f64) -> Weight {
    Weight { name: name.to_owned(), mass: pounds(mass_lb), forward: feet(forward_ft), from: "measured" }
}

fn load() -> (Vec<Weight>, Stand) {
    (
        vec![weight("boat", 3000.0, 8.0), weight("engine", 500.0, -1.0), weight("trailer", 1000.0, 7.0)],
        Stand { axle: feet(6.0), coupling: feet(16.0) },
    )
}

#[test]
fn moments_about_the_axle_give_the_coupling() {
    // 3,000 · 2 − 500 · 7 + 1,000 · 1 = 3,500 lb·ft over 16 ft: 218.75 lb of 4,500 lb, 4.86 %.
    let (weights, stand) = load();
    let mut sheet = Sheet::default();
    let all_up = trailer::all_up(&mut sheet, &weights);
    let coupling = trailer::coupling(&mut sheet, &weights, &stand);
    assert!((coupling.value().si() / pounds(218.75).si() - 1.0).abs() < 1e-12);
    let share = trailer::share(&mut sheet, &coupling, &all_up).value().si();
    assert!((share - 218.75 / 4500.0).abs() < 1e-12);
}

proptest! {
    #[test]
    fn the_boat_or_the_axle_moved_as_told_gives_the_share(wanted in 0.02f64..0.2, axle in 3.0f64..9.0, engine in 100.0f64..1200.0) {
        let (mut weights, mut stand) = load();
        stand.axle = feet(axle);
        weights[1].mass = pounds(engine);
        let share = |weights: &[Weight], stand: &Stand| {
            let mut sheet = Sheet::default();
            let all_up = trailer::all_up(&mut sheet, weights);
            let coupling = trailer::coupling(&mut sheet, weights, stand);
            trailer::share(&mut sheet, &coupling, &all_up).value().si()
        };
        let mut sheet = Sheet::default();
        let all_up = trailer::all_up(&mut sheet, &weights);
        let coupling = trailer::coupling(&mut sheet, &weights, &stand);
        let aft = trailer::move_axle(coupling.value(), Ratio::from_si(wanted), all_up.value(), &stand);
        let moved = Stand { axle: stand.axle - aft, coupling: stand.coupling + aft };
        prop_assert!((share(&weights, &moved) - wanted).abs() < 1e-9);
        // All that stands on the trailer with the boat goes with her.
        let boat = weights[0].mass + weights[1].mass;
        let forward = trailer::move_boat(&mut sheet, &coupling, Ratio::from_si(wanted), &all_up, boat, &stand).value();
        for carried in &mut weights[..2] {
            carried.forward += forward;
        }
        prop_assert!((share(&weights, &stand) - wanted).abs() < 1e-9);
    }

    #[test]
    fn weight_put_on_aft_of_the_axle_never_presses_the_coupling_more(more in 1.0f64..500.0, place in -3.0f64..5.9) {
        let (mut weights, stand) = load();
        let coupling = |weights: &[Weight]| trailer::coupling(&mut Sheet::default(), weights, &stand).value().si();
        let before = coupling(&weights);
        weights.push(weight("more", more, place));
        prop_assert!(coupling(&weights) < before);
    }
}

#[test]
fn a_day_puts_back_what_the_alternators_give() {
    // 0.85 · (0.8 · 50 A · 2 h + 0.3 · 50 A · 1 h) = 80.75 Ah.
    let day = Day {
        alternators: ElectricCurrent::from_si(50.0),
        cruising: Time::from_si(7200.0),
        idling: Time::from_si(3600.0),
    };
    let back = battery::put_back(&mut Sheet::default(), &day).value().si() / 3600.0;
    assert!((back - 80.75).abs() < 1e-9);
}

#[test]
fn a_battery_cranks_a_quarter_harder_at_freezing_than_at_its_rating() {
    let cranks =
        |t: f64| battery::cranking(&mut Sheet::default(), ElectricCurrent::from_si(600.0), celsius(t)).value().si();
    assert!((cranks(-18.0) - 600.0).abs() < 1e-9);
    assert!((cranks(0.0) - 750.0).abs() < 1e-9);
    assert_eq!(cranks(27.0), cranks(45.0));
    assert!(cranks(-90.0) > 0.0);
}

#[test]
fn a_tube_is_filled_by_squares_of_diameters() {
    // Six cables of 1/2 in in a tube of 2 in: 6 · 0.25 / 4 = 37.5 %.
    let six: Vec<(String, Length)> = (0..6).map(|i| (format!("cable {i}"), inches(0.5))).collect();
    let fill = tube::fill(&mut Sheet::default(), inches(2.0), &six).value().si();
    assert!((fill - 0.375).abs() < 1e-12);
    assert_eq!(tube::smallest(&mut Sheet::default(), &six), Some(inches(2.0)));
    assert_eq!(tube::permitted(6), 0.40);
    assert_eq!(tube::permitted(1), 0.53);
    let thick = [("hose".to_owned(), inches(9.0))];
    assert_eq!(tube::smallest(&mut Sheet::default(), &thick), None);
}

#[test]
fn a_backbone_loses_in_each_stretch_what_flows_beyond_it() {
    // Power at 0, 0.25 A at 4 m, 0.5 A at 10 m, 0.05 Ω/m a wire: at the far one 2 · 0.05 · (4 · 0.75 + 6 · 0.5) = 0.6 V.
    let loads = [Load { at: 4.0, current: 0.25, drop: 0.0 }, Load { at: 10.0, current: 0.5, drop: 0.0 }];
    let lost = network::losses(0.0, &loads, 0.05, 0.05);
    assert!((lost[1] - 0.6).abs() < 1e-12 && (lost[0] - 0.3).abs() < 1e-12, "{lost:?}");
    // Fed in the middle, neither side's current flows on the other.
    let lost = network::losses(7.0, &loads, 0.05, 0.05);
    assert!((lost[1] - 2.0 * 0.05 * 3.0 * 0.5).abs() < 1e-12, "{lost:?}");
}
