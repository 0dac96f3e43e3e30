//! The board on which a drawing is laid out: shapes first, then dimensions, callouts and words, each
//! where it has room, and a scale bar.

use maud::{Markup, html};

use super::dimension::{Callout, Dimension, Words};
use super::lettering::{FONT, settle};
use super::marks::{
    broken, callout_marks, hair, letter, lettered, plate, shade_key, shape_mark, stroke, tick,
    words_mark,
};
use super::scale_bar::scale_bar;
use super::shape::Shape;
use super::view::View;
use super::{Anchor, Drawing, Pen, Point, Rect, Side, at, ink, tracks, width};
use crate::quantity::Units;

/// The paper: its width in units, about as many pixels as it is wide on a screen; the greatest height of
/// what is drawn to scale; and whether callouts are keyed by a letter to words below the drawing, where
/// there is no room for a column beside it.
#[derive(Clone, Copy)]
pub(super) struct Paper {
    pub wide: f64,
    highest: f64,
    pub keyed: bool,
}

const SHEET: Paper = Paper {
    wide: 660.0,
    highest: 460.0,
    keyed: false,
};
const SLIP: Paper = Paper {
    wide: 380.0,
    highest: 420.0,
    keyed: true,
};
/// Share of the paper that a column of callouts may take.
const WIDEST_COLUMN: f64 = 0.36;
/// Room round the edge of the paper.
pub(super) const EDGE: f64 = 6.0;
/// Height of a track of level dimensions.
const TRACK_HIGH: f64 = 23.0;
/// Room between the drawing and its first track.
const FIRST: f64 = 20.0;
/// Height of a callout.
pub(super) const LINE: f64 = 17.0;
/// Length of the slanting part of a leader.
pub(super) const ELBOW: f64 = 16.0;

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
    shapes: Vec<Shape>,
    dimensions: Vec<Dimension>,
    callouts: Vec<Callout>,
    words: Vec<Words>,
    /// Room that is made whether anything is drawn there or not: drawings of one scale share it.
    reserved: Vec<Point>,
    column: f64,
    /// Colours with what they mean.
    shades: Vec<(&'static str, String)>,
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
        self.dimensions.push(Dimension {
            name,
            from,
            to,
            words,
            side: Some(side),
            offset: 0.0,
        });
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
        self.dimensions.push(Dimension {
            name,
            from,
            to,
            words,
            side: None,
            offset,
        });
    }

    /// Words in the right-hand column, with a leader to the point.
    pub(in super::super) fn callout(&mut self, point: Point, words: String) {
        self.callouts.push(Callout { point, words });
    }

    /// Words at the point, moved along a direction of the paper until they stand free.
    pub(in super::super) fn words(
        &mut self,
        point: Point,
        along: (f64, f64),
        colour: &'static str,
        words: String,
    ) {
        self.words.push(Words {
            point,
            words,
            along,
            colour,
        });
    }

    /// The finished drawing, wide and narrow, or nothing where nothing was drawn.
    pub(in super::super) fn finish(self, layout: Layout, units: Units) -> Option<Drawing> {
        let (min, max) = self.extent()?;
        let mut drawing = self.on(&SHEET, min, max, &layout, units);
        drawing.narrow = Some(Box::new(self.on(&SLIP, min, max, &layout, units)));
        Some(drawing)
    }

    /// Whether callouts are keyed: on a slip, and where their words would leave the drawing too little.
    fn keyed(&self, sheet: &Paper) -> bool {
        let widest = self
            .callouts
            .iter()
            .map(|callout| width(&callout.words, FONT))
            .fold(0.0, f64::max);
        sheet.keyed || widest > WIDEST_COLUMN * sheet.wide
    }

    fn on(&self, sheet: &Paper, min: Point, max: Point, layout: &Layout, units: Units) -> Drawing {
        let sheet = &Paper {
            keyed: self.keyed(sheet),
            ..*sheet
        };
        let (view, placed) = self.fit(sheet, min, max);
        let mut taken: Vec<Rect> = Vec::new();
        // What has no choice of place goes first.
        let column = view.right() + self.side_room(Side::Right, &placed) + ELBOW;
        let order = self.callout_order();
        let callouts = callout_marks(&order, sheet, column, &view, &mut taken);
        let mut dimensions: Vec<Markup> = Vec::new();
        for here in [false, true] {
            for (dimension, track) in self.dimensions.iter().zip(&placed) {
                if dimension.side.is_none() == here {
                    dimensions.push(self.dimension_mark(dimension, *track, &view, &mut taken));
                }
            }
        }
        let bottom = view.bottom() + self.room(Side::Below, &placed);
        let last = taken.iter().fold(bottom, |low, rect| low.max(rect.bottom));
        let paper = Rect {
            left: EDGE,
            top: EDGE,
            right: sheet.wide - EDGE,
            bottom: last + 4.0,
        };
        let words: Vec<Markup> = self
            .words
            .iter()
            .map(|words| words_mark(words, &view, &mut taken, &paper))
            .collect();
        let shapes = self.shapes.iter().map(|shape| shape_mark(shape, &view));
        let key: Vec<String> = if sheet.keyed {
            let room = sheet.wide - 2.0 * EDGE - 4.0;
            order
                .iter()
                .enumerate()
                .flat_map(|(i, callout)| broken(&format!("{}  {}", letter(i), callout.words), room))
                .collect()
        } else {
            Vec::new()
        };
        let bar = last + 20.0;
        let shades = shade_key(
            &self.shades,
            sheet.wide,
            bar + 14.0 + key.len() as f64 * LINE,
        );
        let high = bar + 14.0 + key.len() as f64 * LINE + shades.0;
        let body = html! {
            @for shape in shapes { (shape) }
            @for mark in &callouts { (mark) }
            @for mark in &dimensions { (mark) }
            @for mark in &words { (mark) }
            (scale_bar(&view, bar, units))
            (shades.1)
            @for (i, line) in key.iter().enumerate() {
                (lettered(EDGE + 2.0, bar + 12.0 + (i + 1) as f64 * LINE - 4.0, Anchor::Start, ink::INK, line))
            }
        };
        Drawing {
            name: layout.name,
            title: layout.title.clone(),
            description: layout.description.clone(),
            notes: layout.notes.clone(),
            size: (sheet.wide, high),
            scale: Some(1.0 / view.scale),
            body,
            narrow: None,
        }
    }

    fn extent(&self) -> Option<(Point, Point)> {
        let mut points = self.corners();
        points.extend(&self.reserved);
        let first = *points.first()?;
        let (min, max) = points.iter().fold((first, first), |(min, max), point| {
            (
                at(min.x.min(point.x), min.y.min(point.y)),
                at(max.x.max(point.x), max.y.max(point.y)),
            )
        });
        let flat = max.x - min.x < 1.0 || max.y - min.y < 1.0;
        (!flat).then_some((min, max))
    }

    /// The view that leaves room for all tracks and columns, and the track of each dimension. The
    /// tracks depend on the scale and the scale on the tracks; a few rounds settle both.
    fn fit(&self, sheet: &Paper, min: Point, max: Point) -> (View, Vec<usize>) {
        let mut placed = vec![0; self.dimensions.len()];
        let mut view = self.view(sheet, min, max, &placed);
        for _ in 0..6 {
            let next = self.assign(&view);
            let deeper: Vec<usize> = next.iter().zip(&placed).map(|(a, b)| *a.max(b)).collect();
            view = self.view(sheet, min, max, &deeper);
            if deeper == placed {
                break;
            }
            placed = deeper;
        }
        (view, self.assign(&view))
    }

    fn view(&self, sheet: &Paper, min: Point, max: Point, placed: &[usize]) -> View {
        let words = self
            .callouts
            .iter()
            .map(|callout| width(&callout.words, FONT))
            .fold(self.column, f64::max);
        let column = match (sheet.keyed, words > 0.0) {
            (_, false) => 0.0,
            (true, true) => width("a", FONT) + ELBOW,
            (false, true) => words + ELBOW,
        };
        let left = EDGE + self.side_room(Side::Left, placed);
        let right = EDGE + self.side_room(Side::Right, placed) + column;
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
        self.dimensions
            .iter()
            .enumerate()
            .filter(move |(_, dimension)| dimension.side == Some(side))
    }

    fn track_count(&self, side: Side, placed: &[usize]) -> usize {
        self.of_side(side)
            .map(|(i, _)| placed[i] + 1)
            .max()
            .unwrap_or(0)
    }

    /// Height of the tracks above or below.
    fn room(&self, side: Side, placed: &[usize]) -> f64 {
        match self.track_count(side, placed) {
            0 => 8.0,
            tracks => FIRST + tracks as f64 * TRACK_HIGH,
        }
    }

    /// Width of the tracks to the left or right.
    fn side_room(&self, side: Side, placed: &[usize]) -> f64 {
        match self.track_count(side, placed) {
            0 => 4.0,
            tracks => FIRST + tracks as f64 * self.track_width(side),
        }
    }

    fn track_width(&self, side: Side) -> f64 {
        self.of_side(side)
            .map(|(_, dimension)| width(&dimension.words, FONT) + 8.0)
            .fold(0.0, f64::max)
    }

    fn assign(&self, view: &View) -> Vec<usize> {
        let mut placed = vec![0; self.dimensions.len()];
        for side in [Side::Left, Side::Right, Side::Above, Side::Below] {
            let members: Vec<(usize, (f64, f64))> = self
                .of_side(side)
                .map(|(i, dimension)| (i, interval(dimension, side, view)))
                .collect();
            let intervals: Vec<(f64, f64)> =
                members.iter().map(|(_, interval)| *interval).collect();
            for ((i, _), track) in members.iter().zip(tracks::assign(&intervals)) {
                placed[*i] = track;
            }
        }
        placed
    }

    fn dimension_mark(
        &self,
        dimension: &Dimension,
        track: usize,
        view: &View,
        taken: &mut Vec<Rect>,
    ) -> Markup {
        let (x1, y1) = view.point(dimension.from);
        let (x2, y2) = view.point(dimension.to);
        let beyond = |track: usize, size: f64| FIRST + (track as f64 + 0.5) * size;
        let (a, b) = match dimension.side {
            Some(side @ (Side::Above | Side::Below)) => {
                let y = if side == Side::Below {
                    view.bottom() + beyond(track, TRACK_HIGH)
                } else {
                    view.top - beyond(track, TRACK_HIGH)
                };
                ((x1, y), (x2, y))
            }
            Some(side @ (Side::Left | Side::Right)) => {
                let x = if side == Side::Left {
                    view.left - beyond(track, self.track_width(side))
                } else {
                    view.right() + beyond(track, self.track_width(side))
                };
                ((x, y1), (x, y2))
            }
            None => {
                let long = (x2 - x1).hypot(y2 - y1).max(1e-9);
                let beside = dimension.offset / long;
                let (dx, dy) = ((y2 - y1) * beside, -(x2 - x1) * beside);
                ((x1 + dx, y1 + dy), (x2 + dx, y2 + dy))
            }
        };
        let middle = ((a.0 + b.0) / 2.0, (a.1 + b.1) / 2.0);
        let upright = (b.1 - a.1).abs() > (b.0 - a.0).abs();
        let long = (b.0 - a.0).hypot(b.1 - a.1);
        let needed = if upright {
            LINE
        } else {
            width(&dimension.words, FONT)
        } + 14.0;
        let wanted = Rect::of(
            &dimension.words,
            middle.0,
            middle.1 + FONT * 0.36,
            Anchor::Middle,
            FONT,
        );
        let along = ((b.0 - a.0) / long.max(1e-9), (b.1 - a.1) / long.max(1e-9));
        let (dx, dy) = if long < needed {
            // Too short for its words: they stand behind its end.
            let forth = words_go_forth(dimension, view, a.0, b.0);
            let past = ((long + needed) / 2.0 - 4.0) * if forth { 1.0 } else { -1.0 };
            (along.0 * past, along.1 * past)
        } else if dimension.side.is_none() {
            let within = Rect {
                left: EDGE,
                top: EDGE,
                right: view.right(),
                bottom: 1e6,
            };
            let (dx, dy) = settle(&wanted, along, taken, &within);
            // Words stay on their line; where it is crowded they stand beside it.
            if dx.hypot(dy) <= (long - needed) / 2.0 {
                (dx, dy)
            } else {
                settle(&wanted, (-along.1, along.0), taken, &within)
            }
        } else {
            (0.0, 0.0)
        };
        taken.push(wanted.moved(dx, dy));
        // The line is broken for its words where they stand on it.
        let broken = long >= needed;
        let half = (width(&dimension.words, FONT) / 2.0 / along.0.abs().max(1e-6))
            .min(LINE / 2.0 / along.1.abs().max(1e-6))
            + 3.0;
        let mm = dimension.from.distance(dimension.to);
        html! {
            g data-dimension=(dimension.name) data-mm=(format!("{mm:.3}")) {
                (hair((x1, y1), a))
                (hair((x2, y2), b))
                @if broken {
                    (stroke(a, (middle.0 + dx - along.0 * half, middle.1 + dy - along.1 * half)))
                    (stroke((middle.0 + dx + along.0 * half, middle.1 + dy + along.1 * half), b))
                } @else {
                    (stroke(a, b))
                }
                (tick(a, along))
                (tick(b, along))
                @if dimension.side.is_none() { (plate(&wanted.moved(dx, dy))) }
                (lettered(middle.0 + dx, middle.1 + dy + FONT * 0.36, Anchor::Middle, ink::INK, &dimension.words))
            }
        }
    }

    /// The callouts from the top down.
    fn callout_order(&self) -> Vec<&Callout> {
        let mut order: Vec<&Callout> = self.callouts.iter().collect();
        order.sort_by(|a, b| b.point.y.total_cmp(&a.point.y));
        order
    }
}

/// What a dimension takes of its track: its line and its words.
fn interval(dimension: &Dimension, side: Side, view: &View) -> (f64, f64) {
    let (from, to, words) = match side {
        Side::Above | Side::Below => (
            view.x(dimension.from.x),
            view.x(dimension.to.x),
            width(&dimension.words, FONT),
        ),
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
    if (to >= from) == forth {
        (low, high + needed)
    } else {
        (low - needed, high)
    }
}

/// Whether the words of a short dimension go behind its second end rather than before its first: they
/// do unless the paper ends there.
fn words_go_forth(dimension: &Dimension, view: &View, from: f64, to: f64) -> bool {
    let needed = width(&dimension.words, FONT) + 14.0;
    let end = if to >= from { to + needed } else { to - needed };
    (EDGE..=view.wide - EDGE).contains(&end)
}
