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

pub fn sheet(protrusion: f64, height: f64, full: f64) -> MountingSheet {
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

pub fn mounting(angle: f64) -> Mounting {
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
    assert!((usual.tilt.low() - raked.tilt.low() - deg(4.0)).value.abs() < 1e-12);
    // Trimmed in by 4 deg and steered by 32 deg to either side, as its sheet says.
    for (found, exact) in [(usual.tilt.low(), -4.0), (usual.steer.low(), -32.0), (usual.steer.high(), 32.0)] {
        assert!((found - deg(exact)).value.abs() < 1e-12, "{found:?}");
    }
    let [before, _] = reach_from(&usual.chain, &mounting(12.0).rest, usual.tilt.high());
    let [after, _] = reach_from(&raked.chain, &mounting(16.0).rest, raked.tilt.high());
    assert!(after < before, "leaning back, the engine reaches less far forward");
    let at = usual.chain.tilt_axis().point() - mounting(12.0).rest;
    let turned = raked.chain.tilt_axis().point() - mounting(16.0).rest;
    assert!((at.norm() - turned.norm()).abs() < 1e-12, "the tube stays as far from the rest");
}

/// A number that cannot be is refused by its own name, before anything is drawn with it.
#[test]
fn a_mounting_sheet_with_a_size_that_is_none_is_refused_by_that_size() {
    type Spoil = fn(&mut MountingSheet, Length);
    let sizes: [(&str, Spoil); 8] = [
        ("the shaft length", |sheet, v| sheet.shaft_length = v),
        ("the plate to propeller shaft distance", |sheet, v| sheet.plate_to_propeller_shaft = v),
        ("the propeller diameter", |sheet, v| sheet.propeller_diameter = v),
        ("the powerhead width", |sheet, v| sheet.powerhead_width = v),
        ("the powerhead height", |sheet, v| sheet.powerhead_height = v),
        ("the powerhead's aft extent", |sheet, v| sheet.powerhead_aft = v),
        ("the protrusion at full tilt", |sheet, v| sheet.protrusion_at_full_tilt = v),
        ("the height at full tilt", |sheet, v| sheet.height_at_full_tilt = v),
    ];
    for (name, spoil) in sizes {
        for (bad, finite) in [(0.0, true), (-3.0, true), (f64::NAN, false), (f64::INFINITY, false)] {
            let mut wrong = sheet(700.0, 840.0, 68.0);
            spoil(&mut wrong, mm(bad));
            match fit_engine(&wrong, &mounting(12.0)) {
                Err(SwingError::NotPositive { what, value }) => {
                    assert_eq!((what.as_str(), value, finite), (name, bad / 1e3, true));
                }
                Err(SwingError::NotFinite { what }) => assert_eq!((what.as_str(), finite), (name, false)),
                other => panic!("{name} {bad}: {other:?}"),
            }
        }
    }
    // Forward of the face by less than it ends aft of it: a cowl of no length.
    let flat = MountingSheet { powerhead_forward: mm(-620.0), ..sheet(700.0, 840.0, 68.0) };
    let found = fit_engine(&flat, &mounting(12.0));
    assert!(
        matches!(&found, Err(SwingError::NotPositive { what, .. }) if what == "the powerhead's length"),
        "{found:?}"
    );
    let lock = MountingSheet { steering_each_way: deg(f64::NAN), ..sheet(700.0, 840.0, 68.0) };
    let found = fit_engine(&lock, &mounting(12.0));
    assert!(matches!(&found, Err(SwingError::NotFinite { what }) if what == "the steering angle"), "{found:?}");
    let Err(SwingError::SheetDoesNotFit { why }) = fit_engine(&sheet(700.0, 840.0, 19.0), &mounting(12.0)) else {
        panic!("19 degrees are no full tilt")
    };
    assert!(why.contains("full tilt is 19.0 deg; at least 20 deg"), "{why}");
}

/// What is told of where a corner is from, redone by hand with the sheet's 560 mm by 760 mm powerhead from 60 mm forward to 620 mm
/// aft, 640 mm of shaft, 190 mm to the propeller shaft and 394 mm of propeller: the share that is named gives the place that is drawn.
#[test]
fn every_body_of_an_engine_says_from_which_numbers_it_was_drawn_and_was() {
    let fitted = fit_engine(&sheet(700.0, 840.0, 68.0), &mounting(12.0)).expect("a sound sheet");
    let rest = mounting(12.0).rest;
    let reach = |body: &ConvexBody, axis: usize, sign: f64| {
        let points = body.points().iter().map(|p| sign * (p[axis] - rest[axis]) + body.radius().value);
        sign * points.fold(f64::MIN, f64::max)
    };
    let end = |forward, upper| End { forward, upper };
    let [cowl, after] = called::COWL;
    // Driveshaft: 0.42 of 620 mm aft, 260.4 mm.
    let drawn: [(&str, End, &str, usize, f64, f64); 23] = [
        (cowl, end(true, true), "the cowl's reach forward", 0, 1.0, 60.0),
        (cowl, end(false, true), "0.4 of the cowl's length aft of its forward edge", 0, -1.0, 60.0 - 0.4 * 680.0),
        (cowl, end(true, true), "half its width; the powerhead's height", 2, 1.0, 760.0),
        (cowl, end(true, false), "0.25 of its height", 2, -1.0, 0.25 * 760.0),
        (after, end(true, true), "0.4 of the cowl's length aft of its forward edge", 0, 1.0, 60.0 - 0.4 * 680.0),
        (after, end(false, true), "the cowl's reach aft; 0.7 of half its width", 0, -1.0, -620.0),
        (after, end(true, false), "0.25 of its height", 2, -1.0, 0.25 * 760.0),
        (called::LEG, end(true, true), "and 0.22 of it either way", 0, 1.0, -260.4 + 0.22 * 620.0),
        (called::LEG, end(false, true), "0.25 of the powerhead's height", 2, 1.0, 0.25 * 760.0),
        (called::LEG, end(false, false), "the shaft's length down", 2, -1.0, -640.0),
        (called::LEG, end(false, false), "0.16 of the powerhead's width", 1, 1.0, 0.16 * 560.0),
        (called::PLATE, end(true, false), "0.5 propeller diameters forward", 0, 1.0, -260.4 + 0.5 * 394.0),
        (called::PLATE, end(false, false), "the driveshaft, 1 aft", 0, -1.0, -260.4 - 394.0),
        (called::PLATE, end(false, false), "0.3 of one to each side", 1, 1.0, 0.3 * 394.0),
        (called::GEARCASE, end(true, true), "0.8 propeller diameters forward", 0, 1.0, -260.4 + 0.8 * 394.0),
        (called::GEARCASE, end(false, true), "0.75 aft less half", 0, -1.0, -260.4 - 0.75 * 394.0 + 0.5 * 0.35 * 394.0),
        (called::PROPELLER, end(true, true), "0.75 of its diameter", 0, 1.0, -260.4 - 0.75 * 394.0 + 0.175 * 394.0),
        (called::PROPELLER, end(false, true), "0.35 of it long", 0, -1.0, -260.4 - 0.75 * 394.0 - 0.175 * 394.0),
        (called::SKEG, end(false, false), "0.6 propeller diameters below", 2, -1.0, -830.0 - 0.6 * 394.0),
        (called::SWIVEL, end(true, false), "to half the shaft's length; 0.18", 2, -1.0, -320.0),
        (called::SWIVEL, end(true, false), "0.18 of the powerhead's width to each side", 1, 1.0, 0.18 * 560.0),
        (called::TUBE, end(true, true), "0.3 of the powerhead's width to each side", 1, 1.0, 0.3 * 560.0 + 22.0),
        (called::CLAMP, end(true, false), "0.3 of the powerhead's width to each side", 1, 1.0, 0.3 * 560.0),
    ];
    for (name, end, words, axis, sign, place) in drawn {
        let said = whence(name, end).unwrap_or_else(|| panic!("{name} {end:?}"));
        assert!(said.contains(words), "{name}: {said} lacks {words}");
        let body = fitted.chain.bodies().iter().find(|(_, body)| body.name() == name).expect("drawn");
        let found = 1e3 * reach(&body.1, axis, sign);
        assert!((found - place).abs() < 1e-6, "{name}, {words}: {found} for {place}");
    }
    // It steers about an axis 0.18 of the reach aft behind its face; the gearcase lies evenly about the propeller shaft.
    assert!((fitted.chain.steering_axis().point().x - rest.x + 0.18 * 0.62).abs() < 1e-12);
    let (_, gearcase) = fitted.chain.bodies().iter().find(|(_, body)| body.name() == called::GEARCASE).expect("drawn");
    assert!((0.5 * (reach(gearcase, 2, 1.0) + reach(gearcase, 2, -1.0)) + 0.83).abs() < 1e-12);
    // Both sides alike, and the cowl's after end narrower: 0.7 of 280 mm.
    for (_, body) in fitted.chain.bodies() {
        assert!((reach(body, 1, 1.0) + reach(body, 1, -1.0)).abs() < 1e-12, "{}", body.name());
    }
    let (_, aft) = fitted.chain.bodies().iter().find(|(_, body)| body.name() == after).expect("drawn");
    let stern = aft.points().iter().filter(|p| (p.x - rest.x + 0.62).abs() < 1e-9);
    let half: Vec<f64> = stern.map(|p| (p.y - rest.y).abs()).collect();
    assert!(half.len() == 4 && half.iter().all(|half| (half - 0.7 * 0.28).abs() < 1e-12), "{half:?}");
    for (_, body) in fitted.chain.bodies() {
        for (forward, upper) in [(true, true), (true, false), (false, true), (false, false)] {
            assert!(whence(body.name(), end(forward, upper)).is_some_and(|said| !said.is_empty()), "{}", body.name());
        }
    }
    assert_eq!(whence("ladder", end(true, true)), None);
}

/// The clamp bracket lies down the face that it is bolted to, which leans with its top aft, to 0.6 of the shaft's length below its rest.
#[test]
fn the_clamp_bracket_lies_down_the_mounting_face_however_that_leans() {
    for lean in [0.0, 8.0, 12.0, 20.0_f64] {
        let at = mounting(lean);
        let fitted = fit_engine(&sheet(700.0, 840.0, 68.0), &at).expect("a sound sheet");
        let clamp = &fitted.chain.bodies().iter().find(|(_, body)| body.name() == called::CLAMP).expect("drawn").1;
        let (sin, cos) = lean.to_radians().sin_cos();
        // Down the face, and how far aft of it.
        let flat = clamp.points().iter().map(|p| *p - at.rest).map(|p| (p.x * sin - p.z * cos, -p.x * cos - p.z * sin));
        let on_it: Vec<f64> = flat.clone().filter(|(_, aft)| aft.abs() < 1e-9).map(|(down, _)| down).collect();
        assert!((on_it.iter().copied().fold(f64::MIN, f64::max) - 0.6 * 0.64).abs() < 1e-9, "{lean}: {on_it:?}");
        assert!(on_it.iter().copied().fold(f64::MAX, f64::min).abs() < 1e-9, "{lean}: {on_it:?}");
        assert!(flat.filter(|(down, _)| *down > 0.1).all(|(_, aft)| aft > -1e-9), "{lean}: into the transom");
    }
}

#[test]
fn a_sheet_that_fits_no_bracket_is_told_so() {
    let wild = fit_engine(&sheet(1500.0, 840.0, 68.0), &mounting(12.0));
    let Err(SwingError::SheetDoesNotFit { why }) = wild else { panic!("{wild:?}") };
    assert!(why.contains("tilt tube"), "{why}");
}

/// Whatever protrusion and height a sheet gives, the tube that they put is one that a bracket can hold, or they are refused: 0.20 m
/// forward of the face to 0.35 m aft, 0.25 m below the rest to 0.40 m above it (common practice, no source).
#[test]
fn no_sheet_puts_its_tilt_tube_where_no_bracket_holds_one() {
    let (mut held, mut refused) = (0, 0);
    for protrusion in (200..1500).step_by(50) {
        for height in (300..1400).step_by(50) {
            match fit_engine(&sheet(f64::from(protrusion), f64::from(height), 68.0), &mounting(12.0)) {
                Ok(fitted) => {
                    let Solved::TiltTube { forward, above } = fitted.solved else { panic!("{:?}", fitted.solved) };
                    assert!((-0.35..=0.20).contains(&forward.value), "{protrusion} {height}: {forward:?}");
                    assert!((-0.25..=0.40).contains(&above.value), "{protrusion} {height}: {above:?}");
                    held += 1;
                }
                Err(SwingError::SheetDoesNotFit { .. }) => refused += 1,
                Err(other) => panic!("{protrusion} {height}: {other}"),
            }
        }
    }
    assert!(held > 10 && refused > 100, "{held} {refused}");
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
