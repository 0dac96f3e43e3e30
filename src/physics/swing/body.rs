//! Convex bodies: the hull of a few points, rounded by a radius.

use nalgebra::{Point3, Rotation3, Vector3};
use uom::si::f64::Length;

use super::error::SwingError;
use super::profile::checked_profile;

/// Farthest coordinate accepted, in metres. Double precision still resolves a nanometre there, which
/// the margin of the bound relies on.
pub(super) const FARTHEST: f64 = 1000.0;

/// Most points a body may have; each is looked at in every step of the search.
const MOST_POINTS: usize = 256;

/// Sides of the polygon that stands for a disc. Its corners lie outside the circle, so that the
/// polygon holds the disc; at 16 it is at most 2 % too large.
const DISC_SIDES: usize = 16;

/// A named convex body: the convex hull of `points`, grown by `radius` on every side.
///
/// Points are in boat axes, metres, with the engine in its reference pose (tilt and steering both
/// zero). A body may be a point, a line or a plate; points inside the hull do no harm.
#[derive(Debug, Clone, PartialEq)]
pub struct ConvexBody {
    name: String,
    points: Vec<Point3<f64>>,
    radius: f64,
}

impl ConvexBody {
    /// The convex hull of `points` (metres), rounded by `radius`.
    ///
    /// # Errors
    /// No points, too many, a number that is not finite, a point absurdly far away, a negative radius.
    pub fn rounded_hull(name: impl Into<String>, points: &[Point3<f64>], radius: Length) -> Result<Self, SwingError> {
        let name = name.into();
        let radius = radius.value;
        if points.is_empty() {
            return Err(SwingError::EmptyBody { body: name });
        }
        if points.len() > MOST_POINTS {
            return Err(SwingError::TooManyPoints { body: name, points: points.len(), limit: MOST_POINTS });
        }
        for point in points {
            check_point(&name, point)?;
        }
        if !radius.is_finite() {
            return Err(SwingError::NotFinite { what: format!("the radius of {name}") });
        }
        if radius < 0.0 {
            return Err(SwingError::NotPositive { what: format!("the radius of {name}"), value: radius });
        }
        check_point(&name, &Point3::new(radius, 0.0, 0.0))?;
        Ok(Self { name, points: points.to_vec(), radius })
    }

    /// The convex hull of `points` (metres).
    ///
    /// # Errors
    /// As [`ConvexBody::rounded_hull`].
    pub fn hull(name: impl Into<String>, points: &[Point3<f64>]) -> Result<Self, SwingError> {
        Self::rounded_hull(name, points, Length::default())
    }

    /// The box between two opposite corners (metres), its sides along the boat's axes.
    ///
    /// # Errors
    /// As [`ConvexBody::rounded_hull`].
    pub fn cuboid(name: impl Into<String>, corner: Point3<f64>, opposite: Point3<f64>) -> Result<Self, SwingError> {
        let centre = nalgebra::center(&corner, &opposite);
        let half = (opposite - corner) * 0.5;
        Self::oriented_box(name, centre, half, Rotation3::identity())
    }

    /// The box about `centre` with half sides `half` (metres), turned by `turn`.
    ///
    /// # Errors
    /// As [`ConvexBody::rounded_hull`].
    pub fn oriented_box(
        name: impl Into<String>,
        centre: Point3<f64>,
        half: Vector3<f64>,
        turn: Rotation3<f64>,
    ) -> Result<Self, SwingError> {
        let mut points = Vec::with_capacity(8);
        for i in 0..8 {
            let side = |bit: usize| if i >> bit & 1 == 1 { 1.0 } else { -1.0 };
            let corner = Vector3::new(half.x * side(0), half.y * side(1), half.z * side(2));
            points.push(centre + turn * corner);
        }
        Self::hull(name, &points)
    }

    /// A side profile of (x, z) corners in metres, carried from `y = low` to `y = high`.
    ///
    /// The outline closes itself; a last corner that repeats the first is dropped.
    ///
    /// # Errors
    /// A profile that is open, flat, crossed or hollow; otherwise as [`ConvexBody::rounded_hull`].
    pub fn prism(name: impl Into<String>, profile: &[[f64; 2]], low: Length, high: Length) -> Result<Self, SwingError> {
        let name = name.into();
        let corners = checked_profile(&name, profile)?;
        let points: Vec<_> = [low.value, high.value]
            .iter()
            .flat_map(|y| corners.iter().map(move |c| Point3::new(c[0], *y, c[1])))
            .collect();
        Self::hull(name, &points)
    }

    /// A rod from `a` to `b` (metres) with round ends: a cylinder, a hose, a tie bar.
    ///
    /// # Errors
    /// As [`ConvexBody::rounded_hull`].
    pub fn capsule(
        name: impl Into<String>,
        a: Point3<f64>,
        b: Point3<f64>,
        radius: Length,
    ) -> Result<Self, SwingError> {
        Self::rounded_hull(name, &[a, b], radius)
    }

    /// A ball about `centre` (metres).
    ///
    /// # Errors
    /// As [`ConvexBody::rounded_hull`].
    pub fn ball(name: impl Into<String>, centre: Point3<f64>, radius: Length) -> Result<Self, SwingError> {
        Self::rounded_hull(name, &[centre], radius)
    }

    /// A prism that just holds a round disc of `diameter` and `thickness` about `centre` (metres), its
    /// axle along `axle`: the space that a propeller sweeps.
    ///
    /// # Errors
    /// An axle without length; otherwise as [`ConvexBody::rounded_hull`].
    pub fn disc(
        name: impl Into<String>,
        centre: Point3<f64>,
        axle: Vector3<f64>,
        diameter: Length,
        thickness: Length,
    ) -> Result<Self, SwingError> {
        let name = name.into();
        let Some(axle) = axle.try_normalize(1e-12) else {
            return Err(SwingError::AxisWithoutLength { axis: format!("the axle of {name}") });
        };
        let aside = if axle.x.abs() < 0.7 { Vector3::x() } else { Vector3::y() };
        let first = axle.cross(&aside).normalize();
        let second = axle.cross(&first);
        let half_step = std::f64::consts::PI / DISC_SIDES as f64;
        let corner_radius = 0.5 * diameter.value / half_step.cos();
        let mut points = Vec::with_capacity(2 * DISC_SIDES);
        for i in 0..DISC_SIDES {
            let turn = (2 * i + 1) as f64 * half_step;
            let spoke = (first * turn.cos() + second * turn.sin()) * corner_radius;
            for side in [-0.5, 0.5] {
                points.push(centre + spoke + axle * (side * thickness.value));
            }
        }
        Self::hull(name, &points)
    }

    /// What findings call it.
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Its points, in boat axes, metres, reference pose.
    pub fn points(&self) -> &[Point3<f64>] {
        &self.points
    }

    /// How far its surface lies outside the hull of its points.
    pub fn radius(&self) -> Length {
        metres(self.radius)
    }

    /// The same body moved by `shift` (metres).
    #[must_use]
    pub fn shifted(&self, shift: Vector3<f64>) -> Self {
        self.mapped(|point| point + shift)
    }

    pub(super) fn mapped(&self, map: impl Fn(&Point3<f64>) -> Point3<f64>) -> Self {
        Self { name: self.name.clone(), points: self.points.iter().map(map).collect(), radius: self.radius }
    }
}

/// A length of so many metres.
pub(super) fn metres(value: f64) -> Length {
    Length::new::<uom::si::length::meter>(value)
}

/// An angle of so many radians.
pub(super) fn radians(value: f64) -> uom::si::f64::Angle {
    uom::si::f64::Angle::new::<uom::si::angle::radian>(value)
}

pub(super) fn check_point(what: &str, point: &Point3<f64>) -> Result<(), SwingError> {
    let far = point.coords.amax();
    if !point.coords.iter().all(|c| c.is_finite()) {
        return Err(SwingError::NotFinite { what: format!("a coordinate of {what}") });
    }
    if far > FARTHEST {
        return Err(SwingError::TooFar { what: what.to_owned(), metres: far, limit: FARTHEST });
    }
    Ok(())
}
