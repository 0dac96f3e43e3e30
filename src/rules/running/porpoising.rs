//! `running/porpoising`

use crate::rules::mend;
use uom::si::f64::Mass;

use super::ready;
use crate::case::Case;
use crate::case::running::{BLADE_SETBACK_IN, FourthBlade, Held, Nearest};
use crate::job::{Porpoises, Sailed};
use crate::physics::running::taken_at;
use crate::quantity::{Compared, Dimensioned, Measure, Text, Units, degrees, inches, say, standard_gravity};
use crate::reading::reading;
use crate::rig::Missing;
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::Sheet;

rule! {
    /// Her trim on plane against the trims at which a planing bottom begins to leap.
    ///
    /// **Why.** Porpoising grows of itself, slams crew and transom, and ends in a loss of hold. Weight and
    /// thrust that went aft bring her nearer to it.
    ///
    /// **Limit.** Two limits are published, up to a degree apart. At every speed on plane that her engines hold she shall stay
    /// below the higher, trimmed in if need be, or within a degree of it no nearer than with the old engines; below the lower where
    /// she was seen to porpoise with those. What a trial says of it comes first.
    ///
    /// **Source.** Savitsky 1964, his curves, and Celano 1998, a formula from memory (the limits); Savitsky 1964, with quasi-steady
    /// blades after Gutsche 1964, from memory (her trim); common practice, no source (that her trim is worth a degree).
    ///
    /// **When it warns.** Trim in, tabs down, weight forward, more setback: what the finding names has
    /// been tried on her.
    PORPOISING = Running "running/porpoising", judge;
}

/// What her trim is worth, degrees. Common practice, no source.
const WORTH_DEG: f64 = 1.0;
/// By how much less than before counts for no more than before, degrees. Common practice, no source.
const NO_MORE_DEG: f64 = 0.3;
/// What is said where nothing that can be reckoned is enough.
const NOTHING_ENOUGH: &str = "Neither tabs, a foot of weight forward nor six inches of setback is enough, with the engines trimmed right in: do them together.";

fn judge(case: &Case) -> Judgement {
    let (runs, predicted) = ready(case)?;
    let trials = case.trial();
    let said = |sailed: Option<&Sailed>| sailed.and_then(|sailed| sailed.porpoises);
    let after = said(trials.and_then(|trials| Some(&trials.after.as_ref()?.said)));
    let before = said(trials.and_then(|trials| Some(&trials.before.as_ref()?.said)));
    let porpoised = |words| matches!(words, Some(Porpoises::AtSomeSpeeds | Porpoises::Always));
    let held = if porpoised(after) || porpoised(before) { Held::Strictly } else { Held::Usually };
    let Some(nearest) = predicted.nearest_porpoising(held) else {
        return Ok(match after {
            Some(words) => told_only(words),
            None => Finding::not_applicable(Text::from(
                "The limit is told for bottoms of up to 25 degrees of deadrise, on plane and within the method's range of trim: it is not told for her.",
            )),
        });
    };
    let mut sheet = Sheet::default();
    sheet.remark(say!(
        "Nearest at {}: she trims {}; by the two published limits she begins to porpoise at {} and at {}.",
        Measure::of(nearest.speed),
        Measure::of(nearest.trim),
        Measure::of(nearest.between.from),
        Measure::of(nearest.between.to)
    ));
    let deadrise = predicted.built.craft.planing.bottom.deadrise;
    let taken = taken_at(deadrise);
    let flat = if taken.exceeds(deadrise) {
        say!(" Her bottom is flatter than Celano's limit tells: it is taken at {}.", Measure::of(taken))
    } else {
        Text::default()
    };
    let mass: Mass = predicted.built.craft.planing.weight / standard_gravity();
    // Where trim or a trial overrules the limits, no margin to them is told.
    let overruled = |verdict| verdict == Verdict::Pass && nearest.excess().si() > 0.0;
    let finding = |verdict, summary: Text| {
        let finding = Finding::new(verdict, summary).working(sheet.clone()).found(Measure::of(nearest.trim));
        if overruled(verdict) { finding } else { finding.limit(Limit::AtMost(Measure::of(nearest.limit))) }
    };
    let cure = || {
        let cures = predicted.cures(held);
        let reckoned = cures.told(mass).unwrap_or_else(|| Text::from(NOTHING_ENOUGH));
        reckoned.then(on_loan(cures.fourth_blade.as_ref()))
    };
    let was = runs.before.as_ref().ok().and_then(|before| before.nearest_porpoising(held));
    let summary = words(&nearest, was.as_ref()).then(flat);
    match after {
        Some(Porpoises::Never) => {
            return Ok(finding(Verdict::Pass, Text::from("The trial found none. ").then(summary)));
        }
        Some(Porpoises::TrimmedOut) => {
            let words = "The trial found it with the engines trimmed out only. ";
            return Ok(finding(Verdict::Pass, Text::from(words).then(summary)));
        }
        Some(Porpoises::AtSomeSpeeds | Porpoises::Always) => {
            return Ok(finding(Verdict::Warn, Text::from("The trial found that she porpoises. ").then(summary))
                .remedy(mend::care(cure())));
        }
        None => {}
    }
    let excess = nearest.excess();
    if excess.si() <= 0.0 {
        return Ok(finding(Verdict::Pass, summary));
    }
    // Whoever drives her trims in first.
    let trimmed = predicted.trimmed_in(held);
    if let Some(trimmed) = trimmed.filter(|trimmed| trimmed.excess().si() <= 0.0) {
        return Ok(finding(
            Verdict::Pass,
            summary.then(say!(
                " With the engines trimmed right in she stays {} below it.",
                Measure::of(trimmed.excess().abs())
            )),
        ));
    }
    let proven = matches!(before, Some(Porpoises::Never | Porpoises::TrimmedOut));
    if proven && was.is_some_and(|was| excess <= was.excess() + degrees(NO_MORE_DEG)) {
        return Ok(finding(
            Verdict::Pass,
            summary.then(Text::from(
                " With the old engines she stood no farther from it, and the trial before found none.",
            )),
        ));
    }
    // Where even trimmed in she stands beyond what her trim is worth.
    let left = trimmed.map_or(excess, |trimmed| trimmed.excess());
    if left > degrees(WORTH_DEG) || porpoised(before) {
        return Ok(finding(Verdict::Warn, summary).remedy(mend::care(cure())));
    }
    if was.is_some_and(|was| excess <= was.excess() + degrees(NO_MORE_DEG)) {
        return Ok(finding(
            Verdict::Pass,
            summary.then(Text::from(" That is no nearer than with the old engines: she will do as she did.")),
        ));
    }
    let missing = vec![Missing::one(reading!(Sailed.porpoises))];
    let summary = summary.then(Text::from(" That is less than her trim is worth: a trial decides."));
    Ok(Finding { missing, ..finding(Verdict::Unmeasured, summary) }.remedy(mend::care(cure())))
}

/// A change of trim that is not told in degrees.
const HARDLY_DEG: f64 = 0.05;

/// What the trade knows, as far as it is reckoned: blades steady a stern besides lifting it. Common practice, no source.
fn on_loan(blade: Option<&FourthBlade>) -> Text {
    let cure =
        say!(" A fourth blade, with {} more of setback, often cures it.", Measure::tape(inches(BLADE_SETBACK_IN)));
    match blade {
        Some(FourthBlade { enough: true, .. }) => Text::default(),
        None => cure.then(Text::from(" That is not reckoned here: try one on loan.")),
        Some(FourthBlade { trims, .. }) => {
            let changes = if trims.abs() < degrees(HARDLY_DEG) {
                Text::from("hardly changes her trim")
            } else {
                say!("trims her {} {}", Measure::of(trims.abs()), if trims.si() > 0.0 { "more" } else { "less" })
            };
            cure.then(Text::from(" What is reckoned of it, the blades' lift and the weight farther aft, "))
                .then(changes)
                .then(Text::from("; how it steadies her is not: try one on loan."))
        }
    }
}

fn words(nearest: &Nearest, was: Option<&Nearest>) -> Text {
    let side = |excess: uom::si::f64::Angle| if excess.si() > 0.0 { "above" } else { "below" };
    let was = was.map_or(Text::default(), |was| {
        say!(" (with the old engines {} {})", Measure::of(was.excess().abs()), side(was.excess()))
    });
    // As far as the printed figures stand apart.
    let (trim, limit) = (Measure::of(nearest.trim), Measure::of(nearest.limit));
    let printed = Compared::of(trim, None, Some(limit), Units::Us);
    say!(
        "At {} she trims {}, {} {} the trim at which she begins to porpoise",
        Measure::of(nearest.speed),
        printed.found,
        printed.room.trim_start_matches('-'),
        side(nearest.excess())
    )
    .then(was)
    .then(Text::from("."))
}

/// What a trial says where the limit is not told.
fn told_only(words: Porpoises) -> Finding {
    let summary = say!("The trial found that she porpoises {}.", words.words());
    match words {
        Porpoises::Never => Finding::new(Verdict::Pass, Text::from("The trial found no porpoising.")),
        Porpoises::TrimmedOut => Finding::new(Verdict::Pass, summary),
        Porpoises::AtSomeSpeeds | Porpoises::Always => Finding::new(Verdict::Warn, summary).remedy(mend::care(
            "Trim in, set tabs down, stow weight forward: try them one by one at the speed where it begins.",
        )),
    }
}
