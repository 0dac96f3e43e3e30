//! What the faces of an outfit bring to the panel.

use std::f64::consts::PI;

use super::board::Board;
use super::footing::Footing;
use super::grip::STRIP_IN;
use crate::physics::strength::panel::{Load, Point, Rect};
use crate::physics::strength::panel_loads;
use crate::quantity::{Dimensioned, inches};

/// What the faces bring across the transom in a case, `(place, N)`: each force at the middle of its bolts, each moment as a pair of
/// forces a metre apart; what holds the transom gives them back.
pub(super) fn resultants(footings: &[Footing], case: usize) -> Vec<(Point, f64)> {
    footings
        .iter()
        .filter_map(|footing| Some((footing.middle, footing.loads.get(case)?)))
        .flat_map(|([y, z], load)| {
            let [_, pitch, yaw] = load.moment;
            let pairs = [([y, z + 0.5], -pitch), ([y, z - 0.5], pitch), ([y + 0.5, z], yaw), ([y - 0.5, z], -yaw)];
            std::iter::once(([y, z], -load.force[0])).chain(pairs)
        })
        .collect()
}

/// What the faces bring to the panel in a case: each force comes down to the middle of the thickness at 45 degrees, so that
/// it covers there half the thickness more on every side (EN 1995-2, 5.1.2, value from memory), as far as the panel goes.
///
/// The face presses from arm to arm. A bolt's pull is taken to come over its table's washer whatever lies under its nut: what spreads it more spares the core there,
/// and hardly the panel.
fn loads(board: &Board, footings: &[Footing], case: usize) -> Vec<Load> {
    let strip = inches(STRIP_IN).si();
    footings
        .iter()
        .filter_map(|footing| {
            let forces = footing.pressed.get(case)?;
            let side = 0.5 * PI.sqrt() * footing.size.spec.washer_diameter.value.si();
            let pads = vec![[side, side]; footing.bolts.len()];
            Some(panel_loads(&footing.bolts, footing.arms(), forces, &pads, strip))
        })
        .flatten()
        .map(|load| match load {
            Load::Patch { area, force } => Load::Patch { area: spread(board, area), force },
            other => other,
        })
        .collect()
}

/// The same in each of so many cases.
pub(super) fn load_sets(board: &Board, footings: &[Footing], cases: usize) -> Vec<Vec<Load>> {
    (0..cases).map(|case| loads(board, footings, case)).collect()
}

/// An area enlarged by half the thickness on every side, as far as the panel goes.
fn spread(board: &Board, area: Rect) -> Rect {
    let more = 0.5 * board.thickness();
    let [y, z] = area.centre;
    let within = |half: f64, room: f64| half.min(WITHIN * room.max(SMALLEST));
    let out = board.chine[0].min(board.half_top) - y.abs();
    let half_width = within(0.5 * area.width + more, out);
    let (up, down) = (board.top - z, z - board.rise * (y.abs() + half_width));
    let half_height = within(0.5 * area.height + more, up.min(down));
    Rect { centre: area.centre, width: 2.0 * half_width, height: 2.0 * half_height }
}

/// A hair within the edges, lest rounding put an area off the panel, and an area that is still one, m.
const WITHIN: f64 = 0.999;
const SMALLEST: f64 = 1e-3;
