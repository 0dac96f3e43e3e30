//! Righting arms over heel, free to sink and to trim.

use nalgebra::Vector3;
use uom::si::f64::{Angle, Length};
use uom::si::length::meter;

use super::descent::{BALANCED_WITHIN_ROUNDING, Problem};
use super::equilibrium::{Load, problem};
use super::error::FloatError;
use super::hull::Hull;
use super::water::{Attitude, WaterPlane};

/// The righting arm at one heel.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RightingArm {
    /// Heel, positive to starboard.
    pub heel: Angle,
    /// GZ: horizontal distance between the lines of weight and buoyancy; positive turns her to port, so
    /// with heel to starboard positive is righting.
    pub arm: Length,
    /// Trim that she takes at this heel.
    pub trim: Angle,
    /// The water plane there; gives the height of any point.
    pub plane: WaterPlane,
    /// Whether sinkage and trim came to balance; where not, the arm is that of the last step.
    pub balanced: bool,
}

/// Righting arms at each heel, with sinkage and trim in balance. Free surface is taken by raising the
/// load's centre of gravity first ([`free_surface_rise`](super::free_surface_rise)).
///
/// # Errors
/// [`FloatError`] where an input is not finite or not above zero, or the load sinks her.
pub fn righting_arms(hull: &Hull, load: &Load, heels: &[Angle]) -> Result<Vec<RightingArm>, FloatError> {
    let problem = Problem { heel_held: true, ..problem(hull, load)? };
    let mut attitude = Attitude::default();
    let mut arms = Vec::with_capacity(heels.len());
    for &heel in heels {
        // Each heel starts from the trim of the one before, which is near.
        let start = WaterPlane::at(Attitude { heel, ..attitude })?;
        let descent = problem.descend(problem.sink(start, 0.05, 30));
        let state = &descent.state;
        let centre: Vector3<f64> =
            if state.sums.volume > 0.0 { state.sums.moment / state.sums.volume } else { Vector3::zeros() };
        let arm = state.blade.port.dot(&(problem.centre - centre));
        attitude = state.plane.attitude();
        arms.push(RightingArm {
            heel,
            arm: Length::new::<meter>(arm),
            trim: attitude.trim,
            plane: state.plane,
            balanced: state.slope.norm() <= BALANCED_WITHIN_ROUNDING,
        });
    }
    Ok(arms)
}
