//! What drawings are laid out with: lettering, tracks, and a field's outlines.

use proptest::prelude::*;
use sternknee::case::strength::Fields;
use sternknee::report::drawings::kit::lettering::{Anchor, FONT, Rect, broken, settle, spread};
use sternknee::report::drawings::kit::steps::round_step;
use sternknee::report::drawings::kit::tracks::assign;
use sternknee::report::drawings::raster::{Place, Raster};

proptest! {
    #[test]
    fn spread_boxes_keep_their_order_and_never_overlap(
        mut wanted in prop::collection::vec((-50.0f64..500.0, 5.0f64..30.0), 0..20),
    ) {
        wanted.sort_by(|a, b| a.0.total_cmp(&b.0));
        let places = spread(&wanted, 0.0, 300.0);
        for i in 1..places.len() {
            let needed = (wanted[i - 1].1 + wanted[i].1) / 2.0;
            prop_assert!(places[i] - places[i - 1] >= needed - 1e-9);
        }
        prop_assert!(places.first().is_none_or(|first| *first >= wanted[0].1 / 2.0 - 1e-9));
    }

    #[test]
    fn broken_words_lose_nothing_and_keep_numbers_with_their_units(room in 60.0f64..400.0) {
        let words = "box bracket 30 in, twin, 160 lb and 25,181 lbf·ft at 12 deg";
        let lines = broken(words, room);
        prop_assert_eq!(lines.join(" "), words);
        let parted = |line: &String| line.ends_with(|c: char| c.is_ascii_digit());
        prop_assert!(!lines.iter().any(parted), "{:?}", lines);
    }

    #[test]
    fn settled_words_stand_free(x in 0.0f64..200.0, y in 20.0f64..200.0) {
        let taken = [Rect { left: 40.0, top: 40.0, right: 160.0, bottom: 160.0 }];
        let within = Rect { left: -200.0, top: -200.0, right: 600.0, bottom: 600.0 };
        let wanted = Rect::of("28 in", x, y, Anchor::Middle, FONT);
        let (dx, dy) = settle(&wanted, (0.0, 1.0), &taken, &within);
        prop_assert!(!wanted.moved(dx, dy).overlaps(&taken[0]));
    }

    #[test]
    fn dimensions_of_one_track_never_touch(
        starts in prop::collection::vec((0.0f64..500.0, 1.0f64..200.0), 1..15),
    ) {
        let intervals: Vec<(f64, f64)> = starts.iter().map(|(a, l)| (*a, a + l)).collect();
        let tracks = assign(&intervals);
        for i in 0..intervals.len() {
            for j in 0..i {
                let apart = intervals[i].1 <= intervals[j].0 || intervals[j].1 <= intervals[i].0;
                prop_assert!(tracks[i] != tracks[j] || apart);
            }
        }
    }
}

/// A triangle with the middles of its sides, and values of a plane at its nodes.
#[test]
fn a_plane_is_interpolated_exactly() {
    let [a, b, c] = [[0.0, 0.0], [2.0, 0.1], [0.3, 1.7]];
    let middle = |p: Place, q: Place| [0.5 * (p[0] + q[0]), 0.5 * (p[1] + q[1])];
    let nodes = vec![a, b, c, middle(a, b), middle(b, c), middle(c, a)];
    let plane = |[y, z]: Place| 2.0 + 5.0 * y - 3.0 * z;
    let values: Vec<f64> = nodes.iter().map(|node| plane(*node)).collect();
    let none = vec![0.0; nodes.len()];
    let fields = Fields { nodes, triangles: vec![[0, 1, 2, 3, 4, 5]], deflection: none.clone(), use_of_strength: none };
    let raster = Raster::of(&fields, &values).expect("a field");
    let left_of = |p: Place, q: Place, at: Place| (q[0] - p[0]) * (at[1] - p[1]) - (q[1] - p[1]) * (at[0] - p[0]);
    let mut within = 0;
    for (i, value) in raster.values.iter().enumerate() {
        let (column, row) = (i % raster.columns, i / raster.columns);
        let at = [raster.low[0] + column as f64 * raster.cell, raster.low[1] + row as f64 * raster.cell];
        if [(a, b), (b, c), (c, a)].iter().all(|(p, q)| left_of(*p, *q, at) > 1e-6) {
            assert!((value - plane(at)).abs() < 1e-12, "{at:?}: {value}");
            within += 1;
        }
    }
    assert!(within > 1000, "{within}");
}

/// Twice the area within outlines, holes taken off.
fn area(outlines: &[Vec<Place>]) -> f64 {
    let doubled: f64 = outlines
        .iter()
        .flat_map(|outline| {
            (0..outline.len()).map(move |i| {
                let (a, b) = (outline[i], outline[(i + 1) % outline.len()]);
                a[0] * b[1] - b[0] * a[1]
            })
        })
        .sum();
    doubled / 2.0
}

fn raster(side: usize, value: impl Fn(f64, f64) -> f64) -> Raster {
    let place = |index: usize| index as f64 / (side - 1) as f64 * 2.0 - 1.0;
    Raster {
        columns: side,
        rows: side,
        low: [-1.0, -1.0],
        cell: 2.0 / (side - 1) as f64,
        values: (0..side * side).map(|i| value(place(i % side), place(i / side))).collect(),
    }
}

#[test]
fn a_ring_has_the_area_of_its_discs() {
    let ring = raster(101, |x, y| 0.2 - ((x * x + y * y).sqrt() - 0.5).abs());
    let wanted = std::f64::consts::PI * (0.7f64.powi(2) - 0.3f64.powi(2));
    let outlines = ring.above(0.0);
    assert_eq!(outlines.len(), 2);
    assert!((area(&outlines) / wanted - 1.0).abs() < 2e-3);
}

#[test]
fn two_hills_that_meet_at_a_corner_stay_two() {
    let hills = raster(41, |x, y| x * y);
    assert_eq!(hills.above(0.01).len(), 2);
    let everywhere = raster(41, |_, _| 1.0);
    assert_eq!(everywhere.above(0.0).len(), 1);
    assert!(everywhere.above(2.0).is_empty());
}

#[test]
fn steps_are_round_and_no_less_than_they_must_be() {
    for (least, step) in [(0.092, 0.1), (0.1, 0.1), (0.11, 0.2), (3.0, 5.0), (7.0, 10.0)] {
        assert!((round_step(least) - step).abs() < 1e-12, "{least}");
    }
}
