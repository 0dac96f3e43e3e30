//! A triangle mesh that follows every piece of an arrangement.
//!
//! Pieces are divided to the wanted size, a hexagonal lattice fills the inside, and a constrained Delaunay
//! triangulation joins them; nodes inside are then moved to the middle of their neighbours. Finer meshes come from
//! dividing triangles of this one (`refine`).

use spade::{ConstrainedDelaunayTriangulation, Point2, Triangulation};

use super::arrange::Arrangement;
use super::error::PanelError;
use super::model::Panel;
use super::outline;
use super::vector::{Point, cross, distance, distance_to_segment, lerp, sub};

/// Lattice points nearer to a piece than this part of the mesh size are left out: they would make needles.
const CLEARANCE: f64 = 0.6;
/// Passes of moving inside nodes to the middle of their neighbours; a few are enough to even out the seams.
const SMOOTHING_PASSES: usize = 3;
/// Twice the area over the square of the longest side, below which a triangle is but rounding.
const FLAT: f64 = 1e-9;
/// A first mesh with more nodes than this comes from features far smaller than the panel.
const MOST_FIRST_NODES: usize = 20_000;

/// Side of a mesh triangle that lies on a piece of the arrangement.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Side {
    /// Both ends and the middle.
    pub nodes: [u32; 3],
    /// Index into [`Arrangement::pieces`].
    pub piece: u32,
}

/// Nodes (m), triangles (anticlockwise node numbers) and the part of the panel that each triangle belongs to.
#[derive(Debug, Clone)]
pub struct Mesh {
    /// Corners first, then the middles of sides.
    pub nodes: Vec<Point>,
    /// Three corners, then the middles of sides 0–1, 1–2, 2–0.
    pub triangles: Vec<[u32; 6]>,
    /// 0 for the panel's own section, `i + 1` for region `i`.
    pub parts: Vec<u32>,
    pub(super) sides: Vec<Side>,
}

/// A mesh of corners only, before its sides' middles are numbered.
#[derive(Debug, Clone)]
pub(super) struct Skeleton {
    pub nodes: Vec<Point>,
    pub triangles: Vec<[u32; 3]>,
    pub parts: Vec<u32>,
    /// Sides on pieces; their middles are set when the mesh is whole.
    pub sides: Vec<Side>,
}

impl Skeleton {
    /// Adds a node in the middle of every side.
    pub(super) fn whole(self) -> Mesh {
        let Skeleton { mut nodes, triangles, parts, mut sides } = self;
        // Higher ends and middles of the sides at each lower end.
        let mut known: Vec<Vec<(u32, u32)>> = vec![Vec::new(); nodes.len()];
        let triangles = triangles
            .into_iter()
            .map(|[a, b, c]| {
                let middles = [(a, b), (b, c), (c, a)].map(|(p, q)| {
                    let (low, high) = (p.min(q), p.max(q));
                    if let Some((_, m)) = known[low as usize].iter().find(|(end, _)| *end == high) {
                        return *m;
                    }
                    let m = nodes.len() as u32;
                    nodes.push(lerp(nodes[low as usize], nodes[high as usize], 0.5));
                    known[low as usize].push((high, m));
                    m
                });
                [a, b, c, middles[0], middles[1], middles[2]]
            })
            .collect();
        for side in &mut sides {
            let [a, b, _] = side.nodes;
            if let Some((_, m)) = known[a.min(b) as usize].iter().find(|(end, _)| *end == a.max(b)) {
                side.nodes[2] = *m;
            }
        }
        Mesh { nodes, triangles, parts, sides }
    }
}

impl Mesh {
    /// The same without the middles.
    pub(super) fn skeleton(&self) -> Skeleton {
        let corners = self.triangles.iter().flat_map(|t| &t[..3]).max().map_or(0, |n| *n as usize + 1);
        Skeleton {
            nodes: self.nodes[..corners].to_vec(),
            triangles: self.triangles.iter().map(|t| [t[0], t[1], t[2]]).collect(),
            parts: self.parts.clone(),
            sides: self.sides.clone(),
        }
    }

    pub(super) fn corners(&self, triangle: usize) -> [Point; 3] {
        [0, 1, 2].map(|i| self.nodes[self.triangles[triangle][i] as usize])
    }

    pub(super) fn longest_side(&self, triangle: usize) -> f64 {
        let [a, b, c] = self.corners(triangle);
        distance(a, b).max(distance(b, c)).max(distance(c, a))
    }
}

/// The first mesh, with triangles of about `size` metres.
pub(super) fn triangulate(panel: &Panel, arrangement: &Arrangement, size: f64) -> Result<Mesh, PanelError> {
    let failed = |reason: &str| PanelError::Mesh { reason: reason.to_string() };
    let mut nodes = arrangement.vertices.clone();
    let mut sides = Vec::new();
    for (index, piece) in arrangement.pieces.iter().enumerate() {
        let [a, b] = piece.ends.map(|v| arrangement.vertices[v]);
        let parts = (distance(a, b) / size).round().max(1.0) as usize;
        let mut last = piece.ends[0] as u32;
        for k in 1..=parts {
            let next = if k == parts {
                piece.ends[1] as u32
            } else {
                nodes.push(lerp(a, b, k as f64 / parts as f64));
                (nodes.len() - 1) as u32
            };
            sides.push(Side { nodes: [last, next, last], piece: index as u32 });
            last = next;
        }
        if nodes.len() > MOST_FIRST_NODES {
            return Err(failed("its features are too many or too small"));
        }
    }
    let fixed = nodes.len();
    fill(panel, arrangement, size, &mut nodes);

    let mut cdt = ConstrainedDelaunayTriangulation::<Point2<f64>>::new();
    let mut of_handle = Vec::with_capacity(nodes.len());
    let mut handles = Vec::with_capacity(nodes.len());
    for (i, p) in nodes.iter().enumerate() {
        let handle = cdt.insert(Point2::new(p[0], p[1])).map_err(|e| failed(&e.to_string()))?;
        if handle.index() != of_handle.len() {
            return Err(failed("two features coincide"));
        }
        of_handle.push(i as u32);
        handles.push(handle);
    }
    for side in &sides {
        let [a, b, _] = side.nodes.map(|n| handles[n as usize]);
        if !cdt.can_add_constraint(a, b) {
            return Err(failed("two features cross at too small an angle"));
        }
        cdt.add_constraint(a, b);
    }
    let mut triangles = Vec::new();
    for face in cdt.inner_faces() {
        let t = face.vertices().map(|v| of_handle[v.fix().index()]);
        // Nodes along an oblique edge are in line but for rounding: flat slivers outside it are no part of the panel.
        let [a, b, c] = t.map(|n| nodes[n as usize]);
        let longest = distance(a, b).max(distance(b, c)).max(distance(c, a));
        let sliver = double_area([a, b, c]) <= FLAT * longest * longest;
        if !sliver && outline::inside(&panel.outline, centroid(&nodes, t)) {
            triangles.push(t);
        }
    }
    if triangles.is_empty() {
        return Err(failed("no triangle lies inside the outline"));
    }
    smooth(&mut nodes, &triangles, fixed);
    let (nodes, triangles, sides) = compact(nodes, triangles, sides);
    let parts = triangles.iter().map(|&t| part_at(panel, centroid(&nodes, t))).collect();
    Ok(Skeleton { nodes, triangles, parts, sides }.whole())
}

/// Hexagonal lattice points inside the outline and clear of every piece.
fn fill(panel: &Panel, arrangement: &Arrangement, size: f64, nodes: &mut Vec<Point>) {
    let (mut low, mut high) = ([f64::INFINITY; 2], [f64::NEG_INFINITY; 2]);
    for p in &panel.outline {
        for k in 0..2 {
            low[k] = low[k].min(p[k]);
            high[k] = high[k].max(p[k]);
        }
    }
    let columns = ((high[0] - low[0]) / size).round().max(1.0);
    let rows = ((high[1] - low[1]) / (size * 0.75_f64.sqrt())).round().max(1.0);
    let pitch = [(high[0] - low[0]) / columns, (high[1] - low[1]) / rows];
    for row in 0..=rows as usize {
        let shift = if row % 2 == 0 { 0.0 } else { 0.5 };
        for column in 0..=columns as usize {
            let p = [low[0] + (column as f64 + shift) * pitch[0], low[1] + row as f64 * pitch[1]];
            let clear = || {
                arrangement.pieces.iter().all(|piece| {
                    let [a, b] = piece.ends.map(|v| arrangement.vertices[v]);
                    distance_to_segment(a, b, p) >= CLEARANCE * size
                })
            };
            if outline::inside(&panel.outline, p) && clear() {
                nodes.push(p);
            }
        }
    }
}

fn centroid(nodes: &[Point], t: [u32; 3]) -> Point {
    let [a, b, c] = t.map(|n| nodes[n as usize]);
    [(a[0] + b[0] + c[0]) / 3.0, (a[1] + b[1] + c[1]) / 3.0]
}

/// Twice the area of a triangle, m².
pub(super) fn double_area([a, b, c]: [Point; 3]) -> f64 {
    cross(sub(b, a), sub(c, a))
}

fn smooth(nodes: &mut [Point], triangles: &[[u32; 3]], fixed: usize) {
    let mut around: Vec<Vec<u32>> = vec![Vec::new(); nodes.len()];
    for (i, t) in triangles.iter().enumerate() {
        for &n in t {
            around[n as usize].push(i as u32);
        }
    }
    for _ in 0..SMOOTHING_PASSES {
        for n in fixed..nodes.len() {
            let (mut sum, mut count) = ([0.0; 2], 0.0);
            for &t in &around[n] {
                for &m in triangles[t as usize].iter().filter(|&&m| m as usize != n) {
                    sum = [sum[0] + nodes[m as usize][0], sum[1] + nodes[m as usize][1]];
                    count += 1.0;
                }
            }
            if count == 0.0 {
                continue;
            }
            let kept = nodes[n];
            let least = |nodes: &[Point]| {
                around[n]
                    .iter()
                    .map(|&t| double_area(triangles[t as usize].map(|m| nodes[m as usize])))
                    .fold(f64::INFINITY, f64::min)
            };
            let before = least(nodes);
            nodes[n] = [sum[0] / count, sum[1] / count];
            if least(nodes) < 0.5 * before {
                nodes[n] = kept;
            }
        }
    }
}

/// Leaves out nodes that no triangle uses, and sides that touch them.
fn compact(
    nodes: Vec<Point>,
    mut triangles: Vec<[u32; 3]>,
    sides: Vec<Side>,
) -> (Vec<Point>, Vec<[u32; 3]>, Vec<Side>) {
    let mut number = vec![u32::MAX; nodes.len()];
    for &n in triangles.iter().flatten() {
        number[n as usize] = 0;
    }
    let mut kept = Vec::with_capacity(nodes.len());
    for (n, p) in nodes.into_iter().enumerate() {
        if number[n] == 0 {
            number[n] = kept.len() as u32;
            kept.push(p);
        }
    }
    for t in &mut triangles {
        *t = t.map(|n| number[n as usize]);
    }
    let sides = sides
        .into_iter()
        .map(|s| Side { nodes: s.nodes.map(|n| number[n as usize]), piece: s.piece })
        .filter(|s| s.nodes.iter().all(|&n| n != u32::MAX))
        .collect();
    (kept, triangles, sides)
}

fn part_at(panel: &Panel, p: Point) -> u32 {
    panel.regions.iter().rposition(|r| outline::inside(&r.outline, p)).map_or(0, |i| i as u32 + 1)
}
