//! The waters of the loadings that are drawn: how she lies before and after.

use super::kit::{Pen, ink};
use crate::case::float::{Float, Loaded, Side, State};
use crate::physics::float::WaterPlane;

/// One water surface to draw.
pub(super) struct Lying {
    /// Which loading, before or after.
    pub name: String,
    /// With the old engines or the new ones.
    pub side: Side,
    /// The surface, as the boat sees it.
    pub plane: WaterPlane,
    /// How it is drawn.
    pub pen: Pen,
}

/// The first loading before and after, and the one that puts the transom deepest after.
pub(super) fn waters(float: &Float) -> Vec<Lying> {
    let mut all = Vec::new();
    let Some(first) = float.loadings.first() else {
        return all;
    };
    let mut add = |loaded: &Loaded, state: Option<&State>, word: &str, pen: Pen| {
        if let Some((state, floating)) = state.and_then(|state| Some((state, state.upright().ok()?))) {
            all.push(Lying {
                name: format!("water, {}{word}", loaded.name),
                side: state.side,
                plane: floating.plane,
                pen,
            });
        }
    };
    let (before, after) = if first.alone { ("", "") } else { (", before", ", after") };
    add(first, first.before.as_ref(), before, Pen::of(ink::OLD, 1.6).dashed("8 4"));
    add(first, first.after.as_ref(), after, Pen::of(ink::WATER, 2.0));
    let depth = |loaded: &&Loaded| {
        loaded
            .judged()
            .and_then(|state| state.upright().ok())
            .map_or(f64::NEG_INFINITY, |floating| floating.plane.offset().value)
    };
    let deepest =
        float.loadings.iter().filter(|loaded| !loaded.to_one_side()).max_by(|a, b| depth(a).total_cmp(&depth(b)));
    if let Some(deepest) = deepest.filter(|deepest| deepest.name != first.name) {
        add(deepest, deepest.judged(), after, Pen::of(ink::WATER, 1.6).dashed("2 3"));
    }
    all
}
