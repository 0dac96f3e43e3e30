//! Righting arms over heel, before and after, in the loading that leaves the least.

use maud::html;
use uom::si::angle::degree;
use uom::si::f64::Length;

use super::kit::{Anchor, Drawing, FONT, ink, lettered, number, width};
use crate::case::Case;
use crate::case::float::{Arm, Heeled, Loaded, State};
use crate::quantity::{Dimensioned, Measure, Units, inches};

const HIGH: f64 = 320.0;
const EDGE: f64 = 6.0;
/// Steps of the scale of heel, in degrees.
const HEELS_DEG: [u32; 5] = [0, 15, 30, 45, 60];

struct Curve {
    name: String,
    arms: Vec<Arm>,
    colour: &'static str,
    dashes: &'static str,
    /// So many of the arms stand before an edge goes under water.
    dry: usize,
}

/// The curves, where she floats.
pub(super) fn drawing(case: &Case, units: Units) -> Option<Drawing> {
    let float = case.float().ok()?;
    let gm = |loaded: &&Loaded| loaded.judged().and_then(State::gm).map_or(f64::INFINITY, |gm| gm.value);
    let loaded = float.loadings.iter().filter(|loaded| !loaded.to_one_side()).min_by(|a, b| gm(a).total_cmp(&gm(b)))?;
    let side = float.worse_side(loaded.judged()?);
    let curve = |state: Option<&State>, name: &str, colour, dashes| {
        let arms = float.arms(state?, side);
        let is_dry = |arm: &&Arm| float.lowest_edge(&arm.plane).is_none_or(|(height, _)| height.si() > 0.0);
        let dry = arms.iter().take_while(is_dry).count();
        (arms.len() > 1).then(|| Curve { name: name.to_owned(), arms, colour, dashes, dry })
    };
    let after = if loaded.alone { "as she is" } else { "after" };
    let curves: Vec<Curve> =
        [curve(loaded.before.as_ref(), "before", ink::OLD, "8 4"), curve(loaded.after.as_ref(), after, ink::NEW, "")]
            .into_iter()
            .flatten()
            .collect();
    if curves.is_empty() {
        return None;
    }
    let mut drawing = chart(loaded, side, &curves, 660.0, units);
    drawing.narrow = Some(Box::new(chart(loaded, side, &curves, 380.0, units)));
    Some(drawing)
}

/// A round step for a scale that reaches so far, in metres.
fn step(most: f64, units: Units) -> f64 {
    let unit = if units == Units::Si { 0.01 } else { inches(1.0).value };
    [1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0]
        .into_iter()
        .map(|steps| steps * unit)
        .find(|step| most / step <= 6.0)
        .unwrap_or(100.0 * unit)
}

/// How an arm is drawn from the heel on at which an edge is under water.
const WET: &str = "2 4";

fn chart(loaded: &Loaded, side: Heeled, curves: &[Curve], wide: f64, units: Units) -> Drawing {
    let every = || curves.iter().flat_map(|curve| &curve.arms);
    let most = every().map(|arm| arm.arm.value).fold(0.01, f64::max);
    let least = every().map(|arm| arm.arm.value).fold(0.0, f64::min);
    let step = step(most - least, units);
    let (top_value, low_value) = ((most / step).ceil() * step, (least / step).floor() * step);
    let shown = |value: f64| Measure::tape(Length::from_si(value)).show(units);
    let lines = ((top_value - low_value) / step).round() as i32;
    let left = EDGE + width(&shown(top_value), FONT).max(width(&shown(low_value), FONT)) + 8.0;
    let (right, top, bottom) = (wide - EDGE - 14.0, EDGE + FONT + 20.0, HIGH - 46.0);
    let x = |deg: f64| left + (right - left) * deg / 60.0;
    let y = |value: f64| bottom - (bottom - top) * (value - low_value) / (top_value - low_value);
    let body = html! {
        @for i in 0..=lines {
            @let value = low_value + f64::from(i) * step;
            line x1=(number(left)) y1=(number(y(value))) x2=(number(right)) y2=(number(y(value))) stroke="#d5dbe0" stroke-width="1" {}
            (lettered(left - 6.0, y(value) + FONT * 0.36, Anchor::End, ink::SOFT, &shown(value)))
        }
        line x1=(number(left)) y1=(number(y(0.0))) x2=(number(right)) y2=(number(y(0.0))) stroke=(ink::INK) stroke-width="1.4" {}
        @for deg in HEELS_DEG {
            line x1=(number(x(f64::from(deg)))) y1=(number(bottom)) x2=(number(x(f64::from(deg)))) y2=(number(bottom + 5.0)) stroke=(ink::INK) stroke-width="1" {}
            (lettered(x(f64::from(deg)), bottom + 20.0, Anchor::Middle, ink::SOFT, &format!("{deg}°")))
        }
        (lettered((left + right) / 2.0, bottom + 38.0, Anchor::Middle, ink::INK, &format!("heel {}", side.word())))
        (lettered(EDGE, EDGE + FONT, Anchor::Start, ink::INK, "righting arm"))
        @for (i, curve) in curves.iter().enumerate() {
            @let points = |arms: &[Arm]| arms.iter().map(|arm| format!("{},{}", number(x(arm.heel.get::<degree>())), number(y(arm.arm.value)))).collect::<Vec<_>>().join(" ");
            @let (dry, wet) = (&curve.arms[..curve.dry], &curve.arms[curve.dry.saturating_sub(1)..]);
            @if wet.len() > 1 {
                polyline points=(points(wet)) fill="none" stroke=(curve.colour) stroke-width="1.2" stroke-dasharray=(WET) {}
            }
            polyline points=(points(dry)) fill="none" stroke=(curve.colour) stroke-width="2.4" stroke-dasharray=[(!curve.dashes.is_empty()).then_some(curve.dashes)]
                data-curve=(curve.name) data-arms-mm=(dry.iter().map(|arm| format!("{:.2}", arm.arm.value * 1e3)).collect::<Vec<_>>().join(" "))
                data-mm-per-unit=(format!("{:.5}", (top_value - low_value) * 1e3 / (bottom - top))) {}
            @if wet.len() > 1 {
                @if let Some(last) = dry.last() {
                    circle cx=(number(x(last.heel.get::<degree>()))) cy=(number(y(last.arm.value))) r="4" fill=(ink::PAPER) stroke=(curve.colour) stroke-width="2" {}
                }
            }
            // The key stands above the chart, where no curve goes.
            @let key = wide - EDGE - (curves.len() - i) as f64 * 110.0;
            line x1=(number(key)) y1=(number(EDGE + 9.0)) x2=(number(key + 28.0)) y2=(number(EDGE + 9.0)) stroke=(curve.colour) stroke-width="2.4" stroke-dasharray=[(!curve.dashes.is_empty()).then_some(curve.dashes)] {}
            (lettered(key + 34.0, EDGE + FONT, Anchor::Start, curve.colour, &curve.name))
        }
    };
    let mut notes = vec!["Free to sink and trim; water that comes over an edge is not taken into account: the arms count only as far as the lowest edge stays above water.".to_owned()];
    if curves.iter().any(|curve| curve.dry < curve.arms.len()) {
        notes.push("That is as far as the ring; beyond it, dotted, an edge is under water.".to_owned());
    }
    Drawing {
        name: "righting-arms",
        title: format!("Righting arms, {}", loaded.name),
        description: format!(
            "Righting arm over heel {}, the side with the lesser arms, for the loading {}, the one with the least metacentric height; greatest arm {}.",
            side.word(),
            loaded.name,
            shown(most)
        ),
        notes,
        size: (wide, HIGH),
        scale: None,
        body,
        narrow: None,
    }
}
