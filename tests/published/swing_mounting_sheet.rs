//! The fitted bodies give back the mounting sheet's own numbers. Sheets are invented, of usual size.

use nalgebra::{Point3, Vector3};
use proptest::prelude::*;
use sternknee::physics::swing::*;
use uom::si::angle::degree;
use uom::si::f64::{Angle, Length};
use uom::si::length::millimeter;

fn mm(value: f64) -> Length {
    Length::new::<millimeter>(value)
}

fn deg(value: f64) -> Angle {
    Angle::new::<degree>(value)
}

fn sheet(protrusion: f64, height: f64, full: f64) -> MountingSheet {
    MountingSheet {
        name: "invented 200".to_owned(),
        shaft_length: mm(640.0),
        plate_to_propeller_shaft: mm(190.0),
        propeller_diameter: mm(394.0),
        powerhead_width: mm(560.0),
        powerhead_height: mm(760.0),
        powerhead_forward: mm(60.0),
        powerhead_aft: mm(620.0),
        protrusion_at_full_tilt: mm(protrusion),
        height_at_full_tilt: mm(height),
        tilt: AngleRange::new("tilt", deg(-4.0), deg(full)).expect("sound"),
        transom_angle: deg(12.0),
        steering_each_way: deg(32.0),
        tilt_tube: None,
    }
}

fn mounting(angle: f64) -> Mounting {
    Mounting { rest: Point3::new(-0.6, 0.4, 0.64), transom_angle: deg(angle) }
}

/// Farthest forward and highest of what moves at full tilt, from the points themselves.
fn farthest(fitted: &FittedEngine, mounting: &Mounting) -> (f64, f64) {
    let mut most = (f64::MIN, f64::MIN);
    for (part, body) in fitted.chain.bodies() {
        if *part != Part::Bracket {
            for point in body.points() {
                let at = fitted.chain.carried(*part, *point, fitted.tilt.high(), deg(0.0)) - mounting.rest;
                let grown = body.radius().value;
                most = (most.0.max(at.x + grown), most.1.max(at.z + grown));
            }
        }
    }
    most
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn protrusion_and_height_at_full_tilt_are_the_sheets_own(
        protrusion in 640.0..760.0f64,
        height in 780.0..900.0f64,
        full in 62.0..76.0f64,
    ) {
        let sheet = sheet(protrusion, height, full);
        let mounting = mounting(12.0);
        match fit_engine(&sheet, &mounting) {
            Ok(fitted) => {
                let (forward, up) = farthest(&fitted, &mounting);
                prop_assert!((forward - protrusion / 1e3).abs() < 1e-9);
                prop_assert!((up - height / 1e3).abs() < 1e-9);
                let [by_call, high] = reach_from(&fitted.chain, &mounting.rest, fitted.tilt.high());
                prop_assert!((by_call.value - forward).abs() < 1e-12 && (high.value - up).abs() < 1e-12);
                let tube_solved = matches!(fitted.solved, Solved::TiltTube { .. });
                prop_assert!(tube_solved);
            }
            Err(error) => {
                let said = matches!(error, SwingError::SheetDoesNotFit { .. });
                prop_assert!(said, "{}", error);
            }
        }
    }
}

#[test]
fn a_given_tilt_tube_leaves_the_cowl_to_be_solved() {
    let mut sheet = sheet(700.0, 840.0, 68.0);
    let first = fit_engine(&sheet, &mounting(12.0)).expect("a sound sheet");
    let Solved::TiltTube { forward, above } = first.solved else { panic!("{:?}", first.solved) };
    sheet.tilt_tube = Some([forward, above]);
    sheet.powerhead_forward = mm(-30.0);
    sheet.powerhead_aft = mm(900.0);
    let second = fit_engine(&sheet, &mounting(12.0)).expect("a sound sheet");
    let Solved::Cowl { forward, aft } = second.solved else { panic!("{:?}", second.solved) };
    assert!((forward - mm(60.0)).value.abs() < 1e-9, "{forward:?}");
    assert!((aft - mm(620.0)).value.abs() < 1e-9, "{aft:?}");
}

/// It turns about the tilt tube, and the engine turns in it about the steering axis: it holds both, wherever the tube is.
#[test]
fn the_swivel_holds_its_tilt_tube_and_the_steering_axis_all_round() {
    for tube in [[0.02, 0.05], [-0.02, 0.10], [0.0, 0.22], [-0.05, 0.15], [-0.10, -0.05], [-0.15, 0.0], [-0.2, -0.1]] {
        let given = MountingSheet { tilt_tube: Some(tube.map(|v| mm(1e3 * v))), ..sheet(700.0, 840.0, 68.0) };
        let fitted = fit_engine(&given, &mounting(12.0)).expect("a sound sheet");
        let body = |name: &str| fitted.chain.bodies().iter().find(|(_, b)| b.name() == name).expect("drawn").1.clone();
        let (swivel, round) = (body(called::SWIVEL), body(called::TUBE).radius().value);
        let points: Vec<[f64; 2]> = swivel.points().iter().map(|p| [p.x, p.z]).collect();
        let reach = |u: [f64; 2]| points.iter().map(|p| p[0] * u[0] + p[1] * u[1]).fold(f64::MIN, f64::max);
        // At its lower end it is as wide as the boss about the steering axis.
        let lowest = points.iter().map(|p| p[1]).fold(f64::MAX, f64::min);
        let ends = points.iter().filter(|p| p[1] < lowest + 1e-9).map(|p| p[0]);
        let (aft, ahead) = (ends.clone().fold(f64::MAX, f64::min), ends.fold(f64::MIN, f64::max));
        let axis = fitted.chain.steering_axis().point().x;
        assert!((0.5 * (aft + ahead) - axis).abs() < 1e-12 && ahead > aft);
        let tilt = fitted.chain.tilt_axis().point();
        for degrees in 0..360 {
            let (sin, cos) = f64::from(degrees).to_radians().sin_cos();
            let far = reach([cos, sin]) + 1e-9;
            assert!(far >= tilt.x * cos + tilt.z * sin + round, "tube {tube:?}, {degrees}");
            let rest = mounting(12.0).rest.z;
            assert!(far >= axis * cos + rest * sin + 0.5 * (ahead - aft) * cos.abs(), "axis {tube:?}, {degrees}");
        }
    }
}

#[test]
fn the_anti_ventilation_plate_hangs_a_shaft_length_below_the_rest() {
    let fitted = fit_engine(&sheet(700.0, 840.0, 68.0), &mounting(12.0)).expect("a sound sheet");
    let plate = fitted.chain.bodies().iter().find(|(_, b)| b.name() == "anti-ventilation plate");
    let lowest = plate.expect("a plate").1.points().iter().map(|p| p.z).fold(f64::MAX, f64::min);
    assert!((lowest - (0.64 - 0.64)).abs() < 1e-12, "{lowest}");
}

#[test]
fn a_transom_that_leans_more_takes_as_much_off_full_tilt() {
    let sheet = sheet(700.0, 840.0, 68.0);
    let usual = fit_engine(&sheet, &mounting(12.0)).expect("a sound sheet");
    let raked = fit_engine(&sheet, &mounting(16.0)).expect("a sound sheet");
    assert!((usual.tilt.high() - raked.tilt.high() - deg(4.0)).value.abs() < 1e-12);
    let [before, _] = reach_from(&usual.chain, &mounting(12.0).rest, usual.tilt.high());
    let [after, _] = reach_from(&raked.chain, &mounting(16.0).rest, raked.tilt.high());
    assert!(after < before, "leaning back, the engine reaches less far forward");
    let at = usual.chain.tilt_axis().point() - mounting(12.0).rest;
    let turned = raked.chain.tilt_axis().point() - mounting(16.0).rest;
    assert!((at.norm() - turned.norm()).abs() < 1e-12, "the tube stays as far from the rest");
}

#[test]
fn a_sheet_that_fits_no_bracket_is_told_so() {
    let wild = fit_engine(&sheet(1500.0, 840.0, 68.0), &mounting(12.0));
    let Err(SwingError::SheetDoesNotFit { why }) = wild else { panic!("{wild:?}") };
    assert!(why.contains("tilt tube"), "{why}");
}

/// A fitted engine on a bare transom in front of a well whose forward wall stands a little too near.
fn well_scene() -> Scene {
    let fitted = fit_engine(
        &sheet(700.0, 840.0, 68.0),
        &Mounting { rest: Point3::new(-0.14, 0.0, 0.64), transom_angle: deg(12.0) },
    )
    .expect("a sound sheet");
    let mut scene = Scene::new(fitted.chain, fitted.tilt, fitted.steer);
    let wall = ConvexBody::cuboid("well, forward wall", Point3::new(0.55, -0.8, 0.45), Point3::new(0.60, 0.8, 0.95));
    scene.obstacles.push(Obstacle::Body(wall.expect("sound")));
    scene
}

#[test]
fn applying_the_computed_setback_or_tilt_limit_clears_the_well() {
    let scene = well_scene();
    let effort = Effort::default();
    let before = least_distance(&scene, &effort).expect("a sound question");
    assert!(before.contact_depth().is_some(), "{before:?}");
    assert_eq!(before.body.name, "powerhead cowl, forward edge");
    let margin = mm(15.0);
    let way = Move { direction: -Vector3::x(), most: mm(300.0), step: mm(1.0) };
    let Shift::Clears { by, .. } = least_shift(&scene, &way, margin, &effort).expect("sound") else {
        panic!("300 mm of setback is ample")
    };
    let moved = scene.engines_shifted(-Vector3::x() * by.value);
    let after = least_distance(&moved, &effort).expect("sound");
    assert!(after.upper >= margin, "{after:?}");
    let less = scene.engines_shifted(-Vector3::x() * (by - mm(2.0)).value);
    let short = least_distance(&less, &effort).expect("sound");
    assert!(short.lower < margin, "{short:?}");
    let limit = permitted_range(&scene, Swing::Tilt, margin, &effort).expect("sound");
    let mut limited = scene.clone();
    let up_to = limit.up_to.expect("down is clear");
    limited.tilt = AngleRange::new("permitted", scene.tilt.low(), up_to).expect("sound");
    let after = least_distance(&limited, &effort).expect("sound");
    assert!(after.upper >= margin, "{after:?}");
    println!("{:.1} mm of setback or {:.1} deg of tilt", 1e3 * by.value, up_to.get::<degree>());
}
