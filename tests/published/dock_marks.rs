//! When readings at the dock tell heel: marks on both sides, and not all on one line. Limits by hand for a box 6 m by 2 m, of which a
//! twentieth of the beam is 0.1 m.

use nalgebra::{Point3, Vector3};
use sternknee::physics::float::{AsFloats, FloatError, Hull, Mark, as_she_floats, load_for};
use uom::si::angle::degree;
use uom::si::length::meter;
use uom::si::mass::kilogram;

use super::shapes::*;

/// The box with its deck 1 m high, read at these places in water that she lies in at a draft of 0.4 m, heeled by 2 degrees.
fn read(places: &[[f64; 2]]) -> AsFloats {
    let water = plane(0.4, 0.0, 2.0);
    let marks: Vec<Mark> = places
        .iter()
        .map(|[x, y]| Point3::new(*x, *y, 1.0))
        .map(|point| Mark { point, height: water.height_above(&point) })
        .collect();
    as_she_floats(&box_hull(6.0, 2.0, 1.0), &marks, m(0.5), density(1000.0)).expect("she floats so")
}

#[track_caller]
fn tells_heel(places: &[[f64; 2]], told: bool) {
    let found = read(places);
    assert_eq!(found.heel_fitted, told, "{places:?}");
    near(found.plane.attitude().heel.get::<degree>(), if told { 2.0 } else { 0.0 }, 1e-9);
}

#[test]
fn marks_tell_heel_when_they_stand_farther_out_than_a_twentieth_of_the_beam_on_either_side() {
    let pair = |port: f64, starboard: f64| [[0.0, port], [0.0, -starboard], [6.0, 0.0]];
    for (port, starboard, told) in
        [(0.11, 0.11, true), (0.1, 0.1, false), (0.09, 0.09, false), (0.9, 0.09, false), (0.09, 0.9, false)]
    {
        tells_heel(&pair(port, starboard), told);
    }
    // Both far out, but on one side.
    tells_heel(&[[0.0, 0.9], [6.0, 0.5], [3.0, 0.2]], false);
    // Two alone tell trim, and no more.
    tells_heel(&[[0.0, 0.9], [6.0, -0.9]], false);
}

/// Three marks of which the middle one lies e off the line between the others: the line of least squares passes them at e/3, 2 e/3
/// and e/3, whose squares sum up to 2/3 e². That is 0.1² at e = 0.1 √1.5 = 0.1225 m.
#[test]
fn marks_on_one_slanting_line_tell_no_heel() {
    // From the port quarter to the starboard bow; square to that is (0.8, 3) over 3.1048.
    let middle_off = |e: f64| [[0.0, 0.8], [3.0 + 0.8 * e / 3.1048, 3.0 * e / 3.1048], [6.0, -0.8]];
    for (off, told) in
        [(0.0, false), (0.11, false), (-0.11, false), (0.12, false), (0.125, true), (-0.125, true), (0.4, true)]
    {
        tells_heel(&middle_off(off), told);
    }
}

/// Less than a tenth of the length apart they tell no trim, wherever the length is counted from: 0.6 m of the box's 6 m.
#[test]
fn marks_that_stand_less_than_a_tenth_of_the_length_apart_tell_no_trim() {
    for away in [-20.0, 0.0, 35.0] {
        let hull = Hull::new(box_mesh(6.0, 2.0, 1.0).translated(&Vector3::new(away, 0.0, 0.0)).expect("a box"));
        let read = |stations: &[f64]| {
            let mark = |x: &f64| Mark { point: Point3::new(away + x, 0.0, 1.0), height: m(0.6) };
            as_she_floats(&hull, &stations.iter().map(mark).collect::<Vec<_>>(), m(0.5), density(1000.0))
        };
        for few in [&[][..], &[3.0], &[2.0, 2.59], &[2.0, 2.3, 2.59], &[1.0, 1.0]] {
            assert!(matches!(read(few), Err(FloatError::TooFewPoints { .. })), "{away}: {few:?}");
        }
        let found = read(&[2.0, 2.61]).expect("far enough apart");
        close(found.load.mass.get::<kilogram>(), 6.0 * 2.0 * 0.4 * 1000.0, 1e-9);
        near(found.load.centre.x, away + 3.0, 1e-9);
    }
}

/// Three marks that do not agree: the line of least squares through 0.60, 0.66 and 0.60 m at even distances is level at their mean,
/// 0.62 m, and misses them by 0.02, −0.04 and 0.02 m.
#[test]
fn readings_that_do_not_agree_are_met_by_least_squares() {
    let marks = [(0.0, 0.60), (3.0, 0.66), (6.0, 0.60)]
        .map(|(x, height)| Mark { point: Point3::new(x, 0.0, 1.0), height: m(height) });
    let found = as_she_floats(&box_hull(6.0, 2.0, 1.0), &marks, m(0.5), density(1025.0)).expect("she floats so");
    near(found.plane.attitude().trim.get::<degree>(), 0.0, 1e-9);
    close(found.load.mass.get::<kilogram>(), 6.0 * 2.0 * 0.38 * 1025.0, 1e-9);
    for (misfit, exact) in found.misfits.iter().zip([0.02, -0.04, 0.02]) {
        near(misfit.get::<meter>(), exact, 1e-9);
    }
}

/// The centre of gravity stands plumb over the centre of buoyancy: at 45 degrees of heel half of a square log is wet, and its centre
/// of buoyancy lies a third of the way down from its middle to the corner, √2 / 6 of its side.
#[test]
fn what_weighs_her_down_stands_plumb_over_what_bears_her() {
    let log = box_hull(10.0, 1.0, 1.0);
    let heeled = plane(0.5_f64.sqrt() / 2.0, 0.0, 45.0);
    for height in [-0.3, 0.5, 1.4] {
        let load = load_for(&log, &heeled, m(height), density(1000.0)).expect("it floats so");
        close(load.mass.get::<kilogram>(), 5000.0, 1e-9);
        near(load.centre.z, height, 1e-9);
        near(load.centre.x, 5.0, 1e-9);
        // Plumb at 45 degrees: as far to port as up from the middle.
        near(load.centre.y.abs(), (height - 0.5).abs(), 1e-9);
    }
    let error = |surface| load_for(&log, &surface, m(0.5), density(1000.0)).expect_err("it can not float so");
    assert!(matches!(error(plane(-0.1, 0.0, 0.0)), FloatError::Dry));
    let FloatError::Sinks { mass_kg, largest_kg } = error(plane(1.1, 0.0, 0.0)) else { panic!("wholly under") };
    close(mass_kg, 10_000.0, 1e-9);
    close(largest_kg, 10_000.0, 1e-9);
    // On her side every height is as good.
    for heel in [90.0, -90.0, 89.99] {
        assert!(matches!(error(plane(0.0, 0.0, heel)), FloatError::TooFewPoints { .. }), "{heel}");
    }
    assert!(load_for(&log, &plane(0.1, 0.0, 85.0), m(0.5), density(1000.0)).is_ok());
}
