//! What drives and shakes the transom, from a job's text to its forces.

use sternknee::case::Case;
use sternknee::case::strength::Driving;
use sternknee::physics::propeller::{Drive, Pitch, Screw, USUAL_AREA_RATIO, USUAL_BLADES, pitches, rated_turning};
use sternknee::physics::strength::loads::{Case as Kind, FaceLoad, static_thrust};
use sternknee::working::Sheet;
use uom::si::{force::pound_force, power::horsepower};

use super::{CATALOG, KNEES, boat, rig};

const ENGINE: &str = "four-stroke 115 hp inline-4";

/// The sound boat with other words in place of some.
fn told(changes: &[(&str, &str)]) -> String {
    changes.iter().fold(boat(ENGINE, "", KNEES, ""), |text, (from, to)| {
        assert!(text.contains(from), "no `{from}` in {text}");
        text.replace(from, to)
    })
}

fn driven(text: &str) -> Driving {
    let rig = rig(text);
    Case::new(&rig).strength().expect("strength").driving
}

/// The load of a case on the new engine's face.
fn load(text: &str, kind: Kind) -> FaceLoad {
    let rig = rig(text);
    let case = Case::new(&rig);
    let after = &case.strength().expect("strength").after;
    let index = after.cases.iter().position(|case| case.kind == kind && !case.alone).expect("the case");
    after.footings[0].loads[index]
}

const ACCELERATION: &str = r#", acceleration: "2 gn""#;

#[test]
fn planing_propellers_of_the_catalog_pull_6_to_13_lbf_a_horsepower() {
    // Common practice, no source; planing: from 40 hp.
    let mut seen = 0;
    for entry in &CATALOG.engines {
        let spec = &entry.spec;
        let (Some(power), Some(range), Some(gears), Some(diameter)) =
            (&spec.power, &spec.full_throttle, &spec.gear_ratio, &spec.propeller_diameter)
        else {
            panic!("{} lacks a figure of its drive", entry.name);
        };
        let drive = Drive {
            power: power.value,
            rated_speed: 0.5 * (range.from.value + range.to.value),
            gear_ratio: gears.value,
            diameter: diameter.to.value,
        };
        let screw = Screw { blades: USUAL_BLADES, area_ratio: USUAL_AREA_RATIO, pitch: Pitch::Usual };
        let mut sheet = Sheet::default();
        let turning = rated_turning(&mut sheet, &drive);
        let pitch = pitches(&mut sheet, &drive, &turning, screw.pitch);
        let propeller = screw.with(&pitch.own).expect("a propeller of the series");
        let pull = static_thrust(&mut sheet, &drive, &turning, &propeller).value();
        let hp = drive.power.get::<horsepower>();
        let each = pull.get::<pound_force>() / hp;
        println!("{}: {each:.1} lbf/hp", entry.name);
        if hp >= 40.0 {
            seen += 1;
            assert!((6.0..=13.0).contains(&each), "{}: {each} lbf/hp", entry.name);
        }
    }
    assert!(seen > 20);
}

#[test]
fn a_reading_more_moves_the_slamming_within_what_the_reading_can_be() {
    let slamming = |more: &[(&str, &str)]| {
        let mut changes = vec![(ACCELERATION, ""), (r#", chine_beam: "6 ft 4 in""#, "")];
        changes.extend(more);
        driven(&told(&changes)).slamming
    };
    let untold = slamming(&[]);
    // Open boats of 18 ft by 7 ft 9 in weigh 2,700 to 4,100 lb laden.
    for pounds in ["2,750 lb", "3,200 lb", "3,600 lb", "4,050 lb"] {
        let one = slamming(&[(
            r#"top_speed: "30 mph", old"#,
            &format!(r#"displacement: "{pounds}", top_speed: "30 mph", old"#),
        )]);
        assert!(one <= untold * (1.0 + 1e-9) && one > untold / 1.6, "{pounds}: {one}, {untold}");
    }
    for chine in ["5 ft 10 in", "6 ft 3 in"] {
        let one = slamming(&[(r#"deadrise: "12 deg""#, &format!(r#"deadrise: "12 deg", chine_beam: "{chine}""#))]);
        assert!(one <= untold && one > 0.85 * untold, "{chine}: {one}, {untold}");
    }
    for (category, least, most) in [("D", 0.6, 0.9), ("C", 0.95, 1.2), ("B", 1.3, 1.6)] {
        let one = slamming(&[(r#"deadrise: "12 deg""#, &format!(r#"deadrise: "12 deg", category: {category}"#))]);
        assert!((least * untold..most * untold).contains(&one), "{category}: {one}, {untold}");
    }
}

#[test]
fn slamming_grows_evenly_with_length_where_no_category_is_told() {
    let slamming = |inches: u32| {
        let length = format!(r#"length: "{inches} in""#);
        driven(&told(&[(ACCELERATION, ""), (r#"length: "18 ft""#, &length)])).slamming
    };
    let all: Vec<f64> = (120..=420).step_by(6).map(slamming).collect();
    for pair in all.windows(2) {
        assert!((pair[1] / pair[0] - 1.0).abs() < 0.05, "{pair:?}");
    }
}

#[test]
fn a_faster_boat_never_turns_kinder_nor_slams_less() {
    let speeds = ["15 mph", "20 mph", "25 mph", "30 mph", "35 mph", "40 mph", "50 mph", "60 mph"];
    let at = |speed: &str| {
        let text =
            told(&[(ACCELERATION, ""), (r#"top_speed: "30 mph", old"#, &format!(r#"top_speed: "{speed}", old"#))]);
        (load(&text, Kind::HardOverStarboard), driven(&text).slamming)
    };
    let all: Vec<(FaceLoad, f64)> = speeds.into_iter().map(at).collect();
    for pair in all.windows(2) {
        let [(slow, easy), (fast, hard)] = pair else { unreachable!() };
        for (less, more) in slow.force.iter().chain(&slow.moment).zip(fast.force.iter().chain(&fast.moment)) {
            assert!(more.abs() >= less.abs() * (1.0 - 1e-9), "{less} {more}");
        }
        assert!(hard >= easy, "{easy} {hard}");
    }
}

#[test]
fn a_told_propeller_is_the_one_that_pulls() {
    let pull = |propeller: &str| load(&told(&[(r#"holes_up: 0, bolts: ()"#, propeller)]), Kind::StaticThrust).force[0];
    let untold = pull("holes_up: 0, bolts: ()");
    let coarse = pull(r#"holes_up: 0, bolts: (), propeller: (blades: 3, diameter: "14 in", pitch: "19 in")"#);
    let fine = pull(
        r#"holes_up: 0, bolts: (), propeller: (blades: 4, diameter: "14 in", pitch: "13 in", area_ratio: "0.65")"#,
    );
    assert!(coarse < untold && coarse < fine, "{coarse} {untold} {fine}");
}

#[test]
fn propellers_that_no_series_knows_are_told() {
    for (propeller, field) in [
        ("blades: 1", "blades"),
        ("blades: 8", "blades"),
        (r#"diameter: "2 in""#, "diameter"),
        (r#"pitch: "90 in""#, "pitch"),
        (r#"area_ratio: "0.2""#, "area_ratio"),
    ] {
        let text = told(&[("holes_up: 0, bolts: ()", &format!("holes_up: 0, bolts: (), propeller: ({propeller})"))]);
        let faults = sternknee::job::load("job.ron", &text).expect_err("a fault").to_string();
        assert!(faults.contains(field) && faults.contains("cannot be right"), "{faults}");
    }
}

#[test]
fn an_auxiliary_beside_the_mains_does_not_drive_her_at_full_speed() {
    let small = r#"(class: "four-stroke 9.9 hp inline-2", role: auxiliary, shaft: "20 in", at: [starboard("28 in")], holes_up: 0)"#;
    let text = told(&[("bolts: ())],", &format!("bolts: ()), {small}],"))]);
    let rig = rig(&text);
    let case = Case::new(&rig);
    let after = &case.strength().expect("strength").after;
    let of = |kind: Kind| {
        let index = after.cases.iter().position(|case| case.kind == kind).expect("the case");
        after.footings[1].loads[index]
    };
    assert_eq!(of(Kind::FullSpeed), of(Kind::Static));
    assert_eq!(of(Kind::HardOverStarboard), of(Kind::Static));
    assert!(of(Kind::StaticThrust).force[0] > of(Kind::Static).force[0]);
}

#[test]
fn every_class_has_a_face_and_a_taller_one_never_pulls_more_on_a_bolt() {
    for entry in &CATALOG.engines {
        assert!(entry.spec.bracket_height.is_some(), "{}", entry.name);
    }
    let pull = |height: &str| {
        let engine =
            format!(r#"described: (power: "115 hp", running_weight: "380 lb", bracket_height: "{height}"), shaft"#);
        let text = told(&[(&format!(r#"class: "{ENGINE}", shaft"#), &engine)]);
        let rig = rig(&text);
        let case = Case::new(&rig);
        let footing = &case.strength().expect("strength").after.footings[0];
        let most = footing.forces.iter().flat_map(|forces| &forces.bolts).map(|bolt| bolt.tension).fold(0.0, f64::max);
        (most, footing.face.top - footing.face.bottom)
    };
    let all: Vec<(f64, f64)> = ["11 in", "12 in", "14 in", "17 in"].into_iter().map(pull).collect();
    for pair in all.windows(2) {
        assert!(pair[1].0 <= pair[0].0 * (1.0 + 1e-9) && pair[1].1 > pair[0].1, "{pair:?}");
    }
    assert!((all[2].1 - 14.0 * 0.0254).abs() < 1e-9);
}

#[test]
fn less_weight_never_loads_a_bolt_more() {
    let most = |weighed: &str| {
        let text = told(&[(
            "at: [centre], holes_up: 0, bolts",
            &format!(r#"weighed: "{weighed}", at: [centre], holes_up: 0, bolts"#),
        )]);
        let rig = rig(&text);
        let case = Case::new(&rig);
        let footing = &case.strength().expect("strength").after.footings[0];
        let bolts = footing.bolts.len();
        let of = |bolt: usize| footing.forces.iter().map(|forces| forces.bolts[bolt].tension).fold(0.0, f64::max);
        (0..bolts).map(of).collect::<Vec<f64>>()
    };
    let all: Vec<Vec<f64>> = ["250 lb", "300 lb", "380 lb", "460 lb"].into_iter().map(most).collect();
    for pair in all.windows(2) {
        for (light, heavy) in pair[0].iter().zip(&pair[1]) {
            assert!(light <= &(heavy * (1.0 + 1e-9)), "{pair:?}");
        }
    }
}
