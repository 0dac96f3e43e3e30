//! Traps on the way in: what a job leaves out, or says in a way that could be meant otherwise, is told.

use super::{SKIFF, assumed, finding, opened, questions, skiff, summary, verdict};

/// The skiff with a kicker beside her engines.
fn with_kicker(kicker: &str) -> String {
    skiff("    engines_on: [\n", &format!("    engines_on: [\n        ({kicker}),\n"))
}

#[test]
fn a_measured_setback_near_its_brackets_own_is_taken_and_a_far_one_is_asked_about() {
    let with = |setback: &str| {
        skiff("propellers: [left, right],", &format!("propellers: [left, right], setback: \"{setback}\","))
    };
    assert!(questions(&opened(&with("31 in"))).is_empty());
    let far = opened(&with("1-1/2 in"));
    assert_eq!(questions(&far).len(), 1);
    assert_ne!(verdict(&far, "height/plate-window"), "pass");
}

#[test]
fn a_small_engine_beside_large_ones_is_taken_as_an_auxiliary_and_that_is_told() {
    let kicker =
        opened(&with_kicker("class: \"four-stroke 9.9 hp inline-2\", shaft: \"25 in\", at: [port(\"36 in\")]"));
    assert_eq!(verdict(&kicker, "power/plate-limit"), verdict(&opened(SKIFF), "power/plate-limit"));
    assert!(assumed(&kicker).contains("write role: main"), "{}", assumed(&kicker));
    let main = opened(&with_kicker(
        "class: \"four-stroke 9.9 hp inline-2\", shaft: \"25 in\", at: [port(\"36 in\")], role: main",
    ));
    assert_eq!(verdict(&main, "power/plate-limit"), "fail");
    assert!(!assumed(&main).contains("write role: main"));
}

#[test]
fn an_engine_on_an_auxiliary_bracket_is_one() {
    let text = with_kicker(
        "class: \"four-stroke 40 hp inline-3\", shaft: \"20 in\", at: [port(\"36 in\")], bracket: (class: \"auxiliary lifting bracket\")",
    );
    assert!(assumed(&opened(&text)).contains("auxiliary engine is taken to bring her home"));
}

#[test]
fn a_loading_says_that_no_fuel_is_in_it() {
    let start = SKIFF.find("        tanks: [").expect("tanks");
    let end = start + SKIFF[start..].find("        ],\n").expect("their end") + "        ],\n".len();
    let dry = opened(&format!("{}{}", &SKIFF[..start], &SKIFF[end..]));
    assert!(assumed(&dry).contains("No loading has fuel in it"), "{}", assumed(&dry));
    let case = dry.case();
    let names: Vec<&str> = case.float().expect("afloat").loadings.iter().map(|loaded| loaded.name.as_str()).collect();
    assert!(names.contains(&"crew aft, no fuel told"), "{names:?}");
    assert!(!names.iter().any(|name| name.contains("full fuel")), "{names:?}");
}

#[test]
fn what_lies_where_nobody_said_is_told() {
    let low = opened(&skiff("forward: \"6 ft\", above: \"24 in\"", "forward: \"6 ft\""));
    assert!(
        assumed(&low).contains("lie on the bottom, as no height above it is given: baskets and gear"),
        "{}",
        assumed(&low)
    );
    assert!(!assumed(&opened(SKIFF)).contains("lie on the bottom, as no height above it is given: baskets"));
}

const PLATED: &str = "sitting: before_ordering, boat: (craft: monohull, length: \"16 ft\", beam: \"6 ft\", transom_width: \"5 ft\", bottom: vee), \
    transom: (height: \"20 in\"), steering: remote_mechanical, \
    plate: capacity(persons: 5, persons_weight: \"700 lb\", total_weight: \"1,050 lb\", power: \"60 hp\"), \
    engines_on: [(class: \"four-stroke 40 hp inline-3\", shaft: \"20 in\", at: [centre])]";

#[test]
fn fuel_that_nobody_told_of_is_said_to_be_counted() {
    let untold = opened(&format!("({PLATED})"));
    assert!(
        summary(&untold, "weight/capacity-left").contains("portable fuel tanks are taken off"),
        "{}",
        summary(&untold, "weight/capacity-left")
    );
    let tank =
        opened(&format!("({PLATED}, weights: (tanks: [(what: \"tank\", capacity: \"40 gal\", forward: \"3 ft\")]))"));
    assert!(summary(&tank, "weight/capacity-left").contains("tanks built in"));
    let told = opened(&format!("({})", PLATED.replacen("bottom: vee", "bottom: vee, fuel: permanent_tanks", 1)));
    assert!(!summary(&told, "weight/capacity-left").contains("fuel"));
}

#[test]
fn five_tape_readings_and_two_classes_give_a_first_figure_for_the_stern() {
    let text = "(sitting: before_ordering, boat: (length: \"17 ft\", beam: \"7 ft\", bottom: vee), \
        engines_off: [(class: \"two-stroke 90 hp inline-3\", shaft: \"20 in\", at: [centre])], \
        engines_on: [(class: \"four-stroke 150 hp inline-4\", shaft: \"20 in\", at: [centre])])";
    let said = summary(&opened(text), "weight/old-to-new");
    assert!(
        said.contains("her transom comes to lie") && said.contains("a first figure from length and beam"),
        "{said}"
    );
}

/// The first figure holds for boats that are floated: her transom comes to lie within its range, or a little beside it.
#[test]
fn the_first_figure_holds_for_boats_that_are_floated() {
    use sternknee::physics::weight::{STERN_OF_VEE, stern_sinks};
    use sternknee::quantity::{Dimensioned, feet, inches, pounds};
    use sternknee::working::{Sheet, Term};
    // Her transom sits 3-15/16 in lower under 709 lb more: 24 ft 3 in by 8 ft 6 in, and a box that floats.
    let more = Term::new("W", pounds(709.0));
    let [least, most] = stern_sinks(&mut Sheet::default(), &more, feet(24.25), feet(8.5), STERN_OF_VEE);
    let floated = inches(3.0 + 15.0 / 16.0);
    assert!(least <= floated && floated <= most, "{} {}", least.si(), most.si());
}

#[test]
fn the_bare_boats_centre_is_estimated_at_the_careful_end_and_told() {
    let start = SKIFF.find("    afloat: (").expect("marks");
    let end = start + SKIFF[start..].find("\n    ),\n").expect("their end") + "\n    ),\n".len();
    let unmarked = format!("{}{}", &SKIFF[..start], &SKIFF[end..]);
    let weighed = |centre: &str| {
        unmarked.replacen(
            "    weights: (\n",
            &format!("    weights: (\n        boat: (weight: \"3,600 lb\"{centre}),\n"),
            1,
        )
    };
    let guessed = opened(&weighed(""));
    assert!(assumed(&guessed).contains("the careful end of the"), "{}", assumed(&guessed));
    let height = |job: &sternknee::front_door::Opened| finding(job, "stern/well-edge").found.expect("a height").si;
    assert!(height(&guessed) < height(&opened(&weighed(", forward: \"11 ft\""))));
}

#[test]
fn a_top_speed_that_nobody_can_know_yet_is_estimated() {
    let text = skiff("top_speed: (value: \"38 mph\", basis: assumed, note: \"the dealer's guess\"),\n        ", "");
    let rule = sternknee::rules::find("strength/bolts-tension").expect("the rule");
    let guessed = opened(&text);
    let case = guessed.case();
    assert_ne!((rule.judge)(&case).verdict.word(), "unmeasured");
    let told = case.strength().expect("strength").assumed.iter().map(|text| text.show(sternknee::quantity::Units::Us));
    assert!(told.into_iter().any(|text| text.contains("Top speed is taken as")));
    let fitted = opened(&text.replacen("before_ordering", "as_fitted", 1));
    assert_eq!((rule.judge)(&fitted.case()).verdict.word(), "unmeasured");
}

#[test]
fn of_a_fitted_engine_the_upper_holes_follow_from_its_holes() {
    let text = "(sitting: as_fitted, transom: (height: \"25 in\", cutout: none, splash_well: none, holes: [\
        (at: port(\"6-7/16 in\"), below: \"1-1/2 in\"), (at: starboard(\"6-7/16 in\"), below: \"1-1/2 in\")]), \
        engines_on: [(class: \"four-stroke 150 hp inline-4\", shaft: \"25 in\", at: [centre])])";
    assert_eq!(verdict(&opened(text), "fit/top-edge"), "fail");
}

#[test]
fn the_wells_rim_is_an_edge() {
    let text = skiff("        (name: \"motorwell lip\", kind: well, forward: \"20 in\", up: \"27 in\"),\n", "");
    let said = opened(&text);
    assert!(summary(&said, "stern/well-edge").contains("motorwell's rim"), "{}", summary(&said, "stern/well-edge"));
    assert!(assumed(&said).contains("as it was taken for the tilt"));
}
