//! Every unit of the program against `pint` (see `check.py`).

use std::collections::BTreeMap;
use std::path::PathBuf;

use serde_json::{Value, json};
use sternknee::quantity::{Kind, units_of};

/// Relative. Both sides begin at the same exact definitions and differ by the rounding of a few products
/// (a few 1e-16); the last digit of a wrong definition would show far above it.
const TOLERANCE: f64 = 1e-9;

fn file(name: &str) -> PathBuf {
    let folder = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/crosscheck/units");
    folder.join(name)
}

fn kept(name: &str) -> Value {
    let text = std::fs::read_to_string(file(name)).unwrap();
    serde_json::from_str(&text).unwrap()
}

/// The program's own table: by `kind/name`, the factor to coherent SI units.
fn table() -> BTreeMap<String, f64> {
    Kind::ALL
        .into_iter()
        .flat_map(units_of)
        .map(|unit| (format!("{:?}/{}", unit.kind, unit.name), unit.factor))
        .collect()
}

/// Writes the table that the script reads: `cargo test --test crosscheck -- --ignored`.
#[test]
#[ignore = "writes units.json, which the script reads"]
fn write_the_table_of_units() {
    let text = serde_json::to_string_pretty(&json!(table())).unwrap();
    std::fs::write(file("units.json"), text + "\n").unwrap();
}

#[test]
fn the_kept_table_is_the_programs() {
    let kept: BTreeMap<String, f64> = serde_json::from_value(kept("units.json")).unwrap();
    let now = table();
    assert!(
        kept.keys().eq(now.keys()),
        "the units changed: run the ignored test that writes units.json, then check.py"
    );
    for (name, factor) in now {
        assert!((kept[&name] / factor - 1.0).abs() < 1e-15, "{name}");
    }
}

#[test]
fn every_unit_agrees_with_pint() {
    let results = kept("results.json");
    assert!(results["versions"]["pint"].is_string());
    for (name, factor) in table() {
        let pint = results["units"][&name].as_f64().unwrap_or_else(|| panic!("{name} was not checked"));
        let off = (factor / pint - 1.0).abs();
        assert!(off < TOLERANCE, "{name}: {factor} here, {pint} in pint");
    }
}
