//! How an engine swings: clearance over tilt and steering, with a guaranteed bound.
//!
//! **Axes.** Boat axes, metres: x forward, y to port, z up. Bodies are described in the engine's *reference
//! pose*, tilt and steering both zero; a fitted engine's is upright, its driveshaft vertical. Turns are
//! right-handed: with the tilt axis pointing to port, positive tilt lifts the gearcase and brings the cowl
//! forward; with the steering axis pointing up, positive steering turns the head anticlockwise seen from above, so
//! that the propeller swings to starboard and the cowl's forward edge to port: the boat turns to starboard.
//!
//! **Chain.** [`EngineChain`]: the clamp bracket stands still, the swivel tilts, the head also steers about an
//! axis that the swivel carries. A chain on a lifting bracket is moved as a whole by its [`Lift`]. Every part has named [`ConvexBody`]s. [`fit_engine`] draws a chain from a
//! mounting sheet and gives its protrusion and height at full tilt back exactly. A tie bar or cylinder rod between
//! two pins is a [`Rod`].
//!
//! **Questions.** All over *every* pose of the ranges, not over samples:
//! - [`least_distance`] and [`least_distance_to_each`]: the least signed distance, certified within a gap, where, and
//!   between what.
//! - [`permitted_range`]: how far tilt or steering may go with a margin kept.
//! - [`permitted_lift`]: how high a lifting bracket may go with a margin kept.
//! - [`least_shift`]: how far the engines must go aft, or up, for the whole range to keep a margin.
//! - [`height_above`]: the lowest point above a plane in one pose, exact.
//!
//! **What is certified.** The signed distance of two convex bodies is the greatest gap between them along any
//! direction; negative when they overlap. Branch and bound keeps a lower bound that holds at every
//! pose, and a distance that is attained at one. Library distances are used only as hints of a direction: each is turned
//! into a bound by support functions, so that its error is part of the gap. Under contact the pose is a certain
//! contact; the depth reported there is what parts the bodies along the reported direction, and nowhere is any overlap
//! deeper than the lower bound says. A search that runs out of boxes says [`Outcome::GapNotReached`].
//!
//! ```
//! use nalgebra::{Point3, Vector3};
//! use sternknee::physics::swing::*;
//! use uom::si::{angle::degree, f64::{Angle, Length}, length::millimeter};
//!
//! # fn main() -> Result<(), SwingError> {
//! let tube = Axis::new("the tilt tube", Point3::new(0.0, 0.0, 0.7), Vector3::y())?;
//! let pivot = Axis::new("the steering axis", Point3::new(-0.1, 0.0, 0.4), Vector3::z())?;
//! let swivel = ConvexBody::cuboid("swivel", Point3::new(-0.15, -0.1, 0.2), Point3::new(0.05, 0.1, 0.75))?;
//! let cowl = ConvexBody::cuboid("cowl", Point3::new(-0.6, -0.25, 0.8), Point3::new(0.05, 0.25, 1.4))?;
//! let engine = EngineChain::new("engine", tube, pivot, vec![(Part::Swivel, swivel), (Part::Head, cowl)])?;
//!
//! let deg = Angle::new::<degree>;
//! let tilt = AngleRange::new("the tilt range", deg(-4.0), deg(68.0))?;
//! let steer = AngleRange::new("the steering range", deg(-30.0), deg(30.0))?;
//! let mut scene = Scene::new(engine, tilt, steer);
//! let wall = ConvexBody::cuboid("well, forward wall", Point3::new(0.74, -0.9, 0.4), Point3::new(0.78, 0.9, 1.1))?;
//! scene.obstacles.push(Obstacle::Body(wall));
//!
//! let found = least_distance(&scene, &Effort::default())?;
//! assert!(found.contact_depth().is_none());
//! assert!(found.gap() <= Length::new::<millimeter>(0.5));
//!
//! let margin = Length::new::<millimeter>(60.0);
//! let limit = permitted_range(&scene, Swing::Tilt, margin, &Effort::default())?;
//! assert!(!limit.whole_range && limit.up_to.is_some());
//! # Ok(())
//! # }
//! ```

mod body;
pub mod bound;
pub mod called;
pub mod cell;
mod chain;
mod clear;
pub mod distance;
mod error;
pub mod followed;
mod heights;
pub mod kernel;
mod lift;
mod mounting_sheet;
mod profile;
mod range;
mod scene;
mod search;
mod sheet_bodies;
mod sheet_fit;
mod shift;
mod waiting;

pub use body::ConvexBody;
pub use chain::{AngleRange, Axis, EngineChain, Part, Stood};
pub use clear::{PlaneClearance, height_above};
pub use error::SwingError;
pub use lift::Lift;
pub use mounting_sheet::MountingSheet;
pub use range::{LiftLimit, Obstruction, Swing, SwingLimit, permitted_lift, permitted_range};
pub use scene::{BodyName, Neighbour, NeighbourTilt, Obstacle, Owner, Pin, Plane, Pose, Rod, Scene, Side};
pub use search::{
    Clearance, Effort, Outcome, least_distance, least_distance_below, least_distance_to_each, nearer_than,
};
pub use sheet_bodies::{End, whence};
pub use sheet_fit::{FittedEngine, Mounting, Solved, fit_engine, reach_from};
pub use shift::{Move, Shift, least_shift};
