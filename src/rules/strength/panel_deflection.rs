//! `strength/panel-deflection`

use super::DESIGN_FACTOR;
use super::strengthen::{OF_THE_PLACE, allowed_movement, remedy, strengthen, width};
use super::{by_case, ready_with_core};
use crate::case::Case;
use crate::case::strength::show::{length, place};
use crate::case::strength::{Bent, Laden, Strength, Way, solved};
use crate::quantity::{Text, say};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::{Sheet, Table};

rule! {
    /// How far the transom moves in ordinary running: at rest, at full thrust, at full speed and hard
    /// over.
    ///
    /// **Why.** A transom that pants opens its joints to hull and well, and water follows. The engine
    /// moves with it, and its steering.
    ///
    /// **Limit.** At most a hundredth of the width of the transom between its sides, with knees or without.
    ///
    /// **Source.** Reissner–Mindlin plate solved by finite elements; common practice, no source (the
    /// limit).
    ///
    /// **When it warns.** Fit knees where the finding says, or build the transom up.
    PANEL_DEFLECTION = Strength "strength/panel-deflection", judge;
}

/// Part of a plate's thickness within which its deflection follows its load. S. P. Timoshenko and S. Woinowsky-Krieger, Theory
/// of Plates and Shells, article 13, value from memory.
const LINEAR: f64 = 0.5;

fn judge(case: &Case) -> Judgement {
    let strength = ready_with_core(case)?;
    let bent = &strength.after.bent;
    let (index, loaded) = bent.deflection();
    let moved = loaded.largest_deflection.abs();
    let span = width(&strength.board);
    let allowed = allowed_movement(&strength.board);
    let mut sheet = Sheet::default();
    solved(&mut sheet, "worst case of ordinary running", &strength.after, index, strength);
    sheet.remark(say!("{} between the sides; a hundredth of it is {}", length(span), length(allowed)));
    let thickness = strength.board.thickness();
    let stretched = if moved > LINEAR * thickness {
        sheet.remark(say!(
            "more than half of the thickness, {}: a plate that moves so far stretches and stiffens, which this reckoning leaves out",
            length(thickness)
        ));
        Text::from(" That is beyond half its thickness, where it stretches and truly moves less.")
    } else {
        Text::default()
    };
    let old = strength.before.as_ref().ok().map(|laden| laden.bent.deflection().1.largest_deflection.abs());
    let beside = old.map_or(Text::default(), |old| say!(" With what hung there before it moved {}.", length(old)));
    let summary = say!("The transom moves {}, {}, ", length(moved), strength.after.cases[index].name())
        .then(place(loaded.largest_at, strength.board.top))
        .then(Text::from("."))
        .then(stretched)
        .then(beside);
    let best = || strength.at_best().map_or(moved, |best| best.deflection().1.largest_deflection.abs().min(moved));
    let best = if moved <= allowed { moved } else { best() };
    let verdict = if moved <= allowed {
        Verdict::Pass
    } else if best <= allowed {
        Verdict::Unmeasured
    } else {
        Verdict::Warn
    };
    let mut finding = Finding::new(verdict, summary)
        .against(length(moved), Limit::AtMost(length(allowed)))
        .working(sheet)
        .table(cases(strength));
    match verdict {
        Verdict::Warn => {
            let moves = |bent: &Bent| bent.deflection().1.largest_deflection.abs();
            let least = |bent: &Bent| bent.factor(Way::Bending).min(bent.factor(Way::Shear));
            // Where it is too weak besides, one remedy does for both.
            finding = finding.remedy(if least(&strength.after.bent) < DESIGN_FACTOR {
                strengthen(case.rig, strength)
            } else {
                remedy(case.rig, strength, &|bent| moves(bent) * OF_THE_PLACE <= allowed, &|bent| {
                    say!("it then moves {}", length(moves(bent)))
                })
            });
        }
        Verdict::Unmeasured => {
            finding.missing = strength.open.iter().map(|open| open.missing()).collect();
            finding.summary = finding
                .summary
                .then(say!(" With the best of what was not told of the transom it would be {}.", length(best)));
        }
        _ => {}
    }
    Ok(finding)
}

/// Deflection of each case before and after.
fn cases(strength: &Strength) -> Table {
    let effects = |laden: &Laden| laden.bent.effects.iter().map(|one| one.braced().loaded.largest_deflection).collect();
    by_case("largest deflection, forward positive", strength, effects, |metres| Text::from(length(metres)))
}
