//! Which unknowns of a mesh are held, and by what.

use nalgebra::Matrix3;

use super::arrange::{Arrangement, Origin};
use super::beam::{self, Link};
use super::clip;
use super::error::PanelError;
use super::mesh::Mesh;
use super::model::{EdgeSupport, LineKind, Panel};
use super::reference::{NODES, shape};
use super::vector::{Point, cross, distance, sub};

/// The part of the panel's surroundings that a reaction comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum SupportPart {
    /// Outline edge by index.
    Edge(usize),
    /// Line by index.
    Line(usize),
    /// Bed by index.
    Bed(usize),
}

/// Two held directions that differ by less than this are one curved edge, not a corner (sine of 20°).
const CORNER_SINE: f64 = 0.342;
/// What holds a node's rotation.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Hold {
    Free,
    /// No rotation along this unit vector.
    Along(Point),
    Both,
}

/// Springs or a beam between two nodes.
#[derive(Clone)]
pub(super) struct Spring {
    pub nodes: [u32; 3],
    pub link: Link,
    /// Set where the link carries load to ground.
    pub part: Option<SupportPart>,
}

/// A triangle's part of a bed.
#[derive(Clone)]
pub(super) struct Cushion {
    pub nodes: [u32; NODES],
    /// Between the deflections of its nodes, N/m.
    pub link: [[f64; NODES]; NODES],
    pub part: SupportPart,
}

/// Supports of a panel carried over to a mesh's nodes.
#[derive(Clone)]
pub(super) struct Holds {
    /// Parts that hold each node's deflection.
    pub parts: Vec<Vec<SupportPart>>,
    pub rotation: Vec<Hold>,
    pub springs: Vec<Spring>,
    pub cushions: Vec<Cushion>,
}

/// Carries the panel's edges and lines over to the mesh, its beds not yet.
pub(super) fn held(panel: &Panel, arrangement: &Arrangement, mesh: &Mesh) -> Holds {
    let count = mesh.nodes.len();
    let mut holds = Holds {
        parts: vec![Vec::new(); count],
        rotation: vec![Hold::Free; count],
        springs: Vec::new(),
        cushions: Vec::new(),
    };
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
                    EdgeSupport::Elastic { deflection, turning } => holds.springs.push(Spring {
                        nodes: side.nodes,
                        link: beam::springs(a, b, deflection, turning),
                        part: Some(SupportPart::Edge(i)),
                    }),
                },
                Origin::Line(i) => {
                    let part = SupportPart::Line(i);
                    let mut link = |link, part| holds.springs.push(Spring { nodes: side.nodes, link, part });
                    match panel.lines[i].kind {
                        LineKind::Supported => holds.hold(side.nodes, part, Hold::Along(direction)),
                        LineKind::Clamped => holds.hold(side.nodes, part, Hold::Both),
                        LineKind::Elastic { stiffness } => link(beam::springs(a, b, stiffness, 0.0), Some(part)),
                        LineKind::Beam { bending, torsion } => {
                            let whole = distance(panel.lines[i].from, panel.lines[i].to);
                            link(beam::beam(a, b, bending, torsion, whole), None);
                        }
                    }
                }
            }
        }
    }
    holds
}

/// What the panel's beds make of each triangle that they overlap.
fn cushions(panel: &Panel, mesh: &Mesh) -> Vec<Cushion> {
    let mut all = Vec::new();
    for (index, bed) in panel.beds.iter().enumerate() {
        let Some(corners) = bed.corners() else { continue };
        let pressure = bed.stiffness / bed.width;
        let reach = |k: usize, pick: fn(f64, f64) -> f64| corners.iter().map(|p| p[k]).fold(corners[0][k], pick);
        let (low, high) = ([reach(0, f64::min), reach(1, f64::min)], [reach(0, f64::max), reach(1, f64::max)]);
        for t in 0..mesh.triangles.len() {
            let triangle = mesh.corners(t);
            let apart = |k: usize| triangle.iter().all(|p| p[k] <= low[k]) || triangle.iter().all(|p| p[k] >= high[k]);
            if apart(0) || apart(1) {
                continue;
            }
            let mut link = [[0.0; NODES]; NODES];
            let points = clip::points(&corners, triangle);
            for (n, weight) in &points {
                let shapes = shape(*n);
                for (row, p) in link.iter_mut().zip(shapes) {
                    row.iter_mut().zip(shapes).for_each(|(cell, other)| *cell += pressure * weight * p * other);
                }
            }
            if !points.is_empty() {
                all.push(Cushion { nodes: mesh.triangles[t], link, part: SupportPart::Bed(index) });
            }
        }
    }
    all
}

impl Holds {
    /// With the panel's beds.
    ///
    /// Errors: no support, or a mechanism.
    pub(super) fn with_beds(&self, panel: &Panel, mesh: &Mesh) -> Result<Holds, PanelError> {
        let holds = Holds { cushions: cushions(panel, mesh), ..self.clone() };
        holds.check(mesh)?;
        Ok(holds)
    }

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
        for cushion in &self.cushions {
            cushion.nodes.iter().for_each(|&n| add([1.0, at(n as usize)[0], at(n as usize)[1]]));
        }
        if gram.trace() == 0.0 {
            return Err(PanelError::NoSupport);
        }
        let values = gram.symmetric_eigenvalues();
        if values.min() <= 1e-9 * values.max() { Err(PanelError::Mechanism) } else { Ok(()) }
    }
}
