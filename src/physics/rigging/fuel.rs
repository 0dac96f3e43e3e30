//! Gasoline on its way to an engine: how much, how hard it is drawn, whether it boils on the way.

use uom::si::f64::{Length, MassDensity, Power, Pressure, Ratio, VolumeRate};

use super::pipe;
use crate::physics::engine::FULL_THROTTLE_GAL_HP_H;
use crate::quantity::{
    Dimensioned, Measure, Style, Temperature, Viscosity, gallons_per_hour, horsepower, in_celsius, inches_hg, say,
    standard_gravity,
};
use crate::working::{Sheet, Term, exp, number, pi, power};

/// Density of gasoline at 20 °C, kg/m³, and what a kelvin takes off it. Values from memory.
const DENSITY: f64 = 740.0;
const DENSITY_A_KELVIN: f64 = 0.95e-3;
/// Kinematic viscosity of gasoline at 20 °C, m²/s (0.55 mPa·s), and the power of the absolute temperature with which it
/// falls. Values from memory.
const VISCOSITY: f64 = 0.743e-6;
const VISCOSITY_POWER: f64 = 3.1;
/// 20 °C from absolute zero, K.
const ROOM_K: f64 = 293.15;
const ROOM_C: f64 = 20.0;
/// Roughness of a hose inside, m. Common practice, no source: smooth rubber.
const ROUGHNESS: f64 = 5e-6;
/// Vapour pressure at 100 °F over the Reid figure, and the slope of its logarithm over 1/T, K. Source: fitted to EPA
/// AP-42, table 7.1-2, gasoline of Reid vapour pressure 10 (values from memory).
const REID_TO_TRUE: f64 = 1.05;
const BOILING_SLOPE_K: f64 = 2920.0;
/// 100 °F from absolute zero, K.
const REID_K: f64 = 310.93;
/// The pressure of the air, Pa. Source: ISO 2533, sea level.
const AIR_PA: f64 = 101_325.0;

/// Suction that an outboard's own pump may have to draw with, inHg. Common practice, no source.
pub const SUCTION_IN_HG: f64 = 2.0;
/// What a clean filter and separator takes off at its rated flow, inHg. Common practice, no source.
pub const FILTER_IN_HG: f64 = 0.2;
/// What an anti-siphon valve's spring takes off, inHg. Common practice, no source.
pub const ANTI_SIPHON_IN_HG: f64 = 0.3;
/// What a primer bulb's two valves take off, inHg. Common practice, no source.
pub const BULB_IN_HG: f64 = 0.1;
/// Length of hose, over its diameter, that rubs as much as an elbow. Source: Crane TP-410, value from memory.
pub const ELBOW_DIAMETERS: f64 = 30.0;
/// The same of a barbed connection with its step. Source: the same.
pub const BARB_DIAMETERS: f64 = 25.0;
/// The same of a shut-off valve. Source: the same.
pub const VALVE_DIAMETERS: f64 = 18.0;
/// Part of a tank that can be burnt. Common practice, no source: a tenth is kept back.
pub const USABLE: f64 = 0.9;

/// What a fuel line is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Line {
    /// Inside of the hose.
    pub bore: Length,
    /// From the tank's pick-up to the engine.
    pub length: Length,
    /// Elbows on the way.
    pub elbows: u8,
    /// Barbed connections on the way.
    pub barbs: u8,
    /// Shut-off valves on the way.
    pub valves: u8,
    /// From the surface in an almost empty tank up to the engine's pump.
    pub lift: Length,
    /// What filter, anti-siphon valve, bulb and the like take off by themselves.
    pub devices: Pressure,
    /// Of the fuel.
    pub temperature: Temperature,
}

/// Fuel burnt at full throttle by power alone. Common practice, no source: near 0.1 US gal a horsepower and hour.
pub fn rate_by_power(sheet: &mut Sheet, power: Power) -> Term<VolumeRate> {
    let share = Term::new("P", power) / Term::constant(horsepower(1.0));
    let each = Term::constant(gallons_per_hour(FULL_THROTTLE_GAL_HP_H));
    sheet.set("Q", "fuel at full throttle, by power", share * each)
}

/// Density of gasoline at this temperature.
pub fn density(sheet: &mut Sheet, temperature: Temperature) -> Term<MassDensity> {
    let warmer = Term::new("t °C", Ratio::from_si(in_celsius(temperature))) - number(ROOM_C);
    let thinner = number(1.0) - number(DENSITY_A_KELVIN) * warmer;
    sheet.set("ρ", "density of gasoline", Term::new("ρ20", MassDensity::from_si(DENSITY)) * thinner)
}

/// Kinematic viscosity of gasoline at this temperature.
pub fn viscosity(sheet: &mut Sheet, temperature: Temperature) -> Term<Viscosity> {
    let ratio = Term::constant(Temperature::from_si(ROOM_K)) / Term::new("T", temperature);
    let ratio = sheet.set("θ", "20 °C over its temperature, both from absolute zero", ratio);
    let cold = Term::new("ν20", Viscosity::from_si(VISCOSITY));
    sheet.set("ν", "kinematic viscosity of gasoline", cold * power(ratio, number(VISCOSITY_POWER)))
}

/// Suction at the engine's pump: the hose by Darcy and Weisbach with its fittings as so many diameters more of it, the
/// lift, and what devices take off. Negative where the tank stands higher than the engine by more than all that.
pub fn suction(sheet: &mut Sheet, line: &Line, flow: VolumeRate) -> Term<Pressure> {
    let rho = density(sheet, line.temperature);
    let nu = viscosity(sheet, line.temperature);
    let d = Term::styled("D", line.bore, Style::Tape);
    let bore = pi() / number(4.0) * &d * &d;
    let v = sheet.set("V", "speed in the hose", Term::new("Q", flow) / bore);
    let re = sheet.set("Re", "Reynolds number", &v * &d / nu);
    let found = pipe::friction(re.value().si(), ROUGHNESS / line.bore.si());
    sheet.remark(say!(
        "Darcy's factor f by {}: {}.",
        if re.value().si() <= pipe::LAMINAR_TO {
            "64/Re, laminar"
        } else if re.value().si() < pipe::TURBULENT_FROM {
            "a straight line between laminar and Colebrook's turbulent"
        } else {
            "Colebrook's formula, by repeated substitution to the last digit"
        },
        Measure::of(Ratio::from_si(found.factor))
    ));
    let f = Term::new("f", Ratio::from_si(found.factor));
    let fittings = number(ELBOW_DIAMETERS) * count("ne", line.elbows)
        + number(BARB_DIAMETERS) * count("nb", line.barbs)
        + number(VALVE_DIAMETERS) * count("nv", line.valves);
    let long = sheet.set("Le", "length of the hose with its fittings", Term::new("L", line.length) + fittings * &d);
    let push = &rho * &v * &v / number(2.0);
    let rub = sheet.set_styled("Δph", "lost in the hose", f * long / d * push, Style::Suction);
    let weight = Term::constant(standard_gravity()) * Term::new("h", line.lift);
    let lift = sheet.set_styled("Δpl", "lift from the tank's bottom", rho * weight, Style::Suction);
    let devices = Term::styled("Δpd", line.devices, Style::Suction);
    sheet.set_styled("Δp", "suction at the engine's pump", rub + lift + devices, Style::Suction)
}

fn count(symbol: &str, many: u8) -> Term<Ratio> {
    Term::new(symbol, Ratio::from_si(f64::from(many)))
}

/// What a device takes off at this flow when it takes off so much at its rated one: with the square of the flow.
pub fn device_drop(
    sheet: &mut Sheet,
    symbol: &str,
    at_rated: Pressure,
    flow: VolumeRate,
    rated: VolumeRate,
) -> Term<Pressure> {
    let share = Term::new("Q", flow) / Term::new("Qr", rated);
    let share = sheet.set("q", "flow over the rated one", share);
    let drop = Term::styled("Δpr", at_rated, Style::Suction) * &share * &share;
    sheet.set_styled(symbol, "taken off by it", drop, Style::Suction)
}

/// Pressure over boiling at the engine's pump: the air's, less suction, less the vapour pressure of a gasoline of this
/// Reid figure at this temperature. Source: fitted to EPA AP-42, table 7.1-2, within 6 % for 7 to 13 psi from 40 to 100 °F.
pub fn over_boiling(sheet: &mut Sheet, reid: Pressure, temperature: Temperature, suction: Pressure) -> Term<Pressure> {
    let vapour = vapour_pressure(sheet, reid, temperature);
    let air = Term::new("pa", Pressure::from_si(AIR_PA));
    sheet.set_styled("pb", "pressure left over boiling", air - Term::new("Δp", suction) - vapour, Style::Round)
}

/// Vapour pressure of a gasoline of this Reid figure.
pub fn vapour_pressure(sheet: &mut Sheet, reid: Pressure, temperature: Temperature) -> Term<Pressure> {
    let cold = Term::constant(Temperature::from_si(BOILING_SLOPE_K)) / Term::constant(Temperature::from_si(REID_K));
    let warm = Term::constant(Temperature::from_si(BOILING_SLOPE_K)) / Term::new("Th", temperature);
    let step = sheet.set("s", "step of the logarithm from 100 °F", cold - warm);
    sheet.set_styled("pv", "vapour pressure", number(REID_TO_TRUE) * Term::new("RVP", reid) * exp(step), Style::Round)
}

/// The suction that an engine's pump may be asked for.
pub fn permitted_suction() -> Pressure {
    inches_hg(SUCTION_IN_HG)
}
