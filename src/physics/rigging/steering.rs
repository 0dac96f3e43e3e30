//! Steering: turns of the wheel, pressure and pull at its rim.

use uom::si::f64::{Area, Force, Length, Power, Pressure, Ratio, Velocity, Volume};

use crate::physics::strength::loads::OVERALL_EFFICIENCY;
use crate::quantity::{Dimensioned, Moment, Style};
use crate::working::{Sheet, Term, number, pi};

/// Turns lock to lock that a hydraulic wheel usually takes. Common practice, no source: below it is heavy and nervous,
/// beyond it nobody gets her round in time.
pub const USUAL_TURNS: (f64, f64) = (4.0, 7.0);
/// Most turns lock to lock that pass: a check value of the trade. Common practice, no source.
pub const MOST_TURNS: f64 = 9.0;
/// Fewest turns lock to lock that pass. Common practice, no source.
pub const FEWEST_TURNS: f64 = 3.0;
/// Displacements a turn in which helms are made. Common practice, no source: 1.2 to 2.4 in³, in m³.
pub const HELMS_M3: (f64, f64) = (1.966e-5, 3.933e-5);
/// Pull at the rim that a helmsman holds for long. Common practice, no source: 25 lbf, in N.
pub const RIM_PULL_N: f64 = 111.2;
/// What comes through pump, hoses and seals. Common practice, no source.
const THROUGH_HYDRAULICS: f64 = 0.85;
/// Side force of a propeller and the lower unit's lift in a steady turn, over the thrust. Common practice, no source.
const SIDE_OF_THRUST: f64 = 0.15;
/// The propeller behind the axis about which an engine is steered. Common practice, no source: 9 in, in m.
const BEHIND_AXIS_M: f64 = 0.2286;
/// From that axis to the pin at which an engine is steered. Common practice, no source: 8 in, in m.
pub const ARM_M: f64 = 0.2032;

/// A steering cylinder.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cylinder {
    /// Inside of its barrel.
    pub bore: Length,
    /// Its rod.
    pub rod: Length,
    /// From lock to lock.
    pub stroke: Length,
    /// Whether the rod comes out at both ends, so that both sides displace alike.
    pub balanced: bool,
}

/// Area that the helm has to fill: the barrel's, less the rod's where it stands in that side. Of an unbalanced cylinder
/// the full side counts for turns, the rod's side for pressure.
fn areas(sheet: &mut Sheet, cylinder: &Cylinder) -> (Term<Area>, Term<Area>) {
    let (b, d) = (Term::styled("D", cylinder.bore, Style::Tape), Term::styled("d", cylinder.rod, Style::Tape));
    let ring = pi() / number(4.0) * (&b * &b - &d * &d);
    let ring = sheet.set("Ar", "area beside the rod", ring);
    if cylinder.balanced {
        return (ring.clone(), ring);
    }
    let full = sheet.set("Af", "area of the side without a rod", pi() / number(4.0) * &b * &b);
    (full, ring)
}

/// Turns of the wheel from lock to lock, with so many cylinders that move together.
pub fn turns(sheet: &mut Sheet, cylinder: &Cylinder, count: u8, helm: Volume) -> Term<Ratio> {
    let (full, _) = areas(sheet, cylinder);
    let many = Term::new("N", Ratio::from_si(f64::from(count)));
    let swept = many * full * Term::new("s", cylinder.stroke);
    let swept = sheet.set_styled("V", "displaced from lock to lock", swept, Style::Displacement);
    sheet.set("n", "turns lock to lock", swept / Term::styled("Vh", helm, Style::Displacement))
}

/// Force at the pin of all cylinders together in a turn at full speed, from power and speed.
pub fn side_load(sheet: &mut Sheet, power: Power, speed: Velocity) -> Term<Force> {
    let thrust = number(OVERALL_EFFICIENCY) * Term::new("P", power) / Term::new("v", speed);
    let thrust = sheet.set("T", "thrust at speed", thrust);
    let lever = Term::new("b", Length::from_si(BEHIND_AXIS_M)) / Term::new("a", Length::from_si(ARM_M));
    sheet.set("Fs", "force at the steering pins", number(SIDE_OF_THRUST) * thrust * lever)
}

/// Pressure that holds this force.
pub fn pressure(sheet: &mut Sheet, cylinder: &Cylinder, count: u8, load: &Term<Force>) -> Term<Pressure> {
    let (_, ring) = areas(sheet, cylinder);
    let many = Term::new("N", Ratio::from_si(f64::from(count)));
    sheet.set("p", "pressure in the cylinder", load / &(many * ring))
}

/// Pull at the rim of a wheel of this diameter against the pressure: torque `p · V / 2π`, losses, half the diameter.
pub fn rim_pull(sheet: &mut Sheet, pressure: &Term<Pressure>, helm: Volume, wheel: Length) -> Term<Force> {
    let torque = pressure * &Term::styled("Vh", helm, Style::Displacement) / (number(2.0) * pi());
    let torque: Term<Moment> = sheet.set("M", "torque at the helm", torque / number(THROUGH_HYDRAULICS));
    sheet.set("Fw", "pull at the rim", number(2.0) * torque / Term::new("Dw", wheel))
}

/// Volume of two lines of this bore and length: what is filled and bled.
pub fn line_volume(sheet: &mut Sheet, bore: Length, length: Length) -> Term<Volume> {
    let d = Term::styled("Dl", bore, Style::Tape);
    let volume = number(2.0) * (pi() / number(4.0)) * &d * &d * Term::new("L", length);
    sheet.set_styled("Vl", "oil in two lines", volume, Style::Displacement)
}
