//! How large a board can be drawn on its paper, and the track of each dimension beside it.

use super::board::Board;
use super::callouts::Column;
use super::dimension::Dimension;
use super::lettering::FONT;
use super::paper::{EDGE, FIRST, LINE, Paper, TRACK_HIGH};
use super::view::View;
use super::{Point, Side, tracks, width};

impl Board {
    /// The view that leaves room for all tracks and columns, and the track of each dimension. The
    /// tracks depend on the scale and the scale on the tracks; a few rounds settle both.
    pub(super) fn fit(&self, sheet: &Paper, column: &Column, min: Point, max: Point) -> (View, Vec<usize>) {
        let mut placed = vec![0; self.dimensions.len()];
        let mut view = self.view(sheet, column, min, max, &placed);
        for _ in 0..6 {
            let next = self.assign(&view);
            let deeper: Vec<usize> = next.iter().zip(&placed).map(|(a, b)| *a.max(b)).collect();
            view = self.view(sheet, column, min, max, &deeper);
            if deeper == placed {
                break;
            }
            placed = deeper;
        }
        (view, self.assign(&view))
    }

    fn view(&self, sheet: &Paper, column: &Column, min: Point, max: Point, placed: &[usize]) -> View {
        let left = EDGE + self.side_room(Side::Left, placed);
        let right = EDGE + self.side_room(Side::Right, placed) + column.width(self.column);
        let room = (sheet.wide - left - right).max(120.0);
        let scale = (room / (max.x - min.x)).min(sheet.highest / (max.y - min.y));
        let spare = (room - (max.x - min.x) * scale) / 2.0;
        View {
            wide: sheet.wide,
            scale,
            left: left + spare,
            top: EDGE + self.room(Side::Above, placed) + FONT,
            min,
            max,
        }
    }

    fn of_side(&self, side: Side) -> impl Iterator<Item = (usize, &Dimension)> {
        self.dimensions.iter().enumerate().filter(move |(_, dimension)| dimension.side == Some(side))
    }

    fn track_count(&self, side: Side, placed: &[usize]) -> usize {
        self.of_side(side).map(|(i, _)| placed[i] + 1).max().unwrap_or(0)
    }

    /// Height of the tracks above or below.
    pub(super) fn room(&self, side: Side, placed: &[usize]) -> f64 {
        match self.track_count(side, placed) {
            0 => 8.0,
            tracks => FIRST + tracks as f64 * TRACK_HIGH,
        }
    }

    /// Width of the tracks to the left or right.
    pub(super) fn side_room(&self, side: Side, placed: &[usize]) -> f64 {
        match self.track_count(side, placed) {
            0 => 4.0,
            tracks => FIRST + tracks as f64 * self.track_width(side),
        }
    }

    pub(super) fn track_width(&self, side: Side) -> f64 {
        self.of_side(side).map(|(_, dimension)| width(&dimension.words, FONT) + 8.0).fold(0.0, f64::max)
    }

    fn assign(&self, view: &View) -> Vec<usize> {
        let mut placed = vec![0; self.dimensions.len()];
        for side in [Side::Left, Side::Right, Side::Above, Side::Below] {
            let members: Vec<(usize, (f64, f64))> =
                self.of_side(side).map(|(i, dimension)| (i, interval(dimension, side, view))).collect();
            let intervals: Vec<(f64, f64)> = members.iter().map(|(_, interval)| *interval).collect();
            for ((i, _), track) in members.iter().zip(tracks::assign(&intervals)) {
                placed[*i] = track;
            }
        }
        placed
    }
}

/// What a dimension takes of its track: its line and its words.
fn interval(dimension: &Dimension, side: Side, view: &View) -> (f64, f64) {
    let (from, to, words) = match side {
        Side::Above | Side::Below => (view.x(dimension.from.x), view.x(dimension.to.x), width(&dimension.words, FONT)),
        Side::Left | Side::Right => (view.y(dimension.from.y), view.y(dimension.to.y), LINE),
    };
    let (low, high) = (from.min(to), from.max(to));
    let needed = words + 14.0;
    if high - low >= needed {
        return (low, high);
    }
    // The words stand behind the end of a short one.
    let forth = match side {
        Side::Above | Side::Below => words_go_forth(dimension, view, from, to),
        Side::Left | Side::Right => true,
    };
    if (to >= from) == forth { (low, high + needed) } else { (low - needed, high) }
}

/// Whether the words of a short dimension go behind its second end rather than before its first: they
/// do unless the paper ends there.
pub(super) fn words_go_forth(dimension: &Dimension, view: &View, from: f64, to: f64) -> bool {
    let needed = width(&dimension.words, FONT) + 14.0;
    let end = if to >= from { to + needed } else { to - needed };
    (EDGE..=view.wide - EDGE).contains(&end)
}
