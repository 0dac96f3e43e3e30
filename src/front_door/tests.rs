use serde_json::{Value, json as value};

use super::reply;

const SKIFF: &str = include_str!("../../catalogs/jobs/tiller_skiff.ron");

fn replied(question: &Value) -> Value {
    serde_json::from_str(&reply(&question.to_string())).expect("JSON")
}

#[test]
fn a_job_is_judged_through_the_front_door() {
    let said = replied(&value!({ "ask": "check", "name": "skiff.ron", "text": SKIFF }));
    assert_eq!(said["faults"], value!([]));
    assert!(said["report"]["findings"].as_array().expect("findings").len() > 40);
    assert!(!said["drawings"].as_array().expect("drawings").is_empty());
}

#[test]
fn every_fault_is_told_with_its_place() {
    let said =
        replied(&value!({ "ask": "check", "name": "x.ron", "text": "(\n  boat: (length: \"12\",\n  beam: 7),\n)" }));
    let faults = said["faults"].as_array().expect("faults");
    let at = |fault: &Value| (fault["path"].clone(), fault["line"].clone());
    let all: Vec<_> = faults.iter().map(at).collect();
    assert_eq!(all, [(value!("boat.length"), value!(2)), (value!("boat.beam"), value!(3))]);
    assert_eq!(said["report"], Value::Null);
}

#[test]
fn a_file_that_did_not_come_with_the_job_is_a_fault_at_its_name() {
    let text = "(hull: mesh(file: \"hull.stl\", unit: \"1 mm\"))";
    let said = replied(&value!({ "ask": "check", "name": "x.ron", "text": text }));
    assert_eq!(said["faults"][0]["path"], "hull.file");
}

#[test]
fn a_question_that_makes_no_sense_is_answered_by_a_sentence() {
    for question in ["", "[]", "{\"ask\": \"dance\"}", "{\"ask\": \"check\"}"] {
        let said: Value = serde_json::from_str(&reply(question)).expect("JSON");
        assert!(said["cannot"].is_string(), "{question}: {said}");
    }
}
