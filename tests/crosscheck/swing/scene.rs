//! Reads the scenes that the Python side reads too.

use nalgebra::{Point3, Vector3};
use serde::Deserialize;
use sternknee::physics::swing::{
    AngleRange, Axis, ConvexBody, EngineChain, Neighbour, NeighbourTilt, Obstacle, Part, Scene, SwingError,
};
use uom::si::angle::radian;
use uom::si::f64::Angle;

#[derive(Deserialize)]
pub struct Line {
    point: [f64; 3],
    direction: [f64; 3],
}

#[derive(Deserialize)]
pub struct Body {
    #[serde(default)]
    part: String,
    name: String,
    points: Vec<[f64; 3]>,
}

#[derive(Deserialize)]
pub struct Engine {
    tilt_axis: Line,
    steering_axis: Line,
    bodies: Vec<Body>,
}

#[derive(Deserialize)]
#[serde(untagged)]
pub enum OtherTilt {
    Range([f64; 2]),
    Together(String),
}

#[derive(Deserialize)]
pub struct Other {
    shift: [f64; 3],
    tilt: OtherTilt,
}

#[derive(Deserialize)]
pub struct Case {
    pub name: String,
    tilt: [f64; 2],
    steer: [f64; 2],
    engine: Engine,
    obstacles: Vec<Body>,
    neighbour: Option<Other>,
}

fn range(ends: [f64; 2]) -> Result<AngleRange, SwingError> {
    AngleRange::new("the range", Angle::new::<radian>(ends[0]), Angle::new::<radian>(ends[1]))
}

fn body(given: &Body) -> Result<ConvexBody, SwingError> {
    let points: Vec<_> = given.points.iter().map(|p| Point3::from(*p)).collect();
    ConvexBody::hull(given.name.clone(), &points)
}

fn axis(name: &str, line: &Line) -> Result<Axis, SwingError> {
    Axis::new(name, Point3::from(line.point), Vector3::from(line.direction))
}

impl Case {
    pub fn scene(&self) -> Result<Scene, SwingError> {
        let mut bodies = Vec::new();
        for given in &self.engine.bodies {
            let part = if given.part == "swivel" { Part::Swivel } else { Part::Head };
            bodies.push((part, body(given)?));
        }
        let chain = EngineChain::new(
            "engine",
            axis("the tilt axis", &self.engine.tilt_axis)?,
            axis("the steering axis", &self.engine.steering_axis)?,
            bodies,
        )?;
        let mut scene = Scene::new(chain.clone(), range(self.tilt)?, range(self.steer)?);
        for given in &self.obstacles {
            scene.obstacles.push(Obstacle::Body(body(given)?));
        }
        if let Some(other) = &self.neighbour {
            let tilt = match &other.tilt {
                OtherTilt::Range(ends) => NeighbourTilt::Independent(range(*ends)?),
                OtherTilt::Together(word) => {
                    assert_eq!(word, "together");
                    NeighbourTilt::Together
                }
            };
            scene.neighbour =
                Some(Neighbour { chain: chain.shifted(Vector3::from(other.shift)).named("neighbour"), tilt });
        }
        Ok(scene)
    }
}
