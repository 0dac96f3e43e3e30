//! The plate's equations: the stiffness matrix of the free unknowns, and its Cholesky factor.

use std::sync::{Arc, OnceLock};

use super::element::{Bubble, DOFS, Element, Row, Sampler};
use super::error::PanelError;
use super::matrix::{Factor, HELD, Matrix, Neighbours};
use super::mesh::Mesh;
use super::reference::NODES;
use super::stiffness::PlateStiffness;
use super::support::{Cushion, Hold, Holds};
use super::vector::Point;

/// The equations of one mesh, before what rests on beds.
pub(super) struct Equations {
    /// Equation of each node's `w`, rotation along, rotation across (in the node's own frame); [`HELD`] if none.
    equation: Vec<[u32; 3]>,
    /// Each node's frame: cosine and sine of its first rotation axis.
    frame: Vec<Point>,
    size: usize,
    matrix: Matrix,
    stiffness: Vec<PlateStiffness>,
    /// Each triangle's bubble from its unknowns.
    bubbles: Vec<Bubble>,
    /// Each triangle's section forces from its unknowns, made when first asked for: they are large.
    samplers: OnceLock<Vec<Sampler>>,
}

/// Equations with their beds, factored.
pub(super) struct System {
    equations: Arc<Equations>,
    factor: Factor,
}

impl Equations {
    /// Assembles them. `stiffness[part]` belongs to [`Mesh::parts`].
    pub(super) fn new(mesh: &Mesh, stiffness: &[PlateStiffness], holds: &Holds) -> Result<Self, PanelError> {
        let frame: Vec<Point> =
            holds.rotation.iter().map(|h| if let Hold::Along(d) = h { *d } else { [1.0, 0.0] }).collect();
        let neighbours = Neighbours::of(mesh);
        let order = neighbours.elimination()?;
        let mut size = 0_u32;
        let mut equation = vec![[HELD; 3]; mesh.nodes.len()];
        for &n in &order {
            let n = n as usize;
            let held = [!holds.parts[n].is_empty(), holds.rotation[n] != Hold::Free, holds.rotation[n] == Hold::Both];
            for (equation, held) in equation[n].iter_mut().zip(held) {
                if !held {
                    *equation = size;
                    size += 1;
                }
            }
        }
        let size = size as usize;
        let mut matrix = Matrix::new(&neighbours, &order, &equation, size)?;
        let mut bubbles = Vec::with_capacity(mesh.triangles.len());
        for t in 0..mesh.triangles.len() {
            let element = Element::new(mesh.corners(t), &stiffness[mesh.parts[t] as usize]);
            let (k, bubble) = element.stiffness_matrix();
            bubbles.push(bubble);
            matrix.add(&equation, &frame, mesh.triangles[t], &k);
        }
        for spring in &holds.springs {
            matrix.add(&equation, &frame, spring.nodes, &spring.link);
        }
        let (stiffness, samplers) = (stiffness.to_vec(), OnceLock::new());
        Ok(Self { equation, frame, size, matrix, stiffness, bubbles, samplers })
    }
}

impl System {
    /// Factors equations with these beds.
    ///
    /// Errors: a panel that nothing holds.
    pub(super) fn new(equations: &Arc<Equations>, cushions: &[Cushion]) -> Result<Self, PanelError> {
        let Equations { equation, matrix, .. } = &**equations;
        let mut matrix = matrix.clone();
        for cushion in cushions {
            matrix.add_deflections(equation, cushion.nodes, &cushion.link);
        }
        Ok(Self { factor: matrix.factor()?, equations: equations.clone() })
    }

    /// Each triangle's section forces from its unknowns.
    pub(super) fn samplers(&self, mesh: &Mesh) -> &[Sampler] {
        self.equations
            .samplers
            .get_or_init(|| self.elements(mesh).map(|(element, bubble)| element.sampler(bubble)).collect())
    }

    /// Each triangle with its bubble.
    pub(super) fn elements<'a>(&'a self, mesh: &'a Mesh) -> impl Iterator<Item = (Element<'a>, &'a Bubble)> {
        let Equations { stiffness, bubbles, .. } = &*self.equations;
        let element = |(t, bubble)| (Element::new(mesh.corners(t), &stiffness[mesh.parts[t] as usize]), bubble);
        bubbles.iter().enumerate().map(element)
    }

    /// Number of free unknowns.
    pub(super) fn size(&self) -> usize {
        self.equations.size
    }

    /// `w, βy, βz` of every node under nodal forces and couples that do work on them (N, N·m).
    pub(super) fn solve(&self, forces: &[[f64; 3]]) -> Vec<[f64; 3]> {
        let mut x = Vec::with_capacity(self.size());
        self.gather(forces.iter().copied(), &mut x);
        self.factor.solve(&mut x, 1);
        self.spread(&x)
    }

    /// The same for several sets of forces along x alone, which is quicker than one after the other.
    pub(super) fn solve_all<F: AsRef<[f64]>>(&self, sets: &[F]) -> Vec<Vec<[f64; 3]>> {
        let mut x = Vec::with_capacity(self.size() * sets.len());
        for forces in sets {
            self.gather(forces.as_ref().iter().map(|f| [*f, 0.0, 0.0]), &mut x);
        }
        self.factor.solve(&mut x, sets.len());
        x.chunks_exact(self.size().max(1)).map(|x| self.spread(x)).collect()
    }

    /// Adds a right side to `x`.
    fn gather(&self, forces: impl Iterator<Item = [f64; 3]>, x: &mut Vec<f64>) {
        let start = x.len();
        let Equations { equation, frame, size, .. } = &*self.equations;
        x.resize(start + size, 0.0);
        for ((equation, [c, s]), [force, y, z]) in equation.iter().zip(frame).zip(forces) {
            for (e, value) in equation.iter().zip([force, c * y + s * z, c * z - s * y]) {
                if *e != HELD {
                    x[start + *e as usize] = value;
                }
            }
        }
    }

    fn spread(&self, x: &[f64]) -> Vec<[f64; 3]> {
        let value = |e: u32| if e == HELD { 0.0 } else { x[e as usize] };
        let Equations { equation, frame, .. } = &*self.equations;
        equation
            .iter()
            .zip(frame)
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
