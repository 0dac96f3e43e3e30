//! The part of a convex shape that lies on a triangle, and points to integrate over it.

use super::mesh::double_area;
use super::reference::RULE;
use super::vector::{Point, cross, lerp, sub};

/// Corners of the part of `shape` (convex, anticlockwise) that lies on an anticlockwise triangle; fewer than three where they
/// do not overlap. I. E. Sutherland and G. W. Hodgman, 1974.
pub fn overlap(shape: &[Point], triangle: [Point; 3]) -> Vec<Point> {
    let mut left = shape.to_vec();
    for i in 0..3 {
        let (a, b) = (triangle[i], triangle[(i + 1) % 3]);
        let side = |p: Point| cross(sub(b, a), sub(p, a));
        let before = std::mem::take(&mut left);
        for (k, &p) in before.iter().enumerate() {
            let q = before[(k + 1) % before.len()];
            let (at_p, at_q) = (side(p), side(q));
            if at_p >= 0.0 {
                left.push(p);
            }
            if (at_p > 0.0 && at_q < 0.0) || (at_p < 0.0 && at_q > 0.0) {
                left.push(lerp(p, q, at_p / (at_p - at_q)));
            }
        }
    }
    left
}

/// Points of the overlap in the triangle's barycentric coordinates, each with its part of the area (m²): exact for polynomials
/// of the fourth degree, which is what two quadratic shape functions make of each other.
pub fn points(shape: &[Point], triangle: [Point; 3]) -> Vec<([f64; 3], f64)> {
    let part = overlap(shape, triangle);
    let whole = double_area(triangle);
    let [p, q, r] = triangle;
    let mut all = Vec::new();
    for i in 1..part.len().saturating_sub(1) {
        let piece = [part[0], part[i], part[i + 1]];
        let area = 0.5 * double_area(piece);
        if area <= 0.0 {
            continue;
        }
        for (n, weight) in RULE {
            let at = [0, 1].map(|k| (0..3).map(|i| n[i] * piece[i][k]).sum());
            let first = cross(sub(r, q), sub(at, q)) / whole;
            let second = cross(sub(p, r), sub(at, r)) / whole;
            all.push(([first, second, 1.0 - first - second], weight * area));
        }
    }
    all
}
