//! Righting arms of a loading.

use uom::si::f64::Angle;

use super::{Float, State};
use crate::physics::float::{FloatError, Load, RightingArm, righting_arms};
use crate::quantity::{Dimensioned, degrees};

/// Greatest heel at which arms are worked out, and the step, in degrees.
const TO_DEG: u32 = 60;
const STEP_DEG: u32 = 4;

impl Float {
    /// Righting arms of this state from upright to a large heel; nothing where she sinks.
    pub fn arms(&self, state: &State) -> Vec<RightingArm> {
        let heels: Vec<Angle> = (0..=TO_DEG / STEP_DEG).map(|i| degrees(f64::from(i * STEP_DEG))).collect();
        let arms = self.arms_at(state, &heels).unwrap_or_default();
        arms.into_iter().filter(|arm| arm.balanced).collect()
    }

    /// Righting arms at these heels, free surfaces taken as a rise of the centre.
    pub(super) fn arms_at(&self, state: &State, heels: &[Angle]) -> Result<Vec<RightingArm>, FloatError> {
        let mut load = Load { mass: state.total.mass, centre: state.total.centre, water: self.water };
        load.centre.z += state.free_surface.transverse.si();
        righting_arms(self.hull(state.side), &load, heels)
    }
}
