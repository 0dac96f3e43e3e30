//! What the shape of the hull must not say.

use uom::si::f64::Length;

use super::Checker;
use crate::job::HullShape;
use crate::quantity::Reading;

pub(super) fn hull(checker: &mut Checker, shape: Option<&HullShape>) {
    match shape {
        None => {}
        Some(HullShape::Mesh { file, .. }) if file.trim().is_empty() => {
            checker.fault("hull.file", "a mesh without a file", "file: \"hull.stl\", from the folder of the job");
        }
        Some(HullShape::Mesh { .. }) => {}
        Some(HullShape::Tape { sections, .. }) => {
            count(checker, "hull.sections", sections.len());
            let forward: Vec<_> = sections.iter().map(|s| &s.forward).collect();
            ascending(checker, "hull.sections", &forward);
            for (i, section) in sections.iter().enumerate() {
                let path = format!("hull.sections[{i}]");
                upright(checker, &path, &[&section.keel, &section.chine.up, &section.sheer.up]);
            }
        }
        Some(HullShape::Offsets { stations, .. }) => {
            count(checker, "hull.stations", stations.len());
            let forward: Vec<_> = stations.iter().map(|s| &s.forward).collect();
            ascending(checker, "hull.stations", &forward);
            for (i, station) in stations.iter().enumerate() {
                let path = format!("hull.stations[{i}]");
                if station.points.len() < 2 {
                    checker.fault(
                        &format!("{path}.points"),
                        format!("a station of {} points", station.points.len()),
                        "from the keel up to the sheer, at least two",
                    );
                }
                if let (Some(first), Some(last)) = (station.points.first(), station.points.last()) {
                    upright(checker, &path, &[&first.up, &last.up]);
                }
            }
        }
    }
}

fn count(checker: &mut Checker, path: &str, found: usize) {
    if found < 2 {
        checker.fault(
            path,
            format!("{found} sections make no hull"),
            "2 or more, from the transom forward; five are usual with a tape",
        );
    }
}

fn ascending(checker: &mut Checker, path: &str, forward: &[&Reading<Length>]) {
    for (i, pair) in forward.windows(2).enumerate() {
        if pair[1].value <= pair[0].value {
            checker.fault(
                &format!("{path}[{}].forward", i + 1),
                "not forward of the section before it",
                "write them from the transom forward",
            );
        }
    }
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
