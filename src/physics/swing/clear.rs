//! How high named bodies stand above a plane in one pose: the water at full tilt, the road on a trailer.

use nalgebra::Point3;
use uom::si::f64::{Angle, Length};

use super::body::metres;
use super::chain::{EngineChain, Part};
use super::error::{SwingError, finite};
use super::scene::Plane;

/// The lowest point of some bodies above a plane; exact.
#[derive(Debug, Clone, PartialEq)]
pub struct PlaneClearance {
    /// Its height above the plane; negative below it.
    pub height: Length,
    /// The part it is on.
    pub part: Part,
    /// The body it is on.
    pub body: String,
    /// Where it is, boat axes, metres.
    pub point: Point3<f64>,
}

/// The lowest point above `plane` of the bodies called `names` (all moving bodies if empty), at one tilt and steering.
/// For a range of poses put the plane into a scene as a half-space instead.
///
/// # Errors
/// A name that no body carries, an angle that is not finite.
pub fn height_above(
    engine: &EngineChain,
    names: &[&str],
    tilt: Angle,
    steer: Angle,
    plane: &Plane,
) -> Result<PlaneClearance, SwingError> {
    for (what, angle) in [("the tilt", tilt), ("the steering angle", steer)] {
        finite(what, angle.value)?;
    }
    let known = || {
        let all: Vec<_> = engine.bodies().iter().map(|(_, body)| body.name()).collect();
        all.join(", ")
    };
    if let Some(missing) = names.iter().find(|name| engine.bodies().iter().all(|(_, body)| body.name() != **name)) {
        return Err(SwingError::UnknownBody { name: (*missing).to_owned(), known: known() });
    }
    let chosen = engine.bodies().iter().filter(|(part, body)| match names {
        [] => *part != Part::Bracket,
        _ => names.contains(&body.name()),
    });
    let normal = plane.normal().into_inner();
    chosen
        .flat_map(|(part, body)| {
            body.points().iter().map(move |point| {
                let carried = engine.carried(*part, *point, tilt, steer);
                let surface = carried - normal * body.radius().value;
                (plane.height(&surface), *part, body, surface)
            })
        })
        .min_by(|a, b| a.0.value.total_cmp(&b.0.value))
        .map(|(height, part, body, point)| PlaneClearance {
            height: metres(height.value),
            part,
            body: body.name().to_owned(),
            point,
        })
        .ok_or_else(|| SwingError::NoMovingBodies { engine: engine.name().to_owned() })
}
