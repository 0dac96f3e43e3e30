//! What is rigged: what leaves the ledger, what goes into it, and what small boats are not asked.

use sternknee::case::Case;
use sternknee::quantity::{Dimensioned, Units, pounds};
use sternknee::report::{self, Report};
use sternknee::rules::{self, Family, Verdict};

use crate::common::{finding, near, rig, step};

const FAMILIES: [Family; 6] =
    [Family::Steering, Family::Fuel, Family::Electrical, Family::Controls, Family::Network, Family::Trailer];

/// A boat that floats, the same pair before and after, with these other fields.
fn pair(fields: &str) -> String {
    let engines =
        "class: \"four-stroke 150 hp inline-4\", shaft: \"25 in\", at: [port(\"14 in\"), starboard(\"14 in\")]";
    format!(
        "(boat: (length: \"24 ft\", beam: \"8 ft 6 in\", chine_beam: \"84 in\", deadrise: \"20 deg\", depth: \"36 in\"), \
         transom: (height: \"25 in\", angle: \"14 deg\"), \
         weights: (boat: (weight: \"4,200 lb\", forward: \"120 in\", above: \"24 in\")), \
         engines_off: [({engines})], engines_on: [({engines})], {fields})"
    )
}

/// What she weighs more before than after, in pounds, in her first loading.
fn lost(job: &str) -> f64 {
    let rig = rig(job);
    let case = Case::new(&rig);
    let float = case.float().unwrap_or_else(|no_float| panic!("{no_float:?}"));
    let loaded = &float.loadings[0];
    let mass = |state: &Option<sternknee::case::float::State>| state.as_ref().unwrap().total.mass.si();
    (mass(&loaded.before) - mass(&loaded.after)) / pounds(1.0).si()
}

#[test]
fn the_old_rigging_of_a_pair_leaves_the_ledger() {
    let out = "comes_off: [
        (what: \"oil tanks\", part: oil_tank, count: 2, forward: \"2 ft\", above: \"20 in\"),
        (what: \"steering cables\", part: steering_cable, count: 2, forward: \"4 ft\", above: \"24 in\"),
        (what: \"old gauges\", part: gauge, count: 3, forward: \"10 ft\", above: \"48 in\"),
    ],";
    assert!(lost(&pair("")).abs() < 1e-6);
    // Two oil tanks of 25 lb, two cables of 9 lb, three gauges of half a pound.
    assert!((lost(&pair(out)) - 69.5).abs() < 1e-6, "{}", lost(&pair(out)));
    let judged = finding("controls/old-rigging", &pair(out));
    assert_eq!(judged.verdict, Verdict::Pass);
    let told: Vec<String> = judged.tables[0].rows.iter().map(|row| row[0].show(Units::Us)).collect();
    assert_eq!(told, ["oil tanks", "steering cables", "old gauges"]);
}

#[test]
fn a_new_battery_of_the_rigging_goes_into_the_ledger() {
    let battery = "rigging: (electrical: (batteries: [(name: \"second battery\", does: starts, goes_on: true, \
        battery: (class: \"starting battery 750 A\"), forward: \"2 ft\", above: \"14 in\")])),";
    // The class weighs 50 lb.
    assert!((lost(&pair(battery)) + 50.0).abs() < 1e-6, "{}", lost(&pair(battery)));
}

#[test]
fn a_boat_that_tells_nothing_of_rigging_is_asked_nothing() {
    for rule in rules::ALL.iter().filter(|rule| FAMILIES.contains(&rule.family)) {
        let finding = finding(rule.id, &pair(""));
        assert_eq!(finding.verdict, Verdict::NotApplicable, "{}", rule.id);
    }
}

#[test]
fn the_tiller_skiff_is_not_drowned_in_questions() {
    let job = include_str!("../../catalogs/jobs/tiller_skiff.ron");
    let rig = rig(job);
    let judged = rules::judge(&Case::new(&rig));
    let asked: Vec<&str> = judged
        .iter()
        .filter(|one| FAMILIES.contains(&one.rule.family) && one.finding.verdict == Verdict::Unmeasured)
        .map(|one| one.rule.id)
        .collect();
    assert!(asked.len() <= 3, "{asked:?}");
}

#[test]
fn what_is_to_be_bought_stands_in_the_report_with_the_finding_that_asks_for_it() {
    let job = include_str!("../../catalogs/jobs/oyster_skiff.ron")
        .replace("anodes: sound", "anodes: worn")
        .replace("terminators: 2", "terminators: 1");
    let rig = rig(&job);
    let case = Case::new(&rig);
    let judged = rules::judge(&case);
    let report = Report { case: &case, judged: &judged, units: Units::Us, explain: false };
    let json = report::json(&report);
    let list = json["rigging"]["to_buy"].as_array().unwrap();
    assert!(list.len() >= 5, "{list:#?}");
    for line in list {
        let rule = line["rule"].as_str().unwrap();
        assert!(judged.iter().any(|one| one.rule.id == rule && !one.finding.buys.is_empty()));
        let name = rules::find(rule).unwrap().full_name();
        assert!(report::text_of_all(&report).contains(&name));
    }
}

#[test]
fn a_class_and_a_description_of_one_part_are_a_slip() {
    let job =
        "(rigging: (steering: (helm: (class: \"hydraulic helm 1.7 in³\", described: (displacement: \"2 in³\")))))";
    let (job, _) = sternknee::job::load("job.ron", job).unwrap();
    assert!(sternknee::rig::resolve(&job, &crate::common::CATALOG).is_err());
}

/// Of loadings with nobody aboard the heaviest goes on the road; of two as heavy the one told first.
#[test]
fn the_heaviest_loading_that_was_told_goes_on_the_road() {
    let judged = |loadings: &[(&str, &str)]| {
        let told: Vec<String> = loadings
            .iter()
            .map(|(forward, weight)| {
                format!(
                    "(name: \"chest {forward} forward\", also: [(what: \"chest\", weight: \"{weight}\", forward: \"{forward}\", above: \"20 in\")])"
                )
            })
            .collect();
        let towed =
            "rigging: (towed: (trailer: (class: \"tandem trailer 10,000 lb\"), axle: \"8 ft\", coupling: \"24 ft\"))";
        let judged = finding("trailer/coupling", &pair(&format!("conditions: [{}], {towed},", told.join(", "))));
        judged.found.unwrap_or_else(|| panic!("{}", judged.summary.show(Units::Us))).si
    };
    let [aft, forward] = [("2 ft", "200 lb"), ("14 ft", "200 lb")];
    let (alone_aft, alone_forward) = (judged(&[aft]), judged(&[forward]));
    assert!(alone_aft < alone_forward);
    assert_eq!((judged(&[aft, forward]), judged(&[forward, aft])), (alone_aft, alone_forward));
    let lighter = ("2 ft", "100 lb");
    assert_eq!((judged(&[lighter, forward]), judged(&[forward, lighter])), (alone_forward, alone_forward));
}

/// What `work electrical` prints: a part for each check of the family under its name, what it says first, then how it was reckoned.
#[test]
fn the_working_of_a_family_has_a_part_for_each_of_its_checks() {
    let rig = rig(include_str!("cases/electrical-voltage-drop/warn.ron"));
    let case = Case::new(&rig);
    let rules: Vec<_> = rules::ALL.iter().filter(|rule| rule.family == Family::Electrical).collect();
    let parts = rules::parts(&case, Family::Electrical);
    let titles: Vec<&str> = parts.iter().map(|part| part.title.as_str()).collect();
    assert_eq!(titles, rules.iter().map(|rule| rule.full_name()).collect::<Vec<_>>());
    assert!(titles.contains(&"Electrical: voltage drop"), "{titles:?}");
    for (part, rule) in parts.iter().zip(rules) {
        let found = (rule.judge)(&case);
        let lines: Vec<String> = part.sheet.lines().iter().map(|line| line.show(Units::Us)).collect();
        assert!(lines[0].contains(&found.summary.show(Units::Us)), "{}: {lines:?}", rule.id);
        let reckoned: Vec<String> = found.working.lines().iter().map(|line| line.show(Units::Us)).collect();
        assert_eq!((&lines[1..], part.tables.len()), (&reckoned[..], found.tables.len()), "{}", rule.id);
    }
}

/// By hand, for the skiff: her engines' centres lie 50.53 in aft of the transom as they hang, 14.92 in aft of the tilt tube and
/// 3.43 in over it. At the towing tilt of 50 degrees they come to -35.61 - 14.92 cos 50 + 3.43 sin 50 = -42.57 in; twice 511 lb
/// moved 7.96 in over the 240 in from axle to coupling put 34 lb more on the coupling than the 175 lb of engines that are down.
#[test]
fn engines_are_towed_as_far_tilted_as_is_told() {
    let skiff = include_str!("../../catalogs/jobs/oyster_skiff.ron");
    let pounds = |text: &str| {
        let found = finding("trailer/coupling", text);
        (step(&found, "Wc").in_unit(Units::Us).0, found)
    };
    let (tilted, found) = pounds(skiff);
    near(tilted, 209.0, 0.5);
    assert!(found.working.lines().iter().any(|line| line.show(Units::Us).contains("-42.57 in")), "{found:?}");
    let (down, _) = pounds(&skiff.replace(", towing_tilt: \"50 deg\"", ""));
    near(down, 175.0, 0.5);
}
