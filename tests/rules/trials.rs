//! Trials, promises and what a season costs: what stands in a file is taken as it would be from the job, and tables say what came.

use std::sync::Arc;

use sternknee::case::Case;
use sternknee::front_door;
use sternknee::quantity::{Dimensioned, Units};
use sternknee::working::Line;

use crate::common::{CATALOG, finding, near, rig};

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
