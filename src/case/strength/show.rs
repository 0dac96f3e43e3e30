//! Figures of strength for showing.

use uom::si::f64::{Force, Length, Ratio};

use crate::physics::strength::panel::Resultant;
use crate::quantity::{Dimensioned, Measure, Moment, Text, say};

/// A ratio too great to mean anything.
const ENDLESS: f64 = 1e3;

/// Nearer to the top than this, a place is at the top edge, m.
const EDGE: f64 = 1e-3;

/// A force in N.
pub fn force(newtons: f64) -> Measure {
    Measure::of(Force::from_si(newtons))
}

/// A moment in N·m.
pub fn moment(newton_metres: f64) -> Measure {
    Measure::of(<Moment as Dimensioned>::from_si(newton_metres))
}

/// A length in m, in decimals.
pub fn length(metres: f64) -> Measure {
    Measure::of(Length::from_si(metres))
}

/// A row of a free body: the push and its moments.
pub(super) fn resultant(name: Text, push: Resultant) -> Vec<Text> {
    vec![name, Text::from(force(push.force)), Text::from(moment(push.moment_y)), Text::from(moment(push.moment_z))]
}

/// A plain ratio, or words where it has no end.
pub fn ratio(value: f64) -> Text {
    if value.is_finite() && value < ENDLESS {
        Text::from(Measure::of(Ratio::from_si(value)))
    } else {
        Text::from("over 1,000")
    }
}

/// How many times more after than before; a dash where there was nothing before.
pub fn times(before: f64, after: f64) -> Text {
    if before.abs() > 1e-9 { ratio(after / before) } else { Text::from("–") }
}

/// A place on the transom in words.
pub fn place(at: [f64; 2], top: f64) -> Text {
    let tape = |metres: f64| Measure::tape(Length::from_si(metres));
    let across = if at[0].abs() < 1e-3 {
        Text::from("on the centreline")
    } else {
        say!("{} to {}", tape(at[0].abs()), if at[0] > 0.0 { "port" } else { "starboard" })
    };
    if top - at[1] < EDGE {
        return across.then(Text::from(", at the top edge"));
    }
    across.then(say!(", {} below the top", tape(top - at[1])))
}
