//! `swing/ground`

use super::{of_sweeps, unanswered};
use crate::case::Case;
use crate::case::swing::body_words;
use crate::case::swing::{OverGround, Swept, over_road};
use crate::job::Trailer;
use crate::quantity::{Measure, Text, say};
use crate::rules::Finding;
use crate::rules::mend::{self, Change, Remedy};
use crate::rules::rule::rule;
use crate::working::Table;

rule! {
    /// Each engine over the road on the trailer, from the towing position to full tilt, and against
    /// whatever of the trailer the job lists.
    ///
    /// **Why.** A skeg that drags over a kerb or a ramp's lip takes the gearcase with it.
    ///
    /// **Limit.** 6 in over the road, 1/2 in from the trailer's parts, certified over the range.
    ///
    /// **Source.** Common practice, no source (both distances).
    ///
    /// **When it warns.** It fails where something touches the road or the trailer, warns under the
    /// limit; the finding gives the height at full tilt, and the table that with the engine down.
    GROUND = Swing "swing/ground", judge;
}

fn judge(case: &Case) -> Finding {
    let all = match &case.swing().ground {
        Ok(all) => all,
        Err(open) => return unanswered(open),
    };
    let sweeps: Vec<Swept> =
        all.iter().flat_map(|one| std::iter::once(&one.road).chain(&one.trailer)).cloned().collect();
    of_sweeps(&sweeps, |swept| remedy(case, all, swept)).table(heights(all))
}

/// Step in which a boat is raised on her trailer. Common practice, no source.
const RAISED_IN: f64 = 0.5;

fn remedy(case: &Case, all: &[OverGround], swept: &Swept) -> Remedy {
    let struck = swept.clearance.other.name.as_str();
    let of_trailer = all.iter().filter_map(|one| one.trailer.as_ref()).any(|one| one.clearance == swept.clearance);
    if of_trailer {
        return mend::yard(say!(
            "Move {} out of its way, or tow her tilted to where it clears: try it on the hoist before the road.",
            body_words(struck)
        ));
    }
    let tilted = all
        .iter()
        .filter(|one| one.road.label == swept.label)
        .map(|one| one.tilted.height)
        .reduce(|a, b| if a < b { a } else { b });
    match tilted {
        Some(height) if height >= over_road() => mend::change(
            say!("Tow her at full tilt on a transom saver: there it stands {} over the road.", Measure::tape(height)),
            [Change::out("trailer.towing_tilt")],
        ),
        Some(height) => {
            let by = mend::up(over_road() - height, RAISED_IN);
            let keel = match &case.rig.job.trailer {
                Some(Trailer::On { keel_above_ground, .. }) => keel_above_ground.as_ref().map(|keel| keel.value),
                _ => None,
            };
            let words = say!(
                "Even at full tilt it stands only {} over the road: tow her so, and raise the boat on the trailer by {}.",
                Measure::tape(height),
                Measure::tape(by)
            );
            match keel {
                Some(keel) => mend::change(
                    words,
                    [
                        Change::to("trailer.keel_above_ground", mend::exactly(keel + by)),
                        Change::out("trailer.towing_tilt"),
                    ],
                ),
                None => mend::yard(words),
            }
        }
        None => mend::look("Raise the boat on the trailer, or tow her tilted farther; measure again."),
    }
}

fn heights(all: &[OverGround]) -> Table {
    let rows = all
        .iter()
        .map(|one| {
            vec![
                Text::from(one.road.label.as_str()),
                Text::from(Measure::tape(one.tilted.height)),
                Text::from(Measure::tape(one.down.height)),
            ]
        })
        .collect();
    Table::new("lowest point over the road, steered ahead", &["engine", "full tilt", "down"], rows)
}
