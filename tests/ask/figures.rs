//! Figures as they are told and read, by hand. Factors of units: NIST Special Publication 811 (2008), appendix B.8. How many digits are
//! told: what a tape, a scale or a gauge of the trade shows, common practice, no source.

use sternknee::quantity::{Compared, Kind, Measure, Style, Tolerance, Units, parse};

/// Kind, style, value in SI units, what is told in US customary units, what is told in metric ones.
const TOLD: &[(Kind, Style, f64, &str, &str)] = &[
    // 12-7/8 in are 12.875 × 25.4 = 327.025 mm: a tape has sixteenths, or millimetres; elsewhere two decimals, or one.
    (Kind::Length, Style::Tape, 0.327_025, "12-7/8 in", "327 mm"),
    (Kind::Length, Style::Plain, 0.327_3, "12.89 in", "327.3 mm"),
    // 7-13/16 in: a fraction that cannot be made smaller; 8 in: none; half an inch below: a minus, and no whole inch.
    (Kind::Length, Style::Tape, 0.198_437_5, "7-13/16 in", "198 mm"),
    (Kind::Length, Style::Tape, 0.203_2, "8 in", "203 mm"),
    (Kind::Length, Style::Tape, -0.012_7, "-1/2 in", "-13 mm"),
    // 9 ft 8-1/2 in are 116.5 in; 11.99 in are a foot to the sixteenth; nine inches have no foot in front.
    (Kind::Length, Style::FeetInches, 2.959_1, "9 ft 8-1/2 in", "2.96 m"),
    (Kind::Length, Style::FeetInches, 0.304_546, "1 ft", "0.30 m"),
    (Kind::Length, Style::FeetInches, 0.228_6, "9 in", "0.23 m"),
    (Kind::Length, Style::FeetInches, -7.391_4, "-24 ft 3 in", "-7.39 m"),
    (Kind::Length, Style::FeetInches, 365.76, "1,200 ft", "365.76 m"),
    (Kind::Length, Style::Feet, 7.62, "25.00 ft", "7.62 m"),
    // A nautical mile is 1,852 m: 10 mi are 8.69 of them.
    (Kind::Length, Style::Distance, 16_093.44, "10.0 mi", "8.7 nmi"),
    // Two digits: 12.875 in and 327 mm.
    (Kind::Length, Style::Round, 0.327_025, "13 in", "330 mm"),
    // A scale of the yard has pounds, or kilograms; a kitchen scale below ten of them tenths.
    (Kind::Mass, Style::Plain, 1133.98, "2,500 lb", "1,134 kg"),
    (Kind::Mass, Style::Plain, 3.9009, "8.6 lb", "3.9 kg"),
    (Kind::Force, Style::Plain, 4448.22, "1,000 lbf", "4.45 kN"),
    // 9.9 hp is a class and keeps its tenth; 150 hp has none.
    (Kind::Power, Style::Plain, 7382.43, "9.9 hp", "7.4 kW"),
    (Kind::Power, Style::Plain, 111_855.0, "150 hp", "111.9 kW"),
    // 14 deg.
    (Kind::Angle, Style::Plain, 0.244_346_1, "14.0 deg", "14.0 deg"),
    // A liquid in gallons, a hull in cubic feet, a pump in cubic inches.
    (Kind::Volume, Style::Plain, 0.075_708_24, "20.0 gal", "75.7 L"),
    (Kind::Volume, Style::Bulk, 0.283_168_5, "10.0 ft³", "283.2 L"),
    (Kind::Volume, Style::Displacement, 2.785_801e-5, "1.7 in³", "27.9 cm³"),
    // Up to a tenth of a square metre in the small units.
    (Kind::Area, Style::Plain, 0.064_516, "100.00 in²", "64,516.00 mm²"),
    (Kind::Area, Style::Plain, 9.290_304, "100.00 ft²", "9.29 m²"),
    (Kind::Speed, Style::Plain, 20.1168, "45.0 mph", "39.1 kn"),
    (Kind::RotationRate, Style::Plain, 575.9587, "5,500 rpm", "5,500 rpm"),
    (Kind::Pressure, Style::Plain, 6.894_757e6, "1,000 psi", "6.89 MPa"),
    (Kind::Pressure, Style::Suction, 8465.97, "2.5 inHg", "8.5 kPa"),
    (Kind::Moment, Style::Plain, 135.581_8, "100 lbf·ft", "136 N·m"),
    (Kind::Current, Style::Plain, 60.2, "60 A", "60 A"),
    (Kind::Current, Style::Plain, 8.3, "8.3 A", "8.3 A"),
    // A drop below a volt wants a digit more.
    (Kind::Voltage, Style::Plain, 12.64, "12.6 V", "12.6 V"),
    (Kind::Voltage, Style::Plain, 0.364, "0.36 V", "0.36 V"),
    // Sea water.
    (Kind::Density, Style::Plain, 1025.0, "64.0 lb/ft³", "1,025 kg/m³"),
    // 89.29 kg/m are 5 lb/in and 0.89 kg/cm.
    (Kind::MassPerLength, Style::Plain, 89.289_84, "5.0 lb/in", "0.9 kg/cm"),
    (Kind::FlowRate, Style::Plain, 1.051_503e-5, "10.0 gal/h", "37.9 L/h"),
    (Kind::Acceleration, Style::Plain, 29.419_95, "3.00 gn", "3.00 gn"),
    (Kind::Charge, Style::Plain, 360_000.0, "100 Ah", "100 Ah"),
    (Kind::Charge, Style::Plain, 18_000.0, "5.0 Ah", "5.0 Ah"),
    (Kind::Resistance, Style::Plain, 0.0014, "1.40 mΩ", "1.40 mΩ"),
    (Kind::Resistivity, Style::Plain, 17.24e-9, "17.24 nΩ·m", "17.24 nΩ·m"),
    (Kind::Viscosity, Style::Plain, 0.604e-6, "0.604 mm²/s", "0.604 mm²/s"),
    // 310.93 K are 100 °F, (100 − 32) / 1.8 = 37.8 °C; ten kelvin between two are 18 °F.
    (Kind::Temperature, Style::Plain, 310.928, "100 °F", "38 °C"),
    (Kind::Temperature, Style::Difference, 10.0, "18 °F", "10 °C"),
    // Seconds up to two minutes, then hours.
    (Kind::Duration, Style::Plain, 119.0, "119.0 s", "119.0 s"),
    (Kind::Duration, Style::Plain, 5400.0, "1.5 h", "1.5 h"),
    // A mile of 1,609.344 m out of a gallon of 3.785412 L; 0.8690 nmi / 3.785 L = 0.23.
    (Kind::DistancePerVolume, Style::Plain, 425_143.7, "1.00 mi/gal", "0.23 nmi/L"),
    // A plain number has three decimals, from ten on two, and none where it is whole.
    (Kind::Ratio, Style::Plain, 0.8534, "0.853", "0.853"),
    (Kind::Ratio, Style::Plain, 12.346, "12.35", "12.35"),
    (Kind::Ratio, Style::Plain, 3.0, "3", "3"),
    (Kind::Ratio, Style::Share, 0.4149, "41 %", "41 %"),
    (Kind::Ratio, Style::Round, 868.2, "870", "870"),
    // A strength over a load is worth a twentieth of itself: 0.052, told as the next tenth.
    (Kind::Ratio, Style::Factor, 1.047, "1.0 ± 0.1", "1.0 ± 0.1"),
    (Kind::Ratio, Style::Factor, 150.0, "over 100", "over 100"),
    (Kind::Ratio, Style::Factor, f64::INFINITY, "no figure", "no figure"),
    (Kind::Length, Style::Tape, f64::NAN, "no figure", "no figure"),
];

#[test]
fn a_figure_is_told_as_its_instrument_shows_it() {
    for (kind, style, si, us, metric) in TOLD.iter().copied() {
        let measure = Measure { si, kind, style };
        let both = if us == metric { us.to_owned() } else { format!("{us} ({metric})") };
        assert_eq!(measure.show(Units::Us), us, "{measure:?}");
        assert_eq!(measure.show(Units::Si), metric, "{measure:?}");
        assert_eq!(measure.show(Units::Both), both, "{measure:?}");
    }
}

/// What rounding may have taken is half of the last mark: of a sixteenth, 25.4 / 32 = 0.79375 mm.
#[test]
fn rounding_takes_half_of_the_last_mark_of_every_scale() {
    for (kind, style, si, us, metric) in [
        (Kind::Length, Style::Tape, 0.327_025, 0.793_75e-3, 0.5e-3),
        (Kind::Length, Style::FeetInches, 2.9591, 0.793_75e-3, 5e-3),
        (Kind::Length, Style::Plain, 0.3273, 0.127e-3, 0.05e-3),
        // 13 in; 330 mm.
        (Kind::Length, Style::Round, 0.327_025, 12.7e-3, 5e-3),
        (Kind::Mass, Style::Plain, 1133.98, 0.226_796_185, 0.5),
        (Kind::Mass, Style::Plain, 3.9009, 0.022_679_618_5, 0.05),
        // A whole degree of Fahrenheit is 1/1.8 K; in two digits 37.8 °C are told as 38, 100.0 °F as 100.
        (Kind::Temperature, Style::Plain, 310.928, 0.5 / 1.8, 0.5),
        (Kind::Temperature, Style::Round, 310.94, 5.0 / 1.8, 0.5),
        // 41 %; 8.5 %; 0.85; 870; 100, whose two digits are tens; 99.
        (Kind::Ratio, Style::Share, 0.4149, 0.005, 0.005),
        (Kind::Ratio, Style::Share, 0.0853, 0.0005, 0.0005),
        (Kind::Ratio, Style::Round, 0.853, 0.005, 0.005),
        (Kind::Ratio, Style::Round, 868.2, 5.0, 5.0),
        (Kind::Ratio, Style::Round, 100.0, 5.0, 5.0),
        (Kind::Ratio, Style::Round, 99.0, 0.5, 0.5),
        (Kind::Ratio, Style::Factor, 1.047, 0.05, 0.05),
        (Kind::Ratio, Style::Factor, 12.4, 0.5, 0.5),
        (Kind::Ratio, Style::Plain, 0.8534, 0.0005, 0.0005),
        (Kind::Ratio, Style::Plain, 12.346, 0.005, 0.005),
    ] {
        let measure = Measure { si, kind, style };
        for (units, half) in [(Units::Us, us), (Units::Si, metric)] {
            let found = measure.shown_precision(units);
            assert!((found / half - 1.0).abs() < 1e-9, "{measure:?} {units:?}: {found} is not {half}");
        }
    }
}

/// The constants of a formula have all their digits: a foot is 0.3048 m exactly, and a ratio has no unit.
#[test]
fn a_constant_is_told_with_all_its_digits() {
    for (kind, style, si, units, told) in [
        (Kind::Length, Style::Feet, 0.3048, Units::Both, "1 ft (0.3048 m)"),
        (Kind::Length, Style::Plain, 3.175e-7, Units::Us, "0.0000125 in"),
        (Kind::Mass, Style::Plain, 0.453_592_37, Units::Si, "0.45359237 kg"),
        (Kind::Angle, Style::Plain, 0.349_065_850_398_865_9, Units::Both, "20 deg"),
        (Kind::Ratio, Style::Plain, 0.0725, Units::Us, "0.0725"),
        (Kind::Ratio, Style::Plain, 1.5, Units::Both, "1.5"),
        (Kind::Temperature, Style::Difference, 5.0, Units::Both, "9 °F (5 °C)"),
        (Kind::Mass, Style::Plain, f64::INFINITY, Units::Both, "no figure"),
    ] {
        let measure = Measure { si, kind, style };
        assert_eq!(measure.show_exact(units), told, "{measure:?}");
    }
}

/// A digit more than usual: a sixteenth is a tenth of an inch or a little less, so that a tape's reading has one decimal and then
/// more. What is read back from it is the printed number, in SI units.
#[test]
fn a_figure_of_a_formula_has_so_many_digits_more() {
    for (kind, style, si, more, told, read) in [
        // 12.813 in.
        (Kind::Length, Style::Tape, 0.325_450_2, 1, "12.81 in", 12.81 * 0.0254),
        (Kind::Length, Style::Tape, 0.325_450_2, 2, "12.813 in", 12.813 * 0.0254),
        (Kind::Length, Style::Plain, 0.325_450_2, 1, "12.813 in", 12.813 * 0.0254),
        // Noughts behind it are no digits.
        (Kind::Mass, Style::Plain, 1133.98, 2, "2,500 lb", 2500.0 * 0.453_592_37),
        // From absolute zero where a formula takes it; a difference as it is.
        (Kind::Temperature, Style::Plain, 310.928, 0, "310.93 K", 310.93),
        (Kind::Temperature, Style::Difference, 10.0, 0, "18 °F", 10.0),
        (Kind::Ratio, Style::Share, 0.414_94, 0, "41 %", 0.41),
        (Kind::Ratio, Style::Share, 0.414_94, 2, "41.49 %", 0.4149),
        (Kind::Ratio, Style::Round, 868.2, 0, "870", 870.0),
        (Kind::Ratio, Style::Round, 868.2, 1, "868.2", 868.2),
        // What a factor is worth goes into no formula.
        (Kind::Ratio, Style::Factor, 1.047, 0, "1.0", 1.0),
        (Kind::Ratio, Style::Factor, 1.047, 2, "1.047", 1.047),
        (Kind::Ratio, Style::Plain, 0.853_46, 1, "0.8535", 0.8535),
    ] {
        let measure = Measure { si, kind, style };
        let found = (measure.show_closer(more, Units::Us), measure.closer(more, false));
        assert_eq!(found.0, told, "{measure:?} {more}");
        assert!((found.1 / read - 1.0).abs() < 1e-9, "{measure:?} {more}: {} is not {read}", found.1);
    }
}

#[track_caller]
fn beside(
    found: (Kind, Style, f64),
    limits: [Option<(Style, f64)>; 2],
    units: Units,
    told: (&str, Option<&str>, Option<&str>, &str),
) {
    let (kind, style, si) = found;
    let [least, most] = limits.map(|limit| limit.map(|(style, si)| Measure { si, kind, style }));
    let compared = Compared::of(Measure { si, kind, style }, least, most, units);
    let found = (compared.found.as_str(), compared.least.as_deref(), compared.most.as_deref(), compared.room.as_str());
    assert_eq!(found, told);
}

/// Who subtracts what is printed finds the printed room.
#[test]
fn a_figure_stands_beside_its_limits_in_one_unit_and_to_one_step() {
    let inch = 0.0254;
    let plain = |value: f64| Some((Style::Plain, value));
    // A limit that a tape has is what the figure beside it is read by.
    let limits = [None, Some((Style::Tape, 13.0 * inch))];
    let found = (Kind::Length, Style::Plain, 12.88 * inch);
    beside(found, limits, Units::Us, ("12-7/8 in", None, Some("13 in"), "1/8 in"));
    // The same in both units is told once.
    let degree = std::f64::consts::PI / 180.0;
    let (found, limits) = ((Kind::Angle, Style::Plain, 14.0 * degree), [None, plain(15.0 * degree)]);
    beside(found, limits, Units::Both, ("14.0 deg", None, Some("15.0 deg"), "1.0 deg"));
    // Of two limits the nearer is told of: 12 of 10 to 20, and 19.
    let limits = [plain(10.0), plain(20.0)];
    beside((Kind::Current, Style::Plain, 12.0), limits, Units::Us, ("12 A", Some("10 A"), Some("20 A"), "2 A"));
    beside((Kind::Current, Style::Plain, 19.0), limits, Units::Us, ("19 A", Some("10 A"), Some("20 A"), "1 A"));
    // Under the least it is under nought.
    beside((Kind::Current, Style::Plain, 7.0), limits, Units::Us, ("7.0 A", Some("10.0 A"), Some("20.0 A"), "-3.0 A"));
    // Feet and inches, as long as they show on which side it lies: 9 ft 8-1/2 in are 116.5 in.
    let limits = [None, Some((Style::FeetInches, 116.5 * inch))];
    let found = |inches: f64| (Kind::Length, Style::FeetInches, inches * inch);
    beside(found(114.0), limits, Units::Us, ("9 ft 6 in", None, Some("9 ft 8-1/2 in"), "2-1/2 in"));
    beside(found(116.504), limits, Units::Us, ("116.504 in", None, Some("116.500 in"), "-0.004 in"));
    beside(found(114.0), limits, Units::Si, ("2.90 m", None, Some("2.96 m"), "0.06 m"));
    // A share, two digits, and a factor with what it is worth.
    let share = |value: f64| Some((Style::Share, value));
    beside((Kind::Ratio, Style::Share, 0.82), [None, share(0.75)], Units::Us, ("82 %", None, Some("75 %"), "-7 %"));
    beside(
        (Kind::Mass, Style::Round, 868.2),
        [None, Some((Style::Round, 900.0))],
        Units::Si,
        ("870 kg", None, Some("900 kg"), "30 kg"),
    );
    beside(
        (Kind::Ratio, Style::Factor, 1.047),
        [plain(2.0), None],
        Units::Both,
        ("1.0 ± 0.1", Some("2"), None, "-1.0 ± 0.1"),
    );
    beside(
        (Kind::Ratio, Style::Factor, 150.0),
        [plain(2.0), None],
        Units::Us,
        ("over 100", Some("2"), None, "over 98"),
    );
    // What is no number has no room.
    beside(
        (Kind::Mass, Style::Plain, f64::INFINITY),
        [None, plain(453.592_37)],
        Units::Us,
        ("no figure", None, Some("1,000 lb"), "no figure"),
    );
}

/// What is as much as any reading may say may be its tolerance too, and not a digit more.
#[test]
fn a_tolerance_may_be_as_large_as_a_reading_and_no_larger() {
    let most = "10,000,000,000,000 m";
    let read = |text: &str| parse(text, Kind::Length).map(|read| (read.si, read.tolerance));
    assert_eq!(read(most), Ok((1e13, None)));
    assert_eq!(read(&format!("1 m ± {most}")), Ok((1.0, Some(Tolerance::Absolute(1e13)))));
    let more = "10,000,000,000,001 m";
    assert!(read(more).is_err() && read(&format!("1 m ± {more}")).is_err());
}

/// A tolerance without a unit is in the value's own; a percentage is of the value; of two units each counts.
#[test]
fn a_tolerance_is_read_in_the_units_that_stand_behind_it() {
    for (text, kind, half) in [
        ("25 in ± 1/8", Kind::Length, 0.125 * 0.0254),
        ("25 in +/- 3 mm", Kind::Length, 0.003),
        ("30 ft ± 1 ft 6 in", Kind::Length, 18.0 * 0.0254),
        ("200 lb ± 2.5 %", Kind::Mass, 5.0 * 0.453_592_37),
        ("-40 °F ± 3", Kind::Temperature, 3.0 / 1.8),
        ("12 % ± 3 %", Kind::Ratio, 0.03),
    ] {
        let read = parse(text, kind).unwrap_or_else(|error| panic!("{error}"));
        let found = read.tolerance.expect("a tolerance").half_width(read.si);
        assert!((found / half - 1.0).abs() < 1e-9, "{text}: {found} is not {half}");
    }
}
