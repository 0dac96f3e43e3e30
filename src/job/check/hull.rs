//! What the shape of the hull must not say.

use uom::si::f64::Length;

use super::Checker;
use super::bounds::{Bounds, bounds};
use crate::job::{HullShape, Offset};
use crate::quantity::Reading;

const STATION: Bounds = bounds("-1 ft", "80 ft");
const OUT: Bounds = bounds("0 in", "15 ft");
const UNIT: Bounds = bounds("0.01 mm", "10 m");
pub(super) const UP: Bounds = bounds("-3 ft", "20 ft");
/// Sections, stations or entries that a list may hold: more is not a reading but a drawing.
const MOST_SECTIONS: usize = 400;

pub(super) fn hull(checker: &mut Checker, shape: Option<&HullShape>) {
    match shape {
        None => {}
        Some(HullShape::Mesh { file, unit }) => {
            checker.within("hull.unit", Some(unit), UNIT);
            if file.trim().is_empty() {
                checker.fault("hull.file", "a mesh without a file", "file: \"hull.stl\", from the folder of the job");
            }
        }
        Some(HullShape::Tape { sections, .. }) => {
            count(checker, "hull.sections", sections.len());
            let forward: Vec<_> = sections.iter().map(|s| &s.forward).collect();
            ascending(checker, "hull.sections", &forward);
            for (i, section) in sections.iter().enumerate().take(MOST_SECTIONS) {
                let path = format!("hull.sections[{i}]");
                checker.within(&format!("{path}.forward"), Some(&section.forward), STATION);
                checker.within(&format!("{path}.keel"), Some(&section.keel), UP);
                offset(checker, &format!("{path}.chine"), &section.chine);
                offset(checker, &format!("{path}.sheer"), &section.sheer);
                for (what, knuckles) in
                    [("bottom_knuckles", &section.bottom_knuckles), ("side_knuckles", &section.side_knuckles)]
                {
                    for (j, knuckle) in knuckles.iter().enumerate() {
                        offset(checker, &format!("{path}.{what}[{j}]"), knuckle);
                    }
                }
                upright(checker, &path, &[&section.keel, &section.chine.up, &section.sheer.up]);
            }
        }
        Some(HullShape::Offsets { stations, .. }) => {
            count(checker, "hull.stations", stations.len());
            let forward: Vec<_> = stations.iter().map(|s| &s.forward).collect();
            ascending(checker, "hull.stations", &forward);
            for (i, station) in stations.iter().enumerate().take(MOST_SECTIONS) {
                let path = format!("hull.stations[{i}]");
                checker.within(&format!("{path}.forward"), Some(&station.forward), STATION);
                if station.points.len() < 2 || station.points.len() > MOST_SECTIONS {
                    checker.fault(
                        &format!("{path}.points"),
                        format!("a station of {} points", station.points.len()),
                        "from the keel up to the sheer, at least two",
                    );
                }
                for (j, point) in station.points.iter().enumerate().take(MOST_SECTIONS) {
                    offset(checker, &format!("{path}.points[{j}]"), point);
                }
                if let (Some(first), Some(last)) = (station.points.first(), station.points.last()) {
                    upright(checker, &path, &[&first.up, &last.up]);
                }
            }
        }
    }
}

fn count(checker: &mut Checker, path: &str, found: usize) {
    if !(2..=MOST_SECTIONS).contains(&found) {
        checker.fault(
            path,
            format!("{found} sections make no hull"),
            format!("2 to {MOST_SECTIONS}, from the transom forward; five are usual with a tape"),
        );
    }
}

fn ascending(checker: &mut Checker, path: &str, forward: &[&Reading<Length>]) {
    for (i, pair) in forward.windows(2).enumerate().take(MOST_SECTIONS) {
        if pair[1].value <= pair[0].value {
            checker.fault(
                &format!("{path}[{}].forward", i + 1),
                "not forward of the section before it",
                "write them from the transom forward",
            );
        }
    }
}

fn offset(checker: &mut Checker, path: &str, offset: &Offset) {
    checker.within(&format!("{path}.out"), Some(&offset.out), OUT);
    checker.within(&format!("{path}.up"), Some(&offset.up), UP);
}

fn upright(checker: &mut Checker, path: &str, heights: &[&Reading<Length>]) {
    let falls = heights.windows(2).any(|pair| pair[1].value < pair[0].value);
    if falls {
        checker.fault(
            path,
            "the section is upside down: it falls from the keel to the sheer",
            "heights count upward from the level line through the bottom: keel lowest, then chine, then sheer",
        );
    }
}
