//! Remedies taken at their word: what they change is written into the job, and the rule is asked again.

use sternknee::case::Case;
use sternknee::job;
use sternknee::quantity::{Dimensioned, Kind, Measure, Style, Units, inches, parse};
use sternknee::rig::{self, Missing};
use sternknee::rules::mend::{Change, Mend};
use sternknee::rules::{self, Finding, Verdict};
use sternknee::written::Draught;

use super::CATALOG;

/// What became of one way of a remedy.
#[derive(Clone, Debug, PartialEq)]
pub enum Became {
    /// Written into the job, and the finding passes.
    Mended,
    /// Written into the job, and there is nothing to find fault with any more.
    Gone,
    /// Written into the job, and nothing is found fault with any more; what is then judged waits for readings that were missing before.
    Waits,
    /// No change of the job, for this reason.
    NoChange(&'static str),
    /// Written into the job, and it did not help, or could not be written at all.
    Failed(String),
}

/// The job with these changes.
pub fn changed(text: &str, changes: &[Change]) -> Result<String, String> {
    let mut text = text.to_owned();
    for change in changes {
        let draught = Draught::new(&text);
        text = match &change.value {
            Some(value) => draught.put(&change.entry, value).map_err(|no| format!("{}: {no:?}", change.entry))?,
            None => draught.without(&change.entry),
        };
    }
    Ok(text)
}

/// Every rule's id and finding of a job.
pub fn judged(text: &str) -> Result<Vec<(&'static str, Finding)>, String> {
    with_case(text, |case| rules::judge(case).into_iter().map(|one| (one.rule.id, one.finding)).collect())
}

/// The findings of a job that warn or fail, by what they come from.
pub fn groups(text: &str) -> Result<Vec<Vec<&'static str>>, String> {
    with_case(text, |case| {
        let mut judged = rules::judge(case);
        judged.retain(|one| wants(&one.finding));
        rules::by_cause(&judged).iter().map(|group| group.iter().map(|one| one.rule.id).collect()).collect()
    })
}

/// What a rule finds in a job.
fn found(id: &str, text: &str) -> Result<Finding, String> {
    let rule = rules::find(id).ok_or("no such rule")?;
    with_case(text, |case| (rule.judge)(case))
}

fn with_case<T>(text: &str, ask: impl FnOnce(&Case) -> T) -> Result<T, String> {
    let (job, _) = job::load("job.ron", text).map_err(|faults| faults.to_string())?;
    let rig = rig::resolve(&job, &CATALOG).map_err(|unresolved| format!("{unresolved:?}"))?;
    Ok(ask(&Case::new(&rig)))
}

/// A way of a remedy, taken. `others` are the findings of the same job, where another comes first.
pub fn taken(id: &str, text: &str, mend: &Mend, others: &[(&'static str, Finding)]) -> Became {
    let changes = match mend {
        Mend::Change(changes) if changes.is_empty() => return Became::Failed("nothing to change".to_owned()),
        Mend::Change(changes) => changes,
        Mend::First(rule) => {
            let before = others.iter().find(|(id, finding)| id == rule && wants(finding));
            let Some((_, before)) = before else { return Became::Failed(format!("{rule} finds nothing")) };
            // Where that one waits for another itself, so does this.
            let change = before.mends.iter().find(|mend| matches!(mend, Mend::Change(_) | Mend::First(_)));
            return match change {
                Some(change) => taken(id, text, change, others),
                None => Became::NoChange("another comes first"),
            };
        }
        Mend::Look | Mend::Ask | Mend::Yard | Mend::Care => return Became::NoChange(mend.word()),
    };
    let after = changed(text, changes).and_then(|text| found(id, &text));
    match after {
        Ok(after) if after.verdict == Verdict::Pass => Became::Mended,
        Ok(after) if after.verdict == Verdict::NotApplicable => Became::Gone,
        Ok(after) if after.verdict == Verdict::Unmeasured && was_missing(&after, others) => Became::Waits,
        Ok(after) => {
            Became::Failed(format!("with {changes:?}: {:?}: {}", after.verdict, after.summary.show(Units::Us)))
        }
        Err(why) => Became::Failed(format!("with {changes:?}: {why}")),
    }
}

/// Nothing is built up or cut by less: what stock comes in. Common practice, no source.
const LEAST_STOCK_IN: f64 = 0.25;

/// Whether half of what a way changes is enough as well for all of these rules: of its readings that stand in the job, each goes half
/// as far. `None` where there is none.
pub fn half_is_enough(ids: &[&str], text: &str, mend: &Mend) -> Option<bool> {
    let Mend::Change(changes) = mend else { return None };
    let draught = Draught::new(text);
    let amount = |text: &str, kind: Kind| Some(parse(text.strip_prefix('"')?.strip_suffix('"')?, kind).ok()?.si);
    let halved = |change: &Change| {
        let said = draught.entries().find(|said| said.path == change.entry)?;
        let value = change.value.as_deref()?;
        let kind = Kind::ALL.into_iter().find(|kind| amount(said.value, *kind).and(amount(value, *kind)).is_some())?;
        let (was, becomes) = (amount(said.value, kind)?, amount(value, kind)?);
        let least = if kind == Kind::Length { inches(LEAST_STOCK_IN).si() } else { 0.0 };
        ((becomes - was).abs() > 1.001 * least).then_some(())?;
        Some(Change::told(change.entry.clone(), Measure { si: 0.5 * (was + becomes), kind, style: Style::Plain }))
    };
    let half: Vec<(Option<Change>, &Change)> = changes.iter().map(|change| (halved(change), change)).collect();
    half.iter().any(|(half, _)| half.is_some()).then(|| {
        let changes: Vec<Change> = half.into_iter().map(|(half, whole)| half.unwrap_or(whole.clone())).collect();
        let passes = |text: &str, id: &str| found(id, text).is_ok_and(|after| after.verdict == Verdict::Pass);
        changed(text, &changes).is_ok_and(|text| ids.iter().all(|id| passes(&text, id)))
    })
}

/// Whether a finding waits for nothing but what the job lacked before.
fn was_missing(after: &Finding, others: &[(&'static str, Finding)]) -> bool {
    let lacked =
        |one: &Missing| others.iter().any(|(_, other)| other.missing.iter().any(|known| known.name() == one.name()));
    !after.missing.is_empty() && after.missing.iter().all(lacked)
}

/// Whether a finding asks for something to be done.
pub fn wants(finding: &Finding) -> bool {
    matches!(finding.verdict, Verdict::Fail | Verdict::Warn)
}
