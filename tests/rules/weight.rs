//! Where the weight rules change their mind. Table figures: ABYC S-30, table 1A.

use sternknee::quantity::Units;
use sternknee::rules::Verdict::{Fail, NotApplicable, Pass, Unmeasured, Warn};

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
    let over = finding("weight/rated-basis", &job(pair, "963 lb"));
    assert_eq!(over.verdict, Warn);
    assert!(over.remedy.unwrap().show(Units::Us).contains("Reckon 1.0 lb less"));
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
/// rounded to whole pounds, so half a pound decides nothing (300.5 lb are 255.4).
#[test]
fn swamped_weight_at_the_tables_figure_passes() {
    let of = |plate: &str, off: &str, weight: &str| {
        let fields = format!("boat: (craft: monohull, length: \"16 ft\"), plate: {plate}, engines_off: [{off}]");
        finding("weight/swamped-flotation", &with_engine(&format!("running_weight: \"{weight}\""), &fields))
    };
    let plate = "capacity(power: \"40 hp\")";
    assert_eq!(of(plate, "", "300 lb").verdict, Pass);
    assert_eq!(of(plate, "", "300.5 lb").verdict, Pass);
    assert_eq!(of(plate, "", "301 lb").verdict, Warn);
    // 80 hp over two engines: twice the row of 35 to 64.9 hp.
    let pair = "(described: (running_weight: \"150 lb\"), at: [port(\"14 in\"), starboard(\"14 in\")])";
    let shared = of("capacity(power: \"80 hp\")", pair, "600 lb");
    near(us(&shared, "Wb"), 510.0, 1e-9);
    assert_eq!(shared.verdict, Pass);
    // No power on the plate: the old engines are the basis.
    assert_eq!(of("none", pair, "300 lb").verdict, Pass);
    assert_eq!(of("none", pair, "301 lb").verdict, Warn);
    assert_eq!(of("none", "", "300 lb").verdict, Unmeasured);
}

/// Common practice, no source: 15 % more on the stern is taken without a second thought.
#[test]
fn fifteen_per_cent_more_on_the_stern_is_the_limit() {
    let of = |weight: &str| {
        let job = with_engine(
            &format!("running_weight: \"{weight}\""),
            "engines_off: [(described: (running_weight: \"350 lb\"))], \
             comes_off: [(what: \"old cylinder\", weight: \"50 lb\", on_transom: true), \
                         (what: \"oil tank\", weight: \"26 lb\")]",
        );
        finding("weight/old-to-new", &job)
    };
    assert_eq!(of("459.9 lb").verdict, Pass);
    assert_eq!(of("460.1 lb").verdict, Warn);
    let found = of("461 lb");
    near(us(&found, "Wo"), 400.0, 1e-9);
    near(us(&found, "ΔW"), 61.0, 1e-9);
    near(us(&found, "Wl"), 460.0, 1e-9);
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
    assert_eq!(of("200 hp", "399.9 lb"), Fail);
}
