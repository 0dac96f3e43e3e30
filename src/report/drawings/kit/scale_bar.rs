//! The scale bar.

use maud::{Markup, html};

use super::lettering::FONT;
use super::marks::lettered;
use super::paper::EDGE;
use super::view::View;
use super::{Anchor, ink, number};
use crate::quantity::Units;

/// Lengths that a scale bar may have, in millimetres, with their words.
const BARS_US: [(f64, &str); 6] =
    [(152.4, "6 in"), (304.8, "12 in"), (609.6, "2 ft"), (1_219.2, "4 ft"), (2_438.4, "8 ft"), (4_876.8, "16 ft")];
const BARS_SI: [(f64, &str); 6] =
    [(100.0, "100 mm"), (250.0, "250 mm"), (500.0, "500 mm"), (1_000.0, "1 m"), (2_000.0, "2 m"), (5_000.0, "5 m")];

pub(super) fn scale_bar(view: &View, y: f64, units: Units) -> Markup {
    let bars = if units == Units::Si { BARS_SI } else { BARS_US };
    let wanted = 110.0;
    let best = bars
        .iter()
        .min_by(|a, b| {
            let off = |bar: &(f64, &str)| (bar.0 * view.scale / wanted).ln().abs();
            off(a).total_cmp(&off(b))
        })
        .unwrap_or(&bars[0]);
    let (x, long) = (EDGE + 2.0, best.0 * view.scale);
    html! {
        g data-scale-bar=(format!("{:.3}", best.0)) {
            rect x=(number(x)) y=(number(y - 3.0)) width=(number(long)) height="5" fill=(ink::PAPER)
                stroke=(ink::INK) stroke-width="1" {}
            rect x=(number(x)) y=(number(y - 3.0)) width=(number(long / 2.0)) height="5" fill=(ink::INK) {}
            (lettered(x + long + 8.0, y + FONT * 0.36, Anchor::Start, ink::INK, best.1))
        }
    }
}
