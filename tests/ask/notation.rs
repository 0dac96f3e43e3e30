//! How readings are written: what is understood of a text, and what is told where it is none.

use sternknee::quantity::{Kind, parse};

#[track_caller]
fn inches(text: &str, expected: f64) {
    let parsed = parse(text, Kind::Length).unwrap_or_else(|error| panic!("{error}"));
    assert!((parsed.si / 0.0254 - expected).abs() < 1e-9, "{text}: {} in", parsed.si / 0.0254);
}

#[test]
fn what_no_boat_holds_is_too_large_as_a_reading_and_as_a_tolerance() {
    let huge = "9".repeat(24);
    for text in [format!("{huge} in"), format!("-{huge} in"), format!("25 in ± {huge} in")] {
        let problem = parse(&text, Kind::Length).unwrap_err().problem.to_string();
        assert_eq!(problem, "the number is too large for any boat", "{text}");
    }
}

#[test]
fn a_tape_is_read_in_every_notation() {
    for text in [
        "12-7/8 in",
        "12 7/8\"",
        "12.875in",
        "12⅞ in",
        "12-7/8″",
        "12 7⁄8 inches",
        "12 - 7/8 in",
        "1' 7/8\"",
        "1 ft 7/8 in",
        "12-7/8-in",
    ] {
        inches(text, 12.875);
    }
    inches("9 ft 8 in", 116.0);
    inches("9'8-1/2\"", 116.5);
    inches("9'-8 1/2\"", 116.5);
    inches("9′ 8½″", 116.5);
    inches("7'6''", 90.0);
    inches("654 mm", 654.0 / 25.4);
    inches("-3 in", -3.0);
    inches("1,250 mm", 1250.0 / 25.4);
    inches(".5 in", 0.5);
    inches("102 in.", 102.0);
    inches("8 ft. 6 in.", 102.0);
    inches("8 ft. 6-1/2 in. ± 1/4 in.", 102.5);
}

#[test]
fn knots_and_kilonewtons_are_told_apart_by_the_kind_expected() {
    assert!((parse("30 kn", Kind::Speed).unwrap().si - 30.0 * 1852.0 / 3600.0).abs() < 1e-12);
    assert_eq!(parse("30 kN", Kind::Force).unwrap().si, 30e3);
}

#[test]
fn a_tolerance_may_stand_behind_any_of_them() {
    let close = |text: &str, kind, expected: f64| {
        let parsed = parse(text, kind).unwrap();
        let width = parsed.tolerance.unwrap().half_width(parsed.si);
        assert!((width - expected).abs() < 1e-12, "{text}: {width}");
    };
    close("25 in ± 1/8 in", Kind::Length, 0.125 * 0.0254);
    close("25 in ± 1/8", Kind::Length, 0.125 * 0.0254);
    close("654 mm +/- 3 mm", Kind::Length, 0.003);
    close("500 kg ±2%", Kind::Mass, 10.0);
    close("9'8\" ±1/4\"", Kind::Length, 0.25 * 0.0254);
    close("8 ft ± 2 ft 6 in", Kind::Length, 30.0 * 0.0254);
    close("8 ft 2-1/2 in +/- 1' 1/2\"", Kind::Length, 12.5 * 0.0254);
}

#[test]
fn a_figure_tells_its_unit_and_the_step_of_its_last_digit() {
    for (text, kind, unit, step) in [
        ("110 kW", Kind::Power, "kW", 1e3),
        ("84.6 kW", Kind::Power, "kW", 100.0),
        ("110 PS", Kind::Power, "metric hp", 75.0 * 9.806_65),
        ("12-7/8 in", Kind::Length, "in", 0.0254 / 8.0),
        ("9 ft 8 in", Kind::Length, "in", 0.0254),
        ("1,250 kg", Kind::Mass, "kg", 1.0),
    ] {
        let written = parse(text, kind).unwrap().written;
        assert_eq!(written.unit, unit, "{text}");
        assert!((written.step - step).abs() < 1e-9 * step, "{text}: {}", written.step);
    }
}

#[test]
fn a_refusal_names_the_text_the_kind_and_an_example() {
    for (text, problem) in [
        ("8.5", "no unit follows the number"),
        ("", "nothing is written"),
        ("1,25 in", "a comma that does not group thousands stands (write decimals with a point)"),
        ("1/0 in", "a fraction over zero stands"),
        ("8 in 2 ft", "a smaller unit must follow a larger one"),
        ("6’000 mm", "units that are no whole part of each other stand"),
        ("1 m 3 in", "units that are no whole part of each other stand"),
        ("NaN in", "no number stands"),
        ("8 lb", "`lb` is the unit of a weight (mass)"),
        ("8 cubits", "`cubits` is not a unit known here"),
        ("30 in or so", "`or so` is left over"),
        ("30 in ± 1/8 in or so", "`or so` is left over"),
        ("8 ft ± 6 in 2 ft", "a smaller unit must follow a larger one"),
        ("8 ft ± -6 in", "a negative tolerance stands"),
    ] {
        assert_eq!(parse(text, Kind::Length).unwrap_err().problem.to_string(), problem, "{text}");
    }
    let message = parse("8.5", Kind::Length).unwrap_err().to_string();
    assert_eq!(
        message,
        "a length expected, such as 12-7/8 in, 9 ft 8 in or 654 mm; \
         no unit follows the number in `8.5`"
    );
}
