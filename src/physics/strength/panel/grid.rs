//! A mesh of rows and columns for a panel of a transom's shape, whose nodes move little where the shape moves little.
//!
//! An unstructured mesh has another number of nodes, or other neighbours, after the least change of a reading, and every
//! figure then jumps by what its error differs. Here the numbers of rows and columns follow the size alone.

use std::collections::HashMap;

use super::arrange::{Arrangement, Origin, Piece};
use super::error::PanelError;
use super::mesh::{Mesh, Side, Skeleton, double_area};
use super::model::{Line, Panel};
use super::outline;
use super::vector::{Point, distance, distance_to_segment, lerp};

/// A transom's shape: it is its own mirror image about `y = 0`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shape {
    /// Where the bottom ends, m; the bottom runs straight from `[0, 0]` to it.
    pub chine: Point,
    /// Half the width at the corners and their height, m.
    pub corner: Point,
    /// Half the width and the height of the edge that lies lower between the corners, m; `None` where the top is level.
    pub cutout: Option<Point>,
}

/// Columns and rows of a [`Shape`], as wide as is asked and no wider.
struct Grid {
    shape: Shape,
    /// Half the width at the height of the cutout, m, or of the corners.
    side: f64,
    /// Columns from the centreline to the cutout's side and on to the panel's; rows up to the cutout and on to the corners.
    columns: [i32; 2],
    rows: [i32; 2],
}

/// Columns and rows of places about which moments are told: 2.5 m and 0.7 m of transom at about 25 mm.
const LATTICE_COLUMNS: [i32; 2] = [24, 24];
const LATTICE_ROWS: [i32; 2] = [28, 8];

impl Shape {
    /// Its corners anticlockwise: bottom (left out where that is level), chine, corner, cutout, and the mirror image.
    pub fn outline(&self) -> Vec<Point> {
        let mut port = vec![self.chine, self.corner];
        if let Some([half, height]) = self.cutout {
            port.extend([[half, self.corner[1]], [half, height]]);
        }
        let starboard: Vec<Point> = port.iter().rev().map(|[y, z]| [-y, *z]).collect();
        let keel = (self.chine[1] > 0.0).then_some([0.0, 0.0]);
        keel.into_iter().chain(port).chain(starboard).collect()
    }

    /// Height of the edge on which engines hang, m.
    fn top(&self) -> f64 {
        self.cutout.map_or(self.corner[1], |cutout| cutout[1])
    }

    /// Places all over it, as many whatever its size.
    pub fn lattice(&self) -> Vec<Point> {
        let grid = Grid { columns: LATTICE_COLUMNS, rows: LATTICE_ROWS, ..Grid::new(*self, self.corner[0]) };
        let [inner, outer] = grid.columns;
        let [lower, upper] = grid.rows;
        let (all, upper) = if self.cutout.is_some() { (inner + outer, upper) } else { (inner, 0) };
        (-all..=all)
            .flat_map(|column: i32| {
                let rows = if column.abs() >= inner { lower + upper } else { lower };
                (0..=rows).map(move |row| (column, row))
            })
            .map(|(column, row)| grid.at(column, row))
            .collect()
    }

    /// A mesh of triangles with sides of about `size` m.
    pub(super) fn mesh(&self, size: f64) -> Skeleton {
        let grid = Grid::new(*self, size);
        let mut numbers: HashMap<(i32, i32), u32> = HashMap::new();
        let mut nodes = Vec::new();
        let mut triangles = Vec::new();
        let [inner, outer] = grid.columns;
        let [lower, upper] = grid.rows;
        let mut number = |at: (i32, i32)| {
            *numbers.entry(at).or_insert_with(|| {
                nodes.push(grid.at(at.0, at.1));
                (nodes.len() - 1) as u32
            })
        };
        let all = inner + outer;
        for column in -all..all {
            let within = if column < 0 { -column - 1 } else { column };
            let rows = if within >= inner { lower + upper } else { lower };
            for row in 0..rows {
                let quad =
                    [(column, row), (column + 1, row), (column + 1, row + 1), (column, row + 1)].map(&mut number);
                // Both halves are cut the same way seen from the centreline.
                let halves = if (within + row) % 2 == usize::from(column < 0) as i32 {
                    [[0, 1, 2], [0, 2, 3]]
                } else {
                    [[0, 1, 3], [1, 2, 3]]
                };
                triangles.extend(halves.map(|half| half.map(|i: usize| quad[i])));
            }
        }
        let parts = vec![0; triangles.len()];
        Skeleton { nodes, triangles, parts, sides: Vec::new() }
    }
}

impl Grid {
    fn new(shape: Shape, size: f64) -> Self {
        let count = |length: f64| ((length / size).ceil() as i32).max(2);
        let top = shape.top();
        let part = (top - shape.chine[1]) / (shape.corner[1] - shape.chine[1]);
        let side = lerp(shape.chine, shape.corner, part.clamp(0.0, 1.0))[0];
        let (columns, upper) = match shape.cutout {
            Some([half, _]) => ([count(half), count(side - half)], count(shape.corner[1] - top)),
            None => ([count(side), 0], 0),
        };
        Self { shape, side, columns, rows: [count(top), upper] }
    }

    fn at(&self, column: i32, row: i32) -> Point {
        let [inner, outer] = self.columns;
        let [lower, upper] = self.rows;
        let within = column.abs();
        let half = self.shape.cutout.map_or(self.side, |cutout| cutout[0]);
        let across = if within <= inner {
            half * f64::from(within) / f64::from(inner)
        } else {
            half + (self.side - half) * f64::from(within - inner) / f64::from(outer)
        };
        let part = across / self.side;
        let foot = [part * self.shape.chine[0], part * self.shape.chine[1]];
        let head = [across, self.shape.top()];
        let [y, z] = if row <= lower {
            lerp(foot, head, f64::from(row) / f64::from(lower))
        } else {
            let out = (across - half) / (self.side - half);
            let corner = [half + (self.shape.corner[0] - half) * out, self.shape.corner[1]];
            lerp(head, corner, f64::from(row - lower) / f64::from(upper))
        };
        [if column < 0 { -y } else { y }, z]
    }
}

/// The mesh with its sides on the panel's edges, and the arrangement that names those.
///
/// Errors: triangles that are turned over, of a shape that is none.
pub(super) fn along_edges(panel: &Panel, mut mesh: Skeleton) -> Result<(Mesh, Arrangement), PanelError> {
    let turned = mesh.triangles.iter().any(|t| double_area(t.map(|n| mesh.nodes[n as usize])) <= 0.0);
    if turned {
        return Err(PanelError::Mesh { reason: "the transom's shape folds over itself".to_string() });
    }
    let count = panel.outline.len();
    let near = outline::COINCIDENT * outline::extent(&panel.outline);
    let edge = |i: usize| [panel.outline[i], panel.outline[(i + 1) % count]];
    // A beam along an edge is a line of its own; nothing else of the mesh follows lines.
    let on = |i: usize, line: &Line| {
        let [a, b] = edge(i);
        [[line.from, line.to], [line.to, line.from]].iter().any(|[p, q]| distance(a, *p) + distance(b, *q) < near)
    };
    let pieces = (0..count)
        .map(|i| {
            let lines = (0..panel.lines.len()).filter(|&line| on(i, &panel.lines[line])).map(Origin::Line);
            Piece { ends: [i, (i + 1) % count], origins: std::iter::once(Origin::Edge(i)).chain(lines).collect() }
        })
        .collect();
    let mut borders: HashMap<(u32, u32), (u32, [u32; 2])> = HashMap::new();
    for t in &mesh.triangles {
        for (a, b) in [(t[0], t[1]), (t[1], t[2]), (t[2], t[0])] {
            borders.entry((a.min(b), a.max(b))).or_insert((0, [a, b])).0 += 1;
        }
    }
    let mut sides: Vec<[u32; 2]> = borders.into_values().filter(|(uses, _)| *uses == 1).map(|(_, side)| side).collect();
    sides.sort_unstable();
    for [a, b] in sides {
        let middle = lerp(mesh.nodes[a as usize], mesh.nodes[b as usize], 0.5);
        let off = |i: usize| {
            let [p, q] = edge(i);
            distance_to_segment(p, q, middle)
        };
        let nearest = (0..count).min_by(|&i, &j| off(i).total_cmp(&off(j))).unwrap_or(0);
        mesh.sides.push(Side { nodes: [a, b, a], piece: nearest as u32 });
    }
    Ok((mesh.whole(), Arrangement { vertices: panel.outline.clone(), pieces }))
}
