//! Copper wire: its section by gauge, its resistance, the voltage lost in it.

use uom::si::f64::{
    Area, ElectricCurrent, ElectricPotential, ElectricalResistance, ElectricalResistivity, Length, Ratio,
};

use crate::quantity::{Dimensioned, Style, Temperature, in_celsius, inches};
use crate::working::{Sheet, Term, number, pi, power};

/// Diameter of 36 gauge, in. Source: ASTM B258, which fixes 36 at 0.005 in and 4/0 at 0.46 in.
const DIAMETER_OF_36_IN: f64 = 0.005;
/// The number of that gauge. Source: ASTM B258.
const THIN_GAUGE: f64 = 36.0;
/// 0.46 over 0.005, which 39 equal steps lead over. Source: ASTM B258.
const GAUGE_RATIO: f64 = 92.0;
const GAUGE_STEPS: f64 = 39.0;
/// Resistivity of annealed copper at 20 °C, Ω·m. Source: IEC 60028, value from memory.
pub const COPPER_OHM_M: f64 = 1.724e-8;
/// Degrees below zero at which copper's resistance would vanish on a straight line, and that line's value at 20 °C.
/// Source: IEC 60028: 0.393 % a kelvin at 20 °C; value from memory.
const VANISHES_C: f64 = 234.5;
const REFERENCE_C: f64 = 20.0;
/// Ohms of a circular mil over a foot, as the permitted-drop formula has them. Source: ABYC E-11, value from memory.
pub const CIRCULAR_MIL_FACTOR: f64 = 10.75;
/// Circular mils in a square inch: a mil's square over the disc's share of it.
const CIRCULAR_MILS_IN2: f64 = 1e6 * 4.0 / std::f64::consts::PI;
/// Square metres in a square inch, exact.
const M2_IN2: f64 = 0.0254 * 0.0254;

/// Part of the supply's voltage that the wire to something needed for safety may lose. Source: ABYC E-11, value from
/// memory.
pub const ESSENTIAL_DROP: f64 = 0.03;
/// The same of anything else. Source: ABYC E-11, value from memory.
pub const OTHER_DROP: f64 = 0.10;

/// Cross-section of a gauge of the American wire gauge: `d = 0.005 in · 92^((36 − n) / 39)`; 1/0 is number 0, 4/0 is −3.
/// Source: ASTM B258.
pub fn area(sheet: &mut Sheet, gauge: i8) -> Term<Area> {
    let n = Term::new("n", Ratio::from_si(f64::from(gauge)));
    let steps = (number(THIN_GAUGE) - n) / number(GAUGE_STEPS);
    let d = sheet.set_styled(
        "d",
        "diameter of the gauge",
        Term::constant(inches(DIAMETER_OF_36_IN)) * power(number(GAUGE_RATIO), steps),
        Style::Round,
    );
    sheet.set_styled("A", "its section", pi() / number(4.0) * &d * d, Style::Round)
}

/// The section in circular mils.
pub fn circular_mils(area: Area) -> f64 {
    area.si() / M2_IN2 * CIRCULAR_MILS_IN2
}

/// The name of a gauge: `6 AWG`, `2/0 AWG`.
pub fn gauge_name(gauge: i8) -> String {
    if gauge > 0 { format!("{gauge} AWG") } else { format!("{}/0 AWG", 1 - gauge) }
}

/// Resistivity of copper at this temperature: `ρ = ρ20 · (234.5 + t) / (234.5 + 20)`.
pub fn resistivity(sheet: &mut Sheet, temperature: Temperature) -> Term<ElectricalResistivity> {
    let t = Term::new("t °C", Ratio::from_si(in_celsius(temperature)));
    let warm = (number(VANISHES_C) + t) / (number(VANISHES_C) + number(REFERENCE_C));
    let rho20 = Term::new("ρ20", ElectricalResistivity::from_si(COPPER_OHM_M));
    sheet.set("ρ", "resistivity of copper at this temperature", rho20 * warm)
}

/// Resistance of a wire there and back.
pub fn resistance(
    sheet: &mut Sheet,
    resistivity: &Term<ElectricalResistivity>,
    one_way: Length,
    area: &Term<Area>,
) -> Term<ElectricalResistance> {
    let run = number(2.0) * Term::new("L", one_way);
    sheet.set("R", "resistance there and back", resistivity * &run / area)
}

/// Voltage lost in a resistance.
pub fn drop(
    sheet: &mut Sheet,
    current: ElectricCurrent,
    resistance: &Term<ElectricalResistance>,
) -> Term<ElectricPotential> {
    sheet.set("ΔV", "voltage lost in it", Term::new("I", current) * resistance)
}

/// Least section, in circular mils, that loses no more than this: `CM = 10.75 · I · L / ΔV`, L in feet there and back.
/// Source: ABYC E-11's form, from memory.
pub fn least_circular_mils(current_a: f64, round_trip_ft: f64, drop_v: f64) -> f64 {
    CIRCULAR_MIL_FACTOR * current_a * round_trip_ft / drop_v
}

/// Least section by resistivity: the wire that loses just the permitted part.
pub fn least_area(
    sheet: &mut Sheet,
    resistivity: &Term<ElectricalResistivity>,
    one_way: Length,
    current: ElectricCurrent,
    permitted: &Term<ElectricPotential>,
) -> Term<Area> {
    let run = number(2.0) * Term::new("L", one_way);
    let lost = Term::new("I", current) * resistivity;
    sheet.set_styled("Am", "least section that loses no more", lost * run / permitted, Style::Round)
}
