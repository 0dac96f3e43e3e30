//! `running/porpoising`

use uom::si::f64::Mass;

use super::{Predicted, ready};
use crate::case::Case;
use crate::case::running::{Nearest, Runs};
use crate::job::{Porpoises, Sailed};
use crate::quantity::{Dimensioned, Measure, Text, degrees, say, standard_gravity};
use crate::reading::reading;
use crate::rig::Missing;
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::Sheet;

rule! {
    /// Her trim on plane against the trim above which a planing bottom begins to leap.
    ///
    /// **Why.** Porpoising grows of itself, slams crew and transom, and ends in a loss of hold. Weight and
    /// thrust that went aft bring her nearer to it.
    ///
    /// **Limit.** Below the critical trim at every speed on plane that her engines hold; what a trial says of it
    /// comes first.
    ///
    /// **Source.** Celano 1998, a fit to Savitsky's curves, value from memory (the critical trim); Savitsky
    /// 1964 (her trim); common practice, no source (that both together are worth a degree).
    ///
    /// **When it warns.** Trim in, tabs down, weight forward, more setback: what the finding names has
    /// been tried on her.
    PORPOISING = Running "running/porpoising", judge;
}

/// What trim and limit together are worth, degrees. Common practice, no source.
const WORTH_DEG: f64 = 1.0;
/// By how much less than before counts for no more than before, degrees. Common practice, no source.
const NO_MORE_DEG: f64 = 0.3;

fn judge(case: &Case) -> Judgement {
    let (runs, predicted) = ready(case)?;
    let trials = case.trial();
    let said = |sailed: Option<&Sailed>| sailed.and_then(|sailed| sailed.porpoises);
    let after = said(trials.and_then(|trials| Some(&trials.after.as_ref()?.said)));
    let before = said(trials.and_then(|trials| Some(&trials.before.as_ref()?.said)));
    let Some(nearest) = predicted.nearest_porpoising() else {
        return Ok(match after {
            Some(words) => told_only(words),
            None => Finding::not_applicable(Text::from(
                "The limit is told for 5 to 25 degrees of deadrise, within the method's range of trim: it is not told for her.",
            )),
        });
    };
    let mut sheet = Sheet::default();
    sheet.remark(say!(
        "Nearest at {}: she trims {}, and porpoises from {}.",
        Measure::of(nearest.speed),
        Measure::of(nearest.trim),
        Measure::of(nearest.limit)
    ));
    let mass: Mass = predicted.built.craft.planing.weight / standard_gravity();
    // Where a trial overrules the curves, no margin to them is told.
    let overruled = |verdict| verdict == Verdict::Pass && nearest.excess().si() > 0.0;
    let finding = |verdict, summary: Text| {
        let finding = Finding::new(verdict, summary).working(sheet.clone()).found(Measure::of(nearest.trim));
        if overruled(verdict) { finding } else { finding.limit(Limit::AtMost(Measure::of(nearest.limit))) }
    };
    let cure = || {
        predicted.cures().told(mass).unwrap_or_else(|| {
            Text::from("None of trim, tabs, a foot of weight forward or six inches of setback is enough by itself: do them together, and try.")
        })
    };
    let summary = words(runs, &nearest);
    match after {
        Some(Porpoises::Never | Porpoises::TrimmedOut) => {
            let words = if after == Some(Porpoises::Never) {
                "The trial found none."
            } else {
                "The trial found it with the engines trimmed out only."
            };
            return Ok(finding(Verdict::Pass, Text::from(words).then(Text::from(" ")).then(summary)));
        }
        Some(Porpoises::AtSomeSpeeds | Porpoises::Always) => {
            return Ok(
                finding(Verdict::Warn, Text::from("The trial found that she porpoises. ").then(summary)).remedy(cure())
            );
        }
        None => {}
    }
    let excess = nearest.excess();
    if excess.si() <= 0.0 {
        return Ok(finding(Verdict::Pass, summary));
    }
    // Whoever drives her trims in first.
    let trimmed = predicted.built.trims.and_then(|[least, _]| predicted.trimmed_to(least));
    if let Some(trimmed) = trimmed.filter(|trimmed| trimmed.excess().si() <= 0.0) {
        return Ok(finding(
            Verdict::Pass,
            summary.then(say!(
                " With the engines trimmed right in she stays {} below it.",
                Measure::of(trimmed.excess().abs())
            )),
        ));
    }
    let was = runs.before.as_ref().ok().and_then(Predicted::nearest_porpoising);
    let proven = matches!(before, Some(Porpoises::Never | Porpoises::TrimmedOut));
    if proven && was.is_some_and(|was| excess <= was.excess() + degrees(NO_MORE_DEG)) {
        return Ok(finding(
            Verdict::Pass,
            summary.then(Text::from(
                " With the old engines she stood no farther from it, and the trial before found none.",
            )),
        ));
    }
    // Where even trimmed in she stands beyond what both are worth.
    let left = trimmed.map_or(excess, |trimmed| trimmed.excess());
    if left > degrees(WORTH_DEG) || matches!(before, Some(Porpoises::AtSomeSpeeds | Porpoises::Always)) {
        return Ok(finding(Verdict::Warn, summary).remedy(cure()));
    }
    let missing = vec![Missing::one(reading!(Sailed.porpoises))];
    let summary = summary.then(Text::from(" Trimmed in it is less than the curves are worth: a trial decides."));
    Ok(Finding { missing, ..finding(Verdict::Unmeasured, summary) }.remedy(cure()))
}

fn words(runs: &Runs, nearest: &Nearest) -> Text {
    let word = if nearest.excess().si() > 0.0 { "above" } else { "below" };
    let was = runs.before.as_ref().ok().and_then(Predicted::nearest_porpoising).map_or(Text::default(), |was| {
        let word = if was.excess().si() > 0.0 { "above" } else { "below" };
        say!(" (with the old engines {} {})", Measure::of(was.excess().abs()), word)
    });
    say!(
        "At {} she trims {}, {} {} the trim at which she begins to porpoise",
        Measure::of(nearest.speed),
        Measure::of(nearest.trim),
        Measure::of(nearest.excess().abs()),
        word
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
        Porpoises::AtSomeSpeeds | Porpoises::Always => Finding::new(Verdict::Warn, summary).remedy(Text::from(
            "Trim in, set tabs down, stow weight forward: try them one by one at the speed where it begins.",
        )),
    }
}
