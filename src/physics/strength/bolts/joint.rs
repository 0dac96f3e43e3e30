//! What the transom bears at a bolt: bearing, pressure under washers and plates, punching, tearing out to an edge.

use uom::si::f64::{Area, Force, Length, Pressure, Ratio};

use crate::quantity::inches;
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

/// What the bearing-area factor adds to a short bearing along the grain, in. Source: NDS 3.10.4, value from memory.
const BEARING_BEYOND_IN: f64 = 0.375;

/// Pull at which wood under a washer or plate reaches its proportional limit across the grain: `Ni = Cb σc A`, with the
/// bearing-area factor `Cb = (D + 3/8 in) / D`: the fibres beside a short bearing help. Source: NDS 3.10.4, value from
/// memory; it drops the factor from 6 in, where it is 1.06, and here it runs on, so that more spread never bears less.
pub fn indentation_capacity(
    sheet: &mut Sheet,
    limit: Pressure,
    area: &Term<Area>,
    across: &Term<Length>,
) -> Term<Force> {
    let beyond = Term::constant(inches(BEARING_BEYOND_IN));
    let factor = sheet.set("Cb", "bearing-area factor", (across.clone() + beyond) / across.clone());
    sheet.set("Ni", "pull at which the washer begins to sink in", factor * Term::new("σc", limit) * area)
}

/// Perimeter on which a round pad is punched through, half the transom's thickness outside it: `u = π (D + h)`. Source: ACI
/// 318, 22.6.4 (half the depth of a slab), value from memory; for wood common practice, no source.
pub fn perimeter_of_round(sheet: &mut Sheet, pad: &Term<Length>, thickness: &Term<Length>) -> Term<Length> {
    sheet.set("u", "perimeter on which it is punched through", pi() * (pad + thickness))
}

/// The same of an oblong pad: `u = 2 (we + he) + π h`.
pub fn perimeter_of_oblong(sheet: &mut Sheet, width: Length, height: Length, thickness: &Term<Length>) -> Term<Length> {
    let sides = number(2.0) * (Term::new("we", width) + Term::new("he", height));
    sheet.set("u", "perimeter on which it is punched through", sides + pi() * thickness.clone())
}

/// Force that punches a pad through: `Fs = u (τ1 t1 + τ2 t2 + …)`. Every layer must be cut, each by its own strength
/// through the thickness. `layers` are thickness and strength; none of them bears nothing.
pub fn punching_capacity(sheet: &mut Sheet, perimeter: &Term<Length>, layers: &[(Length, Pressure)]) -> Term<Force> {
    let terms = layers.iter().enumerate().map(|(i, (thickness, strength))| {
        Term::new(format!("τ{}", i + 1), *strength) * Term::new(format!("t{}", i + 1), *thickness)
    });
    let held =
        terms.reduce(|sum, one| sum + one).map_or(Term::constant(Force::default()), |sum| perimeter.clone() * sum);
    sheet.set("Fs", "force that punches it through", held)
}
