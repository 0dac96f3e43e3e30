//! What a sweep met, in words and in outlines.

use sternknee::case::Case;
use sternknee::case::swing::{View, body_words, outlines};

use super::{AXIS, RANGE, rig_of, study};

#[test]
fn a_part_is_told_by_what_it_is_part_of_and_what_a_person_named_keeps_its_name() {
    for (name, words) in [
        ("powerhead cowl, forward edge", "the forward edge of the powerhead cowl"),
        ("well, port side", "the port side of the well"),
        ("ladder, folded", "the ladder, folded"),
        ("the bench, aft", "the bench, aft"),
        ("hatch", "the hatch"),
    ] {
        assert_eq!(body_words(name), words);
    }
}

/// A pyramid from above: its top lies within its square.
#[test]
fn the_hull_of_a_square_with_a_point_inside_is_the_square_anticlockwise() {
    let corners = [[1.0, 1.0, 0.0], [0.5, 0.5, 1.0], [0.0, 0.0, 0.0], [1.0, 0.0, 0.0], [0.0, 1.0, 0.0]];
    let points = corners.map(|[x, y, z]| format!("(\"{x} m\", \"{y} m\", \"{z} m\")")).join(", ");
    let rig = rig_of(&study(AXIS, RANGE, &format!("hull(points: [{points}])")));
    let case = Case::new(&rig);
    let swept = &case.swing().study.as_ref().expect("a study").as_ref().expect("an answer").swept;
    let mut upright = swept.clearance.pose;
    upright.tilt = Default::default();
    upright.steer = Default::default();
    let seen = outlines(swept, &upright, View::Top);
    let pyramid = seen.iter().find(|polygon| polygon.name == "arm").expect("the pyramid");
    assert_eq!(pyramid.corners, [[0.0, 0.0], [1.0, 0.0], [1.0, 1.0], [0.0, 1.0]]);
}
