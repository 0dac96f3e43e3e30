//! What a catalog file must not say.

use uom::si::f64::{Mass, Power};

use super::entries::{CatalogFile, Entry};
use crate::job::{Checker, Cycle, EngineSpec, check_bracket, check_engine, check_rigged};
use crate::quantity::{Dimensioned, Measure, Reading, Units, horsepower, pounds};
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
    for (i, entry) in file.engines.iter().enumerate() {
        engine(&mut checker, &format!("engines[{i}].spec"), entry);
    }
    for (i, entry) in file.bolt_sizes.iter().enumerate() {
        let (path, size) = (format!("bolt_sizes[{i}].spec"), &entry.spec);
        above_zero(&mut checker, &format!("{path}.diameter"), &size.diameter);
        above_zero(&mut checker, &format!("{path}.pitch"), &size.pitch);
        above_zero(&mut checker, &format!("{path}.stress_area"), &size.stress_area);
        above_zero(&mut checker, &format!("{path}.nut_height"), &size.nut_height);
        above_zero(&mut checker, &format!("{path}.washer_thickness"), &size.washer_thickness);
        above_zero(&mut checker, &format!("{path}.washer_diameter"), &size.washer_diameter);
        let (round, told) =
            (0.25 * std::f64::consts::PI * size.diameter.value.si().powi(2), size.stress_area.value.si());
        if told > round {
            checker.fault(
                &format!("{path}.stress_area"),
                "larger than the bolt is round",
                "the tensile stress area that the standard prints, below that of the major diameter",
            );
        }
    }
    for (i, entry) in file.bolt_grades.iter().enumerate() {
        let (path, grade) = (format!("bolt_grades[{i}].spec"), &entry.spec);
        above_zero(&mut checker, &format!("{path}.tensile"), &grade.tensile);
        above_zero(&mut checker, &format!("{path}.yield_strength"), &grade.yield_strength);
        if let Some(proof) = &grade.proof {
            above_zero(&mut checker, &format!("{path}.proof"), proof);
        }
        if grade.yield_strength.value > grade.tensile.value {
            checker.fault(&format!("{path}.yield_strength"), "yields after it breaks", "check both strengths");
        }
    }
    for (i, entry) in file.materials.iter().enumerate() {
        let (path, material) = (format!("materials[{i}].spec"), &entry.spec);
        above_zero(&mut checker, &format!("{path}.density"), &material.density);
        for (field, stress) in [
            ("modulus_along", &material.modulus_along),
            ("modulus_across", &material.modulus_across),
            ("shear_modulus", &material.shear_modulus),
            ("transverse_shear_modulus", &material.transverse_shear_modulus),
            ("bending_strength", &material.bending_strength),
            ("shear_strength", &material.shear_strength),
            ("crushing_strength", &material.crushing_strength),
            ("bearing_strength", &material.bearing_strength),
        ] {
            above_zero(&mut checker, &format!("{path}.{field}"), stress);
        }
        if let Some(across) = &material.bending_strength_across {
            above_zero(&mut checker, &format!("{path}.bending_strength_across"), across);
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
        for (i, step) in table.steps.iter().enumerate() {
            above_zero(&mut checker, &format!("power_capacity.steps[{i}].power"), &step.power);
        }
        let last = table.steps.last().map_or(0.0, |step| f64::from(step.factor_to));
        if !table.steps_end.is_finite() || table.steps_end < last {
            checker.fault(
                "power_capacity.steps_end",
                "ends before its last step, or nowhere",
                "the greatest factor that the steps cover: steps_end: 52.5",
            );
        }
        let rising = table.steps.windows(2).all(|two| two[0].factor_to < two[1].factor_to);
        if table.steps.is_empty() || !rising {
            checker.fault("power_capacity.steps", "the steps do not rise", "one step a line, the least factor first");
        }
    }
    if let Some(table) = &file.engine_weights {
        for (i, row) in table.rows.iter().enumerate() {
            let path = format!("engine_weights.rows[{i}]");
            above_zero(&mut checker, &format!("{path}.power_to"), &row.power_to);
            for (field, weight) in [("dry", &row.dry), ("running", &row.running), ("swamped", &row.swamped)] {
                above_zero(&mut checker, &format!("{path}.{field}"), weight);
            }
            for (field, weight) in [
                ("controls", &row.controls),
                ("battery_dry", &row.battery_dry),
                ("battery_submerged", &row.battery_submerged),
                ("portable_fuel", &row.portable_fuel),
            ] {
                if weight.value.si() < 0.0 {
                    checker.fault(&format!("{path}.{field}"), "below zero", "0 lb where there is none");
                }
            }
        }
        let rising = table.rows.windows(2).all(|two| two[0].power_to.value < two[1].power_to.value);
        if table.rows.is_empty() || !rising {
            checker.fault("engine_weights.rows", "the rows do not rise", "one row a line, the least power first");
        }
    }
    checker.faults
}

fn above_zero<Q: Dimensioned>(checker: &mut Checker, path: &str, reading: &Reading<Q>) {
    if reading.value.si() <= 0.0 {
        checker.fault(path, "is not above zero", "no part has such a figure");
    }
}

/// How far the power in a class's name may be from its figure, as a part. Common practice, no source: makers round.
const NAMED_APART: f64 = 0.06;
/// How many times the usual weight for its power an outboard weighs, either way. Common practice, no source.
const WEIGHT_APART: f64 = 3.0;

/// An engine class against its own name, and against what outboards weigh.
fn engine(checker: &mut Checker, path: &str, entry: &Entry<EngineSpec>) {
    let spec = &entry.spec;
    let Some(power) = &spec.power else { return };
    if let Some(named) = named_power(&entry.name)
        && (named / power.value.si() - 1.0).abs() > NAMED_APART
    {
        checker.fault(
            &format!("{path}.power"),
            format!("{}, and the class is called `{}`", Measure::of(power.value).show(Units::Both), entry.name),
            "kilowatts for horsepower, or a figure too many? Name and power say the same",
        );
    }
    let weight = [("running_weight", &spec.running_weight), ("dry_weight", &spec.dry_weight)];
    if let Some((field, weight)) = weight.into_iter().find_map(|(field, weight)| Some((field, weight.as_ref()?)))
        && spec.cycle != Some(Cycle::Electric)
    {
        let share = weight.value / usual_weight(power.value);
        if !(1.0 / WEIGHT_APART..=WEIGHT_APART).contains(&share.si()) {
            checker.fault(
                &format!("{path}.{field}"),
                format!(
                    "{} with {}",
                    Measure::of(weight.value).show(Units::Both),
                    Measure::of(power.value).show(Units::Both)
                ),
                format!(
                    "outboards of that power weigh about {}",
                    Measure::of(usual_weight(power.value)).show(Units::Both)
                ),
            );
        }
    }
    if let (Some(trim), Some(tilt)) = (&spec.trim, &spec.full_tilt)
        && trim.to.value >= tilt.value
    {
        checker.fault(
            &format!("{path}.full_tilt"),
            "does not tilt beyond its trim range",
            "check `trim` and `full_tilt`",
        );
    }
    for (i, shafts) in spec.shafts.windows(2).enumerate() {
        if shafts[1].rest_to_plate.value <= shafts[0].rest_to_plate.value {
            checker.fault(
                &format!("{path}.shafts[{}]", i + 1),
                "no longer than the shaft before it",
                "the shortest first",
            );
        }
    }
}

/// What an outboard of this power usually weighs. Common practice, no source: fitted by eye to ABYC S-30, table 1A, and to newer
/// four-strokes, lb and hp: 30 + 10 P^0.72.
fn usual_weight(power: Power) -> Mass {
    pounds(30.0 + 10.0 * (power / horsepower(1.0)).si().powf(0.72))
}

/// The power in a class's name, W: "four-stroke 150 hp inline-4".
fn named_power(name: &str) -> Option<f64> {
    let words: Vec<&str> = name.split_whitespace().collect();
    words.windows(2).find_map(|two| {
        let number: f64 = two[0].parse().ok()?;
        let unit = match two[1] {
            "hp" => horsepower(1.0),
            "kW" => Power::from_si(1000.0),
            _ => return None,
        };
        Some(number * unit.si())
    })
}

/// Names of a list of rigging, and the bounds of its readings.
fn rigged<T: Part>(checker: &mut Checker, list: &str, entries: &[Entry<T>]) {
    names(checker, list, entries);
    for (i, entry) in entries.iter().enumerate() {
        check_rigged(checker, &format!("{list}[{i}].spec"), &entry.spec);
    }
}

/// Letters of a name.
const LONGEST_NAME: usize = 300;

fn names<T>(checker: &mut Checker, list: &str, entries: &[Entry<T>]) {
    for (i, entry) in entries.iter().enumerate() {
        let path = format!("{list}[{i}].name");
        if entry.name.trim().is_empty() {
            checker.fault(&path, "an entry without a name", "a job finds it by its name");
        }
        if entry.name.chars().count() > LONGEST_NAME {
            checker.fault(&path, "a name that no line can hold", format!("at most {LONGEST_NAME} letters"));
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
