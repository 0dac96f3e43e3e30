//! What an engine hangs and drives into the transom: the laws of its weight and thrust, and the load cases by name.

mod arms;
mod cases;
mod thrust;
mod written;

pub use arms::{Arms, Hang};
pub use cases::{Acting, Case, Engine, FaceLoad, LoadError, Outfit, cases};
pub use thrust::{
    ASTERN_OF_AHEAD, BOUND, BOUNDED_ABOVE, DEADRISE_RANGE, LIFT_GROWS_TO, LOWER_UNIT_CHORD, LOWER_UNIT_DEPTH,
    LOWER_UNIT_LIFT, OVERALL_EFFICIENCY, TRAILER_ACCELERATION, acceleration_at_gravity_centre, disc_thrust,
    heavy_weight, slamming, static_thrust, thrust_at_speed, thrust_in_turn, turn_force,
};
pub use written::written_face_load;
