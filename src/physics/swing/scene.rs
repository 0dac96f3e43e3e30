//! What is asked: an engine, how far it may swing, and what it must keep clear of.

use nalgebra::{Point3, Unit, Vector3};
use uom::si::f64::{Angle, Length};

use super::body::{ConvexBody, check_point};
use super::chain::{AngleRange, EngineChain, Part};
use super::error::SwingError;

/// Something fixed in boat axes.
#[derive(Debug, Clone, PartialEq)]
pub enum Obstacle {
    /// A convex body: a wall of the well, a seat, a ladder.
    Body(ConvexBody),
    /// All space below a plane: the ground, the water, the face of a transom.
    HalfSpace(Plane),
}

impl Obstacle {
    /// What findings call it.
    pub fn name(&self) -> &str {
        match self {
            Obstacle::Body(body) => body.name(),
            Obstacle::HalfSpace(plane) => plane.name(),
        }
    }
}

/// A plane with a free side.
#[derive(Debug, Clone, PartialEq)]
pub struct Plane {
    name: String,
    normal: Unit<Vector3<f64>>,
    offset: f64,
}

impl Plane {
    /// The plane through `point` (metres); `free_side` points out of what it bounds: up for ground or water.
    ///
    /// # Errors
    /// A direction of no length, a number that is not finite, a point absurdly far away.
    pub fn new(name: impl Into<String>, point: Point3<f64>, free_side: Vector3<f64>) -> Result<Self, SwingError> {
        let name = name.into();
        let axis = super::chain::Axis::new(&format!("the plane {name}"), point, free_side)?;
        let normal = axis.direction();
        Ok(Self { name, normal, offset: normal.dot(&point.coords) })
    }

    /// What findings call it.
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Unit vector toward the free side.
    pub fn normal(&self) -> Unit<Vector3<f64>> {
        self.normal
    }

    /// Height of a point (metres) above it, negative behind it.
    pub fn height(&self, point: &Point3<f64>) -> Length {
        super::body::metres(self.normal.dot(&point.coords) - self.offset)
    }

    pub(super) fn offset(&self) -> f64 {
        self.offset
    }
}

/// How a neighbouring engine tilts while this one does. It always steers with it, by the same angle,
/// as a tie bar makes it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum NeighbourTilt {
    /// Both at the same tilt.
    Together,
    /// Each anywhere in its own range; one angle only for an engine left down.
    Independent(AngleRange),
}

/// Another engine on the same boat.
#[derive(Debug, Clone, PartialEq)]
pub struct Neighbour {
    /// Its chain, where it stands.
    pub chain: EngineChain,
    /// How it tilts.
    pub tilt: NeighbourTilt,
}

/// Which engine an end of a rod is pinned to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Side {
    /// The engine asked about.
    Own,
    /// Its neighbour.
    Neighbour,
}

/// One end of a rod: a pin on a part of an engine, in the reference pose, metres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pin {
    /// Which engine.
    pub side: Side,
    /// Which part of it.
    pub part: Part,
    /// Where, in boat axes, metres, reference pose.
    pub at: Point3<f64>,
}

/// A straight round rod between two pins: a tie bar, a drag link, the rod of a steering cylinder. It
/// is looked at against obstacles, not against the engines that it is pinned to.
#[derive(Debug, Clone, PartialEq)]
pub struct Rod {
    /// What findings call it.
    pub name: String,
    /// Its ends.
    pub ends: [Pin; 2],
    /// Half its thickness.
    pub radius: Length,
}

/// An engine, its ranges and everything that it must keep clear of.
#[derive(Debug, Clone, PartialEq)]
pub struct Scene {
    /// The engine.
    pub engine: EngineChain,
    /// Its range of tilt, from its reference pose.
    pub tilt: AngleRange,
    /// Its range of steering.
    pub steer: AngleRange,
    /// Everything fixed.
    pub obstacles: Vec<Obstacle>,
    /// Another engine, if any.
    pub neighbour: Option<Neighbour>,
    /// Rods that move with the engines.
    pub rods: Vec<Rod>,
    /// Pairs by name that may touch, such as a cylinder and the bracket that carries it; either order.
    pub may_touch: Vec<(String, String)>,
}

impl Scene {
    /// An engine with nothing round it yet; push obstacles, a neighbour, rods.
    pub fn new(engine: EngineChain, tilt: AngleRange, steer: AngleRange) -> Self {
        Self { engine, tilt, steer, obstacles: Vec::new(), neighbour: None, rods: Vec::new(), may_touch: Vec::new() }
    }

    pub(super) fn touching_allowed(&self, a: &str, b: &str) -> bool {
        self.may_touch.iter().any(|(x, y)| (x == a && y == b) || (x == b && y == a))
    }

    pub(super) fn check_rods(&self) -> Result<(), SwingError> {
        for rod in &self.rods {
            for end in &rod.ends {
                check_point(&rod.name, &end.at)?;
                if end.side == Side::Neighbour && self.neighbour.is_none() {
                    return Err(SwingError::NoNeighbour { what: rod.name.clone() });
                }
            }
            let [a, b] = &rod.ends;
            ConvexBody::capsule(rod.name.clone(), a.at, b.at, rod.radius)?;
        }
        Ok(())
    }
}

/// Where the engines stand.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pose {
    /// Tilt of the engine from its reference pose.
    pub tilt: Angle,
    /// Tilt of the neighbour, if there is one.
    pub neighbour_tilt: Option<Angle>,
    /// Steering angle of all.
    pub steer: Angle,
    /// How high the lifting bracket stands above the bottom of its travel, if there is one.
    pub lift: Option<Length>,
}

/// What a body belongs to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Owner {
    /// A part of the engine.
    Engine(Part),
    /// A part of its neighbour.
    Neighbour(Part),
    /// A rod pinned to engines.
    Rod,
    /// Something fixed in the boat.
    Obstacle,
}

/// One of the two bodies of a finding.
#[derive(Debug, Clone, PartialEq)]
pub struct BodyName {
    /// What it belongs to.
    pub owner: Owner,
    /// Its name.
    pub name: String,
}
