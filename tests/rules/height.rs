//! Where the height rules change their mind. Sources: the trade association's bolt pattern in general use
//! (rows 3/4 in apart); common practice, no source (the window, the angle).

use sternknee::quantity::Units;
use sternknee::rules::Finding;
use sternknee::rules::Verdict::{Fail, Pass, Unmeasured, Warn};

use crate::common::{finding, near, step, study, verdict, with_engine};

fn us(finding: &Finding, symbol: &str) -> f64 {
    step(finding, symbol).in_unit(Units::Us).0
}

/// A single on the transom: its height, the shaft, rows of holes, the row it hangs in.
fn single(height: &str, rows: u8, more: &str) -> String {
    with_engine(&format!("hole_rows: {rows}"), &format!("transom: (height: \"{height}\")"))
        .replace("at: [centre]", &format!("at: [centre], shaft: \"20 in\"{more}"))
}

/// The window is 0 to 1 in, with the width of a pencil line (1/32 in) at both edges.
#[test]
fn the_window_ends_a_pencil_line_beyond_level_and_an_inch() {
    for (height, expected) in [
        ("19.968 in", Warn),
        ("19.969 in", Pass),
        ("20 in", Pass),
        ("21 in", Pass),
        ("21.031 in", Pass),
        ("21.032 in", Warn),
    ] {
        assert_eq!(verdict("height/shaft-match", &single(height, 1, "")), expected, "{height}");
    }
    for (height, expected) in [("19.968 in", Warn), ("19.969 in", Pass), ("21.031 in", Pass), ("21.032 in", Warn)] {
        let found = verdict("height/plate-window", &single(height, 1, ", holes_up: 0"));
        assert_eq!(found, expected, "{height}");
    }
}

/// Five rows reach 3 in up: a plate 3 in low is still brought level, at the fifth, 3-3/4 in is not. A pad makes up for that, and for 2 in
/// at the most: 5-1/16 in is another shaft.
#[test]
fn rows_of_holes_bring_a_low_plate_up() {
    assert_eq!(verdict("height/shaft-match", &single("17 in", 5, "")), Pass);
    assert_eq!(verdict("height/shaft-match", &single("17 in", 4, "")), Warn);
    let short = finding("height/shaft-match", &single("16-1/4 in", 5, ""));
    assert_eq!(short.verdict, Warn);
    near(short.margin().unwrap().in_unit(Units::Us).0, -0.75, 1e-9);
    let text = short.summary.show(Units::Us);
    assert!(text.contains("3/4 in too low"), "{text}");
    assert_eq!(verdict("height/shaft-match", &single("15.01 in", 5, "")), Warn);
    assert_eq!(verdict("height/shaft-match", &single("14.99 in", 5, "")), Fail);
}

/// Of several rows the one nearest the window's middle: at 19-3/4 in of transom one hole up stands
/// 1/2 in above the bottom, two 1-1/4 in.
#[test]
fn the_best_row_is_the_one_nearest_the_windows_middle() {
    let found = finding("height/plate-window", &single("19-3/4 in", 5, ""));
    assert_eq!(found.verdict, Pass);
    assert!(found.summary.show(Units::Us).starts_with("1 hole up"));
    // 20 in of transom: 0 and 3/4 in are both in the window; 3/4 in is nearer to 1/2 in.
    let found = finding("height/plate-window", &single("20 in", 5, ""));
    assert!(found.summary.show(Units::Us).starts_with("1 hole up"));
}

#[test]
fn a_row_that_the_bracket_has_not_is_told() {
    let found = finding("height/plate-window", &single("20 in", 2, ", holes_up: 2"));
    assert_eq!(found.verdict, Warn);
    assert!(found.summary.show(Units::Us).contains("2 rows only"));
    assert_eq!(verdict("height/plate-window", &single("20 in", 2, ", holes_up: 1")), Pass);
}

/// As fitted the row is looked at, not chosen.
#[test]
fn a_finished_install_waits_for_its_row() {
    let fitted = single("20 in", 5, "").replace("sitting: study", "sitting: as_fitted");
    assert_eq!(verdict("height/plate-window", &fitted), Unmeasured);
    assert_eq!(verdict("height/shaft-match", &fitted), Pass);
}

/// 24 in of setback: 2 in (12 in for an inch) to 4 in (1 in and 8 in for an inch).
#[test]
fn setback_raises_the_window_and_drop_lowers_the_engine() {
    let of = |height: &str, drop: &str| {
        let bracket = format!("bracket: (described: (setback: \"24 in\", drop: \"{drop}\"))");
        let job = single(height, 1, &format!(", {bracket}"));
        finding("height/shaft-match", &job)
    };
    for (height, drop, expected) in [
        ("21.96 in", "0 in", Warn),
        ("21.97 in", "0 in", Pass),
        ("24.03 in", "0 in", Pass),
        ("24.04 in", "0 in", Warn),
        ("25.03 in", "1 in", Pass),
        ("25.04 in", "1 in", Warn),
        ("20.97 in", "-1 in", Pass),
    ] {
        assert_eq!(of(height, drop).verdict, expected, "{height} {drop}");
    }
    near(us(&of("25 in", "1 in"), "h1"), 2.0, 1e-9);
    near(us(&of("25 in", "1 in"), "h2"), 4.0, 1e-9);
    near(us(&of("25 in", "1 in"), "h0"), 4.0, 1e-9);
}

/// Common practice, worked: 14 in off centre at 22° the bottom is 5.66 in higher, so 25-3/4 in on the
/// boat's centreline is 20.09 in there.
#[test]
fn deadrise_takes_height_from_an_engine_off_centre() {
    let job = |more: &str| {
        study(&format!(
            "boat: (deadrise: \"22 deg\"), transom: (height: \"25-3/4 in\"{more}), \
             engines_on: [(described: (hole_rows: 1), shaft: \"20 in\", \
               at: [port(\"14 in\"), starboard(\"14 in\")])]"
        ))
    };
    let found = finding("height/shaft-match", &job(""));
    near(us(&found, "r"), 5.656, 0.001);
    near(us(&found, "H"), 20.094, 0.001);
    assert_eq!(found.verdict, Pass);
    // A height taken at the engine's own centreline comes before the computed one, within an inch of it.
    let taken = ", heights: [(at: port(\"14.99 in\"), height: \"22 in\")]";
    assert_eq!(verdict("height/shaft-match", &job(taken)), Warn);
    let elsewhere = ", heights: [(at: port(\"15.01 in\"), height: \"22 in\")]";
    assert_eq!(verdict("height/shaft-match", &job(elsewhere)), Pass);
}

/// On a transom that leans by θ the bottom's edge rises along it by y·tan β / cos θ: 14 in at 22° and 14° is 5.83 in.
/// A drop is plumb: 4 in is 4.12 in along the same transom.
#[test]
fn heights_run_along_a_leaning_transom() {
    let job = |angle: &str, at: &str, bracket: &str| {
        study(&format!(
            "boat: (deadrise: \"22 deg\"), transom: (height: \"25-3/4 in\"{angle}), \
             engines_on: [(described: (hole_rows: 1), shaft: \"20 in\", at: [{at}]{bracket})]"
        ))
    };
    let lean = 14.0_f64.to_radians().cos();
    let of = |angle: &str, at: &str, bracket: &str| finding("height/shaft-match", &job(angle, at, bracket));
    let leaning = ", angle: \"14 deg\"";
    near(us(&of(leaning, "port(\"14 in\")", ""), "r"), 14.0 * 22.0_f64.to_radians().tan() / lean, 1e-9);
    near(us(&of(leaning, "port(\"14 in\")", ""), "r"), 5.83, 0.005);
    near(us(&of("", "port(\"14 in\")", ""), "r"), 5.656, 0.001);
    let dropped = ", bracket: (described: (setback: \"20 in\", drop: \"4 in\"))";
    near(us(&of(leaning, "centre", dropped), "h0"), 25.75 - 4.0 / lean - 20.0, 1e-9);
    near(us(&of("", "centre", dropped), "h0"), 1.75, 1e-9);
}

#[test]
fn one_engine_that_cannot_be_judged_keeps_the_pair_from_passing() {
    let job = study(
        "transom: (height: \"20 in\"), engines_on: [\
           (described: (hole_rows: 1), shaft: \"20 in\", at: [centre]), \
           (described: (hole_rows: 1), at: [port(\"30 in\")])], boat: (deadrise: \"0 deg\")",
    );
    for id in ["height/shaft-match", "height/plate-window"] {
        assert_eq!(verdict(id, &job), Unmeasured, "{id}");
        let failing = job.replace("height: \"20 in\"", "height: \"25 in\"");
        assert!(verdict(id, &failing) < Unmeasured, "{id}");
    }
}

/// Of two engines the worse one speaks.
#[test]
fn the_worst_engine_speaks_for_the_install() {
    let job = study(
        "transom: (height: \"20-1/2 in\"), boat: (deadrise: \"0 deg\"), engines_on: [\
           (described: (hole_rows: 1), shaft: \"20 in\", at: [port(\"14 in\")], holes_up: 0), \
           (described: (hole_rows: 1), shaft: \"18 in\", at: [starboard(\"14 in\")], holes_up: 0)]",
    );
    for id in ["height/shaft-match", "height/plate-window"] {
        let found = finding(id, &job);
        assert!(found.verdict < Unmeasured, "{id}");
        assert!(found.summary.show(Units::Us).contains("starboard engine"), "{id}");
    }
}

#[test]
fn another_shaft_of_the_class_is_offered_where_one_fits() {
    let of = |shafts: &str| {
        let job = with_engine(&format!("hole_rows: 1, shafts: [{shafts}]"), "transom: (height: \"25-1/2 in\")")
            .replace("at: [centre]", "at: [centre], shaft: \"20 in\"");
        finding("height/shaft-match", &job).remedy.unwrap().show(Units::Us)
    };
    let short = "(name: \"20 in\", rest_to_plate: \"20 in\")";
    let long = "(name: \"25 in\", rest_to_plate: \"25 in\")";
    assert!(of(&format!("{short}, {long}")).contains("with the 25 in shaft of the same class"));
    // 25-1/2 in of transom less half an inch of window.
    assert!(of(short).contains("about 25 in"), "{}", of(short));
}

/// Three degrees either way of the engine's angle; a wedge over 12 in: 12·tan 4° = 0.839 in, 13/16 on a tape.
#[test]
fn three_degrees_off_is_the_limit_of_the_transoms_angle() {
    let of = |angle: &str| {
        let job = with_engine(
            "transom_angle: \"13 deg\", trim: (from: \"-4 deg\", to: \"16 deg\")",
            &format!("transom: (angle: \"{angle}\")"),
        );
        finding("height/transom-angle", &job)
    };
    for (angle, expected) in [("9.99 deg", Warn), ("10.01 deg", Pass), ("15.99 deg", Pass), ("16.01 deg", Warn)] {
        assert_eq!(of(angle).verdict, expected, "{angle}");
    }
    let steep = of("17 deg");
    near(us(&steep, "w"), 0.8391, 0.000_05);
    let text = steep.summary.show(Units::Us);
    assert!(text.contains("from -8.0 deg to 12.0 deg"), "{text}");
    assert!(steep.remedy.unwrap().show(Units::Us).ends_with("thick end at the bottom."));
    let flat = of("9 deg");
    near(us(&flat, "w"), 0.8391, 0.000_05);
    let text = flat.summary.show(Units::Us);
    assert!(text.contains("from 0.0 deg to 20.0 deg"), "{text}");
    assert!(flat.remedy.unwrap().show(Units::Us).ends_with("thick end at the top."));
    for angle in ["17 deg", "9 deg"] {
        let margin = of(angle).margin().unwrap().in_unit(Units::Us).0;
        near(margin, -1.0, 1e-9);
    }
}

/// Common practice, no source: makers call a 20-1/2 in shaft a 20 in one; an inch and a half off is another.
#[test]
fn a_shaft_is_known_by_its_trade_name_within_an_inch_and_a_half() {
    let resolves = |shaft: &str| {
        let job = with_engine("shafts: [(name: \"20 in\", rest_to_plate: \"20-1/2 in\")]", "title: \"x\"")
            .replace("at: [centre]", &format!("at: [centre], shaft: \"{shaft}\""));
        let (job, _) = sternknee::job::load("job.ron", &job).unwrap();
        sternknee::rig::resolve(&job, &crate::common::CATALOG).is_ok()
    };
    assert!(resolves("21.49 in") && resolves("18.51 in"));
    assert!(!resolves("21.51 in") && !resolves("18.49 in"));
}

/// Rows 3/4 in apart under 19-3/4 in of transom: the plate stands 1/4 in low, 1/2 in high, then above the inch.
#[test]
fn every_row_says_where_it_puts_the_plate() {
    let table = &finding("height/plate-window", &single("19-3/4 in", 4, "")).tables[0];
    let rows: Vec<Vec<String>> =
        table.rows.iter().map(|row| row.iter().map(|cell| cell.show(Units::Us)).collect()).collect();
    assert_eq!(
        rows,
        [
            ["0", "-1/4 in", "too low"],
            ["1", "1/2 in", "in the window"],
            ["2", "1-1/4 in", "too high"],
            ["3", "2 in", "too high"],
        ]
    );
}

/// Common practice, no source: a kicker hangs deep, holds its water so, and is tilted up else; one that hangs too high draws air as any does.
/// 24 in of transom under 20 in of shaft stands 4 in up, 3 in beyond its window; 15 in under it hangs 5 in down.
#[test]
fn a_kicker_may_hang_below_its_window_and_not_above_it() {
    let of = |height: &str, role: &str| {
        let engine = single(height, 1, &format!(", holes_up: 0, role: {role}"));
        ["height/shaft-match", "height/plate-window"].map(|rule| verdict(rule, &engine))
    };
    assert_eq!(of("15 in", "main"), [Fail, Warn]);
    assert_eq!(of("15 in", "auxiliary"), [Pass, Pass]);
    assert_eq!(of("24 in", "auxiliary"), [Fail, Warn]);
}
