//! 33 CFR part 183 (US, monohull outboard boats under 20 ft). The clause stands beside each check.
//! Whole horsepower and whole persons are exact; values on the way to them are held to 1e-9, the
//! rounding of a product of lengths that were stored in metres.

use assert_cmd::cargo::cargo_bin_cmd;
use serde_json::Value;
use sternknee::physics::capacity::{self, Arrangement};
use sternknee::quantity::{Dimensioned, feet, horsepower, pounds};
use sternknee::rules::Verdict;
use sternknee::working::{Sheet, Term};

use crate::common::{at_most, finding, near, rig, step, study, verdict, with_engine};

const FORMULA: &str = "power/formula-limit";

/// What `check` prints of a rule for a job with just these fields.
fn from_the_command_line(id: &str, job: &str) -> Value {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("job.ron");
    std::fs::write(&file, job).unwrap();
    let output = cargo_bin_cmd!("sternknee").args(["check", "--format", "json"]).arg(&file).output().unwrap();
    let report: Value = serde_json::from_slice(&output.stdout)
        .unwrap_or_else(|_| panic!("{}", String::from_utf8_lossy(&output.stderr)));
    report["findings"].as_array().unwrap().iter().find(|finding| finding["rule"] == id).unwrap().clone()
}

/// The horsepower capacity that the program prints for these readings.
fn printed_power(length: &str, width: &str, bottom: &str, steering: &str, height: &str) -> f64 {
    let job = readings(length, width, bottom, steering, height);
    let found = from_the_command_line(FORMULA, &job);
    assert_eq!(found["limit"]["at_most"]["unit"], "hp");
    let power = found["limit"]["at_most"]["value"].as_f64().unwrap();
    assert!((power * 2.0 - (power * 2.0).round()).abs() < 1e-9, "{power}");
    (power * 2.0).round() / 2.0
}

fn readings(length: &str, width: &str, bottom: &str, steering: &str, height: &str) -> String {
    study(&format!(
        "boat: (craft: monohull, bottom: {bottom}, length: \"{length}\", transom_width: \"{width}\"), \
         transom: (height: \"{height}\"), steering: {steering}"
    ))
}

/// 183.53(a); a builder's printed tutorial: 19.5 ft by 7.0 ft, remote, 20 in: factor 136.5, 183, 185 hp.
#[test]
fn the_tutorials_boat_may_have_185_hp() {
    let power = printed_power("19.5 ft", "7.0 ft", "vee", "remote_mechanical", "20 in");
    assert_eq!(power, 185.0);
    let job = readings("19.5 ft", "7.0 ft", "vee", "remote_mechanical", "20 in");
    let found = finding(FORMULA, &job);
    near(step(&found, "F").si, 136.5, 1e-9);
    near(step(&found, "p").si, 183.0, 1e-9);
}

/// 183.53(a), derived from the three formulas: 16 ft by 6.5 ft has a factor of 104.
#[test]
fn sixteen_feet_by_six_and_a_half_gives_120_60_or_40_hp() {
    let power = |bottom, steering, height| printed_power("16 ft", "6.5 ft", bottom, steering, height);
    // 2 F − 90 = 118
    assert_eq!(power("vee", "remote_hydraulic", "20 in"), 120.0);
    assert_eq!(power("flat_hard_chine", "remote_electric", "20 in"), 120.0);
    // 0.8 F − 25 = 58.2
    assert_eq!(power("vee", "tiller", "20 in"), 60.0);
    assert_eq!(power("round", "remote_mechanical", "19-15/16 in"), 60.0);
    assert_eq!(power("cathedral", "tiller", "25 in"), 60.0);
    // 0.5 F − 15 = 37
    assert_eq!(power("flat_hard_chine", "tiller", "20 in"), 40.0);
    assert_eq!(power("flat_hard_chine", "remote_mechanical", "15 in"), 40.0);
}

/// 183.53(a): the unrounded results of the three formulas, so that no slope hides behind the raising.
#[test]
fn the_three_formulas_come_out_before_they_are_raised() {
    for (bottom, steering, expected) in
        [("vee", "remote_mechanical", 118.0), ("vee", "tiller", 58.2), ("flat_hard_chine", "tiller", 37.0)]
    {
        let found = finding(FORMULA, &readings("16 ft", "6.5 ft", bottom, steering, "20 in"));
        near(step(&found, "p").si, expected, 1e-9);
    }
}

/// 183.53(a), table: 0–35: 3 hp, 36–39: 5, 40–42: 7.5, 43–45: 10, 46–52: 15, factor to the nearest
/// integer. Every step at both its edges; a boat of 10 ft makes the factor ten times the width.
#[test]
fn the_table_steps_where_the_regulation_prints_it() {
    for (width, expected) in [
        ("1 ft", 3.0),
        ("3.5 ft", 3.0),
        ("3.549 ft", 3.0),
        ("3.55 ft", 5.0),
        ("3.551 ft", 5.0),
        ("3.6 ft", 5.0),
        ("3.9 ft", 5.0),
        ("3.949 ft", 5.0),
        ("3.95 ft", 7.5),
        ("3.951 ft", 7.5),
        ("4.0 ft", 7.5),
        ("4.2 ft", 7.5),
        ("4.249 ft", 7.5),
        ("4.25 ft", 10.0),
        ("4.251 ft", 10.0),
        ("4.3 ft", 10.0),
        ("4.5 ft", 10.0),
        ("4.549 ft", 10.0),
        ("4.55 ft", 15.0),
        ("4.551 ft", 15.0),
        ("4.6 ft", 15.0),
        ("5.2 ft", 15.0),
        ("5.249 ft", 15.0),
    ] {
        let power = printed_power("10 ft", width, "vee", "tiller", "15 in");
        assert_eq!(power, expected, "10 ft by {width}");
    }
}

/// 183.53(a): a flat-bottom hard-chine boat with a factor of 52 or less drops one step; the lowest has
/// none below it.
#[test]
fn a_flat_bottom_drops_one_step_of_the_table() {
    for (width, expected) in
        [("3.5 ft", 3.0), ("3.6 ft", 3.0), ("4.0 ft", 5.0), ("4.3 ft", 7.5), ("4.6 ft", 10.0), ("5.2 ft", 10.0)]
    {
        let power = printed_power("10 ft", width, "flat_hard_chine", "tiller", "15 in");
        assert_eq!(power, expected, "10 ft by {width}");
    }
}

/// 183.53(a): factors of 52 and 52.5 are the table's, one over 52.5 the formulas'. At 52.6:
/// 2 F − 90 = 15.2, 0.8 F − 25 = 17.08, 0.5 F − 15 = 11.3.
#[test]
fn the_formulas_begin_over_a_factor_of_52_5() {
    let power = |width, bottom, steering| printed_power("10 ft", width, bottom, steering, "20 in");
    assert_eq!(power("5.2 ft", "vee", "remote_mechanical"), 15.0);
    assert_eq!(power("5.25 ft", "vee", "remote_mechanical"), 15.0);
    assert_eq!(power("5.25 ft", "vee", "tiller"), 15.0);
    assert_eq!(power("5.26 ft", "vee", "remote_mechanical"), 20.0);
    assert_eq!(power("5.26 ft", "vee", "tiller"), 20.0);
    assert_eq!(power("5.26 ft", "flat_hard_chine", "tiller"), 15.0);
}

/// 183.53(a): 52.5 however it is made up and written: the last bit of a product of metres decides nothing.
#[test]
fn a_factor_of_52_5_is_the_tables_in_any_units() {
    for (length, width) in [
        ("15 ft", "3.5 ft"),
        ("15 ft", "3 ft 6 in"),
        ("17.5 ft", "3 ft"),
        ("12.5 ft", "4.2 ft"),
        ("4.572 m", "106.68 cm"),
        ("533.4 cm", "0.9144 m"),
        ("5,334 mm", "36 in"),
    ] {
        let power = printed_power(length, width, "vee", "remote_mechanical", "20 in");
        assert_eq!(power, 15.0, "{length} by {width}");
    }
}

/// 183.53(a): "at least 20 in" however it is written.
#[test]
fn a_transom_of_508_mm_is_one_of_20_in() {
    for height in ["20 in", "508 mm", "50.8 cm", "0.508 m", "1 ft 8 in"] {
        let power = printed_power("16 ft", "6.5 ft", "vee", "remote_mechanical", height);
        assert_eq!(power, 120.0, "{height}");
    }
}

/// 183.53(a): raised to the next multiple of five, and not where it is one already: a factor of 100 gives
/// 110, 55 and 35.
#[test]
fn a_multiple_of_five_is_not_raised() {
    let power = |bottom, steering| printed_power("16 ft", "6.25 ft", bottom, steering, "20 in");
    assert_eq!(power("vee", "remote_mechanical"), 110.0);
    assert_eq!(power("vee", "tiller"), 55.0);
    assert_eq!(power("flat_hard_chine", "tiller"), 35.0);
}

/// 183.3: a full transom is wider than half the beam; without one, 183.53(a) takes the broadest beam in
/// the aftermost quarter. 3.25 ft is half of 6.5 ft and so no full transom; 16 ft by 6.5 ft gives 60 hp.
#[test]
fn without_a_full_transom_the_aftermost_quarter_counts() {
    let job = |width: &str, quarter: &str| {
        study(&format!(
            "boat: (craft: monohull, bottom: vee, length: \"16 ft\", beam: \"6.5 ft\", \
             transom_width: \"{width}\"{quarter}), steering: tiller"
        ))
    };
    let quarter = ", aft_quarter_beam: \"6.5 ft\"";
    near(at_most(&finding(FORMULA, &job("3.25 ft", quarter))), 60.0, 1e-9);
    let unasked = finding(FORMULA, &job("3.25 ft", ""));
    let asked = unasked.missing[0].measurement;
    assert_eq!((asked.of, asked.field), ("Boat", "aft_quarter_beam"));
    // Just wider than half: its own width counts, factor 52.8, 0.8 F − 25 = 17.24.
    near(at_most(&finding(FORMULA, &job("3.3 ft", quarter))), 20.0, 1e-9);
}

/// 183.21, 183.31 and 183.51: monohull boats less than 20 ft in length, not sailboats, canoes, kayaks
/// and inflatables.
#[test]
fn only_monohulls_under_twenty_feet_are_covered() {
    let of = |craft: &str, length: &str| {
        let job = with_engine(
            "power: \"60 hp\"",
            &format!(
                "boat: (craft: {craft}, bottom: vee, length: \"{length}\", transom_width: \"6 ft\"), \
                 steering: tiller"
            ),
        );
        verdict(FORMULA, &job)
    };
    assert_eq!(of("monohull", "19 ft 11-15/16 in"), Verdict::Pass);
    assert_eq!(of("monohull", "20 ft"), Verdict::NotApplicable);
    for craft in ["multihull", "sailboat", "canoe", "kayak", "inflatable"] {
        assert_eq!(of(craft, "16 ft"), Verdict::NotApplicable, "{craft}");
    }
}

/// 183.53(b), values from memory: 13 ft or less, a remote wheel, a transom of 19 in, two persons at most.
#[test]
fn the_performance_test_is_mentioned_where_its_conditions_are_met() {
    let mentioned = |length, steering, height, plate: &str| {
        let job = readings(length, "5 ft", "vee", steering, height);
        let end = job.rfind(')').unwrap();
        let job = format!("{}, plate: {plate})", job[..end].trim_end().trim_end_matches(','));
        from_the_command_line(FORMULA, &job)["summary"].as_str().unwrap().contains("183.53(b)")
    };
    let two = "capacity(persons: 2, power: \"10 hp\")";
    assert!(mentioned("13 ft", "remote_mechanical", "19 in", two));
    assert!(!mentioned("13 ft 1/16 in", "remote_mechanical", "19 in", two));
    assert!(!mentioned("13 ft", "tiller", "19 in", two));
    assert!(!mentioned("13 ft", "remote_mechanical", "18-15/16 in", two));
    assert!(!mentioned("13 ft", "remote_mechanical", "19 in", "capacity(persons: 3, power: \"10 hp\")"));
    assert!(!mentioned("13 ft", "remote_mechanical", "19 in", "none"));
}

/// 183.53(a): the table has no step below its first, 3 hp, and the working does not say that one was taken.
#[test]
fn a_flat_bottom_in_the_first_step_takes_no_step_down() {
    let boat = rig(&readings("9 ft", "4 ft", "flat_hard_chine", "tiller", "15 in"));
    let table = boat.tables.power_capacity.as_ref().unwrap();
    let remarks = |length: f64| {
        let mut sheet = Sheet::default();
        let factor = capacity::factor(&mut sheet, feet(length), feet(4.0));
        let arrangement = Arrangement { remote_and_high: false, flat_hard_chine: true };
        let power = capacity::power(&mut sheet, table, &factor, arrangement);
        (power.value().si() / horsepower(1.0).si(), format!("{:?}", sheet.lines()))
    };
    let (least, words) = remarks(8.0);
    near(least, 3.0, 1e-12);
    assert!(words.contains("no step below its first") && !words.contains("one step down"), "{words}");
    let (down, words) = remarks(9.5);
    near(down, 3.0, 1e-12);
    assert!(words.contains("one step down"), "{words}");
}

/// 183.41 as the Coast Guard boatbuilder's handbook works it: (550 + 32) / 141 = 4.12 → 4,
/// (547 + 32) / 141 = 4.10 → 4, (546 + 32) / 141 = 4.09 → 4; 908 lb of the stability test → 6.67 → 7.
/// The quotients are printed to two places with the third cut off or rounded: hence ± 0.01.
#[test]
fn persons_come_out_as_the_handbook_prints_them() {
    for (capacity, quotient, persons) in [(550.0, 4.12, 4.0), (547.0, 4.10, 4.0), (546.0, 4.09, 4.0)] {
        near((capacity + 32.0) / 141.0, quotient, 0.01);
        let mut sheet = Sheet::default();
        let found = capacity::persons(&mut sheet, &Term::new("W", pounds(capacity)));
        near(found.value().si(), persons, 1e-12);
    }
}

/// 183.41: where the nearest whole number changes: 4.5 persons are 602.5 lb, 3.5 are 461.5 lb.
#[test]
fn persons_change_at_half_a_person() {
    for (capacity, persons) in [(461.0, 3.0), (462.0, 4.0), (602.0, 4.0), (603.0, 5.0)] {
        let mut sheet = Sheet::default();
        let found = capacity::persons(&mut sheet, &Term::new("W", pounds(capacity)));
        near(found.value().si(), persons, 1e-12);
    }
}

/// 183.41 from the command line: a 2 hp engine of the table's 32 lb has no controls, battery or portable
/// tank in the table (183.75), so a plate of that much more leaves just the weight asked about.
#[test]
fn persons_from_the_command_line() {
    for (left, persons) in [(550, 4), (547, 4), (546, 4), (462, 4), (461, 3)] {
        let total = left + 32;
        let job = with_engine(
            "power: \"2 hp\", running_weight: \"32 lb\"",
            &format!(
                "boat: (craft: monohull, length: \"16 ft\"), \
                 plate: capacity(persons: {persons}, total_weight: \"{total} lb\")"
            ),
        );
        let found = from_the_command_line("weight/capacity-left", &job);
        assert_eq!(found["verdict"], "pass", "{left} lb: {found}");
        let more = job.replace(&format!("persons: {persons}"), &format!("persons: {}", persons + 1));
        let found = from_the_command_line("weight/capacity-left", &more);
        assert_eq!(found["verdict"], "fail", "{left} lb: {found}");
    }
}

/// 183.41 and the Coast Guard boatbuilder's handbook, worked figures: the persons that a weight holds, and
/// the weight that a stability test gives (printed to whole pounds), on jobs that state just those readings.
#[test]
fn the_handbooks_persons_come_out_from_the_command_line() {
    for (pounds, printed, persons) in [(550, 4.12, 4.0), (547, 4.10, 4.0), (546, 4.09, 4.0)] {
        let job = study(&format!("plate: capacity(persons_weight: \"{pounds} lb\")"));
        let found = from_the_command_line("weight/plate-persons", &job);
        assert_eq!(found["limit"]["at_most"]["value"], persons, "{pounds} lb");
        near(f64::from(pounds + 32) / 141.0, printed, 0.01);
    }
    for (test, printed) in [(545, 908.0), (328, 546.0)] {
        let job = study(&format!("boat: (stability_test: \"{test} lb\")"));
        let found = from_the_command_line("weight/plate-persons", &job);
        let weight = &found["working"][0]["result"];
        assert_eq!(weight["unit"], "lb");
        near(weight["value"].as_f64().unwrap(), printed, 1.0);
    }
}

/// 183.53(a): the flat bottom plays no part where the larger formula applies.
#[test]
fn the_larger_formula_disregards_the_bottom() {
    let table = crate::common::CATALOG.tables.power_capacity.clone().unwrap();
    let power = |flat_hard_chine| {
        let mut sheet = Sheet::default();
        let factor = capacity::factor(&mut sheet, feet(16.0), feet(6.5));
        let arrangement = Arrangement { remote_and_high: true, flat_hard_chine };
        capacity::power(&mut sheet, &table, &factor, arrangement).value().si()
    };
    near(power(true), power(false), 0.0);
}
