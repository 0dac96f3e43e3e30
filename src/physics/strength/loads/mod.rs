//! What an engine hangs and drives into the transom: the laws of its weight and thrust, and the load cases by name.

mod cases;
mod thrust;

pub use cases::{Case, Engine, FaceLoad, LoadError, Outfit, both, cases};
pub use thrust::{
    ASTERN_OF_AHEAD, DEADRISE_RANGE, DISC_EFFICIENCY, OVERALL_EFFICIENCY, STEERING_FORCE_FACTOR, TRAILER_ACCELERATION,
    acceleration_at_gravity_centre, static_thrust, thrust_at_speed, turn_force,
};
