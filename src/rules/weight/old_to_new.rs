//! `weight/old-to-new`

use uom::si::f64::Mass;

use crate::case::Case;
use crate::physics::weight;
use crate::quantity::{Dimensioned, Measure, Text, say};
use crate::rig::Missing;
use crate::rules::rule::rule;
use crate::rules::{Finding, Limit, Verdict};
use crate::working::{Sheet, Table, Term, number};

rule! {
    /// What hangs on the stern after, against what hung there before, item by item.
    ///
    /// **Why.** Weight at the very end of the boat sinks the stern and lifts the bow more than the
    /// same weight anywhere else; scuppers and well edges come nearer to the water.
    ///
    /// **Limit.** At most 15 % more than hung there before.
    ///
    /// **Source.** Common practice, no source.
    ///
    /// **When it warns.** The weight alone does not decide: she must be floated, by calculation or
    /// with sandbags at the engines' place, and the well edge and the scuppers measured.
    OLD_TO_NEW = Weight "weight/old-to-new", judge;
}

/// Growth of the weight on the stern that is commonly taken without a second thought. Common
/// practice, no source.
const MOST_GROWTH: f64 = 1.15;

fn judge(case: &Case) -> Finding {
    let rig = case.rig;
    let mut missing: Vec<Missing> = [rig.before.ask().err(), rig.after.ask().err()].into_iter().flatten().collect();
    let (before, after) = match (rig.before.hung(), rig.after.hung()) {
        (Ok(before), Ok(after)) if missing.is_empty() => (before, after),
        (before, after) => {
            missing.extend(before.err().into_iter().chain(after.err()).flatten());
            return Finding::unmeasured(missing);
        }
    };
    let mut sheet = Sheet::default();
    let old = weight::total(&mut sheet, "Wo", "hung on the stern before", &before);
    let new = weight::total(&mut sheet, "Wn", "hangs on the stern after", &after);
    let change = sheet.set("ΔW", "net change", &new - &old);
    let limit = sheet.set(
        "Wl",
        "what is commonly taken without a second thought",
        number(MOST_GROWTH) * Term::new("Wo", old.value()),
    );
    let (found, at_most) = (new.measure(), limit.measure());
    let finding = if new.value().exceeds(limit.value()) {
        Finding::new(
            Verdict::Warn,
            say!("{} hangs on the stern where {} hung: {} more.", found, old.measure(), change.measure()),
        )
        .remedy(Text::from(remedy(case)))
    } else {
        Finding::new(
            Verdict::Pass,
            say!("{} hangs on the stern where {} hung: a change of {}.", found, old.measure(), change.measure()),
        )
    };
    finding.against(found, Limit::AtMost(at_most)).table(items(&before, &after, change.measure())).working(sheet)
}

/// Where she could be floated, the stern's own rules say what the weight does.
fn remedy(case: &Case) -> &'static str {
    let floated = case.float().is_ok_and(|float| float.loadings.iter().any(|loaded| loaded.both().is_some()));
    if floated {
        "See what it does to her afloat: stern/trim-change, stern/well-edge and stern/scuppers."
    } else {
        "Float her before ordering: by calculation (give her sections and freeboards, see `sternknee tape`), or with sandbags of that weight at the engines' place, persons and fuel aboard; measure well edge and scuppers."
    }
}

fn items(before: &[(String, Mass)], after: &[(String, Mass)], change: Measure) -> Table {
    let row = |name: &str, sign: &str, measure| vec![say!("{}", name), say!("{}{}", sign, measure)];
    let mut rows: Vec<Vec<Text>> = Vec::new();
    rows.extend(before.iter().map(|(name, mass)| row(name, "-", Measure::of(*mass))));
    rows.extend(after.iter().map(|(name, mass)| row(name, "+", Measure::of(*mass))));
    rows.push(row("net change", "", change));
    Table::new("off and on the stern", &["item", "weight"], rows)
}
