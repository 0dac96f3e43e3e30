//! She runs: the trim at which weight, pressure, friction and thrust balance.

use uom::si::angle::degree;
use uom::si::f64::{Angle, Force, Length, MassDensity, Power, Ratio, Velocity};

use super::limits::{Outside, within};
use super::prism;
use super::water::Water;
use crate::physics::root::root;
use crate::quantity::{Dimensioned, Moment, degrees, standard_gravity};

/// The bottom that she planes on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bottom {
    /// Beam between the chines.
    pub beam: Length,
    /// Deadrise.
    pub deadrise: Angle,
}

/// A line of thrust, seen from her centre of gravity.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct ThrustLine {
    /// Its angle to the keel; positive where it lifts.
    pub angle: Angle,
    /// Its distance from the centre of gravity; positive below it.
    pub below: Length,
    /// How far aft of that centre, along the line, the propeller works.
    pub aft: Length,
}

/// Forces besides those of the bottom and the thrust: air, lower units, tabs, the blades square to their shaft.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Beside {
    /// Aft.
    pub drag: Force,
    /// Up: what the bottom need not carry.
    pub lift: Force,
    /// About the centre of gravity, bow down.
    pub bow_down: Moment,
    /// What the blades push square to the shaft, over the sine of the angle between shaft and course; up where the shaft leans up.
    /// The water is taken to come level, as ahead of her: along the keel under the transom, it has risen again behind it.
    pub blades: Force,
}

/// What a balance is asked for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Planing {
    /// What she planes on.
    pub bottom: Bottom,
    /// What she runs in.
    pub water: Water,
    /// Her weight.
    pub weight: Force,
    /// Her centre forward of the transom.
    pub centre_forward: Length,
    /// Her centre above the keel.
    pub centre_above: Length,
    /// Along which all her propellers push, taken as one.
    pub thrust: ThrustLine,
    /// Through the water.
    pub speed: Velocity,
    /// What acts on her besides bottom and thrust.
    pub beside: Beside,
}

/// How she runs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Running {
    /// Trim of the keel.
    pub trim: Angle,
    /// Speed coefficient `V / √(g b)`.
    pub speed_coefficient: Ratio,
    /// Lift coefficient of the bottom.
    pub lift: Ratio,
    /// The same of a flat one.
    pub flat_lift: Ratio,
    /// Mean wetted length over the beam.
    pub wetted: Ratio,
    /// Wetted length of the keel.
    pub keel: Length,
    /// Wetted length of the chines; none where they run dry.
    pub chine: Length,
    /// Centre of pressure over the mean wetted length.
    pub centre_of_pressure: Ratio,
    /// Mean speed along the bottom over her own.
    pub bottom_speed: Ratio,
    /// Reynolds number of the bottom.
    pub reynolds: Ratio,
    /// Friction coefficient, roughness with it.
    pub friction_coefficient: Ratio,
    /// Friction along the bottom.
    pub friction: Force,
    /// Pressure square to the bottom.
    pub pressure: Force,
    /// Her bottom's drag.
    pub drag: Force,
    /// Thrust that she asks for along its line.
    pub thrust: Force,
    /// What the blades push square to that line, upwards.
    pub blades: Force,
    /// Drag times speed, all of it.
    pub effective_power: Power,
    /// What is left of the moment about her centre, bow down, over weight times beam.
    pub residual: Ratio,
}

/// Trims between which the balance is sought, degrees: wide of the method's own range, so that what lies outside it is named.
const SOUGHT: [f64; 2] = [0.05, 30.0];
/// How near two trims are alike, degrees.
const ALIKE: f64 = 1e-12;
/// How far about a trim that is nearly hers secants may go, the first of them, degrees, and how many are drawn.
const ABOUT: f64 = 2.0;
const SECANT: f64 = -0.05;
const SECANTS: usize = 12;
/// A step so short leaves less than [`ALIKE`], degrees: what is left falls with the product of the last two steps.
const LAST_STEP: f64 = 1e-8;
/// Part of her weight that the bottom is taken to carry at least: where the search begins, at trims that no boat has, blades could carry
/// more than all of it.
const LEAST_CARRIED: f64 = 0.01;

/// The prism at one trim.
struct At {
    running: Running,
    /// Bow down, over weight times beam.
    moment: f64,
}

impl Planing {
    /// The trim at which she runs, and all that goes with it.
    ///
    /// The bottom carries the weight less what else lifts; the thrust is what balances along its line, exactly (the paper leaves
    /// out the sine of small angles there, which moves its example by less than 0.001 degrees). Source: Savitsky 1964, the
    /// general case.
    ///
    /// # Errors
    /// Where no trim balances, or the balance lies outside what the method was fitted to.
    pub fn balance(&self) -> Result<Running, Outside> {
        let running = self.settled(None)?;
        within(running.speed_coefficient, running.trim, running.wetted)?;
        Ok(running)
    }

    /// The same, however far outside the method; sought about a trim that is nearly hers, where one is known.
    pub(in crate::physics) fn settled(&self, near: Option<Angle>) -> Result<Running, Outside> {
        let sound =
            [self.bottom.beam.si(), self.weight.si(), self.speed.si()].iter().all(|v| v.is_finite() && *v > 0.0);
        if !sound || !self.carried().is_finite() || self.carried() <= 0.0 {
            return Err(Outside::NoBalance);
        }
        if let Some(trim) = near.and_then(|near| self.trim_about(near.get::<degree>())) {
            return Ok(self.at(trim).running);
        }
        // Times the trim it is nearly straight: so it is found in half the steps.
        let moment = |trim: f64| self.at(trim).moment * trim;
        let ends = SOUGHT.map(moment);
        if !(ends[0] < 0.0 && ends[1] > 0.0) {
            return Err(Outside::NoBalance);
        }
        let trim = root(SOUGHT, ends, ALIKE, moment);
        Ok(self.at(trim).running)
    }

    /// The trim of balance next to one that is nearly it, degrees, by secants; nothing where they stray.
    fn trim_about(&self, near: f64) -> Option<f64> {
        let moment = |trim: f64| self.at(trim).moment;
        let ([mut a, mut b], mut at_a) = ([near, near + SECANT], moment(near));
        for _ in 0..SECANTS {
            let at_b = moment(b);
            let next = b - at_b * (b - a) / (at_b - at_a);
            if next.is_nan() || (next - near).abs() > ABOUT {
                return None;
            }
            if (next - b).abs() <= LAST_STEP {
                return Some(next);
            }
            (a, at_a, b) = (b, at_b, next);
        }
        None
    }

    /// What the bottom carries, N.
    fn carried(&self) -> f64 {
        self.weight.si() - self.beside.lift.si()
    }

    fn pressure_head(&self) -> f64 {
        0.5 * self.water.density.si() * self.speed.si().powi(2)
    }

    /// What the blades push square to the shaft at this trim, N, and what is left of it to lift her and to hold her back.
    fn blades(&self, trim: f64) -> [f64; 3] {
        let (sin, cos) = (trim.to_radians() + self.thrust.angle.si()).sin_cos();
        let force = self.beside.blades.si() * sin;
        [force, force * cos, force * sin]
    }

    /// Speed over that of gravity on the beam.
    pub fn speed_coefficient(&self) -> f64 {
        self.speed.si() / (standard_gravity().si() * self.bottom.beam.si()).sqrt()
    }

    /// The prism at this trim (degrees).
    fn at(&self, trim: f64) -> At {
        let (beam, deadrise) = (self.bottom.beam.si(), self.bottom.deadrise.get::<degree>());
        let [blades, lifts, holds] = self.blades(trim);
        let carried = (self.carried() - lifts).max(LEAST_CARRIED * self.carried());
        let lift = carried / (self.pressure_head() * beam.powi(2));
        let flat = prism::flat_lift_for(lift, deadrise);
        let speed = self.speed_coefficient();
        let wetted = prism::wetted_for(flat, trim, speed);
        let (sin, cos) = trim.to_radians().sin_cos();
        let tan_deadrise = self.bottom.deadrise.si().tan();
        let dynamic = prism::lift(prism::dynamic_lift(trim, wetted), deadrise);
        let bottom_speed = prism::bottom_speed_squared(dynamic, wetted, cos).max(0.0).sqrt();
        let reynolds = bottom_speed * self.speed.si() * wetted * beam / self.water.viscosity;
        let coefficient = prism::friction_coefficient(reynolds) + prism::ROUGHNESS;
        let area = wetted * beam * beam / self.bottom.deadrise.si().cos();
        let friction = self.pressure_head() * bottom_speed.powi(2) * area * coefficient;
        let angle = self.thrust.angle.si();
        let beside = &self.beside;
        // Along and square to the keel, exactly, the blades' N among what lifts and holds her back:
        // T cos ε = Δ sin τ + Df + D cos τ; P = Δ cos τ − T sin ε − D sin τ.
        let held_back = beside.drag.si() + holds;
        let thrust = (carried * sin + friction + held_back * cos) / angle.cos();
        let pressure = carried * cos - thrust * angle.sin() - held_back * sin;
        let centre = prism::centre_of_pressure(speed, wetted);
        let aft = self.centre_forward.si() - centre * wetted * beam;
        let below = self.centre_above.si() - 0.25 * beam * tan_deadrise;
        let moment = pressure * aft + friction * below - thrust * self.thrust.below.si()
            + blades * self.thrust.aft.si()
            + beside.bow_down.si();
        // Keel and chines: half the difference of their wetted lengths on either side of the mean.
        let spread = 0.5 * beam * tan_deadrise / (std::f64::consts::PI * trim.to_radians().tan());
        let drag = carried * sin / cos + friction / cos;
        let force = Force::from_si;
        let residual = moment / (self.weight.si() * beam);
        let running = Running {
            trim: degrees(trim),
            speed_coefficient: Ratio::from_si(speed),
            lift: Ratio::from_si(lift),
            flat_lift: Ratio::from_si(flat),
            wetted: Ratio::from_si(wetted),
            keel: Length::from_si(wetted * beam + spread),
            chine: Length::from_si((wetted * beam - spread).max(0.0)),
            centre_of_pressure: Ratio::from_si(centre),
            bottom_speed: Ratio::from_si(bottom_speed),
            reynolds: Ratio::from_si(reynolds),
            friction_coefficient: Ratio::from_si(coefficient),
            friction: force(friction),
            pressure: force(pressure),
            drag: force(drag),
            thrust: force(thrust),
            blades: force(blades),
            effective_power: Power::from_si((drag + held_back) * self.speed.si()),
            residual: Ratio::from_si(residual),
        };
        At { running, moment: residual }
    }
}

impl ThrustLine {
    /// The line through a propeller's place (forward and up, metres) at this angle to the keel, seen from a centre of gravity.
    pub fn through(point: [f64; 2], angle: Angle, centre: [f64; 2]) -> Self {
        let (sin, cos) = angle.si().sin_cos();
        let below = (point[0] - centre[0]) * sin - (point[1] - centre[1]) * cos;
        let aft = (centre[0] - point[0]) * cos + (centre[1] - point[1]) * sin;
        ThrustLine { angle, below: Length::from_si(below), aft: Length::from_si(aft) }
    }
}

/// Density in kg/m³ for the volume that a weight displaces.
pub fn displaced(weight: Force, density: MassDensity) -> f64 {
    weight.si() / (standard_gravity().si() * density.si())
}
