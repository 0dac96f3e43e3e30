//! `strength/knees`

use uom::si::f64::Length;

use super::{DESIGN_FACTOR, factor, ready};
use crate::case::Case;
use crate::case::strength::show::{length, ratio};
use crate::quantity::{Dimensioned, Measure, Text, say};
use crate::rules::rule::{given, need, rule};
use crate::rules::{Finding, Limit, Verdict};
use crate::working::Table;

rule! {
    /// What knees behind the transom do, or would do: the panel with and without them, in its worst
    /// case.
    ///
    /// **Why.** A knee carries the engine's moment into the stringers instead of bending the transom.
    /// Where one was cut away for a tank or a hatch, the transom alone has it all.
    ///
    /// **Limit.** The panel strong enough by strength/panel-stress with the knees that are there.
    ///
    /// **Source.** Reissner–Mindlin plate solved by finite elements; common practice, no source (a knee
    /// beside each side of the bracket).
    ///
    /// **When it warns.** Fit knees where the finding says, tied to the stringers.
    KNEES = Strength "strength/knees", judge;
}

/// How much a pair of knees must give to be worth the work. Common practice, no source.
const WORTH: f64 = 1.1;

fn judge(case: &Case) -> Finding {
    if let Err(finding) = ready(case) {
        return *finding;
    }
    need!(_knees = case.rig.structure.knees);
    let strength = given!(ready(case));
    let knees = &strength.knees;
    let now = strength.after.bent.stress.factor;
    let Some((other, moved)) = knees.other else {
        return Finding::new(
            if now >= DESIGN_FACTOR { Verdict::Pass } else { Verdict::Warn },
            Text::from("No pair of knees finds room beside the bracket."),
        )
        .against(factor(now), Limit::AtLeast(factor(DESIGN_FACTOR)));
    };
    let rows = if knees.there {
        vec![row("with the knees that are there", knees.now), row("without them", (other, moved))]
    } else {
        vec![row("as she is, without knees", knees.now), row("with a pair beside the bracket", (other, moved))]
    };
    let table = Table::new(
        &format!("the panel, {}", strength.after.cases[strength.after.bent.stress.case].name()),
        &["", "strength over stress", "deflection"],
        rows,
    );
    let limit = Limit::AtLeast(factor(DESIGN_FACTOR));
    let finding = if knees.there {
        let verdict = if now >= DESIGN_FACTOR { Verdict::Pass } else { Verdict::Warn };
        let summary = say!(
            "The knees bring the panel's factor to {}; without them it would be about {}.",
            factor(now),
            factor(other)
        );
        let finding = Finding::new(verdict, summary);
        if verdict == Verdict::Pass {
            finding
        } else {
            finding.remedy(Text::from("Knees alone are not enough: build the transom up as strength/panel-stress says, and look whether each knee still holds."))
        }
    } else {
        let place = knees.places.first();
        let pair = place.map_or(Text::default(), |knee| {
            say!(
                "a pair of knees {} each side of the centreline, {} high",
                Measure::tape(Length::from_si(knee.y.abs())),
                Measure::tape(Length::from_si(knee.to - knee.from))
            )
        });
        let summary = say!("Without knees the panel's factor is {}; ", factor(now))
            .then(pair.clone())
            .then(say!(" would make it about {}.", factor(other)));
        if now >= DESIGN_FACTOR {
            Finding::new(Verdict::Pass, summary)
        } else if other >= DESIGN_FACTOR {
            Finding::new(Verdict::Warn, summary)
                .remedy(say!("Fit ").then(pair).then(Text::from(", tied to the stringers.")))
        } else {
            let worth = if other > WORTH * now {
                "Knees there help but are not enough"
            } else if other >= now {
                "Knees there do little"
            } else {
                "Knees there gather the bending beside them and do harm alone"
            };
            Finding::new(Verdict::Warn, summary)
                .remedy(Text::from(worth).then(Text::from(": first do as strength/panel-stress says.")))
        }
    };
    finding.against(factor(now), limit).table(table)
}

fn row(what: &str, (strength, moved): (f64, f64)) -> Vec<Text> {
    vec![Text::from(what), ratio(strength), Text::from(length(moved))]
}
