//! A propeller that pulls a boat which does not move.

use uom::si::f64::{Force, MassDensity, Ratio, Velocity};
use uom::si::mass_density::kilogram_per_cubic_meter;

use super::series::Propeller;
use super::suit::Drive;
use crate::quantity::{Dimensioned, Measure, say};
use crate::working::{Sheet, Term, cbrt, min, number, pi, sqrt};

/// Sea water at 15 °C, kg/m³. Source: ITTC fresh and seawater properties, value from memory.
pub const SEA_WATER: f64 = 1025.0;
/// Part of the engine's power that comes through its gears. Common practice, no source.
pub const THROUGH_GEARS: f64 = 0.97;

/// Pull at rest of a propeller behind an engine whose rated torque is all it has below rated speed: it holds the engine to
/// the speed at which `K_Q ρ n² D⁵` is that torque, and pulls `K_T ρ n² D⁴`. One so fine that the engine would turn
/// faster than rated gets rated power. `turning` is that of [`super::rated_turning`]. Source: the series; that the torque
/// is held is common practice, no source.
pub fn thrust_at_rest(
    sheet: &mut Sheet,
    drive: &Drive,
    turning: &Term<Velocity>,
    propeller: &Propeller,
) -> Term<Force> {
    let still = propeller.coefficients(0.0);
    sheet.remark(say!(
        "Of a propeller of {} blades, blade area {} of the disc, P/D {}, at rest, by the Wageningen B-series: KT = {}, KQ = {}.",
        u32::from(propeller.blades()),
        Measure::of(Ratio::from_si(propeller.area_ratio())),
        Measure::of(Ratio::from_si(propeller.pitch_ratio())),
        Measure::of(Ratio::from_si(still.thrust)),
        Measure::of(Ratio::from_si(still.torque))
    ));
    let d = Term::new("D", drive.diameter);
    let rho = Term::new("ρ", MassDensity::new::<kilogram_per_cubic_meter>(SEA_WATER));
    let power = Term::new("ηg", Ratio::from_si(THROUGH_GEARS)) * Term::new("P", drive.power);
    let torque = sheet.set("Q", "the engine's torque at the propeller", power * &d / (number(2.0) * pi() * turning));
    let asked = Term::new("KQ", Ratio::from_si(still.torque)) * &rho * turning * turning * &d * &d * &d;
    let over = sheet.set("q", "that torque over what the propeller asks at rated speed", torque / asked);
    sheet.remark("Below rated speed the engine holds its torque; past it, it holds its power.");
    let speed = sheet.set("k", "speed of the engine at rest over its rated speed", min(sqrt(over.clone()), cbrt(over)));
    let turns = speed * turning;
    let pull = Term::new("KT", Ratio::from_si(still.thrust)) * rho * &turns * &turns * &d * &d;
    sheet.set("Tp", "pull of the propeller at rest", pull)
}
