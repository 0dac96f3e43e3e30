//! Trials, promises and what a season costs: what stands in a file is taken as it would be from the job, and tables say what came.

use std::sync::Arc;

use sternknee::case::Case;
use sternknee::front_door;
use sternknee::quantity::{Dimensioned, Units};
use sternknee::rules::Verdict::{Pass, Warn};
use sternknee::working::Line;

use crate::common::{CATALOG, finding, near, rig, step, verdict};

const ENGINE: &str = "class: \"four-stroke 150 hp inline-4\", shaft: \"25 in\", at: [centre], holes_up: 1, \
    propeller: (blades: 3, diameter: \"15 in\", pitch: \"17 in\")";
const FILE: &str =
    "rpm,speed (mph),back (mph),fuel (gal/h)\n4500,33.4,34.6,8.6\n5600,41.6,42.4,14.8\n3500,25.8,26.6,5.6\n";
const SEASON: &str = include_str!("cases/worth-season/pass.ron");

/// A trial after whose runs stand in a file.
fn from_file<T>(ask: impl FnOnce(&Case) -> T) -> T {
    let text = format!("(sitting: study, engines_on: [({ENGINE})], trial: (after: (file: \"after.csv\")))");
    let file = |name: &str| {
        assert_eq!(name, "after.csv");
        Ok(Arc::from(FILE.as_bytes()))
    };
    let opened = front_door::open("job.ron", &text, &CATALOG, file).unwrap_or_else(|faults| panic!("{faults}"));
    ask(&opened.case())
}

/// A run of a file is the same run as one told in the job: engine speed, mean of both ways, flow, slip.
#[test]
fn the_runs_of_a_file_are_those_told_in_the_job() {
    let told = format!(
        "(sitting: study, engines_on: [({ENGINE})], trial: (after: (runs: [\
         (rpm: \"3,500 rpm\", speed: \"25.8 mph\", back: \"26.6 mph\", fuel: \"5.6 gal/h\"), \
         (rpm: \"4,500 rpm\", speed: \"33.4 mph\", back: \"34.6 mph\", fuel: \"8.6 gal/h\"), \
         (rpm: \"5,600 rpm\", speed: \"41.6 mph\", back: \"42.4 mph\", fuel: \"14.8 gal/h\", full_throttle: true)])))"
    );
    let runs = |case: &Case| {
        let after = case.trial().and_then(|trials| trials.after.as_ref()).expect("a trial");
        let figures = after.runs.iter().map(|run| {
            let turns = run.engine.expect("its engine speed").si() * 60.0 / std::f64::consts::TAU;
            let speed = run.speed.expect("its speed").value.si() / 0.44704;
            let slip = run.slip.expect("its slip").si();
            ([turns, speed, run.fuel.expect("its fuel").si(), slip], run.full_throttle)
        });
        figures.collect::<Vec<_>>()
    };
    let rig = rig(&told);
    let (told, filed) = (runs(&Case::new(&rig)), from_file(runs));
    assert_eq!(filed.len(), 3);
    for ((told, open), (filed, as_open)) in told.iter().zip(&filed) {
        assert_eq!(open, as_open);
        for (told, filed) in told.iter().zip(filed) {
            near(*filed, *told, 1e-9 * told.abs());
        }
    }
    near(filed[2].0[0], 5600.0, 1e-6);
    near(filed[2].0[1], 42.0, 1e-9);
}

/// 42 of 50 mph are 16 % short, 5,600 of 5,500 rpm 1.8 % more.
#[test]
fn what_came_is_told_in_parts_of_what_was_promised() {
    let job = include_str!("cases/trial-promised/warn.ron").replace(
        "promised: (top_speed: \"50 mph\")",
        "promised: (top_speed: \"50 mph\", full_throttle: \"5,500 rpm\")",
    );
    let judged = finding("trial/promised", &job);
    let rows: Vec<Vec<String>> =
        judged.tables[0].rows.iter().map(|row| row.iter().map(|cell| cell.show(Units::Us)).collect()).collect();
    assert_eq!(rows[0], ["greatest speed", "50.0 mph", "42.0 mph", "-16.0 %"]);
    assert_eq!(rows[1][0], "engine speed at full throttle");
    assert_eq!(rows[1][3], "+1.8 %");
}

/// What a trial measured is not called reckoned.
#[test]
fn fuel_that_a_trial_measured_is_not_called_reckoned() {
    let said = |text: &str| {
        let rig = rig(text);
        let parts = Case::new(&rig).worth_parts();
        let lines = parts.iter().flat_map(|part| part.sheet.lines());
        let remarks = lines.filter(|line| matches!(line, Line::Remark(_)));
        remarks.map(|line| line.show(Units::Us)).collect::<Vec<_>>().join("\n")
    };
    let measured = said(SEASON);
    assert!(measured.contains("Not priced") && !measured.contains("reckoned"), "{measured}");
}

/// An older two-stroke burns a fifth more than a tenth of a gallon an hour for a horsepower: 115 × 0.1 × 1.2 = 13.8 gal/h. Six tenths of
/// that are 8.28 gal/h, and a third more is 18.35. Common practice, no source.
#[test]
fn a_two_stroke_may_burn_a_fifth_more() {
    let burns = |fuel: &str| {
        let text = format!(
            "(sitting: study, engines_off: [(class: \"two-stroke 115 hp V4\", shaft: \"25 in\", at: [centre])], \
             trial: (before: (runs: [(rpm: \"5,300 rpm\", speed: \"37.4 mph\", back: \"38.2 mph\", fuel: \"{fuel}\", full_throttle: true)])))"
        );
        finding("trial/fuel", &text)
    };
    let usual = burns("13.8 gal/h");
    near(step(&usual, "fu").in_unit(Units::Us).0, 13.8, 1e-5);
    // 13.4 of them are 97.1 %.
    assert!(burns("13.4 gal/h").summary.show(Units::Us).contains(", 0.971 of what such engines usually burn"));
    for (fuel, expected) in [("8.2 gal/h", Warn), ("8.3 gal/h", Pass), ("18.3 gal/h", Pass), ("18.4 gal/h", Warn)] {
        assert_eq!(burns(fuel).verdict, expected, "{fuel}");
    }
}

/// Calm, slight, moderate, rough: the same word or the next, either way, and wind within 10 mph. Common practice, no source.
#[test]
fn trials_compare_in_seas_of_the_same_word_or_the_next() {
    let pass = include_str!("cases/trial-comparable/pass.ron");
    let on = |before: (&str, &str), after: (&str, &str)| {
        let day = "wind: \"5 mph\", sea: slight";
        let told = |(wind, sea): (&str, &str)| format!("wind: \"{wind}\", sea: {sea}");
        assert_eq!(pass.matches(day).count(), 2);
        verdict("trial/comparable", &pass.replacen(day, &told(before), 1).replacen(day, &told(after), 1))
    };
    let seas = ["calm", "slight", "moderate", "rough"];
    for (i, sea) in seas.iter().enumerate() {
        for (j, later) in seas.iter().enumerate() {
            let expected = if i.abs_diff(j) > 1 { Warn } else { Pass };
            assert_eq!(on(("6 mph", sea), ("6 mph", later)), expected, "{sea}, then {later}");
        }
    }
    for (wind, later, expected) in [("6 mph", "16 mph", Pass), ("16.1 mph", "6 mph", Warn), ("6 mph", "16.1 mph", Warn)]
    {
        assert_eq!(on((wind, "calm"), (later, "calm")), expected, "{wind}, then {later}");
    }
}
