//! A swing question at the desk: bodies, axes, ranges and obstacles outright.
//!
//! Points are (forward, to port, up) in boat axes, the engine in its reference pose: tilt and steering
//! both zero.

use uom::si::f64::{Angle, Length};

use super::bounds;
use super::specs::Span;
use crate::quantity::Reading;
use crate::reading::*;

/// Forward, to port, up.
pub type Point = (Reading<Length>, Reading<Length>, Reading<Length>);

things! {
    /// The whole question.
    pub struct SwingStudy [whole] {
        /// The axis that it tilts about.
        tilt_axis: StudyAxis,
        /// The axis that it steers about, carried by what tilts; upright through the tilt axis's point
        /// where left out.
        [default] steering_axis: Option<StudyAxis>,
        /// Range of tilt; positive lifts the gearcase where the axis points to port.
        tilt: Span<Angle> = called("range of tilt").within(bounds::SWING_ANGLE),
        /// Range of steering; amidships only where left out.
        [default] steer: Option<Span<Angle>> = called("range of steering").within(bounds::SWING_ANGLE),
        /// What moves.
        bodies: Vec<StudyBody>,
        /// What does not.
        [default] obstacles: Vec<StudyObstacle>,
        /// A second engine of the same bodies.
        [default] neighbour: Option<StudyNeighbour>,
        /// Distance to keep, where there is one.
        [default] margin: Option<Reading<Length>> = called("distance to keep").within(bounds::STUDY_MARGIN),
        /// Greatest gap between what is certified and what is attained; 0.5 mm where left out.
        [default] gap: Option<Reading<Length>> = called("greatest gap").within(bounds::STUDY_GAP),
    }
}

things! {
    /// A line.
    pub struct StudyAxis [whole] {
        /// A point on it.
        through: Point = called("point on the axis").within(bounds::SWING_PLACE),
        /// Its direction: forward, to port, up; any length.
        along: (f64, f64, f64),
    }
}

things! {
    /// A convex body that moves.
    pub struct StudyBody [whole] {
        /// What it is called.
        name: String = label(),
        /// What it is fixed to.
        on: StudyPart,
        /// Its shape.
        shape: StudyShape,
    }
}

words! {
    /// The links of the chain.
    pub enum StudyPart {
        /// Stands still.
        Bracket = "bracket";
        /// Tilts.
        Swivel = "swivel";
        /// Tilts and steers.
        Head = "head";
    }
}

choices! {
    /// A convex shape.
    pub enum StudyShape {
        /// A box between two opposite corners.
        Cuboid = "cuboid" {
            /// One corner.
            from: Point = called("from").within(bounds::SWING_PLACE),
            /// The opposite one.
            to: Point = called("to").within(bounds::SWING_PLACE),
        };
        /// A side profile of (forward, up) corners, carried from one place across to another.
        Profile = "profile" {
            /// Its corners in turn.
            corners: Vec<(Reading<Length>, Reading<Length>)> = called("corner").within(bounds::SWING_PLACE),
            /// From here, to port…
            from: Reading<Length> = called("from").within(bounds::SWING_PLACE),
            /// …to here.
            to: Reading<Length> = called("to").within(bounds::SWING_PLACE),
        };
        /// The hull of points, grown by a radius: a point with a radius is a ball, two are a rod.
        Hull = "hull" {
            /// The points.
            points: Vec<Point> = called("point").within(bounds::SWING_PLACE),
            /// The radius; none where left out.
            [default] radius: Option<Reading<Length>> = called("radius").within(bounds::SWING_RADIUS),
        };
    }
}

things! {
    /// Something fixed.
    pub struct StudyObstacle [whole] {
        /// What it is called.
        name: String = label(),
        /// Its shape.
        shape: ObstacleShape,
    }
}

choices! {
    /// The shape of something fixed.
    pub enum ObstacleShape {
        /// A convex body.
        Body = "body" (StudyShape);
        /// All that lies behind a plane.
        Behind = "behind" {
            /// A point of the plane.
            through: Point = called("point of the plane").within(bounds::SWING_PLACE),
            /// Direction toward the free side.
            free_side: (f64, f64, f64),
        };
    }
}

things! {
    /// A second engine of the same bodies.
    pub struct StudyNeighbour [whole] {
        /// Where it stands from the first.
        moved_by: Point = called("from the first").within(bounds::SWING_PLACE),
        /// Its own range of tilt; tilting together with the first where left out.
        [default] tilt: Option<Span<Angle>> = called("its range of tilt").within(bounds::SWING_ANGLE),
    }
}
