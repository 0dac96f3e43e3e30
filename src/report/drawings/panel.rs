//! The transom as a panel, from astern: how far it moves, and how much of its strength is used, as fields.

use super::kit::steps::round_step;
use super::kit::{Board, Drawing, Layout, Pen, Point, Shape, Side, at, ink};
use super::raster::Raster;
use super::stern::breadth;
use crate::case::Case;
use crate::case::strength::{Fields, Way};
use crate::quantity::{Dimensioned, Measure, Units};
use uom::si::f64::Length;

/// Shades from nothing to the last step of the key, dark enough apart to be told in grey.
const SHADES: [&str; 8] = ["#f4f8fa", "#d9e8ef", "#bcd7e3", "#9cc3d5", "#7aacc5", "#568fb0", "#346f95", "#174d75"];

/// Beyond the last shade: light again and edged, so that it stands out of the darkest in grey too.
const BEYOND: &str = "#ffd466";

/// Deflection in the case of ordinary running that moves it most.
pub(super) fn deflection(case: &Case, units: Units) -> Option<Drawing> {
    let strength = case.strength().ok()?;
    let bent = &strength.after.bent;
    let (index, _) = bent.deflection();
    let fields = bent.deflection_fields(index)?;
    let values: Vec<f64> = fields.deflection.iter().map(|value| value.abs()).collect();
    let (peak, most) = values.iter().copied().enumerate().max_by(|a, b| a.1.total_cmp(&b.1))?;
    if most <= 0.0 {
        return None;
    }
    // Round in the unit that is lettered.
    let (in_a_metre, _) = Measure::of(Length::from_si(1.0)).in_unit(units);
    let step = round_step(most * in_a_metre / SHADES.len() as f64) / in_a_metre;
    let words = Words {
        name: "panel-deflection",
        title: "How far the transom moves",
        step,
        full: step * (most / step).ceil(),
        place: *fields.nodes.get(peak)?,
        most,
    };
    // As many digits as tell one shade from the next.
    let closer = |more: i32, value: f64| Measure::of(Length::from_si(value)).show_closer(more, units);
    let shade = |more: i32, i: usize| closer(more, step * i as f64);
    let apart = |more: &i32| (0..SHADES.len()).all(|i| shade(*more, i) != shade(*more, i + 1));
    let more = (0..=MOST_DIGITS_MORE).find(apart).unwrap_or_default();
    drawing(case, index, &fields, &values, &|value| closer(more, value), units, &words)
}

/// Digits more than usual that a key may take.
const MOST_DIGITS_MORE: i32 = 3;

/// Steps in which the key of a part of the strength goes up.
const STRESS_STEP: f64 = 0.2;

/// Stress over strength in the case that bends the panel nearest to its strength.
pub(super) fn stress(case: &Case, units: Units) -> Option<Drawing> {
    let strength = case.strength().ok()?;
    let bent = &strength.after.bent;
    let (index, _) = bent.worst(Way::Bending);
    // What lets go behind it is no place of the field.
    let used = &bent.told(index)?.1.bending;
    let fields = bent.bending_fields(index)?;
    let words = Words {
        name: "panel-stress",
        title: "How much of the transom's strength is used",
        step: STRESS_STEP,
        full: 1.0,
        place: used.at,
        most: used.part,
    };
    let shown = |value: f64| format!("{:.0} %", value * 100.0);
    drawing(case, index, &fields, &fields.use_of_strength, &shown, units, &words)
}

/// So many of the shades, from the lightest to the darkest.
fn shades(count: usize) -> Vec<&'static str> {
    let last = count.saturating_sub(1).max(1);
    (0..count).filter_map(|i| SHADES.get(i * (SHADES.len() - 1) / last).copied()).collect()
}

/// What a field is called, and how its shades are laid out.
struct Words {
    name: &'static str,
    title: &'static str,
    /// How far one shade goes beyond the last.
    step: f64,
    /// Upper end of the last shade, a whole number of steps; what is beyond it has a shade of its own.
    full: f64,
    /// The place that is named, and its value.
    place: [f64; 2],
    most: f64,
}

fn drawing(
    case: &Case,
    index: usize,
    fields: &Fields,
    values: &[f64],
    shown: &dyn Fn(f64) -> String,
    units: Units,
    words: &Words,
) -> Option<Drawing> {
    let strength = case.strength().ok()?;
    if words.full.is_nan() || words.full <= 0.0 || !words.most.is_finite() {
        return None;
    }
    let mut board = Board::default();
    let outline: Vec<Point> = strength.board.outline.iter().map(|point| seen(*point)).collect();
    board.area(outline.clone(), Pen::area(SHADES[0]));
    let raster = Raster::of(fields, values)?;
    let used = shades((words.full / words.step).round() as usize);
    for (i, shade) in used.iter().chain([&BEYOND]).enumerate().skip(1) {
        // Rounding apart, nothing lies beyond the most.
        let level = words.step * i as f64 * (1.0 + 1e-9);
        let regions: Vec<Vec<Point>> =
            raster.above(level).into_iter().map(|region| region.into_iter().map(seen).collect()).collect();
        if !regions.is_empty() {
            let pen = if *shade == BEYOND { Pen::of(ink::INK, 1.4).filled(shade) } else { Pen::area(shade) };
            board.draw(Shape::Regions(regions, pen));
        }
    }
    board.draw(Shape::Around(outline.clone()));
    board.area(outline, Pen::EDGE);
    for knee in &strength.board.knees {
        board.line(vec![seen([knee.y, knee.from]), seen([knee.y, knee.to])], Pen::of(ink::INK, 3.0));
    }
    for footing in &strength.after.footings {
        let face = &footing.face;
        let corners = [
            [face.port, face.bottom],
            [face.starboard, face.bottom],
            [face.starboard, face.top],
            [face.port, face.top],
        ];
        board.area(corners.map(seen).to_vec(), Pen::HIDDEN);
        for bolt in &footing.bolts {
            board.draw(Shape::Hole { centre: seen([bolt.y, bolt.z]), diameter: 12.0, pen: Pen::NEW, crossed: false });
        }
    }
    board.callout(seen(words.place), format!("most {}", shown(words.most)));
    let rig = case.rig;
    let top = strength.board.top * 1e3;
    if let Some(height) = rig.job.transom.height().reading() {
        board.dimension(
            "transom-height",
            Side::Left,
            at(0.0, 0.0),
            at(0.0, top),
            Measure::tape(height.value).show(units),
        );
    }
    if let Some(cutout) = rig.job.transom.cutout_width().reading() {
        breadth(&mut board, "cutout-width", Side::Below, cutout.value, top, Measure::tape(cutout.value).show(units));
    }
    if let Some(width) = rig.job.boat.transom_width().reading() {
        breadth(&mut board, "transom-width", Side::Below, width.value, top, Measure::tape(width.value).show(units));
    }
    let case_name = strength.after.cases.get(index).map_or("", |case| case.name());
    let mut notes = vec![format!(
        "Load case: {case_name}. Seen from astern, port on the left. The key gives the upper end of each shade; broken lines are the faces on it, thick ones its knees."
    )];
    let mut key: Vec<(&'static str, String)> =
        used.iter().enumerate().map(|(i, shade)| (*shade, shown(words.step * (i as f64 + 1.0)))).collect();
    if values.iter().any(|value| *value > words.full) {
        key.push((BEYOND, "beyond".to_owned()));
        notes.push("Beyond its strength: the light islands with a dark edge.".to_owned());
    }
    board.key(key);
    board.finish(
        Layout {
            name: words.name,
            title: words.title.to_owned(),
            description: format!("A field over the transom, {case_name}; the most is {}.", shown(words.most)),
            notes,
        },
        units,
    )
}

/// A place of the panel, seen from astern.
fn seen(place: [f64; 2]) -> Point {
    at(-place[0] * 1e3, place[1] * 1e3)
}
