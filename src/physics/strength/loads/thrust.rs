//! Thrust and acceleration, line by line.

use uom::si::angle::degree;
use uom::si::f64::{Angle, Force, Length, Mass, MassDensity, Power, Ratio, Velocity};
use uom::si::length::meter;
use uom::si::mass::kilogram;
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::velocity::knot;

use crate::physics::propeller::{Drive, Propeller, SEA_WATER, SLIP, thrust_at_rest};
use crate::quantity::{Dimensioned, standard_gravity};
use crate::working::{Sheet, Term, cbrt, max, min, number, pi, sin};

/// Thrust astern over thrust ahead at rest: exhaust through the hub and blades the wrong way round. Common practice, no source.
pub const ASTERN_OF_AHEAD: f64 = 0.6;
/// Part of the shaft's power that becomes thrust times speed at full speed. Common practice, no source: 0.55 to 0.70 for
/// outboards on planing boats; the greater thrust of 0.65 is used.
pub const OVERALL_EFFICIENCY: f64 = 0.65;
/// Depth of a lower unit below its anti-ventilation plate, over the distance from that plate to the propeller's shaft.
/// Common practice, no source.
pub const LOWER_UNIT_DEPTH: f64 = 1.75;
/// Its chord over the same distance. Common practice, no source.
pub const LOWER_UNIT_CHORD: f64 = 1.0;
/// Lift coefficient of a lower unit turned hard over. Common practice, no source: 0.15 to 0.3, for it pierces the surface and
/// air comes down its side.
pub const LOWER_UNIT_LIFT: f64 = 0.2;
/// Speed beyond which a hard turn brings no more lift, knots: more air comes down, and nobody turns the wheel as far.
/// Common practice, no source.
pub const LIFT_GROWS_TO: f64 = 30.0;
/// Vertical acceleration of a trailer on a rough road, in g on top of gravity. Common practice, no source.
pub const TRAILER_ACCELERATION: f64 = 2.0;
/// Deadrise for which the acceleration formula holds, degrees. Source: ISO 12215-5, value from memory.
pub const DEADRISE_RANGE: [f64; 2] = [10.0, 30.0];
/// Acceleration above which a second formula bounds the first, in g. Source: ISO 12215-5, value from memory.
pub const BOUNDED_ABOVE: f64 = 3.0;
/// That formula's factor and power: `n = 0.5 V / m^0.17`, n in g, V in knots, m in kg. Source: the same.
pub const BOUND: (f64, f64) = (0.5, 0.17);

/// Static thrust of an ideal actuator disc, `T = (2 ρ A P²)^⅓`: what no propeller of this diameter can pull more than with this
/// power. Source: momentum theory (W. J. M. Rankine, R. E. Froude).
pub fn disc_thrust(sheet: &mut Sheet, power: Power, propeller: Length) -> Term<Force> {
    let d = Term::new("D", propeller);
    let area = sheet.set("A", "propeller disc", pi() / number(4.0) * &d * &d);
    let rho = Term::new("ρ", MassDensity::new::<kilogram_per_cubic_meter>(SEA_WATER));
    // Through the speed in the disc, v = (P / 2 ρ A)^⅓, the thrust is P / v: the same law without a cube of a force.
    let one = Term::constant(Velocity::from_si(1.0));
    let power = Term::new("P", power);
    let cube = &power / &(number(2.0) * rho * area * &one * &one * &one);
    let speed = sheet.set("vi", "speed that the propeller gives the water in the disc", cbrt(cube) * one);
    sheet.set("Td", "static thrust of an ideal disc", power / speed)
}

/// Static thrust: the propeller's pull behind this engine, and never more than an ideal disc's.
pub fn static_thrust(sheet: &mut Sheet, drive: &Drive, turning: &Term<Velocity>, propeller: &Propeller) -> Term<Force> {
    let pull = thrust_at_rest(sheet, drive, turning, propeller);
    let disc = disc_thrust(sheet, drive.power, drive.diameter);
    sheet.set("T", "static thrust ahead", min(pull, disc))
}

/// Thrust at speed, `T = η P / V`, and never more than at rest.
pub fn thrust_at_speed(
    sheet: &mut Sheet,
    power: Power,
    speed: Velocity,
    efficiency: f64,
    at_rest: &Term<Force>,
) -> Term<Force> {
    let eta = Term::new("η", Ratio::from(efficiency));
    let running = eta * Term::new("P", power) / Term::new("Vs", speed);
    sheet.set("Tv", "thrust at full speed, no more than at rest", min(running, at_rest.clone()))
}

/// Thrust in a hard turn: a fast boat loses her way in it, so that the thrust is that at the speed of the propeller usual for
/// the engine, `T = η P / ((1 − s) p u)`, whatever her own: it does not fall where she is said to be faster. Common practice,
/// no source.
pub fn thrust_in_turn(
    sheet: &mut Sheet,
    power: Power,
    turning: &Term<Velocity>,
    usual_pitch: &Term<Ratio>,
    efficiency: f64,
) -> Term<Force> {
    let slip = Term::new("sA", Ratio::from_si(SLIP));
    let speed = sheet.set(
        "Vu",
        "speed for the propeller usual for the engine, to which a hard turn brings her",
        (number(1.0) - slip) * usual_pitch * turning,
    );
    let running = Term::new("η", Ratio::from(efficiency)) * Term::new("P", power) / speed;
    sheet.set("Tt", "thrust in a hard turn", running)
}

/// Side force of an engine turned hard over: its thrust, turned, and its lower unit's lift,
/// `Fy = T sin δ + ½ ρ V² A C_L`, V no more than [`LIFT_GROWS_TO`]. It never falls with speed. Common practice, no source.
pub fn turn_force(
    sheet: &mut Sheet,
    thrust: &Term<Force>,
    steering: Angle,
    plate_to_shaft: Length,
    speed: Velocity,
) -> Term<Force> {
    let h = Term::new("gc", plate_to_shaft);
    let area =
        sheet.set("Al", "side of the lower unit", number(LOWER_UNIT_DEPTH) * &h * (number(LOWER_UNIT_CHORD) * &h));
    let most = Term::constant(Velocity::new::<knot>(LIFT_GROWS_TO));
    let speed = sheet.set("Vl", "speed at which it lifts", min(Term::new("Vs", speed), most));
    let rho = Term::new("ρ", MassDensity::new::<kilogram_per_cubic_meter>(SEA_WATER));
    let coefficient = Term::new("CL", Ratio::from_si(LOWER_UNIT_LIFT));
    let lift = sheet.set(
        "L",
        "lift of the lower unit in a hard turn",
        number(0.5) * rho * &speed * &speed * area * coefficient,
    );
    sheet.set("Fy", "side force of a hard turn", thrust * sin(Term::new("δ", steering)) + lift)
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
    sheet.remark("Vkn in knots, lengths in m, mLDC in kg, deadrise in degrees.");
    let l = plain("LWL", waterline.get::<meter>());
    let b = plain("BC", chine_beam.get::<meter>());
    let v = plain("Vkn", speed.get::<knot>());
    let m = plain("mLDC", mass.get::<kilogram>());
    let slender = l / (number(10.0) * &b) + number(0.084);
    let load = &v * &v * &b * &b / m;
    sheet.set(
        "nCG",
        "acceleration at the centre of gravity, in g",
        number(0.32) * slender * (number(50.0) - plain("β", within)) * load,
    )
}

/// The same, bounded: never more than the greater of 3 and `0.5 V / m^0.17`, V in knots, m in kg; then times the design
/// category's factor, as the standard has it (value from memory). Source: ISO 12215-5, from memory.
pub fn slamming(
    sheet: &mut Sheet,
    at_gravity_centre: Term<Ratio>,
    speed: Velocity,
    mass: Mass,
    category_factor: Ratio,
) -> Term<Ratio> {
    let (factor, power) = BOUND;
    let v = Term::new("Vkn", Ratio::from(speed.get::<knot>()));
    let root = crate::working::power(Term::new("mLDC", Ratio::from(mass.get::<kilogram>())), number(power));
    let bound =
        sheet.set("nCGb", "bound of the acceleration, in g", max(number(BOUNDED_ABOVE), number(factor) * v / root));
    sheet.set(
        "nS",
        "slamming on top of gravity, in g",
        Term::new("kDC", category_factor) * min(at_gravity_centre, bound),
    )
}

/// Weight of a mass under `1 + n` times gravity, and from where n is.
pub fn heavy_weight(sheet: &mut Sheet, mass: Mass, extra: Ratio, from: &str) -> Term<Force> {
    sheet.origin::<Ratio>("nz", from);
    let g = Term::new("g", standard_gravity());
    sheet.set("F", "weight under acceleration", Term::new("m", mass) * g * (number(1.0) + Term::new("nz", extra)))
}
