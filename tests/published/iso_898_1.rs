//! ISO 898-1 table of stress areas (mm²) and ASME B1.1's (in²): printed values from memory, and what follows from them.

use sternknee::physics::strength::bolts::{
    Thread, combined_ratio, crushing_capacity, engagement_for_full_strength, proof_load, shear_capacity,
    stress_area_iso, stress_area_unified, tear_out_capacity, thread_shear_capacity, washer_area,
};
use sternknee::quantity::Dimensioned;
use sternknee::working::Sheet;
use uom::si::f64::{Force, Length, Pressure};
use uom::si::{
    area::{square_inch, square_millimeter},
    force::newton,
    length::{inch, millimeter},
    pressure::megapascal,
};

fn mm(v: f64) -> Length {
    Length::new::<millimeter>(v)
}

#[test]
fn metric_threads_have_the_printed_stress_areas() {
    for (d, p, printed) in
        [(8.0, 1.25, 36.6), (10.0, 1.5, 58.0), (12.0, 1.75, 84.3), (14.0, 2.0, 115.0), (16.0, 2.0, 157.0)]
    {
        let area = stress_area_iso(&mut Sheet::default(), Thread { diameter: mm(d), pitch: mm(p) });
        let found = area.value().get::<square_millimeter>();
        // Printed to three figures.
        assert!((found / printed - 1.0).abs() < 5e-3, "M{d}: {found}");
    }
}

#[test]
fn unified_threads_have_the_printed_stress_areas() {
    for (d, n, printed) in [(0.375, 16.0, 0.0775), (0.5, 13.0, 0.1419), (0.625, 11.0, 0.226)] {
        let thread = Thread { diameter: Length::new::<inch>(d), pitch: Length::new::<inch>(1.0 / n) };
        let found = stress_area_unified(&mut Sheet::default(), thread).value().get::<square_inch>();
        assert!((found / printed - 1.0).abs() < 2e-3, "{d}-{n}: {found}");
    }
}

#[test]
fn an_m12_a4_70_bolt_has_its_loads() {
    let sheet = &mut Sheet::default();
    let thread = Thread { diameter: mm(12.0), pitch: mm(1.75) };
    let area = stress_area_iso(sheet, thread);
    // ISO 3506-1: Rp0.2 450, Rm 700 MPa (from memory): 84.3 · 450 = 37.9 kN, 0.6 · 84.3 · 700 = 35.4 kN.
    let proof = proof_load(sheet, Pressure::new::<megapascal>(450.0), &area);
    assert!((proof.value().si() / 37.9e3 - 1.0).abs() < 2e-3);
    let shear = shear_capacity(sheet, Pressure::new::<megapascal>(700.0), &area);
    assert!((shear.value().si() / 35.4e3 - 1.0).abs() < 2e-3);
    // Half of each is 0.25 + 0.25.
    let half = |f: Force| Force::new::<newton>(0.5 * f.si());
    let used = combined_ratio(sheet, half(proof.value()), half(shear.value()), &proof, &shear);
    assert!((used.value().si() - 0.5).abs() < 1e-12);
    // A thread engaged by that length strips as the bolt yields.
    let length = engagement_for_full_strength(sheet, thread, &area);
    let strips = thread_shear_capacity(sheet, thread, length.value(), Pressure::new::<megapascal>(450.0));
    assert!((strips.value().si() / proof.value().si() - 1.0).abs() < 1e-12);
    // Rule of handbooks: about 0.8 diameters for like materials.
    assert!((0.6..1.0).contains(&(length.value().si() / thread.diameter.si())), "{:?}", length.value());
}

#[test]
fn washers_and_edges_follow_their_closed_forms() {
    let sheet = &mut Sheet::default();
    let area = washer_area(sheet, mm(50.0), mm(13.0));
    assert!((area.value().get::<square_millimeter>() - 1830.8).abs() < 0.1);
    // 5.5 MPa across the grain of Douglas-fir (Wood Handbook, from memory).
    let crush = crushing_capacity(sheet, Pressure::new::<megapascal>(5.5), &area);
    assert!((crush.value().si() / 10_069.0 - 1.0).abs() < 1e-3);
    let torn = tear_out_capacity(sheet, Pressure::new::<megapascal>(5.0), mm(38.0), mm(45.0), mm(13.0));
    assert!((torn.value().si() - 2.0 * 5.0 * 38.0 * (45.0 - 6.5)).abs() < 1e-6);
}
