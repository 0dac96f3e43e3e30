//! What can be wrong with a chain, a body, a range or a question about them.

use thiserror::Error;

/// Why a swing question cannot be put. Every variant names the thing at fault and what would do.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum SwingError {
    /// A coordinate, angle or size is NaN or infinite.
    #[error("{what} is not a finite number; give a plain number, for example 0.654")]
    NotFinite {
        /// The field at fault.
        what: String,
    },
    /// A coordinate lies so far away that rounding would spoil the bound.
    #[error("{what} lies {metres:.0} m from the boat's origin; it must lie within {limit:.0} m")]
    TooFar {
        /// The body or axis at fault.
        what: String,
        /// Where it lies, in metres.
        metres: f64,
        /// The farthest allowed, in metres.
        limit: f64,
    },
    /// A size that must be positive is zero or negative.
    #[error("{what} is {value}; it must be more than zero")]
    NotPositive {
        /// The field at fault.
        what: String,
        /// The value given, in SI.
        value: f64,
    },
    /// An axis whose direction has no length.
    #[error("{axis} has no direction: its vector is zero; give one such as (0, 1, 0)")]
    AxisWithoutLength {
        /// The axis at fault.
        axis: String,
    },
    /// An axis that passes through no body that it should turn.
    #[error(
        "{axis} is outside the body: it passes {metres:.3} m from the nearest of {bodies}; \
         move the axis into one of them"
    )]
    AxisOutsideBody {
        /// The axis at fault.
        axis: String,
        /// The names of the bodies looked at.
        bodies: String,
        /// The least distance from the axis to them, in metres.
        metres: f64,
    },
    /// A range that runs backwards.
    #[error(
        "{what} is empty: it runs from {low_deg:.3} deg to {high_deg:.3} deg; the first must not exceed the second"
    )]
    ReversedRange {
        /// The range at fault.
        what: String,
        /// Its low end, in degrees.
        low_deg: f64,
        /// Its high end, in degrees.
        high_deg: f64,
    },
    /// A range that reaches past half a turn.
    #[error("{what} reaches {degrees:.1} deg; it must stay within -180 deg and 180 deg")]
    RangeTooWide {
        /// The range at fault.
        what: String,
        /// The end at fault, in degrees.
        degrees: f64,
    },
    /// A profile with fewer than three distinct corners does not close round anything.
    #[error("the profile of {body} is open: {corners} distinct corners; it needs at least 3")]
    OpenProfile {
        /// The body at fault.
        body: String,
        /// How many distinct corners it has.
        corners: usize,
    },
    /// A profile whose corners lie on one line.
    #[error("the profile of {body} encloses no area: its corners lie on one line")]
    FlatProfile {
        /// The body at fault.
        body: String,
    },
    /// A profile whose sides cross.
    #[error("the profile of {body} crosses itself: side {first} meets side {second}")]
    CrossedProfile {
        /// The body at fault.
        body: String,
        /// One of the sides, counted from 1.
        first: usize,
        /// The other side, counted from 1.
        second: usize,
    },
    /// A profile with a corner that bends inward.
    #[error("the profile of {body} is not convex: it bends inward at corner {corner}; split it into convex bodies")]
    HollowProfile {
        /// The body at fault.
        body: String,
        /// The corner at fault, counted from 1.
        corner: usize,
    },
    /// A body without points.
    #[error("{body} has no points; a body needs at least one")]
    EmptyBody {
        /// The body at fault.
        body: String,
    },
    /// A body with more points than the search is meant for.
    #[error("{body} has {points} points; at most {limit} are allowed, keep only its outermost")]
    TooManyPoints {
        /// The body at fault.
        body: String,
        /// How many it has.
        points: usize,
        /// How many are allowed.
        limit: usize,
    },
    /// A chain with nothing on its swivel or head.
    #[error("{engine} has no moving bodies; give at least one on the swivel or the head")]
    NoMovingBodies {
        /// The chain at fault.
        engine: String,
    },
    /// A question without anything to keep clear of.
    #[error("there is nothing to keep clear of; give an obstacle or a neighbour")]
    NoObstacles,
    /// A name that no body carries.
    #[error("no body is called `{name}`; there are {known}")]
    UnknownBody {
        /// The name asked for.
        name: String,
        /// The names that there are.
        known: String,
    },
    /// A question about a neighbour where there is none.
    #[error("there is no neighbour in this scene; {what} needs one")]
    NoNeighbour {
        /// What asked for it.
        what: String,
    },
    /// Parallel arms that do not reach through their bracket's travel.
    #[error(
        "arms of {length:.3} m are too short: their after pins lie {hang:.3} m below the forward ones, and go up by {travel:.3} m"
    )]
    ArmsTooShort {
        /// Length of the arms, in metres.
        length: f64,
        /// How far their after pins lie below the forward ones, in metres.
        hang: f64,
        /// How far they go up, in metres.
        travel: f64,
    },
    /// A question about a lift where there is none.
    #[error("nothing in this scene is lifted; give an engine its lift")]
    NoLift,
    /// Two lifting brackets that go up in two ways.
    #[error("two lifting brackets go up in two ways; ask about one of them at a time")]
    TwoLifts,
    /// Mounting-sheet numbers that no engine of this shape can have.
    #[error("the mounting sheet's numbers do not fit together: {why}")]
    SheetDoesNotFit {
        /// Which numbers, and what they would lead to.
        why: String,
    },
}

/// The value (SI), where it is a finite number.
pub(super) fn finite(what: &str, value: f64) -> Result<f64, SwingError> {
    if value.is_finite() { Ok(value) } else { Err(SwingError::NotFinite { what: what.to_owned() }) }
}

/// The value (SI), where it is finite and more than zero.
pub(super) fn positive(what: &str, value: f64) -> Result<f64, SwingError> {
    if finite(what, value)? > 0.0 { Ok(value) } else { Err(SwingError::NotPositive { what: what.to_owned(), value }) }
}
