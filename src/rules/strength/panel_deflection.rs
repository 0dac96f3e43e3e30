//! `strength/panel-deflection`

use uom::si::f64::Length;

use super::{build_up, by_case, ready};
use crate::case::Case;
use crate::case::strength::show::{force, length, place};
use crate::case::strength::{Board, Laden, Strength, solved};
use crate::physics::strength::knockdown::KnockDown;
use crate::quantity::{Dimensioned, Measure, Text, say};
use crate::rules::rule::{given, rule};
use crate::rules::{Finding, Limit, Verdict};
use crate::working::{Sheet, Table};

rule! {
    /// How far the transom moves in ordinary running: at rest, at full thrust, at full speed and hard
    /// over.
    ///
    /// **Why.** A transom that pants opens its joints to hull and well, and water follows. The engine
    /// moves with it, and its steering.
    ///
    /// **Limit.** At most a hundredth of the width of the transom that hangs free between what holds
    /// its top: sides or knees.
    ///
    /// **Source.** Reissner–Mindlin plate solved by finite elements; common practice, no source (the
    /// limit).
    ///
    /// **When it warns.** Fit knees where the finding says, or build the transom up.
    PANEL_DEFLECTION = Strength "strength/panel-deflection", judge;
}

/// Width hanging free over the deflection allowed. Common practice, no source.
const SPAN_OVER_DEFLECTION: f64 = 100.0;
/// A knee that ends farther than this below the top does not hold the top. Common practice, no source.
const TOP_REACH: f64 = 0.5;

fn judge(case: &Case) -> Finding {
    if let Some(answer) = study(case) {
        return answer;
    }
    let strength = given!(ready(case));
    let bent = &strength.after.bent;
    let governing = &bent.deflection;
    let moved = governing.solution.largest_deflection.abs();
    let span = free_width(&strength.board);
    let allowed = span / SPAN_OVER_DEFLECTION;
    let mut sheet = Sheet::default();
    solved(&mut sheet, "worst case of ordinary running", &strength.after, governing, strength);
    sheet.remark(say!("{} of the top hangs free; a hundredth of it is {}", length(span), length(allowed)));
    let old = strength.before.as_ref().ok().map(|laden| laden.bent.deflection.solution.largest_deflection.abs());
    let beside = old.map_or(Text::default(), |old| say!(" With what hung there before it moved {}.", length(old)));
    let summary = say!("The transom moves {}, {}, ", length(moved), strength.after.cases[governing.case].name())
        .then(place(governing.solution.largest_at, strength.board.top))
        .then(Text::from("."))
        .then(beside);
    let verdict = if moved > allowed { Verdict::Warn } else { Verdict::Pass };
    let mut finding = Finding::new(verdict, summary)
        .against(length(moved), Limit::AtMost(length(allowed)))
        .working(sheet)
        .table(cases(strength));
    if verdict != Verdict::Pass {
        finding = finding.remedy(remedy(strength, moved, allowed));
    }
    finding
}

/// The widest stretch of the top between sides and knees, m.
fn free_width(board: &Board) -> f64 {
    let half = board.outline.iter().map(|p| p[0]).fold(0.0, f64::max);
    let mut held = vec![-half, half];
    held.extend(
        board.knees.iter().filter(|knee| knee.to - knee.from > TOP_REACH * (board.top - knee.from)).map(|knee| knee.y),
    );
    held.sort_by(f64::total_cmp);
    held.windows(2).map(|pair| pair[1] - pair[0]).fold(0.0, f64::max)
}

fn remedy(strength: &Strength, moved: f64, allowed: f64) -> Text {
    let knees = &strength.knees;
    if strength.left() == KnockDown::SOUND
        && !knees.there
        && let (Some((_, with)), Some(knee)) = (knees.other, knees.places.first())
        && with.abs() / knees.now.1.abs().max(f64::MIN_POSITIVE) * moved <= allowed
    {
        return say!(
            "Fit a pair of knees {} each side of the centreline, {} high: it then moves about {}.",
            Measure::tape(Length::from_si(knee.y.abs())),
            Measure::tape(Length::from_si(knee.to - knee.from)),
            length(with.abs() / knees.now.1.abs().max(f64::MIN_POSITIVE) * moved)
        );
    }
    // Deflection falls as the cube of thickness in one material.
    build_up(strength, (moved / allowed).cbrt())
}

/// Deflection of each case before and after.
fn cases(strength: &Strength) -> Table {
    let effects = |laden: &Laden| laden.bent.effects.iter().map(|one| one.deflection).collect();
    by_case("largest deflection, forward positive", strength, effects, |metres| Text::from(length(metres)))
}

/// The answer where a panel is given outright.
fn study(case: &Case) -> Option<Finding> {
    let answer = case.panel_study()?.ok()?;
    let solution = &answer.solution;
    let mut sheet = Sheet::default();
    sheet.remark(answer.remark());
    let [across, up, twist] = answer.moments.map(|(value, _)| force(value));
    let summary = say!(
        "The panel moves {} at most, {} across and {} up; the moments of a unit of width reach {} across, {} up and {} in twist.",
        length(solution.largest_deflection),
        length(solution.largest_at[0]),
        length(solution.largest_at[1]),
        across,
        up,
        twist
    );
    let finding =
        Finding { found: Some(length(solution.largest_deflection)), ..Finding::new(Verdict::Unmeasured, summary) };
    Some(answer.tables().into_iter().fold(finding.working(sheet), Finding::table))
}
