//! The scene laid flat for the search: vertices, the links that carry them, the pairs to look at.
//! Plain `f64` in metres and radians throughout.

use nalgebra::{Matrix3, Vector3};

use super::body::ConvexBody;
use super::cell::{Cell, LIFT, NEIGHBOUR_TILT, STEER, TILT, VARIABLES};
use super::chain::{Axis, EngineChain, Part};
use super::error::SwingError;
use super::lift::Lift;
use super::scene::{BodyName, NeighbourTilt, Obstacle, Owner, Scene, Side};

/// Poses at which the head's reach from the tilt axis is sampled; a Lipschitz term covers what lies between.
const REACH_SAMPLES: usize = 16;

/// A point of a body and what carries it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Vertex {
    pub at: Vector3<f64>,
    /// Which engine; of no meaning on a bracket.
    pub mover: usize,
    pub part: Part,
    /// Whether its engine's lift carries it.
    pub lifted: bool,
    /// Greatest distance from the tilt axis over the whole steering range; zero if it does not tilt.
    pub tilt_reach: f64,
    /// Distance from the steering axis; zero if it does not steer.
    pub steer_reach: f64,
}

/// A half-space as an obstacle: the free side of `normal · p = offset`.
#[derive(Debug, Clone, Copy)]
pub(super) struct FlatPlane {
    pub normal: Vector3<f64>,
    pub offset: f64,
}

/// A body of the search.
pub(super) struct FlatBody {
    pub name: BodyName,
    pub vertices: Vec<Vertex>,
    pub radius: f64,
    pub plane: Option<FlatPlane>,
    pub moves: bool,
    /// Greatest reach of its vertices from the axis of each variable.
    pub reach: [f64; VARIABLES],
    /// A ball that holds it in the reference pose: a point carried as its first vertex, and a radius.
    pub ball: Option<(Vertex, f64)>,
}

/// The two axes of an engine, and what lifts it.
pub(super) struct Mover {
    pub tilt: Axis,
    pub steer: Axis,
    pub tilt_variable: usize,
    pub lift: Option<Lift>,
}

/// An engine's links in one pose.
#[derive(Debug, Clone, Copy)]
pub(super) struct Frames {
    turn: [Matrix3<f64>; 2],
    move_by: [Vector3<f64>; 2],
    pub tilt_point: Vector3<f64>,
    pub tilt_direction: Vector3<f64>,
    pub steer_point: Vector3<f64>,
    pub steer_direction: Vector3<f64>,
    pub tilt_variable: usize,
    lift: Vector3<f64>,
    /// How the lift moves as its variable grows, and how fast that changes at most.
    pub pace: Vector3<f64>,
    pub bend: f64,
}

impl Frames {
    pub(super) fn carry(&self, vertex: &Vertex) -> Vector3<f64> {
        match vertex.part {
            Part::Bracket if vertex.lifted => vertex.at + self.lift,
            Part::Bracket => vertex.at,
            Part::Swivel => self.turn[0] * vertex.at + self.move_by[0],
            Part::Head => self.turn[1] * vertex.at + self.move_by[1],
        }
    }
}

impl Mover {
    fn frames(&self, pose: &[f64; VARIABLES]) -> Frames {
        let tilt = self.tilt.turn(pose[self.tilt_variable]).into_inner();
        let steer = self.steer.turn(pose[STEER]).into_inner();
        let tilt_point = self.tilt.point().coords;
        let pivot = self.steer.point().coords;
        let tilt_move = tilt_point - tilt * tilt_point;
        let zero = Vector3::zeros;
        let (lift, pace, bend) = self.lift.as_ref().map_or((zero(), zero(), 0.0), |lift| {
            (lift.moved(pose[LIFT]), lift.pace(pose[LIFT]), lift.reach_and_bend()[1])
        });
        let tilt_move = tilt_move + lift;
        let steer_point = tilt * pivot + tilt_move;
        Frames {
            turn: [tilt, tilt * steer],
            move_by: [tilt_move, steer_point - tilt * (steer * pivot)],
            lift,
            pace,
            bend,
            tilt_point: tilt_point + lift,
            tilt_direction: self.tilt.direction().into_inner(),
            steer_point,
            steer_direction: tilt * self.steer.direction().into_inner(),
            tilt_variable: self.tilt_variable,
        }
    }

    fn vertex(&self, at: Vector3<f64>, mover: usize, part: Part, steer: [f64; 2]) -> Vertex {
        let from_tilt = |p: Vector3<f64>| {
            let arm = p - self.tilt.point().coords;
            self.tilt.direction().cross(&arm).norm()
        };
        let arm = at - self.steer.point().coords;
        let (tilt_reach, steer_reach) = match part {
            Part::Bracket => (0.0, 0.0),
            Part::Swivel => (from_tilt(at), 0.0),
            Part::Head => {
                let steer_reach = self.steer.direction().cross(&arm).norm();
                let step = (steer[1] - steer[0]) / REACH_SAMPLES as f64;
                let farthest = (0..=REACH_SAMPLES)
                    .map(|i| {
                        let turn = self.steer.turn(steer[0] + i as f64 * step);
                        from_tilt(self.steer.point().coords + turn * arm)
                    })
                    .fold(0.0, f64::max);
                (farthest + steer_reach * 0.5 * step, steer_reach)
            }
        };
        Vertex { at, mover, part, lifted: self.lift.is_some(), tilt_reach, steer_reach }
    }
}

/// The scene as the search sees it.
pub struct Kernel {
    pub(super) movers: Vec<Mover>,
    pub(super) bodies: Vec<FlatBody>,
    /// The bodies that are looked at together, by their places in the list.
    pub pairs: Vec<(usize, usize)>,
    /// All poses of the scene.
    pub root: Cell,
}

impl Kernel {
    /// Lays a scene flat.
    ///
    /// # Errors
    /// A rod pinned to a neighbour that is not there, or a bad rod; nothing to keep clear of.
    pub fn new(scene: &Scene) -> Result<Self, SwingError> {
        scene.check_rods()?;
        let ends = |range: &super::chain::AngleRange| [range.low().value, range.high().value];
        let (tilt, steer) = (ends(&scene.tilt), ends(&scene.steer));
        let mut movers = vec![mover(&scene.engine, TILT)];
        let mut second_tilt = [0.0; 2];
        if let Some(neighbour) = &scene.neighbour {
            let variable = match neighbour.tilt {
                NeighbourTilt::Together => TILT,
                NeighbourTilt::Independent(range) => {
                    second_tilt = ends(&range);
                    NEIGHBOUR_TILT
                }
            };
            movers.push(mover(&neighbour.chain, variable));
        }
        let lift = lift_range(scene)?;
        let mut kernel = Self {
            movers,
            bodies: Vec::new(),
            pairs: Vec::new(),
            root: Cell::between(
                [tilt[0], second_tilt[0], steer[0], lift[0]],
                [tilt[1], second_tilt[1], steer[1], lift[1]],
            ),
        };
        kernel.lay_out(scene, steer);
        if kernel.pairs.is_empty() {
            return Err(SwingError::NoObstacles);
        }
        Ok(kernel)
    }

    fn lay_out(&mut self, scene: &Scene, steer: [f64; 2]) {
        let own = self.add_chain(&scene.engine, 0, steer);
        let rods = self.bodies.len();
        for rod in &scene.rods {
            let vertices = rod
                .ends
                .iter()
                .map(|end| {
                    let mover = usize::from(end.side == Side::Neighbour);
                    self.movers[mover].vertex(end.at.coords, mover, end.part, steer)
                })
                .collect();
            self.add(Owner::Rod, rod.name.clone(), vertices, rod.radius.value, None);
        }
        let fixed = self.bodies.len();
        for obstacle in &scene.obstacles {
            let name = obstacle.name().to_owned();
            match obstacle {
                Obstacle::Body(body) => {
                    let vertices = body.points().iter().map(|point| still(point.coords)).collect();
                    self.add(Owner::Obstacle, name, vertices, body.radius().value, None);
                }
                Obstacle::HalfSpace(plane) => {
                    let flat = FlatPlane { normal: plane.normal().into_inner(), offset: plane.offset() };
                    self.add(Owner::Obstacle, name, Vec::new(), 0.0, Some(flat));
                }
            }
        }
        let other = self.bodies.len();
        if let Some(neighbour) = &scene.neighbour {
            self.add_chain(&neighbour.chain, 1, steer);
        }
        let all = self.bodies.len();
        for a in own..other {
            let others = match a {
                _ if a < rods => fixed..all,
                _ if a < fixed => fixed..other,
                _ => other..other,
            };
            for b in others {
                let (first, second) = (&self.bodies[a], &self.bodies[b]);
                let apart = first.moves || second.moves;
                if apart && !scene.touching_allowed(&first.name.name, &second.name.name) {
                    self.pairs.push((a, b));
                }
            }
        }
    }

    fn add_chain(&mut self, chain: &EngineChain, mover: usize, steer: [f64; 2]) -> usize {
        let first = self.bodies.len();
        for (part, body) in chain.bodies() {
            let owner = match mover {
                0 => Owner::Engine(*part),
                _ => Owner::Neighbour(*part),
            };
            let vertices = self.vertices(body, mover, *part, steer);
            self.add(owner, body.name().to_owned(), vertices, body.radius().value, None);
        }
        first
    }

    fn vertices(&self, body: &ConvexBody, mover: usize, part: Part, steer: [f64; 2]) -> Vec<Vertex> {
        body.points().iter().map(|p| self.movers[mover].vertex(p.coords, mover, part, steer)).collect()
    }

    fn add(&mut self, owner: Owner, name: String, vertices: Vec<Vertex>, radius: f64, plane: Option<FlatPlane>) {
        let mut reach = [0.0f64; VARIABLES];
        for vertex in &vertices {
            let tilt = self.movers[vertex.mover].tilt_variable;
            reach[tilt] = reach[tilt].max(vertex.tilt_reach);
            reach[STEER] = reach[STEER].max(vertex.steer_reach);
            if let (true, Some(lift)) = (vertex.lifted, &self.movers[vertex.mover].lift) {
                reach[LIFT] = lift.reach_and_bend()[0];
            }
        }
        self.bodies.push(FlatBody {
            name: BodyName { owner, name },
            moves: vertices.iter().any(|v| v.part != Part::Bracket || v.lifted),
            ball: ball_round(&vertices, radius),
            vertices,
            radius,
            plane,
            reach,
        });
    }

    /// The links of every engine in one pose.
    pub(super) fn frames(&self, pose: &[f64; VARIABLES]) -> [Frames; 2] {
        let first = self.movers[0].frames(pose);
        let second = self.movers.get(1).map_or(first, |mover| mover.frames(pose));
        [first, second]
    }
}

fn mover(chain: &EngineChain, tilt_variable: usize) -> Mover {
    Mover { tilt: chain.tilt_axis(), steer: chain.steering_axis(), tilt_variable, lift: chain.lift().copied() }
}

/// A point of what stands fixed in the boat.
fn still(at: Vector3<f64>) -> Vertex {
    Vertex { at, mover: 0, part: Part::Bracket, lifted: false, tilt_reach: 0.0, steer_reach: 0.0 }
}

/// The lift of the one that has one; two that both have one must go up alike.
fn lift_range(scene: &Scene) -> Result<[f64; 2], SwingError> {
    let own = scene.engine.lift();
    match (own, scene.neighbour.as_ref().and_then(|neighbour| neighbour.chain.lift())) {
        (Some(one), Some(other)) if one != other => Err(SwingError::TwoLifts),
        (Some(lift), _) | (None, Some(lift)) => Ok(lift.range()),
        (None, None) => Ok([0.0; 2]),
    }
}

/// None for a plane, and for a rod, whose points do not keep their distance.
fn ball_round(vertices: &[Vertex], radius: f64) -> Option<(Vertex, f64)> {
    let first = vertices.first()?;
    if vertices.iter().any(|v| v.part != first.part || v.mover != first.mover) {
        return None;
    }
    let sum: Vector3<f64> = vertices.iter().map(|v| v.at).sum();
    let at = sum / vertices.len() as f64;
    let farthest = vertices.iter().map(|v| (v.at - at).norm()).fold(0.0, f64::max);
    Some((Vertex { at, ..*first }, farthest + radius))
}
