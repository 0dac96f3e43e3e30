//! `height/transom-angle`

use crate::case::Case;
use crate::job::Role;
use crate::physics::height;
use crate::quantity::{Dimensioned, Measure, Text, degrees, inches, say};
use crate::reading::All;
use crate::rules::mend;
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::{Sheet, Term};

rule! {
    /// The transom's angle against the angle that each engine's trim range is laid out for.
    ///
    /// **Why.** A transom steeper or flatter than the engine expects shifts its whole trim range: it
    /// cannot be trimmed in enough to plane, or out enough to run free.
    ///
    /// **Limit.** Within 3 degrees of the engine's angle.
    ///
    /// **Source.** Common practice, no source (10 to 16 degrees are found, most engines are laid out
    /// for 12 to 14).
    ///
    /// **When it warns.** Wedges between transom and bracket turn the range back; the finding gives
    /// their thickness over the height of the bracket.
    TRANSOM_ANGLE = Height "height/transom-angle", judge;
}

/// How far the transom's angle may differ from the engine's. Common practice, no source.
const MOST_OFF_DEG: f64 = 3.0;
/// Height of an engine bracket's face, over which a wedge tapers. Common practice, no source: about
/// an inch beyond the bolt pattern above and below.
const BRACKET_FACE_IN: f64 = 12.0;

fn judge(case: &Case) -> Judgement {
    let rig = case.rig;
    let (_, angle) = (rig.after.ask(), rig.job.transom.angle().ask()).all()?;
    // What brings her home, or pushes a displacement hull, is pinned to any transom.
    let mut engines: Vec<_> =
        rig.after.engines().filter(|(group, _)| !group.is_lifted()).map(|(_, engine)| engine).collect();
    engines.retain(|engine| engine.role == Role::Main);
    if engines.is_empty() && !rig.after.is_empty() {
        return Ok(Finding::not_applicable(Text::from(
            "An auxiliary engine, or one on a lifting bracket, is pinned to suit the transom; no trim is asked of it.",
        )));
    }
    engines.dedup_by(|a, b| a.class == b.class);
    let mut worst: Option<Finding> = None;
    for engine in engines {
        let (expected, trim) = (engine.transom_angle.ask(), engine.trim.ask()).all()?;
        let mut sheet = Sheet::default();
        sheet.told("θ", Some(angle));
        sheet.told("θe", Some(expected));
        let off = sheet.set(
            "δ",
            "transom's angle beyond the engine's",
            Term::new("θ", angle.value) - Term::new("θe", expected.value),
        );
        let shifted_in = Measure::of(trim.from.value - off.value());
        let shifted_out = Measure::of(trim.to.value - off.value());
        let most = degrees(MOST_OFF_DEG);
        let limit = Limit::Within(Measure::of(expected.value - most), Measure::of(expected.value + most));
        let label = engine.class.as_str();
        let finding = if off.value().abs().exceeds(most) {
            let wedge = height::wedge(&mut sheet, off.value().abs(), inches(BRACKET_FACE_IN));
            let thick_end = if off.value().value > 0.0 { "bottom" } else { "top" };
            Finding::new(
                Verdict::Warn,
                say!(
                    "The transom stands at {}, and {} is laid out for {}: its trim would run from {} to {}.",
                    angle.measure(Default::default()),
                    label,
                    Measure::of(expected.value),
                    shifted_in,
                    shifted_out
                ),
            )
            .remedy(mend::yard(say!(
                "Set wedges of {} between bracket and transom, {} at the thick end, thick end at the {}.",
                Measure::of(off.value().abs()),
                wedge.tape(),
                thick_end
            )))
        } else {
            Finding::new(
                Verdict::Pass,
                say!(
                    "The transom stands at {}; {} is laid out for {}.",
                    angle.measure(Default::default()),
                    label,
                    Measure::of(expected.value)
                ),
            )
        }
        .against(Measure::of(angle.value), limit)
        .working(sheet);
        finding.keep_worse(&mut worst);
    }
    let bracketed = rig.after.groups.iter().any(|group| group.bracket.is_some());
    Ok(match worst {
        Some(mut finding) => {
            if bracketed {
                finding.summary =
                    finding.summary.then(Text::from(" The bracket's face is taken to stand at the transom's angle."));
            }
            finding
        }
        None => Finding::unmeasured(vec![rig.after.missing()]),
    })
}
