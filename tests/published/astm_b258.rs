//! ASTM B258, American wire gauge: sections in circular mils as printed there, and the resistances that follow from them.

use sternknee::physics::rigging::wire;
use sternknee::quantity::{Dimensioned, Units, celsius, feet};
use sternknee::working::Sheet;
use uom::si::f64::{ElectricCurrent, ElectricPotential};

/// Gauge and circular mils.
const PRINTED: &[(i8, f64)] =
    &[(-3, 211_600.0), (-1, 133_077.0), (0, 105_535.0), (2, 66_371.0), (4, 41_741.0), (6, 26_251.0)];

#[test]
fn gauges_have_the_printed_sections() {
    let mut worst = 0.0_f64;
    for (gauge, printed) in PRINTED {
        let found = wire::circular_mils(wire::area(&mut Sheet::default(), *gauge).value());
        worst = worst.max((found / printed - 1.0).abs());
    }
    println!("AWG sections against ASTM B258: largest relative error {worst:.1e}");
    // Half of the last digit of the least of them.
    assert!(worst < 2e-5, "{worst}");
}

#[test]
fn six_gauges_halve_the_diameter_nearly_and_the_names_are_the_trades() {
    let d2 = |gauge| wire::area(&mut Sheet::default(), gauge).value().si();
    assert!((d2(6) / d2(12) / 92_f64.powf(12.0 / 39.0) - 1.0).abs() < 1e-12);
    assert_eq!(wire::gauge_name(6), "6 AWG");
    assert_eq!(wire::gauge_name(0), "1/0 AWG");
    assert_eq!(wire::gauge_name(-3), "4/0 AWG");
}

/// Ω in 1,000 ft one way. NBS Handbook 100 (Copper Wire Tables), solid wire at 20 °C; NEC chapter 9 table 8, solid wire
/// at 75 °C. Values from memory.
#[test]
fn resistances_are_those_of_the_copper_wire_tables() {
    let mut worst = 0.0_f64;
    for (gauge, temperature, printed) in [
        (10, 20.0, 0.9989),
        (20, 20.0, 10.15),
        (0, 20.0, 0.09827),
        (18, 75.0, 7.77),
        (16, 75.0, 4.89),
        (14, 75.0, 3.07),
        (12, 75.0, 1.93),
        (10, 75.0, 1.21),
        (8, 75.0, 0.764),
    ] {
        let mut sheet = Sheet::default();
        let area = wire::area(&mut sheet, gauge);
        let rho = wire::resistivity(&mut sheet, celsius(temperature));
        let both_ways = wire::resistance(&mut sheet, &rho, feet(1000.0), &area).value().si();
        worst = worst.max((both_ways / 2.0 / printed - 1.0).abs());
    }
    println!("copper wire tables: largest relative error {worst:.1e}");
    assert!(worst < 4e-3, "{worst}");
}

/// A handbook's question: 20 A to a pump 15 ft away, 12 V, 3 %: `10.75 · 20 · 30 / 0.36 = 17,917 CM`, which 8 AWG
/// (16,510 CM) does not have and 6 AWG has. The form is that of ABYC E-11, from memory.
#[test]
fn the_permitted_drop_asks_for_six_gauge() {
    let least = wire::least_circular_mils(20.0, 30.0, 0.36);
    assert!((least - 17_916.7).abs() < 0.1);
    let mils = |gauge| wire::circular_mils(wire::area(&mut Sheet::default(), gauge).value());
    assert!(mils(8) < least && mils(6) > least);
    // Resistivity says the same near 30 °C, which 10.75 stands for.
    let mut sheet = Sheet::default();
    let rho = wire::resistivity(&mut sheet, celsius(29.3));
    let permitted = sternknee::working::Term::new("ΔV", ElectricPotential::from_si(0.36));
    let by_resistivity =
        wire::least_area(&mut sheet, &rho, feet(15.0), ElectricCurrent::from_si(20.0), &permitted).value();
    assert!((wire::circular_mils(by_resistivity) / least - 1.0).abs() < 1e-3);
    let area = wire::area(&mut sheet, 6);
    let resistance = wire::resistance(&mut sheet, &rho, feet(15.0), &area);
    let lost = wire::drop(&mut sheet, ElectricCurrent::from_si(20.0), &resistance).value().si();
    assert!((lost - 10.75 * 20.0 * 30.0 / 26_251.0).abs() < 1e-3, "{lost}");
    assert!(sheet.lines().iter().any(|line| line.show(Units::Us).starts_with("d = 0.005 in · 92^((36 − n) / 39)")));
}
