//! The panel as the solver sees it: outline, stiffness, supports.

use super::error::PanelError;
use super::layup::Layup;
use super::stiffness::PlateStiffness;
use super::vector::Point;

/// What the panel is made of at a place: its stiffness, and the plies behind it where stresses are wanted.
#[derive(Debug, Clone, PartialEq)]
pub struct Section {
    pub stiffness: PlateStiffness,
    /// Without plies the solution has moments but no stresses.
    pub layup: Option<Layup>,
}

impl Section {
    /// Stiffness given outright.
    pub fn stiffness(stiffness: PlateStiffness) -> Self {
        Self { stiffness, layup: None }
    }

    /// Stiffness worked out from plies. Errors as [`Layup::stiffness`].
    pub fn layup(layup: Layup) -> Result<Self, PanelError> {
        Ok(Self { stiffness: layup.stiffness()?, layup: Some(layup) })
    }
}

/// How an outline edge is held.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum EdgeSupport {
    Free,
    /// No deflection; the edge may turn about itself but not along itself (the hard simple support of thin-plate books).
    /// A curve given as many short simple edges is stiffer than the curve (Babuška's paradox): give it few, or clamp it.
    Simple,
    /// No deflection and no rotation.
    Clamped,
    /// Springs against deflection (N/m per metre of edge), and against turning about the edge (N·m a radian, per metre).
    Elastic {
        deflection: f64,
        turning: f64,
    },
}

/// A strip of the panel that rests on something which gives: a knee's or a stringer's end, the floor of a well, with its fillets.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bed {
    /// Its middle line.
    pub from: Point,
    pub to: Point,
    /// Across that line, m.
    pub width: f64,
    /// Force that pushes a metre of its length in by a metre, N/m per metre.
    pub stiffness: f64,
}

impl Bed {
    /// Its corners, anticlockwise; `None` where it has no length.
    pub(super) fn corners(&self) -> Option<[Point; 4]> {
        let length = (self.to[0] - self.from[0]).hypot(self.to[1] - self.from[1]);
        let half = 0.5 * self.width / length;
        let out = [(self.to[1] - self.from[1]) * half, -(self.to[0] - self.from[0]) * half];
        let at = |p: Point, side: f64| [p[0] + side * out[0], p[1] + side * out[1]];
        (length > 0.0).then(|| [at(self.from, 1.0), at(self.to, 1.0), at(self.to, -1.0), at(self.from, -1.0)])
    }
}

/// A straight line on the panel that carries or stiffens it; it may lie on an edge.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Line {
    pub from: Point,
    pub to: Point,
    pub kind: LineKind,
}

/// What a [`Line`] does.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum LineKind {
    /// A rigid knife edge: no deflection along it, free to turn about it (a knee, a stringer's end).
    Supported,
    /// No deflection, no rotation.
    Clamped,
    /// Springs, N/m of deflection per metre of line.
    Elastic { stiffness: f64 },
    /// A beam fixed to the panel at its middle surface (a stiffened top edge): bending EI (N·m²), torsion GJ (N·m²).
    /// Run it to a support: an end inside the panel hands its shear to one point, where a plate that shears sags ever
    /// deeper, if slowly, as the mesh gets finer.
    Beam { bending: f64, torsion: f64 },
}

/// A part of the panel that is made differently. Later regions lie over earlier ones.
#[derive(Debug, Clone, PartialEq)]
pub struct Region {
    pub outline: Vec<Point>,
    pub section: Section,
}

/// A flat panel. `edges[i]` holds the edge from corner `i` to corner `i + 1`; an edge that is held in part is two edges
/// with a corner between them. Corners may run either way round.
#[derive(Debug, Clone, PartialEq)]
pub struct Panel {
    pub outline: Vec<Point>,
    pub edges: Vec<EdgeSupport>,
    pub section: Section,
    pub regions: Vec<Region>,
    pub lines: Vec<Line>,
    /// Strips that rest on springs; the mesh need not follow them.
    pub beds: Vec<Bed>,
}

impl Panel {
    /// A rectangle with one corner at the origin, `width` along y and `height` along z (m); `edges` in the order bottom
    /// (z = 0), port (y = width), top, starboard (y = 0).
    pub fn rectangle(width: f64, height: f64, edges: [EdgeSupport; 4], section: Section) -> Self {
        Self {
            outline: vec![[0.0, 0.0], [width, 0.0], [width, height], [0.0, height]],
            edges: edges.to_vec(),
            section,
            regions: Vec::new(),
            lines: Vec::new(),
            beds: Vec::new(),
        }
    }
}
