//! Strength: does the transom, and what holds the engines to it, bear what they bring?

mod bending;
mod bolt_torque;
mod bolts_combined;
mod bolts_shear;
mod bolts_tension;
mod bracket_moment;
mod core_bearing;
mod core_shear;
mod core_under_bolts;
mod panel_deflection;
mod signs;
mod soft_core;
mod tabbing;
mod top_edge_tear;
mod washer_crush;
mod weigh;

pub use bending::BENDING;
pub use bolt_torque::BOLT_TORQUE;
pub use bolts_combined::BOLTS_COMBINED;
pub use bolts_shear::BOLTS_SHEAR;
pub use bolts_tension::BOLTS_TENSION;
pub use bracket_moment::BRACKET_MOMENT;
pub use core_bearing::CORE_BEARING;
pub use core_shear::CORE_SHEAR;
pub use core_under_bolts::CORE_UNDER_BOLTS;
pub use panel_deflection::PANEL_DEFLECTION;
pub use signs::SIGNS;
pub use soft_core::SOFT_CORE;
pub use tabbing::TABBING;
pub use top_edge_tear::TOP_EDGE_TEAR;
pub use washer_crush::WASHER_CRUSH;

use uom::si::f64::Ratio;

use super::{Finding, Limit, Verdict};
use crate::case::Case;
use crate::case::strength::show::{force, ratio, times};
use crate::case::strength::{Footing, Laden, NoStrength, Part, Strength, Worst};
use crate::quantity::{Dimensioned, Measure, Style, Text, say};
use crate::rig::Rig;
use crate::working::{Sheet, Table};

/// Factor on a bolt's proof load and on its strength in shear. Common practice, no source.
const BOLT_FACTOR: f64 = 2.0;
/// Factor on what core and laminate bear, at a bolt or in the panel: the inverse of ISO 12215-5's design stress, half of the ultimate (value from memory).
pub(crate) const DESIGN_FACTOR: f64 = 2.0;
/// Factor below which a part is loaded beyond its own strength.
const BREAKS: f64 = 1.0;

/// What strength makes of the case, or the finding that says why there is nothing.
fn ready<'c>(case: &'c Case) -> Result<&'c Strength, Box<Finding>> {
    case.strength().map_err(|no| {
        Box::new(match no {
            NoStrength::Missing(missing) => Finding::unmeasured(missing.clone()),
            NoStrength::Unfit(why) => Finding::new(Verdict::Unmeasured, why.clone()),
        })
    })
}

/// Fail beyond a part's own strength, warn below the factor of practice.
fn verdict(factor: f64, required: f64) -> Verdict {
    if factor < BREAKS {
        Verdict::Fail
    } else if factor < required {
        Verdict::Warn
    } else {
        Verdict::Pass
    }
}

/// A factor, for showing.
fn factor(value: f64) -> Measure {
    Measure::styled(Ratio::from_si(value.min(1e6)), Style::Factor)
}

/// A limit of a factor, which is exact.
fn limit(value: f64) -> Limit {
    Limit::AtLeast(Measure::of(Ratio::from_si(value)))
}

/// "the upper bolt 6 in to port of the engine, slamming in waves".
fn which(footing: &Footing, laden: &Laden, worst: &Worst) -> Text {
    say!("the ").then(footing.bolt(worst.bolt)).then(say!(
        " of the {}, {}",
        footing.name.as_str(),
        laden.cases[worst.case].name()
    ))
}

/// The greatest demand of each case before and after.
fn beside(title: &str, part: Part, strength: &Strength) -> Table {
    let demands = |laden: &Laden| laden.demands(part, strength.driving);
    by_case(title, strength, demands, |newtons| Text::from(force(newtons)))
}

/// A figure of each case before and after.
fn by_case(
    title: &str,
    strength: &Strength,
    figures: impl Fn(&Laden) -> Vec<f64>,
    show: impl Fn(f64) -> Text,
) -> Table {
    let before = strength.before.as_ref().ok();
    let before = before.map(|laden| (laden, figures(laden)));
    let rows = strength
        .after
        .cases
        .iter()
        .zip(figures(&strength.after))
        .map(|(case, after)| {
            let old = before.as_ref().and_then(|(laden, figures)| {
                let at = laden.cases.iter().position(|other| other == case)?;
                figures.get(at).copied()
            });
            vec![
                Text::from(case.name()),
                old.map_or(Text::from("–"), &show),
                show(after),
                old.map_or(Text::from("–"), |old| times(old, after)),
            ]
        })
        .collect();
    Table::new(title, &["case", "before", "after", "after / before"], rows)
}

/// What comes before any plate, knee or layer where the core was found soft.
const CORE_FIRST: &str = "Settle the core first, as strength/soft-core says; build nothing on it before.";

/// "With what hung there before it was 3.1: the new engines are 1.4 times as hard on it." or nothing.
fn old_factor(strength: &Strength, now: f64, old: impl Fn(&Laden) -> Option<f64>) -> Text {
    match &strength.before {
        Ok(laden) => match old(laden) {
            Some(value) if value <= now => {
                say!(" With what hung there before it was {}.", factor(value))
            }
            Some(value) if value.is_finite() && value < 1e3 => say!(
                " With what hung there before it was {}: the new engines are {} times as hard on it.",
                factor(value),
                factor(value / now)
            ),
            _ => Text::from(" What hung there before hardly worked on it."),
        },
        Err(_) => Text::default(),
    }
}

/// " Of all parts this one gives way first." where it does.
fn first(strength: &Strength, rig: &Rig, words: &str) -> Text {
    match strength.governing(rig) {
        Some((governing, ..)) if governing == words => {
            Text::from(" Of all that holds the engines this gives way first.")
        }
        _ => Text::default(),
    }
}

/// A finding about the bolt nearest to giving way in one part; what does not pull at all passes.
struct Judged<'s> {
    worst: Worst,
    footing: &'s Footing,
    finding: Finding,
}

/// Judges a part at the bolts.
fn at_bolts<'s>(
    part: Part,
    required: f64,
    what: &str,
    rig: &Rig,
    strength: &'s Strength,
) -> Result<Judged<'s>, Box<Finding>> {
    let Some(worst) = strength.after.worst(part, rig, strength) else {
        return Err(Box::new(Finding::new(Verdict::Unmeasured, Text::from("No bolt is known."))));
    };
    let footing = &strength.after.footings[worst.footing];
    let value = worst.factor();
    if worst.demand <= 1e-6 {
        return Err(Box::new(Finding::new(Verdict::Pass, say!("Nothing works on the {} in any case.", what))));
    }
    let old = |laden: &Laden| laden.worst(part, rig, strength).map(|worst| worst.factor());
    let summary = say!("The {} holds {} times ", what, factor(value))
        .then(if part == Part::Combined {
            Text::from("what works on it")
        } else {
            say!("the greatest force on it, {}", force(worst.demand))
        })
        .then(Text::from(": "))
        .then(which(footing, &strength.after, &worst))
        .then(Text::from("."))
        .then(old_factor(strength, value, old))
        .then(first(strength, rig, part.words()));
    let finding = Finding::new(verdict(value, required), summary).against(factor(value), limit(required));
    Ok(Judged { worst, footing, finding })
}

/// The sheet of one part: capacity, then the factor.
fn capacity_sheet(part: Part, judged: &Judged, rig: &Rig, strength: &Strength) -> Sheet {
    let mut sheet = Sheet::default();
    judged.footing.capacity(&mut sheet, part, rig, &strength.board, strength.left(), judged.worst.bolt);
    sheet.remark(
        say!("capacity {} over load {}: ", force(judged.worst.capacity), force(judged.worst.demand))
            .then(ratio(judged.worst.factor())),
    );
    sheet
}

/// The least bolt of the catalog that brings the factor up: of the same series of threads.
fn next_bolt(footing: &Footing, rig: &Rig, wanted_area: f64) -> Option<(String, f64)> {
    let metric = footing.size.name.starts_with('M');
    rig.tables
        .bolt_sizes
        .iter()
        .filter(|entry| entry.name.starts_with('M') == metric)
        .map(|entry| (entry.name.clone(), entry.spec.stress_area.value.si()))
        .filter(|(_, area)| *area >= wanted_area)
        .min_by(|a, b| a.1.total_cmp(&b.1))
}

/// What to do about bolts that are too weak: the next size, or more of them.
fn stronger_bolts(judged: &Judged, required: f64, rig: &Rig) -> Text {
    let (worst, footing) = (&judged.worst, judged.footing);
    let area = footing.size.spec.stress_area.value.si() * required / worst.factor();
    match next_bolt(footing, rig, area) {
        Some((name, _)) => say!(
            "Set {} bolts of {} in place of {} at the {}.",
            name.as_str(),
            footing.grade.name.as_str(),
            footing.size.name.as_str(),
            footing.name.as_str()
        ),
        None => say!(
            "No bolt of the catalog is enough: share the load over {} bolts or more of {} at the {}, spread over a taller face.",
            (footing.bolts.len() as f64 * required / worst.factor()).ceil() as usize,
            footing.size.name.as_str(),
            footing.name.as_str()
        ),
    }
}
