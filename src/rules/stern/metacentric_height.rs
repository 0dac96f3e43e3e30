//! `stern/metacentric-height`

use crate::rules::mend;
use uom::si::f64::Length;

use super::inboard;
use crate::case::Case;
use crate::case::float::State;
use crate::physics::float::Outcome;
use crate::quantity::{Dimensioned, Measure, Text, say};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::{Sheet, Table, Term};

rule! {
    /// Her metacentric height in every loading with the crew inboard of the rail, free surfaces of tanks
    /// and live wells taken off; and whether she floats upright in any.
    ///
    /// **Why.** Weight high up and water slopping in wells make her tender; below zero she lolls, and
    /// may turn over.
    ///
    /// **Limit.** At least 0.35 m.
    ///
    /// **Source.** Torremolinos Convention for the Safety of Fishing Vessels: 350 mm (value from memory),
    /// taken as practice for a small open boat.
    ///
    /// **When it warns.** It fails where she sinks, turns over, or her height is below zero. Stow weights
    /// lower, divide live wells, and keep persons off high places.
    METACENTRIC_HEIGHT = Stern "stern/metacentric-height", judge;
}

/// Least metacentric height, m. Source: Torremolinos Convention, value from memory.
const LEAST_M: f64 = 0.35;

fn judge(case: &Case) -> Judgement {
    let float = case.float()?;
    let mut rows = Vec::new();
    let mut worst: Option<(&str, &State, Length)> = None;
    for loaded in &float.loadings {
        let Some(state) = loaded.judged() else {
            continue;
        };
        let gm = match state.upright() {
            Ok(lies) => lies.gm_transverse - state.free_surface.transverse,
            Err(why) => {
                let finding =
                    Finding::new(Verdict::Fail, say!("In `{}` ", loaded.name.as_str()).then(why).then(Text::from(".")))
                        .remedy(mend::care(
                            "Check weights, places and shape first; if they are right, she must not carry this.",
                        ));
                return Ok(match &state.outcome {
                    Outcome::Sinks { mass, largest } => {
                        finding.against(Measure::of(*mass), Limit::AtMost(Measure::of(*largest)))
                    }
                    _ => finding,
                });
            }
        };
        let before = loaded.before.as_ref().and_then(State::gm);
        rows.push(vec![
            Text::from(loaded.name.as_str()),
            before.filter(|_| loaded.after.is_some()).map_or(Text::from("-"), |gm| Measure::of(gm).into()),
            Measure::of(gm).into(),
        ]);
        if inboard(loaded) && worst.is_none_or(|(.., least)| gm < least) {
            worst = Some((&loaded.name, state, gm));
        }
    }
    let Some((name, state, gm)) = worst else {
        return Ok(Finding::not_applicable(Text::from("There is no loading to look at.")));
    };
    let least = Length::from_si(LEAST_M);
    let found = Measure::of(gm);
    let words = say!("Least in `{}`: {}.", name, found);
    let mut sheet = Sheet::default();
    if let Some(lies) = state.floating() {
        sheet.set(
            "GM",
            "metacentric height (`sternknee work JOB float` has it line by line)",
            Term::new("GM without free surface", lies.gm_transverse) - Term::new("FS", state.free_surface.transverse),
        );
    }
    let finding = if gm < least {
        let verdict = if gm.si() < 0.0 { Verdict::Fail } else { Verdict::Warn };
        let drop = Term::new("GM", least) - Term::new("found", gm);
        let lower = sheet.set("ΔKG", "her centre must come down by", drop);
        Finding::new(verdict, words).remedy(mend::yard(remedy(state, lower.value())))
    } else {
        Finding::new(Verdict::Pass, words)
    };
    Ok(finding
        .against(found, Limit::AtLeast(Measure::of(least)))
        .table(Table::new("metacentric height", &["loading", "before", "judged"], rows))
        .working(sheet))
}

/// What brings the centre down, or the free surface away.
fn remedy(state: &State, lower: Length) -> Text {
    let moment = state.total.mass.si() * lower.si();
    if state.free_surface.transverse >= lower {
        return Text::from(
            "Press the part-full tanks and wells up, or divide them fore and aft: their free surface takes what is lacking.",
        );
    }
    let heaviest = state
        .entries
        .iter()
        .filter(|entry| entry.movable.can_move())
        .max_by(|a, b| a.weight.mass.si().total_cmp(&b.weight.mass.si()));
    match heaviest {
        Some(entry) => say!(
            "Bring her centre down by {}: {} ({}) would have to come down by {}.",
            Measure::of(lower),
            entry.name.as_str(),
            Measure::of(entry.weight.mass),
            Measure::tape(Length::from_si(moment / entry.weight.mass.si()))
        ),
        None => say!("Bring her centre down by {}.", Measure::of(lower)),
    }
}
