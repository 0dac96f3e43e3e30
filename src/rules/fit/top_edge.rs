//! `fit/top-edge`

use crate::rig::Rig;
use crate::rules::mend::{self, Change};
use uom::si::f64::Length;

use super::{bolted, no_bolts};
use crate::case::{Case, bolt_places, upper_holes};
use crate::job::{Sitting, TopEdge};
use crate::physics::fit;
use crate::quantity::{Dimensioned, Measure, Text, inches, say};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};

rule! {
    /// The upper bolts' distance from the transom's top.
    ///
    /// **Why.** The upper bolts carry the pull of the engine; too near the edge they tear out upward,
    /// and the core above them has no laminate to hold it.
    ///
    /// **Limit.** 1-7/8 in below the top, and never less than 1-3/4 in.
    ///
    /// **Source.** Trade association bolt pattern in general use.
    ///
    /// **When it warns.** Below 1-3/4 in it fails: fill the holes and drill lower, or build the top
    /// up with the builder's consent. A top edge whose core shows must be sealed first. Before anything
    /// is drilled it does not apply, and says where to drill.
    TOP_EDGE = Fit "fit/top-edge", judge;
}

fn judge(case: &Case) -> Judgement {
    let rig = case.rig;
    if let Some(why) = no_bolts(rig) {
        return Ok(Finding::not_applicable(why));
    }
    rig.after.ask()?;
    let wanted = inches(fit::UPPER_BELOW_TOP_IN);
    let least = inches(fit::UPPER_BELOW_TOP_LEAST_IN);
    let bare = rig.job.transom.top_edge == Some(TopEdge::Bare);
    let Some(upper) = upper_bolts(case) else {
        if bare {
            return Ok(bare_edge());
        }
        if rig.job.sitting == Sitting::AsFitted {
            rig.job.transom.upper_holes().ask()?;
        }
        return Ok(Finding::not_applicable(say!(
            "No holes are drilled or planned yet: the pattern has its upper bolts {} below the top; {} is the least.",
            Measure::tape(wanted),
            Measure::tape(least)
        )));
    };
    let found = Measure::tape(upper);
    let limit = Limit::AtLeast(Measure::tape(least));
    // No tape tells less.
    let sixteenth = inches(0.5 * TAPE_STEP_IN);
    let finding = if (least - sixteenth).exceeds(upper) {
        Finding::new(
            Verdict::Fail,
            say!(
                "The upper bolts stand {} below the transom's top, under the {} that must never be undercut.",
                found,
                Measure::tape(least)
            ),
        )
        .remedy(mend::change(say!("Fill them and drill {} below the top.", Measure::tape(wanted)), lower(rig, wanted)))
    } else if bare {
        bare_edge()
    } else if (wanted - sixteenth).exceeds(upper) {
        Finding::new(
            Verdict::Warn,
            say!("The upper bolts stand {} below the transom's top; the pattern has {}.", found, Measure::tape(wanted)),
        )
        .remedy(mend::look(WATCH))
        .limit(Limit::AtLeast(Measure::tape(wanted)))
    } else {
        Finding::new(Verdict::Pass, say!("The upper bolts stand {} below the transom's top.", found))
    };
    let limit = finding.limit.unwrap_or(limit);
    Ok(finding.against(found, limit))
}

/// A tape is read to the nearest of these. Common practice, no source.
const TAPE_STEP_IN: f64 = 1.0 / 16.0;

/// What a top edge wants whose upper bolts stand high, or whose core shows.
const SEAL: &str = "Seal the top edge and the holes, and look at the laminate above the bolts at every service.";

/// The same where it is sealed.
const WATCH: &str = "See that the holes are sealed, and look at the laminate above the bolts at every service.";

/// Upper bolts at least so far below the top.
fn lower(rig: &Rig, wanted: Length) -> Vec<Change> {
    let mut changes = Vec::new();
    for group in &rig.after.groups {
        for (i, _) in group.bolts.said.at.iter().enumerate().filter(|(_, bolt)| wanted.exceeds(bolt.below.value)) {
            changes.push(Change::told(format!("{}.bolts.at[{i}].below", group.entry), Measure::tape(wanted)));
        }
    }
    if changes.is_empty() {
        changes.push(Change::told("transom.upper_holes", Measure::tape(wanted)));
    }
    changes
}

fn bare_edge() -> Finding {
    Finding::new(Verdict::Warn, Text::from("The core shows at the transom's top edge, above the upper bolts."))
        .remedy(mend::change(SEAL, [Change::to("transom.top_edge", "sealed")]))
}

/// The highest bolts, below the top: where the job gives their places, else its upper holes.
fn upper_bolts(case: &Case) -> Option<Length> {
    let rig = case.rig;
    let highest = |below: &mut dyn Iterator<Item = Length>| below.min_by(|a, b| a.si().total_cmp(&b.si()));
    let mut all = bolted(rig).into_iter().filter_map(|(group, engine)| {
        if group.bolts.said.at.is_empty() {
            return upper_holes(rig, engine.y);
        }
        highest(&mut bolt_places(rig, group, &[engine])?.into_iter().map(|bolt| bolt.below))
    });
    highest(&mut all)
}
