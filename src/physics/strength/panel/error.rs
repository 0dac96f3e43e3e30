//! What can be wrong with a panel before or while it is solved.

use super::vector::Point;

/// Why a panel cannot be solved. Indices count from zero in the order that the caller gave.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum PanelError {
    /// An outline needs three corners or more, and as many edge supports as corners.
    #[error(
        "the outline has {corners} corners and {supports} edge supports; it needs at least 3 corners and one support for each edge"
    )]
    Outline {
        /// How many corners were given.
        corners: usize,
        /// How many edge supports were given.
        supports: usize,
    },
    /// Two outline edges cross or touch.
    #[error("edges {first} and {second} of the outline cross or touch")]
    OutlineCrosses {
        /// The edge of lower index; edge `i` runs from corner `i` to the next.
        first: usize,
        /// The edge of higher index.
        second: usize,
    },
    /// Two neighbouring corners coincide, or the outline encloses next to nothing.
    #[error("the outline has no area, or corner {corner} repeats its neighbour")]
    OutlineDegenerate {
        /// The first of the two corners; 0 where there is no area.
        corner: usize,
    },
    /// A number is infinite or not a number.
    #[error("{what} is not a finite number")]
    NotFinite {
        /// Which number, in words.
        what: &'static str,
    },
    /// A thickness, modulus or stiffness must be greater than zero.
    #[error("{what} must be greater than zero, and is {value}")]
    NotPositive {
        /// Which number, in words.
        what: &'static str,
        /// What it is, in SI.
        value: f64,
    },
    /// The bending stiffness must be positive definite (ν12 ν21 < 1).
    #[error("the bending stiffness is not positive definite (Poisson's ratio too large for the moduli)")]
    StiffnessIndefinite,
    /// A layup without plies.
    #[error("a layup needs at least one ply")]
    NoPlies,
    /// Neither an edge nor a line supports the panel.
    #[error("nothing supports the panel: every edge is free and no line carries it")]
    NoSupport,
    /// Supports are there, but the panel can still turn about them.
    #[error("the supports leave the panel free to turn as a rigid body")]
    Mechanism,
    /// A load (by index) reaches outside the panel.
    #[error("load {index} at ({:.4} m, {:.4} m) lies outside the panel", at[0], at[1])]
    LoadOutside {
        /// Index of the load in its set.
        index: usize,
        /// About where it does, `[y, z]`, m.
        at: Point,
    },
    /// A support line or stiffener (by index) has a part outside the panel.
    #[error("line {index} leaves the panel at ({:.4} m, {:.4} m)", at[0], at[1])]
    LineOutside {
        /// Index of the line.
        index: usize,
        /// Its end outside, or the middle of a piece outside, `[y, z]`, m.
        at: Point,
    },
    /// A region (by index) does not lie on the panel, or its outline is unsound.
    #[error("region {index} is not a sound polygon on the panel")]
    Region {
        /// Index of the region.
        index: usize,
    },
    /// Features lie too close together for a mesh of bounded size.
    #[error("the panel's features could not be meshed: {reason}")]
    Mesh {
        /// What stood in the way, in words.
        reason: String,
    },
    /// The stiffness matrix could not be factored.
    #[error("the plate equations could not be solved: {reason}")]
    Factor {
        /// What went wrong, in words.
        reason: String,
    },
    /// A measured deflection that no stiffness between the bounds explains.
    #[error("no stiffness between {low} and {high} of the sound one gives the measured deflection")]
    NoScale {
        /// The lower bound, as a part of the sound stiffness.
        low: f64,
        /// The upper bound, likewise.
        high: f64,
    },
}
