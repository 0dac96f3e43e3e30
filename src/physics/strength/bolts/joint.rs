//! What the transom bears at a bolt: bearing, crushing under washers and plates, tearing out to an edge.

use uom::si::f64::{Area, Force, Length, Pressure, Ratio};

use crate::working::{Sheet, Term, number, pi};

/// Combined tension and shear: `(t)² + (v)²`, each over its capacity; 1 breaks. Source: the elliptical interaction of
/// bolts in tension and shear (AISC 360 J3.7 commentary, EN 1993-1-8 keeps a straight line; value from memory).
pub fn combined_ratio(
    sheet: &mut Sheet,
    tension: Force,
    shear: Force,
    tension_capacity: &Term<Force>,
    shear_capacity: &Term<Force>,
) -> Term<Ratio> {
    let t = sheet.set("t", "tension over capacity", Term::new("N", tension) / tension_capacity);
    let v = sheet.set("v", "shear over capacity", Term::new("V", shear) / shear_capacity);
    sheet.set("u", "combined use, 1 breaks", &t * &t + &v * &v)
}

/// Bearing of the bolt's shank on the transom: `σ = V / (d t)`.
pub fn bearing_stress(sheet: &mut Sheet, shear: Force, diameter: Length, thickness: Length) -> Term<Pressure> {
    let projected = Term::new("d", diameter) * Term::new("t", thickness);
    sheet.set("σb", "bearing of the bolt on the transom", Term::new("V", shear) / projected)
}

/// Area under a round washer with its hole: `A = π/4 (D² − d²)`.
pub fn washer_area(sheet: &mut Sheet, washer: Length, hole: Length) -> Term<Area> {
    let (outer, inner) = (Term::new("D", washer), Term::new("dh", hole));
    sheet.set("Aw", "area under the washer", pi() / number(4.0) * (&outer * &outer - &inner * &inner))
}

/// Pressure under a washer or a bolt's share of a backing plate: `p = N / A`.
pub fn bearing_under_washer(sheet: &mut Sheet, tension: Force, area: &Term<Area>) -> Term<Pressure> {
    sheet.set("pw", "pressure on the core under the washer", Term::new("N", tension) / area)
}

/// Tension that crushes the core under a washer or plate: `N = σc A`.
pub fn crushing_capacity(sheet: &mut Sheet, crushing: Pressure, area: &Term<Area>) -> Term<Force> {
    sheet.set("Nc", "pull that crushes the core", Term::new("σc", crushing) * area)
}

/// Upward shear that tears a bolt out to the transom's top: two planes from the hole to the edge, `F = 2 τ t (e − dh/2)`.
/// Common practice for wood and metal alike (double shear-out).
pub fn tear_out_capacity(
    sheet: &mut Sheet,
    shear_strength: Pressure,
    thickness: Length,
    edge: Length,
    hole: Length,
) -> Term<Force> {
    let clear =
        sheet.set("ec", "material between hole and edge", Term::new("e", edge) - Term::new("dh", hole) / number(2.0));
    sheet.set(
        "Fe",
        "force that tears out to the edge",
        number(2.0) * Term::new("τ", shear_strength) * Term::new("t", thickness) * clear,
    )
}

/// Pull that shears the washer's plug through the laminate: `F = π D t τ`, punching shear round the washer.
pub fn shear_out_capacity(
    sheet: &mut Sheet,
    shear_strength: Pressure,
    thickness: Length,
    washer: Length,
) -> Term<Force> {
    sheet.set(
        "Fs",
        "pull that punches the washer through",
        pi() * Term::new("D", washer) * Term::new("t", thickness) * Term::new("τ", shear_strength),
    )
}
