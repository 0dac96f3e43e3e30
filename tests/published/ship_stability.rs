//! D. R. Derrett (later C. B. Barrass), Ship Stability for Masters and Mates, chapter on the calculation
//! of initial stability (transverse statical stability), the worked examples of a box-shaped and of a
//! triangular vessel. Values from memory, derived again beside each.

use nalgebra::Point2;
use sternknee::physics::float::{Hull, Outcome, Tank, equilibrium, free_surface_rise, hydrostatics_at};
use uom::si::length::meter;

use super::shapes::*;

/// Printed to the centimetre.
const PRINTED: f64 = 0.006;

/// "A box-shaped vessel is 24 m × 5 m × 5 m and floats on an even keel at 2 m draft. KG = 1.5 m": GM
/// printed + 0.54 m (KB 1 + BM 25/24 − 1.5 = 0.5417).
#[test]
fn the_box_shaped_vessel_has_the_printed_metacentric_height() {
    let hull = box_hull(24.0, 5.0, 5.0);
    let mass = 1025.0 * 24.0 * 5.0 * 2.0;
    let outcome = equilibrium(&hull, &load(mass, [12.0, 0.0, 1.5], 1025.0)).unwrap();
    let Outcome::Stable(floating) = outcome else {
        panic!("{outcome:?}");
    };
    near(floating.gm_transverse.get::<meter>(), 0.54, PRINTED);
    close(floating.gm_transverse.get::<meter>(), 1.0 + 25.0 / 24.0 - 1.5, 1e-12);
}

/// "A vessel is in the form of a triangular prism 32 m long, 8 m wide at the top and 8 m deep. KG =
/// 3.7 m. Find the initial GM when floating on even keel at 4 m draft": printed − 0.37 m (KB 2.67 + BM
/// 0.67 − 3.7 = −0.367). She is unstable upright.
#[test]
fn the_triangular_vessel_has_the_printed_negative_metacentric_height() {
    let section = [(0.0, 0.0), (4.0, 8.0), (-4.0, 8.0)].map(|(y, z)| Point2::new(y, z));
    let hull = Hull::new(prism(&section, 32.0));
    let row = hydrostatics_at(&hull, density(1025.0), &plane(4.0, 0.0, 0.0)).unwrap();
    near(row.kb.get::<meter>(), 2.67, PRINTED);
    near(row.bm_transverse.get::<meter>(), 0.67, PRINTED);
    let load = load(1025.0 * 32.0 * 4.0 * 4.0 / 2.0, [16.0, 0.0, 3.7], 1025.0);
    let outcome = equilibrium(&hull, &load).unwrap();
    let Outcome::Unstable { balance, settled } = outcome else {
        panic!("{outcome:?}");
    };
    near(balance.gm_transverse.get::<meter>(), -0.37, PRINTED);
    close(balance.gm_transverse.get::<meter>(), 8.0 / 3.0 + 2.0 / 3.0 - 3.7, 1e-10);
    assert!(settled.gm_transverse.get::<meter>() > 0.0);
}

/// The same book's rule for slack tanks: virtual loss of GM = l b³ ρ₁ / (12 W), and a division into n
/// equal tanks across leaves 1/n² of it.
#[test]
fn free_surface_loses_metacentric_height_by_the_books_formula() {
    let tank = |breadth: f64| Tank { length: m(20.0), breadth: m(breadth), fluid: density(1000.0) };
    let whole = free_surface_rise(&[tank(8.0)], kg(2.0e6)).unwrap();
    let expected = 20.0 * 512.0 * 1000.0 / (12.0 * 2.0e6);
    close(whole.transverse.get::<meter>(), expected, 1e-12);
    let halves = free_surface_rise(&[tank(4.0), tank(4.0)], kg(2.0e6)).unwrap();
    close(halves.transverse.get::<meter>(), expected / 4.0, 1e-12);
}

/// The same for trim, length and breadth changed about: b l³ ρ₁ / (12 W). A tank of water 20 m by 8 m in a ship of 2,000 t loses
/// 8 · 8,000 / 24,000 = 2.667 m; beside it one of fuel, 5 m by 3 m of 850 kg/m³, another 3 · 125 · 850 / 24e6 = 0.01328 m.
#[test]
fn free_surface_costs_the_metacentric_height_for_trim_by_the_cube_of_the_length() {
    let tank =
        |length: f64, breadth: f64, fluid: f64| Tank { length: m(length), breadth: m(breadth), fluid: density(fluid) };
    let found = free_surface_rise(&[tank(20.0, 8.0, 1000.0), tank(5.0, 3.0, 850.0)], kg(2.0e6)).unwrap();
    near(found.longitudinal.get::<meter>(), 2.66667 + 0.01328, 1e-5);
    // For heel 20 · 512 / 24,000 = 0.42667 m and 5 · 27 · 850 / 24e6 = 0.00478 m.
    near(found.transverse.get::<meter>(), 0.42667 + 0.00478, 1e-5);
    let turned = free_surface_rise(&[tank(8.0, 20.0, 1000.0), tank(3.0, 5.0, 850.0)], kg(2.0e6)).unwrap();
    close(turned.transverse.get::<meter>(), found.longitudinal.get::<meter>(), 1e-12);
    close(turned.longitudinal.get::<meter>(), found.transverse.get::<meter>(), 1e-12);
    let heavier = free_surface_rise(&[tank(20.0, 8.0, 1000.0), tank(5.0, 3.0, 850.0)], kg(4.0e6)).unwrap();
    close(heavier.longitudinal.get::<meter>(), 0.5 * found.longitudinal.get::<meter>(), 1e-12);
}
