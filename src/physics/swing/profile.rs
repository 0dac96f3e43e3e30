//! Whether a side profile is one closed convex outline.

use super::error::SwingError;

/// Corners nearer than this to each other are one corner, in metres.
const SAME_CORNER: f64 = 1e-9;

/// Bends whose sine is below this are straight on; rounding alone makes larger ones.
const STRAIGHT: f64 = 1e-9;

type Corner = [f64; 2];

fn cross(o: Corner, a: Corner, b: Corner) -> f64 {
    (a[0] - o[0]) * (b[1] - o[1]) - (a[1] - o[1]) * (b[0] - o[0])
}

fn apart(a: Corner, b: Corner) -> f64 {
    (a[0] - b[0]).hypot(a[1] - b[1])
}

fn sides_cross(a: Corner, b: Corner, c: Corner, d: Corner) -> bool {
    cross(a, b, c) * cross(a, b, d) < 0.0 && cross(c, d, a) * cross(c, d, b) < 0.0
}

/// The distinct corners of a closed convex (x, z) outline, in the order given.
///
/// # Errors
/// Not finite, open, flat, crossed or hollow.
pub(super) fn checked_profile(body: &str, profile: &[Corner]) -> Result<Vec<Corner>, SwingError> {
    if profile.iter().flatten().any(|c| !c.is_finite()) {
        return Err(SwingError::NotFinite { what: format!("a corner of the profile of {body}") });
    }
    let mut corners: Vec<Corner> = Vec::with_capacity(profile.len());
    for corner in profile {
        if corners.last().is_none_or(|last| apart(*last, *corner) > SAME_CORNER) {
            corners.push(*corner);
        }
    }
    while corners.len() > 1 && apart(corners[0], corners[corners.len() - 1]) <= SAME_CORNER {
        corners.pop();
    }
    let n = corners.len();
    if n < 3 {
        return Err(SwingError::OpenProfile { body: body.to_owned(), corners: n });
    }
    let at = |i: usize| corners[i % n];
    let bends: Vec<f64> = (0..n)
        .map(|i| {
            let bend = cross(at(i), at(i + 1), at(i + 2));
            let scale = apart(at(i), at(i + 1)) * apart(at(i + 1), at(i + 2));
            if bend.abs() <= STRAIGHT * scale { 0.0 } else { bend }
        })
        .collect();
    if bends.iter().all(|b| *b == 0.0) {
        return Err(SwingError::FlatProfile { body: body.to_owned() });
    }
    for i in 0..n {
        for j in i + 2..n {
            let neighbours = i == 0 && j == n - 1;
            if !neighbours && sides_cross(at(i), at(i + 1), at(j), at(j + 1)) {
                return Err(SwingError::CrossedProfile { body: body.to_owned(), first: i + 1, second: j + 1 });
            }
        }
    }
    let area: f64 = (1..n - 1).map(|i| cross(at(0), at(i), at(i + 1))).sum();
    if let Some(i) = bends.iter().position(|b| b * area < 0.0) {
        return Err(SwingError::HollowProfile { body: body.to_owned(), corner: (i + 1) % n + 1 });
    }
    Ok(corners)
}
