//! Dimensions and callouts that wait for their place.

use super::Point;

/// A side of the drawing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in super::super) enum Side {
    Left,
    Right,
    Above,
    Below,
}

/// A distance between two points, lettered. Level ones and upright ones stand in tracks beside the
/// drawing, others in the drawing itself, beside the line between their points.
#[derive(Clone, Debug)]
pub(super) struct Dimension {
    pub name: &'static str,
    pub from: Point,
    pub to: Point,
    pub words: String,
    /// The side of the tracks; nothing for one that stands in the drawing.
    pub side: Option<Side>,
    /// How far beside the line between its points one in the drawing stands, to the left of its
    /// direction, in units of the paper.
    pub offset: f64,
}

/// Words in the column beside the drawing, with a leader to what they name.
#[derive(Clone, Debug)]
pub(super) struct Callout {
    pub point: Point,
    pub words: String,
}

/// Words in the drawing, moved along a direction until they stand free.
#[derive(Clone, Debug)]
pub(super) struct Words {
    pub point: Point,
    pub words: String,
    pub along: (f64, f64),
    pub colour: &'static str,
}
