//! Where the power rules change their mind. The figures of 33 CFR 183.53 stand in
//! `tests/published/cfr_33_183.rs`.

use sternknee::quantity::Units;
use sternknee::rules::Verdict::{NotApplicable, Pass, Unmeasured, Warn};
use sternknee::rules::mend::Mend;
use uom::si::power::horsepower;

use crate::common::mended::changed;
use crate::common::{finding, near, rig, step, study, verdict, with_engine};

fn two_engines(powers: (&str, &str), role: &str) -> String {
    format!(
        "engines_on: [(described: (power: \"{}\"), at: [port(\"14 in\")]), \
         (described: (power: \"{}\"), at: [starboard(\"14 in\")], role: {role})]",
        powers.0, powers.1
    )
}

/// 33 CFR 183.23: the plate limits the engines together; common practice: an auxiliary does not count.
#[test]
fn main_engines_count_together_and_auxiliaries_do_not() {
    let of = |role| {
        let job = study(&format!("plate: builders(power: \"200 hp\"), {}", two_engines(("150 hp", "100 hp"), role)));
        finding("power/plate-limit", &job)
    };
    assert_eq!(of("auxiliary").verdict, Pass);
    let over = of("main");
    assert_eq!(over.verdict, sternknee::rules::Verdict::Fail);
    near(over.margin().unwrap().in_unit(Units::Us).0, -50.0, 1e-9);
    assert!(of("auxiliary").summary.show(Units::Us).contains("not counted"));
}

/// 33 CFR 183.23: a plate's own figure comes before the builder's word; without one the word holds.
#[test]
fn the_builders_rating_stands_in_for_a_plate_without_power() {
    let of = |plate: &str| {
        let fields = format!("boat: (power_rating: \"100 hp\"), plate: {plate}");
        verdict("power/plate-limit", &with_engine("power: \"110 hp\"", &fields))
    };
    assert_eq!(of("capacity(persons: 5)"), sternknee::rules::Verdict::Fail);
    assert_eq!(of("illegible"), sternknee::rules::Verdict::Fail);
    assert_eq!(of("none"), sternknee::rules::Verdict::Fail);
    assert_eq!(of("capacity(power: \"120 hp\")"), Pass);
}

/// Common practice, no source: the trade's pairs. 150 PS are 110.3 kW, 150 hp 111.9; a plate in whole kilowatts stands
/// for half of one either way.
#[test]
fn a_plate_in_kilowatts_is_the_class_that_the_trade_takes_it_for() {
    let of = |plate: &str, engine: &str| {
        let job = with_engine(&format!("power: \"{engine}\""), &format!("plate: builders(power: \"{plate}\")"));
        let found = finding("power/plate-limit", &job);
        assert!(found.verdict != Pass || found.margin().unwrap().si >= 0.0, "{plate} {engine}");
        found.verdict
    };
    let fails = sternknee::rules::Verdict::Fail;
    for (plate, engine, expected) in [
        ("110 kW", "150 hp", Pass),
        ("112 kW", "150 hp", Pass),
        ("147 kW", "200 hp", Pass),
        ("184 kW", "250 hp", Pass),
        ("186 kW", "250 hp", Pass),
        ("221 kW", "300 hp", Pass),
        ("224 kW", "300 hp", Pass),
        ("84.6 kW", "115 hp", Pass),
        ("85 kW", "115 hp", Pass),
        ("150 hp", "112 kW", Pass),
        ("150 PS", "150 hp", Pass),
        ("110 kW", "150 PS", Pass),
        ("110 kW", "152 hp", fails),
        ("110 kW", "175 hp", fails),
        ("109 kW", "150 hp", fails),
        ("110.0 kW", "150 hp", fails),
        ("150 hp", "113 kW", fails),
        ("110 kW", "111 kW", fails),
        ("150 hp", "151 hp", fails),
        ("150 PS", "151 hp", fails),
    ] {
        assert_eq!(of(plate, engine), expected, "{plate} {engine}");
    }
    let job = with_engine("power: \"150 hp\"", "plate: builders(power: \"110 kW\")");
    assert!(finding("power/plate-limit", &job).summary.show(Units::Us).contains("the same to the trade"));
    // Two of 150 hp on a plate of twice 110 kW; two of 175 hp are too much.
    let pair = |power: &str| {
        verdict(
            "power/plate-limit",
            &study(&format!("plate: builders(power: \"220 kW\"), {}", two_engines((power, power), "main"))),
        )
    };
    assert_eq!(pair("150 hp"), Pass);
    assert_eq!(pair("175 hp"), fails);
}

/// 33 CFR 183.53(a): 150 hp by the formula, and a plate of 112 kW: the same figure rounded.
#[test]
fn the_formula_is_held_against_a_plate_in_kilowatts_within_its_rounding() {
    let of = |plate: &str| {
        let boat = "boat: (craft: monohull, bottom: vee, length: \"16 ft\", transom_width: \"7.5 ft\"), \
                    transom: (height: \"20 in\"), steering: remote_hydraulic";
        verdict("power/formula-limit", &study(&format!("{boat}, plate: capacity(power: \"{plate}\")")))
    };
    assert_eq!(of("112 kW"), Pass);
    assert_eq!(of("113 kW"), Warn);
    assert_eq!(of("150 hp"), Pass);
}

#[test]
fn an_illegible_plate_waits_and_a_missing_one_does_not_apply() {
    let of = |plate: &str| {
        let job = with_engine("power: \"110 hp\"", &format!("plate: {plate}"));
        (verdict("power/plate-limit", &job), verdict("power/too-little", &job))
    };
    assert_eq!(of("illegible"), (Unmeasured, Unmeasured));
    assert_eq!(of("none"), (NotApplicable, NotApplicable));
}

/// Common practice, no source: 0.6 of the rated power.
#[test]
fn too_little_begins_under_six_tenths_of_the_rating() {
    let of = |power: &str| {
        let job = with_engine(&format!("power: \"{power}\""), "plate: builders(power: \"200 hp\")");
        finding("power/too-little", &job)
    };
    assert_eq!(of("120 hp").verdict, Pass);
    assert_eq!(of("119.9 hp").verdict, Warn);
    near(step(&of("120 hp"), "Pl").in_unit(Units::Us).0, 120.0, 1e-9);
}

/// 33 CFR 183.53(a), 60 hp for 16 ft by 6.5 ft: plate and engines at the limit and a little over it.
#[test]
fn the_formula_holds_against_plate_and_engines() {
    let boat = "boat: (craft: monohull, bottom: vee, length: \"16 ft\", transom_width: \"6.5 ft\"), \
                steering: tiller";
    let of = |power: &str, plate: &str| {
        let engine = format!("power: \"{power}\"");
        verdict("power/formula-limit", &with_engine(&engine, &format!("{boat}{plate}")))
    };
    assert_eq!(of("90 hp", ", plate: capacity(power: \"60 hp\")"), Pass);
    for plate in [", plate: capacity(power: \"60.1 hp\")", ", plate: builders(power: \"60.1 hp\")"] {
        assert_eq!(of("60 hp", plate), Pass, "engines within both are none the worse for the plate");
        assert_eq!(of("60.1 hp", plate), Warn);
    }
    for plate in [", plate: none", ", plate: illegible"] {
        assert_eq!(of("60 hp", plate), Pass);
        assert_eq!(of("60.1 hp", plate), sternknee::rules::Verdict::Fail);
    }
    // A plate that was not read yet, or whose power was not: too much is warned of, and the plate asked for.
    for plate in ["", ", plate: capacity(persons: 4)"] {
        assert_eq!(of("60 hp", plate), Pass);
        assert_eq!(of("60.1 hp", plate), Warn);
    }
}

/// Common practice, no source: alike in class, power and shaft; the outer pair of opposed hands.
#[test]
fn a_pair_must_be_alike_and_opposed() {
    let pair = |propellers: &str| {
        let job = study(&format!(
            "engines_on: [(described: (power: \"90 hp\"), shaft: \"20 in\", \
             at: [port(\"14 in\"), starboard(\"14 in\")], propellers: [{propellers}])]"
        ));
        verdict("power/matched-pair", &job)
    };
    assert_eq!(pair("left, right"), Pass);
    assert_eq!(pair("right, left"), Pass);
    assert_eq!(pair("counter, counter"), Pass);
    assert_eq!(pair("right, right"), Warn);
    assert_eq!(pair("left, left"), Warn);
    assert_eq!(pair("counter, right"), Warn);
    let unlike = |one: &str, other: &str| {
        let job = study(&format!(
            "engines_on: [({one}, at: [port(\"14 in\")], propellers: [left]), \
             ({other}, at: [starboard(\"14 in\")], propellers: [right])]"
        ));
        finding("power/matched-pair", &job).summary.show(Units::Us)
    };
    let class = "class: \"four-stroke 150 hp inline-4\"";
    assert!(unlike("described: (power: \"90 hp\")", "described: (power: \"91 hp\")").contains("differ"));
    assert!(
        unlike(&format!("{class}, shaft: \"20 in\""), &format!("{class}, shaft: \"25 in\"")).contains("shaft length")
    );
    assert!(unlike(class, "class: \"four-stroke 115 hp inline-4\"").contains("class"));
}

/// Of three, the outer two are held against each other.
#[test]
fn the_middle_of_three_may_turn_either_way() {
    let job = |hands: &str| {
        study(&format!(
            "engines_on: [(described: (power: \"90 hp\"), shaft: \"20 in\", \
             at: [port(\"28 in\"), centre, starboard(\"28 in\")], propellers: [{hands}])]"
        ))
    };
    assert_eq!(verdict("power/matched-pair", &job("left, left, right")), Pass);
    assert_eq!(verdict("power/matched-pair", &job("right, left, right")), Warn);
}

/// Two engines of 150 hp on a plate of 200 hp become two of 100 hp; an auxiliary stays what it is.
#[test]
fn main_engines_that_are_too_strong_become_weaker_in_equal_parts() {
    let job = study(
        "plate: builders(power: \"200 hp\"), \
         engines_on: [(described: (power: \"150 hp\"), at: [port(\"14 in\"), starboard(\"14 in\")]), \
                      (described: (power: \"9.9 hp\"), at: [port(\"40 in\")], role: auxiliary)]",
    );
    let over = finding("power/plate-limit", &job);
    let [Mend::Change(changes)] = over.mends.as_slice() else { panic!("{:?}", over.mends) };
    let told = changed(&job, changes).expect("a job");
    let rig = rig(&told);
    let powers: Vec<f64> = rig
        .after
        .engines()
        .map(|(_, engine)| engine.power.reading().expect("told").value.get::<horsepower>())
        .collect();
    for (power, expected) in powers.iter().zip([100.0, 100.0, 9.9]) {
        near(*power, expected, 2e-3);
    }
    assert_eq!(powers.len(), 3);
    assert_eq!(verdict("power/plate-limit", &told), Pass);
}
