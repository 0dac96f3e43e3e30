//! The marks on the paper: strokes, shapes, lettering, callouts, the key of colours.

use maud::{Markup, html};

use super::board::{EDGE, ELBOW, LINE, Paper};
use super::dimension::{Callout, Words};
use super::lettering::{FONT, settle, spread};
use super::shape::Shape;
use super::view::View;
use super::{Anchor, Pen, Rect, ink, number, width};

/// A key of colours: swatches with their words, in rows. Returns the height that it takes.
pub(super) fn shade_key(shades: &[(&'static str, String)], wide: f64, top: f64) -> (f64, Markup) {
    if shades.is_empty() {
        return (0.0, html! {});
    }
    let cell = shades
        .iter()
        .map(|(_, words)| width(words, FONT) + 34.0)
        .fold(0.0, f64::max);
    let in_row = (((wide - 2.0 * EDGE) / cell).floor() as usize).max(1);
    let rows = shades.len().div_ceil(in_row);
    let marks = html! {
        @for (i, (colour, words)) in shades.iter().enumerate() {
            @let x = EDGE + 2.0 + (i % in_row) as f64 * cell;
            @let y = top + 6.0 + (i / in_row) as f64 * (LINE + 3.0);
            rect x=(number(x)) y=(number(y)) width="20" height="13" fill=(colour) stroke=(ink::SOFT) stroke-width="0.7" {}
            (lettered(x + 25.0, y + 11.0, Anchor::Start, ink::INK, words))
        }
    };
    (10.0 + rows as f64 * (LINE + 3.0), marks)
}

/// Words in lines no wider than the room.
pub(super) fn broken(words: &str, room: f64) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in words.split(' ') {
        match lines.last_mut() {
            Some(line) if width(&format!("{line} {word}"), FONT) <= room => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(word.to_owned()),
        }
    }
    lines
}

/// The letter that keys a callout.
pub(super) fn letter(index: usize) -> String {
    let letters = "abcdefghijklmnopqrstuvwxyz";
    letters
        .chars()
        .nth(index)
        .map_or_else(|| (index + 1).to_string(), |letter| letter.to_string())
}

pub(super) fn callout_marks(
    order: &[&Callout],
    sheet: &Paper,
    column: f64,
    view: &View,
    taken: &mut Vec<Rect>,
) -> Vec<Markup> {
    let wanted: Vec<f64> = order
        .iter()
        .map(|callout| view.y(callout.point.y))
        .collect();
    let bottom = view.bottom().max(view.top + 40.0);
    let places = spread(&wanted, LINE, EDGE + LINE, bottom);
    order
        .iter()
        .zip(places)
        .enumerate()
        .map(|(i, (callout, y))| {
            let (px, py) = view.point(callout.point);
            let words = if sheet.keyed { letter(i) } else { callout.words.clone() };
            taken.push(Rect::of(&words, column, y + FONT * 0.36, Anchor::Start, FONT));
            let bend = (column - ELBOW).max(px);
            html! {
                polyline points=(format!("{},{} {},{} {},{}", number(px), number(py), number(bend), number(py), number(column - 3.0), number(y)))
                    fill="none" stroke=(ink::SOFT) stroke-width="0.8" {}
                circle cx=(number(px)) cy=(number(py)) r="1.8" fill=(ink::SOFT) {}
                (lettered(column, y + FONT * 0.36, Anchor::Start, ink::INK, &words))
            }
        })
        .collect()
}

pub(super) fn stroke(from: (f64, f64), to: (f64, f64)) -> Markup {
    html! {
        line x1=(number(from.0)) y1=(number(from.1)) x2=(number(to.0)) y2=(number(to.1))
            stroke=(ink::SOFT) stroke-width="1" {}
    }
}

pub(super) fn hair(from: (f64, f64), to: (f64, f64)) -> Markup {
    html! {
        line x1=(number(from.0)) y1=(number(from.1)) x2=(number(to.0)) y2=(number(to.1))
            stroke=(ink::SOFT) stroke-width="0.5" {}
    }
}

/// A ground for words in the drawing, so that lines behind them do not run through.
pub(super) fn plate(rect: &Rect) -> Markup {
    html! {
        rect x=(number(rect.left - 2.0)) y=(number(rect.top)) width=(number(rect.right - rect.left + 4.0))
            height=(number(rect.bottom - rect.top)) rx="3" fill=(ink::PAPER) fill-opacity="0.85" {}
    }
}

/// The slanting stroke at the end of a dimension line.
pub(super) fn tick(end: (f64, f64), along: (f64, f64)) -> Markup {
    let size = 4.0;
    let (dx, dy) = (
        (along.0 - along.1) * size * 0.7,
        (along.1 + along.0) * size * 0.7,
    );
    html! {
        line x1=(number(end.0 - dx)) y1=(number(end.1 - dy)) x2=(number(end.0 + dx)) y2=(number(end.1 + dy))
            stroke=(ink::INK) stroke-width="1.4" {}
    }
}

/// Words on the paper, with a rim that keeps lines off them.
pub(in super::super) fn lettered(
    x: f64,
    y: f64,
    anchor: Anchor,
    colour: &str,
    words: &str,
) -> Markup {
    html! {
        text x=(number(x)) y=(number(y)) text-anchor=(anchor.word()) fill=(colour)
            stroke=(ink::PAPER) stroke-width="4" stroke-linejoin="round" paint-order="stroke" { (words) }
    }
}

/// Words in the middle of a place, a line each.
pub(super) fn words_mark(
    words: &Words,
    view: &View,
    taken: &mut Vec<Rect>,
    paper: &Rect,
) -> Markup {
    let (x, y) = view.point(words.point);
    let lines: Vec<&str> = words.words.lines().collect();
    let wide = lines
        .iter()
        .map(|line| width(line, FONT))
        .fold(0.0, f64::max);
    let high = lines.len() as f64 * LINE;
    let wanted = Rect {
        left: x - wide / 2.0,
        top: y - high / 2.0,
        right: x + wide / 2.0,
        bottom: y + high / 2.0,
    };
    let (dx, dy) = settle(&wanted, words.along, taken, paper);
    let rect = wanted.moved(dx, dy);
    taken.push(rect);
    html! {
        @for (i, line) in lines.iter().enumerate() {
            (lettered(x + dx, rect.top + i as f64 * LINE + FONT, Anchor::Middle, words.colour, line))
        }
    }
}

pub(super) fn shape_mark(shape: &Shape, view: &View) -> Markup {
    let dashes = |pen: &Pen| (!pen.dashes.is_empty()).then_some(pen.dashes);
    match shape {
        Shape::Line(points, pen) => html! {
            polyline points=(view.path(points)) fill="none" stroke=(pen.stroke)
                stroke-width=(number(pen.width)) stroke-dasharray=[dashes(pen)] {}
        },
        Shape::Area(points, pen) => html! {
            polygon points=(view.path(points)) fill=(pen.fill) stroke=(pen.stroke)
                stroke-width=(number(pen.width)) stroke-dasharray=[dashes(pen)] {}
        },
        Shape::Circle(centre, radius, pen) => {
            let (x, y) = view.point(*centre);
            html! {
                circle cx=(number(x)) cy=(number(y)) r=(number(radius * view.scale)) fill=(pen.fill)
                    stroke=(pen.stroke) stroke-width=(number(pen.width)) stroke-dasharray=[dashes(pen)] {}
            }
        }
        Shape::Blocks(blocks, colour) => {
            let mut path = String::new();
            for (low, high) in blocks {
                let (left, bottom) = view.point(*low);
                let (right, top) = view.point(*high);
                // A little more than its cell, so that no paper shows between two.
                let (wide, high) = (right - left + 0.3, bottom - top + 0.3);
                path.push_str(&format!(
                    "M{left:.1} {top:.1}h{wide:.1}v{high:.1}h-{wide:.1}z"
                ));
            }
            html! { path d=(path) fill=(colour) {} }
        }
        Shape::Hole {
            centre,
            diameter,
            pen,
            crossed,
        } => {
            let (x, y) = view.point(*centre);
            // A hole is never drawn so small that it cannot be seen.
            let r = (diameter / 2.0 * view.scale).max(3.2);
            let arm = r + 2.5;
            html! {
                circle cx=(number(x)) cy=(number(y)) r=(number(r)) fill=(ink::PAPER) stroke=(pen.stroke)
                    stroke-width=(number(pen.width)) {}
                @if *crossed {
                    path d=(format!("M{} {}L{} {}M{} {}L{} {}",
                        number(x - arm), number(y - arm), number(x + arm), number(y + arm),
                        number(x - arm), number(y + arm), number(x + arm), number(y - arm)))
                        stroke=(pen.stroke) stroke-width="1.2" fill="none" {}
                }
            }
        }
    }
}
