//! `strength/core-under-bolts`

use super::core_first;
use crate::rules::mend::{self, Change};
use uom::si::f64::Power;

use super::soft_core::core_refused;
use crate::case::Case;
use crate::job::{self, Inserts};
use crate::quantity::{Dimensioned, Measure, horsepower, say};
use crate::reading::reading;
use crate::rig::{Group, Missing, Rig};
use crate::rules::rule::rule;
use crate::rules::{Finding, Verdict};

rule! {
    /// What the bolts go through: whether the core bears being clamped and pressed by them.
    ///
    /// **Why.** Balsa and foam hold the skins apart and little else. A nut draws the skins together over
    /// them, the shank cuts into them, and the first water that follows the bolt has the whole core.
    ///
    /// **Limit.** No core under through bolts that needs inserts, unless sleeves or something solid are let
    /// in there.
    ///
    /// **Source.** Common practice, no source; the materials' own entries in the catalog.
    ///
    /// **When it warns.** Take the core out round the bolts and let in solid laminate, sound plywood or
    /// compression sleeves. It fails for engines of more than 25 hp: the trade hangs none on bare balsa or
    /// foam.
    CORE_UNDER_BOLTS = Strength "strength/core-under-bolts", judge;
}

/// Power above which no engine is hung on a bare core. Common practice, no source: about what is clamped on by hand.
const CLAMPED_ON_HP: f64 = 25.0;

fn judge(case: &Case) -> Finding {
    let rig = case.rig;
    let Some(materials) = materials(rig) else {
        return Finding::unmeasured(vec![Missing::one(reading!(job::Structure.lay_up))]);
    };
    let Some((weak, _)) = materials.iter().find(|(_, needs_inserts)| *needs_inserts) else {
        let names: Vec<&str> = materials.iter().map(|(name, _)| *name).collect();
        return Finding::new(
            Verdict::Pass,
            say!("The bolts go through {}: no core that needs inserts.", names.join(" and ")),
        );
    };
    let mut worst: Option<Finding> = None;
    for group in &rig.after.groups {
        one(case, group, weak).keep_worse(&mut worst);
    }
    worst.unwrap_or_else(|| Finding::unmeasured(vec![rig.after.missing()]))
}

/// What the bolts go through, and whether it needs inserts there: the layers, or the transom's material alone.
fn materials(rig: &Rig) -> Option<Vec<(&str, bool)>> {
    let layers = rig.structure.lay_up.reading().map(|layers| layers.iter().map(|layer| &layer.material).collect());
    let entries: Vec<_> = layers.unwrap_or_else(|| rig.material.iter().collect());
    let mut materials: Vec<(&str, bool)> = Vec::new();
    for entry in entries {
        let one = (entry.name.as_str(), entry.spec.needs_inserts);
        if !materials.contains(&one) {
            materials.push(one);
        }
    }
    (!materials.is_empty()).then_some(materials)
}

/// The bolts of one group of engines.
fn one(case: &Case, group: &Group, weak: &str) -> Finding {
    let named = match (&group.bracket, group.engines.as_slice()) {
        (Some(bracket), _) => bracket.name.as_str(),
        (None, [engine, ..]) => engine.label.as_str(),
        (None, []) => "engine",
    };
    if let Some(inserts @ (Inserts::Sleeves | Inserts::Solid)) = group.bolts.said.inserts {
        let summary = say!("The core is {}, and {} fill it at the bolts of the {}.", weak, inserts.words(), named);
        return Finding::new(Verdict::Pass, summary);
    }
    let powers: Result<Vec<Power>, Missing> =
        group.engines.iter().map(|engine| engine.power.ask().map(|power| power.value)).collect();
    let powers = match powers {
        Ok(powers) => powers,
        Err(missing) => return Finding::unmeasured(vec![missing]),
    };
    // A bracket brings all of its engines to the same bolts.
    let on_bolts = if group.bracket.is_some() {
        powers.iter().copied().sum()
    } else {
        powers.iter().copied().fold(Power::from_si(0.0), Power::max)
    };
    let verdict = if on_bolts.exceeds(horsepower(CLAMPED_ON_HP)) { Verdict::Fail } else { Verdict::Warn };
    let bare = match group.bolts.said.inserts {
        Some(_) => "bare",
        None => "bare for all that is told",
    };
    let summary = say!(
        "The bolts of the {} bring {} to {}, {}: it crushes and indents under them.",
        named,
        Measure::of(on_bolts),
        weak,
        bare
    );
    let remedy = say!(
        "Take the {} out round the bolts and let in solid laminate, sound plywood or compression sleeves, bedded and sealed. Where something is let in already, write it down: bolts: (inserts: sleeves) or (inserts: solid).",
        weak
    );
    Finding::new(verdict, summary).remedy(if core_refused(case) {
        core_first()
    } else {
        mend::change(remedy, [Change::to(format!("{}.bolts.inserts", group.entry), "sleeves")])
    })
}
