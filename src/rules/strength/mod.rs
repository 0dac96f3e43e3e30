//! Strength: does the transom, and what holds the engines to it, bear what they bring?

mod at_bolts;
mod bending;
mod bolt_torque;
mod bolts_combined;
mod bolts_shear;
mod bolts_tension;
mod bracket_moment;
mod core_bearing;
mod core_shear;
mod core_under_bolts;
mod knees;
mod panel_deflection;
mod plate;
mod punching;
mod signs;
mod soft_core;
mod strengthen;
mod tabbing;
mod top_edge_tear;
mod washer_crush;
mod weigh;

pub(super) use soft_core::core_doubted;
pub(super) use tabbing::let_go as tabbing_let_go;

use crate::case::strength::Footing;
use crate::rules::mend::{self, Remedy};
use uom::si::f64::{Length, Ratio};

use super::{Finding, Limit, Rule};
use crate::case::Case;
use crate::case::strength::show::{force, times};
use crate::case::strength::{Laden, Part, Strength};
use crate::physics::strength::knockdown::KnockDown;
use crate::quantity::{Dimensioned, Measure, Style, Text, inches, say};
use crate::rig::Rig;
use crate::working::Table;

/// Its rules, in the order of the report.
pub(super) const RULES: &[&Rule] = &[
    &bolts_tension::BOLTS_TENSION,
    &bolts_shear::BOLTS_SHEAR,
    &bolts_combined::BOLTS_COMBINED,
    &bolt_torque::BOLT_TORQUE,
    &core_bearing::CORE_BEARING,
    &washer_crush::WASHER_CRUSH,
    &punching::PUNCHING,
    &top_edge_tear::TOP_EDGE_TEAR,
    &bending::BENDING,
    &core_shear::CORE_SHEAR,
    &panel_deflection::PANEL_DEFLECTION,
    &bracket_moment::BRACKET_MOMENT,
    &knees::KNEES,
    &soft_core::SOFT_CORE,
    &core_under_bolts::CORE_UNDER_BOLTS,
    &tabbing::TABBING,
    &signs::SIGNS,
];

/// Factor on a bolt's proof load and on its strength in shear. Common practice, no source.
const BOLT_FACTOR: f64 = 2.0;
/// Factor on what core and laminate bear, at a bolt or in the panel: the inverse of ISO 12215-5's design stress, half of the ultimate (value from memory).
pub(crate) const DESIGN_FACTOR: f64 = 2.0;
/// Factor below which a part is loaded beyond its own strength.
const BREAKS: f64 = 1.0;

/// What strength makes of the case for what leans on the core, which has nothing to say while that is refused: one cause is told once.
fn ready_with_core<'c>(case: &'c Case) -> Result<&'c Strength, Finding> {
    if soft_core::core_refused(case) {
        return Err(Finding::not_applicable(Text::from(
            "The core was found soft: what it would bear cannot be reckoned before that is settled.",
        )));
    }
    if tabbing::let_go(case).is_some() {
        return Err(Finding::not_applicable(Text::from(
            "What ties the transom to the hull has let go: what it would bear cannot be reckoned before that is mended.",
        )));
    }
    Ok(case.strength()?)
}

/// A factor as it is told, in two digits: what is told is what is judged.
fn told(value: f64) -> f64 {
    if !(value > 0.0 && value.is_finite()) {
        return value;
    }
    let step = 10_f64.powf(value.log10().floor() - 1.0);
    (value / step).round() * step
}

/// A factor, for showing.
fn factor(value: f64) -> Measure {
    Measure::styled(Ratio::from_si(value.min(1e6)), Style::Factor)
}

/// A limit of a factor, which is exact.
fn limit(value: f64) -> Limit {
    Limit::AtLeast(Measure::of(Ratio::from_si(value)))
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
const CORE_FIRST: &str = "Settle the core first, as “soft core” says; build nothing on it before.";

/// What comes first where the core was found soft.
fn core_first() -> Remedy {
    mend::first(CORE_FIRST, "strength/soft-core")
}

/// The entry of the group that hangs on a face.
fn entry<'r>(rig: &'r Rig, footing: &Footing) -> &'r str {
    rig.after.groups.get(footing.group).map_or("", |group| group.entry.as_str())
}

/// Step in which a transom is built up. Common practice, no source.
const BUILD_UP_STEP_IN: f64 = 0.25;

/// The remedy of a transom that must be so many times as thick.
///
/// A core that was found soft is no ground to build on: thickness reckoned from what is left of it would be nonsense.
fn build_up(rig: &Rig, strength: &Strength, times: f64) -> Remedy {
    if strength.left() != KnockDown::SOUND {
        return core_first();
    }
    let step = inches(BUILD_UP_STEP_IN).si();
    let more = strength.board.thickness() * (times - 1.0);
    let more = Length::from_si((more / step).ceil() * step);
    mend::change(
        say!("Build the transom up by about {} over its width.", Measure::tape(more)),
        mend::thicker(rig, more),
    )
}

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
            Some(_) => Text::from(" What hung there before hardly worked on it."),
            None => Text::default(),
        },
        Err(_) => Text::default(),
    }
}

/// That it gives way first, where it does: a washer that sinks in does not give way.
fn first(strength: &Strength, rig: &Rig, words: &str) -> Text {
    match strength.governing(rig) {
        Some((governing, ..)) if governing == words => {
            Text::from(" Of all that holds the engines this gives way first, washers apart, which sink in and hold.")
        }
        _ => Text::default(),
    }
}
