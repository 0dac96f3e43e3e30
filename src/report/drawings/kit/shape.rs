//! Shapes in millimetres of the boat.

use super::ink;

/// A point of the drawing's plane, in millimetres: to the right, and up.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(in super::super) struct Point {
    pub x: f64,
    pub y: f64,
}

/// The point at so many millimetres to the right and up.
pub(in super::super) const fn at(x: f64, y: f64) -> Point {
    Point { x, y }
}

impl Point {
    /// The point moved by so many millimetres.
    pub(in super::super) fn by(self, x: f64, y: f64) -> Point {
        at(self.x + x, self.y + y)
    }

    /// The point as far from this one towards another as a share of the way.
    pub(in super::super) fn towards(self, other: Point, share: f64) -> Point {
        at(self.x + (other.x - self.x) * share, self.y + (other.y - self.y) * share)
    }

    /// Distance to another point, in millimetres.
    pub(in super::super) fn distance(self, other: Point) -> f64 {
        (other.x - self.x).hypot(other.y - self.y)
    }
}

/// How a line is drawn and what it encloses is filled with.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(in super::super) struct Pen {
    pub stroke: &'static str,
    /// Width of the line in units of the paper.
    pub width: f64,
    /// Dashes in units of the paper; empty for a whole line.
    pub dashes: &'static str,
    pub fill: &'static str,
}

impl Pen {
    /// A thick line: an edge that was measured.
    pub(in super::super) const EDGE: Pen = Pen::of(ink::INK, 1.6);
    /// A thin line: an outline that is only indicated.
    pub(in super::super) const INDICATED: Pen = Pen::of(ink::SOFT, 1.0);
    /// A centreline.
    pub(in super::super) const CENTRE: Pen = Pen::of(ink::SOFT, 0.8).dashed("9 3 2 3");
    /// A line that nobody measured, or that lies behind.
    pub(in super::super) const HIDDEN: Pen = Pen::of(ink::SOFT, 1.0).dashed("5 4");
    /// What was there before.
    pub(in super::super) const OLD: Pen = Pen::of(ink::OLD, 1.3).dashed("7 3");
    /// What is new.
    pub(in super::super) const NEW: Pen = Pen::of(ink::NEW, 1.6);

    pub(in super::super) const fn of(stroke: &'static str, width: f64) -> Pen {
        Pen { stroke, width, dashes: "", fill: "none" }
    }

    /// An area without an edge.
    pub(in super::super) const fn area(fill: &'static str) -> Pen {
        Pen::of("none", 0.0).filled(fill)
    }

    pub(in super::super) const fn dashed(mut self, dashes: &'static str) -> Pen {
        self.dashes = dashes;
        self
    }

    pub(in super::super) const fn filled(mut self, fill: &'static str) -> Pen {
        self.fill = fill;
        self
    }
}

/// Something drawn.
#[derive(Clone, Debug, PartialEq)]
pub(in super::super) enum Shape {
    /// A line through points.
    Line(Vec<Point>, Pen),
    /// A closed outline.
    Area(Vec<Point>, Pen),
    /// A circle of a radius in millimetres.
    Circle(Point, f64, Pen),
    /// Regions with their holes; they may run beyond what is seen of them.
    Regions(Vec<Vec<Point>>, Pen),
    /// Paper all round an outline, over what ran beyond it.
    Around(Vec<Point>),
    /// A bolt hole of a diameter in millimetres; one that is not used is crossed out.
    Hole { centre: Point, diameter: f64, pen: Pen, crossed: bool },
}

impl Shape {
    /// The points that the paper must have room for.
    pub(super) fn extent(&self) -> Vec<Point> {
        match self {
            Shape::Line(points, _) | Shape::Area(points, _) => points.clone(),
            Shape::Circle(centre, radius, _) => {
                vec![centre.by(-radius, -radius), centre.by(*radius, *radius)]
            }
            // What is seen of them lies within something else.
            Shape::Regions(..) | Shape::Around(_) => Vec::new(),
            Shape::Hole { centre, .. } => vec![*centre],
        }
    }
}
