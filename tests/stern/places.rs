//! Where the engines hang: one place for floating, swinging and strength.

use nalgebra::Point3;
use sternknee::case::Case;
use sternknee::case::float::Entry;
use sternknee::case::strength::Footing;
use sternknee::quantity::Units;
use sternknee::rules::Verdict;

use crate::{finding, ledger, rig, skiff};

const DEMO: &str = include_str!("../../catalogs/jobs/oyster_skiff.ron");

/// Far below what rounding of places can bring, metres.
const SAME_M: f64 = 1e-12;

fn entries(case: &Case) -> Vec<Entry> {
    let float = case.float().unwrap_or_else(|why| panic!("{why:?}"));
    float.loadings[0].after.as_ref().unwrap().entries.clone()
}

fn centre(entries: &[Entry], name: &str) -> Point3<f64> {
    let entry = entries.iter().find(|entry| entry.name == name);
    entry.unwrap_or_else(|| panic!("no {name}")).weight.centre
}

#[test]
fn an_engine_hangs_at_one_place_for_floating_and_for_swinging() {
    let in_row =
        |row: u8| DEMO.replace("propellers: [left, right],", &format!("propellers: [left, right], holes_up: {row},"));
    assert!(in_row(0) != DEMO);
    for text in [in_row(0), in_row(2)] {
        let rig = rig(&text);
        let case = Case::new(&rig);
        let entries = entries(&case);
        let hanging = case.swing().engines.clone().unwrap();
        assert_eq!(hanging.len(), 2);
        for one in hanging {
            let (_, engine) = rig.after.engines().find(|(_, engine)| engine.label == one.label).unwrap();
            let aft = engine.spec.centre_aft.as_ref().unwrap().value.value;
            let above = engine.spec.centre_above.as_ref().unwrap().value.value;
            let centre = centre(&entries, &one.label);
            assert!((one.rest.x - aft - centre.x).abs() < SAME_M, "{one:?}");
            assert!((one.rest.y - centre.y).abs() < SAME_M);
            assert!((one.rest.z + above - centre.z).abs() < SAME_M);
        }
    }
}

/// Holes stand in rows along the mounting face, 3/4 in apart, and the face leans 14 degrees.
#[test]
fn two_holes_up_move_an_engine_an_inch_and_a_half_along_its_face() {
    let places = |holes: u8| {
        let propellers = "propellers: [left, right],";
        let text = DEMO.replace(propellers, &format!("{propellers} holes_up: {holes},"));
        let rig = rig(&text);
        centre(&entries(&Case::new(&rig)), "port engine")
    };
    let moved = places(2) - places(0);
    let (sin, cos) = 14f64.to_radians().sin_cos();
    assert!((moved.x + 1.5 * 0.0254 * sin).abs() < SAME_M, "{moved}");
    assert!((moved.z - 1.5 * 0.0254 * cos).abs() < SAME_M, "{moved}");
}

/// Closed form: on a plane so far off a transom that leans aft by `θ`, and so high, x is −(s + z sin θ) / cos θ.
#[test]
fn thirty_inches_square_to_a_transom_of_fourteen_degrees_lie_nearly_an_inch_more_aft() {
    let text = skiff(500.0, 0.0, &ledger(20.0))
        .replace("angle: \"12 deg\"", "angle: \"14 deg\"")
        .replace(
            "at: [port(\"0 in\")]",
            "at: [port(\"0 in\")], bracket: (described: (setback: \"30 in\", drop: \"0 in\", weight: \"100 lb\"), bottom: \"6 in\")",
        );
    let rig = rig(&text);
    let entries = entries(&Case::new(&rig));
    let inch = 0.0254;
    let (sin, cos) = 14f64.to_radians().sin_cos();
    let engine = entries.iter().find(|entry| entry.name == "engine").unwrap();
    let top = -20.0 * sin;
    let found = engine.weight.centre.x / inch + 9.0 - (top - 30.0);
    assert!((found + 30.0 * (1.0 / cos - 1.0)).abs() < 1e-9, "{found}");
    assert!((found + 0.92).abs() < 0.01, "{found}");
    // The bracket itself hangs halfway out, halfway between its top and its lowest point.
    let bracket = entries.iter().find(|entry| (entry.weight.mass.value - 100.0 * 0.453_592_37).abs() < 1e-6).unwrap();
    let height = 0.5 * (20.0 * cos + 6.0);
    let aft = -(15.0 + height * sin) / cos;
    assert!((bracket.weight.centre.z / inch - height).abs() < 1e-9);
    assert!((bracket.weight.centre.x / inch - aft).abs() < 1e-9);
}

/// What hangs turns the bolts by its weight times how far it is aft of them, level; of the weight itself
/// the part sin θ pulls square off the transom and cos θ goes down along it.
#[test]
fn what_hangs_weighs_on_the_bolts_from_where_it_floats() {
    for on_transom in [false, true] {
        let mut text = DEMO.to_owned();
        if on_transom {
            let from = text.find("    engines_on: [").unwrap();
            let to = text.find("    comes_off: [").unwrap();
            let engines = r#"    engines_on: [(class: "four-stroke 115 hp inline-4", shaft: "25 in", at: [port("13 in"), starboard("13 in")], holes_up: 2)],
"#;
            text.replace_range(from..to, engines);
        }
        let rig = rig(&text);
        let case = Case::new(&rig);
        let entries = entries(&case);
        let (sin, cos) = rig.job.transom.angle().reading().unwrap().value.sin_cos();
        let (sin, cos) = (sin.value, cos.value);
        let strength = case.strength().unwrap();
        for footing in &strength.after.footings {
            let Footing { middle, hung, .. } = footing;
            let bolts = -middle[1] * sin;
            let (mut weight, mut moment) = (0.0, 0.0);
            let mut place = Point3::origin();
            for hung in hung {
                // What hangs beside an engine is reckoned at the engine's own place.
                if !hung.name.contains("one part in") {
                    place = centre(&entries, &hung.name);
                }
                let newtons = hung.mass.value * 9.80665;
                weight += newtons;
                moment += newtons * (place.x - bolts);
            }
            let load = footing.loads[0];
            let off = (load.moment[1] - moment) / moment;
            assert!(off.abs() < 1e-9, "{}: {off}", footing.name);
            assert!((load.force[0] + weight * sin).abs() < 1e-9 * weight);
            assert!((load.force[2] + weight * cos).abs() < 1e-9 * weight);
        }
    }
}

/// Two brackets of one name: each is looked at with its own box.
#[test]
fn a_shallow_box_wholly_under_water_is_not_excused_by_a_deep_one_of_its_name() {
    let group = |side: &str, bottom: &str, litres: f64| {
        format!(
            r#"(described: (running_weight: "100 lb", centre_aft: "9 in", centre_above: "4 in"), at: [{side}("12 in")],
            bracket: (described: (kind: box, setback: "20 in", drop: "0 in", weight: "40 lb", buoyant_volume: "{litres} L"), bottom: "{bottom}", width: "20 in"))"#
        )
    };
    let with = |groups: String| {
        let text = skiff(200.0, 0.0, &ledger(20.0));
        let from = text.find("engines_on: [").unwrap();
        let to = from + text[from..].find('\n').unwrap();
        format!("{}engines_on: [{groups}],{}", &text[..from], &text[to..])
    };
    let (deep, shallow) = (group("port", "1 in", 98.0), group("starboard", "0 in", 13.0));
    let alone = finding("stern/bracket-immersion", &with(shallow.clone()));
    assert_eq!(alone.verdict, Verdict::Warn, "{alone:?}");
    for groups in [format!("{deep}, {shallow}"), format!("{shallow}, {deep}")] {
        let both = finding("stern/bracket-immersion", &with(groups));
        assert_eq!(both.verdict, Verdict::Warn, "{both:?}");
    }
}

#[test]
fn a_loading_that_bears_the_name_of_the_measured_waterline_is_still_a_loading() {
    let name = "at the measured waterline";
    let text = DEMO.replace("    edges: [", &format!("    conditions: [(name: \"{name}\")],\n    edges: ["));
    let rig = rig(&text);
    let case = Case::new(&rig);
    let swing = case.swing();
    let above = swing.water.as_ref().unwrap();
    let named: Vec<_> = above.iter().filter(|one| one.when() == format!("in `{name}`")).collect();
    assert_eq!(named.len(), 2, "{above:?}");
    let assumed = swing.assumed.iter().map(|text| text.show(Units::Us));
    assert!(assumed.into_iter().all(|text| !text.contains(name)));
}

#[test]
fn an_edge_that_is_wet_with_nobody_at_the_rail_is_not_called_a_list() {
    let text = skiff(300.0, 0.0, &ledger(3.0));
    let finding = finding("stern/crew-to-side", &text);
    assert_eq!(finding.verdict, Verdict::Fail);
    let words = finding.remedy.unwrap().show(Units::Us);
    assert!(words.contains("lip stays under water"), "{words}");
    assert!(!words.contains("heels too far"), "{words}");
}

/// By hand: the bottom of a vee of 10 degrees rises by 27 tan 10 = 4.76 in to where the kicker hangs, so that 24 in of transom
/// there end 28.76 in over the keel; where nobody took that, the rim of the well stands 8 in over the 20 in of the cutout.
#[test]
fn a_kicker_beside_the_cutout_rests_on_the_high_corner() {
    let rest = |place: &str, more: &str| {
        let text = format!(
            "(sitting: study, boat: (craft: monohull, deadrise: \"10 deg\", transom_width: \"80 in\"), \
              transom: (height: \"20 in\", angle: \"0 deg\", cutout_width: \"30 in\", splash_well: floor(\"12 in\"){more}), \
              well: (length: \"30 in\", rim_above: \"8 in\"), steering: tiller, \
              engines_on: [(class: \"four-stroke 9.9 hp inline-2\", shaft: \"25 in\", at: [{place}], holes_up: 0)])"
        );
        let rig = rig(&text);
        let case = Case::new(&rig);
        let engines = case.swing().engines.as_ref().unwrap_or_else(|why| panic!("{why:?}"));
        engines[0].rest.z / 0.0254
    };
    let taken = ", heights: [(at: port(\"27 in\"), height: \"24 in\")]";
    assert!((rest("port(\"27 in\")", taken) - 28.7608).abs() < 1e-3);
    assert!((rest("port(\"27 in\")", "") - 28.0).abs() < 1e-9);
    assert!((rest("centre", "") - 20.0).abs() < 1e-9);
}
