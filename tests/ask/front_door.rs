//! The front door for other languages: a question as JSON in, an answer as JSON out.

use serde_json::{Value, json as value};
use sternknee::front_door::reply;
use sternknee::job;

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
fn a_form_can_be_made_from_the_description() {
    let said = replied(&value!({ "ask": "describe" }));
    let stops = said["stops"].as_array().expect("stops");
    let mut places = 0;
    let mut open = vec![said["form"].clone()];
    while let Some(form) = open.pop() {
        match form["takes"].as_str().expect("a word") {
            "fields" => open.extend(form["fields"].as_array().expect("fields").iter().cloned()),
            "list" => open.push(form["of"].clone()),
            "several" => open.extend(form["of"].as_array().expect("parts").iter().cloned()),
            "choice" => {
                let choices = form["choices"].as_array().expect("choices");
                open.extend(choices.iter().map(|choice| choice["with"].clone()).filter(|with| !with.is_null()));
            }
            takes => assert!(["number", "range", "count", "plain number", "text", "flag"].contains(&takes), "{form}"),
        }
        if let Some(unit) = form.get("unit").filter(|_| form["takes"] == "number") {
            assert!(form["units"].as_array().expect("units").contains(unit), "{form}");
        }
        if let Some(stop) = form.get("stop") {
            assert!(stops.contains(stop), "{form}");
            places += 1;
        }
    }
    assert!(places > 60, "{places}");
}

#[test]
fn every_file_that_a_job_can_name_is_described_as_one() {
    let named: Vec<&str> = job::fields()
        .iter()
        .filter(|standing| !standing.declared.files.is_empty())
        .map(|standing| standing.path.as_str())
        .collect();
    assert_eq!(named, ["hull.file", "photographs[].file", "trial.before.file", "trial.after.file"]);
    let job = "(hull: mesh(file: \"a\", unit: \"1 mm\"), trial: (before: (file: \"b\"), after: (file: \"c\")))";
    let job = job::draft("x.ron", job).value.expect("a job");
    let asked_for: Vec<&str> = job.files().iter().map(|(path, _)| *path).collect();
    // Photographs go into a page, and are not judged.
    let judged: Vec<&str> = named.into_iter().filter(|path| !path.starts_with("photographs")).collect();
    assert_eq!(asked_for, judged);
}

#[test]
fn what_counts_where_nothing_is_written_is_described() {
    let said = replied(&value!({ "ask": "describe" }));
    fn find<'v>(form: &'v Value, field: &str) -> &'v Value {
        form["fields"].as_array().expect("fields").iter().find(|one| one["field"] == field).expect("the field")
    }
    assert_eq!(find(&said["form"], "sitting")["default"], "before_ordering");
    assert_eq!(find(&find(&said["form"], "edges")["of"], "kind")["default"], "other");
    assert_eq!(find(&said["form"], "made_up")["default"], "false");
    assert_eq!(find(&said["form"], "steering")["default"], Value::Null);
}

#[test]
fn every_class_that_a_job_can_name_is_offered_from_its_own_list() {
    let said = replied(&value!({ "ask": "catalog" }));
    let names = said["names"].as_object().expect("names");
    assert!(names.values().all(|list| !list.as_array().expect("a list").is_empty()));
    for standing in job::fields().iter().filter(|standing| standing.declared.field == "class") {
        let ends = |end: &&String| standing.path.ends_with(&format!(".{end}"));
        let longest = names.keys().filter(ends).max_by_key(|end| end.len()).expect("a list");
        let is_engine = standing.path.contains("engines_o") && !standing.path.contains("bracket");
        assert_eq!(longest == "class", is_engine, "{}", standing.path);
    }
}

#[test]
fn what_is_typed_without_a_unit_is_read_with_the_one_of_its_field() {
    for (typed, unit, written) in [
        ("12-7/8", "in", "12-7/8 in"),
        ("12-7/8 ± 1/8", "in", "12-7/8 in ± 1/8 in"),
        ("9 ft 8 in", "in", "9 ft 8 in"),
        ("654 mm", "in", "654 mm"),
        (" 16 ", "ft", "16 ft"),
    ] {
        let said = replied(&value!({ "ask": "read", "kind": "length", "typed": typed, "unit": unit }));
        assert_eq!(said["written"], written);
        assert!(said["shown"].is_string(), "{said}");
    }
    let said = replied(&value!({ "ask": "read", "kind": "length", "typed": "12 elbows", "unit": "in" }));
    assert_eq!((said["written"].clone(), said["problem"].is_string()), (value!("12 elbows"), true));
}

#[test]
fn a_job_is_altered_entry_by_entry() {
    let changes = value!([
        { "path": "boat.length", "words": "16 ft" },
        { "path": "engines_on[0]", "value": "()" },
        { "path": "engines_on[0].class", "words": "a \"b\"" },
        { "path": "title" },
    ]);
    let said = replied(&value!({ "ask": "alter", "text": "(title: \"x\", /* kept */ odd: 1)", "changes": changes }));
    assert_eq!(said["text"], "(/* kept */ odd: 1, boat: (length: \"16 ft\"), engines_on: [(class: \"a \\\"b\\\"\")])");
    assert!(said["entries"].as_array().expect("entries").iter().any(|entry| entry["words"] == "16 ft"));
    assert_eq!(said["lost_remarks"], value!([]));
}

#[test]
fn words_come_back_as_they_were_put_in() {
    for words in ["the yard's rigger", "a \"b\" \\ c", "12-7/8 in ± 1/8 in", "two\nlines\u{1b}\u{7}", "//no /* remark"]
    {
        let said = replied(&value!({ "ask": "alter", "text": "()", "changes": [{ "path": "notes", "words": words }] }));
        let entry = &said["entries"].as_array().expect("entries")[0];
        assert_eq!(entry["words"], words, "{}", said["text"]);
    }
    let said =
        replied(&value!({ "ask": "alter", "text": "()", "changes": [{ "path": "by", "words": "the yard's rigger" }] }));
    assert_eq!(said["text"], "(by: \"the yard's rigger\")");
}

#[test]
fn a_remark_that_goes_with_what_it_stands_in_is_told() {
    let text = "(plate: capacity(persons: 6 /* mine */, power: \"9 hp\"), /* twice */ title: \"x\" /* twice */)";
    let said = replied(&value!({ "ask": "alter", "text": text, "changes": [{ "path": "plate", "value": "none" }] }));
    assert_eq!(said["text"], "(plate: none, /* twice */ title: \"x\" /* twice */)");
    assert_eq!(said["lost_remarks"], value!(["/* mine */"]));
}

#[test]
fn a_quick_answer_holds_the_cheap_families_and_a_whole_one_all() {
    let count = |quickly: bool| {
        let said = replied(&value!({ "ask": "judge", "name": "skiff.ron", "text": SKIFF, "quickly": quickly }));
        said["findings"].as_array().expect("findings").len()
    };
    assert!(count(true) > 20 && count(true) < count(false));
}

#[test]
fn a_question_that_makes_no_sense_is_answered_by_a_sentence() {
    for question in ["", "[]", "{\"ask\": \"dance\"}", "{\"ask\": \"check\"}"] {
        let said: Value = serde_json::from_str(&reply(question)).expect("JSON");
        assert!(said["cannot"].is_string(), "{question}: {said}");
    }
}
