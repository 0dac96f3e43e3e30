//! From a few sections to a closed hull.

use nalgebra::Point3;

use super::error::LoftError;
use super::mesh::TriMesh;
use super::weld::weld;

/// Most slices between two neighbouring sections.
pub const MAX_SLICES: usize = 256;

/// How the lines of the hull run between given sections. Both pass through every given point.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Fairing {
    /// Straight from section to section.
    Straight,
    /// Cubic without overshoot (Fritsch and Butland's slopes for Fritsch and Carlson's monotone
    /// interpolation): fair lines that never bulge past the sections.
    #[default]
    Monotone,
}

/// One longitudinal line: a point in each section, from aft to forward.
type Line = Vec<Point3<f64>>;

/// Closes lines of the port side, keel (on the centreline) first and sheer last, into a hull with transom,
/// flat deck and bow, and mirrors it. All lines have a point for each section.
pub(super) fn loft(lines: &[Line], fairing: Fairing, slices: usize) -> Result<TriMesh, LoftError> {
    if !(1..=MAX_SLICES).contains(&slices) {
        return Err(LoftError::Slices { slices, max: MAX_SLICES });
    }
    let mut lines: Vec<Line> = lines.iter().map(|line| fair(line, fairing, slices)).collect();
    if let (Some(keel), Some(sheer)) = (lines.first(), lines.last()) {
        let on_centreline = |line: &Line| -> Line { line.iter().map(|p| Point3::new(p.x, 0.0, p.z)).collect() };
        let (bottom, deck) = (on_centreline(keel), on_centreline(sheer));
        if keel.iter().any(|p| p.y > 0.0) {
            lines.insert(0, bottom);
        }
        lines.push(deck);
    }
    let (vertices, faces) = port_half(&lines);
    let (vertices, faces) = mirrored(&vertices, &faces);
    let (vertices, faces) = weld(&vertices, &faces, 0.0);
    Ok(TriMesh::new(vertices, faces)?)
}

/// Skin, transom and bow of the port side, open along the centreline.
fn port_half(lines: &[Line]) -> (Vec<Point3<f64>>, Vec<[u32; 3]>) {
    let ring = lines.len();
    let rings = lines.first().map_or(0, Vec::len);
    let vertices: Vec<Point3<f64>> = (0..rings).flat_map(|ring| lines.iter().map(move |line| line[ring])).collect();
    let at = |section: usize, line: usize| (section * ring + line) as u32;
    let mut faces = Vec::new();
    for section in 0..rings.saturating_sub(1) {
        for line in 0..ring.saturating_sub(1) {
            let (a, b) = (at(section, line), at(section + 1, line));
            let (c, d) = (at(section + 1, line + 1), at(section, line + 1));
            faces.extend([[a, c, b], [a, d, c]]);
        }
    }
    for line in 1..ring.saturating_sub(1) {
        // Fans from the keel close transom and bow: flat, so that the fan is exact for any outline.
        faces.push([at(0, 0), at(0, line + 1), at(0, line)]);
        let bow = rings - 1;
        faces.push([at(bow, 0), at(bow, line), at(bow, line + 1)]);
    }
    (vertices, faces)
}

fn mirrored(vertices: &[Point3<f64>], faces: &[[u32; 3]]) -> (Vec<Point3<f64>>, Vec<[u32; 3]>) {
    let starboard = vertices.iter().map(|v| Point3::new(v.x, -v.y, v.z));
    let shift = vertices.len() as u32;
    let other = faces.iter().map(|&[a, b, c]| [a + shift, c + shift, b + shift]);
    (vertices.iter().copied().chain(starboard).collect(), faces.iter().copied().chain(other).collect())
}

/// The line with `slices` pieces between each two of its points.
fn fair(line: &Line, fairing: Fairing, slices: usize) -> Line {
    let slopes = match fairing {
        Fairing::Straight => None,
        Fairing::Monotone => Some((slopes(line, |p| p.y), slopes(line, |p| p.z))),
    };
    let mut fine = Vec::with_capacity(line.len() * slices);
    for (i, pair) in line.windows(2).enumerate() {
        let (a, b) = (pair[0], pair[1]);
        fine.push(a);
        for slice in 1..slices {
            let t = slice as f64 / slices as f64;
            let straight = a + (b - a) * t;
            fine.push(match &slopes {
                None => straight,
                Some((y, z)) => Point3::new(
                    straight.x,
                    hermite(t, b.x - a.x, [a.y, b.y], [y[i], y[i + 1]]),
                    hermite(t, b.x - a.x, [a.z, b.z], [z[i], z[i + 1]]),
                ),
            });
        }
    }
    fine.extend(line.last());
    fine
}

fn hermite(t: f64, length: f64, value: [f64; 2], slope: [f64; 2]) -> f64 {
    let s = 1.0 - t;
    value[0] * (1.0 + 2.0 * t) * s * s
        + value[1] * t * t * (3.0 - 2.0 * t)
        + length * t * s * (slope[0] * s - slope[1] * t)
}

/// Slopes at the points that keep each piece monotone: the weighted harmonic mean of Fritsch and Butland,
/// SIAM J. Sci. Stat. Comput. 5 (1984) 300, with the three-point end slopes limited likewise.
fn slopes(line: &Line, value: impl Fn(&Point3<f64>) -> f64) -> Vec<f64> {
    let lengths: Vec<f64> = line.windows(2).map(|p| p[1].x - p[0].x).collect();
    let secants: Vec<f64> = line.windows(2).zip(&lengths).map(|(p, h)| (value(&p[1]) - value(&p[0])) / h).collect();
    let pieces = secants.len();
    if pieces < 2 {
        return vec![secants.first().copied().unwrap_or(0.0); line.len()];
    }
    let end = |h: [f64; 2], d: [f64; 2]| {
        let slope = ((2.0 * h[0] + h[1]) * d[0] - h[0] * d[1]) / (h[0] + h[1]);
        if slope * d[0] <= 0.0 {
            0.0
        } else if d[0] * d[1] <= 0.0 && slope.abs() > 3.0 * d[0].abs() {
            3.0 * d[0]
        } else {
            slope
        }
    };
    let inner = (1..pieces).map(|i| {
        let (h, d) = ([lengths[i - 1], lengths[i]], [secants[i - 1], secants[i]]);
        if d[0] * d[1] <= 0.0 {
            return 0.0;
        }
        let weights = [2.0 * h[1] + h[0], h[1] + 2.0 * h[0]];
        (weights[0] + weights[1]) / (weights[0] / d[0] + weights[1] / d[1])
    });
    let last = pieces - 1;
    std::iter::once(end([lengths[0], lengths[1]], [secants[0], secants[1]]))
        .chain(inner)
        .chain([end([lengths[last], lengths[last - 1]], [secants[last], secants[last - 1]])])
        .collect()
}
