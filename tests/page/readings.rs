//! Every reading of a job by machine: what is declared of it, and that nothing of it is lost on the way to a report.

use sternknee::case::Case;
use sternknee::job;
use sternknee::quantity::Units;
use sternknee::reading::{Amount, Bounds, Declared, Form, Standing, Stop};
use sternknee::report::{self, Report};
use sternknee::{rig, rules};

use super::common::CATALOG;
use super::{named, stamp, with_report};

/// Whether numbers stand in a form itself, and not in fields of it.
fn is_reading(form: &Form) -> bool {
    match form {
        Form::Number(_) | Form::Span(_) | Form::Count { .. } => true,
        Form::Optional(inner) | Form::List(inner) => is_reading(inner),
        Form::Several(parts) => parts.iter().any(is_reading),
        Form::Choice(choices) => choices.iter().filter_map(|choice| choice.with.as_ref()).any(is_reading),
        Form::Text | Form::Flag | Form::Fields(_) => false,
    }
}

fn readings() -> impl Iterator<Item = &'static Standing> {
    job::fields().iter().filter(|standing| is_reading(&standing.form))
}

/// What says how a reading is taken: itself, or the nearest of what it stands in.
fn line(standing: &Standing) -> Option<&'static Declared> {
    let outward = [standing.declared].into_iter().chain(standing.within.iter().rev().copied());
    outward.into_iter().find(|declared| declared.taking.is_some())
}

/// Directions and numbers of turns need no bound: any will do.
const WITHOUT_BOUNDS: [&str; 2] = ["along", "free_side"];

#[test]
fn every_reading_has_a_bound_a_line_on_the_sheet_a_place_and_a_description() {
    let mut lacking = Vec::new();
    let mut lacks = |standing: &Standing, what: &str| lacking.push(format!("{} has no {what}", standing.path));
    for standing in readings() {
        if standing.declared.bounds.is_none() && !WITHOUT_BOUNDS.contains(&standing.declared.field) {
            lacks(standing, "bound");
        }
        if standing.declared.about().is_empty() {
            lacks(standing, "description");
        }
        let Some(line) = line(standing) else {
            lacks(standing, "line");
            continue;
        };
        let taking = line.taking.expect("a line is taken somehow");
        let read_off = matches!(taking.stop, Stop::Papers | Stop::Items | Stop::Desk)
            || ["sheet", "papers", "manual", "offer", "plate", "scale", "used for", "on the water"]
                .iter()
                .any(|word| taking.place.contains(word));
        if line.spot.is_none() && !read_off {
            lacks(standing, "place on the sketch");
        }
        if taking.stop != Stop::Desk && !job::lines().contains(&line) {
            lacks(standing, "line on the sheet");
        }
    }
    assert!(lacking.is_empty(), "{}", lacking.join("\n"));
    assert!(readings().count() > 200);
}

/// Writes jobs by machine, a reading in each that nobody took, with a note that stands nowhere else.
struct Writer {
    notes: usize,
}

impl Writer {
    /// Every way to write what this form takes with one such reading in it, and what was noted there.
    fn assumed(&mut self, form: &Form, declared: Option<&Declared>) -> Vec<(String, String)> {
        match form {
            Form::Number(_) => vec![self.number(declared)],
            Form::Span(_) => {
                let (text, note) = self.number(declared);
                let plain = plain(form, declared);
                let (_, to) = plain.split_once("to: ").expect("a span has two ends");
                vec![(format!("(from: {text}, to: {to}"), note)]
            }
            Form::Count { .. } | Form::Text | Form::Flag => Vec::new(),
            Form::Optional(inner) => self.assumed(inner, declared),
            Form::List(inner) => around(self.assumed(inner, declared), "[", "]"),
            Form::Several(parts) => (0..parts.len())
                .flat_map(|at| {
                    let before: String = parts[..at].iter().map(|part| plain(part, declared) + ", ").collect();
                    let behind: String =
                        parts[at + 1..].iter().map(|part| ", ".to_owned() + &plain(part, declared)).collect();
                    around(self.assumed(&parts[at], declared), &format!("({before}"), &format!("{behind})"))
                })
                .collect(),
            Form::Choice(choices) => choices
                .iter()
                .filter_map(|choice| Some((choice, choice.with.as_ref()?)))
                .flat_map(|(choice, with)| match with {
                    Form::Fields(_) if !is_newtype(choice.word) => {
                        around(self.assumed(with, declared), choice.word, "")
                    }
                    _ => around(self.assumed(with, declared), &format!("{}(", choice.word), ")"),
                })
                .collect(),
            Form::Fields(fields) => fields
                .iter()
                .enumerate()
                .flat_map(|(at, field)| {
                    let others: String = fields
                        .iter()
                        .enumerate()
                        .filter(|(i, other)| *i != at && needed(other))
                        .map(|(_, other)| {
                            format!(", {}: {}", other.declared.field, plain(&other.form, Some(other.declared)))
                        })
                        .collect();
                    let inner = self.assumed(&field.form, Some(field.declared));
                    around(inner, &format!("({}: ", field.declared.field), &format!("{others})"))
                })
                .collect(),
        }
    }

    fn number(&mut self, declared: Option<&Declared>) -> (String, String) {
        self.notes += 1;
        let note = format!("n{}n", self.notes);
        let value = plain(&Form::Number(sternknee::quantity::Kind::Length), declared);
        (format!("(value: {value}, basis: assumed, note: \"{note}\")"), note)
    }
}

/// A choice whose fields are those of a thing of its own: they stand in parentheses of their own.
fn is_newtype(word: &str) -> bool {
    word == "body"
}

fn needed(field: &sternknee::reading::Field) -> bool {
    !field.has_default && !matches!(field.form, Form::Optional(_))
}

fn around(all: Vec<(String, String)>, before: &str, behind: &str) -> Vec<(String, String)> {
    all.into_iter().map(|(text, note)| (format!("{before}{text}{behind}"), note)).collect()
}

/// Something that this form takes.
fn plain(form: &Form, declared: Option<&Declared>) -> String {
    match form {
        Form::Number(_) => format!("\"{}\"", within(declared)),
        Form::Span(_) => format!("(from: \"{0}\", to: \"{0}\")", within(declared)),
        Form::Count { .. } => "1".to_owned(),
        Form::Flag => "false".to_owned(),
        Form::Text => match declared.map(|declared| declared.field) {
            Some("material") => "\"Douglas-fir marine plywood\"".to_owned(),
            Some("size") => "\"1/2-13\"".to_owned(),
            _ => "\"x\"".to_owned(),
        },
        Form::Optional(inner) => plain(inner, declared),
        Form::List(_) => "[]".to_owned(),
        Form::Several(parts) => {
            format!("({})", parts.iter().map(|part| plain(part, declared)).collect::<Vec<_>>().join(", "))
        }
        Form::Choice(choices) => {
            let first = choices.iter().find(|choice| choice.with.is_none()).unwrap_or(&choices[0]);
            match &first.with {
                None => first.word.to_owned(),
                Some(with @ Form::Fields(_)) if !is_newtype(first.word) => {
                    format!("{}{}", first.word, plain(with, declared))
                }
                Some(with) => format!("{}({})", first.word, plain(with, declared)),
            }
        }
        Form::Fields(fields) => {
            let fields = fields.iter().filter(|field| needed(field));
            let fields =
                fields.map(|field| format!("{}: {}", field.declared.field, plain(&field.form, Some(field.declared))));
            format!("({})", fields.collect::<Vec<_>>().join(", "))
        }
    }
}

/// A value in the middle of its bounds.
fn within(declared: Option<&Declared>) -> Amount {
    match declared.and_then(|declared| declared.bounds) {
        Some(Bounds::Between(least, most)) => {
            Amount { value: (least.si() + most.si()) / 2.0 / least.unit.factor, unit: least.unit }
        }
        other => panic!("{declared:?} is bounded by {other:?}"),
    }
}

#[test]
fn no_reading_that_nobody_took_is_lost_on_the_way_to_text_page_and_json() {
    let mut writer = Writer { notes: 0 };
    let all = writer.assumed(&Form::Fields(fields_of_job()), None);
    let mut lost = Vec::new();
    for (text, note) in &all {
        let draft = job::draft("job.ron", text);
        // Faults of contradiction are another test's: one reading by itself contradicts much.
        let Some(job) = draft.value else {
            panic!("{text}: {:?}", draft.faults);
        };
        let rig = rig::resolve(&job, &CATALOG).unwrap_or_else(|slips| panic!("{text}: {slips:?}"));
        let case = Case::new(&rig);
        let judged = rules::judge(&case);
        let report = Report { case: &case, judged: &judged, units: Units::Us, explain: false };
        for (what, told) in [
            ("text", report::text_of_all(&report)),
            ("page", report::page(&report, &stamp(), &named(&report))),
            ("JSON", report::json(&report)["assumed"].to_string()),
        ] {
            if !told.contains(note.as_str()) {
                lost.push(format!("{what} loses {text}"));
            }
        }
    }
    assert!(lost.is_empty(), "{}", lost.join("\n"));
    assert!(all.len() > 200, "{} readings", all.len());
}

fn fields_of_job() -> Vec<sternknee::reading::Field> {
    match <job::Job as sternknee::reading::Part>::form() {
        Form::Fields(fields) => fields,
        other => panic!("{other:?}"),
    }
}

#[test]
fn every_reading_used_stands_in_the_json_with_its_place_and_basis() {
    let job = "(engines_on: [(class: \"four-stroke 150 hp inline-4\", at: [port(\"14 in\")], \
               bolts: (washer: \"2 in ± 1/16 in\"))], structure: (knees: [(at: port(\"12 in\"), \
               height: (value: \"20 in\", basis: builder, note: \"his drawing\"))]))";
    with_report(job, |report| {
        let json = report::json(report);
        let find = |field: &str| {
            let all = json["readings"].as_array().expect("readings");
            all.iter().find(|one| one["field"] == field).unwrap_or_else(|| panic!("{field} is not used")).clone()
        };
        assert_eq!(find("engines_on[0].described.power")["basis"], "catalog");
        assert_eq!(find("engines_on[0].at[0]")["text"], "14 in to port");
        let washer = find("engines_on[0].bolts.washer");
        assert_eq!((washer["text"].as_str(), washer["basis"].as_str()), (Some("2 in ± 1/16 in"), Some("measured")));
        let knee = find("structure.knees[0].height");
        assert_eq!((knee["basis"].as_str(), knee["note"].as_str()), (Some("builder"), Some("his drawing")));
    });
}

#[test]
fn the_sheet_asks_for_the_one_figure_of_a_bracket_that_lacks() {
    let job = "(engines_on: [(class: \"four-stroke 150 hp inline-4\", shaft: \"25 in\", bracket: (described: \
               (setback: \"30 in\", rated_power: \"300 hp\", rated_weight: \"1,200 lb\"))), ])";
    with_report(job, |report| {
        let list = report::measuring_list("sheet", report.judged, Units::Us);
        assert!(list.contains("the bracket's own weight"), "{list}");
        assert!(list.contains("engines_on[].bracket.described.weight"), "{list}");
        assert!(!list.contains("the bracket's rated weight") && !list.contains("the bracket's rated power"), "{list}");
    });
}

#[test]
fn a_job_described_as_data_gives_kind_units_bounds_and_how_a_reading_is_taken() {
    let job = job::describe();
    let field = |of: &serde_json::Value, name: &str| {
        let fields = of["fields"].as_array().or(of["of"]["fields"].as_array()).expect("fields");
        fields.iter().find(|field| field["field"] == name).unwrap_or_else(|| panic!("no field {name}")).clone()
    };
    let height = field(&field(&job, "transom"), "height");
    assert_eq!((height["takes"].as_str(), height["kind"].as_str()), (Some("number"), Some("length")));
    assert_eq!(height["units"][0], "in");
    assert_eq!(height["bounds"]["least"]["text"], "6 in");
    assert_eq!(height["closely"]["text"], "1/8 in");
    assert_eq!(height["spot"], serde_json::json!([180, 350]));
    assert!(height["how"].as_str().is_some_and(|how| how.contains("straightedge")));
    let engines = field(&job, "engines_on");
    assert_eq!(engines["takes"], "list");
    let trim = field(&field(&engines, "described"), "trim");
    assert_eq!((trim["takes"].as_str(), trim["kind"].as_str()), (Some("range"), Some("angle")));
    let plate = field(&job, "plate");
    let capacity = plate["choices"].as_array().expect("choices").iter().find(|choice| choice["word"] == "capacity");
    assert_eq!(field(&capacity.expect("a capacity plate")["with"], "persons")["takes"], "count");
}
