//! The panel's outline, lines and region borders, cut where they meet: the straight pieces a mesh must follow.

use std::collections::BTreeMap;

use super::error::PanelError;
use super::model::Panel;
use super::outline::{self, COINCIDENT};
use super::vector::{Point, cross, distance, lerp, nearest_on_segment, sub};

/// Where a piece came from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Origin {
    Edge(usize),
    Line(usize),
    Region,
}

/// A straight piece between two vertices; several features may share it.
#[derive(Debug, Clone)]
pub(super) struct Piece {
    pub ends: [usize; 2],
    pub origins: Vec<Origin>,
}

/// Vertices, and pieces that meet at vertices only.
#[derive(Debug, Clone)]
pub(super) struct Arrangement {
    pub vertices: Vec<Point>,
    pub pieces: Vec<Piece>,
}

struct Segment {
    a: Point,
    b: Point,
    origin: Origin,
}

/// Cuts all features of a panel at one another. Errors: a line or region that leaves the panel.
pub(super) fn arrange(panel: &Panel) -> Result<Arrangement, PanelError> {
    let near = COINCIDENT * outline::extent(&panel.outline);
    let segments = gather(panel, near)?;
    let mut vertices: Vec<Point> = Vec::new();
    let mut pieces: BTreeMap<[usize; 2], Vec<Origin>> = BTreeMap::new();
    // Outline corners first, so that everything near one snaps to it.
    for &corner in &panel.outline {
        vertex(&mut vertices, corner, near);
    }
    for (i, segment) in segments.iter().enumerate() {
        let mut cuts = vec![0.0, 1.0];
        for (j, other) in segments.iter().enumerate() {
            if i != j {
                cuts_between(segment, other, near, &mut cuts);
            }
        }
        cuts.sort_by(f64::total_cmp);
        let mut last = vertex(&mut vertices, segment.a, near);
        for &t in &cuts[1..] {
            let next = vertex(&mut vertices, lerp(segment.a, segment.b, t), near);
            if next != last {
                let origins = pieces.entry([last.min(next), last.max(next)]).or_default();
                if !origins.contains(&segment.origin) {
                    origins.push(segment.origin);
                }
                last = next;
            }
        }
    }
    let pieces: Vec<Piece> = pieces.into_iter().map(|(ends, origins)| Piece { ends, origins }).collect();
    for piece in &pieces {
        let middle = lerp(vertices[piece.ends[0]], vertices[piece.ends[1]], 0.5);
        if outline::covers(&panel.outline, middle, near) {
            continue;
        }
        for origin in &piece.origins {
            if let Origin::Line(index) = *origin {
                return Err(PanelError::LineOutside { index, at: middle });
            }
        }
    }
    // What is left outside belongs to regions that overhang: cut away.
    let pieces = pieces
        .into_iter()
        .filter(|p| outline::covers(&panel.outline, lerp(vertices[p.ends[0]], vertices[p.ends[1]], 0.5), near))
        .collect();
    Ok(Arrangement { vertices, pieces })
}

fn gather(panel: &Panel, near: f64) -> Result<Vec<Segment>, PanelError> {
    let n = panel.outline.len();
    let mut segments: Vec<Segment> = (0..n)
        .map(|i| Segment { a: panel.outline[i], b: panel.outline[(i + 1) % n], origin: Origin::Edge(i) })
        .collect();
    for (index, line) in panel.lines.iter().enumerate() {
        if line.from.iter().chain(&line.to).any(|v| !v.is_finite()) {
            return Err(PanelError::NotFinite { what: "an end of a line" });
        }
        for at in [line.from, line.to] {
            if !outline::covers(&panel.outline, at, near) {
                return Err(PanelError::LineOutside { index, at });
            }
        }
        if distance(line.from, line.to) <= near {
            return Err(PanelError::NotPositive { what: "the length of a line", value: distance(line.from, line.to) });
        }
        segments.push(Segment { a: line.from, b: line.to, origin: Origin::Line(index) });
    }
    for (index, region) in panel.regions.iter().enumerate() {
        if outline::check(&region.outline).is_err() {
            return Err(PanelError::Region { index });
        }
        let m = region.outline.len();
        for i in 0..m {
            segments.push(Segment { a: region.outline[i], b: region.outline[(i + 1) % m], origin: Origin::Region });
        }
    }
    Ok(segments)
}

/// Adds to `cuts` where `other` meets `segment`: ends that lie on it, and a crossing.
fn cuts_between(segment: &Segment, other: &Segment, near: f64, cuts: &mut Vec<f64>) {
    for end in [other.a, other.b] {
        let t = nearest_on_segment(segment.a, segment.b, end);
        if distance(lerp(segment.a, segment.b, t), end) <= near {
            cuts.push(t);
        }
    }
    let along = sub(segment.b, segment.a);
    let across = sub(other.b, other.a);
    let turn = cross(along, across);
    if turn.abs() <= 1e-12 * distance(segment.a, segment.b) * distance(other.a, other.b) {
        return;
    }
    let gap = sub(other.a, segment.a);
    let (t, s) = (cross(gap, across) / turn, cross(gap, along) / turn);
    if (0.0..=1.0).contains(&t) && (0.0..=1.0).contains(&s) {
        cuts.push(t);
    }
}

fn vertex(vertices: &mut Vec<Point>, p: Point, near: f64) -> usize {
    if let Some(found) = vertices.iter().position(|&v| distance(v, p) <= 2.0 * near) {
        return found;
    }
    vertices.push(p);
    vertices.len() - 1
}
