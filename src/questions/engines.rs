//! Engines beside their class, and beside outboards of their power.

use uom::si::f64::Mass;

use super::{Odd, Relation};
use crate::job::{Cycle, EngineSpec};
use crate::quantity::{Basis, Dimensioned, Measure, say};
use crate::rig::{Group, Rig};

/// An engine on the scale.
pub(super) const WEIGHED_LIKE_ITS_CLASS: Relation = Relation {
    name: "an engine on the scale weighs about what its class does",
    why: "A scale that shows half or twice of the class was read wrongly, in another unit, or with something else on the hook.",
    source: "Common practice, no source: makers of one class differ by a quarter.",
    look: |known| {
        let odd = groups(known.case.rig).filter_map(|(path, group)| {
            let engine = group.engines.first()?;
            let (weighed, class) = (engine.weight.reading()?, weight_of(&engine.spec)?);
            let written = known.written.iter().any(|told| told.path == format!("{path}.weighed"));
            let share = weighed.value.si() / class.si();
            (written && !(1.0 / OF_CLASS..=OF_CLASS).contains(&share)).then(|| Odd {
                entries: vec![format!("{path}.weighed")],
                said: say!(
                    "The {} is written to weigh {} on a scale; a {} weighs about {}. Is that so?",
                    engine.label.as_str(),
                    Measure::of(weighed.value),
                    engine.class.as_str(),
                    Measure::of(class)
                ),
            })
        });
        odd.collect()
    },
};

/// How many times its class's weight an engine weighs, either way. Common practice, no source.
const OF_CLASS: f64 = 1.8;

/// An engine that was described.
pub(super) const WEIGHT_FOR_ITS_POWER: Relation = Relation {
    name: "an outboard weighs what outboards of its power weigh",
    why: "Power and weight of outboards go together: kilograms for pounds, or a figure too many, break it.",
    source: "ABYC S-30, table 1A, by so many times either way (the factor: common practice, no source).",
    look: |known| {
        let odd = groups(known.case.rig).filter_map(|(path, group)| {
            let engine = group.engines.first()?;
            let power = engine.spec.power.as_ref().filter(|power| power.basis != Basis::Catalog)?;
            let usual = usual_weight(known.case.rig, &engine.spec)?;
            let weight = engine.weight.reading()?;
            let share = weight.value.si() / usual.si();
            (!(1.0 / OF_POWER..=OF_POWER).contains(&share)).then(|| Odd {
                entries: vec![format!("{path}.described"), format!("{path}.weighed")],
                said: say!(
                    "The {} is described with {} and a weight of {}; outboards of that power weigh about {}. Is that so?",
                    engine.label.as_str(),
                    Measure::of(power.value),
                    Measure::of(weight.value),
                    Measure::of(usual)
                ),
            })
        });
        odd.collect()
    },
};

/// How many times the table's weight an outboard weighs, either way. Common practice, no source: from a racing engine to a
/// diesel.
const OF_POWER: f64 = 3.0;

/// What outboards of its power weigh by the table; nothing of electric ones, nor beyond the table.
fn usual_weight(rig: &Rig, spec: &EngineSpec) -> Option<Mass> {
    if spec.cycle == Some(Cycle::Electric) {
        return None;
    }
    let power = spec.power.as_ref()?.value;
    let rows = &rig.tables.engine_weights.as_ref()?.rows;
    rows.iter().find(|row| row.power_to.value >= power).or(rows.last()).map(|row| row.running.value)
}

/// The row in which an engine hangs.
pub(super) const HUNG_IN_A_ROW: Relation = Relation {
    name: "an engine hangs in one of its rows",
    why: "There are no holes above the last row.",
    source: "The engine's bracket.",
    look: |known| {
        let odd = groups(known.case.rig).filter_map(|(path, group)| {
            let engine = group.engines.first()?;
            let (up, rows) = (engine.holes_up.reading()?, engine.hole_rows.reading()?);
            (up >= rows).then(|| Odd {
                entries: vec![format!("{path}.holes_up")],
                said: say!(
                    "The {} is written to hang {} holes up; its bracket has {} rows, the lowest of them 0 holes up. In which row does it hang?",
                    engine.label.as_str(),
                    u32::from(*up),
                    u32::from(*rows)
                ),
            })
        });
        odd.collect()
    },
};

/// Every group with its path.
fn groups(rig: &Rig) -> impl Iterator<Item = (String, &Group)> {
    let sides = [("engines_off", &rig.before), ("engines_on", &rig.after)];
    sides.into_iter().flat_map(|(side, outfit)| {
        outfit.groups.iter().enumerate().map(move |(i, group)| (format!("{side}[{i}]"), group))
    })
}

fn weight_of(spec: &EngineSpec) -> Option<Mass> {
    spec.running_weight.as_ref().or(spec.dry_weight.as_ref()).map(|weight| weight.value)
}
