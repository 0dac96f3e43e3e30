//! What can be wrong with what the floating-body functions are given.

use std::fmt;

use nalgebra::Point3;
use thiserror::Error;

/// A place in boat axes, in metres, shown as a person would look it up.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Place(pub Point3<f64>);

impl fmt::Display for Place {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Point3 { coords: p } = self.0;
        write!(f, "x {:.4} m, y {:.4} m, z {:.4} m", p.x, p.y, p.z)
    }
}

/// Why a set of triangles is not the surface of a solid body.
#[derive(Clone, Debug, PartialEq, Error)]
#[non_exhaustive]
pub enum MeshError {
    /// There is no triangle, or fewer than the four that the simplest solid has.
    #[error("a closed surface has at least 4 triangles, this one has {faces}")]
    TooFewFaces {
        /// How many triangles were given.
        faces: usize,
    },
    /// A coordinate is NaN or infinite.
    #[error("vertex {vertex} has a coordinate that is not a finite number")]
    NotFinite {
        /// Index of the vertex.
        vertex: usize,
    },
    /// A coordinate is so large that the length unit must be wrong.
    #[error("vertex {vertex} is at {at}: farther out than any boat reaches, is the length unit right?")]
    TooLarge {
        /// Index of the vertex.
        vertex: usize,
        /// Where it is.
        at: Place,
    },
    /// A triangle names a vertex that does not exist.
    #[error("triangle {face} names a vertex that does not exist")]
    UnknownVertex {
        /// Index of the triangle.
        face: usize,
    },
    /// A triangle has two corners in the same place.
    #[error("triangle {face} at {at} has two corners in the same place")]
    Degenerate {
        /// Index of the triangle.
        face: usize,
        /// One of its corners.
        at: Place,
    },
    /// An edge belongs to one triangle only: the surface has a hole.
    #[error("the surface is open: {edges} edge(s) belong to one triangle only, the first at {at}")]
    Open {
        /// Middle of the first open edge.
        at: Place,
        /// How many open edges there are.
        edges: usize,
    },
    /// Two triangles that share an edge face opposite ways.
    #[error("two triangles that share the edge at {at} face opposite ways")]
    Inconsistent {
        /// Middle of the edge.
        at: Place,
    },
    /// More than two triangles share an edge.
    #[error("more than two triangles share the edge at {at}")]
    NonManifold {
        /// Middle of the edge.
        at: Place,
    },
    /// The triangles face inward, on the whole body or on a separate part of it.
    #[error("the surface is inside out: the triangles of the part at {at} face inward")]
    InsideOut {
        /// A vertex of the part that is inside out.
        at: Place,
    },
    /// The surface encloses nothing.
    #[error("the surface at {at} encloses no volume")]
    ZeroVolume {
        /// Middle of the box round the surface.
        at: Place,
    },
}

/// Why sections or offsets cannot be lofted into a hull.
#[derive(Clone, Debug, PartialEq, Error)]
#[non_exhaustive]
pub enum LoftError {
    /// Fewer than two sections.
    #[error("a hull needs at least 2 sections, there are {sections}")]
    TooFewSections {
        /// How many sections were given.
        sections: usize,
    },
    /// A section with fewer than two points.
    #[error("section {section} has {points} point(s), it needs at least 2")]
    TooFewPoints {
        /// Index of the section, from 0.
        section: usize,
        /// How many points it has.
        points: usize,
    },
    /// A number of a section is NaN or infinite.
    #[error("section {section} has a number that is not finite")]
    NotFinite {
        /// Index of the section, from 0.
        section: usize,
    },
    /// A half-breadth below zero.
    #[error("section {section} has a half-breadth of {half_breadth:.4} m, below zero")]
    NegativeHalfBreadth {
        /// Index of the section, from 0.
        section: usize,
        /// The half-breadth, metres.
        half_breadth: f64,
    },
    /// Sections that do not run from aft to forward.
    #[error("section {section} is not forward of the one before it")]
    NotAscending {
        /// Index of the section, from 0.
        section: usize,
    },
    /// Fewer than 1 or more than [`MAX_SLICES`](super::MAX_SLICES) slices between sections.
    #[error("{slices} slices between sections asked for, 1 to {max} are possible")]
    Slices {
        /// What was asked for.
        slices: usize,
        /// The most there can be.
        max: usize,
    },
    /// A dimension of the least form that cannot be.
    #[error("{what} is out of range")]
    OutOfRange {
        /// Which dimension.
        what: &'static str,
    },
    /// The lofted surface is not that of a solid body.
    #[error("the lofted surface is not a solid body")]
    Mesh(#[from] MeshError),
}

/// Why a stereolithography (STL) file cannot be read as a hull.
#[derive(Debug, Error)]
#[non_exhaustive]
pub enum StlError {
    /// Neither the ascii nor the binary form.
    #[error("not a stereolithography file: {reason}")]
    Unreadable {
        /// What the reader tripped over.
        reason: String,
    },
    /// A binary file whose length disagrees with the count of triangles it states.
    #[error("the file states {stated} triangles and holds {held}: is it cut short?")]
    Truncated {
        /// Triangles stated in the head of the file.
        stated: u64,
        /// Whole triangles behind the head.
        held: u64,
    },
    /// The length of one file unit is not a positive finite number.
    #[error("the unit of the file must be a positive length")]
    Unit,
    /// The surface is not that of a solid body.
    #[error("the surface is not a solid body")]
    Mesh(#[from] MeshError),
}

/// Why a question about a floating body has no answer.
#[derive(Clone, Debug, PartialEq, Error)]
#[non_exhaustive]
pub enum FloatError {
    /// An input is NaN or infinite.
    #[error("{what} is not a finite number")]
    NotFinite {
        /// Which input.
        what: &'static str,
    },
    /// An input must be above zero and is not.
    #[error("{what} must be above zero")]
    NotPositive {
        /// Which input.
        what: &'static str,
    },
    /// A mass that the whole hull under water cannot carry.
    #[error("{mass_kg:.0} kg is more than the {largest_kg:.0} kg that the whole hull under water carries")]
    Sinks {
        /// The mass, kg.
        mass_kg: f64,
        /// The mass of water that the whole hull displaces, kg.
        largest_kg: f64,
    },
    /// Too few points, or points too close together, for what is asked of them.
    #[error("the points do not fix {what}")]
    TooFewPoints {
        /// What cannot be found from them.
        what: &'static str,
    },
    /// The water plane leaves the hull dry.
    #[error("the hull is out of the water at that water plane")]
    Dry,
    /// A cut-out that reaches outside the hull.
    #[error("the cut-out reaches outside the hull at {at}")]
    CutOutOutside {
        /// A corner of it that is outside.
        at: Place,
    },
}
