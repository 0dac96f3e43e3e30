//! EPA AP-42, table 7.1-2: true vapour pressure of gasolines by temperature (values from memory); and the fuel line as a whole
//! against its parts by hand.

use proptest::prelude::*;
use sternknee::physics::rigging::fuel::{self, Line};
use sternknee::quantity::{Dimensioned, celsius, feet, gallons_per_hour, horsepower, inches, inches_hg};
use sternknee::working::Sheet;
use uom::si::f64::Pressure;

const PSI: f64 = 6_894.757_293_168;

/// Reid vapour pressure, °F, true vapour pressure, psi.
const PRINTED: &[(f64, f64, f64)] = &[
    (13.0, 40.0, 4.7),
    (13.0, 60.0, 6.9),
    (13.0, 80.0, 9.9),
    (13.0, 100.0, 13.8),
    (10.0, 40.0, 3.4),
    (10.0, 60.0, 5.2),
    (10.0, 80.0, 7.4),
    (10.0, 100.0, 10.5),
    (7.0, 60.0, 3.5),
    (7.0, 80.0, 5.2),
    (7.0, 100.0, 7.4),
];

#[test]
fn gasolines_have_the_printed_vapour_pressures() {
    let mut worst = 0.0_f64;
    for (reid, fahrenheit, printed) in PRINTED {
        let temperature = celsius((fahrenheit - 32.0) / 1.8);
        let found = fuel::vapour_pressure(&mut Sheet::default(), Pressure::from_si(reid * PSI), temperature);
        worst = worst.max((found.value().si() / PSI / printed - 1.0).abs());
    }
    println!("vapour pressure of gasoline: largest relative error {worst:.1e}");
    assert!(worst < 0.06, "{worst}");
}

fn line() -> Line {
    Line {
        bore: inches(0.375),
        length: feet(15.0),
        elbows: 2,
        barbs: 8,
        valves: 1,
        lift: inches(18.0),
        devices: inches_hg(0.8),
        temperature: celsius(20.0),
    }
}

/// 15 gal/h through 15 ft of 3/8 in with 278 diameters of fittings: 0.2215 m/s... by hand, Blasius for the factor.
#[test]
fn a_line_draws_what_its_parts_do() {
    let flow = gallons_per_hour(15.0);
    let found = fuel::suction(&mut Sheet::default(), &line(), flow).value().si();
    let (d, rho, nu) = (0.375 * 0.0254, 740.0, 0.743e-6);
    let v = flow.si() / (std::f64::consts::FRAC_PI_4 * d * d);
    let re = v * d / nu;
    assert!(re > 2300.0 && re < 4000.0, "{re}");
    // Between laminar and turbulent: Blasius at 4,000 is 0.0398, Colebrook's near it.
    let f = 64.0 / 2300.0 + (re - 2300.0) / 1700.0 * (0.0400 - 64.0 / 2300.0);
    let long = 15.0 * 0.3048 + (2.0 * 30.0 + 8.0 * 25.0 + 18.0) * d;
    let by_hand = f * long / d * rho * v * v / 2.0 + rho * 9.80665 * 18.0 * 0.0254 + inches_hg(0.8).si();
    assert!((found / by_hand - 1.0).abs() < 2e-3, "{found} against {by_hand}");
}

/// 0.743 mm²/s at 20 °C; at 40 °C 0.743 · (293.15 / 313.15)^3.1 = 0.6056 mm²/s, and 740 · (1 − 0.95e-3 · 20) = 725.9 kg/m³.
#[test]
fn warm_gasoline_is_thinner_and_lighter() {
    let warm = celsius(40.0);
    let viscosity = fuel::viscosity(&mut Sheet::default(), warm).value().si();
    assert!((viscosity / 0.6056e-6 - 1.0).abs() < 1e-3, "{viscosity}");
    let density = fuel::density(&mut Sheet::default(), warm).value().si();
    assert!((density - 725.94).abs() < 0.01, "{density}");
}

#[test]
fn a_hundred_and_fifty_horsepower_burn_fifteen_gallons_an_hour() {
    let rate = fuel::rate_by_power(&mut Sheet::default(), horsepower(150.0)).value();
    assert!((rate.si() / gallons_per_hour(15.0).si() - 1.0).abs() < 1e-12);
}

proptest! {
    #[test]
    fn a_wider_hose_less_flow_and_less_lift_never_draw_harder(bore in 0.2f64..0.7, flow in 0.5f64..60.0, lift in -20.0f64..60.0, more in 1.0001f64..1.5) {
        let draws = |bore: f64, flow: f64, lift: f64| {
            let line = Line { bore: inches(bore), lift: inches(lift), ..line() };
            fuel::suction(&mut Sheet::default(), &line, gallons_per_hour(flow)).value().si()
        };
        let here = draws(bore, flow, lift);
        prop_assert!(draws(bore * more, flow, lift) <= here);
        prop_assert!(draws(bore, flow * more, lift) >= here);
        prop_assert!(draws(bore, flow, lift + more) >= here);
    }

    #[test]
    fn warmer_fuel_is_nearer_to_boiling(warm in -20.0f64..60.0, more in 0.1f64..10.0) {
        let left = |t: f64| fuel::over_boiling(&mut Sheet::default(), Pressure::from_si(9.0 * PSI), celsius(t), inches_hg(2.0)).value().si();
        prop_assert!(left(warm + more) < left(warm));
    }
}
