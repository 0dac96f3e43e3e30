//! What marks, weights, edges and loadings must not say.

use super::{Checker, hull, item};
use crate::job::float::CrewAt;
use crate::job::{Across, Job};

pub(super) fn float(checker: &mut Checker, job: &Job) {
    hull::hull(checker, job.hull.as_ref());
    for (i, well) in job.flooded.iter().enumerate() {
        let path = format!("flooded[{i}]");
        named(checker, &path, &well.what, "well", "motorwell");
        if well.length.is_none() || well.width.is_none() || well.floor.is_none() {
            checker.fault(
                &path,
                "a well without its measures",
                "(what: \"motorwell\", length: \"20 in\", width: \"34 in\", floor: \"14 in\")",
            );
        }
    }
    afloat(checker, job);
    weights(checker, job);
    for (i, edge) in job.edges.iter().enumerate() {
        let path = format!("edges[{i}]");
        named(checker, &path, &edge.name, "edge", "motorwell lip");
        if edge.up.is_none() {
            checker.fault(
                &path,
                "an edge without its height",
                "up: \"22 in\": above the level line through the bottom at the transom",
            );
        }
        if edge.both_sides && !matches!(edge.across, Some(Across::Port(_) | Across::Starboard(_))) {
            checker.fault(
                &format!("{path}.both_sides"),
                "both sides of what stands on the centreline",
                "say how far off it stands: across: port(\"30 in\")",
            );
        }
    }
    conditions(checker, job);
}

fn afloat(checker: &mut Checker, job: &Job) {
    let afloat = &job.afloat;
    for (i, mark) in afloat.marks.iter().enumerate() {
        let path = format!("afloat.marks[{i}]");
        if mark.forward.is_none() || mark.up.is_none() || mark.above_water.is_none() {
            checker.fault(
                &path,
                "a mark needs where it stands on the boat and how high above the water",
                "(forward: \"0 in\", across: port(\"40 in\"), up: \"34 in\", above_water: \"19-1/2 in\")",
            );
        }
    }
    for (i, one) in afloat.crew.iter().enumerate() {
        crew(checker, &format!("afloat.crew[{i}]"), one, job);
    }
    for (i, one) in afloat.also.iter().enumerate() {
        placed_item(checker, &format!("afloat.also[{i}]"), one);
    }
}

fn weights(checker: &mut Checker, job: &Job) {
    let weights = &job.weights;
    for (i, tank) in weights.tanks.iter().enumerate() {
        let path = format!("weights.tanks[{i}]");
        named(checker, &path, &tank.what, "tank", "fuel tank");
    }
    for (i, seat) in weights.places.iter().enumerate() {
        let path = format!("weights.places[{i}]");
        named(checker, &path, &seat.what, "place", "aft bench");
        if seat.forward.is_none() {
            checker.fault(&path, "a place for persons without where it is", "forward: \"3 ft\": from the transom");
        }
        if weights.places[..i].iter().any(|other| other.what == seat.what) {
            checker.fault(
                &format!("{path}.what"),
                "two places of one name",
                "give each its own name, so that a loading can say who sits where",
            );
        }
    }
    for (i, gear) in weights.gear.iter().enumerate() {
        placed_item(checker, &format!("weights.gear[{i}]"), gear);
    }
}

fn conditions(checker: &mut Checker, job: &Job) {
    for (i, condition) in job.conditions.iter().enumerate() {
        let path = format!("conditions[{i}]");
        named(checker, &path, &condition.name, "loading", "two men hauling over the stern");
        for (j, one) in condition.crew.iter().enumerate() {
            crew(checker, &format!("{path}.crew[{j}]"), one, job);
        }
        for (j, one) in condition.also.iter().enumerate() {
            placed_item(checker, &format!("{path}.also[{j}]"), one);
        }
    }
}

fn crew(checker: &mut Checker, path: &str, crew: &CrewAt, job: &Job) {
    match (&crew.at, &crew.forward) {
        (Some(name), _) => {
            let places = &job.weights.places;
            if !places.iter().any(|seat| seat.what == *name) {
                let known: Vec<&str> = places.iter().map(|seat| seat.what.as_str()).collect();
                checker.fault(
                    &format!("{path}.at"),
                    format!("no place is called `{name}`"),
                    if known.is_empty() {
                        "name it under weights.places, or say forward: \"3 ft\" here".to_owned()
                    } else {
                        format!("places: {}", known.join(", "))
                    },
                );
            }
        }
        (None, None) => {
            checker.fault(path, "persons without a place", "at: \"a place of weights.places\", or forward: \"3 ft\"")
        }
        (None, Some(_)) => {}
    }
}

/// An item that must have weight and place to be of use here.
fn placed_item(checker: &mut Checker, path: &str, one: &crate::job::Item) {
    item(checker, path, one);
    if one.weight.is_none() || (one.forward.is_none() && !one.on_transom) {
        checker.fault(
            path,
            "what is aboard needs a weight and a place",
            "(what: \"sandbags\", weight: \"400 lb\", forward: \"1 ft\", above: \"20 in\")",
        );
    }
}

fn named(checker: &mut Checker, path: &str, name: &str, what: &str, example: &str) {
    if name.trim().is_empty() {
        checker.fault(path, format!("a {what} without a name"), format!("such as \"{example}\""));
    }
}
