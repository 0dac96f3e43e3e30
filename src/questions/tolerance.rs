//! How closely a reading was taken.

use super::{Known, Odd, Relation};
use crate::quantity::{Kind, say};
use crate::reading::Value;

/// A tape, a scale or a gauge tells more than nothing.
pub(super) const CLOSER_THAN_ITSELF: Relation = Relation {
    name: "a reading is closer than itself",
    why: "A size or a weight that may be off by all of itself was not taken.",
    source: "Common practice, no source.",
    look,
};

/// A place is known to within this, where it is known at all, as a part of what its bounds leave open.
/// Common practice, no source.
const PART_OF_BOUNDS: f64 = 0.25;

fn look(known: &Known) -> Vec<Odd> {
    let odd = known.written.iter().filter_map(|told| {
        let Value::Number(number) = &told.value else { return None };
        let (tolerance, bounds) = (number.tolerance?, told.declared.bounds?);
        // A size begins above nothing; a place, an angle or a temperature may be at nothing, with room about it.
        let is_size = bounds.least() > 0.0 && !matches!(number.kind, Kind::Angle | Kind::Temperature);
        let most = if is_size { number.si.abs() } else { PART_OF_BOUNDS * (bounds.most() - bounds.least()) };
        let shown = number.tolerance(told.declared)?;
        (tolerance >= most && tolerance > 0.0).then(|| {
            Odd::of(
                told,
                say!(
                    "The {} is written as {} ± {}: was it taken as roughly as that?",
                    told.name(),
                    number.measure(told.declared),
                    shown
                ),
            )
        })
    });
    odd.collect()
}
