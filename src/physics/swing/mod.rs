//! How an engine swings: clearance over tilt and steering, with a guaranteed bound.

mod body;
mod bound;
mod chain;
mod clear;
mod distance;
mod error;
mod kernel;
mod profile;
mod range;
mod scene;
mod search;
mod sheet_bodies;
mod sheet_fit;
mod shift;

pub use body::ConvexBody;
pub use chain::{AngleRange, Axis, EngineChain, Part};
pub use clear::{PlaneClearance, height_above};
pub use error::SwingError;
pub use range::{Obstruction, Swing, SwingLimit, permitted_range};
pub use scene::{
    BodyName, Neighbour, NeighbourTilt, Obstacle, Owner, Pin, Plane, Pose, Rod, Scene, Side,
};
pub use search::{Clearance, Effort, Outcome, least_distance};
pub use sheet_fit::{FittedEngine, Mounting, MountingSheet, Solved, fit_engine, reach_from};
pub use shift::{Move, Shift, least_shift};
