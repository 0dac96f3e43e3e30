//! A single bolt: stress area, preload and torque, proof, shear, and the thread that holds it.

use uom::si::f64::{Area, Force, Length, Pressure, Ratio};

use crate::quantity::Moment;
use crate::working::{Sheet, Term, number, pi};

/// A screw thread.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Thread {
    /// Outside diameter.
    pub diameter: Length,
    /// From one turn to the next, 1/n of a unified thread.
    pub pitch: Length,
}

/// Reduction of the diameter in pitches for a metric thread's stress area. Source: ISO 898-1, 9.1.6.1 (mean of pitch and
/// minor diameter, value from memory, agrees with the table).
const METRIC_REDUCTION: f64 = 0.9382;
/// The same for a unified thread. Source: ASME B1.1, appendix B (value from memory, agrees with the table).
const UNIFIED_REDUCTION: f64 = 0.9743;
/// Preload as a part of proof load for joints that are taken apart again. Source: Shigley, section 8-8 (value from memory).
pub const PRELOAD_OF_PROOF: f64 = 0.75;
/// Shear strength over tensile strength of a bolt. Common practice (steel: 0.58 of yield by von Mises; of strength, 0.6).
pub(super) const SHEAR_OF_TENSILE: f64 = 0.6;
/// Shear yield over tensile yield by von Mises: 1/√3.
pub(super) const SHEAR_OF_YIELD: f64 = 0.577;

/// Tensile stress area of a metric thread: `As = π/4 (d − 0.9382 p)²`.
pub fn stress_area_iso(sheet: &mut Sheet, thread: Thread) -> Term<Area> {
    stress_area(sheet, thread, METRIC_REDUCTION)
}

/// Tensile stress area of a unified thread: `As = π/4 (d − 0.9743 p)²`, `p` = 1/n.
pub fn stress_area_unified(sheet: &mut Sheet, thread: Thread) -> Term<Area> {
    stress_area(sheet, thread, UNIFIED_REDUCTION)
}

fn stress_area(sheet: &mut Sheet, thread: Thread, reduction: f64) -> Term<Area> {
    let d = Term::new("d", thread.diameter);
    let p = Term::new("p", thread.pitch);
    let ds = sheet.set("ds", "diameter of the stress area", d - number(reduction) * p);
    sheet.set("As", "tensile stress area of the thread", pi() / number(4.0) * &ds * &ds)
}

/// Proof load `Fp = Sp As`.
pub fn proof_load(sheet: &mut Sheet, proof: Pressure, area: &Term<Area>) -> Term<Force> {
    sheet.set("Fp", "proof load of one bolt", Term::new("Sp", proof) * area)
}

/// Preload `Fi = c Fp`, `part` of the proof load (Shigley: 0.75 for joints taken apart again, 0.90 for ones that stay).
pub fn preload(sheet: &mut Sheet, part: f64, proof_load: &Term<Force>) -> Term<Force> {
    sheet.set("Fi", "preload", Term::new("c", Ratio::from(part)) * proof_load)
}

/// Tightening torque `T = K d Fi`, with the nut factor K.
pub fn tightening_torque(sheet: &mut Sheet, factor: f64, diameter: Length, preload: &Term<Force>) -> Term<Moment> {
    let k = Term::new("K", Ratio::from(factor));
    sheet.set("T", "tightening torque", k * Term::new("d", diameter) * preload)
}

/// Preload that a torque gives: `Fi = T / (K d)`, with the nut factor K.
pub fn preload_by_torque(sheet: &mut Sheet, factor: f64, diameter: Length, torque: Moment) -> Term<Force> {
    let k = Term::new("K", Ratio::from(factor));
    sheet.set("Ff", "preload by the torque found", Term::new("T", torque) / (k * Term::new("d", diameter)))
}

/// How the thread and nut face are found.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Condition {
    /// Bare.
    Dry,
    /// With oil or grease on it.
    Lubricated,
    /// Stainless on stainless with anti-seize paste, as it must be lest it gall.
    StainlessWithPaste,
}

/// Nut factor K. Dry 0.30, lubricated 0.18: Shigley, table 8-15, black finish and lubricated (values from memory); stainless with
/// anti-seize 0.17: common practice, no source.
pub fn nut_factor(condition: Condition) -> f64 {
    match condition {
        Condition::Dry => 0.30,
        Condition::Lubricated => 0.18,
        Condition::StainlessWithPaste => 0.17,
    }
}

/// Shear capacity of a bolt whose thread lies in the shear plane: `Fv = 0.6 Rm As`.
pub fn shear_capacity(sheet: &mut Sheet, tensile: Pressure, area: &Term<Area>) -> Term<Force> {
    sheet.set("Fv", "shear capacity of one bolt", number(SHEAR_OF_TENSILE) * Term::new("Rm", tensile) * area)
}

/// Thread stripping: shear area of an engaged thread over `π d Le`. Source: the first approximation of handbooks, half of the
/// cylinder at the pitch diameter (Machinery's Handbook, value from memory).
const THREAD_SHEAR_PART: f64 = 0.5;
/// Basic pitch diameter: `d − 0.6495 p` (ISO 724; √3/4 · 3/2).
const PITCH_DIAMETER_REDUCTION: f64 = 0.6495;

/// Force at which a thread engaged over `length` strips in a material of yield `yield_stress`: `Ft = 0.577 Sy · 0.5 π d2 Le`.
pub fn thread_shear_capacity(sheet: &mut Sheet, thread: Thread, length: Length, yield_stress: Pressure) -> Term<Force> {
    let d2 = pitch_diameter(sheet, thread);
    let area = sheet.set(
        "Ath",
        "shear area of the engaged thread",
        number(THREAD_SHEAR_PART) * pi() * d2 * Term::new("Le", length),
    );
    sheet.set("Ft", "load that strips the thread", number(SHEAR_OF_YIELD) * Term::new("Sy", yield_stress) * area)
}

/// Length of engagement at which bolt and like thread break together: `Le = 2 As / (0.577 π d2)`.
pub fn engagement_for_full_strength(sheet: &mut Sheet, thread: Thread, area: &Term<Area>) -> Term<Length> {
    let d2 = pitch_diameter(sheet, thread);
    sheet.set(
        "Le",
        "engagement at which the thread is as strong as the bolt",
        area / (number(SHEAR_OF_YIELD) * number(THREAD_SHEAR_PART) * pi() * d2),
    )
}

fn pitch_diameter(sheet: &mut Sheet, thread: Thread) -> Term<Length> {
    let (d, p) = (Term::new("d", thread.diameter), Term::new("p", thread.pitch));
    sheet.set("d2", "pitch diameter", d - number(PITCH_DIAMETER_REDUCTION) * p)
}
