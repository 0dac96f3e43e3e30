//! A told factor over a reading that is moved: a line for each way of giving way, and the limit.

use maud::{Markup, html};

use super::kit::{Anchor, Drawing, FONT, ink, lettered, number, width};
use crate::case::strength::show::ratio;
use crate::case::strength::{SWEPT_WAYS, Sweep, SweepPoint, Swept};
use crate::quantity::Units;
use crate::rules::DESIGN_FACTOR;

const HIGH: f64 = 320.0;
const EDGE: f64 = 6.0;
/// Widths of the paper: of a page, and of a phone.
const WIDE: f64 = 660.0;
const NARROW: f64 = 380.0;
/// Most steps of the scale of factors, and what they may be.
const MOST_STEPS: f64 = 6.0;
const STEPS: [f64; 8] = [0.05, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0];
/// A line that runs above so many times the lowest line and the limit would press them flat: it is told in a note.
const TOO_HIGH: f64 = 3.0;
/// Steps of a height or a thickness, and of knees, from one mark of the scale below to the next.
const MARKED: i32 = 5;
const MARKED_OF_KNEES: i32 = 3;

struct Curve {
    name: &'static str,
    colour: &'static str,
    dashes: Option<&'static str>,
    factors: Vec<f64>,
    /// The factor as told.
    told: f64,
}

impl Curve {
    fn least(&self) -> f64 {
        self.factors.iter().copied().fold(f64::INFINITY, f64::min)
    }

    fn most(&self) -> f64 {
        self.factors.iter().copied().fold(0.0, f64::max)
    }

    fn range(&self) -> String {
        let [least, most] = [self.least(), self.most()].map(|factor| ratio(factor).show(Units::Us));
        if least == most { format!("{} {least}", self.name) } else { format!("{} {least} to {most}", self.name) }
    }
}

/// A sweep drawn.
pub(crate) fn drawing(sweep: &Sweep, units: Units) -> Option<Drawing> {
    let looks: [_; SWEPT_WAYS.len()] = [("bending", ink::NEW, None), ("core shear", ink::SOFT, Some("8 4"))];
    let told = sweep.points.iter().find(|point| point.change == 0.0)?.factors;
    let room = TOO_HIGH * told.into_iter().fold(f64::INFINITY, f64::min).max(DESIGN_FACTOR);
    let all = looks.into_iter().enumerate().map(|(way, (name, colour, dashes))| Curve {
        name,
        colour,
        dashes,
        factors: sweep.points.iter().map(|point| point.factors[way]).collect(),
        told: told[way],
    });
    let (curves, above): (Vec<Curve>, Vec<Curve>) = all.partition(|curve| curve.told <= room);
    let [first, last] = [sweep.points.first()?, sweep.points.last()?].map(|point| off(sweep, point, units));
    let notes: Vec<String> = above.iter().map(|curve| format!("Above this drawing: {}.", curve.range())).collect();
    let ranges: Vec<String> = curves.iter().map(Curve::range).collect();
    let paper = |wide: f64| Drawing {
        name: match sweep.swept {
            Swept::Height => "sweep-height",
            Swept::Thickness => "sweep-thickness",
            Swept::Knees => "sweep-knees",
        },
        title: format!("Strength over load as a reading changes: {}", sweep.swept.words()),
        description: format!(
            "Strength over load, the reading off by {first} to {last}: {}; the limit is {DESIGN_FACTOR}.",
            ranges.join(", ")
        ),
        notes: notes.clone(),
        size: (wide, HIGH),
        scale: None,
        body: chart(sweep, &curves, wide, units),
        narrow: None,
    };
    Some(Drawing { narrow: Some(Box::new(paper(NARROW))), ..paper(WIDE) })
}

/// "+0.05 in", "-2 in".
fn off(sweep: &Sweep, point: &SweepPoint, units: Units) -> String {
    let sign = if point.change > 0.0 { "+" } else { "" };
    format!("{sign}{}", sweep.off(point.change).show(units))
}

fn chart(sweep: &Sweep, curves: &[Curve], wide: f64, units: Units) -> Markup {
    let most = curves.iter().map(Curve::most).fold(DESIGN_FACTOR, f64::max);
    let least = curves.iter().map(Curve::least).fold(DESIGN_FACTOR, f64::min);
    let step = STEPS.into_iter().find(|step| (most - least) / step <= MOST_STEPS).unwrap_or(most);
    let (low, high) = (((least / step - 0.5).floor() * step).max(0.0), (most / step + 0.5).ceil() * step);
    let lines = ((high - low) / step).round() as i32;
    let places = usize::from(step < 1.0) + usize::from(step < 0.1);
    let shown = |value: f64| format!("{value:.places$}");
    // Room for the steps' figures up the side, and for half of the first figure below.
    let room = (width(&shown(high), FONT) + 8.0).max(0.5 * width("-0.10 in", FONT) + 3.0);
    let (left, right) = (EDGE + room, wide - EDGE - 30.0);
    let (top, bottom) = (EDGE + FONT + 24.0, HIGH - 46.0);
    let change = |point: Option<&SweepPoint>| point.map_or(0.0, |point| point.change);
    let (from, to) = (change(sweep.points.first()), change(sweep.points.last()));
    let x = |change: f64| left + (right - left) * (change - from) / (to - from);
    let y = |value: f64| bottom - (bottom - top) * (value - low) / (high - low);
    let every = if sweep.swept == Swept::Knees { MARKED_OF_KNEES } else { MARKED };
    let is_marked = |point: &&SweepPoint| (point.change / sweep.swept.step()).round() as i32 % every == 0;
    let limit = y(DESIGN_FACTOR);
    // Above the line there is the word for what was told.
    let limit_words = if limit < (top + bottom) / 2.0 { limit + FONT + 3.0 } else { limit - 6.0 };
    let mut key = wide - EDGE;
    let keys: Vec<(f64, &Curve)> = curves
        .iter()
        .rev()
        .map(|curve| {
            key -= width(curve.name, FONT) + 46.0;
            (key, curve)
        })
        .collect();
    html! {
        @for i in 0..=lines {
            @let value = low + f64::from(i) * step;
            line x1=(number(left)) y1=(number(y(value))) x2=(number(right)) y2=(number(y(value))) stroke="#d5dbe0" stroke-width="1" {}
            (lettered(left - 6.0, y(value) + FONT * 0.36, Anchor::End, ink::SOFT, &shown(value)))
        }
        line x1=(number(x(0.0))) y1=(number(top)) x2=(number(x(0.0))) y2=(number(bottom)) stroke=(ink::SOFT) stroke-width="1" stroke-dasharray="2 3" {}
        (lettered(x(0.0), top - 7.0, Anchor::Middle, ink::SOFT, "as told"))
        line x1=(number(left)) y1=(number(bottom)) x2=(number(right)) y2=(number(bottom)) stroke=(ink::INK) stroke-width="1.4" {}
        @for point in sweep.points.iter().filter(is_marked) {
            line x1=(number(x(point.change))) y1=(number(bottom)) x2=(number(x(point.change))) y2=(number(bottom + 5.0)) stroke=(ink::INK) stroke-width="1" {}
            (lettered(x(point.change), bottom + 20.0, Anchor::Middle, ink::SOFT, &off(sweep, point, units)))
        }
        (lettered((left + right) / 2.0, bottom + 38.0, Anchor::Middle, ink::INK, &format!("{}, off the {} told", sweep.swept.words(), sweep.told().show(units))))
        (lettered(EDGE, EDGE + FONT, Anchor::Start, ink::INK, "factor"))
        line x1=(number(left)) y1=(number(limit)) x2=(number(right)) y2=(number(limit)) stroke=(ink::ALERT) stroke-width="1.6" data-limit=(DESIGN_FACTOR) {}
        (lettered(right - 4.0, limit_words, Anchor::End, ink::ALERT, &format!("limit {DESIGN_FACTOR}")))
        @for (key, curve) in keys {
            @let points: Vec<(f64, f64)> = sweep.points.iter().zip(&curve.factors).map(|(point, factor)| (x(point.change), y(*factor))).collect();
            @let path: Vec<String> = points.iter().map(|(x, y)| format!("{},{}", number(*x), number(*y))).collect();
            polyline points=(path.join(" ")) fill="none" stroke=(curve.colour) stroke-width="2" stroke-dasharray=[curve.dashes]
                data-curve=(curve.name) data-factors=(curve.factors.iter().map(|factor| format!("{factor:.4}")).collect::<Vec<_>>().join(" ")) {}
            @for (x, y) in &points { circle cx=(number(*x)) cy=(number(*y)) r="2.6" fill=(curve.colour) {} }
            // The key stands above the chart, where no line goes.
            line x1=(number(key)) y1=(number(EDGE + 9.0)) x2=(number(key + 28.0)) y2=(number(EDGE + 9.0)) stroke=(curve.colour) stroke-width="2" stroke-dasharray=[curve.dashes] {}
            (lettered(key + 34.0, EDGE + FONT, Anchor::Start, curve.colour, curve.name))
        }
    }
}
