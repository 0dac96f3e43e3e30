//! The mounting layout of the trade association that is in general use: upper pair 12-7/8 in apart, lower
//! pair 9-7/8 in apart, 8 in between the pairs, upper holes 1-7/8 in below the transom's top and never less
//! than 1-3/4 in; rows of holes 3/4 in apart; 1/2 in bolts. Exact decimals: 1e-9 in.

use sternknee::physics::{fit, height};
use sternknee::quantity::{Dimensioned, degrees, inches};
use sternknee::working::{Sheet, Term};

use crate::common::near;

const INCH: f64 = 0.0254;

#[test]
fn the_four_holes_stand_where_the_layout_has_them() {
    let holes = fit::pattern(inches(14.0));
    let printed = [(14.0 + 6.4375, 1.875), (14.0 - 6.4375, 1.875), (14.0 + 4.9375, 9.875), (14.0 - 4.9375, 9.875)];
    for (hole, (y, below)) in holes.into_iter().zip(printed) {
        near(hole.y.si() / INCH, y, 1e-9);
        near(hole.below.si() / INCH, below, 1e-9);
    }
}

#[test]
fn the_pairs_are_as_far_apart_as_the_layout_prints() {
    let [a, b, c, d] = fit::pattern(inches(0.0));
    near(fit::apart(a, b).si() / INCH, 12.875, 1e-9);
    near(fit::apart(c, d).si() / INCH, 9.875, 1e-9);
    // From an upper to the lower hole of its side: 8 in down and 1-1/2 in inboard, so √(64 + 2.25).
    near(fit::apart(a, c).si() / INCH, 66.25_f64.sqrt(), 1e-9);
}

/// "One hole up" is 3/4 in.
#[test]
fn a_hole_up_is_three_quarters_of_an_inch() {
    for holes in 0..=5 {
        let mut sheet = Sheet::default();
        let lowest = Term::new("h0", inches(-0.5));
        let plate = height::plate_height(&mut sheet, &lowest, holes);
        near(plate.value().si() / INCH, -0.5 + 0.75 * f64::from(holes), 1e-9);
    }
}

/// Common practice of the trade, worked: 14 in off centre on 22° of deadrise the bottom is 5.66 in higher
/// (printed to two places: 0.005).
#[test]
fn the_bottom_rises_by_the_tangent_of_the_deadrise() {
    for side in [14.0, -14.0] {
        let mut sheet = Sheet::default();
        let rise = height::bottom_rise(&mut sheet, inches(side), degrees(22.0), degrees(0.0));
        near(rise.value().si() / INCH, 5.66, 0.005);
        let at = height::height_off_centre(&mut sheet, inches(25.0), &rise);
        near(at.value().si() / INCH, 25.0 - 5.66, 0.005);
    }
}

/// Derived: a bottom of 22° meets a transom that leans by 14° at y·tan 22° up and as much farther aft, so along the
/// transom at √(1 + tan² 14°) of that.
#[test]
fn along_a_leaning_transom_the_bottom_rises_by_more() {
    let mut sheet = Sheet::default();
    let rise = height::bottom_rise(&mut sheet, inches(14.0), degrees(22.0), degrees(14.0));
    let (up, slope) = (14.0 * 22.0_f64.to_radians().tan(), 14.0_f64.to_radians().tan());
    near(rise.value().si() / INCH, up.hypot(up * slope), 1e-9);
}

/// Common practice, no source: level to 1 in above the bottom without setback; an inch more for each 12 in
/// (careful) to each 8 in (keen) of setback: 24 in gives 2 in to 4 in.
#[test]
fn the_window_rises_with_setback() {
    for (setback, low, high) in [(0.0, 0.0, 1.0), (12.0, 1.0, 2.5), (24.0, 2.0, 4.0)] {
        let mut sheet = Sheet::default();
        let window = height::plate_window(&mut sheet, inches(setback));
        near(window.0.value().si() / INCH, low, 1e-9);
        near(window.1.value().si() / INCH, high, 1e-9);
    }
}

/// H − d / cos θ − S: an upright 25-1/4 in transom, a bracket 2 in lower and a 20-1/2 in shaft leave the plate 2-3/4 in
/// up; where the transom leans by 60°, the 2 in plumb are 4 in along it.
#[test]
fn the_lowest_plate_is_height_less_drop_less_shaft() {
    let mut sheet = Sheet::default();
    let height = Term::new("H", inches(25.25));
    let lowest = height::plate_height_lowest(&mut sheet, &height, inches(2.0), degrees(0.0), inches(20.5));
    near(lowest.value().si() / INCH, 2.75, 1e-9);
    let lowest = height::plate_height_lowest(&mut sheet, &height, inches(2.0), degrees(60.0), inches(20.5));
    near(lowest.value().si() / INCH, 0.75, 1e-9);
}

/// A wedge over 12 in that turns by 4° is 12·tan 4° = 0.8391 in thick.
#[test]
fn a_wedge_is_the_tangent_over_the_brackets_height() {
    let mut sheet = Sheet::default();
    let wedge = height::wedge(&mut sheet, degrees(4.0), inches(12.0));
    near(wedge.value().si() / INCH, 0.8391, 0.000_05);
}

/// Two unlike engines ask for the mean of what each asks beside its like (common practice, no source).
#[test]
fn unlike_engines_ask_for_the_mean_of_their_distances() {
    let mut sheet = Sheet::default();
    let needed = fit::centres_needed(&mut sheet, inches(28.0), inches(22.0));
    near(needed.value().si() / INCH, 25.0, 1e-9);
    let swept = fit::swept_half_width(&mut sheet, inches(-13.0), inches(9.5));
    near(swept.value().si() / INCH, 22.5, 1e-9);
}
