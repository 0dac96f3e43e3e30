//! Where the bolts of an engine or bracket stand on the transom: one answer for fit, strength and drawings.

use uom::si::f64::Length;

use super::stern;
use crate::job::{BracketKind, Hole, Sitting};
use crate::physics::fit::{self, HolePlace};
use crate::quantity::{Dimensioned, inches};
use crate::rig::{Engine, Group, Rig};

/// The bolts of these engines of a group: where the job says they stand; else the standard pattern, its upper pair
/// where the job has it, or as far down as the plate stands on which they hang. `None` where the bracket has a
/// template of its own, and the job does not say what it is.
pub(crate) fn places(rig: &Rig, group: &Group, engines: &[&Engine]) -> Option<Vec<HolePlace>> {
    let own = &group.bolts.said.at;
    if !own.is_empty() {
        let places = own.iter().map(|bolt| HolePlace { y: bolt.at.y(), below: bolt.below.value });
        let theirs = |place: &HolePlace| group.bracket.is_some() || is_nearest(group, engines, place.y);
        return Some(places.filter(theirs).collect());
    }
    let kind = group.bracket.as_ref().and_then(|bracket| bracket.spec.kind);
    if let Some(BracketKind::Auxiliary | BracketKind::Box | BracketKind::Frame) = kind {
        return None;
    }
    let y = engines.iter().map(|engine| engine.y).sum::<Length>() / engines.len().max(1) as f64;
    let lower_by = match upper_holes(rig, y) {
        Some(upper) if group.bracket.is_none() => upper - inches(fit::UPPER_BELOW_TOP_IN),
        _ => Length::from_si(drop_along(rig, group).si().max(0.0)),
    };
    let pattern = fit::pattern(y).map(|hole| HolePlace { below: hole.below + lower_by, ..hole });
    Some(pattern.to_vec())
}

/// How far below the transom's top the upper bolts of an engine stand: as the job has it; of what is fitted, as the holes of
/// its pattern tell, which are there.
pub(crate) fn upper_holes(rig: &Rig, engine: Length) -> Option<Length> {
    if let Some(told) = rig.job.transom.upper_holes().reading() {
        return Some(told.value);
    }
    if rig.job.sitting != Sitting::AsFitted {
        return None;
    }
    let half = inches(0.5 * fit::UPPER_PAIR_IN);
    let highest_at = |y: Length| {
        let there = |hole: &&Hole| !hole.filled && (hole.at.y() - y).abs() < inches(OF_THE_PATTERN_IN);
        let below = rig.job.transom.holes.iter().filter(there).map(|hole| hole.below.value);
        below.min_by(|a, b| a.si().total_cmp(&b.si()))
    };
    let (port, starboard) = (highest_at(engine + half)?, highest_at(engine - half)?);
    ((port - starboard).abs() < inches(OF_THE_PATTERN_IN)).then(|| if port < starboard { port } else { starboard })
}

/// How near a hole must be to the pattern's place to be one of it. Common practice, no source.
const OF_THE_PATTERN_IN: f64 = 0.25;

/// How far the top of what a group hangs on stands below the transom's top, along the transom; none where it is
/// not known.
pub(crate) fn drop_along(rig: &Rig, group: &Group) -> Length {
    let drop = group.drop();
    drop.reading().map_or(Length::default(), |drop| drop.value / stern::lean(rig).cos())
}

/// Whether one of these engines is the nearest of its group to this place.
fn is_nearest(group: &Group, engines: &[&Engine], at: Length) -> bool {
    let off = |engine: &Engine| (engine.y - at).abs().si();
    let nearest = group.engines.iter().min_by(|a, b| off(a).total_cmp(&off(b)));
    nearest.is_some_and(|engine| engines.iter().any(|one| one.label == engine.label))
}
