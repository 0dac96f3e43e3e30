//! A field over a panel on square cells.

use crate::case::strength::Fields;

/// Nodes of the raster across the panel.
const ACROSS: usize = 97;
/// A place of the panel, in metres.
pub type Place = [f64; 2];

/// A field on square cells over the panel's box and one cell beyond it all round, continued outside the
/// panel from the nearest values, so that no region ends short of the panel's edge.
pub struct Raster {
    /// Nodes in a row.
    pub columns: usize,
    /// Rows, from the lowest up.
    pub rows: usize,
    /// Where the first node is.
    pub low: Place,
    /// From a node to the next, in metres.
    pub cell: f64,
    /// At each node, row by row.
    pub values: Vec<f64>,
}

impl Raster {
    /// The field at the nodes of the raster; nothing where there is no panel.
    pub fn of(fields: &Fields, values: &[f64]) -> Option<Raster> {
        let first = *fields.nodes.first()?;
        let (low, high) = fields.nodes.iter().fold((first, first), |(low, high), node| {
            let pick = |of: fn(f64, f64) -> f64, a: Place| [of(a[0], node[0]), of(a[1], node[1])];
            (pick(f64::min, low), pick(f64::max, high))
        });
        let cell = (high[0] - low[0]) / (ACROSS - 1) as f64;
        if cell.is_nan() || cell <= 0.0 {
            return None;
        }
        let columns = ACROSS + 2;
        let rows = ((high[1] - low[1]) / cell).ceil() as usize + 3;
        let mut found: Vec<Option<f64>> = vec![None; columns * rows];
        let low = [low[0] - cell, low[1] - cell];
        for triangle in &fields.triangles {
            let places = triangle.map(|node| fields.nodes.get(node as usize).copied());
            let [Some(a), Some(b), Some(c), ..] = places else {
                continue;
            };
            let at_nodes = triangle.map(|node| values.get(node as usize).copied().unwrap_or(0.0));
            let span = |axis: usize, count: usize| {
                let index = |value: f64| ((value - low[axis]) / cell).max(0.0);
                let least = index(a[axis].min(b[axis]).min(c[axis])).floor() as usize;
                let most = index(a[axis].max(b[axis]).max(c[axis])).ceil() as usize;
                least..=most.min(count - 1)
            };
            for row in span(1, rows) {
                for column in span(0, columns) {
                    let place = [low[0] + column as f64 * cell, low[1] + row as f64 * cell];
                    if let Some(shares) = shares([a, b, c], place) {
                        found[row * columns + column] = Some(quadratic(shares, &at_nodes));
                    }
                }
            }
        }
        Some(Raster { columns, rows, low, cell, values: continued(found, columns) })
    }
}

/// Nodes without a value take the mean of their neighbours', layer by layer outwards.
fn continued(mut found: Vec<Option<f64>>, columns: usize) -> Vec<f64> {
    let rows = found.len() / columns;
    while found.iter().any(Option::is_none) && found.iter().any(Option::is_some) {
        let known = found.clone();
        for row in 0..rows {
            for column in 0..columns {
                if known[row * columns + column].is_some() {
                    continue;
                }
                let near: Vec<f64> = (row.saturating_sub(1)..=(row + 1).min(rows - 1))
                    .flat_map(|row| {
                        (column.saturating_sub(1)..=(column + 1).min(columns - 1)).map(move |column| (row, column))
                    })
                    .filter_map(|(row, column)| known[row * columns + column])
                    .collect();
                if !near.is_empty() {
                    found[row * columns + column] = Some(near.iter().sum::<f64>() / near.len() as f64);
                }
            }
        }
    }
    found.into_iter().map(|value| value.unwrap_or(0.0)).collect()
}

/// The shares of a triangle's corners in a place within it.
fn shares([a, b, c]: [Place; 3], place: Place) -> Option<[f64; 3]> {
    let double = (b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1]);
    if double.abs() < 1e-15 {
        return None;
    }
    let (y, z) = (place[0] - a[0], place[1] - a[1]);
    let second = (y * (c[1] - a[1]) - (c[0] - a[0]) * z) / double;
    let third = ((b[0] - a[0]) * z - y * (b[1] - a[1])) / double;
    let all = [1.0 - second - third, second, third];
    all.iter().all(|share| *share >= -1e-9).then_some(all)
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
    weights.iter().zip(values).map(|(weight, value)| weight * value).sum()
}
