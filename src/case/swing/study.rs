//! A swing question given outright: put together, and answered.

use nalgebra::{Point3, Vector3};
use uom::si::f64::Length;

use super::swept::Swept;
use super::{Answer, effort};
use crate::job::{ObstacleShape, Point, Span, StudyAxis, StudyPart, StudyShape, SwingStudy};
use crate::physics::swing::{
    AngleRange, Axis, ConvexBody, Effort, EngineChain, Neighbour, NeighbourTilt, Obstacle, Part, Plane, Scene,
    SwingError, least_distance,
};
use crate::quantity::{degrees, say};
use crate::reading::Absent;
use crate::rig::Rig;

/// What a question given outright was, and its answer.
#[derive(Clone, Debug)]
pub struct Question {
    /// The sweep that answers it.
    pub swept: Swept,
    /// The distance to keep, where one was given.
    pub margin: Option<Length>,
}

/// What is wrong with a question given outright, and where.
#[derive(Clone, Debug, PartialEq)]
pub struct StudyFault {
    /// The entry of the job.
    pub path: String,
    /// What is wrong, and what would do.
    pub error: SwingError,
}

/// Everything that is wrong with the rig's question, where there is one. Its pieces are looked at one by one;
/// the chain only where all of them are sound.
pub fn study_faults(rig: &Rig) -> Vec<StudyFault> {
    match rig.job.swing_study.as_ref().map(scene) {
        Some(Err(faults)) => faults,
        Some(Ok(_)) | None => Vec::new(),
    }
}

/// The answer.
pub(super) fn answer(study: &SwingStudy) -> Answer<Question> {
    let scene = scene(study).map_err(|faults| {
        let all: Vec<String> = faults.iter().map(|fault| format!("{}: {}", fault.path, fault.error)).collect();
        Absent::CannotBe(say!("The question cannot be put: {}.", all.join("; ")))
    })?;
    let wanted = Effort { gap: study.gap.as_ref().map_or(effort().gap, |gap| gap.value), ..effort() };
    let clearance = least_distance(&scene, &wanted)
        .map_err(|error| Absent::CannotBe(say!("The question cannot be put: {}.", format!("{error}"))))?;
    let margin = study.margin.as_ref().map(|margin| margin.value);
    Ok(Question {
        swept: Swept {
            other: scene.neighbour.as_ref().map(|_| "neighbour".to_owned()),
            ..Swept::new("engine", scene, clearance, margin.unwrap_or_default())
        },
        margin,
    })
}

/// Collects faults while the pieces are put together.
struct Pieces {
    faults: Vec<StudyFault>,
}

impl Pieces {
    fn keep<T>(&mut self, path: &str, made: Result<T, SwingError>) -> Option<T> {
        made.map_err(|error| {
            self.faults.push(StudyFault { path: path.to_owned(), error });
        })
        .ok()
    }
}

fn point(point: &Point) -> Point3<f64> {
    Point3::new(point.0.value.value, point.1.value.value, point.2.value.value)
}

fn vector(vector: (f64, f64, f64)) -> Vector3<f64> {
    Vector3::new(vector.0, vector.1, vector.2)
}

fn axis(name: &str, axis: &StudyAxis) -> Result<Axis, SwingError> {
    Axis::new(name, point(&axis.through), vector(axis.along))
}

fn range(name: &str, span: &Span<uom::si::f64::Angle>) -> Result<AngleRange, SwingError> {
    AngleRange::new(name, span.from.value, span.to.value)
}

fn body(name: &str, shape: &StudyShape) -> Result<ConvexBody, SwingError> {
    match shape {
        StudyShape::Cuboid { from, to } => ConvexBody::cuboid(name, point(from), point(to)),
        StudyShape::Profile { corners, from, to } => {
            let corners: Vec<[f64; 2]> =
                corners.iter().map(|(forward, up)| [forward.value.value, up.value.value]).collect();
            ConvexBody::prism(name, &corners, from.value, to.value)
        }
        StudyShape::Hull { points, radius } => {
            let points: Vec<_> = points.iter().map(point).collect();
            let radius = radius.as_ref().map_or(Length::default(), |r| r.value);
            ConvexBody::rounded_hull(name, &points, radius)
        }
    }
}

fn part(part: StudyPart) -> Part {
    match part {
        StudyPart::Bracket => Part::Bracket,
        StudyPart::Swivel => Part::Swivel,
        StudyPart::Head => Part::Head,
    }
}

fn scene(study: &SwingStudy) -> Result<Scene, Vec<StudyFault>> {
    let mut pieces = Pieces { faults: Vec::new() };
    let at = |field: &str| format!("swing_study.{field}");
    let tilt_axis = pieces.keep(&at("tilt_axis"), axis("the tilt axis", &study.tilt_axis));
    let steering_axis = match &study.steering_axis {
        Some(given) => pieces.keep(&at("steering_axis"), axis("the steering axis", given)),
        None => {
            pieces.keep(&at("tilt_axis"), Axis::new("the steering axis", point(&study.tilt_axis.through), Vector3::z()))
        }
    };
    let tilt = pieces.keep(&at("tilt"), range("the range of tilt", &study.tilt));
    let steer = match &study.steer {
        Some(span) => pieces.keep(&at("steer"), range("the range of steering", span)),
        None => pieces.keep(&at("steer"), AngleRange::only("the range of steering", degrees(0.0))),
    };
    let mut bodies = Vec::new();
    for (i, given) in study.bodies.iter().enumerate() {
        let made = pieces.keep(&at(&format!("bodies[{i}].shape")), body(&given.name, &given.shape));
        bodies.extend(made.map(|made| (part(given.on), made)));
    }
    let mut obstacles = Vec::new();
    for (i, given) in study.obstacles.iter().enumerate() {
        let made = match &given.shape {
            ObstacleShape::Body(shape) => body(&given.name, shape).map(Obstacle::Body),
            ObstacleShape::Behind { through, free_side } => {
                Plane::new(&given.name, point(through), vector(*free_side)).map(Obstacle::HalfSpace)
            }
        };
        obstacles.extend(pieces.keep(&at(&format!("obstacles[{i}].shape")), made));
    }
    let neighbour_tilt = match study.neighbour.as_ref().map(|n| &n.tilt) {
        Some(Some(span)) => pieces
            .keep(&at("neighbour.tilt"), range("the neighbour's range of tilt", span))
            .map(NeighbourTilt::Independent),
        Some(None) | None => Some(NeighbourTilt::Together),
    };
    let (Some(tilt_axis), Some(steering_axis), Some(tilt), Some(steer), Some(neighbour_tilt), true) =
        (tilt_axis, steering_axis, tilt, steer, neighbour_tilt, pieces.faults.is_empty())
    else {
        return Err(pieces.faults);
    };
    let chain = EngineChain::new("engine", tilt_axis, steering_axis, bodies).map_err(|error| {
        let path = match &error {
            SwingError::AxisOutsideBody { axis, .. } if axis.contains("steering") => match study.steering_axis {
                Some(_) => at("steering_axis"),
                None => at("tilt_axis"),
            },
            SwingError::AxisOutsideBody { .. } => at("tilt_axis"),
            _ => at("bodies"),
        };
        vec![StudyFault { path, error }]
    })?;
    let mut scene = Scene::new(chain.clone(), tilt, steer);
    scene.obstacles = obstacles;
    if let Some(given) = &study.neighbour {
        scene.neighbour = Some(Neighbour {
            chain: chain.shifted(point(&given.moved_by).coords).named("neighbour"),
            tilt: neighbour_tilt,
        });
    }
    if scene.obstacles.is_empty() && scene.neighbour.is_none() {
        return Err(vec![StudyFault { path: "swing_study".to_owned(), error: SwingError::NoObstacles }]);
    }
    Ok(scene)
}
