//! Plane vectors as `[f64; 2]`, metres.

/// A place in the panel's plane, `[y, z]` in metres: across, up.
pub type Point = [f64; 2];

pub(super) fn sub(a: Point, b: Point) -> Point {
    [a[0] - b[0], a[1] - b[1]]
}

pub(super) fn cross(a: Point, b: Point) -> f64 {
    a[0] * b[1] - a[1] * b[0]
}

pub(super) fn dot(a: Point, b: Point) -> f64 {
    a[0] * b[0] + a[1] * b[1]
}

pub(super) fn distance(a: Point, b: Point) -> f64 {
    (a[0] - b[0]).hypot(a[1] - b[1])
}

pub(super) fn lerp(a: Point, b: Point, t: f64) -> Point {
    [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]
}

/// Where along `a`–`b` (0 to 1) the point nearest to `p` lies.
pub(super) fn nearest_on_segment(a: Point, b: Point, p: Point) -> f64 {
    let along = sub(b, a);
    let square = dot(along, along);
    if square == 0.0 { 0.0 } else { (dot(sub(p, a), along) / square).clamp(0.0, 1.0) }
}

pub(super) fn distance_to_segment(a: Point, b: Point, p: Point) -> f64 {
    distance(lerp(a, b, nearest_on_segment(a, b, p)), p)
}

/// From an anticlockwise triangle; 0 inside it.
pub(super) fn distance_to_triangle(corners: [Point; 3], p: Point) -> f64 {
    let sides = [0, 1, 2].map(|i| [corners[i], corners[(i + 1) % 3]]);
    if sides.iter().all(|[a, b]| cross(sub(*b, *a), sub(p, *a)) >= 0.0) {
        return 0.0;
    }
    sides.iter().map(|[a, b]| distance_to_segment(*a, *b, p)).fold(f64::INFINITY, f64::min)
}
