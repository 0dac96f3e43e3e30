//! Where a field over a panel lies above a value, as closed outlines, by marching squares.

use std::collections::BTreeMap;

use super::raster::{Place, Raster};

/// Share of a cell by which an outline may leave the one that was found, to be drawn with fewer corners.
const SIMPLER: f64 = 0.08;

/// An edge between two nodes: the lower or left one, and whether the edge is upright.
type Edge = (isize, isize, bool);

impl Raster {
    /// Outlines of all that lies above the level, anticlockwise about it; holes run the other way.
    pub fn above(&self, level: f64) -> Vec<Vec<Place>> {
        let mut next: BTreeMap<Edge, Edge> = BTreeMap::new();
        for row in -1..self.rows as isize {
            for column in -1..self.columns as isize {
                self.cell_segments(column, row, level, &mut next);
            }
        }
        let mut outlines = Vec::new();
        while let Some((&start, _)) = next.first_key_value() {
            let mut outline = Vec::new();
            let mut edge = start;
            while let Some(following) = next.remove(&edge) {
                outline.push(self.crossing(edge, level));
                edge = following;
            }
            outlines.push(simplified(&outline, SIMPLER * self.cell));
        }
        outlines
    }

    /// What a cell adds: from each edge on which its rim leaves the region to that on which it comes back.
    fn cell_segments(&self, column: isize, row: isize, level: f64, next: &mut BTreeMap<Edge, Edge>) {
        let corners = [(column, row), (column + 1, row), (column + 1, row + 1), (column, row + 1)];
        let edges = [(column, row, false), (column + 1, row, true), (column, row + 1, false), (column, row, true)];
        let values = corners.map(|(column, row)| self.value(column, row));
        let inside = values.map(|value| value > level);
        let leaves = |i: usize| inside[i % 4] && !inside[(i + 1) % 4];
        let enters = |i: usize| !inside[i % 4] && inside[(i + 1) % 4];
        let crossed = leaves(0) && leaves(2) || leaves(1) && leaves(3);
        let apart = crossed && values.iter().sum::<f64>() / 4.0 <= level;
        for i in (0..4).filter(|i| leaves(*i)) {
            let back = if apart { Some(i + 3) } else { (i + 1..i + 4).find(|j| enters(*j)) };
            if let Some(back) = back {
                next.insert(edges[i], edges[back % 4]);
            }
        }
    }

    /// The value at a node; beyond the raster nothing is reached.
    fn value(&self, column: isize, row: isize) -> f64 {
        let within = (0..self.columns as isize).contains(&column) && (0..self.rows as isize).contains(&row);
        if within { self.values[row as usize * self.columns + column as usize] } else { f64::NEG_INFINITY }
    }

    /// Where the level is crossed on an edge.
    fn crossing(&self, (column, row, upright): Edge, level: f64) -> Place {
        let (dx, dy) = if upright { (0, 1) } else { (1, 0) };
        let (from, to) = (self.value(column, row), self.value(column + dx, row + dy));
        let share = (level - from) / (to - from);
        let share = if share.is_finite() { share } else { 0.5 };
        let along = |index: isize, step: isize| index as f64 + step as f64 * share;
        [self.low[0] + along(column, dx) * self.cell, self.low[1] + along(row, dy) * self.cell]
    }
}

/// A closed outline with no more corners than it needs to stay within a distance (Douglas and Peucker,
/// 1973): both halves between the first corner and the one farthest from it.
fn simplified(outline: &[Place], within: f64) -> Vec<Place> {
    let far = |place: &Place| (place[0] - outline[0][0]).hypot(place[1] - outline[0][1]);
    let Some(farthest) = (1..outline.len()).max_by(|i, j| far(&outline[*i]).total_cmp(&far(&outline[*j]))) else {
        return outline.to_vec();
    };
    let mut back = outline[farthest..].to_vec();
    back.push(outline[0]);
    let mut kept = fewer(&outline[..=farthest], within);
    kept.pop();
    kept.extend(fewer(&back, within));
    kept.pop();
    kept
}

fn fewer(line: &[Place], within: f64) -> Vec<Place> {
    let [first, .., last] = line else {
        return line.to_vec();
    };
    let (dx, dy) = (last[0] - first[0], last[1] - first[1]);
    let long = dx.hypot(dy).max(1e-12);
    let off = |place: &Place| ((place[0] - first[0]) * dy - (place[1] - first[1]) * dx).abs() / long;
    let worst = (1..line.len() - 1).max_by(|i, j| off(&line[*i]).total_cmp(&off(&line[*j])));
    match worst {
        Some(worst) if off(&line[worst]) > within => {
            let mut kept = fewer(&line[..=worst], within);
            kept.pop();
            kept.extend(fewer(&line[worst..], within));
            kept
        }
        _ => vec![*first, *last],
    }
}
