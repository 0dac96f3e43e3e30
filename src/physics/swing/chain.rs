//! An engine as a chain: clamp bracket, swivel, head.

use nalgebra::{Point3, Rotation3, Unit, Vector3};
use uom::si::angle::degree;
use uom::si::f64::{Angle, Length};

use super::body::{ConvexBody, check_point};
use super::distance::Measurer;
use super::error::SwingError;
use super::lift::Lift;

/// How far an axis may pass outside its bodies, in metres: tape readings are no finer.
const AXIS_TOLERANCE: f64 = 1e-3;

/// A line that a part turns about: through `point`, right-hand turns about `direction`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Axis {
    point: Point3<f64>,
    direction: Unit<Vector3<f64>>,
}

impl Axis {
    /// The axis through `point` (metres) along `direction` (any length).
    ///
    /// # Errors
    /// A direction of no length, a number that is not finite, a point absurdly far away.
    pub fn new(name: &str, point: Point3<f64>, direction: Vector3<f64>) -> Result<Self, SwingError> {
        check_point(name, &point)?;
        if !direction.iter().all(|c| c.is_finite()) {
            return Err(SwingError::NotFinite { what: format!("the direction of {name}") });
        }
        let largest = direction.amax();
        if largest == 0.0 {
            return Err(SwingError::AxisWithoutLength { axis: name.to_owned() });
        }
        Ok(Self { point, direction: Unit::new_normalize(direction / largest) })
    }

    /// A point on it, in metres.
    pub fn point(&self) -> Point3<f64> {
        self.point
    }

    /// Its direction.
    pub fn direction(&self) -> Unit<Vector3<f64>> {
        self.direction
    }

    fn shifted(&self, shift: Vector3<f64>) -> Self {
        Self { point: self.point + shift, ..*self }
    }

    pub(super) fn turn(&self, angle: f64) -> Rotation3<f64> {
        Rotation3::from_axis_angle(&self.direction, angle)
    }
}

/// Which link of the chain a body is fixed to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Part {
    /// The clamp bracket: never moves.
    Bracket,
    /// The swivel: tilts about the tilt tube.
    Swivel,
    /// The head: tilts with the swivel and steers about the steering axis.
    Head,
}

/// A closed range of angles, low to high; both may be the same.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AngleRange {
    low: f64,
    high: f64,
}

impl AngleRange {
    /// From `low` to `high`.
    ///
    /// # Errors
    /// Not finite, reversed, or past half a turn.
    pub fn new(what: &str, low: Angle, high: Angle) -> Result<Self, SwingError> {
        for end in [low, high] {
            let degrees = end.get::<degree>();
            if !degrees.is_finite() {
                return Err(SwingError::NotFinite { what: what.to_owned() });
            }
            if degrees.abs() > 180.0 + 1e-9 {
                return Err(SwingError::RangeTooWide { what: what.to_owned(), degrees });
            }
        }
        if low.value > high.value {
            return Err(SwingError::ReversedRange {
                what: what.to_owned(),
                low_deg: low.get::<degree>(),
                high_deg: high.get::<degree>(),
            });
        }
        Ok(Self { low: low.value, high: high.value })
    }

    /// One angle only.
    ///
    /// # Errors
    /// As [`AngleRange::new`].
    pub fn only(what: &str, angle: Angle) -> Result<Self, SwingError> {
        Self::new(what, angle, angle)
    }

    /// Its low end.
    pub fn low(&self) -> Angle {
        super::body::radians(self.low)
    }

    /// Its high end.
    pub fn high(&self) -> Angle {
        super::body::radians(self.high)
    }
}

/// An engine's chain in boat axes, described in its reference pose (tilt and steering zero).
///
/// A positive tilt lifts the gearcase when the tilt axis points to port; a positive steering angle
/// turns the head anticlockwise seen from above when the steering axis points up.
#[derive(Debug, Clone, PartialEq)]
pub struct EngineChain {
    name: String,
    tilt_axis: Axis,
    steering_axis: Axis,
    bodies: Vec<(Part, ConvexBody)>,
    origin: Point3<f64>,
    lift: Option<Lift>,
    stood: Option<Box<Stood>>,
}

/// How an engine that is left standing came to stand so.
#[derive(Debug, Clone, PartialEq)]
pub struct Stood {
    /// The engine as it could still tilt and steer.
    pub chain: EngineChain,
    /// Its tilt.
    pub tilt: Angle,
    /// Its steering.
    pub steer: Angle,
}

impl EngineChain {
    /// A chain from its axes and bodies. Axes must pass through (within 1 mm of) a body that they join:
    /// the tilt axis one of bracket or swivel, the steering axis one of swivel or head; where a chain has none
    /// of those, any of its bodies.
    ///
    /// # Errors
    /// No moving bodies, or an axis outside the bodies.
    pub fn new(
        name: impl Into<String>,
        tilt_axis: Axis,
        steering_axis: Axis,
        bodies: Vec<(Part, ConvexBody)>,
    ) -> Result<Self, SwingError> {
        let name = name.into();
        if bodies.iter().all(|(part, _)| *part == Part::Bracket) {
            return Err(SwingError::NoMovingBodies { engine: name });
        }
        let tilting = format!("the tilt axis of {name}");
        check_axis(&tilting, &tilt_axis, &bodies, [Part::Bracket, Part::Swivel])?;
        let steering = format!("the steering axis of {name}");
        check_axis(&steering, &steering_axis, &bodies, [Part::Swivel, Part::Head])?;
        Ok(Self { name, tilt_axis, steering_axis, bodies, origin: tilt_axis.point, lift: None, stood: None })
    }

    /// What findings call the engine.
    pub fn name(&self) -> &str {
        &self.name
    }

    /// The tilt tube's axis; never moves.
    pub fn tilt_axis(&self) -> Axis {
        self.tilt_axis
    }

    /// The steering axis in the reference pose; carried by the swivel.
    pub fn steering_axis(&self) -> Axis {
        self.steering_axis
    }

    /// Origin of the engine's own axes, from which its outline is measured: where the mounting sheet has the bracket's rest, or
    /// the tilt axis where none drew it. In the reference pose, metres.
    pub fn origin(&self) -> Point3<f64> {
        self.origin
    }

    /// What lifts it as a whole.
    pub fn lift(&self) -> Option<&Lift> {
        self.lift.as_ref()
    }

    /// The same engine on a lifting bracket, at the bottom of its travel in the reference pose.
    #[must_use]
    pub fn lifted(mut self, lift: Lift) -> Self {
        self.lift = Some(lift);
        self
    }

    /// The same engine measured from this point.
    #[must_use]
    pub(super) fn measured_from(mut self, origin: Point3<f64>) -> Self {
        self.origin = origin;
        self
    }

    /// The same engine left so: every body stands where that tilt and steering carry it, and only a lift still moves it.
    #[must_use]
    pub fn standing(&self, tilt: Angle, steer: Angle) -> Self {
        let stands = |(part, body): &(Part, ConvexBody)| {
            (Part::Bracket, body.mapped(|point| self.carried(*part, *point, tilt, steer)))
        };
        let stood = Stood { chain: self.clone(), tilt, steer };
        Self { bodies: self.bodies.iter().map(stands).collect(), stood: Some(Box::new(stood)), ..self.clone() }
    }

    /// Its bracket alone, which is this body.
    #[must_use]
    pub fn bracket_alone(&self, body: ConvexBody) -> Self {
        Self { bodies: vec![(Part::Bracket, body)], stood: None, ..self.clone() }
    }

    /// How it came to stand, where it was left standing.
    pub fn stood(&self) -> Option<&Stood> {
        self.stood.as_deref()
    }

    /// Whether nothing of it tilts or steers.
    pub fn stands(&self) -> bool {
        self.bodies.iter().all(|(part, _)| *part == Part::Bracket)
    }

    /// Its bodies with the part each belongs to.
    pub fn bodies(&self) -> &[(Part, ConvexBody)] {
        &self.bodies
    }

    /// The same engine with one more body, such as a steering cylinder on the swivel.
    #[must_use]
    pub fn with_body(mut self, part: Part, body: ConvexBody) -> Self {
        self.bodies.push((part, body));
        self
    }

    /// The same engine mounted elsewhere: moved by `shift` (metres), for setback, height or a twin.
    #[must_use]
    pub fn shifted(&self, shift: Vector3<f64>) -> Self {
        Self {
            name: self.name.clone(),
            tilt_axis: self.tilt_axis.shifted(shift),
            steering_axis: self.steering_axis.shifted(shift),
            bodies: self.bodies.iter().map(|(part, body)| (*part, body.shifted(shift))).collect(),
            origin: self.origin + shift,
            lift: self.lift,
            stood: self.stood.as_ref().map(|stood| Box::new(Stood { chain: stood.chain.shifted(shift), ..**stood })),
        }
    }

    /// The same engine under another name.
    #[must_use]
    pub fn named(mut self, name: impl Into<String>) -> Self {
        self.name = name.into();
        self
    }

    /// The same engine with only the bodies that `keep` accepts, for a question about a few of them.
    ///
    /// # Errors
    /// No moving body is kept.
    pub fn keeping(&self, keep: impl Fn(Part, &str) -> bool) -> Result<Self, SwingError> {
        let bodies: Vec<_> = self.bodies.iter().filter(|(part, body)| keep(*part, body.name())).cloned().collect();
        if bodies.iter().all(|(part, _)| *part == Part::Bracket) {
            return Err(SwingError::NoMovingBodies { engine: self.name.clone() });
        }
        Ok(Self { bodies, ..self.clone() })
    }

    /// Where a point of `part` (reference pose, metres) goes at that tilt and steering: for drawings.
    pub fn carried(&self, part: Part, point: Point3<f64>, tilt: Angle, steer: Angle) -> Point3<f64> {
        let steered = match part {
            Part::Head => {
                let axis = self.steering_axis;
                axis.point + axis.turn(steer.value) * (point - axis.point)
            }
            Part::Bracket | Part::Swivel => point,
        };
        match part {
            Part::Bracket => point,
            Part::Swivel | Part::Head => {
                let axis = self.tilt_axis;
                axis.point + axis.turn(tilt.value) * (steered - axis.point)
            }
        }
    }

    /// Where a point is once the lift stands so high; where there is none, it stays.
    pub fn raised(&self, point: Point3<f64>, height: Option<Length>) -> Point3<f64> {
        self.lift.zip(height).map_or(point, |(lift, height)| point + lift.raised(height))
    }
}

fn check_axis(what: &str, axis: &Axis, bodies: &[(Part, ConvexBody)], parts: [Part; 2]) -> Result<(), SwingError> {
    let joined: Vec<_> = bodies.iter().filter(|(p, _)| parts.contains(p)).collect();
    let looked_at = if joined.is_empty() { bodies.iter().collect() } else { joined };
    let mut measurer = Measurer::default();
    let mut least = f64::INFINITY;
    for (_, body) in &looked_at {
        let points: Vec<_> = body.points().iter().map(|p| p.coords).collect();
        let along = |p: &Vector3<f64>| (p - axis.point.coords).dot(&axis.direction);
        let low = points.iter().map(along).fold(f64::INFINITY, f64::min);
        let high = points.iter().map(along).fold(f64::NEG_INFINITY, f64::max);
        let on_axis = |t: f64| axis.point.coords + axis.direction.into_inner() * t;
        let line = [on_axis(low - 1.0), on_axis(high + 1.0)];
        let radii = (0.0, body.radius().value);
        let found = measurer.measure(&line, &points, radii, &Vector3::x());
        least = least.min(found.upper);
    }
    if least <= AXIS_TOLERANCE {
        return Ok(());
    }
    let names: Vec<_> = looked_at.iter().map(|(_, body)| body.name()).collect();
    Err(SwingError::AxisOutsideBody { axis: what.to_owned(), bodies: names.join(", "), metres: least })
}
