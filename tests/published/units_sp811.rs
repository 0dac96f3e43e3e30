//! NIST Special Publication 811 (2008), appendix B.8: factors as printed there, to the seven digits of the
//! table (a definition marked exact is held to 1e-12 relative).

use sternknee::quantity::{Kind, parse};

/// Text of one unit, its kind, its value in SI units as printed, whether the table calls it exact.
const PRINTED: &[(&str, Kind, f64, bool)] = &[
    ("1 in", Kind::Length, 2.54e-2, true),
    ("1 ft", Kind::Length, 3.048e-1, true),
    ("1 lb", Kind::Mass, 4.535_924e-1, false),
    ("1 oz", Kind::Mass, 2.834_952e-2, false),
    ("1 t", Kind::Mass, 1e3, true),
    ("1 lbf", Kind::Force, 4.448_222, false),
    ("1 hp", Kind::Power, 7.456_999e2, false),
    ("1 metric hp", Kind::Power, 7.354_988e2, false),
    ("1 deg", Kind::Angle, 1.745_329e-2, false),
    ("1 gal", Kind::Volume, 3.785_412e-3, false),
    ("1 L", Kind::Volume, 1e-3, true),
    ("1 ft³", Kind::Volume, 2.831_685e-2, false),
    ("1 ft²", Kind::Area, 9.290_304e-2, true),
    ("1 in²", Kind::Area, 6.4516e-4, true),
    ("1 mph", Kind::Speed, 4.4704e-1, true),
    ("1 kn", Kind::Speed, 5.144_444e-1, false),
    ("1 km/h", Kind::Speed, 2.777_778e-1, false),
    ("1 rpm", Kind::RotationRate, 1.047_198e-1, false),
    ("1 psi", Kind::Pressure, 6.894_757e3, false),
    ("1 ksi", Kind::Pressure, 6.894_757e6, false),
    ("1 lbf·ft", Kind::Moment, 1.355_818, false),
    ("1 lbf·in", Kind::Moment, 1.129_848e-1, false),
    ("1 lb/ft³", Kind::Density, 1.601_846e1, false),
    ("1 lb/in", Kind::MassPerLength, 1.785_797e1, false),
    ("1 gal/min", Kind::FlowRate, 6.309_020e-5, false),
    ("1 in³", Kind::Volume, 1.638_706e-5, false),
    ("1 inHg", Kind::Pressure, 3.386_389e3, false),
    ("1 bar", Kind::Pressure, 1e5, true),
    ("1 gn", Kind::Acceleration, 9.806_65, true),
    ("1 ft/s²", Kind::Acceleration, 3.048e-1, true),
];

#[test]
fn units_are_the_printed_ones() {
    for (text, kind, printed, exact) in PRINTED {
        let found = parse(text, *kind).unwrap().si;
        let tolerance = if *exact { 1e-12 } else { 5e-7 };
        let off = (found / printed - 1.0).abs();
        assert!(off < tolerance, "{text}: {found} is not {printed}");
    }
}
