//! Loads on a panel, as nodal forces.

use super::clip;
use super::error::PanelError;
use super::mesh::{Mesh, double_area};
use super::model::Panel;
use super::outline;
use super::reference::{NODES, shape};
use super::vector::{Point, cross, sub};

/// A rectangle on the panel, its sides along y and z.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rect {
    /// Its middle, `[y, z]`, m.
    pub centre: Point,
    /// Full side along y, m.
    pub width: f64,
    /// Full side along z, m.
    pub height: f64,
}

/// A triangle, and the places and weights of a patch that lie on it.
type Pieces = (usize, Vec<([f64; 3], f64)>);

impl Rect {
    /// Its corners, anticlockwise.
    pub(super) fn corners(&self) -> [Point; 4] {
        let (half_width, half_height) = (0.5 * self.width, 0.5 * self.height);
        [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)]
            .map(|(a, b)| [self.centre[0] + a * half_width, self.centre[1] + b * half_height])
    }
}

/// A load across the panel, positive along x (forward on a transom).
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Load {
    /// Uniform over the whole panel, Pa.
    Pressure(f64),
    /// A force spread evenly over a rectangle that lies on the panel: a bracket's foot, a washer, a backing plate.
    Patch {
        /// What it is spread over.
        area: Rect,
        /// All of it, N.
        force: f64,
    },
    /// A concentrated force.
    Point {
        /// Where it acts, `[y, z]`, m.
        at: Point,
        /// N.
        force: f64,
    },
}

/// A moment (N·m) as two opposite forces on two patches: `push` is driven along +x, `pull` along −x; the arm is the
/// distance between their centres. `None` if the centres coincide.
pub fn couple(push: Rect, pull: Rect, moment: f64) -> Option<[Load; 2]> {
    let [y, z] = sub(push.centre, pull.centre);
    let arm = y.hypot(z);
    (arm > 0.0).then(|| {
        let force = moment / arm;
        [Load::Patch { area: push, force }, Load::Patch { area: pull, force: -force }]
    })
}

/// Finite, and on the panel.
pub(super) fn check(panel: &Panel, loads: &[Load]) -> Result<(), PanelError> {
    let near = outline::COINCIDENT * outline::extent(&panel.outline);
    for (index, load) in loads.iter().enumerate() {
        let (numbers, places): (Vec<f64>, Vec<Point>) = match *load {
            Load::Pressure(p) => (vec![p], vec![]),
            Load::Point { at, force } => (vec![force, at[0], at[1]], vec![at]),
            Load::Patch { area: Rect { centre: [y, z], width, height }, force } => {
                for (what, value) in [("a patch's width", width), ("a patch's height", height)] {
                    if value <= 0.0 {
                        return Err(PanelError::NotPositive { what, value });
                    }
                }
                let mut places = Rect { centre: [y, z], width, height }.corners().to_vec();
                // An outline corner inside the patch means that part of the patch hangs out.
                for corner in &panel.outline {
                    if (corner[0] - y).abs() < 0.5 * width - near && (corner[1] - z).abs() < 0.5 * height - near {
                        return Err(PanelError::LoadOutside { index, at: *corner });
                    }
                }
                places.push([y, z]);
                (vec![force, y, z, width, height], places)
            }
        };
        if numbers.iter().any(|v| !v.is_finite()) {
            return Err(PanelError::NotFinite { what: "a load" });
        }
        for at in places {
            if !outline::covers(&panel.outline, at, near) {
                return Err(PanelError::LoadOutside { index, at });
            }
        }
    }
    Ok(())
}

/// Nodal forces (N) of each of several sets of loads.
pub(super) fn nodal_forces_of<L: AsRef<[Load]>>(
    mesh: &Mesh,
    size: f64,
    sets: &[L],
) -> Result<Vec<Vec<f64>>, PanelError> {
    let locator = Locator::new(mesh, size);
    let mut known = Vec::new();
    sets.iter().map(|loads| nodal_forces(mesh, &locator, loads.as_ref(), &mut known)).collect()
}

/// Nodal forces (N) on a mesh. The forces carry the whole of each load and its exact moment, for the shape functions
/// reproduce both. Patches that are `known` already are not cut again.
fn nodal_forces(
    mesh: &Mesh,
    locator: &Locator,
    loads: &[Load],
    known: &mut Vec<(Rect, Shares)>,
) -> Result<Vec<f64>, PanelError> {
    let mut forces = vec![0.0; mesh.nodes.len()];
    for (index, load) in loads.iter().enumerate() {
        match *load {
            Load::Pressure(p) => {
                for t in 0..mesh.triangles.len() {
                    // Quadratic shapes hand a uniform load to the middles of the sides alone.
                    let share = p * double_area(mesh.corners(t)) / 6.0;
                    for n in &mesh.triangles[t][3..] {
                        forces[*n as usize] += share;
                    }
                }
            }
            Load::Point { at, force } => {
                locator.spread(at, force, &mut forces).ok_or(PanelError::LoadOutside { index, at })?;
            }
            Load::Patch { area, force } => {
                let place = known.iter().position(|(other, _)| *other == area).unwrap_or_else(|| {
                    known.push((area, shares(mesh, locator, area)));
                    known.len() - 1
                });
                let (_, Shares { covered, of_nodes }) = &known[place];
                if *covered <= 0.5 * area.width * area.height {
                    return Err(PanelError::LoadOutside { index, at: area.centre });
                }
                for (node, share) in of_nodes {
                    forces[*node as usize] += share * force;
                }
            }
        }
    }
    Ok(forces)
}

/// A patch on a mesh.
struct Shares {
    /// What of it lies on the mesh, m².
    covered: f64,
    /// Nodes with their parts of a force on it.
    of_nodes: Vec<(u32, f64)>,
}

fn shares(mesh: &Mesh, locator: &Locator, area: Rect) -> Shares {
    let corners = area.corners();
    let near = locator.near(corners).into_iter();
    let found: Vec<Pieces> = near.map(|t| (t, clip::points(&corners, mesh.corners(t)))).collect();
    // Over what lies on the mesh: the rest is rounding at the outline, as the check has seen to.
    let covered: f64 = found.iter().flat_map(|(_, points)| points).map(|(_, weight)| weight).sum();
    let of_nodes = found
        .iter()
        .filter(|(_, points)| !points.is_empty())
        .flat_map(|(t, points)| {
            let mut own = [0.0; NODES];
            for (n, weight) in points {
                own.iter_mut().zip(shape(*n)).for_each(|(own, share)| *own += share * weight / covered);
            }
            mesh.triangles[*t].into_iter().zip(own)
        })
        .collect();
    Shares { covered, of_nodes }
}

/// Finds the triangle under a place by a grid of buckets.
pub(super) struct Locator<'a> {
    mesh: &'a Mesh,
    low: Point,
    pitch: f64,
    columns: usize,
    rows: usize,
    /// Triangles of bucket `b` are `members[start[b]..start[b + 1]]`.
    start: Vec<u32>,
    members: Vec<u32>,
}

/// How far outside a triangle (in barycentric coordinates) a place may be and still count as on it.
const SLACK: f64 = 1e-4;

impl<'a> Locator<'a> {
    pub(super) fn new(mesh: &'a Mesh, size: f64) -> Self {
        let (mut low, mut high) = ([f64::INFINITY; 2], [f64::NEG_INFINITY; 2]);
        for p in &mesh.nodes {
            for k in 0..2 {
                low[k] = low[k].min(p[k]);
                high[k] = high[k].max(p[k]);
            }
        }
        // A long, thin panel must not ask for more buckets than a few for each triangle.
        let least = ((high[0] - low[0]) * (high[1] - low[1]) / (2 * mesh.triangles.len()) as f64).sqrt();
        let pitch = size.max(least).max(high[0].max(high[1]).abs() * f64::EPSILON);
        let [columns, rows] = [0, 1].map(|k| ((high[k] - low[k]) / pitch) as usize + 1);
        let mut locator = Self { mesh, low, pitch, columns, rows, start: vec![0; columns * rows + 1], members: vec![] };
        for t in 0..mesh.triangles.len() {
            locator.buckets(t).for_each(|b| locator.start[b + 1] += 1);
        }
        for b in 0..columns * rows {
            locator.start[b + 1] += locator.start[b];
        }
        let mut next = locator.start.clone();
        locator.members = vec![0; locator.start[columns * rows] as usize];
        for t in 0..mesh.triangles.len() {
            for b in locator.buckets(t) {
                locator.members[next[b] as usize] = t as u32;
                next[b] += 1;
            }
        }
        locator
    }

    fn bucket(&self, p: Point) -> [usize; 2] {
        let index = |k: usize, count: usize| (((p[k] - self.low[k]) / self.pitch).max(0.0) as usize).min(count - 1);
        [index(0, self.columns), index(1, self.rows)]
    }

    fn buckets(&self, t: usize) -> impl Iterator<Item = usize> + use<> {
        let corners = self.mesh.corners(t);
        let pick = |f: fn(f64, f64) -> f64, k: usize| f(f(corners[0][k], corners[1][k]), corners[2][k]);
        let [i0, j0] = self.bucket([pick(f64::min, 0), pick(f64::min, 1)]);
        let [i1, j1] = self.bucket([pick(f64::max, 0), pick(f64::max, 1)]);
        let columns = self.columns;
        (j0..=j1).flat_map(move |j| (i0..=i1).map(move |i| j * columns + i))
    }

    /// The triangles that may overlap a box of these corners, each once.
    fn near(&self, corners: [Point; 4]) -> Vec<usize> {
        let [i0, j0] = self.bucket(corners[0]);
        let [i1, j1] = self.bucket(corners[2]);
        let buckets = (j0..=j1).flat_map(|j| (i0..=i1).map(move |i| j * self.columns + i));
        let mut all: Vec<usize> = buckets
            .flat_map(|b| &self.members[self.start[b] as usize..self.start[b + 1] as usize])
            .map(|t| *t as usize)
            .collect();
        all.sort_unstable();
        all.dedup();
        all
    }

    fn spread(&self, at: Point, force: f64, forces: &mut [f64]) -> Option<()> {
        let (t, n) = self.find(at)?;
        for (node, share) in self.mesh.triangles[t].iter().zip(shape(n)) {
            forces[*node as usize] += share * force;
        }
        Some(())
    }

    /// The triangle under a place, and the place in its barycentric coordinates; `None` off the panel.
    pub(super) fn find(&self, at: Point) -> Option<(usize, [f64; 3])> {
        let [i, j] = self.bucket(at);
        let b = j * self.columns + i;
        let mut best = (f64::NEG_INFINITY, 0, [0.0; 3]);
        for &t in &self.members[self.start[b] as usize..self.start[b + 1] as usize] {
            let [p, q, r] = self.mesh.corners(t as usize);
            let double = cross(sub(q, p), sub(r, p));
            let n1 = cross(sub(r, q), sub(at, q)) / double;
            let n2 = cross(sub(p, r), sub(at, r)) / double;
            let n = [n1, n2, 1.0 - n1 - n2];
            let least = n[0].min(n[1]).min(n[2]);
            if least > best.0 {
                best = (least, t as usize, n);
            }
            if least >= 0.0 {
                break;
            }
        }
        (best.0 >= -SLACK).then_some((best.1, best.2))
    }
}
