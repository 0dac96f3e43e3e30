//! `swing/neighbour`

use super::{of_sweeps, stop, told, unanswered};
use crate::case::Case;
use crate::case::swing::Swept;
use crate::quantity::{Measure, Text, say};
use crate::rules::Finding;
use crate::rules::rule::rule;

rule! {
    /// Each two neighbouring engines against each other: each anywhere in its own range of tilt, both
    /// steered alike from lock to lock.
    ///
    /// **Why.** With one engine tilted and the other down at full lock, cowls, plates and propellers
    /// come nearer to each other than side by side. This is how one engine is rested, or a rope
    /// cleared.
    ///
    /// **Limit.** 1 in at every pose, certified over tilt, tilt and steering. An engine that is not
    /// steered with the others is looked at amidships, down and at full tilt.
    ///
    /// **Source.** The engines' mounting sheets; common practice, no source (the inch; proportions of
    /// plate, gearcase and skeg).
    ///
    /// **When it warns.** It fails where they touch, warns under an inch; the spacing that clears them
    /// is worked out by the same bound.
    NEIGHBOUR = Swing "swing/neighbour", judge;
}

fn judge(case: &Case) -> Finding {
    match &case.swing().neighbours {
        Ok(all) => of_sweeps(all, remedy),
        Err(open) => unanswered(open),
    }
}

fn remedy(swept: &Swept) -> Text {
    let mut ways = Vec::new();
    if let Some(spacing) = swept.spacing {
        match spacing.needed {
            Some(needed) => {
                ways.push(say!("set their centres {} apart instead of {}", told(needed), Measure::tape(spacing.now)))
            }
            None => ways.push(Text::from("no spacing within reason clears them: tilt and steer them one at a time")),
        }
    }
    if let Some(cure) = &swept.cure {
        match cure.steer.up_to {
            Some(limit) if !cure.steer.whole_range && limit.value > 0.0 => {
                ways.push(say!("keep the helm within {} each way while one is tilted", stop(limit)))
            }
            _ => {}
        }
    }
    say!("One of these keeps {} between them: ", Measure::tape(swept.margin))
        .then(Text::join(ways, "; or "))
        .then(Text::from("."))
}
