//! A report as JSON: what another program may rely on. Of a finding the words and figures are those of the text, which `tests/page`
//! compares; of what stands beside the findings the first of each list is kept.

use std::collections::{BTreeMap, BTreeSet};

use serde_json::Value;
use sternknee::quantity::{Kind, parse};

use crate::reports::{DEMOS, call};
use crate::same_as_kept;

fn report(demo: &str, units: &str) -> Value {
    let output = call(&format!("check catalogs/jobs/{demo}.ron --format json --units {units}"));
    serde_json::from_slice(&output.stdout).expect("a document")
}

/// Every path, a place in a list left out, with the sorts of value that stand there.
fn shape(value: &Value, path: &str, found: &mut BTreeMap<String, BTreeSet<&'static str>>) {
    let sort = match value {
        Value::Null => "null",
        Value::Bool(_) => "bool",
        Value::Number(_) => "number",
        Value::String(_) => "string",
        Value::Array(list) => {
            list.iter().for_each(|one| shape(one, &format!("{path}[]"), found));
            "list"
        }
        Value::Object(map) => {
            map.iter().for_each(|(name, one)| shape(one, &format!("{path}.{name}"), found));
            "object"
        }
    };
    found.entry(path.to_owned()).or_default().insert(sort);
}

#[test]
fn a_report_keeps_its_shape() {
    let mut found = BTreeMap::new();
    DEMOS.iter().for_each(|(demo, _)| shape(&report(demo, "us"), "", &mut found));
    let lines: Vec<String> = found
        .iter()
        .map(|(path, sorts)| format!("{path}: {}", sorts.iter().copied().collect::<Vec<_>>().join(" or ")))
        .collect();
    same_as_kept("report-json-shape", "what stands where in `check --format json`, over the demos", &lines.join("\n"));
}

/// Each list cut to its first, numbers to nine digits: the last ones move with the order of a sum.
fn cut(value: &mut Value) {
    match value {
        Value::Array(list) => {
            list.truncate(1);
            list.iter_mut().for_each(cut);
        }
        Value::Object(map) => map.values_mut().for_each(cut),
        Value::Number(number) if number.is_f64() => {
            let rounded: f64 = format!("{:.8e}", number.as_f64().expect("a float")).parse().expect("a number");
            *value = rounded.into();
        }
        _ => {}
    }
}

#[test]
fn the_first_of_each_list_is_the_kept_one() {
    for demo in ["tiller_skiff", "oyster_skiff"] {
        let mut report = report(demo, "us");
        cut(&mut report);
        let text = serde_json::to_string_pretty(&report).expect("JSON");
        let about = format!("sternknee check catalogs/jobs/{demo}.ron --format json, lists cut to their first");
        same_as_kept(&format!("report-{demo}-json-first"), &about, &text);
    }
}

/// What two values with their units come to, coherent SI units: of one kind, for kN and kn are read alike.
fn si(told: [(f64, &str); 2]) -> Option<[f64; 2]> {
    let texts = told.map(|(value, unit)| format!("{value} {unit}"));
    let read = |kind| Some([parse(&texts[0], kind).ok()?.si, parse(&texts[1], kind).ok()?.si]);
    Kind::ALL.into_iter().find_map(read)
}

/// Walks both reports: what is told with a unit is the same amount in both, whatever else is no words is alike.
fn same(path: &str, us: &Value, other: &Value, compared: &mut usize) {
    match (us, other) {
        (Value::Array(one), Value::Array(two)) => {
            assert_eq!(one.len(), two.len(), "{path}");
            for (i, (one, two)) in one.iter().zip(two).enumerate() {
                same(&format!("{path}[{i}]"), one, two, compared);
            }
        }
        (Value::Object(one), Value::Object(two)) => {
            let measured = |map: &serde_json::Map<String, Value>| {
                Some((map.get("value")?.as_f64()?, map.get("unit")?.as_str()?.to_owned()))
            };
            if let (Some((a, unit)), Some((b, other_unit))) = (measured(one), measured(two))
                && let Some([a, b]) = si([(a, &unit), (b, &other_unit)])
            {
                let size = a.abs().max(b.abs()).max(1e-9);
                assert!((a - b).abs() <= 1e-6 * size, "{path}: {a} and {b} ({unit}, {other_unit})");
                *compared += 1;
                return;
            }
            assert!(one.keys().eq(two.keys()), "{path}");
            one.iter().for_each(|(name, one)| same(&format!("{path}.{name}"), one, &two[name], compared));
        }
        // Words tell amounts in units.
        (Value::String(_), Value::String(_)) => {}
        _ => assert_eq!(us, other, "{path}"),
    }
}

#[test]
fn both_systems_of_units_tell_the_same_amounts() {
    for (demo, _) in DEMOS {
        let mut compared = 0;
        same("", &report(demo, "us"), &report(demo, "si"), &mut compared);
        assert!(compared > 10, "{demo}: {compared} amounts compared");
    }
}
