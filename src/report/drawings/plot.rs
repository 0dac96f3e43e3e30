//! Curves over one quantity, with measured points on them.

use maud::{Markup, html};

use super::kit::steps::round_step;
use super::kit::{Anchor, Drawing, FONT, ink, lettered, number, width};

const HIGH: f64 = 320.0;
const EDGE: f64 = 6.0;
/// Steps of a scale, at most.
const MOST_STEPS: f64 = 6.0;
/// Part of a step by which rings stand clear of the first line.
const CLEAR: f64 = 0.1;
const WIDE: f64 = 660.0;
const NARROW: f64 = 380.0;

/// A curve of a plot, in the units that its axes are lettered in.
pub(super) struct Curve {
    pub name: String,
    pub points: Vec<[f64; 2]>,
    pub colour: &'static str,
    pub dashes: &'static str,
}

/// Points that were measured, each with how far off it may be up and down.
pub(super) struct Measured {
    pub points: Vec<[f64; 3]>,
    pub colour: &'static str,
}

/// A plot before it is laid out.
pub(super) struct Plot {
    pub name: &'static str,
    pub title: String,
    pub description: String,
    pub notes: Vec<String>,
    /// What runs along it and up it, with units.
    pub along: String,
    pub up: String,
    pub curves: Vec<Curve>,
    pub measured: Vec<Measured>,
    /// Whether the scale upward begins at nothing.
    pub from_zero: bool,
}

/// A scale of round steps.
struct Scale {
    from: f64,
    to: f64,
    step: f64,
}

impl Scale {
    fn over(values: impl Iterator<Item = f64>, from_zero: bool) -> Option<Scale> {
        let all: Vec<f64> = values.filter(|value| value.is_finite()).collect();
        let least = all.iter().copied().reduce(f64::min)?;
        let (least, most) = (if from_zero { least.min(0.0) } else { least }, all.iter().copied().reduce(f64::max)?);
        let span = (most - least).max(1e-9 * most.abs()).max(1e-12);
        let step = round_step(span / MOST_STEPS);
        Some(Scale { from: (least / step).floor() * step, to: (most / step).ceil() * step, step })
    }

    fn marks(&self) -> Vec<f64> {
        let count = ((self.to - self.from) / self.step).round() as u32;
        (0..=count).map(|i| self.from + f64::from(i) * self.step).collect()
    }

    fn shown(&self, value: f64) -> String {
        let places = (-self.step.log10().floor()).clamp(0.0, 6.0) as usize;
        let text = format!("{:.places$}", value.abs());
        crate::quantity::grouped(&text, value < -0.5 * self.step)
    }
}

impl Plot {
    /// The plot drawn, wide and narrow; nothing where there is nothing to draw.
    pub(super) fn drawing(self) -> Option<Drawing> {
        let mut drawing = self.laid_out(WIDE)?;
        drawing.narrow = Some(Box::new(self.laid_out(NARROW)?));
        Some(drawing)
    }

    fn laid_out(&self, wide: f64) -> Option<Drawing> {
        let curves = || self.curves.iter().flat_map(|curve| curve.points.iter().copied());
        let measured = || self.measured.iter().flat_map(|measured| measured.points.iter().copied());
        let mut along = Scale::over(curves().map(|p| p[0]).chain(measured().map(|p| p[0])), false)?;
        // A ring on the scale's first line would cover its lettering.
        if along.from > 0.0 && measured().any(|p| p[0] - along.from < CLEAR * along.step) {
            along.from -= along.step;
        }
        let ups = curves().map(|p| p[1]).chain(measured().flat_map(|p| [p[1] - p[2], p[1] + p[2]]));
        let up = Scale::over(ups, self.from_zero)?;
        // The key stands above the plot, where no curve goes: in rows, as many as it needs.
        let mut keys = Vec::new();
        let (mut x, mut row) = (EDGE, 0_u32);
        for curve in &self.curves {
            let long = 40.0 + width(&curve.name, FONT) + 14.0;
            if x + long > wide && x > EDGE {
                (x, row) = (EDGE, row + 1);
            }
            keys.push((x, EDGE + FONT + f64::from(row) * (FONT + 6.0), curve));
            x += long;
        }
        let labels = up.marks().into_iter().map(|value| width(&up.shown(value), FONT)).fold(0.0, f64::max);
        let top = EDGE + f64::from(row + 1) * (FONT + 6.0) + FONT + 18.0;
        let (left, right, bottom) = (EDGE + labels + 8.0, wide - EDGE - 18.0, HIGH - 46.0);
        let px = |value: f64| left + (right - left) * (value - along.from) / (along.to - along.from);
        let py = |value: f64| bottom - (bottom - top) * (value - up.from) / (up.to - up.from);
        let body: Markup = html! {
            @for value in up.marks() {
                line x1=(number(left)) y1=(number(py(value))) x2=(number(right)) y2=(number(py(value))) stroke="#d5dbe0" stroke-width="1" {}
                (lettered(left - 6.0, py(value) + FONT * 0.36, Anchor::End, ink::SOFT, &up.shown(value)))
            }
            @for (i, value) in along.marks().into_iter().enumerate() {
                line x1=(number(px(value))) y1=(number(bottom)) x2=(number(px(value))) y2=(number(bottom + 5.0)) stroke=(ink::INK) stroke-width="1" {}
                @if wide > NARROW || i % 2 == 0 {
                    (lettered(px(value), bottom + 20.0, Anchor::Middle, ink::SOFT, &along.shown(value)))
                }
            }
            line x1=(number(left)) y1=(number(bottom)) x2=(number(right)) y2=(number(bottom)) stroke=(ink::INK) stroke-width="1.4" {}
            (lettered((left + right) / 2.0, bottom + 38.0, Anchor::Middle, ink::INK, &self.along))
            (lettered(EDGE, top - 10.0, Anchor::Start, ink::INK, &self.up))
            @for curve in &self.curves {
                @let points: Vec<String> = curve.points.iter().map(|[x, y]| format!("{},{}", number(px(*x)), number(py(*y)))).collect();
                polyline points=(points.join(" ")) fill="none" stroke=(curve.colour) stroke-width="2.4"
                    stroke-dasharray=[(!curve.dashes.is_empty()).then_some(curve.dashes)] data-curve=(curve.name) {}
            }
            @for measured in &self.measured {
                @for [x, y, doubt] in &measured.points {
                    @if *doubt > 0.0 {
                        line x1=(number(px(*x))) y1=(number(py(y - doubt))) x2=(number(px(*x))) y2=(number(py(y + doubt))) stroke=(measured.colour) stroke-width="1.4" {}
                    }
                    circle cx=(number(px(*x))) cy=(number(py(*y))) r="4" fill=(ink::PAPER) stroke=(measured.colour) stroke-width="2" {}
                }
            }
            @for (x, y, curve) in keys {
                line x1=(number(x)) y1=(number(y - 4.0)) x2=(number(x + 28.0)) y2=(number(y - 4.0)) stroke=(curve.colour) stroke-width="2.4"
                    stroke-dasharray=[(!curve.dashes.is_empty()).then_some(curve.dashes)] {}
                (lettered(x + 34.0, y, Anchor::Start, curve.colour, &curve.name))
            }
        };
        Some(Drawing {
            name: self.name,
            title: self.title.clone(),
            description: self.description.clone(),
            notes: self.notes.clone(),
            size: (wide, HIGH),
            scale: None,
            body,
            narrow: None,
        })
    }
}
