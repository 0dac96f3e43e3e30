//! How engines swing, end to end: remedies applied to the job hold, catalogs fit, bad chains are told.

mod followed;
mod lift;
mod told;

use sternknee::case::Case;
use sternknee::case::swing::{View, outlines, study_faults};
use sternknee::catalog::Catalog;
use sternknee::job;
use sternknee::quantity::Units;
use sternknee::rig::{self, Rig};
use sternknee::rules::{self, Finding, Verdict};

const RUNABOUT: &str = include_str!("../../catalogs/jobs/bay_runabout.ron");
const SKIFF: &str = include_str!("../../catalogs/jobs/oyster_skiff.ron");

fn rig_of(text: &str) -> Rig {
    let catalog = Catalog::built_in().expect("the built-in catalog reads");
    let (job, _) = job::load("job", text).unwrap_or_else(|faults| panic!("{faults}"));
    rig::resolve(&job, &catalog).unwrap_or_else(|faults| panic!("{faults:?}"))
}

fn judge(text: &str, id: &str) -> Finding {
    let rig = rig_of(text);
    let rule = rules::find(id).expect("the rule is there");
    (rule.judge)(&Case::new(&rig))
}

fn with(text: &str, old: &str, new: &str) -> String {
    assert!(text.contains(old), "the job has `{old}`");
    text.replacen(old, new, 1)
}

/// The figure that stands in a remedy behind these words.
fn told(finding: &Finding, before: &str) -> String {
    let remedy = finding.remedy.as_ref().expect("a remedy").show(Units::Us);
    let from = remedy.find(before).unwrap_or_else(|| panic!("{remedy}")) + before.len();
    let words: Vec<&str> = remedy[from..].split(' ').take(2).collect();
    words.join(" ")
}

#[test]
fn full_tilt_strikes_the_well_and_the_report_says_where_and_with_what() {
    let finding = judge(RUNABOUT, "swing/full-tilt");
    assert_eq!(finding.verdict, Verdict::Fail);
    let summary = finding.summary.show(Units::Us);
    for words in [
        "at full tilt (69.0 deg)",
        "helm hard to",
        "the forward edge of the powerhead cowl strikes the forward wall of the well",
        "first touches at 68.",
    ] {
        assert!(summary.contains(words), "{words}: {summary}");
    }
    assert_eq!(told(&finding, "stop the tilt at "), "67.0 deg");
}

/// The shallowest plate would clear the well, but bring the cylinder against the transom.
#[test]
fn a_setback_that_lets_something_else_strike_is_not_advised() {
    let remedy = judge(RUNABOUT, "swing/full-tilt").remedy.unwrap().show(Units::Us);
    assert!(!remedy.contains("setback"), "{remedy}");
    let bracket = "bracket: (described: (kind: setback_plate, setback: \"4 in\", drop: \"0 in\", engines: 1)),";
    let plate = with(RUNABOUT, "propellers: [right],", &format!("propellers: [right], {bracket}"));
    assert_eq!(judge(RUNABOUT, "swing/cylinder").verdict, Verdict::Pass);
    assert_eq!(judge(&plate, "swing/full-tilt").verdict, Verdict::Pass);
    assert_eq!(judge(&plate, "swing/cylinder").verdict, Verdict::Fail);
}

#[test]
fn the_tilt_limit_of_the_remedy_clears_the_well() {
    let stop = told(&judge(RUNABOUT, "swing/full-tilt"), "stop the tilt at ");
    let stopped = with(RUNABOUT, "propellers: [right],", &format!("propellers: [right], tilt_stop: \"{stop}\","));
    for id in ["swing/full-tilt", "swing/permitted-range"] {
        assert_eq!(judge(&stopped, id).verdict, Verdict::Pass, "{id}");
    }
    assert_eq!(judge(RUNABOUT, "swing/permitted-range").verdict, Verdict::Warn);
}

/// Two holes more would clear the well, but leave the plate above its window.
#[test]
fn holes_that_the_plates_window_does_not_allow_are_not_advised() {
    let remedy = judge(RUNABOUT, "swing/full-tilt").remedy.unwrap().show(Units::Us);
    assert!(!remedy.contains("holes up"), "{remedy}");
    let higher = with(RUNABOUT, "holes_up: 1,\n            propellers", "holes_up: 3,\n            propellers");
    assert_eq!(judge(&higher, "swing/full-tilt").verdict, Verdict::Pass);
    assert_eq!(judge(RUNABOUT, "height/plate-window").verdict, Verdict::Pass);
    assert_eq!(judge(&higher, "height/plate-window").verdict, Verdict::Warn);
}

#[test]
fn twins_one_tilted_and_hard_over_clear_each_other_and_nearer_ones_are_told_how_far() {
    let finding = judge(SKIFF, "swing/neighbour");
    assert_eq!(finding.verdict, Verdict::Pass);
    let summary = finding.summary.show(Units::Us);
    assert!(summary.contains("helm hard to"), "{summary}");
    assert!(summary.contains("engine down and trimmed in"), "{summary}");
    let near =
        with(SKIFF, "at: [port(\"14 in\"), starboard(\"14 in\")]", "at: [port(\"12 in\"), starboard(\"12 in\")]");
    let finding = judge(&near, "swing/neighbour");
    assert_eq!(finding.verdict, Verdict::Fail);
    let apart = told(&finding, "set their centres ");
    let reading = sternknee::quantity::parse(&apart, sternknee::quantity::Kind::Length).unwrap();
    let half = format!("{} mm", reading.si * 500.0);
    let spread = with(
        SKIFF,
        "at: [port(\"14 in\"), starboard(\"14 in\")]",
        &format!("at: [port(\"{half}\"), starboard(\"{half}\")]"),
    );
    assert_eq!(judge(&spread, "swing/neighbour").verdict, Verdict::Pass);
}

#[test]
fn every_class_of_the_catalog_fits_with_every_shaft() {
    let catalog = Catalog::built_in().expect("the built-in catalog reads");
    let mut tried = 0;
    for entry in &catalog.engines {
        for shaft in &entry.spec.shafts {
            let name = shaft.name.measure(sternknee::quantity::Style::Tape).show(Units::Us);
            let text = format!(
                "(transom: (height: \"{name}\", angle: \"14 deg\", splash_well: none), \
                 engines_on: [(class: \"{}\", shaft: \"{name}\", at: [centre])])",
                entry.name
            );
            let rig = rig_of(&text);
            let case = Case::new(&rig);
            let engines = case.swing().engines.as_ref();
            assert_eq!(engines.map(Vec::len), Ok(1), "{}, {name}", entry.name);
            assert!(case.swing().full_tilt.is_ok(), "{}, {name}", entry.name);
            tried += 1;
        }
    }
    assert!(tried > 100, "{tried}");
}

#[test]
fn a_mounting_sheet_in_the_job_takes_the_place_of_the_class() {
    let shorter =
        with(RUNABOUT, "propellers: [right],", "propellers: [right], sheet: (forward_at_full_tilt: \"24 in\"),");
    assert_eq!(judge(&shorter, "swing/full-tilt").verdict, Verdict::Pass);
}

#[test]
fn an_engine_set_far_enough_back_needs_no_readings_of_the_well() {
    let text = with(SKIFF, "well: (length: \"26 in\", rim_above: \"7 in\"),", "");
    let rig = rig_of(&text);
    let case = Case::new(&rig);
    assert!(!case.swing().around.as_ref().unwrap().missing.is_empty());
    assert_eq!(judge(&text, "swing/full-tilt").verdict, Verdict::Pass);
    let on_transom = with(RUNABOUT, "length: \"22-3/4 in\", ", "");
    let finding = judge(&on_transom, "swing/full-tilt");
    assert_eq!(finding.verdict, Verdict::Unmeasured);
    assert_eq!(finding.missing.len(), 1);
}

#[test]
fn every_answer_of_the_demos_is_certified_within_half_a_millimetre() {
    for text in [RUNABOUT, SKIFF] {
        let rig = rig_of(text);
        let case = Case::new(&rig);
        let swing = case.swing();
        for answer in [&swing.full_tilt, &swing.lock, &swing.neighbours, &swing.cylinder, &swing.tie_bar] {
            for swept in answer.iter().flatten() {
                assert!(swept.clearance.gap().value <= 0.5e-3 + 1e-12, "{}", swept.label);
                for view in [View::Side, View::Top] {
                    let drawn = outlines(swept, &swept.clearance.pose, view);
                    assert!(drawn.iter().all(|polygon| polygon.corners.len() >= 3));
                    let touching = [&swept.clearance.body.name, &swept.clearance.other.name];
                    assert!(touching.iter().all(|name| drawn.iter().any(|p| p.name == **name)));
                }
            }
        }
    }
}

#[test]
fn twins_on_one_line_of_tilt_tubes_are_as_near_as_the_whole_search_over_three_angles_says() {
    use sternknee::physics::swing::{AngleRange, Effort, NeighbourTilt, least_distance};
    for at in ["14 in", "12 in"] {
        let text = with(
            SKIFF,
            "at: [port(\"14 in\"), starboard(\"14 in\")]",
            &format!("at: [port(\"{at}\"), starboard(\"{at}\")]"),
        );
        let rig = rig_of(&text);
        let case = Case::new(&rig);
        let swept = &case.swing().neighbours.as_ref().unwrap()[0];
        let told = &swept.clearance;
        let whole = least_distance(&swept.scene, &Effort::default()).unwrap();
        assert!(told.lower <= whole.upper && whole.lower <= told.upper, "{at}");
        // The pose told is one of both engines, and attains the distance there.
        let mut there = swept.scene.clone();
        let only = |angle| AngleRange::only("the pose", angle).unwrap();
        let second = told.pose.neighbour_tilt.unwrap();
        assert!(second >= swept.scene.tilt.low() && second <= swept.scene.tilt.high());
        assert!(told.pose.tilt.value >= swept.scene.tilt.low().value - 1e-12);
        there.tilt = only(told.pose.tilt);
        there.steer = only(told.pose.steer);
        there.neighbour.as_mut().unwrap().tilt = NeighbourTilt::Independent(only(second));
        let attained = least_distance(&there, &Effort::default()).unwrap();
        assert!((attained.upper - told.upper).value.abs() < 1e-9, "{at}");
        if told.contact_depth().is_none() {
            let between = (told.on_other - told.on_body).norm();
            assert!((between - told.upper.value).abs() < 1e-9, "{at}");
        }
    }
}

/// A study about a box on an arm beside a wall; `{}` is the body's shape.
fn study(tilt_axis: &str, tilt: &str, shape: &str) -> String {
    format!(
        "(sitting: study, swing_study: (\n tilt_axis: (through: ({tilt_axis}), along: (0, 1, 0)),\n tilt: ({tilt}),\n \
         bodies: [(name: \"arm\", on: swivel, shape: {shape})],\n \
         obstacles: [(name: \"wall\", shape: behind(through: (\"3 m\", \"0 m\", \"0 m\"), free_side: (-1, 0, 0)))],\n))"
    )
}

const AXIS: &str = "\"0 m\", \"0 m\", \"0 m\"";
const RANGE: &str = "from: \"0 deg\", to: \"90 deg\"";
const ARM: &str = "hull(points: [(\"0 m\", \"0 m\", \"0 m\"), (\"0 m\", \"0 m\", \"1 m\")])";

#[test]
fn a_study_of_a_point_on_an_arm_beside_a_wall_gives_the_closed_form() {
    // The tip of an upright arm of 1 m goes to sin t forward: 2 m from the wall at a quarter turn.
    let text = study(AXIS, RANGE, ARM);
    let rig = rig_of(&text);
    let case = Case::new(&rig);
    let question = case.swing().study.as_ref().unwrap().as_ref().unwrap();
    let clearance = &question.swept.clearance;
    assert!(clearance.lower.value <= 2.0 + 1e-12 && clearance.upper.value >= 2.0 - 1e-12);
    assert!(clearance.gap().value <= 0.5e-3);
    let notes = |text: &str| {
        let rig = rig_of(text);
        let answers = Case::new(&rig).studies();
        let [answer] = &answers[..] else { panic!("one answer") };
        answer.notes.iter().map(|note| note.show(Units::Si)).collect::<Vec<_>>().join(" ")
    };
    assert!(!notes(&text).contains("to be kept"));
    let kept = notes(&with(&text, "tilt: (", "margin: \"1.9 m\", tilt: ("));
    assert!(kept.contains("to be kept: that is kept"), "{kept}");
    let too_much = notes(&with(&text, "tilt: (", "margin: \"2.1 m\", tilt: ("));
    assert!(too_much.contains("to be kept: that is not kept"), "{too_much}");
}

#[test]
fn bad_chains_are_faults_at_their_own_place() {
    let open = "profile(corners: [(\"0 m\", \"0 m\"), (\"1 m\", \"0 m\")], from: \"0 m\", to: \"1 m\")";
    for (text, path, words) in [
        (study("\"2 m\", \"0 m\", \"0 m\"", RANGE, ARM), "swing_study.tilt_axis", "outside the body"),
        (study(AXIS, "from: \"90 deg\", to: \"0 deg\"", ARM), "swing_study.tilt", "is empty"),
        (study(AXIS, RANGE, open), "swing_study.bodies[0].shape", "is open"),
    ] {
        // A range that runs backwards is a fault of the file too; the chain finds it for itself.
        let job = job::draft("job", &text).value.expect("a job that reads");
        let faults = study_faults(
            &rig::resolve(&job, &Catalog::built_in().expect("a catalog")).expect("nothing of the catalog is named"),
        );
        assert_eq!(faults.len(), 1, "{faults:?}");
        assert_eq!(faults[0].path, path);
        assert!(faults[0].error.to_string().contains(words), "{}", faults[0].error);
    }
}

#[test]
fn what_cannot_be_said_of_wells_obstacles_and_trailers_is_a_fault_there() {
    for (old, new, path) in [
        ("rim_above: \"8 in\"", "rim_above: \"9 ft\"", "well.rim_above"),
        ("forward: (\"34 in\", \"52 in\")", "forward: (\"52 in\", \"34 in\")", "obstacles[0].forward"),
        ("name: \"boarding ladder\"", "name: \"stern seat\"", "obstacles[1].name"),
        ("splash_well: floor(\"12 in\")", "splash_well: none", "well.length"),
        ("keel_above_ground: \"25 in\"", "keel_above_ground: \"25 ft\"", "trailer.keel_above_ground"),
    ] {
        let Err(faults) = job::load("job", &with(RUNABOUT, old, new)) else {
            panic!("{new} was taken");
        };
        assert!(faults.faults.iter().any(|fault| fault.path == path), "{faults}");
    }
}

#[test]
fn a_sheet_whose_numbers_contradict_each_other_is_told_and_stops_nothing_else() {
    let text = with(RUNABOUT, "propellers: [right],", "propellers: [right], sheet: (height_at_full_tilt: \"4 in\"),");
    let finding = judge(&text, "swing/full-tilt");
    assert_eq!(finding.verdict, Verdict::Unmeasured);
    let summary = finding.summary.show(Units::Us);
    assert!(summary.contains("do not fit together"), "{summary}");
}
