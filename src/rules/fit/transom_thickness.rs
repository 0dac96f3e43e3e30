//! `fit/transom-thickness`

use super::{ON_A_BRACKET, on_brackets_only, on_the_transom};
use crate::case::{Case, is_clamped};
use crate::physics::fit::{self, BoltDimensions};
use crate::quantity::{Dimensioned, Measure, Text, inches, say};
use crate::reading::All;
use crate::rig::Rig;
use crate::rules::mend::{self, Change, Mend, Remedy};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::Sheet;
use uom::si::f64::Length;

rule! {
    /// The transom's thickness against what each engine's bracket takes, and the bolt length that the
    /// grip asks for.
    ///
    /// **Why.** A bracket that does not close over the transom rocks on it; one that is loose on a
    /// thin transom bends its clamp and the bolts.
    ///
    /// **Limit.** Within the range that the engine's mounting sheet gives.
    ///
    /// **Source.** The engine's mounting sheet; ASME B18.2.2 and B18.21.1 (nut and washer in the bolt
    /// length); common practice, no source (two threads showing).
    ///
    /// **When it warns.** It warns where the limit lies within the reading's own tolerance: measure
    /// again. It fails outside of that: pad the transom with solid material over the whole bracket, or choose
    /// a bracket; never draw a thin transom up with the bolts.
    TRANSOM_THICKNESS = Fit "fit/transom-thickness", judge;
}

/// Tolerance taken for a thickness that was read without one. Common practice, no source: a caliper
/// over a rough edge.
const THICKNESS_TOLERANCE_IN: f64 = 1.0 / 16.0;
/// Step in which pads are made. Common practice, no source.
const PAD_STEP_IN: f64 = 0.125;
/// The mounting bolt's entry in the catalog.
const BOLT: &str = "1/2-13";

fn judge(case: &Case) -> Judgement {
    let rig = case.rig;
    if on_brackets_only(rig) {
        return Ok(Finding::not_applicable(Text::from(ON_A_BRACKET)));
    }
    let (_, thickness) = (rig.after.ask(), rig.job.transom.thickness().ask()).all()?;
    let mut worst: Option<Finding> = None;
    for (group, engine) in on_the_transom(rig) {
        let takes = engine.transom_thickness.ask()?;
        let mut sheet = Sheet::default();
        sheet.told("t", Some(thickness));
        let clamped = is_clamped(group, engine);
        let bolt = if clamped { Text::default() } else { bolt_sentence(rig, thickness.value, &mut sheet) };
        let found = Measure::tape(thickness.value);
        let limit = Limit::Within(Measure::tape(takes.from.value), Measure::tape(takes.to.value));
        let tolerance = thickness.tolerance.unwrap_or(inches(THICKNESS_TOLERANCE_IN));
        let margin = (thickness.value - takes.from.value).min(takes.to.value - thickness.value);
        let label = engine.label.as_str();
        let (too_thin, too_thick) =
            (takes.from.value.exceeds(thickness.value), thickness.value.exceeds(takes.to.value));
        let finding = if (too_thin || too_thick) && (-margin).exceeds(tolerance) {
            let remedy = if too_thin {
                // With what a caliper leaves open, it is thick enough for certain.
                let pad = mend::up(takes.from.value + tolerance - thickness.value, PAD_STEP_IN);
                Remedy::new(
                    say!(
                        "Pad the transom out by {} with solid material over the whole bracket, or hang the engine on a bracket.",
                        Measure::tape(pad)
                    ),
                    [Mend::Change(padded(rig, pad)), Mend::Yard],
                )
            } else {
                mend::yard("Hang the engine on a bracket; never thin a transom to make one fit.")
            };
            Finding::new(
                Verdict::Fail,
                say!(
                    "The transom is {} thick; the {} takes {} to {}.",
                    found,
                    label,
                    Measure::tape(takes.from.value),
                    Measure::tape(takes.to.value)
                ),
            )
            .remedy(remedy)
        } else if tolerance.exceeds(margin) {
            let near_thin = thickness.value - takes.from.value <= takes.to.value - thickness.value;
            Finding::new(
                Verdict::Warn,
                say!(
                    "The transom is {} thick, within {} of the {} that the {} takes at {}.",
                    found,
                    Measure::tape(tolerance),
                    Measure::tape(if near_thin { takes.from.value } else { takes.to.value }),
                    label,
                    if near_thin { "the least" } else { "the most" }
                )
                .then(bolt),
            )
            .remedy(mend::look(if clamped {
                "Measure again with a caliper where its clamps go."
            } else {
                "Measure again with a caliper at all four bolts before drilling."
            }))
        } else {
            Finding::new(
                Verdict::Pass,
                say!("The transom is {} thick, within what the {} takes.", found, label).then(bolt),
            )
        };
        let finding = finding.against(found, limit).working(sheet);
        finding.keep_worse(&mut worst);
    }
    Ok(worst.unwrap_or_else(|| Finding::unmeasured(vec![rig.after.missing()])))
}

/// Which bolts to order, where the catalog has them.
fn bolt_sentence(rig: &Rig, thickness: uom::si::f64::Length, sheet: &mut Sheet) -> Text {
    let Some(entry) = rig.tables.bolt_sizes.iter().find(|entry| entry.name == BOLT) else {
        return Text::default();
    };
    let bolt = BoltDimensions {
        nut_height: entry.spec.nut_height.value,
        washer_thickness: entry.spec.washer_thickness.value,
        pitch: entry.spec.pitch.value,
    };
    let length = fit::bolt_length(sheet, thickness, bolt);
    say!(" Bolts {} of {} suit the grip.", BOLT, length.tape())
}

/// The transom thicker by a pad of what its thickest layer is made of.
fn padded(rig: &Rig, pad: Length) -> Vec<Change> {
    mend::thicker(rig, pad)
}
