//! Threads and grades: ISO 898-1 and ASME B1.1 (tensile stress area), SAE J429 and ISO 3506-1 (strengths,
//! values from memory).

use sternknee::catalog::{BoltSize, Entry};
use sternknee::physics::fit::{self, BoltDimensions};
use sternknee::quantity::{Dimensioned, inches};
use sternknee::working::Sheet;

use crate::common::{CATALOG, near};

const MM2: f64 = 1e-6;
const IN2: f64 = 0.0254 * 0.0254;

fn size(name: &str) -> &'static Entry<BoltSize> {
    let found = CATALOG.tables.bolt_sizes.iter().find(|e| e.name == name);
    found.unwrap_or_else(|| panic!("no bolt {name}"))
}

/// The printed values, metric by ISO 898-1 table of coarse threads, inch by ASME B1.1 (UNC).
#[test]
fn stress_areas_are_the_printed_ones() {
    for (name, printed, unit) in [
        ("M10", 58.0, MM2),
        ("M12", 84.3, MM2),
        ("M14", 115.0, MM2),
        ("M16", 157.0, MM2),
        ("3/8-16", 0.0775, IN2),
        ("1/2-13", 0.1419, IN2),
        ("5/8-11", 0.226, IN2),
    ] {
        let area = size(name).spec.stress_area.value.si() / unit;
        near(area, printed, 1e-9 * printed);
    }
}

/// ISO 898-1: π/4 (d − 0.9382 p)²; ASME B1.1: 0.7854 (d − 0.9743/n)². Every size of the catalog, to the
/// three significant digits that the standards print: half of the last at worst 0.5 %.
#[test]
fn every_stress_area_agrees_with_its_formula() {
    assert!(CATALOG.tables.bolt_sizes.len() >= 7);
    for entry in &CATALOG.tables.bolt_sizes {
        let spec = &entry.spec;
        let (d, p) = (spec.diameter.value.si(), spec.pitch.value.si());
        let root = if entry.name.starts_with('M') { d - 0.9382 * p } else { d - 0.9743 * p };
        let area = std::f64::consts::FRAC_PI_4 * root * root;
        let off = (spec.stress_area.value.si() / area - 1.0).abs();
        assert!(off < 0.005, "{}: {off}", entry.name);
    }
}

/// Value from memory: ISO 3506-1 A2/A4-50, -70, -80: 500/210, 700/450, 800/600 MPa; SAE J429 proof:
/// grade 5 85 ksi, grade 8 120 ksi.
#[test]
fn grades_have_the_strengths_of_their_standards() {
    let grades = &CATALOG.tables.bolt_grades;
    let mut seen = 0;
    for (mark, tensile, yielded) in [("-50", 500e6, 210e6), ("-70", 700e6, 450e6), ("-80", 800e6, 600e6)] {
        for entry in grades.iter().filter(|e| e.spec.stainless && e.name.ends_with(mark)) {
            near(entry.spec.tensile.value.si(), tensile, 1.0);
            near(entry.spec.yield_strength.value.si(), yielded, 1.0);
            seen += 1;
        }
    }
    assert!(seen >= 3, "{seen} stainless classes");
    let ksi = 6.894_757_293_168e6;
    for (name, proof) in [("grade 5", 85.0), ("grade 8", 120.0)] {
        let entry = grades.iter().find(|e| e.name.to_lowercase().contains(name)).unwrap();
        near(entry.spec.proof.as_ref().unwrap().value.si() / ksi, proof, 1e-6);
    }
}

/// Bolt length by ASME B18.2.2 and B18.21.1 dimensions: 2-1/4 in of transom, 5/8 in of flange, two washers
/// of 0.095 in, a nut of 7/16 in and two threads of 1/13 in: 3.6563 in, so 4 in bolts; half an inch of
/// transom less gives 3.1563 in, so 3-1/2 in. Decimals exact: 1e-9.
#[test]
fn a_bolts_length_is_grip_nut_and_two_threads() {
    let spec = &size("1/2-13").spec;
    let bolt = BoltDimensions {
        nut_height: spec.nut_height.value,
        washer_thickness: spec.washer_thickness.value,
        pitch: spec.pitch.value,
    };
    for (thickness, least, stock) in [(2.25, 3.656_346_153_846, 4.0), (1.75, 3.156_346_153_846, 3.5)] {
        let mut sheet = Sheet::default();
        let length = fit::bolt_length(&mut sheet, inches(thickness), bolt);
        near(length.value().si() / 0.0254, stock, 1e-9);
        let sternknee::working::Line::Step { result, .. } = &sheet.lines()[0] else {
            panic!("the first line is the least length");
        };
        near(result.si / 0.0254, least, 1e-9);
    }
}
