//! An engine by its plate: what it gives at full throttle over its speeds, and the fuel that it burns.

use uom::si::f64::{AngularVelocity, Power, Ratio, VolumeRate};

use crate::quantity::Dimensioned;
use crate::working::Figure;

/// How an engine's torque and thirst run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// Torque nearly level over its speeds.
    FourStroke,
    /// Peaky: torque falls away below rated speed; more of its fuel goes into friction and pumping.
    TwoStroke,
    /// Rated torque up to rated speed, rated power past it; what it takes goes with its power alone.
    Electric,
}

/// An engine by its plate.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Engine {
    /// What its torque and thirst go by.
    pub kind: Kind,
    /// Rated power at the propeller shaft.
    pub power: Power,
    /// Speed at rated power.
    pub rated: AngularVelocity,
    /// Speed at which its limiter holds it.
    pub most: AngularVelocity,
    /// What age has left of its power.
    pub left: Ratio,
    /// Fuel at full throttle and rated speed; none for an electric one.
    pub fuel: VolumeRate,
}

/// Rise and fall of the torque below rated speed over what is missing to it, `1 + a (1 − x) − b (1 − x)²`. Common practice, no
/// source: a four-stroke pulls nearly level, a two-stroke is peaky.
const FOUR_STROKE: [f64; 2] = [0.25, 0.50];
const TWO_STROKE: [f64; 2] = [0.15, 0.80];
/// What an engine burns for its own friction and pumping at rated speed over what it burns for its power: with the square of its
/// speed (Willans' line). Common practice, no source.
const FOUR_STROKE_IDLE: f64 = 0.15;
const TWO_STROKE_IDLE: f64 = 0.25;
/// How far above its band an engine's limiter holds it. Common practice, no source.
pub const LIMITER: f64 = 1.03;

/// Fuel of an outboard at full throttle, US gallons an hour for a horsepower. Common practice, no source.
pub const FULL_THROTTLE_GAL_HP_H: f64 = 0.1;
/// Fuel of an older two-stroke over that. Common practice, no source: a fifth more.
pub const TWO_STROKE_MORE: f64 = 1.2;

/// Power left of an engine of so many hours: a hundredth for every 500 h, at most a tenth. Common practice, no source.
const HOURS_A_HUNDREDTH: f64 = 500.0;
const MOST_LOST_TO_HOURS: f64 = 0.10;
/// Power lost over compression lost, of the weakest cylinder. Common practice, no source.
const POWER_OF_COMPRESSION: f64 = 0.7;

/// Torque at full throttle over rated torque, at this part of rated speed.
pub fn torque<N: Figure>(kind: Kind, speed: N) -> N {
    let n = N::number;
    let [a, b] = match kind {
        Kind::FourStroke => FOUR_STROKE,
        Kind::TwoStroke => TWO_STROKE,
        Kind::Electric => return n(1.0),
    };
    let missing = n(1.0) - speed;
    n(1.0) + n(a) * missing.clone() - n(b) * missing.power(2.0)
}

/// Fuel over that at rated power and speed, at these parts of rated power and rated speed.
pub fn fuel<N: Figure>(kind: Kind, power: N, speed: N) -> N {
    let n = N::number;
    let idle = match kind {
        Kind::FourStroke => FOUR_STROKE_IDLE,
        Kind::TwoStroke => TWO_STROKE_IDLE,
        Kind::Electric => return power,
    };
    (power + n(idle) * speed.power(2.0)) / n(1.0 + idle)
}

/// What hours, and the compression of the weakest cylinder over that of a new engine, leave of its power: the worse of both.
pub fn left_by_age(hours: Option<f64>, compression: Option<Ratio>) -> Ratio {
    let by_hours = 1.0 - (0.01 * hours.unwrap_or(0.0).max(0.0) / HOURS_A_HUNDREDTH).min(MOST_LOST_TO_HOURS);
    let by_compression =
        1.0 - POWER_OF_COMPRESSION * (1.0 - compression.map_or(1.0, |ratio| ratio.si())).clamp(0.0, 1.0);
    Ratio::from_si(by_hours.min(by_compression))
}

impl Engine {
    /// Power at full throttle at this speed, W; speed in rad/s. Past its limiter it gives none.
    pub fn full_throttle(&self, speed: f64) -> f64 {
        let part = speed / self.rated.si();
        if speed > self.most.si() {
            return 0.0;
        }
        let torque = match self.kind {
            // Past rated speed an electric engine holds its power, below it its torque.
            Kind::Electric if part > 1.0 => 1.0 / part,
            // Far below its band the form would fall through nothing.
            kind => torque(kind, part).max(LEAST_TORQUE),
        };
        self.left.si() * self.power.si() * part * torque
    }

    /// Fuel at this power (W) and speed (rad/s), m³/s.
    pub fn fuel_at(&self, power: f64, speed: f64) -> f64 {
        // An old engine burns for the power that it was built for.
        let rated = self.left.si() * self.power.si();
        self.fuel.si() * fuel(self.kind, power / rated, speed / self.rated.si())
    }
}

/// Torque over rated that an engine has at any speed. Common practice, no source.
const LEAST_TORQUE: f64 = 0.3;
