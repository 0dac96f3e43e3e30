//! The hull as it was assumed: profile and sections, with the waters before and after.

use std::collections::HashMap;

use super::kit::{Board, Drawing, Layout, Pen, Point, Side, at, ink};
use super::waters::{Lying, waters};
use crate::case::Case;
use crate::case::float::Float;
use crate::physics::float::TriMesh;
use crate::quantity::{Dimensioned, Measure, Style, Units};
use uom::si::f64::Length;

/// Stations at which the profile is taken.
const STATIONS: usize = 60;
/// Sections that are drawn, in shares of the length from the transom's foot, from which all places are counted.
const SECTIONS: [f64; 5] = [0.01, 0.25, 0.5, 0.75, 0.93];
/// Points nearer than this to the line of their neighbours are left out, in millimetres.
const STRAIGHT_MM: f64 = 1.5;

/// From the side.
pub(super) fn profile(case: &Case, units: Units) -> Option<Drawing> {
    let float = case.float().ok()?;
    let mesh = &float.built.mesh;
    let (low, high) = bounds(mesh)?;
    let mut bottom: Vec<Point> = Vec::new();
    let mut top: Vec<Point> = Vec::new();
    for i in 0..=STATIONS {
        let share = (i as f64 / STATIONS as f64).clamp(1e-4, 1.0 - 1e-4);
        let x = low[0] + (high[0] - low[0]) * share;
        let heights: Vec<f64> = slice(mesh, x).iter().flatten().map(|point| point.y).collect();
        let Some((least, most)) = span(&heights) else {
            continue;
        };
        bottom.push(at(x * 1e3, least));
        top.push(at(x * 1e3, most));
    }
    let mut board = Board::default();
    let mut outline = straightened(&bottom);
    outline.extend(straightened(&top).into_iter().rev());
    board.area(outline, Pen::EDGE.filled(ink::HULL));
    let (aft, fore) = (low[0] * 1e3, high[0] * 1e3);
    draw_waters(&mut board, float, aft - 250.0, fore + 150.0, units);
    let feet = |metres: f64| Measure::styled(Length::from_si(metres), Style::FeetInches).show(units);
    board.dimension("length", Side::Below, at(aft, low[2] * 1e3), at(fore, low[2] * 1e3), feet(high[0] - low[0]));
    board.dimension("height", Side::Left, at(aft, low[2] * 1e3), at(fore, high[2] * 1e3), feet(high[2] - low[2]));
    for edge in &float.edges {
        if edge.kind != crate::job::EdgeKind::Sheer && edge.point.y >= 0.0 {
            board.callout(at(edge.point.x * 1e3, edge.point.z * 1e3), edge.name.clone());
        }
    }
    board.finish(
        Layout {
            name: "hull-profile",
            title: "The hull from the side, as assumed".to_owned(),
            description: format!(
                "A hull {} long, made from {}, with the water before and after.",
                feet(high[0] - low[0]),
                float.built.how
            ),
            notes: vec![format!(
                "Made from {}. Bow to the right; the water stands as she lies in it.",
                float.built.how
            )],
        },
        units,
    )
}

/// The sections: aft ones on the left, forward ones on the right.
pub(super) fn sections(case: &Case, units: Units) -> Option<Drawing> {
    let float = case.float().ok()?;
    let mesh = &float.built.mesh;
    let (low, high) = bounds(mesh)?;
    let mut board = Board::default();
    for share in SECTIONS {
        let x = high[0] * share;
        let forward = share > 0.5;
        for line in chained(slice(mesh, x)) {
            let half: Vec<Point> = line
                .into_iter()
                .filter(|point| point.x >= -0.5)
                .map(|point| if forward { point } else { at(-point.x, point.y) })
                .collect();
            if half.len() > 1 {
                board.line(straightened(&half), Pen::EDGE);
            }
        }
    }
    let feet = |metres: f64| Measure::styled(Length::from_si(metres), Style::FeetInches).show(units);
    let half = (high[1] - low[1]) / 2.0 * 1e3;
    board.line(vec![at(0.0, low[2] * 1e3 - 60.0), at(0.0, high[2] * 1e3 + 60.0)], Pen::CENTRE);
    board.reserve(&[at(-half, low[2] * 1e3), at(half, high[2] * 1e3)], 0.0);
    board.dimension("beam", Side::Below, at(-half, low[2] * 1e3), at(half, low[2] * 1e3), feet(high[1] - low[1]));
    board.dimension("height", Side::Left, at(-half, low[2] * 1e3), at(half, high[2] * 1e3), feet(high[2] - low[2]));
    let places: Vec<String> = SECTIONS.iter().map(|share| feet(high[0] * share)).collect();
    board.finish(
        Layout {
            name: "hull-sections",
            title: "Sections of the hull, as assumed".to_owned(),
            description: "Half sections of the hull: aft ones on the left, forward ones on the right.".to_owned(),
            notes: vec![format!(
                "Aft of the middle on the left, forward of it on the right; forward of the transom's foot by {}.",
                places.join(", ")
            )],
        },
        units,
    )
}

fn draw_waters(board: &mut Board, float: &Float, aft: f64, fore: f64, units: Units) {
    for lying in waters(float) {
        let Lying { name, plane, pen, .. } = lying;
        let height = |x: f64| {
            let normal = plane.normal();
            (plane.offset().value - normal.x * x / 1e3) / normal.z * 1e3
        };
        board.line(vec![at(aft, height(aft)), at(fore, height(fore))], pen);
        let draft = Measure::tape(plane.offset()).show(units);
        board.callout(at(fore, height(fore)), format!("{name}: {draft} at the transom"));
    }
}

fn bounds(mesh: &TriMesh) -> Option<([f64; 3], [f64; 3])> {
    let first = mesh.vertices().first()?;
    let start = ([first.x, first.y, first.z], [first.x, first.y, first.z]);
    Some(mesh.vertices().iter().fold(start, |(mut low, mut high), vertex| {
        for (axis, value) in [vertex.x, vertex.y, vertex.z].into_iter().enumerate() {
            low[axis] = low[axis].min(value);
            high[axis] = high[axis].max(value);
        }
        (low, high)
    }))
}

fn span(values: &[f64]) -> Option<(f64, f64)> {
    let first = *values.first()?;
    Some(values.iter().fold((first, first), |(low, high), value| (low.min(*value), high.max(*value))))
}

/// Where the upright plane so far forward (metres) cuts the surface: stretches in millimetres, to port and
/// up.
fn slice(mesh: &TriMesh, x: f64) -> Vec<[Point; 2]> {
    let corner = |index: u32| mesh.vertices().get(index as usize);
    let mut stretches = Vec::new();
    for face in mesh.faces() {
        let [Some(a), Some(b), Some(c)] = face.map(corner) else {
            continue;
        };
        let mut ends = Vec::new();
        for (p, q) in [(a, b), (b, c), (c, a)] {
            if (p.x < x) != (q.x < x) {
                let share = (x - p.x) / (q.x - p.x);
                let across = p.y + (q.y - p.y) * share;
                let up = p.z + (q.z - p.z) * share;
                ends.push(at(across * 1e3, up * 1e3));
            }
        }
        if let [from, to] = ends.as_slice()
            && from.distance(*to) > 0.01
        {
            stretches.push([*from, *to]);
        }
    }
    stretches
}

/// A point's place to the tenth of a millimetre, by which ends of stretches are matched.
fn key(point: Point) -> (i64, i64) {
    ((point.x * 10.0).round() as i64, (point.y * 10.0).round() as i64)
}

/// Stretches strung together into lines.
fn chained(stretches: Vec<[Point; 2]>) -> Vec<Vec<Point>> {
    let mut at_end: HashMap<(i64, i64), Vec<usize>> = HashMap::new();
    for (i, [from, to]) in stretches.iter().enumerate() {
        at_end.entry(key(*from)).or_default().push(i);
        at_end.entry(key(*to)).or_default().push(i);
    }
    let mut used = vec![false; stretches.len()];
    let mut lines = Vec::new();
    for start in 0..stretches.len() {
        if used[start] {
            continue;
        }
        used[start] = true;
        let mut line = vec![stretches[start][0], stretches[start][1]];
        for _ in 0..2 {
            while let Some(end) = line.last().copied()
                && let Some(next) = at_end.get(&key(end)).and_then(|all| all.iter().copied().find(|i| !used[*i]))
            {
                used[next] = true;
                let [from, to] = stretches[next];
                line.push(if key(from) == key(end) { to } else { from });
            }
            line.reverse();
        }
        lines.push(line);
    }
    lines
}

/// The line without points that lie on the way between their neighbours.
fn straightened(line: &[Point]) -> Vec<Point> {
    let mut kept: Vec<Point> = Vec::new();
    for (i, point) in line.iter().enumerate() {
        let (Some(last), Some(next)) = (kept.last(), line.get(i + 1)) else {
            kept.push(*point);
            continue;
        };
        let long = last.distance(*next).max(1e-9);
        let off = ((next.x - last.x) * (point.y - last.y) - (next.y - last.y) * (point.x - last.x)).abs() / long;
        if off > STRAIGHT_MM {
            kept.push(*point);
        }
    }
    kept
}
