//! The marks on the paper: strokes, shapes, lettering, the key of colours.

use maud::{Markup, html};

use super::dimension::Words;
use super::lettering::{FONT, settle};
use super::paper::{EDGE, LINE};
use super::shape::Shape;
use super::view::View;
use super::{Anchor, Pen, Rect, ink, number, width};

/// A place on the paper, or a direction on it.
pub(super) type Place = (f64, f64);

/// A key of colours: swatches with their words, in rows. Returns the height that it takes.
pub(super) fn shade_key(shades: &[(&'static str, String)], wide: f64, top: f64) -> (f64, Markup) {
    if shades.is_empty() {
        return (0.0, html! {});
    }
    let cell = shades.iter().map(|(_, words)| width(words, FONT) + 34.0).fold(0.0, f64::max);
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

pub(super) fn stroke(from: Place, to: Place) -> Markup {
    html! {
        line x1=(number(from.0)) y1=(number(from.1)) x2=(number(to.0)) y2=(number(to.1))
            stroke=(ink::SOFT) stroke-width="1" {}
    }
}

/// The thin lines from what is measured to the dimension line.
pub(super) fn hairs(lines: [(Place, Place); 2]) -> Markup {
    strokes(lines, ink::SOFT, "0.5")
}

fn strokes(lines: [(Place, Place); 2], colour: &str, width: &str) -> Markup {
    let path: String = lines
        .iter()
        .filter(|(from, to)| (from.0 - to.0).hypot(from.1 - to.1) > 0.01)
        .map(|(from, to)| {
            let [x1, y1, x2, y2] = [from.0, from.1, to.0, to.1].map(number);
            format!("M{x1} {y1}L{x2} {y2}")
        })
        .collect();
    html! {
        @if !path.is_empty() { path d=(path) stroke=(colour) stroke-width=(width) {} }
    }
}

/// A ground for words in the drawing, so that lines behind them do not run through.
pub(super) fn plate(rect: &Rect) -> Markup {
    html! {
        rect x=(number(rect.left - 2.0)) y=(number(rect.top)) width=(number(rect.right - rect.left + 4.0))
            height=(number(rect.bottom - rect.top)) rx="3" fill=(ink::PAPER) fill-opacity="0.85" {}
    }
}

/// The slanting strokes at the ends of a dimension line.
pub(super) fn ticks(ends: [Place; 2], along: Place) -> Markup {
    let size = 4.0;
    let (dx, dy) = ((along.0 - along.1) * size * 0.7, (along.1 + along.0) * size * 0.7);
    let slanting = ends.map(|(x, y)| ((x - dx, y - dy), (x + dx, y + dy)));
    strokes(slanting, ink::INK, "1.4")
}

/// Words on the paper; their colour, where it is not that of ink, and their rim stand in `LETTERING`.
pub(in super::super) fn lettered(x: f64, y: f64, anchor: Anchor, colour: &str, words: &str) -> Markup {
    html! {
        text x=(number(x)) y=(number(y)) text-anchor=[anchor.word()] fill=[(colour != ink::INK).then_some(colour)] { (words) }
    }
}

/// Words in the middle of a place, a line each.
pub(super) fn words_mark(words: &Words, view: &View, taken: &mut Vec<Rect>, paper: &Rect) -> Markup {
    let (x, y) = view.point(words.point);
    let lines: Vec<&str> = words.words.lines().collect();
    let wide = lines.iter().map(|line| width(line, FONT)).fold(0.0, f64::max);
    let high = lines.len() as f64 * LINE;
    let wanted = Rect { left: x - wide / 2.0, top: y - high / 2.0, right: x + wide / 2.0, bottom: y + high / 2.0 };
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
        Shape::Regions(regions, pen) => {
            let path: String = regions.iter().map(|region| view.closed(region)).collect();
            let edged = pen.width > 0.0;
            html! {
                path d=(path) fill=(pen.fill) fill-rule="evenodd" stroke=[edged.then_some(pen.stroke)]
                    stroke-width=[edged.then(|| number(pen.width))] {}
            }
        }
        Shape::Around(outline) => {
            let far = 40.0;
            let frame = format!(
                "M{} {}H{}V{}H{}z",
                number(view.left - far),
                number(view.top - far),
                number(view.right() + far),
                number(view.bottom() + far),
                number(view.left - far)
            );
            html! { path d=(frame + &view.closed(outline)) fill=(ink::PAPER) fill-rule="evenodd" {} }
        }
        Shape::Hole { centre, diameter, pen, crossed } => {
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
