//! What marks, weights, edges and loadings must not say.

use uom::si::f64::Length;

use super::bounds::{ACROSS, ALONG, Bounds, HEIGHT, bounds};
use super::hull::{self, UP};
use super::{Checker, item};
use crate::job::float::{CrewAt, Water};
use crate::job::{Across, Job};
use crate::quantity::Reading;

const DEPTH: Bounds = bounds("6 in", "15 ft");
const FREEBOARD: Bounds = bounds("-10 ft", "20 ft");
const DENSITY: Bounds = bounds("900 kg/m³", "1,300 kg/m³");
const BOAT_WEIGHT: Bounds = bounds("1 lb", "200,000 lb");
const TANK: Bounds = bounds("0.1 gal", "3,000 gal");
const FILL: Bounds = bounds("0 %", "100 %");
const TANK_SIZE: Bounds = bounds("1 in", "30 ft");
const PERSON: Bounds = bounds("30 lb", "500 lb");
const CREW: std::ops::RangeInclusive<u16> = 1..=200;
pub(super) fn float(checker: &mut Checker, job: &Job) {
    checker.within("boat.depth", job.boat.depth.as_ref(), DEPTH);
    hull::hull(checker, job.hull.as_ref());
    for (side, groups) in [("engines_off", &job.engines_off), ("engines_on", &job.engines_on)] {
        for (i, group) in groups.iter().enumerate() {
            if let Some(hung) = &group.bracket {
                let path = format!("{side}[{i}].bracket");
                checker.within(&format!("{path}.bottom"), hung.bottom.as_ref(), UP);
                checker.within(&format!("{path}.width"), hung.width.as_ref(), TANK_SIZE);
            }
        }
    }
    for (i, well) in job.flooded.iter().enumerate() {
        let path = format!("flooded[{i}]");
        named(checker, &path, &well.what, "well", "motorwell");
        place(checker, &path, well.forward.as_ref(), well.across.as_ref(), None);
        checker.within(&format!("{path}.length"), well.length.as_ref(), TANK_SIZE);
        checker.within(&format!("{path}.width"), well.width.as_ref(), TANK_SIZE);
        checker.within(&format!("{path}.floor"), well.floor.as_ref(), UP);
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
        place(checker, &path, edge.forward.as_ref(), edge.across.as_ref(), None);
        checker.within(&format!("{path}.up"), edge.up.as_ref(), UP);
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
    let Some(afloat) = &job.afloat else { return };
    if let Some(Water::Density(density)) = &afloat.water {
        checker.within("afloat.water", Some(density), DENSITY);
    }
    for (i, mark) in afloat.marks.iter().enumerate() {
        let path = format!("afloat.marks[{i}]");
        place(checker, &path, mark.forward.as_ref(), mark.across.as_ref(), None);
        checker.within(&format!("{path}.up"), mark.up.as_ref(), UP);
        checker.within(&format!("{path}.above_water"), mark.above_water.as_ref(), FREEBOARD);
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
    let boat = &weights.boat;
    checker.within("weights.boat.weight", boat.weight.as_ref(), BOAT_WEIGHT);
    place(checker, "weights.boat", boat.forward.as_ref(), boat.across.as_ref(), boat.above.as_ref());
    checker.within("weights.person", weights.person.as_ref(), PERSON);
    checker.count("weights.crew", weights.crew, CREW);
    for (i, tank) in weights.tanks.iter().enumerate() {
        let path = format!("weights.tanks[{i}]");
        named(checker, &path, &tank.what, "tank", "fuel tank");
        checker.within(&format!("{path}.capacity"), tank.capacity.as_ref(), TANK);
        checker.within(&format!("{path}.fill"), tank.fill.as_ref(), FILL);
        checker.within(&format!("{path}.length"), tank.length.as_ref(), TANK_SIZE);
        checker.within(&format!("{path}.width"), tank.width.as_ref(), TANK_SIZE);
        place(checker, &path, tank.forward.as_ref(), tank.across.as_ref(), tank.above.as_ref());
    }
    for (i, seat) in weights.places.iter().enumerate() {
        let path = format!("weights.places[{i}]");
        named(checker, &path, &seat.what, "place", "aft bench");
        checker.count(&format!("{path}.holds"), seat.holds, CREW);
        place(checker, &path, seat.forward.as_ref(), seat.across.as_ref(), seat.above.as_ref());
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
        for (field, fill) in
            [("fuel", &condition.fuel), ("water", &condition.water), ("live_well", &condition.live_well)]
        {
            checker.within(&format!("{path}.{field}"), fill.as_ref(), FILL);
        }
        for (j, one) in condition.crew.iter().enumerate() {
            crew(checker, &format!("{path}.crew[{j}]"), one, job);
        }
        for (j, one) in condition.also.iter().enumerate() {
            placed_item(checker, &format!("{path}.also[{j}]"), one);
        }
    }
}

fn crew(checker: &mut Checker, path: &str, crew: &CrewAt, job: &Job) {
    checker.count(&format!("{path}.persons"), crew.persons, CREW);
    place(checker, path, crew.forward.as_ref(), crew.across.as_ref(), crew.above.as_ref());
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

fn place(
    checker: &mut Checker,
    path: &str,
    forward: Option<&Reading<Length>>,
    off: Option<&Across>,
    above: Option<&Reading<Length>>,
) {
    checker.within(&format!("{path}.forward"), forward, ALONG);
    let reading = off.and_then(Across::reading);
    checker.within(&format!("{path}.across"), reading, ACROSS);
    checker.within(&format!("{path}.above"), above, HEIGHT);
}

fn named(checker: &mut Checker, path: &str, name: &str, what: &str, example: &str) {
    if name.trim().is_empty() {
        checker.fault(path, format!("a {what} without a name"), format!("such as \"{example}\""));
    }
}
