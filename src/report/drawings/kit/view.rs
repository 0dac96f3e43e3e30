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

    /// A closed outline as a path of steps in tenths of a unit, each from where the last one ended, so that
    /// rounding does not add up.
    pub(super) fn closed(&self, points: &[Point]) -> String {
        let tenths = |value: f64| (value * 10.0).round() as i64;
        let mut last = (0, 0);
        let mut path = String::new();
        for point in points {
            let (x, y) = self.point(*point);
            let place = (tenths(x), tenths(y));
            let lead = if path.is_empty() { "M" } else { "l" };
            if path.is_empty() || place != last {
                let step = |tenths: i64| number(tenths as f64 / 10.0);
                path.push_str(&format!("{lead}{} {}", step(place.0 - last.0), step(place.1 - last.1)));
            }
            last = place;
        }
        path + "z"
    }

    pub(super) fn right(&self) -> f64 {
        self.x(self.max.x)
    }

    pub(super) fn bottom(&self) -> f64 {
        self.y(self.min.y)
    }
}
