//! A dimension on the paper: its line with a stroke at each end, the hairs to what it measures, its words.

use maud::{Markup, html};

use super::board::Board;
use super::dimension::Dimension;
use super::fit::words_go_forth;
use super::lettering::{FONT, settle};
use super::marks::{Place, hairs, lettered, plate, stroke, ticks};
use super::paper::{EDGE, FIRST, LINE, TRACK_HIGH};
use super::view::View;
use super::{Anchor, Rect, Side, ink, width};

impl Board {
    /// The hairs of a dimension, and the rest of it: hairs go below the words of every other.
    pub(super) fn dimension_mark(
        &self,
        dimension: &Dimension,
        track: usize,
        view: &View,
        taken: &mut Vec<Rect>,
    ) -> [Markup; 2] {
        let (from, to) = (view.point(dimension.from), view.point(dimension.to));
        let (a, b) = self.line_of(dimension, track, view, from, to);
        let long = (b.0 - a.0).hypot(b.1 - a.1);
        let along = ((b.0 - a.0) / long.max(1e-9), (b.1 - a.1) / long.max(1e-9));
        let middle = ((a.0 + b.0) / 2.0, (a.1 + b.1) / 2.0);
        let wide = width(&dimension.words, FONT);
        let upright = (b.1 - a.1).abs() > (b.0 - a.0).abs();
        let needed = if upright { LINE } else { wide } + 14.0;
        let wanted = Rect::of(&dimension.words, middle.0, middle.1 + FONT * 0.36, Anchor::Middle, FONT);
        let (dx, dy) = if long < needed {
            // Too short for its words: they stand behind its end.
            let forth = words_go_forth(dimension, view, a.0, b.0);
            let past = ((long + needed) / 2.0 - 4.0) * if forth { 1.0 } else { -1.0 };
            (along.0 * past, along.1 * past)
        } else if dimension.side.is_none() {
            beside(&wanted, along, (long - needed) / 2.0, view, taken)
        } else {
            (0.0, 0.0)
        };
        taken.push(wanted.moved(dx, dy));
        // The line is broken for its words where they stand on it.
        let broken = long >= needed;
        let half = (wide / 2.0 / along.0.abs().max(1e-6)).min(LINE / 2.0 / along.1.abs().max(1e-6)) + 3.0;
        let (from_mm, to_mm) = (dimension.from, dimension.to);
        // In a track a line that slopes is measured level or upright.
        let mm = match dimension.side {
            Some(Side::Above | Side::Below) => (to_mm.x - from_mm.x).abs(),
            Some(Side::Left | Side::Right) => (to_mm.y - from_mm.y).abs(),
            None => from_mm.distance(to_mm),
        };
        let rest = html! {
            g data-dimension=(dimension.name) data-mm=(format!("{mm:.3}")) {
                @if broken {
                    (stroke(a, (middle.0 + dx - along.0 * half, middle.1 + dy - along.1 * half)))
                    (stroke((middle.0 + dx + along.0 * half, middle.1 + dy + along.1 * half), b))
                } @else {
                    (stroke(a, b))
                }
                (ticks([a, b], along))
                @if dimension.side.is_none() { (plate(&wanted.moved(dx, dy))) }
                (lettered(middle.0 + dx, middle.1 + dy + FONT * 0.36, Anchor::Middle, ink::INK, &dimension.words))
            }
        };
        [hairs([(from, a), (to, b)]), rest]
    }

    /// The ends of the dimension line: in its track, or beside the line between its points.
    fn line_of(
        &self,
        dimension: &Dimension,
        track: usize,
        view: &View,
        (x1, y1): Place,
        (x2, y2): Place,
    ) -> (Place, Place) {
        let beyond = |size: f64| FIRST + (track as f64 + 0.5) * size;
        match dimension.side {
            Some(side @ (Side::Above | Side::Below)) => {
                let y = if side == Side::Below {
                    view.bottom() + beyond(TRACK_HIGH)
                } else {
                    view.top - beyond(TRACK_HIGH)
                };
                ((x1, y), (x2, y))
            }
            Some(side @ (Side::Left | Side::Right)) => {
                let x = if side == Side::Left {
                    view.left - beyond(self.track_width(side))
                } else {
                    view.right() + beyond(self.track_width(side))
                };
                ((x, y1), (x, y2))
            }
            None => {
                let long = (x2 - x1).hypot(y2 - y1).max(1e-9);
                let beside = dimension.offset / long;
                let (dx, dy) = ((y2 - y1) * beside, -(x2 - x1) * beside);
                ((x1 + dx, y1 + dy), (x2 + dx, y2 + dy))
            }
        }
    }
}

/// How far the words of a dimension in the drawing move: along their line as long as they stay on it;
/// where it is crowded they stand beside it.
fn beside(wanted: &Rect, along: Place, spare: f64, view: &View, taken: &[Rect]) -> Place {
    let within = Rect { left: EDGE, top: EDGE, right: view.right(), bottom: 1e6 };
    let (dx, dy) = settle(wanted, along, taken, &within);
    if dx.hypot(dy) <= spare { (dx, dy) } else { settle(wanted, (-along.1, along.0), taken, &within) }
}
