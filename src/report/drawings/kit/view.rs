//! From millimetres of the boat to units of the paper.

use super::{Point, number};

/// From millimetres of the boat to units of the paper.
#[derive(Clone, Copy)]
pub(super) struct View {
    /// Width of the paper.
    pub wide: f64,
    pub scale: f64,
    pub left: f64,
    pub top: f64,
    pub min: Point,
    pub max: Point,
}

impl View {
    pub(super) fn x(&self, x: f64) -> f64 {
        self.left + (x - self.min.x) * self.scale
    }

    pub(super) fn y(&self, y: f64) -> f64 {
        self.top + (self.max.y - y) * self.scale
    }

    pub(super) fn point(&self, point: Point) -> (f64, f64) {
        (self.x(point.x), self.y(point.y))
    }

    pub(super) fn path(&self, points: &[Point]) -> String {
        let corners: Vec<String> = points
            .iter()
            .map(|point| {
                let (x, y) = self.point(*point);
                format!("{},{}", number(x), number(y))
            })
            .collect();
        corners.join(" ")
    }

    pub(super) fn right(&self) -> f64 {
        self.x(self.max.x)
    }

    pub(super) fn bottom(&self) -> f64 {
        self.y(self.min.y)
    }
}
