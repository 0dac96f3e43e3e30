//! Righting arms of a loading, on the side on which she has less of them.

use uom::si::f64::{Angle, Length};

use super::{Float, State};
use crate::physics::float::{FloatError, Load, RightingArm, WaterPlane, righting_arms};
use crate::quantity::{Dimensioned, degrees};

/// Greatest heel at which arms are worked out, and the step, in degrees.
const TO_DEG: u32 = 60;
const STEP_DEG: u32 = 4;
/// Two sides whose arms together differ by less, metres, are alike: rounding.
const ALIKE_M: f64 = 1e-9;

/// To which side she is heeled.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Heeled {
    /// Her starboard side goes down: heels are positive.
    ToStarboard,
    /// Her port side goes down: heels are negative.
    ToPort,
}

impl Heeled {
    /// In words.
    pub fn word(self) -> &'static str {
        match self {
            Heeled::ToStarboard => "to starboard",
            Heeled::ToPort => "to port",
        }
    }

    /// The sign of a heel to this side.
    fn sign(self) -> f64 {
        match self {
            Heeled::ToStarboard => 1.0,
            Heeled::ToPort => -1.0,
        }
    }
}

/// The righting arm at one heel.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Arm {
    /// Heel, to whichever side it is.
    pub heel: Angle,
    /// Righting arm; below zero it heels her further.
    pub arm: Length,
    /// Trim that she takes there.
    pub trim: Angle,
    /// The water there.
    pub plane: WaterPlane,
    /// Whether sinkage and trim came to balance.
    pub balanced: bool,
}

impl Arm {
    fn of(arm: &RightingArm, side: Heeled) -> Self {
        let sign = side.sign();
        Arm { heel: sign * arm.heel, arm: sign * arm.arm, trim: arm.trim, plane: arm.plane, balanced: arm.balanced }
    }
}

impl Float {
    /// Righting arms of this state from upright to a large heel; nothing where she sinks.
    pub fn arms(&self, state: &State, side: Heeled) -> Vec<Arm> {
        let arms = self.arms_at(state, &heels(), side).unwrap_or_default();
        arms.into_iter().filter(|arm| arm.balanced).collect()
    }

    /// The side on which she has less to right her, counted as far as her lowest edge stays above water; starboard
    /// where both are alike.
    pub fn worse_side(&self, state: &State) -> Heeled {
        let sum = |side| -> f64 {
            let arms = self.arms(state, side);
            let dry = |arm: &&Arm| self.lowest_edge(&arm.plane).is_none_or(|(height, _)| height.si() > 0.0);
            arms.iter().take_while(dry).map(|arm| arm.arm.si()).sum()
        };
        if sum(Heeled::ToPort) < sum(Heeled::ToStarboard) - ALIKE_M { Heeled::ToPort } else { Heeled::ToStarboard }
    }

    /// Righting arms at these heels to this side, free surfaces taken as a rise of the centre.
    pub(super) fn arms_at(&self, state: &State, heels: &[Angle], side: Heeled) -> Result<Vec<Arm>, FloatError> {
        let mut load = Load { mass: state.total.mass, centre: state.total.centre, water: self.water };
        load.centre.z += state.free_surface.transverse.si();
        let heels: Vec<Angle> = heels.iter().map(|heel| side.sign() * *heel).collect();
        let arms = righting_arms(self.hull(state.side), &load, &heels)?;
        Ok(arms.iter().map(|arm| Arm::of(arm, side)).collect())
    }
}

fn heels() -> Vec<Angle> {
    (0..=TO_DEG / STEP_DEG).map(|i| degrees(f64::from(i * STEP_DEG))).collect()
}
