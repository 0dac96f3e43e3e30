//! Closed triangle surfaces.

use nalgebra::{Point3, Vector3};
use uom::si::f64::Volume;
use uom::si::volume::cubic_meter;

use super::closed;
use super::error::MeshError;

/// A closed surface of triangles, oriented outward: what a solid body is to the integrals.
///
/// Vertices are in metres; a face lists three of them counter-clockwise as seen from outside.
/// Every value of this type has passed the checks of [`TriMesh::new`].
#[derive(Clone, Debug, PartialEq)]
pub struct TriMesh {
    vertices: Vec<Point3<f64>>,
    faces: Vec<[u32; 3]>,
}

impl TriMesh {
    /// Checks and takes a surface.
    ///
    /// # Errors
    /// [`MeshError`] with the place, where the surface is not finite, not closed, not manifold, not
    /// consistently oriented, inside out (as a whole or in a separate part that is not a cavity), or
    /// encloses nothing.
    pub fn new(vertices: Vec<Point3<f64>>, faces: Vec<[u32; 3]>) -> Result<Self, MeshError> {
        closed::check(&vertices, &faces)?;
        Ok(Self { vertices, faces })
    }

    /// The box between two opposite corners, metres, in any order.
    ///
    /// # Errors
    /// [`MeshError`] where the box is flat or not finite.
    pub fn cuboid(one: Point3<f64>, other: Point3<f64>) -> Result<Self, MeshError> {
        let (low, high) = (one.inf(&other), one.sup(&other));
        let vertices = (0..8)
            .map(|i| {
                Point3::new(
                    if i & 1 == 0 { low.x } else { high.x },
                    if i & 2 == 0 { low.y } else { high.y },
                    if i & 4 == 0 { low.z } else { high.z },
                )
            })
            .collect();
        let quads: [[u32; 4]; 6] = [[0, 2, 3, 1], [4, 5, 7, 6], [0, 1, 5, 4], [2, 6, 7, 3], [0, 4, 6, 2], [1, 3, 7, 5]];
        let faces = quads.iter().flat_map(|&[a, b, c, d]| [[a, b, c], [a, c, d]]).collect();
        Self::new(vertices, faces)
    }

    /// The vertices, metres.
    #[must_use]
    pub fn vertices(&self) -> &[Point3<f64>] {
        &self.vertices
    }

    /// The faces, as indices of vertices, counter-clockwise as seen from outside.
    #[must_use]
    pub fn faces(&self) -> &[[u32; 3]] {
        &self.faces
    }

    /// The enclosed volume.
    #[must_use]
    pub fn volume(&self) -> Volume {
        Volume::new::<cubic_meter>(closed::volume(&self.vertices, &self.faces))
    }

    /// The three corners of each face.
    pub(super) fn triangles(&self) -> impl Iterator<Item = [Point3<f64>; 3]> + '_ {
        self.faces.iter().map(|face| face.map(|i| self.vertices[i as usize]))
    }

    /// The surface shifted by a vector, metres.
    ///
    /// # Errors
    /// [`MeshError`] where the shift takes it out of range.
    pub fn translated(&self, shift: &Vector3<f64>) -> Result<Self, MeshError> {
        let vertices = self.vertices.iter().map(|v| v + shift).collect();
        Self::new(vertices, self.faces.clone())
    }

    /// The surface scaled about the origin by a factor above zero.
    ///
    /// # Errors
    /// [`MeshError`] where the factor is not a positive finite number or the result is out of range.
    pub fn scaled(&self, factor: f64) -> Result<Self, MeshError> {
        let vertices = self.vertices.iter().map(|v| v * factor).collect();
        Self::new(vertices, self.faces.clone())
    }

    /// The surface with port and starboard exchanged.
    #[must_use]
    pub fn mirrored(&self) -> Self {
        Self {
            vertices: self.vertices.iter().map(|v| Point3::new(v.x, -v.y, v.z)).collect(),
            faces: self.faces.iter().map(|&[a, b, c]| [a, c, b]).collect(),
        }
    }
}
