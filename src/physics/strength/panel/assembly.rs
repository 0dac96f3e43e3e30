//! The plate's equations: which unknowns are held, the stiffness matrix of the free ones, its Cholesky factor.

use faer::prelude::Solve;
use faer::sparse::{SparseColMat, SymbolicSparseColMat};
use faer::{Col, Side as Triangle};
use nalgebra::Matrix3;

use super::arrange::{Arrangement, Origin};
use super::beam::{self, Link};
use super::element::{Bubble, DOFS, Element, NODES, Row};
use super::error::PanelError;
use super::mesh::Mesh;
use super::model::{EdgeSupport, LineKind, Panel, PlateStiffness, Point};
use super::reaction::SupportPart;
use super::vector::{cross, distance, sub};

/// Two held directions that differ by less than this are one curved edge, not a corner (sine of 20°).
const CORNER_SINE: f64 = 0.342;
/// Marks a held unknown.
const HELD: u32 = u32::MAX;

/// What holds a node's rotation.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Hold {
    Free,
    /// No rotation along this unit vector.
    Along(Point),
    Both,
}

/// Springs or a beam between two nodes.
pub(super) struct Spring {
    pub nodes: [u32; 3],
    pub link: Link,
    /// Set where the link carries load to ground.
    pub part: Option<SupportPart>,
}

/// Supports of a panel carried over to a mesh's nodes.
pub(super) struct Holds {
    /// Parts that hold each node's deflection.
    pub parts: Vec<Vec<SupportPart>>,
    pub rotation: Vec<Hold>,
    pub springs: Vec<Spring>,
}

/// Carries the panel's supports over to the mesh. Errors: no support, or a mechanism.
pub(super) fn holds(panel: &Panel, arrangement: &Arrangement, mesh: &Mesh) -> Result<Holds, PanelError> {
    let count = mesh.nodes.len();
    let mut holds =
        Holds { parts: vec![Vec::new(); count], rotation: vec![Hold::Free; count], springs: Vec::new() };
    for side in &mesh.sides {
        let [a, b, _] = side.nodes.map(|n| mesh.nodes[n as usize]);
        let length = distance(a, b);
        let direction = sub(b, a).map(|v| v / length);
        for origin in &arrangement.pieces[side.piece as usize].origins {
            match *origin {
                Origin::Region => {}
                Origin::Edge(i) => match panel.edges[i] {
                    EdgeSupport::Free => {}
                    EdgeSupport::Simple => holds.hold(side.nodes, SupportPart::Edge(i), Hold::Along(direction)),
                    EdgeSupport::Clamped => holds.hold(side.nodes, SupportPart::Edge(i), Hold::Both),
                },
                Origin::Line(i) => {
                    let part = SupportPart::Line(i);
                    let mut link = |link, part| holds.springs.push(Spring { nodes: side.nodes, link, part });
                    match panel.lines[i].kind {
                        LineKind::Supported => holds.hold(side.nodes, part, Hold::Along(direction)),
                        LineKind::Clamped => holds.hold(side.nodes, part, Hold::Both),
                        LineKind::Elastic { stiffness } => link(beam::springs(a, b, stiffness), Some(part)),
                        LineKind::Beam { bending, torsion } => {
                            let whole = distance(panel.lines[i].from, panel.lines[i].to);
                            link(beam::beam(a, b, bending, torsion, whole), None);
                        }
                    }
                }
            }
        }
    }
    holds.check(mesh)?;
    Ok(holds)
}

impl Holds {
    fn hold(&mut self, nodes: [u32; 3], part: SupportPart, rotation: Hold) {
        for n in nodes.map(|n| n as usize) {
            if !self.parts[n].contains(&part) {
                self.parts[n].push(part);
            }
            self.rotation[n] = match (self.rotation[n], rotation) {
                (Hold::Free, new) => new,
                (Hold::Along(a), Hold::Along(b)) if cross(a, b).abs() < CORNER_SINE => Hold::Along(a),
                _ => Hold::Both,
            };
        }
    }

    /// The three rigid motions (a shift, two tilts) must all be held.
    fn check(&self, mesh: &Mesh) -> Result<(), PanelError> {
        let origin = mesh.nodes[0];
        let reach = mesh.nodes.iter().map(|&p| distance(p, origin)).fold(0.0, f64::max);
        let mut gram = Matrix3::zeros();
        let mut add = |row: [f64; 3]| gram += Matrix3::from_fn(|i, j| row[i] * row[j]);
        let at = |n: usize| sub(mesh.nodes[n], origin).map(|v| v / reach);
        for n in (0..self.parts.len()).filter(|&n| !self.parts[n].is_empty()) {
            add([1.0, at(n)[0], at(n)[1]]);
            match self.rotation[n] {
                Hold::Free => {}
                Hold::Along([c, s]) => add([0.0, c, s]),
                Hold::Both => {
                    add([0.0, 1.0, 0.0]);
                    add([0.0, 0.0, 1.0]);
                }
            }
        }
        for spring in self.springs.iter().filter(|s| s.part.is_some()) {
            spring.nodes.iter().for_each(|&n| add([1.0, at(n as usize)[0], at(n as usize)[1]]));
        }
        if gram.trace() == 0.0 {
            return Err(PanelError::NoSupport);
        }
        let values = gram.symmetric_eigenvalues();
        if values.min() <= 1e-9 * values.max() { Err(PanelError::Mechanism) } else { Ok(()) }
    }
}

/// The factored equations of one mesh.
pub(super) struct System {
    /// Equation of each node's `w`, rotation along, rotation across (in the node's own frame); [`HELD`] if none.
    equation: Vec<[u32; 3]>,
    /// Each node's frame: cosine and sine of its first rotation axis.
    frame: Vec<Point>,
    factor: faer::sparse::linalg::solvers::Llt<usize, f64>,
    size: usize,
    /// Each triangle's bubble, for its section forces.
    pub bubbles: Vec<Bubble>,
}

impl System {
    /// Assembles and factors. `stiffness[part]` belongs to [`Mesh::parts`].
    pub fn new(mesh: &Mesh, stiffness: &[PlateStiffness], holds: &Holds) -> Result<Self, PanelError> {
        let frame: Vec<Point> =
            holds.rotation.iter().map(|h| if let Hold::Along(d) = h { *d } else { [1.0, 0.0] }).collect();
        let mut size = 0_u32;
        let equation: Vec<[u32; 3]> = (0..mesh.nodes.len())
            .map(|n| {
                let held = [
                    !holds.parts[n].is_empty(),
                    holds.rotation[n] != Hold::Free,
                    holds.rotation[n] == Hold::Both,
                ];
                held.map(|held| {
                    if held {
                        HELD
                    } else {
                        size += 1;
                        size - 1
                    }
                })
            })
            .collect();
        let size = size as usize;
        let mut matrix = Matrix::new(mesh, &equation, size);
        let mut bubbles = Vec::with_capacity(mesh.triangles.len());
        for t in 0..mesh.triangles.len() {
            let (k, bubble) = Element::new(mesh.corners(t), &stiffness[mesh.parts[t] as usize]).stiffness_matrix();
            bubbles.push(bubble);
            matrix.add(&equation, &frame, mesh.triangles[t], &k);
        }
        for spring in &holds.springs {
            matrix.add(&equation, &frame, spring.nodes, &spring.link);
        }
        let factor = matrix.factor(size)?;
        Ok(Self { equation, frame, factor, size, bubbles })
    }

    /// Number of free unknowns.
    pub fn size(&self) -> usize {
        self.size
    }

    /// `w, βy, βz` of every node under nodal forces and couples that do work on them (N, N·m).
    pub fn solve(&self, forces: &[[f64; 3]]) -> Vec<[f64; 3]> {
        let mut right = Col::<f64>::zeros(self.size);
        for ((equation, [c, s]), [force, y, z]) in self.equation.iter().zip(&self.frame).zip(forces) {
            for (e, value) in equation.iter().zip([*force, c * y + s * z, c * z - s * y]) {
                if *e != HELD {
                    right[*e as usize] = value;
                }
            }
        }
        let x = self.factor.solve(&right);
        let value = |e: u32| if e == HELD { 0.0 } else { x[e as usize] };
        self.equation
            .iter()
            .zip(&self.frame)
            .map(|(&[w, along, across], [c, s])| {
                let (a, b) = (value(along), value(across));
                [value(w), c * a - s * b, s * a + c * b]
            })
            .collect()
    }
}

/// The unknowns of a triangle out of all nodes'.
pub(super) fn triangle_values(nodes: [u32; NODES], values: &[[f64; 3]]) -> Row {
    let mut row = [0.0; DOFS];
    for (i, n) in nodes.iter().enumerate() {
        row[3 * i..3 * i + 3].copy_from_slice(&values[*n as usize]);
    }
    row
}

/// Lower triangle of the stiffness matrix, column by column, its pattern laid out node by node.
struct Matrix {
    starts: Vec<usize>,
    rows: Vec<usize>,
    values: Vec<f64>,
    /// Per node: its higher neighbours in order, and how many free unknowns lie before each.
    above: Vec<Vec<(u32, u32)>>,
}

impl Matrix {
    fn new(mesh: &Mesh, equation: &[[u32; 3]], size: usize) -> Self {
        let mut above: Vec<Vec<(u32, u32)>> = vec![Vec::with_capacity(8); mesh.nodes.len()];
        for nodes in &mesh.triangles {
            for (i, &p) in nodes.iter().enumerate() {
                for &q in &nodes[i + 1..] {
                    let list = &mut above[p.min(q) as usize];
                    if !list.iter().any(|&(n, _)| n == p.max(q)) {
                        list.push((p.max(q), 0));
                    }
                }
            }
        }
        let (mut starts, mut rows) = (Vec::with_capacity(size + 1), Vec::with_capacity(20 * size));
        starts.push(0);
        for (n, list) in above.iter_mut().enumerate() {
            list.sort_unstable();
            let mut before = 0;
            for (m, skip) in list.iter_mut() {
                *skip = before;
                before += equation[*m as usize].iter().filter(|&&e| e != HELD).count() as u32;
            }
            let own = equation[n].iter().filter(|&&e| e != HELD);
            for &column in own.clone() {
                rows.extend(own.clone().filter(|&&e| e >= column).map(|&e| e as usize));
                for (m, _) in list.iter() {
                    rows.extend(equation[*m as usize].iter().filter(|&&e| e != HELD).map(|&e| e as usize));
                }
                starts.push(rows.len());
            }
        }
        let values = vec![0.0; rows.len()];
        Self { starts, rows, values, above }
    }

    /// Adds an element of `N` nodes (`3 N` unknowns `w, βy, βz`), turned into the nodes' frames.
    fn add<const N: usize, const M: usize>(
        &mut self,
        equation: &[[u32; 3]],
        frame: &[Point],
        nodes: [u32; N],
        k: &[[f64; M]; M],
    ) {
        for (j, &nj) in nodes.iter().enumerate() {
            for (i, &ni) in nodes.iter().enumerate() {
                if ni < nj {
                    continue;
                }
                let block = turned(k, 3 * i, 3 * j, frame[ni as usize], frame[nj as usize]);
                let (columns, rows) = (equation[nj as usize], equation[ni as usize]);
                let own = columns.iter().filter(|&&e| e != HELD).count();
                let skip = if ni == nj {
                    0
                } else {
                    self.above[nj as usize].iter().find(|(m, _)| *m == ni).map_or(0, |(_, skip)| *skip as usize)
                };
                let mut rank = 0;
                for (c, &column) in columns.iter().enumerate() {
                    if column == HELD {
                        continue;
                    }
                    let start = self.starts[column as usize];
                    let mut slot = if ni == nj { start } else { start + own - rank + skip };
                    for (r, &row) in rows.iter().enumerate() {
                        if row == HELD || (ni == nj && row < column) {
                            continue;
                        }
                        self.values[slot] += block[r][c];
                        slot += 1;
                    }
                    rank += 1;
                }
            }
        }
    }

    fn factor(self, size: usize) -> Result<faer::sparse::linalg::solvers::Llt<usize, f64>, PanelError> {
        let pattern = SymbolicSparseColMat::new_checked(size, size, self.starts, None, self.rows);
        let matrix = SparseColMat::new(pattern, self.values);
        matrix.sp_cholesky(Triangle::Lower).map_err(|e| PanelError::Factor { reason: format!("{e:?}") })
    }
}

/// The 3×3 block of an element matrix at (`r0`, `c0`), its rotations turned into both nodes' frames.
fn turned<const M: usize>(k: &[[f64; M]; M], r0: usize, c0: usize, row: Point, column: Point) -> [[f64; 3]; 3] {
    let mut b = [0, 1, 2].map(|r| [0, 1, 2].map(|c| k[r0 + r][c0 + c]));
    if row != [1.0, 0.0] {
        let [c, s] = row;
        let (along, across) = (b[1], b[2]);
        b[1] = [0, 1, 2].map(|q| c * along[q] + s * across[q]);
        b[2] = [0, 1, 2].map(|q| c * across[q] - s * along[q]);
    }
    if column != [1.0, 0.0] {
        let [c, s] = column;
        for row in &mut b {
            let (along, across) = (row[1], row[2]);
            row[1] = c * along + s * across;
            row[2] = c * across - s * along;
        }
    }
    b
}
