//! What a catalog file must not say.

use super::entries::{CatalogFile, Entry};
use crate::job::{Checker, check_bracket, check_engine, check_rigged};
use crate::quantity::Dimensioned;
use crate::reading::Part;
use crate::written::{Fault, Page};

/// Everything about the file's entries that cannot be.
pub(super) fn file(file: &CatalogFile, page: &Page) -> Vec<Fault> {
    let mut checker = Checker::new(page);
    names(&mut checker, "engines", &file.engines);
    names(&mut checker, "brackets", &file.brackets);
    names(&mut checker, "bolt_sizes", &file.bolt_sizes);
    names(&mut checker, "bolt_grades", &file.bolt_grades);
    names(&mut checker, "materials", &file.materials);
    rigged(&mut checker, "hoses", &file.hoses);
    rigged(&mut checker, "wires", &file.wires);
    rigged(&mut checker, "batteries", &file.batteries);
    rigged(&mut checker, "fuses", &file.fuses);
    rigged(&mut checker, "helms", &file.helms);
    rigged(&mut checker, "cylinders", &file.cylinders);
    rigged(&mut checker, "trailers", &file.trailers);
    for (i, entry) in file.engines.iter().enumerate() {
        let path = format!("engines[{i}].spec");
        check_engine(&mut checker, &path, &entry.spec);
        if entry.spec.power.is_none() {
            checker.fault(&path, "an engine class without `power`", "give its rated power: power: \"150 hp\"");
        }
    }
    for (i, entry) in file.brackets.iter().enumerate() {
        check_bracket(&mut checker, &format!("brackets[{i}].spec"), &entry.spec);
    }
    for (i, entry) in file.materials.iter().enumerate() {
        if let Some(sheet) = &entry.spec.plywood {
            let path = format!("materials[{i}].spec.plywood");
            if sheet.plies < 3 || sheet.plies % 2 == 0 || sheet.thickness.value.si() <= 0.0 {
                checker.fault(
                    &path,
                    "no such sheet of plywood is made",
                    "an odd number of plies, 3 or more: plywood: (plies: 7, thickness: \"3/4 in\")",
                );
            }
        }
    }
    if let Some(table) = &file.power_capacity {
        let rising = table.steps.windows(2).all(|two| two[0].factor_to < two[1].factor_to);
        if table.steps.is_empty() || !rising {
            checker.fault("power_capacity.steps", "the steps do not rise", "one step a line, the least factor first");
        }
    }
    if let Some(table) = &file.engine_weights {
        let rising = table.rows.windows(2).all(|two| two[0].power_to.value < two[1].power_to.value);
        if table.rows.is_empty() || !rising {
            checker.fault("engine_weights.rows", "the rows do not rise", "one row a line, the least power first");
        }
    }
    checker.faults
}

/// Names of a list of rigging, and the bounds of its readings.
fn rigged<T: Part>(checker: &mut Checker, list: &str, entries: &[Entry<T>]) {
    names(checker, list, entries);
    for (i, entry) in entries.iter().enumerate() {
        check_rigged(checker, &format!("{list}[{i}].spec"), &entry.spec);
    }
}

fn names<T>(checker: &mut Checker, list: &str, entries: &[Entry<T>]) {
    for (i, entry) in entries.iter().enumerate() {
        let path = format!("{list}[{i}].name");
        if entry.name.trim().is_empty() {
            checker.fault(&path, "an entry without a name", "a job finds it by its name");
        }
        if entries[..i].iter().any(|earlier| earlier.name == entry.name) {
            checker.fault(
                &path,
                format!("`{}` stands in this file twice", entry.name),
                "give one of the two another name",
            );
        }
    }
}
