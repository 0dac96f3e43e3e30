//! Signed distance between two rounded hulls in one pose: the only place that speaks to parry.
//!
//! Whatever parry answers is used only as a *hint*. The direction it proposes is turned into a bound by
//! the support function ([`gap_along`]), which holds for any direction; the points it proposes lie in
//! the bodies, so their distance is attained. How well parry converged is thereby measured in every
//! call, not assumed.

use nalgebra::Vector3;
use parry3d_f64::math::{Pose, Vector};
use parry3d_f64::query::epa::EPA;
use parry3d_f64::query::gjk::{self, CsoPoint, GJKResult, VoronoiSimplex};
use parry3d_f64::shape::SupportMap;

/// Below this distance between hulls, in metres, the line between the nearest points no longer gives
/// a usable direction.
const NO_DIRECTION: f64 = 1e-9;

/// The hull of some points, as parry wants it.
#[derive(Default)]
struct Cloud(Vec<Vector>);

impl SupportMap for Cloud {
    fn local_support_point(&self, dir: Vector) -> Vector {
        let mut best = Vector::ZERO;
        let mut most = f64::NEG_INFINITY;
        for point in &self.0 {
            let along = point.dot(dir);
            if along > most {
                most = along;
                best = *point;
            }
        }
        best
    }
}

/// Two bodies in one pose.
#[derive(Debug, Clone, Copy)]
pub struct Separation {
    /// Never above the signed distance: the gap along `direction`.
    pub lower: f64,
    /// The signed distance attained: of the two points when apart, the overlap along `direction`
    /// (negative) when not. Infinite where parry gave no answer.
    pub upper: f64,
    /// Unit vector from the first body to the second.
    pub direction: Vector3<f64>,
    /// Point of the first body's surface.
    pub first: Vector3<f64>,
    /// Point of the second body's surface.
    pub second: Vector3<f64>,
}

/// The gap between the hulls along a unit direction from `a` to `b`: for every unit direction it is at
/// most the signed distance, whose greatest value over all directions *is* the signed distance.
pub fn gap_along(a: &[Vector3<f64>], b: &[Vector3<f64>], direction: &Vector3<f64>) -> f64 {
    let reach = a.iter().map(|p| p.dot(direction)).fold(f64::NEG_INFINITY, f64::max);
    let near = b.iter().map(|p| p.dot(direction)).fold(f64::INFINITY, f64::min);
    near - reach
}

/// Holds parry's working memory between calls.
pub struct Measurer {
    a: Cloud,
    b: Cloud,
    epa: EPA,
}

impl Default for Measurer {
    fn default() -> Self {
        Self { a: Cloud::default(), b: Cloud::default(), epa: EPA::new() }
    }
}

impl Measurer {
    /// Signed distance of the hulls of `a` and `b` rounded by `radii` in all, starting from a guess of
    /// the direction between them.
    pub fn measure(
        &mut self,
        a: &[Vector3<f64>],
        b: &[Vector3<f64>],
        radii: (f64, f64),
        guess: &Vector3<f64>,
    ) -> Separation {
        load(&mut self.a, a);
        load(&mut self.b, b);
        let here = Pose::IDENTITY;
        let start = CsoPoint::from_shapes(&here, &self.a, &self.b, Vector::new(guess.x, guess.y, guess.z));
        let mut simplex = VoronoiSimplex::new();
        simplex.reset(start);
        let found = gjk::closest_points(&here, &self.a, &self.b, f64::MAX, true, &mut simplex);
        let both = radii.0 + radii.1;
        let (direction, upper, first, second) = match found {
            GJKResult::ClosestPoints(p, q, dir) => {
                let (p, q) = (back(p), back(q));
                let between = q - p;
                let length = between.norm();
                let across = between / length;
                let given = back(dir);
                let direction = if length > NO_DIRECTION && gap_along(a, b, &across) >= gap_along(a, b, &given) {
                    across
                } else {
                    given
                };
                (direction, length - both, p, q)
            }
            GJKResult::Intersection => match self.epa.closest_points(&here, &self.a, &self.b, &simplex) {
                Some((p, q, normal)) => {
                    let normal = back(normal);
                    let (with, against) = (gap_along(a, b, &normal), gap_along(a, b, &-normal));
                    let direction = if with >= against { normal } else { -normal };
                    (direction, with.max(against).min(0.0) - both, back(p), back(q))
                }
                None => (*guess, gap_along(a, b, guess).min(0.0) - both, a[0], b[0]),
            },
            GJKResult::Proximity(_) | GJKResult::NoIntersection(_) => (*guess, f64::INFINITY, a[0], b[0]),
        };
        let direction = direction.try_normalize(1e-12).unwrap_or(*guess);
        Separation {
            lower: gap_along(a, b, &direction) - both,
            upper,
            direction,
            first: first + direction * radii.0,
            second: second - direction * radii.1,
        }
    }
}

fn load(cloud: &mut Cloud, points: &[Vector3<f64>]) {
    cloud.0.clear();
    cloud.0.extend(points.iter().map(|p| Vector::new(p.x, p.y, p.z)));
}

fn back(v: Vector) -> Vector3<f64> {
    Vector3::new(v.x, v.y, v.z)
}
