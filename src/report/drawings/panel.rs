//! The transom as a panel, from astern: how far it moves, and how much of its strength is used, as fields.

use super::kit::{Board, Drawing, Layout, Pen, Point, Shape, Side, at, ink};
use super::stern::mm;
use crate::case::Case;
use crate::case::strength::{Fields, Governing};
use crate::quantity::{Dimensioned, Measure, Units};
use uom::si::f64::Length;

/// Cells of the field across the panel.
const CELLS: usize = 96;
/// Shades from nothing to the most, dark enough apart to be told in grey.
const SHADES: [&str; 8] = [
    "#f4f8fa", "#d9e8ef", "#bcd7e3", "#9cc3d5", "#7aacc5", "#568fb0", "#346f95", "#174d75",
];

/// Beyond the last shade: light again, so that it stands out of the darkest in grey too.
const BEYOND: &str = "#f4bd3c";

/// Deflection in the case of ordinary running that moves it most.
pub(super) fn deflection(case: &Case, units: Units) -> Option<Drawing> {
    let strength = case.strength().ok()?;
    let governing = &strength.after.bent.deflection;
    let fields = governing.fields();
    let values: Vec<f64> = fields.deflection.iter().map(|value| value.abs()).collect();
    let (peak, most) = values
        .iter()
        .copied()
        .enumerate()
        .max_by(|a, b| a.1.total_cmp(&b.1))?;
    let words = Words {
        name: "panel-deflection",
        title: "How far the transom moves",
        full: most,
        place: *fields.nodes.get(peak)?,
        most,
    };
    let shown = |value: f64| Measure::of(Length::from_si(value)).show(units);
    drawing(case, governing, &fields, &values, &shown, units, &words)
}

/// Stress over strength in the case that comes nearest to the panel's strength.
pub(super) fn stress(case: &Case, units: Units) -> Option<Drawing> {
    let strength = case.strength().ok()?;
    let governing = &strength.after.bent.stress;
    let fields = governing.fields();
    let words = Words {
        name: "panel-stress",
        title: "How much of the transom's strength is used",
        full: 1.0,
        place: governing.at,
        most: 1.0 / governing.factor,
    };
    let shown = |value: f64| format!("{:.0} %", value * 100.0);
    drawing(
        case,
        governing,
        &fields,
        &fields.use_of_strength,
        &shown,
        units,
        &words,
    )
}

/// What a field is called, and how its shades are laid out.
struct Words {
    name: &'static str,
    title: &'static str,
    /// Upper end of the last shade; what is beyond it has a shade of its own.
    full: f64,
    /// The place that is named, and its value.
    place: [f64; 2],
    most: f64,
}

fn drawing(
    case: &Case,
    governing: &Governing,
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
    for (shade, blocks) in bands(fields, values, words.full).into_iter().enumerate() {
        board.draw(Shape::Blocks(
            blocks,
            SHADES.get(shade).copied().unwrap_or(BEYOND),
        ));
    }
    let outline: Vec<Point> = strength
        .board
        .outline
        .iter()
        .map(|point| seen(*point))
        .collect();
    board.area(outline, Pen::EDGE);
    for knee in &strength.board.knees {
        board.line(
            vec![seen([knee.y, knee.from]), seen([knee.y, knee.to])],
            Pen::of(ink::INK, 3.0),
        );
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
            board.draw(Shape::Hole {
                centre: seen([bolt.y, bolt.z]),
                diameter: 12.0,
                pen: Pen::NEW,
                crossed: false,
            });
        }
    }
    board.callout(seen(words.place), format!("most {}", shown(words.most)));
    let rig = case.rig;
    let top = strength.board.top * 1e3;
    if let Some(height) = rig.transom.height.reading() {
        board.dimension(
            "transom-height",
            Side::Left,
            at(0.0, 0.0),
            at(0.0, top),
            Measure::tape(height.value).show(units),
        );
    }
    if let Some(cutout) = rig.transom.cutout_width.reading() {
        let half = mm(cutout.value) / 2.0;
        board.dimension(
            "cutout-width",
            Side::Below,
            at(-half, top),
            at(half, top),
            Measure::tape(cutout.value).show(units),
        );
    }
    if let Some(width) = rig.boat.transom_width.reading() {
        let half = mm(width.value) / 2.0;
        board.dimension(
            "transom-width",
            Side::Below,
            at(-half, top),
            at(half, top),
            Measure::tape(width.value).show(units),
        );
    }
    let case_name = strength
        .after
        .cases
        .get(governing.case)
        .map_or("", |case| case.name());
    let mut notes = vec![format!(
        "Load case: {case_name}. Seen from astern, port on the left. The key gives the upper end of each shade; broken lines are the faces on it, thick ones its knees."
    )];
    let steps = SHADES.len() as f64;
    let mut key: Vec<(&'static str, String)> = SHADES
        .iter()
        .enumerate()
        .map(|(i, shade)| (*shade, shown(words.full * (i as f64 + 1.0) / steps)))
        .collect();
    if values.iter().any(|value| *value > words.full) {
        key.push((BEYOND, "beyond".to_owned()));
        notes.push("Beyond its strength: the light islands inside the darkest shade.".to_owned());
    }
    board.key(key);
    board.finish(
        Layout {
            name: words.name,
            title: words.title.to_owned(),
            description: format!(
                "A field over the transom, {case_name}; the most is {}.",
                shown(words.most)
            ),
            notes,
        },
        units,
    )
}

/// A place of the panel, seen from astern.
fn seen(place: [f64; 2]) -> Point {
    at(-place[0] * 1e3, place[1] * 1e3)
}

/// The field in cells, put together by shade and along each row.
fn bands(fields: &Fields, values: &[f64], full: f64) -> Vec<Vec<(Point, Point)>> {
    let mut bands = vec![Vec::new(); SHADES.len() + 1];
    let mut low = [f64::INFINITY; 2];
    let mut high = [f64::NEG_INFINITY; 2];
    for node in &fields.nodes {
        for axis in 0..2 {
            low[axis] = low[axis].min(node[axis]);
            high[axis] = high[axis].max(node[axis]);
        }
    }
    let cell = (high[0] - low[0]) / CELLS as f64;
    if cell.is_nan() || cell <= 0.0 {
        return bands;
    }
    let rows = ((high[1] - low[1]) / cell).ceil() as usize;
    let mut shades: Vec<Option<usize>> = vec![None; rows * CELLS];
    for triangle in &fields.triangles {
        let corners = triangle.map(|node| fields.nodes.get(node as usize).copied());
        let found = triangle.map(|node| values.get(node as usize).copied().unwrap_or(0.0));
        let [Some(a), Some(b), Some(c), ..] = corners else {
            continue;
        };
        let double = (b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1]);
        if double.abs() < 1e-15 {
            continue;
        }
        let span = |axis: usize| {
            let least = a[axis].min(b[axis]).min(c[axis]);
            let greatest = a[axis].max(b[axis]).max(c[axis]);
            let index = |value: f64| ((value - low[axis]) / cell).floor().max(0.0) as usize;
            (index(least), index(greatest))
        };
        let ((left, right), (bottom, top)) = (span(0), span(1));
        for row in bottom..=top.min(rows.saturating_sub(1)) {
            for column in left..=right.min(CELLS - 1) {
                let y = low[0] + (column as f64 + 0.5) * cell;
                let z = low[1] + (row as f64 + 0.5) * cell;
                let l2 = ((y - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (z - a[1])) / double;
                let l3 = ((b[0] - a[0]) * (z - a[1]) - (y - a[0]) * (b[1] - a[1])) / double;
                let l1 = 1.0 - l2 - l3;
                if l1.min(l2).min(l3) < -1e-9 {
                    continue;
                }
                let value = quadratic([l1, l2, l3], &found);
                let shade = (value / full * SHADES.len() as f64 - 1e-9).floor().max(0.0) as usize;
                shades[row * CELLS + column] = Some(shade.min(SHADES.len()));
            }
        }
    }
    for row in 0..rows {
        let mut column = 0;
        while column < CELLS {
            let shade = shades[row * CELLS + column];
            let start = column;
            while column < CELLS && shades[row * CELLS + column] == shade {
                column += 1;
            }
            if let Some(shade) = shade {
                let corner = |column: usize, row: usize| {
                    seen([low[0] + column as f64 * cell, low[1] + row as f64 * cell])
                };
                bands[shade].push((corner(column, row), corner(start, row + 1)));
            }
        }
    }
    bands
}

/// Interpolation over a triangle with the middles of its sides.
fn quadratic([l1, l2, l3]: [f64; 3], values: &[f64; 6]) -> f64 {
    let weights = [
        l1 * (2.0 * l1 - 1.0),
        l2 * (2.0 * l2 - 1.0),
        l3 * (2.0 * l3 - 1.0),
        4.0 * l1 * l2,
        4.0 * l2 * l3,
        4.0 * l3 * l1,
    ];
    weights
        .iter()
        .zip(values)
        .map(|(weight, value)| weight * value)
        .sum()
}

#[cfg(test)]
mod tests {
    use super::quadratic;

    #[test]
    fn a_plane_is_interpolated_exactly() {
        let plane = |l: [f64; 3]| 2.0 * l[0] + 5.0 * l[1] - l[2];
        let values = [
            2.0,
            5.0,
            -1.0,
            plane([0.5, 0.5, 0.0]),
            plane([0.0, 0.5, 0.5]),
            plane([0.5, 0.0, 0.5]),
        ];
        let place = [0.2, 0.3, 0.5];
        assert!((quadratic(place, &values) - plane(place)).abs() < 1e-12);
    }
}
