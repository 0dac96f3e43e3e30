//! Where the bolts of an engine or bracket stand on the transom: one answer for fit, strength and drawings.

use uom::si::f64::Length;

use super::stern;
use crate::job::BracketKind;
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
    let lower_by = match rig.job.transom.upper_holes().reading() {
        Some(upper) if group.bracket.is_none() => upper.value - inches(fit::UPPER_BELOW_TOP_IN),
        _ => Length::from_si(drop_along(rig, group).si().max(0.0)),
    };
    let y = engines.iter().map(|engine| engine.y).sum::<Length>() / engines.len().max(1) as f64;
    let pattern = fit::pattern(y).map(|hole| HolePlace { below: hole.below + lower_by, ..hole });
    Some(pattern.to_vec())
}

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
