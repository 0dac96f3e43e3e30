//! `fit/bolt-pattern`

use uom::si::f64::Length;

use super::{ON_A_BRACKET, new_engines, on_the_transom};
use crate::job::SplashWell;
use crate::physics::fit::{self, HolePlace};
use crate::quantity::{Measure, Text, inches, say};
use crate::rig::{Engine, Rig};
use crate::rules::rule::{need, rule};
use crate::rules::{Case, Finding, Limit, Table, Verdict};

rule! {
    /// The standard bolt pattern of each engine against the cutout, the holes that are there already
    /// and the floor of the splash-well.
    ///
    /// **Why.** A new hole beside an old one has no wood left between them; a lower bolt that comes
    /// out under the well's floor cannot be tightened, and leaks into the hull.
    ///
    /// **Limit.** The upper pair 12-7/8 in apart within the cutout with an inch to spare; every new
    /// hole on an old one or at least 1-1/2 in (three bolt diameters) from it; the lower bolts, 9-7/8
    /// in below the top, above the well's floor by their washers.
    ///
    /// **Source.** Trade association bolt pattern in general use; common practice, no source (the
    /// distances to spare).
    ///
    /// **When it warns.** Old holes are drilled out, filled with thickened epoxy and glassed before
    /// new ones are drilled near them; every hole in a cored transom is drilled oversize, filled and
    /// drilled again so that no water reaches the core. It fails where a bolt cannot be set at all.
    BOLT_PATTERN = Fit "fit/bolt-pattern", judge;
}

/// Room between the upper bolts and the side of the cutout. Common practice, no source.
const SIDE_ROOM_IN: f64 = 1.0;
/// How near an old hole must be to be used again. Common practice, no source: what a file corrects.
const SAME_HOLE_IN: f64 = 1.0 / 16.0;
/// Least centre distance of a new hole from an old one that is not used again: three diameters.
/// Common practice, no source.
const APART_IN: f64 = 3.0 * fit::BOLT_DIAMETER_IN;
/// Half the washer that must lie flat above the well's floor. Common practice, no source.
const WASHER_ROOM_IN: f64 = 1.0;

fn judge(case: &Case) -> Finding {
    let rig = case.rig;
    if rig.after.is_empty() {
        return Finding::unmeasured(vec![new_engines()]);
    }
    let engines = on_the_transom(rig);
    if engines.is_empty() {
        return Finding::not_applicable(Text::from(ON_A_BRACKET));
    }
    need!(
        cutout = rig.transom.cutout_width,
        well = rig.transom.splash_well
    );
    let floor = match well {
        SplashWell::Floor(floor) => Some(floor.value),
        SplashWell::None => None,
    };
    let half = cutout.value / 2.0;
    let mut complaints: Vec<(Verdict, Text, Text)> = Vec::new();
    let mut reused = 0;
    let mut rows = Vec::new();
    for engine in &engines {
        let pattern = fit::pattern(engine.y);
        let outermost = engine.y.abs() + inches(fit::UPPER_PAIR_IN / 2.0);
        if outermost + inches(SIDE_ROOM_IN) > half {
            complaints.push((
                Verdict::Fail,
                say!("The upper bolts of the {} come {} off the centreline; the cutout ends at {}.",
                    engine.label.as_str(), Measure::tape(outermost), Measure::tape(half)),
                Text::from("Move the engine inboard, widen the cutout with the builder's consent, or hang it on a bracket."),
            ));
        }
        for hole in pattern {
            let (word, complaint) = against_old(rig, hole);
            reused += usize::from(word == "on an old hole");
            rows.push(vec![
                say!("{}", engine.label.as_str()),
                say!("{} {}", Measure::tape(hole.y.abs()), side(hole.y)),
                say!("{}", Measure::tape(hole.below)),
                Text::from(word),
            ]);
            complaints.extend(complaint);
        }
        complaints.extend(floor.and_then(|floor| against_floor(engine, &pattern, floor)));
    }
    let table = Table {
        title: "bolt holes to drill".to_owned(),
        heads: ["engine", "across", "below the top", ""]
            .map(str::to_owned)
            .to_vec(),
        rows,
    };
    complaints.sort_by_key(|(verdict, ..)| *verdict);
    let count = complaints.len();
    let finding = match complaints.into_iter().next() {
        Some((verdict, summary, remedy)) => {
            let more = if count > 1 {
                say!(" ({} more like it in the table.)", count - 1)
            } else {
                Text::default()
            };
            Finding::new(verdict, summary.then(more)).remedy(remedy)
        }
        None => Finding::new(
            Verdict::Pass,
            say!(
                "The bolt pattern fits the cutout and clears the well's floor; {} old holes can be used again.",
                reused
            ),
        ),
    };
    let lower = Measure::tape(inches(fit::UPPER_BELOW_TOP_IN + fit::BETWEEN_PAIRS_IN));
    let finding = finding.table(table);
    match floor {
        Some(floor) => {
            let most = Measure::tape(floor - inches(WASHER_ROOM_IN));
            finding.against(lower, Limit::AtMost(most))
        }
        None => finding,
    }
}

fn side(y: Length) -> &'static str {
    if y.value >= 0.0 { "port" } else { "starboard" }
}

/// A new hole against the holes that are there already.
fn against_old(rig: &Rig, hole: HolePlace) -> (&'static str, Option<(Verdict, Text, Text)>) {
    let nearest = rig
        .transom
        .holes
        .iter()
        .map(|old| {
            let place = HolePlace {
                y: old.at.y(),
                below: old.below.value,
            };
            let diameter = old
                .diameter
                .as_ref()
                .map_or(inches(fit::BOLT_DIAMETER_IN), |d| d.value);
            (fit::apart(hole, place), diameter)
        })
        .min_by(|a, b| a.0.value.total_cmp(&b.0.value));
    let Some((distance, diameter)) = nearest else {
        return ("new", None);
    };
    let fits_bolt = diameter <= inches(fit::BOLT_DIAMETER_IN + SAME_HOLE_IN);
    if distance <= inches(SAME_HOLE_IN) && fits_bolt {
        return ("on an old hole", None);
    }
    if distance >= inches(APART_IN) {
        return ("new", None);
    }
    let complaint = (
        Verdict::Warn,
        say!(
            "A new bolt hole comes {} from an old one, where {} is wanted.",
            Measure::tape(distance),
            Measure::tape(inches(APART_IN))
        ),
        Text::from(
            "Fill and glass the old hole before drilling, or shift the engine by a hole row or sideways.",
        ),
    );
    ("too near an old hole", Some(complaint))
}

/// The lower bolts against the floor of the splash-well.
fn against_floor(
    engine: &Engine,
    pattern: &[HolePlace; 4],
    floor: Length,
) -> Option<(Verdict, Text, Text)> {
    let lower = pattern[2].below;
    let room = inches(WASHER_ROOM_IN);
    let label = engine.label.as_str();
    if lower + room <= floor {
        None
    } else if lower - room < floor {
        Some((
            Verdict::Fail,
            say!(
                "The lower bolts of the {} come out at the well's floor ({} below the top, floor at {}).",
                label,
                Measure::tape(lower),
                Measure::tape(floor)
            ),
            Text::from(
                "Nothing can be tightened there: hang the engine on a bracket or setback plate with its own pattern, or have the well altered.",
            ),
        ))
    } else {
        Some((
            Verdict::Warn,
            say!(
                "The lower bolts of the {} come out below the well's floor, inside the hull.",
                label
            ),
            Text::from(
                "See that the nuts can be reached and the holes are sealed: they are below the well and may be below the waterline.",
            ),
        ))
    }
}
