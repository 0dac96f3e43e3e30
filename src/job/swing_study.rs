//! A swing question at the desk: bodies, axes, ranges and obstacles outright.
//!
//! Points are (forward, to port, up) in boat axes, the engine in its reference pose: tilt and steering
//! both zero.

use serde::Deserialize;
use uom::si::f64::{Angle, Length};

use super::specs::Span;
use crate::quantity::Reading;

/// Forward, to port, up.
pub type Point = (Reading<Length>, Reading<Length>, Reading<Length>);

/// The whole question.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SwingStudy {
    /// The axis that it tilts about.
    pub tilt_axis: StudyAxis,
    /// The axis that it steers about, carried by what tilts; upright through the tilt axis's point
    /// where left out.
    #[serde(default)]
    pub steering_axis: Option<StudyAxis>,
    /// Range of tilt; positive lifts the gearcase where the axis points to port.
    pub tilt: Span<Angle>,
    /// Range of steering; amidships only where left out.
    #[serde(default)]
    pub steer: Option<Span<Angle>>,
    /// What moves.
    pub bodies: Vec<StudyBody>,
    /// What does not.
    #[serde(default)]
    pub obstacles: Vec<StudyObstacle>,
    /// A second engine of the same bodies.
    #[serde(default)]
    pub neighbour: Option<StudyNeighbour>,
    /// Distance to keep, where there is one.
    #[serde(default)]
    pub margin: Option<Reading<Length>>,
    /// Greatest gap between what is certified and what is attained; 0.5 mm where left out.
    #[serde(default)]
    pub gap: Option<Reading<Length>>,
}

/// A line.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct StudyAxis {
    /// A point on it.
    pub through: Point,
    /// Its direction: forward, to port, up; any length.
    pub along: (f64, f64, f64),
}

/// A convex body that moves.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct StudyBody {
    /// What it is called.
    pub name: String,
    /// What it is fixed to.
    pub on: StudyPart,
    /// Its shape.
    pub shape: StudyShape,
}

/// The links of the chain.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum StudyPart {
    /// Stands still.
    Bracket,
    /// Tilts.
    Swivel,
    /// Tilts and steers.
    Head,
}

/// A convex shape.
#[derive(Clone, Debug, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum StudyShape {
    /// A box between two opposite corners.
    Cuboid {
        /// One corner.
        from: Point,
        /// The opposite one.
        to: Point,
    },
    /// A side profile of (forward, up) corners, carried from one place across to another.
    Profile {
        /// Its corners in turn.
        corners: Vec<(Reading<Length>, Reading<Length>)>,
        /// From here, to port…
        from: Reading<Length>,
        /// …to here.
        to: Reading<Length>,
    },
    /// The hull of points, grown by a radius: a point with a radius is a ball, two are a rod.
    Hull {
        /// The points.
        points: Vec<Point>,
        /// The radius; none where left out.
        #[serde(default)]
        radius: Option<Reading<Length>>,
    },
}

/// Something fixed.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct StudyObstacle {
    /// What it is called.
    pub name: String,
    /// Its shape.
    pub shape: ObstacleShape,
}

/// The shape of something fixed.
#[derive(Clone, Debug, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum ObstacleShape {
    /// A convex body.
    Body(StudyShape),
    /// All that lies behind a plane.
    Behind {
        /// A point of the plane.
        through: Point,
        /// Direction toward the free side.
        free_side: (f64, f64, f64),
    },
}

/// A second engine of the same bodies.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct StudyNeighbour {
    /// Where it stands from the first.
    pub moved_by: Point,
    /// Its own range of tilt; tilting together with the first where left out.
    #[serde(default)]
    pub tilt: Option<Span<Angle>>,
}
