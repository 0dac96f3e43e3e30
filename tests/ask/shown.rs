//! How numbers are told: as a tape or a scale is read, with the digits that they are worth.

use proptest::prelude::*;
use sternknee::quantity::{Kind, Measure, Style, Units, parse, units_of};
use sternknee::reading::{deg, hp, inch, mm, percent, plain};

const STYLES: [Style; 8] = [
    Style::Plain,
    Style::Tape,
    Style::FeetInches,
    Style::Feet,
    Style::Bulk,
    Style::Displacement,
    Style::Suction,
    Style::Distance,
];

fn length(si: f64, style: Style) -> Measure {
    Measure { si, kind: Kind::Length, style }
}

#[test]
fn every_unit_that_is_shown_stands_in_the_table() {
    for kind in Kind::ALL {
        for metric in [false, true] {
            for style in STYLES {
                for si in [1e-3, 1.0] {
                    let (_, name) = Measure { si, kind, style }.in_unit(Units::from_metric(metric));
                    let stands = units_of(kind).any(|unit| unit.name == name);
                    assert!(stands || kind == Kind::Ratio && name.is_empty(), "{kind:?} {style:?}: {name}");
                }
            }
        }
    }
}

#[test]
fn a_tape_shows_reduced_sixteenths() {
    let inches = |x: f64, style| length(x * 0.0254, style).show(Units::Us);
    assert_eq!(inches(12.875, Style::Tape), "12-7/8 in");
    assert_eq!(inches(0.5, Style::Tape), "1/2 in");
    assert_eq!(inches(-3.5, Style::Tape), "-3-1/2 in");
    assert_eq!(inches(25.0, Style::Tape), "25 in");
    assert_eq!(inches(-0.01, Style::Tape), "0 in");
    assert_eq!(inches(116.5, Style::FeetInches), "9 ft 8-1/2 in");
    assert_eq!(inches(288.0, Style::FeetInches), "24 ft");
    assert_eq!(length(0.327_025, Style::Tape).show(Units::Both), "12-7/8 in (327 mm)");
}

#[test]
fn an_answer_has_three_digits_at_least() {
    let shown = |inches: f64, units| length(inches * 0.0254, Style::Digits).show(units);
    assert_eq!(shown(0.071_234, Units::Us), "0.0712 in");
    assert_eq!(shown(0.02, Units::Si), "0.508 mm");
    assert_eq!(shown(152.375, Units::Us), "152.38 in");
    assert_eq!(shown(0.0, Units::Us), "0.00 in");
    assert_eq!(shown(1e-12, Units::Us), "0.00 in");
    let force = Measure { si: 31.2, kind: Kind::Force, style: Style::Digits };
    assert_eq!(force.show(Units::Si), "0.0312 kN");
    let ratio = Measure { si: 0.002_346, kind: Kind::Ratio, style: Style::Digits };
    assert_eq!(ratio.show(Units::Us), "0.00235");
}

#[test]
fn rounding_takes_half_of_the_last_mark() {
    let inch = 0.0254;
    for style in [Style::Tape, Style::FeetInches] {
        assert!((length(1.2345, style).shown_precision(Units::Us) / (inch / 32.0) - 1.0).abs() < 1e-12, "{style:?}");
    }
    assert!((length(1.2345, Style::Tape).shown_precision(Units::Si) - 0.0005).abs() < 1e-15);
    assert_eq!([Units::from_metric(true), Units::from_metric(false)], [Units::Si, Units::Us]);
}

proptest! {
    #[test]
    fn what_is_shown_parses_back_within_the_shown_precision(
        si in -2e3f64..2e3, scale in -3i32..6, kind in 0usize..Kind::ALL.len(), style in 0usize..STYLES.len(), metric: bool,
    ) {
        let kind = Kind::ALL[kind];
        let style = STYLES[style];
        let measure = Measure { si: si * 10f64.powi(scale), kind, style };
        let units = if metric { Units::Si } else { Units::Us };
        let text = measure.show(units);
        let back = parse(&text, kind).map_err(|e| TestCaseError::fail(e.to_string()))?;
        let within = measure.shown_precision(units) * 1.000_001 + measure.si.abs() * 1e-12;
        prop_assert!((back.si - measure.si).abs() <= within, "{} -> {} -> {}", measure.si, text, back.si);
    }

    #[test]
    fn no_text_panics(text in ".{0,60}", kind in 0usize..Kind::ALL.len()) {
        let _ = parse(&text, Kind::ALL[kind]);
    }

    #[test]
    fn no_text_of_the_trades_own_signs_panics(text in "[0-9 ./,'\"±+%a-z⅞′-]{0,30}", kind in 0usize..Kind::ALL.len()) {
        let _ = parse(&text, Kind::ALL[kind]);
    }
}

/// A ratio as it is told.
fn ratio(si: f64, style: Style) -> String {
    Measure { si, kind: Kind::Ratio, style }.show(Units::Us)
}

#[test]
fn a_factor_is_told_in_two_digits_with_what_they_are_worth() {
    for (value, shown) in [
        (1.047, "1.0 ± 0.1"),
        (0.252, "0.25 ± 0.02"),
        (2.269, "2.3 ± 0.2"),
        (9.97, "10.0 ± 0.5"),
        (12.4, "12 ± 1"),
        (0.0, "0.0 ± 0.1"),
        (1e9, "over 100"),
    ] {
        assert_eq!(ratio(value, Style::Factor), shown);
    }
}

#[test]
fn two_digits_are_two_digits() {
    for (value, shown) in [
        (10.603, "11"),
        (8.835, "8.8"),
        (9.0, "9"),
        (868.2, "870"),
        (0.4149, "0.41"),
        (0.03, "0.030"),
        (-1.603, "-1.6"),
        (5823.0, "5,800"),
        (9.97, "10.0"),
        (0.0, "0"),
    ] {
        assert_eq!(ratio(value, Style::Round), shown);
    }
}

#[test]
fn a_small_constant_keeps_its_digits() {
    for (value, shown) in [
        (1.25e-5, "0.0000125"),
        (4.768_371e-7, "0.0000004768371"),
        (0.453_592_37, "0.45359237"),
        (-0.000_3, "-0.0003"),
        (1609.344, "1,609.344"),
        (0.3048, "0.3048"),
        (200.0, "200"),
        (0.1 + 0.2, "0.3"),
        (0.0, "0"),
    ] {
        // Of amperes, which are told in the unit that they are kept in.
        let current = Measure { si: value, kind: Kind::Current, style: Style::Plain };
        assert_eq!(current.show_exact(Units::Us), format!("{shown} A"));
    }
}

#[test]
fn an_amount_is_written_as_on_a_tape() {
    for (amount, written) in [
        (inch(0.25), "1/4 in"),
        (inch(-0.75), "-3/4 in"),
        (inch(1.0 / 32.0), "1/32 in"),
        (inch(80.0), "80 in"),
        (deg(0.5), "1/2 deg"),
        (deg(-10.0), "-10 deg"),
        (hp(4000.0), "4,000 hp"),
        (mm(0.1), "0.1 mm"),
        (plain(0.499), "0.499"),
        (percent(100.0), "100 %"),
    ] {
        assert_eq!(amount.to_string(), written);
    }
}
