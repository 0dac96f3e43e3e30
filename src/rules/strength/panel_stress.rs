//! `strength/panel-stress`

use uom::si::f64::Length;

use super::{DESIGN_FACTOR, build_up, by_case, factor, first, old_factor, ready, verdict};
use crate::case::Case;
use crate::case::strength::show::{place, ratio};
use crate::case::strength::{Laden, PANEL_WORDS, Strength, ply, solved};
use crate::quantity::{Dimensioned, Measure, Text, say};
use crate::rules::rule::{given, rule};
use crate::rules::{Finding, Limit, Verdict};
use crate::working::{Sheet, Table};

rule! {
    /// The transom as a plate, bent by the engines, held by the hull and its knees: the stress in its
    /// layers against their strength.
    ///
    /// **Why.** More moment bends the transom in and out at every sea. Cracks in the gelcoat round the
    /// bracket and at the corners of the cutout are its first words.
    ///
    /// **Limit.** The strength of each layer, lowered by what was read of the core, at least twice the
    /// stress in the worst case.
    ///
    /// **Source.** Reissner–Mindlin plate solved by finite elements; ISO 12215-5, design stress half of
    /// the ultimate, value from memory.
    ///
    /// **When it warns.** Fit knees where the finding says, or build the transom up. It fails where the
    /// stress is beyond the strength.
    PANEL_STRESS = Strength "strength/panel-stress", judge;
}

fn judge(case: &Case) -> Finding {
    if let Some(answer) = study(case) {
        return answer;
    }
    let strength = given!(ready(case));
    let stress = &strength.after.bent.stress;
    let mut sheet = Sheet::default();
    solved(&mut sheet, "worst case", &strength.after, stress, strength);
    if let Ok(before) = &strength.before {
        solved(&mut sheet, "worst case before", before, &before.bent.stress, strength);
    }
    let summary = say!(
        "The transom's strength is {} times the stress on it, {}: in the {}, ",
        factor(stress.factor),
        strength.after.cases[stress.case].name(),
        ply(stress, strength)
    )
    .then(place(stress.at, strength.board.top))
    .then(Text::from("."))
    .then(old_factor(strength, stress.factor, |laden| Some(laden.bent.stress.factor)))
    .then(first(strength, case.rig, PANEL_WORDS));
    let mut finding = Finding::new(verdict(stress.factor, DESIGN_FACTOR), summary)
        .against(factor(stress.factor), Limit::AtLeast(factor(DESIGN_FACTOR)))
        .working(sheet)
        .table(cases(strength));
    if finding.verdict != Verdict::Pass {
        finding = finding.remedy(remedy(strength, stress.factor));
    }
    finding
}

/// What a knee that stands a sixteenth beside its named place, and the other mesh, can take off the factor. Common
/// practice, no source: half a percent was found, four times that is allowed for.
const OF_THE_PLACE: f64 = 1.02;

/// Knees where they are enough, else a thicker transom.
fn remedy(strength: &Strength, now: f64) -> Text {
    let knees = &strength.knees;
    if !knees.there
        && let (Some((promise, _)), Some(knee)) = (knees.other, knees.places.first())
        // One case is solved already; only where that is enough are the others worth solving.
        && promise >= DESIGN_FACTOR
        && let Some(with) = strength
            .factor_with_knees()
            .filter(|with| *with >= OF_THE_PLACE * DESIGN_FACTOR)
    {
        return say!(
            "Fit a pair of knees {} each side of the centreline, {} high: the factor becomes {}.",
            Measure::tape(Length::from_si(knee.y.abs())),
            Measure::tape(Length::from_si(knee.to - knee.from)),
            factor(with)
        );
    }
    // Stress falls as the square of thickness in one material.
    build_up(strength, (DESIGN_FACTOR / now).sqrt())
}

/// Stress over strength of each case before and after.
fn cases(strength: &Strength) -> Table {
    let effects = |laden: &Laden| laden.bent.effects.iter().map(|one| one.use_of_strength).collect();
    by_case("stress over strength", strength, effects, ratio)
}

/// The answer where a panel is given outright with its strengths.
fn study(case: &Case) -> Option<Finding> {
    let answer = case.panel_study()?.ok()?;
    let (_, stress) = answer.weakest.as_ref()?;
    let value = 1.0 / stress.utilisation.max(f64::MIN_POSITIVE);
    let mut sheet = Sheet::default();
    sheet.remark(answer.remark());
    sheet.remark(Text::from("beside a point load, a kink or a held corner the stress grows with the mesh: a plate's theory knows no end of it there"));
    let finding = Finding::new(
        verdict(value, DESIGN_FACTOR),
        say!("The panel's strength is {} times the stress on it.", factor(value)),
    )
    .against(factor(value), Limit::AtLeast(factor(DESIGN_FACTOR)));
    Some(answer.tables().into_iter().fold(finding.working(sheet), Finding::table))
}
