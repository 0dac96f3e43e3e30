//! Height: does the shaft suit the transom, and where does the plate come to stand?

mod plate_window;
mod shaft_match;
mod transom_angle;

use uom::si::f64::Length;

use crate::case::Rows;
use crate::quantity::{Measure, Text, say};
use crate::rig::Rig;
use crate::rules::{Finding, Limit, Rule};

/// Its rules, in the order of the report.
pub(super) const RULES: &[&Rule] =
    &[&shaft_match::SHAFT_MATCH, &plate_window::PLATE_WINDOW, &transom_angle::TRANSOM_ANGLE];

/// Where the plate shall stand.
fn window(rows: &Rows) -> Limit {
    let [low, high] = [rows.window.0, rows.window.1].map(Measure::tape);
    if rows.deep { Limit::AtMost(high) } else { Limit::Within(low, high) }
}

/// `3/4 in above the bottom`, `1/2 in below the bottom`.
fn over_the_bottom(height: Length) -> Text {
    let side = if height.value < 0.0 { "below" } else { "above" };
    say!("{} {} the bottom", Measure::tape(height.abs()), side)
}

/// What is said where no engine stands in a row of holes.
fn no_rows(rig: &Rig) -> Finding {
    if rig.after.is_empty() {
        return Finding::unmeasured(vec![rig.after.missing()]);
    }
    Finding::not_applicable(Text::from(
        "What hangs on a lifting bracket stands as high as that is set: let it down until water comes from the telltale.",
    ))
}
