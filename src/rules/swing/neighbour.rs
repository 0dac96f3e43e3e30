//! `swing/neighbour`

use super::cures::carried_lower;
use super::{TOLD_IN, one_of};
use super::{of_sweeps, stop, unanswered};
use crate::case::Case;
use crate::case::swing::Swept;
use crate::job::Role;
use crate::physics::fit;
use crate::quantity::Dimensioned;
use crate::quantity::{Measure, say};
use crate::rig::Rig;
use crate::rig::{Engine, Group};
use crate::rules::mend::{self, Change, Remedy};
use crate::rules::rule::rule;
use crate::rules::{Finding, Verdict};
use crate::working::Sheet;
use uom::si::f64::Length;

rule! {
    /// Each two neighbouring engines against each other: each anywhere in its own range of tilt, both
    /// steered alike from lock to lock.
    ///
    /// **Why.** With one engine tilted and the other down at full lock, cowls, plates and propellers
    /// come nearer to each other than side by side. This is how one engine is rested, or a rope
    /// cleared.
    ///
    /// **Limit.** 1 in at every pose, certified over tilt, tilt and steering. An engine that is not
    /// steered with the others is looked at amidships, down and at full tilt; on a lifting bracket whose travel is
    /// known, at every height of it, from the bottom to where it is carried under way.
    ///
    /// **Source.** The engines' mounting sheets; common practice, no source (the inch; proportions of
    /// plate, gearcase and skeg).
    ///
    /// **When it warns.** It fails where they touch, warns under an inch, and where two main engines touch that stand as far apart
    /// as their mounting sheets ask; the spacing that clears them is worked out by the same bound.
    NEIGHBOUR = Swing "swing/neighbour", judge;
}

fn judge(case: &Case) -> Finding {
    match &case.swing().neighbours {
        Ok(all) => {
            let finding = of_sweeps(all, |swept| remedy(case, swept));
            match all.iter().filter(|swept| swept.touches()).map(|swept| allowed(case.rig, swept)).reduce(allow_all) {
                Some(Some(asked)) if finding.verdict == Verdict::Fail => Finding {
                    verdict: Verdict::Warn,
                    summary: finding.summary.clone().then(say!(
                        " Their mounting sheets ask for {} between centres, which they have: measure the cowls themselves.",
                        Measure::tape(asked)
                    )),
                    ..finding
                },
                _ => finding,
            }
        }
        Err(open) => unanswered(open),
    }
}

/// What the mounting sheets of two main engines ask for between centres, where they have it: their makers reckoned with one tilted
/// and the other down, and knew their cowls better than a class does.
fn allowed(rig: &Rig, swept: &Swept) -> Option<Length> {
    let [(_, one), (_, other)] = pair(rig, swept)?;
    let mains = [one, other].iter().all(|engine| engine.role == Role::Main);
    by_their_sheets(rig, swept).filter(|asked| mains && !asked.exceeds((one.y - other.y).abs()))
}

/// The most of what is asked, where all have theirs.
fn allow_all(one: Option<Length>, other: Option<Length>) -> Option<Length> {
    Some(one?.max(other?))
}

fn remedy(case: &Case, swept: &Swept) -> Remedy {
    let mut ways = Vec::new();
    ways.extend(carried_lower(case, swept, &[|swing| &swing.neighbours]));
    if let Some(spacing) = swept.spacing {
        match spacing_of_all(case, swept) {
            Some(needed) => {
                let asked = by_their_sheets(case.rig, swept).filter(|asked| asked.exceeds(needed)).unwrap_or(needed);
                let needed = mend::up(asked, TOLD_IN);
                ways.push(mend::change(
                    say!("set their centres {} apart instead of {}", Measure::tape(needed), Measure::tape(spacing.now)),
                    set_apart(case.rig, swept, needed),
                ))
            }
            None => ways.push(mend::care("no spacing within reason clears them: tilt and steer them one at a time")),
        }
    }
    if let Some(cure) = &swept.cure {
        match cure.steer.up_to {
            Some(limit) if !cure.steer.whole_range && stop(limit).si > 0.0 => {
                ways.push(mend::care(say!("keep the helm within {} each way while one is tilted", stop(limit))))
            }
            _ => {}
        }
    }
    let head = if ways.len() > 1 { "One of these keeps {} between them: " } else { "To keep {} between them: " };
    one_of(say!(head, Measure::tape(swept.margin)), ways)
}

/// The spacing at which the two engines of a sweep keep their distance, whichever of them moves past the other.
fn spacing_of_all(case: &Case, swept: &Swept) -> Option<Length> {
    let mut both = [Some(swept.label.as_str()), swept.other.as_deref()];
    both.sort();
    let of_both = |other: &&Swept| {
        let mut named = [Some(other.label.as_str()), other.other.as_deref()];
        named.sort();
        named == both
    };
    let sweeps = case.swing().neighbours.iter().flatten().filter(of_both).filter_map(|other| other.spacing);
    sweeps.map(|spacing| spacing.needed).reduce(|one, other| Some(one?.max(other?))).flatten()
}

/// The two engines of a sweep.
fn pair<'r>(rig: &'r Rig, swept: &Swept) -> Option<[(&'r Group, &'r Engine); 2]> {
    let named = |label: &str| rig.after.engines().find(|(_, engine)| engine.label == label);
    Some([named(&swept.label)?, named(swept.other.as_deref()?)?])
}

/// What their mounting sheets ask for between centres: no less is told here than fit/centre-distance tells.
fn by_their_sheets(rig: &Rig, swept: &Swept) -> Option<Length> {
    let [one, other] = pair(rig, swept)?.map(|(_, engine)| engine.centre_distance.reading());
    Some(fit::centres_needed(&mut Sheet::default(), one?.value, other?.value).value())
}

/// The two engines of a sweep set so far apart.
fn set_apart(rig: &Rig, swept: &Swept, needed: Length) -> Vec<Change> {
    pair(rig, swept).map_or(Vec::new(), |[one, other]| mend::apart(rig, one, other, needed))
}
