//! Thrust and acceleration, line by line.

use uom::si::angle::degree;
use uom::si::f64::{Angle, Force, Length, Mass, MassDensity, Power, Ratio, Velocity};
use uom::si::length::meter;
use uom::si::mass::kilogram;
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::velocity::knot;

use crate::quantity::{Dimensioned, standard_gravity};
use crate::working::{Sheet, Term, number, pi};

/// Sea water at 15 °C, kg/m³. Source: ITTC fresh and seawater properties, value from memory.
pub const SEA_WATER: f64 = 1025.0;
/// Part of an ideal disc's static thrust that a fixed propeller of an outboard gives (blade drag, swirl, gearcase).
/// Common practice, no source; 1 is the upper bound.
pub const DISC_EFFICIENCY: f64 = 0.75;
/// Thrust astern over thrust ahead at rest: exhaust through the hub and blades the wrong way round. Common practice, no source.
pub const ASTERN_OF_AHEAD: f64 = 0.6;
/// Part of the shaft's power that becomes thrust times speed at full speed. Common practice, no source: 0.55 to 0.70 for
/// outboards on planing boats; the greater thrust of 0.65 is used.
pub const OVERALL_EFFICIENCY: f64 = 0.65;
/// Side force of a hard-over turn over the thrust along the boat: the thrust turned by the steering angle and the
/// gearcase's lift as a rudder double it. Common practice, no source.
pub const STEERING_FORCE_FACTOR: f64 = 2.0;
/// Vertical acceleration of a trailer on a rough road, in g on top of gravity. Common practice, no source.
pub const TRAILER_ACCELERATION: f64 = 2.0;
/// Deadrise for which the acceleration formula holds, degrees. Source: ISO 12215-5, value from memory.
pub const DEADRISE_RANGE: [f64; 2] = [10.0, 30.0];

/// Static thrust of an actuator disc, `T = η (2 ρ A P²)^⅓`. `η` 1 is momentum theory's upper bound (W. J. M. Rankine, R. E. Froude).
pub fn static_thrust(sheet: &mut Sheet, power: Power, propeller: Length, efficiency: f64) -> Term<Force> {
    let d = Term::new("Dp", propeller);
    let area = sheet.set("A", "propeller disc", pi() / number(4.0) * &d * &d);
    let rho = MassDensity::new::<kilogram_per_cubic_meter>(SEA_WATER);
    // Through the speed in the disc, v = (P / 2 ρ A)^⅓, the thrust is P / v: the same law without a cube of a force.
    let cube = power.si() / (2.0 * rho.si() * area.value().si());
    let speed = Term::new("vi", Velocity::from_si(cube.cbrt()));
    sheet.remark("Speed in the disc vi = (P / (2 ρ A))^(1/3), so that T = P / vi = (2 ρ A P²)^(1/3).");
    let eta = Term::new("η", Ratio::from(efficiency));
    sheet.set("T", "static thrust ahead", eta * (Term::new("P", power) / speed))
}

/// Thrust at speed, `T = η P / V`.
pub fn thrust_at_speed(sheet: &mut Sheet, power: Power, speed: Velocity, efficiency: f64) -> Term<Force> {
    let eta = Term::new("η", Ratio::from(efficiency));
    sheet.set("T", "thrust at full speed", eta * Term::new("P", power) / Term::new("V", speed))
}

/// Side force of an engine turned hard over: `Fy = k T sin δ`.
pub fn turn_force(sheet: &mut Sheet, thrust: &Term<Force>, steering: Angle) -> Term<Force> {
    let sine = Term::new("sin δ", Ratio::from(steering.si().sin()));
    sheet.set("Fy", "side force of a hard-over turn", number(STEERING_FORCE_FACTOR) * thrust * sine)
}

/// Acceleration at the centre of gravity in a seaway, in g: `n = 0.32 (LWL/(10 BC) + 0.084)(50 − β) V² BC²/m`, V in knots,
/// lengths in m, mass in kg, β in degrees from 10 to 30. Source: ISO 12215-5 (value from memory). Outside its range the
/// deadrise is brought to the nearest bound, and the sheet says so.
pub fn acceleration_at_gravity_centre(
    sheet: &mut Sheet,
    waterline: Length,
    chine_beam: Length,
    deadrise: Angle,
    speed: Velocity,
    mass: Mass,
) -> Term<Ratio> {
    // The formula is not dimensionally sound: its quantities go in as plain numbers in the units it names.
    let plain = |symbol: &str, value: f64| Term::new(symbol, Ratio::from(value));
    let beta = deadrise.get::<degree>();
    let within = beta.clamp(DEADRISE_RANGE[0], DEADRISE_RANGE[1]);
    if within != beta {
        sheet.remark("The formula holds for 10 to 30 degrees of deadrise; the nearest bound is used.");
    }
    sheet.remark("V in knots, lengths in m, mass in kg, deadrise in degrees.");
    let l = plain("LWL", waterline.get::<meter>());
    let b = plain("BC", chine_beam.get::<meter>());
    let v = plain("V", speed.get::<knot>());
    let m = plain("m", mass.get::<kilogram>());
    let slender = l / (number(10.0) * &b) + number(0.084);
    let load = &v * &v * &b * &b / m;
    sheet.set(
        "n",
        "acceleration at the centre of gravity, in g",
        number(0.32) * slender * (number(50.0) - plain("β", within)) * load,
    )
}

/// Weight of a mass under `1 + n` times gravity.
pub(super) fn heavy_weight(sheet: &mut Sheet, mass: Mass, extra: &Term<Ratio>) -> Term<Force> {
    let g = Term::new("g", standard_gravity());
    sheet.set("F", "weight under acceleration", Term::new("m", mass) * g * (number(1.0) + extra))
}
