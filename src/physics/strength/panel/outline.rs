//! Whether an outline is a sound polygon, and whether a place lies on it.

use super::error::PanelError;
use super::vector::{Point, cross, distance_to_segment, sub};

/// Corners closer than this part of the panel's extent count as one.
pub(super) const COINCIDENT: f64 = 1e-6;

/// The diagonal of the bounding box, m.
pub(super) fn extent(outline: &[Point]) -> f64 {
    let (mut low, mut high) = ([f64::INFINITY; 2], [f64::NEG_INFINITY; 2]);
    for p in outline {
        for k in 0..2 {
            low[k] = low[k].min(p[k]);
            high[k] = high[k].max(p[k]);
        }
    }
    (high[0] - low[0]).hypot(high[1] - low[1])
}

/// Signed area, m²; positive where the corners run anticlockwise.
pub(super) fn area(outline: &[Point]) -> f64 {
    let n = outline.len();
    // Measured from a corner, so that a far origin costs no digits.
    (1..n.saturating_sub(1)).map(|i| 0.5 * cross(sub(outline[i], outline[0]), sub(outline[i + 1], outline[0]))).sum()
}

/// Finite, at least three distinct corners, some area, no two edges that cross or touch.
pub(super) fn check(outline: &[Point]) -> Result<(), PanelError> {
    let n = outline.len();
    if n < 3 {
        return Err(PanelError::Outline { corners: n, supports: n });
    }
    if outline.iter().flatten().any(|v| !v.is_finite()) {
        return Err(PanelError::NotFinite { what: "a corner of the outline" });
    }
    let size = extent(outline);
    if !size.is_finite() {
        return Err(PanelError::NotFinite { what: "the outline's extent" });
    }
    let near = COINCIDENT * size;
    for i in 0..n {
        let next = outline[(i + 1) % n];
        if (outline[i][0] - next[0]).hypot(outline[i][1] - next[1]) <= near {
            return Err(PanelError::OutlineDegenerate { corner: i });
        }
    }
    if area(outline).abs() <= near * size {
        return Err(PanelError::OutlineDegenerate { corner: 0 });
    }
    for first in 0..n {
        for second in first + 1..n {
            if touch(outline, first, second, near) {
                return Err(PanelError::OutlineCrosses { first, second });
            }
        }
    }
    Ok(())
}

fn touch(outline: &[Point], first: usize, second: usize, near: f64) -> bool {
    let n = outline.len();
    let (a, b) = (outline[first], outline[(first + 1) % n]);
    let (c, d) = (outline[second], outline[(second + 1) % n]);
    let neighbours = second == first + 1 || (first == 0 && second == n - 1);
    if neighbours {
        // They share a corner: only folding back upon itself counts.
        let (shared, p, q) = if second == first + 1 { (b, a, d) } else { (a, b, c) };
        return distance_to_segment(shared, q, p) <= near || distance_to_segment(shared, p, q) <= near;
    }
    let strict = cross(sub(b, a), sub(c, a)) * cross(sub(b, a), sub(d, a)) < 0.0
        && cross(sub(d, c), sub(a, c)) * cross(sub(d, c), sub(b, c)) < 0.0;
    strict
        || distance_to_segment(a, b, c) <= near
        || distance_to_segment(a, b, d) <= near
        || distance_to_segment(c, d, a) <= near
        || distance_to_segment(c, d, b) <= near
}

/// Whether `p` lies inside by the count of crossings; on an edge either answer may come.
pub(super) fn inside(outline: &[Point], p: Point) -> bool {
    let n = outline.len();
    let mut odd = false;
    for i in 0..n {
        let (a, b) = (outline[i], outline[(i + 1) % n]);
        if (a[1] > p[1]) != (b[1] > p[1]) && p[0] < (b[0] - a[0]) * (p[1] - a[1]) / (b[1] - a[1]) + a[0] {
            odd = !odd;
        }
    }
    odd
}

/// Whether `p` lies inside, or on an edge to within `near`.
pub(super) fn covers(outline: &[Point], p: Point, near: f64) -> bool {
    inside(outline, p)
        || (0..outline.len()).any(|i| distance_to_segment(outline[i], outline[(i + 1) % outline.len()], p) <= near)
}
