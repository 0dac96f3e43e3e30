//! What is rigged cannot be just anything.

use super::Checker;
use crate::job::Job;
use crate::job::rigging::{Bends, CylinderSpec, Rigging, Walk};
use crate::quantity::{Dimensioned, Units, parse};

/// Engines, cylinders, tyres: more than this nobody has.
const COUNT: std::ops::RangeInclusive<u8> = 1..=12;
/// Gauges of the American wire gauge: 4/0 to 40.
const GAUGES: std::ops::RangeInclusive<i8> = -3..=40;
/// Years that a part may be old.
const YEARS: std::ops::RangeInclusive<f64> = 0.0..=80.0;
/// Ends, bends and valves of a fuel line.
const FITTINGS: std::ops::RangeInclusive<u8> = 0..=60;

/// Every reading of a thing that is rigged lies within its bounds.
pub fn check_rigged(checker: &mut Checker, path: &str, thing: &dyn Walk) {
    let mut out = Vec::new();
    thing.walk(path, &mut |visited| {
        let bound = |text| parse(text, visited.value.kind).map_or(f64::NAN, |parsed| parsed.si);
        let (least, most) = visited.bounds;
        if !(bound(least)..=bound(most)).contains(&visited.value.si) {
            out.push((
                visited.path,
                format!("{} cannot be right: {}", visited.value.show(Units::Both), visited.name),
                format!("between {least} and {most} is expected"),
            ));
        }
    });
    for (path, message, help) in out {
        checker.fault(&path, message, help);
    }
}

/// All that is rigged.
pub(super) fn rigging(checker: &mut Checker, job: &Job) {
    let rigging = &job.rigging;
    check_rigged(checker, "rigging", rigging);
    counts(checker, rigging);
    for (path, bends) in rigging.ways() {
        ways(checker, &path, bends);
    }
    if let Some(cylinder) = rigging.steering.as_ref().and_then(|steering| steering.cylinder.spec()) {
        rod(checker, cylinder);
    }
}

fn counts(checker: &mut Checker, rigging: &Rigging) {
    if let Some(steering) = &rigging.steering {
        checker.count("rigging.steering.cylinders", steering.cylinders, COUNT);
    }
    for (i, line) in rigging.fuel.iter().flat_map(|fuel| &fuel.lines).enumerate() {
        let path = format!("rigging.fuel.lines[{i}]");
        checker.count(&format!("{path}.engines"), line.engines, COUNT);
        checker.count(&format!("{path}.years"), line.years, YEARS);
        for (field, count) in [("elbows", line.elbows), ("barbs", line.barbs), ("valves", line.valves)] {
            checker.count(&format!("{path}.{field}"), Some(count), FITTINGS);
        }
    }
    for (i, circuit) in rigging.electrical.iter().flat_map(|electrical| &electrical.circuits).enumerate() {
        let gauge = circuit.wire.spec().and_then(|wire| wire.gauge);
        checker.count(&format!("rigging.electrical.circuits[{i}].wire.described.gauge"), gauge, GAUGES);
    }
    for (i, battery) in rigging.electrical.iter().flat_map(|electrical| &electrical.batteries).enumerate() {
        let path = format!("rigging.electrical.batteries[{i}]");
        checker.count(&format!("{path}.engines"), battery.engines, COUNT);
        let gauge = battery.cable.as_ref().and_then(|cable| cable.wire.spec()).and_then(|wire| wire.gauge);
        checker.count(&format!("{path}.cable.wire.described.gauge"), gauge, GAUGES);
    }
    if let Some(controls) = &rigging.controls {
        checker.count("rigging.controls.stations", controls.stations, COUNT);
        for (i, cable) in controls.cables.iter().enumerate() {
            checker.count(&format!("rigging.controls.cables[{i}].years"), cable.years, YEARS);
            checker.count(&format!("rigging.controls.cables[{i}].count"), cable.count, COUNT);
        }
    }
    for (i, kept) in rigging.kept.iter().enumerate() {
        checker.count(&format!("rigging.kept[{i}].years"), kept.years, YEARS);
    }
}

/// Between legs stand bends: one fewer than legs at most.
fn ways(checker: &mut Checker, path: &str, (legs, bends): Bends<'_>) {
    if !bends.is_empty() && bends.len() >= legs.len() {
        checker.fault(
            &format!("{path}.bends"),
            format!("{} bends cannot stand between {} legs", bends.len(), legs.len()),
            "legs run from corner to corner, so there is one leg more than bends",
        );
    }
}

fn rod(checker: &mut Checker, cylinder: &CylinderSpec) {
    if let (Some(bore), Some(rod)) = (&cylinder.bore, &cylinder.rod)
        && rod.value.si() >= bore.value.si()
    {
        checker.fault(
            "rigging.steering.cylinder.described.rod",
            "a rod as thick as its barrel leaves nothing to push on",
            "across the rod, where it comes out",
        );
    }
}
