//! Figures as a tape, a scale and a yard tell them. By hand: an inch is 25.4 mm, a tape has sixteenths.

use proptest::prelude::*;
use sternknee::quantity::{Compared, Dimensioned, Kind, Measure, Style, Units, horsepower, inches, parse, pounds};
use uom::si::f64::Ratio;

fn compared(found: Measure, most: Measure, units: Units) -> [String; 3] {
    let Compared { found, most, room, .. } = Compared::of(found, None, Some(most), units);
    [found, most.expect("a limit"), room]
}

#[test]
fn a_reading_and_a_limit_are_told_as_the_tape_has_them_in_both_units() {
    let [found, most] = [12.875, 13.0].map(|value| Measure::tape(inches(value)));
    assert_eq!(compared(found, most, Units::Us), ["12-7/8 in", "13 in", "1/8 in"]);
    assert_eq!(compared(found, most, Units::Si), ["327 mm", "330 mm", "3 mm"]);
    let both = ["12-7/8 in (327 mm)", "13 in (330 mm)", "1/8 in (3 mm)"];
    assert_eq!(compared(found, most, Units::Both), both);
}

/// 300 hp of 300 hp is within its limit, and no nought need be added to show it.
#[test]
fn what_is_at_its_limit_is_told_with_the_usual_digits() {
    let full = Measure::of(horsepower(300.0));
    assert_eq!(compared(full, full, Units::Us), ["300 hp", "300 hp", "0 hp"]);
    let [found, most] = [8.6, 8.5].map(|value| Measure::of(pounds(value)));
    assert_eq!(compared(found, most, Units::Us), ["8.6 lb", "8.5 lb", "-0.1 lb"]);
}

/// Who subtracts the printed figures finds the printed room: 2,500 lb of 2,500 lb would not be over.
#[test]
fn what_is_a_little_over_its_limit_is_told_with_as_many_digits_as_show_it() {
    let [found, most] = [2500.3, 2500.0].map(|value| Measure::of(pounds(value)));
    assert_eq!(compared(found, most, Units::Us), ["2,500.3 lb", "2,500.0 lb", "-0.3 lb"]);
}

#[test]
fn a_whole_limit_of_a_ratio_has_no_noughts_behind_it() {
    let [found, most] = [0.853, 1.0].map(|value| Measure::of(Ratio::from_si(value)));
    assert_eq!(compared(found, most, Units::Us), ["0.853", "1", "0.147"]);
}

#[test]
fn a_reading_is_told_with_what_it_is_worth() {
    let [value, worth] = [12.875, 0.125].map(|value| Measure::tape(inches(value)));
    assert_eq!(value.show_with(worth, Units::Us), "12-7/8 in ± 1/8 in");
    assert_eq!(value.show_with(worth, Units::Si), "327 mm ± 3 mm");
    // A factor is worth a twentieth of itself beside: √(0.052² + 0.2²) = 0.21, told as the next tenth.
    let [value, worth] = [1.047, 0.2].map(|value| Measure::styled(Ratio::from_si(value), Style::Factor));
    assert_eq!(value.show_with(worth, Units::Us), "1.0 ± 0.3");
}

#[test]
fn the_fractions_of_print_are_those_of_the_keyboard() {
    for (glyph, over, under) in [
        ('½', 1.0, 2.0),
        ('⅓', 1.0, 3.0),
        ('⅔', 2.0, 3.0),
        ('¼', 1.0, 4.0),
        ('¾', 3.0, 4.0),
        ('⅕', 1.0, 5.0),
        ('⅖', 2.0, 5.0),
        ('⅗', 3.0, 5.0),
        ('⅘', 4.0, 5.0),
        ('⅙', 1.0, 6.0),
        ('⅚', 5.0, 6.0),
        ('⅛', 1.0, 8.0),
        ('⅜', 3.0, 8.0),
        ('⅝', 5.0, 8.0),
        ('⅞', 7.0, 8.0),
        ('⅒', 1.0, 10.0),
    ] {
        for (text, whole) in [(format!("{glyph} in"), 0.0), (format!("12{glyph} in"), 12.0)] {
            let found = parse(&text, Kind::Length).unwrap_or_else(|error| panic!("{error}")).si / 0.0254;
            assert!((found - whole - over / under).abs() < 1e-12, "{text}: {found}");
        }
    }
}

const STYLES: [Style; 6] = [Style::Plain, Style::Tape, Style::FeetInches, Style::Feet, Style::Round, Style::Distance];

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(2000) })]

    /// A formula is worked out again from what is printed of its quantities.
    #[test]
    fn a_figure_of_a_formula_is_read_again_as_it_is_taken(
        number in 1.0..10.0f64, scale in -3i32..4, kind in 0..Kind::ALL.len(), style in 0..STYLES.len(), more in 0i32..4, metric: bool,
    ) {
        let kind = Kind::ALL[kind];
        // These are told as a plain number, and from absolute zero.
        prop_assume!(kind != Kind::Ratio && kind != Kind::Temperature);
        let measure = Measure { si: number * 10f64.powi(scale), kind, style: STYLES[style] };
        let text = measure.show_closer(more, Units::from_metric(metric));
        let read = parse(&text, kind).map_err(|error| TestCaseError::fail(error.to_string()))?.si;
        let taken = measure.closer(more, metric);
        prop_assert!((read - taken).abs() <= 1e-9 * taken.abs(), "{} -> {} -> {} not {}", measure.si, text, read, taken);
    }
}
