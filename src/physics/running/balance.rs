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
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ThrustLine {
    /// Its angle to the keel; positive where it lifts.
    pub angle: Angle,
    /// Its distance from the centre of gravity; positive below it.
    pub below: Length,
}

/// Forces besides those of the bottom and the thrust: air, lower units, tabs.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Beside {
    /// Aft.
    pub drag: Force,
    /// Up: what the bottom need not carry.
    pub lift: Force,
    /// About the centre of gravity, bow down.
    pub bow_down: Moment,
}

/// What a balance is asked for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Planing {
    pub bottom: Bottom,
    pub water: Water,
    /// Her weight.
    pub weight: Force,
    /// Her centre forward of the transom.
    pub centre_forward: Length,
    /// Her centre above the keel.
    pub centre_above: Length,
    pub thrust: ThrustLine,
    pub speed: Velocity,
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
    /// Drag times speed, all of it.
    pub effective_power: Power,
    /// What is left of the moment about her centre, bow down, over weight times beam.
    pub residual: Ratio,
}

/// Trims between which the balance is sought, degrees: wide of the method's own range, so that what lies outside it is named.
const SOUGHT: [f64; 2] = [0.05, 30.0];
/// How near two trims are alike, degrees.
const ALIKE: f64 = 1e-12;

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
        let sound =
            [self.bottom.beam.si(), self.weight.si(), self.speed.si()].iter().all(|v| v.is_finite() && *v > 0.0);
        if !sound || !self.carried().is_finite() || self.carried() <= 0.0 {
            return Err(Outside::NoBalance);
        }
        let flat = prism::flat_lift_for(self.lift_coefficient(), self.bottom.deadrise.get::<degree>());
        let ends = SOUGHT.map(|trim| self.at(trim, flat).moment);
        if !(ends[0] < 0.0 && ends[1] > 0.0) {
            return Err(Outside::NoBalance);
        }
        let trim = root(SOUGHT, ends, ALIKE, |trim| self.at(trim, flat).moment);
        let running = self.at(trim, flat).running;
        within(&running)?;
        Ok(running)
    }

    /// What the bottom carries, N.
    fn carried(&self) -> f64 {
        self.weight.si() - self.beside.lift.si()
    }

    fn pressure_head(&self) -> f64 {
        0.5 * self.water.density.si() * self.speed.si().powi(2)
    }

    fn lift_coefficient(&self) -> f64 {
        self.carried() / (self.pressure_head() * self.bottom.beam.si().powi(2))
    }

    /// Speed over that of gravity on the beam.
    pub fn speed_coefficient(&self) -> f64 {
        self.speed.si() / (standard_gravity().si() * self.bottom.beam.si()).sqrt()
    }

    /// The prism at this trim (degrees) with the flat bottom's lift that it needs.
    fn at(&self, trim: f64, flat: f64) -> At {
        let (beam, deadrise) = (self.bottom.beam.si(), self.bottom.deadrise.get::<degree>());
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
        let (weight, beside) = (self.carried(), &self.beside);
        // Along and square to the keel, exactly: T cos ε = Δ sin τ + Df + D cos τ; N = Δ cos τ − T sin ε − D sin τ.
        let thrust = (weight * sin + friction + beside.drag.si() * cos) / angle.cos();
        let pressure = weight * cos - thrust * angle.sin() - beside.drag.si() * sin;
        let centre = prism::centre_of_pressure(speed, wetted);
        let aft = self.centre_forward.si() - centre * wetted * beam;
        let below = self.centre_above.si() - 0.25 * beam * tan_deadrise;
        let moment = pressure * aft + friction * below - thrust * self.thrust.below.si() + beside.bow_down.si();
        // Keel and chines: half the difference of their wetted lengths on either side of the mean.
        let spread = 0.5 * beam * tan_deadrise / (std::f64::consts::PI * trim.to_radians().tan());
        let drag = weight * sin / cos + friction / cos;
        let force = Force::from_si;
        let residual = moment / (self.weight.si() * beam);
        let running = Running {
            trim: degrees(trim),
            speed_coefficient: Ratio::from_si(speed),
            lift: Ratio::from_si(self.lift_coefficient()),
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
            effective_power: Power::from_si((drag + beside.drag.si()) * self.speed.si()),
            residual: Ratio::from_si(residual),
        };
        At { running, moment: residual }
    }
}

impl ThrustLine {
    /// The line through a point (forward and up, metres) at this angle to the keel, seen from a centre of gravity.
    pub fn through(point: [f64; 2], angle: Angle, centre: [f64; 2]) -> Self {
        let (sin, cos) = angle.si().sin_cos();
        let below = (point[0] - centre[0]) * sin - (point[1] - centre[1]) * cos;
        ThrustLine { angle, below: Length::from_si(below) }
    }
}

/// Density in kg/m³ for the volume that a weight displaces.
pub fn displaced(weight: Force, density: MassDensity) -> f64 {
    weight.si() / (standard_gravity().si() * density.si())
}
