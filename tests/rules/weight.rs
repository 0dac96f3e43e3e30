//! Where the weight rules change their mind. Table figures: ABYC S-30, table 1A.

use proptest::prelude::*;
use sternknee::physics::weight;
use sternknee::quantity::{Dimensioned, Kind, Units, feet, parse, pounds};
use sternknee::rules::Verdict::{Fail, NotApplicable, Pass, Unmeasured, Warn};
use sternknee::rules::mend::Mend;
use sternknee::working::Sheet;

use crate::common::mended::changed;
use crate::common::{at_most, finding, near, step, study, verdict, with_engine};

fn us(finding: &sternknee::rules::Finding, symbol: &str) -> f64 {
    step(finding, symbol).in_unit(Units::Us).0
}

/// Everything that hangs aft counts: engines, bracket, what is marked so; not what stands in the boat.
#[test]
fn engines_bracket_and_rigging_hang_on_the_transom() {
    let job = |rating: &str| {
        study(&format!(
            "boat: (transom_rating: \"{rating}\"), \
             engines_on: [(described: (running_weight: \"300 lb\"), \
               at: [port(\"14 in\"), starboard(\"14 in\")], \
               bracket: (described: (weight: \"90 lb\")))], \
             goes_on: [(what: \"tie bar\", weight: \"10 lb\", on_transom: true), \
                       (what: \"battery\", weight: \"58 lb\")]"
        ))
    };
    assert_eq!(verdict("weight/transom-rating", &job("700 lb")), Pass);
    let over = finding("weight/transom-rating", &job("699 lb"));
    assert_eq!(over.verdict, Fail);
    near(us(&over, "W"), 700.0, 1e-9);
    near(over.margin().unwrap().in_unit(Units::Us).0, -1.0, 1e-9);
    assert!(over.remedy.unwrap().show(Units::Us).contains("Take 1.0 lb off"));
}

/// ABYC S-30: running is 1.05 of dry, where only the dry weight is known; a longer shaft weighs more.
#[test]
fn a_dry_weight_becomes_a_running_one_by_the_tables_ratio() {
    let job = with_engine(
        "dry_weight: \"400 lb\", shafts: [(name: \"20 in\", rest_to_plate: \"20 in\", extra_weight: \"7 lb\")]",
        "boat: (transom_rating: \"427 lb\")",
    );
    near(us(&finding("weight/transom-rating", &job), "W"), 427.0, 1e-9);
}

/// ABYC S-30: 200 hp over two engines is the row of 95 to 104.9 hp, 481 lb, twice; over one 685 lb.
#[test]
fn the_plates_power_is_shared_over_the_old_engines() {
    let job = |off: &str, weight: &str| {
        with_engine(
            &format!("running_weight: \"{weight}\""),
            &format!("plate: builders(power: \"200 hp\"), engines_off: [{off}]"),
        )
    };
    let pair = "(described: (running_weight: \"400 lb\"), at: [port(\"14 in\"), starboard(\"14 in\")])";
    near(at_most(&finding("weight/rated-basis", &job(pair, "962 lb"))), 962.0, 1e-9);
    assert_eq!(verdict("weight/rated-basis", &job(pair, "962 lb")), Pass);
    // A mounting sheet is good to 1 %: 971.7 lb are 9.7 over, known to 9.7.
    let close = finding("weight/rated-basis", &job(pair, "971.7 lb"));
    assert_eq!(close.verdict, Pass);
    assert!(close.summary.show(Units::Us).contains("no more over it than the weights are known to"));
    let over = finding("weight/rated-basis", &job(pair, "972 lb"));
    assert_eq!(over.verdict, Warn);
    assert!(over.remedy.unwrap().show(Units::Us).contains("Reckon 10 lb less"));
    near(at_most(&finding("weight/rated-basis", &job("", "685 lb"))), 685.0, 1e-9);
    let auxiliary = "(described: (running_weight: \"400 lb\")), \
        (described: (running_weight: \"60 lb\"), at: [port(\"30 in\")], role: auxiliary)";
    near(at_most(&finding("weight/rated-basis", &job(auxiliary, "685 lb"))), 685.0, 1e-9);
}

/// 33 CFR 183.41 and ABYC S-30, 35 to 64.9 hp: controls 14, battery 45, portable fuel 100 lb.
/// 1,000 − 300 − 159 = 541 lb with portable tanks (or none said), 641 lb with permanent ones.
#[test]
fn capacity_left_is_total_less_engines_and_gear() {
    let job = |fuel: &str| {
        with_engine(
            "power: \"40 hp\", running_weight: \"300 lb\"",
            &format!(
                "boat: (craft: monohull, length: \"16 ft\"{fuel}), \
                 plate: capacity(persons: 4, persons_weight: \"541 lb\", total_weight: \"1,000 lb\")"
            ),
        )
    };
    for fuel in ["", ", fuel: portable_tanks"] {
        let found = finding("weight/capacity-left", &job(fuel));
        assert_eq!(found.verdict, Pass);
        near(us(&found, "Wm"), 300.0, 1e-9);
        near(us(&found, "Wg"), 159.0, 1e-9);
        near(us(&found, "Wp"), 541.0, 1e-9);
        near(us(&found, "N"), 4.0, 0.0);
    }
    let permanent = finding("weight/capacity-left", &job(", fuel: permanent_tanks"));
    near(us(&permanent, "Wg"), 59.0, 1e-9);
    near(us(&permanent, "Wp"), 641.0, 1e-9);
    near(us(&permanent, "N"), 5.0, 0.0);
}

/// ABYC S-30, 7 to 10.9 hp: controls 5, battery 20, portable fuel 50 lb. A tiller has no controls, and pulled by
/// hand no battery; from 25 hp on it has one (45 lb), and 100 lb of portable fuel.
#[test]
fn a_tiller_is_charged_its_motor_and_portable_tank() {
    let gear = |steering: &str, power: &str| {
        let job = with_engine(
            &format!("power: \"{power}\", running_weight: \"100 lb\""),
            &format!(
                "boat: (craft: monohull, length: \"12 ft\"), steering: {steering}, \
                 plate: capacity(persons: 1, total_weight: \"600 lb\")"
            ),
        );
        us(&finding("weight/capacity-left", &job), "Wg")
    };
    near(gear("tiller", "9.9 hp"), 50.0, 1e-9);
    near(gear("remote_mechanical", "9.9 hp"), 75.0, 1e-9);
    near(gear("tiller", "25 hp"), 145.0, 1e-9);
    near(gear("remote_mechanical", "25 hp"), 154.0, 1e-9);
}

/// A class is worth 5 % either way: 10 lb short with a class of 300 lb is no warning; with a weighed one it is.
#[test]
fn a_plate_is_missed_by_more_than_the_engines_weight_is_known_to() {
    let of = |basis: &str| {
        let job = with_engine(
            &format!("power: \"40 hp\", running_weight: (value: \"300 lb\", basis: {basis})"),
            "boat: (craft: monohull, length: \"16 ft\"), \
             plate: capacity(persons: 4, persons_weight: \"551 lb\", total_weight: \"1,000 lb\")",
        );
        finding("weight/capacity-left", &job)
    };
    assert_eq!(of("catalog").verdict, Pass);
    assert!(of("catalog").summary.show(Units::Us).contains("known to, 15 lb"));
    assert_eq!(of("builder").verdict, Warn);
}

/// 33 CFR 183.41: less than nothing left holds nobody, and never a negative number of persons.
#[test]
fn nobody_fits_where_the_engines_take_it_all() {
    let job = with_engine(
        "power: \"40 hp\", running_weight: \"800 lb\"",
        "boat: (craft: monohull, length: \"16 ft\"), plate: capacity(persons: 4, total_weight: \"700 lb\")",
    );
    let found = finding("weight/capacity-left", &job);
    assert_eq!(found.verdict, Fail);
    assert!(found.summary.show(Units::Us).contains("enough for 0"));
}

/// 33 CFR 183.21 and 183.31: 20 ft is no longer under 20 ft.
#[test]
fn loading_and_flotation_rules_end_at_twenty_feet() {
    for id in ["weight/capacity-left", "weight/swamped-flotation"] {
        let of = |craft: &str, length: &str| {
            let fields = format!(
                "boat: (craft: {craft}, length: \"{length}\"), \
                 plate: capacity(persons: 1, total_weight: \"600 lb\", power: \"9.9 hp\")"
            );
            verdict(id, &with_engine("power: \"9.9 hp\", running_weight: \"100 lb\"", &fields))
        };
        assert_eq!(of("monohull", "19 ft 11-15/16 in"), Pass, "{id}");
        assert_eq!(of("monohull", "20 ft"), NotApplicable, "{id}");
        assert_eq!(of("inflatable", "16 ft"), NotApplicable, "{id}");
    }
}

/// ABYC S-30: swamped is 0.85 of running: 300 lb are 255, the table's own figure for 35 to 64.9 hp; the table is
/// rounded to whole pounds, and a weight from a sheet is good to 1 %: 303.6 lb are 258.1, known to 2.6 and half a pound.
#[test]
fn swamped_weight_at_the_tables_figure_passes() {
    let of = |plate: &str, off: &str, weight: &str| {
        let fields = format!("boat: (craft: monohull, length: \"16 ft\"), plate: {plate}, engines_off: [{off}]");
        finding("weight/swamped-flotation", &with_engine(&format!("running_weight: \"{weight}\""), &fields))
    };
    let plate = "capacity(power: \"40 hp\")";
    assert_eq!(of(plate, "", "300 lb").verdict, Pass);
    assert_eq!(of(plate, "", "303.6 lb").verdict, Pass);
    assert_eq!(of(plate, "", "303.7 lb").verdict, Warn);
    // 80 hp over two engines: twice the row of 35 to 64.9 hp.
    let pair = "(described: (running_weight: \"150 lb\"), at: [port(\"14 in\"), starboard(\"14 in\")])";
    let shared = of("capacity(power: \"80 hp\")", pair, "600 lb");
    near(us(&shared, "Wb"), 510.0, 1e-9);
    assert_eq!(shared.verdict, Pass);
    // No power on the plate: the old engines are the basis.
    assert_eq!(of("none", pair, "300 lb").verdict, Pass);
    assert_eq!(of("none", pair, "304 lb").verdict, Warn);
    assert_eq!(of("none", "", "300 lb").verdict, Unmeasured);
}

/// Half a degree of trim: 0.7 · 62.4 lb/ft³ / 6 · tan 0.5° · (0.8 · 8.5 ft) · (0.9 · 20 ft)² = 140 lb on 20 ft.
/// The weights are good to 1 % each: 9 lb of 400 and 549.
#[test]
fn what_trims_her_half_a_degree_is_the_limit_for_weight_on_the_stern() {
    let of = |weight: &str, boat: &str| {
        let job = with_engine(
            &format!("running_weight: \"{weight}\""),
            &format!(
                "boat: ({boat}), engines_off: [(described: (running_weight: \"350 lb\"))], \
                 comes_off: [(what: \"old cylinder\", weight: \"50 lb\", on_transom: true), \
                             (what: \"oil tank\", weight: \"26 lb\")]"
            ),
        );
        finding("weight/old-to-new", &job)
    };
    let twenty = "length: \"20 ft\", beam: \"8.5 ft\"";
    let unfelt = 0.7 * 62.4 / 6.0 * 0.5_f64.to_radians().tan() * 0.8 * 8.5 * 18.0 * 18.0;
    near(us(&of("500 lb", twenty), "Wu"), unfelt, 1e-6);
    assert_eq!(of("549 lb", twenty).verdict, Pass);
    assert_eq!(of("551 lb", twenty).verdict, Warn);
    near(us(&of("549 lb", twenty), "ΔW"), 149.0, 1e-9);
    // The same engine on a shorter boat is too much.
    assert_eq!(of("500 lb", twenty).verdict, Pass);
    assert_eq!(of("500 lb", "length: \"16 ft\", beam: \"6.5 ft\"").verdict, Warn);
    // No beam: four tenths of the length.
    assert_eq!(of("500 lb", "length: \"20 ft\"").verdict, Pass);
    // No length: only what is no heavier passes.
    assert_eq!(of("408 lb", "").verdict, Pass);
    assert_eq!(of("409 lb", "").verdict, Unmeasured);
}

proptest! {
    /// A longer or broader boat bears more at her stern.
    #[test]
    fn a_longer_or_broader_boat_never_bears_less_at_her_stern(
        length in 8.0_f64..40.0, beam in 4.0_f64..12.0, longer in 0.0_f64..10.0, broader in 0.0_f64..4.0,
    ) {
        let of = |length, beam| weight::unfelt(&mut Sheet::default(), feet(length), feet(beam)).value();
        prop_assert!(of(length, beam) <= of(length + longer, beam + broader));
    }
}

/// A bracket's ratings hold for its own engines together, not for those beside it.
#[test]
fn a_bracket_is_held_against_the_engines_on_it() {
    let of = |power: &str, weight: &str| {
        let job = study(&format!(
            "engines_on: [(described: (power: \"100 hp\", running_weight: \"200 lb\"), \
               at: [port(\"14 in\"), starboard(\"14 in\")], \
               bracket: (described: (engines: 2, rated_power: \"{power}\", rated_weight: \"{weight}\"))), \
             (described: (power: \"9.9 hp\", running_weight: \"95 lb\"), at: [port(\"40 in\")], role: auxiliary)]"
        ));
        verdict("weight/bracket-rating", &job)
    };
    assert_eq!(of("200 hp", "400 lb"), Pass);
    assert_eq!(of("199.9 hp", "400 lb"), Fail);
    assert_eq!(of("200 hp", "399.9 lb"), Pass, "both are told as 400 lb");
    assert_eq!(of("200 hp", "399 lb"), Fail);
}

/// 1,000 lb on a rating of 900 lb: two engines of 450 lb each, and nothing to spare.
#[test]
fn a_pair_that_is_too_heavy_is_told_what_each_may_weigh() {
    let job = study(
        "boat: (transom_rating: \"900 lb\"), \
         engines_on: [(described: (running_weight: \"500 lb\"), at: [port(\"14 in\"), starboard(\"14 in\")])]",
    );
    let over = finding("weight/transom-rating", &job);
    let [Mend::Change(changes), ..] = over.mends.as_slice() else { panic!("{:?}", over.mends) };
    assert_eq!(changes.len(), 1);
    assert_eq!(changes[0].entry, "engines_on[0].weighed");
    let told = changes[0].value.as_deref().expect("a weight").trim_matches('"');
    near(parse(told, Kind::Mass).expect("a weight").si / pounds(1.0).si(), 450.0, 1e-3);
    let after = finding("weight/transom-rating", &changed(&job, changes).expect("a job"));
    assert_eq!(after.verdict, Pass);
}

/// What comes off hangs there: its shaft is what somebody read off it, whatever its class is sold with. It weighs what the next of
/// its class does.
#[test]
fn an_old_engine_has_the_shaft_that_it_has() {
    let of = |shaft: &str| {
        finding(
            "weight/old-to-new",
            &study(&format!(
                "boat: (length: \"20 ft\", beam: \"8 ft\", bottom: vee), \
                 engines_off: [(class: \"two-stroke 40 hp inline-3\", shaft: \"{shaft}\", at: [centre])], \
                 engines_on: [(class: \"four-stroke 40 hp inline-3\", shaft: \"20 in\", at: [centre])]"
            )),
        )
    };
    assert_eq!(of("25 in").found, of("20 in").found);
    assert!(of("25 in").found.is_some());
}
