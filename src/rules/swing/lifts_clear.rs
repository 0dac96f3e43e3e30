//! `swing/lifts-clear`

use super::unanswered;
use crate::case::Case;
use crate::case::swing::{AboveWater, body_words, raised_words};
use crate::case::{Rows, holes_up, row_of};
use crate::physics::height::HOLE_ROW_STEP_IN;
use crate::quantity::{Dimensioned, Measure, Text, inches, say};
use crate::rig::{Engine, Group};
use crate::rules::mend::{self, Change, Mend, Remedy};
use crate::rules::rule::rule;
use crate::rules::{Finding, Limit, Verdict};
use crate::working::{Sheet, Table};
use uom::si::f64::Length;

rule! {
    /// Skeg and propeller of each engine above the water at full tilt, steered ahead, as the boat lies at
    /// her mooring or at the dock: nobody aboard. A lifting bracket whose travel is known is raised.
    ///
    /// **Why.** What stays in the water at the mooring grows weed, corrodes and drags.
    ///
    /// **Limit.** Skeg and propeller out of the water; the height is exact for the bodies that stand for
    /// them. That the gearcase dips its nose is ordinary: it is told.
    ///
    /// **Source.** Common practice, no source (a modern engine tilts far enough to bring them out).
    ///
    /// **When it warns.** The finding gives how deep it stays and what lift brings it out; else she
    /// wants antifouling there, or a berth out of the water.
    LIFTS_CLEAR = Swing "swing/lifts-clear", judge;
}

fn judge(case: &Case) -> Finding {
    let all = match &case.swing().water {
        Ok(all) => all,
        Err(open) => return unanswered(open),
    };
    let lowest = all.iter().min_by(|a, b| {
        let height = |one: &AboveWater| one.clearance.height.value;
        height(a).total_cmp(&height(b))
    });
    let Some(lowest) = lowest else {
        return Finding::not_applicable(Text::from("No engine is there to lift."));
    };
    let height = lowest.clearance.height;
    let what = body_words(&lowest.clearance.body);
    let tilted = say!("At full tilt ({})", Measure::of(lowest.tilt));
    let tilted = match lowest.raised {
        Some(height) => tilted.then(Text::from(", ")).then(raised_words(height)).then(Text::from(",")),
        None => tilted,
    };
    let mut sheet = Sheet::default();
    let at = lowest.clearance.point;
    sheet.remark(say!(
        "lowest of all corners of propeller and skeg, carried to full tilt about the tilt tube: {} forward, {} to port, {} up in boat axes; {} over the water's plane",
        Measure::of(Length::from_si(at.x)),
        Measure::of(Length::from_si(at.y)),
        Measure::of(Length::from_si(at.z)),
        Measure::of(height)
    ));
    let finding =
        if height.value < 0.0 {
            // A row of holes goes up along the transom.
            let lean = case.rig.job.transom.angle().reading().map(|angle| angle.value);
            let step = inches(HOLE_ROW_STEP_IN) * lean.unwrap_or_default().cos();
            let holes = (-height / step).value.ceil().max(1.0) as usize;
            let hung = case.rig.after.engines().find(|(_, engine)| engine.label == lowest.label);
            let higher = hung.and_then(|(group, engine)| higher(case, group, engine, holes));
            Finding::new(
                Verdict::Warn,
                tilted.then(say!(
                    " {} of the {} stays {} under water {}.",
                    what,
                    &lowest.label,
                    Measure::tape(-height),
                    lowest.when()
                )),
            )
            .remedy(higher.unwrap_or_else(|| {
                mend::care("It stays wet there: antifouling made for it, and anodes looked at often.")
            }))
        } else {
            Finding::new(
                Verdict::Pass,
                tilted.then(say!(
                    " propeller and skeg come out of the water: {} of the {} stands {} over it {}.",
                    what,
                    &lowest.label,
                    Measure::tape(height),
                    lowest.when()
                )),
            )
        };
    let finding = Finding { summary: finding.summary.clone().then(nose(lowest)), ..finding };
    let rows = all
        .iter()
        .map(|one| {
            vec![
                Text::from(one.label.as_str()),
                Text::from(one.condition.name()),
                Text::from(Measure::tape(one.clearance.height)),
                Text::from(one.clearance.body.as_str()),
                Text::from(Measure::tape(one.gearcase.height)),
            ]
        })
        .collect();
    finding.against(Measure::tape(height), Limit::AtLeast(Measure::tape(Default::default()))).working(sheet).table(
        Table::new(
            "lowest points over the water",
            &["engine", "condition", "propeller and skeg", "what", "gearcase"],
            rows,
        ),
    )
}

/// The nose of the gearcase, where it dips.
fn nose(lowest: &AboveWater) -> Text {
    let height = lowest.gearcase.height;
    if height.value < 0.0 {
        say!(" The nose of its gearcase may dip up to {}: antifouling and anodes there.", Measure::tape(-height))
    } else {
        Text::default()
    }
}

/// The engine hung higher by so many rows, where its bracket has the row and the plate's window allows it.
fn higher(case: &Case, group: &Group, engine: &Engine, holes: usize) -> Option<Remedy> {
    let row = row_of(case.rig, group, engine).0 + holes;
    let rows = Rows::of(case.rig, group, engine).ok().filter(|_| !group.is_lifted())?;
    rows.allows(row).then(|| {
        Remedy::new(
            say!(
                "Hang it {}: that brings it out. Else antifouling made for it there, and anodes looked at often.",
                holes_up(row)
            ),
            [Mend::Change(vec![Change::to(format!("{}.holes_up", group.entry), row.to_string())]), Mend::Care],
        )
    })
}
