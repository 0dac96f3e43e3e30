//! Measures and limits as JSON.

use serde_json::{Value, json as value};

use crate::quantity::{Measure, Units};
use crate::rules::Limit;

/// Value with unit, unrounded, and as it is shown.
pub(super) fn measure(measure: Measure, units: Units) -> Value {
    let (number, unit) = measure.in_unit(units);
    value!({ "value": number, "unit": unit, "text": measure.show(units) })
}

pub(super) fn limit_of(limit: Limit, units: Units) -> Value {
    match limit {
        Limit::AtMost(most) => value!({ "at_most": measure(most, units) }),
        Limit::AtLeast(least) => value!({ "at_least": measure(least, units) }),
        Limit::Within(least, most) => value!({
            "at_least": measure(least, units),
            "at_most": measure(most, units),
        }),
    }
}
