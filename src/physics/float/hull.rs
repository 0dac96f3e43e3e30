//! A hull as a list of closed bodies, added or taken away.

use nalgebra::{Point3, Vector3};
use uom::si::f64::Volume;
use uom::si::volume::cubic_meter;

use super::closed;
use super::error::{FloatError, Place};
use super::mesh::TriMesh;
use super::tree::Tree;

/// How far towards the middle of a cut-out its corners are moved before they are asked whether they lie
/// inside the hull: a well measured with a tape may stand proud of the deck by a little.
const CUT_OUT_SLACK: f64 = 0.1;

/// About how many corners of a cut-out are asked.
const MOST_CORNERS_ASKED: usize = 64;

/// What a body does to the hull.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// It displaces water: the hull itself, a bracket, an appendage.
    Added,
    /// The water comes in: a motorwell, a free-flooding box.
    CutOut,
}

impl Part {
    pub(super) fn factor(self) -> f64 {
        match self {
            Self::Added => 1.0,
            Self::CutOut => -1.0,
        }
    }
}

/// Everything that displaces water.
///
/// Integrals are the sums over the added bodies less those over the cut-outs, so added bodies must not
/// overlap and a cut-out must lie inside an added body. Building it sorts the triangles once, in
/// n log n; every later cut is then far cheaper than one look at each triangle.
#[derive(Clone, Debug)]
pub struct Hull {
    bodies: Vec<(Part, TriMesh, Tree)>,
    reference: Point3<f64>,
    low: Point3<f64>,
    high: Point3<f64>,
    volume: f64,
}

impl Hull {
    /// A hull of one body.
    #[must_use]
    pub fn new(body: TriMesh) -> Self {
        Self::of_parts(vec![(Part::Added, body)])
    }

    /// This hull and one more body that displaces water, such as a bracket with buoyancy of its own.
    #[must_use]
    pub fn with_body(self, body: TriMesh) -> Self {
        let mut parts = self.into_parts();
        parts.push((Part::Added, body));
        Self::of_parts(parts)
    }

    /// This hull less a body inside it that the water fills, such as a motorwell.
    ///
    /// # Errors
    /// [`FloatError::CutOutOutside`] where a corner of it, moved a tenth of the way to its middle, is
    /// not inside the hull.
    pub fn with_cut_out(self, body: TriMesh) -> Result<Self, FloatError> {
        let (low, high) = closed::bounds(body.vertices());
        let middle = nalgebra::center(&low, &high);
        let step = body.vertices().len() / MOST_CORNERS_ASKED + 1;
        for corner in body.vertices().iter().step_by(step) {
            let moved = corner + (middle - corner) * CUT_OUT_SLACK;
            if !self.contains(&moved) {
                let at = Place(*corner);
                return Err(FloatError::CutOutOutside { at });
            }
        }
        let mut parts = self.into_parts();
        parts.push((Part::CutOut, body));
        Ok(Self::of_parts(parts))
    }

    fn into_parts(self) -> Vec<(Part, TriMesh)> {
        self.bodies.into_iter().map(|(part, mesh, _)| (part, mesh)).collect()
    }

    fn of_parts(parts: Vec<(Part, TriMesh)>) -> Self {
        let (low, high) = parts
            .iter()
            .map(|(_, mesh)| closed::bounds(mesh.vertices()))
            .reduce(|one, other| (one.0.inf(&other.0), one.1.sup(&other.1)))
            .unwrap_or_default();
        let reference = nalgebra::center(&low, &high);
        let volume = parts.iter().map(|(part, mesh)| part.factor() * mesh.volume().get::<cubic_meter>()).sum();
        let bodies = parts
            .into_iter()
            .map(|(part, mesh)| {
                let tree = Tree::new(mesh.triangles(), &reference);
                (part, mesh, tree)
            })
            .collect();
        Self { bodies, reference, low, high, volume }
    }

    /// The bodies, with what each does.
    pub fn bodies(&self) -> impl Iterator<Item = (Part, &TriMesh)> {
        self.bodies.iter().map(|(part, mesh, _)| (*part, mesh))
    }

    pub(super) fn trees(&self) -> impl Iterator<Item = (f64, Part, &Tree)> {
        self.bodies.iter().map(|(part, _, tree)| (part.factor(), *part, tree))
    }

    /// The volume that she displaces with all of her under water.
    #[must_use]
    pub fn volume(&self) -> Volume {
        Volume::new::<cubic_meter>(self.volume)
    }

    /// Least and greatest corner of the box round the hull, metres.
    #[must_use]
    pub fn bounds(&self) -> (Point3<f64>, Point3<f64>) {
        (self.low, self.high)
    }

    /// Whether a point is inside the hull and not in a cut-out. Points within rounding of the surface
    /// may come out either way.
    #[must_use]
    pub fn contains(&self, point: &Point3<f64>) -> bool {
        let winding: f64 = self
            .bodies
            .iter()
            .map(|(part, mesh, _)| part.factor() * closed::winding_number(mesh.vertices(), mesh.faces(), point))
            .sum();
        winding > 0.5
    }

    /// The point that the trees count from, metres.
    pub(super) fn reference(&self) -> Point3<f64> {
        self.reference
    }

    /// Half the diagonal of the box round the hull, metres: the length that residuals are measured by.
    pub(super) fn scale(&self) -> f64 {
        0.5 * (self.high - self.low).norm()
    }

    /// The offsets of a plane of that normal that just leave her dry and just cover her, metres.
    pub(super) fn reach_along(&self, normal: &Vector3<f64>) -> (f64, f64) {
        let half = (self.high - self.low) / 2.0;
        let middle = normal.dot(&self.reference.coords);
        let reach = normal.abs().dot(&half);
        (middle - reach, middle + reach)
    }
}
