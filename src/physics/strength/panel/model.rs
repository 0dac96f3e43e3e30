//! The panel as the solver sees it: outline, stiffness, supports.

use super::error::PanelError;
use super::layup::Layup;
use super::stiffness::PlateStiffness;
use super::vector::Point;

/// What the panel is made of at a place.
#[derive(Debug, Clone, PartialEq)]
pub struct Section {
    /// In bending and in shear through the thickness.
    pub stiffness: PlateStiffness,
    /// The plies behind it where stresses are wanted: without them the solution has moments but no stresses.
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
    /// Nothing holds it.
    Free,
    /// No deflection; the edge may turn about itself but not along itself (the hard simple support of thin-plate books).
    /// A curve given as many short simple edges is stiffer than the curve (Babuška's paradox): give it few, or clamp it.
    Simple,
    /// No deflection and no rotation.
    Clamped,
    /// Springs.
    Elastic {
        /// Against deflection, N/m per metre of edge.
        deflection: f64,
        /// Against turning about the edge, N·m a radian, per metre of edge.
        turning: f64,
    },
}

/// A strip of the panel that rests on something which gives: a knee's or a stringer's end, the floor of a well, with its fillets.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bed {
    /// One end of its middle line, `[y, z]`, m.
    pub from: Point,
    /// The other end.
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
    /// One end, `[y, z]`, m.
    pub from: Point,
    /// The other end.
    pub to: Point,
    /// What it does.
    pub kind: LineKind,
}

/// What a [`Line`] does.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum LineKind {
    /// A rigid knife edge: no deflection along it, free to turn about it (a knee, a stringer's end).
    Supported,
    /// No deflection, no rotation.
    Clamped,
    /// Springs against deflection.
    Elastic {
        /// N/m per metre of line.
        stiffness: f64,
    },
    /// A beam fixed to the panel at its middle surface (a stiffened top edge).
    /// Run it to a support: an end inside the panel hands its shear to one point, where a plate that shears sags ever
    /// deeper, if slowly, as the mesh gets finer.
    Beam {
        /// Bending stiffness EI, N·m².
        bending: f64,
        /// Torsional stiffness GJ, N·m².
        torsion: f64,
    },
}

/// A part of the panel that is made differently. Later regions lie over earlier ones.
#[derive(Debug, Clone, PartialEq)]
pub struct Region {
    /// Its corners, `[y, z]`, m; what hangs over the panel's edge is cut off.
    pub outline: Vec<Point>,
    /// What it is made of.
    pub section: Section,
}

/// A flat panel. An edge that is held in part is two edges with a corner between them.
#[derive(Debug, Clone, PartialEq)]
pub struct Panel {
    /// Its corners, `[y, z]`, m, either way round.
    pub outline: Vec<Point>,
    /// `edges[i]` holds the edge from corner `i` to corner `i + 1`.
    pub edges: Vec<EdgeSupport>,
    /// What it is made of where no region lies.
    pub section: Section,
    /// Parts that are made differently, later over earlier ones.
    pub regions: Vec<Region>,
    /// What carries or stiffens it along a line.
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
