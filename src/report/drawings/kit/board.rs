//! The board on which a drawing is laid out: what is to be drawn, dimensioned, called out and lettered,
//! in millimetres of the boat. `sheet.rs` puts it on paper.

use super::dimension::{Callout, Dimension, Words};
use super::shape::Shape;
use super::{Pen, Point, Side, at};

/// What the drawing is called and says of itself.
pub(in super::super) struct Layout {
    pub name: &'static str,
    pub title: String,
    pub description: String,
    pub notes: Vec<String>,
}

/// A drawing that is being laid out.
#[derive(Default)]
pub(in super::super) struct Board {
    pub(super) shapes: Vec<Shape>,
    pub(super) dimensions: Vec<Dimension>,
    pub(super) callouts: Vec<Callout>,
    pub(super) words: Vec<Words>,
    /// Room that is made whether anything is drawn there or not: drawings of one scale share it.
    pub(super) reserved: Vec<Point>,
    pub(super) column: f64,
    /// Colours with what they mean.
    pub(super) shades: Vec<(&'static str, String)>,
}

impl Board {
    pub(in super::super) fn draw(&mut self, shape: Shape) {
        self.shapes.push(shape);
    }

    pub(in super::super) fn line(&mut self, points: Vec<Point>, pen: Pen) {
        self.draw(Shape::Line(points, pen));
    }

    pub(in super::super) fn area(&mut self, points: Vec<Point>, pen: Pen) {
        self.draw(Shape::Area(points, pen));
    }

    /// Makes room for this point, and this much for the column of callouts: drawings that do so alike
    /// come out at one scale.
    pub(in super::super) fn reserve(&mut self, points: &[Point], column: f64) {
        self.reserved.extend(points);
        self.column = column;
    }

    /// A key of colours below the drawing.
    pub(in super::super) fn key(&mut self, shades: Vec<(&'static str, String)>) {
        self.shades = shades;
    }

    /// What the shapes drawn so far take.
    pub(in super::super) fn corners(&self) -> Vec<Point> {
        self.shapes.iter().flat_map(Shape::extent).collect()
    }

    /// A level or upright dimension in the tracks of a side.
    pub(in super::super) fn dimension(
        &mut self,
        name: &'static str,
        side: Side,
        from: Point,
        to: Point,
        words: String,
    ) {
        self.dimensions.push(Dimension { name, from, to, words, side: Some(side), offset: 0.0 });
    }

    /// A dimension in the drawing, beside the line between its points.
    pub(in super::super) fn dimension_here(
        &mut self,
        name: &'static str,
        from: Point,
        to: Point,
        offset: f64,
        words: String,
    ) {
        self.dimensions.push(Dimension { name, from, to, words, side: None, offset });
    }

    /// Words in the right-hand column, with a leader to the point.
    pub(in super::super) fn callout(&mut self, point: Point, words: String) {
        self.callouts.push(Callout { point, words });
    }

    /// Words at the point, moved along a direction of the paper until they stand free.
    pub(in super::super) fn words(&mut self, point: Point, along: (f64, f64), colour: &'static str, words: String) {
        self.words.push(Words { point, words, along, colour });
    }

    /// The corners of all that is drawn; nothing where there is nothing, or only a line.
    pub(super) fn extent(&self) -> Option<(Point, Point)> {
        let mut points = self.corners();
        points.extend(&self.reserved);
        points.extend(self.dimensions.iter().flat_map(|one| [one.from, one.to]));
        let first = *points.first()?;
        let (min, max) = points.iter().fold((first, first), |(min, max), point| {
            (at(min.x.min(point.x), min.y.min(point.y)), at(max.x.max(point.x), max.y.max(point.y)))
        });
        let flat = max.x - min.x < 1.0 || max.y - min.y < 1.0;
        (!flat).then_some((min, max))
    }
}
