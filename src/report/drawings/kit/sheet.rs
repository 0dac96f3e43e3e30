//! A board put on paper: the view, then callouts, dimensions, words, each where it has room, a scale bar
//! and what is keyed below.

use maud::{Markup, html};

use super::board::{Board, Layout};
use super::callouts::Column;
use super::marks::{lettered, shade_key, shape_mark, words_mark};
use super::paper::{EDGE, ELBOW, LINE, Paper, SHEET, SLIP};
use super::scale_bar::scale_bar;
use super::{Anchor, Drawing, Point, Rect, Side, ink};
use crate::quantity::Units;

/// Room below the scale bar.
const UNDER_BAR: f64 = 14.0;

impl Board {
    /// The finished drawing, wide and narrow, or nothing where nothing was drawn.
    pub(in super::super) fn finish(self, layout: Layout, units: Units) -> Option<Drawing> {
        let (min, max) = self.extent()?;
        let mut drawing = self.on(&SHEET, min, max, &layout, units);
        drawing.narrow = Some(Box::new(self.on(&SLIP, min, max, &layout, units)));
        Some(drawing)
    }

    fn on(&self, sheet: &Paper, min: Point, max: Point, layout: &Layout, units: Units) -> Drawing {
        let column = Column::of(&self.callouts, sheet);
        let (view, placed) = self.fit(sheet, &column, min, max);
        let mut taken: Vec<Rect> = Vec::new();
        // What has no choice of place goes first.
        let beside = view.right() + self.side_room(Side::Right, &placed) + ELBOW;
        let callouts = column.marks(beside, &view, &mut taken);
        let mut dimensions: Vec<[Markup; 2]> = Vec::new();
        for here in [false, true] {
            for (dimension, track) in self.dimensions.iter().zip(&placed) {
                if dimension.side.is_none() == here {
                    dimensions.push(self.dimension_mark(dimension, *track, &view, &mut taken));
                }
            }
        }
        let bottom = view.bottom() + self.room(Side::Below, &placed);
        let last = taken.iter().fold(bottom, |low, rect| low.max(rect.bottom));
        let paper = Rect { left: EDGE, top: EDGE, right: sheet.wide - EDGE, bottom: last + 4.0 };
        let words: Vec<Markup> = self.words.iter().map(|words| words_mark(words, &view, &mut taken, &paper)).collect();
        let shapes = self.shapes.iter().map(|shape| shape_mark(shape, &view));
        let bar = last + 20.0;
        let below = bar + UNDER_BAR;
        let key = column.key(sheet.wide);
        let under_key = below + key.len() as f64 * LINE;
        let (shades_high, shades) = shade_key(&self.shades, sheet.wide, under_key);
        let body = html! {
            @for shape in shapes { (shape) }
            @for mark in &callouts { (mark) }
            @for layer in 0..2 { @for mark in &dimensions { (mark[layer]) } }
            @for mark in &words { (mark) }
            (scale_bar(&view, bar, units))
            (shades)
            @for (i, line) in key.iter().enumerate() {
                (lettered(EDGE + 2.0, below + (i + 1) as f64 * LINE - 6.0, Anchor::Start, ink::INK, line))
            }
        };
        Drawing {
            name: layout.name,
            title: layout.title.clone(),
            description: layout.description.clone(),
            notes: layout.notes.clone(),
            size: (sheet.wide, under_key + shades_high),
            scale: Some(1.0 / view.scale),
            body,
            narrow: None,
        }
    }
}
