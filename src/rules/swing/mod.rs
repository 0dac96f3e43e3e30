//! Swing: what the engines strike, tilting and steering, over their whole range.

mod cylinder;
mod full_tilt;
mod ground;
mod lifts_clear;
mod neighbour;
mod permitted_range;
mod steering_lock;
mod tie_bar;

pub use cylinder::CYLINDER;
pub use full_tilt::FULL_TILT;
pub use ground::GROUND;
pub use lifts_clear::LIFTS_CLEAR;
pub use neighbour::NEIGHBOUR;
pub use permitted_range::PERMITTED_RANGE;
pub use steering_lock::STEERING_LOCK;
pub use tie_bar::TIE_BAR;

use crate::rules::mend::{self, Change, Remedy};
use crate::quantity::Dimensioned;
use crate::rig::{Engine, Group};
use crate::case::{Rows, holes_up};
use uom::si::f64::{Angle, Length};

use crate::case::Case;
use crate::case::swing::{Swept, pose_words, swept_sheet, touch_words};
use crate::physics::height::HOLE_ROW_STEP_IN;
use crate::quantity::{Measure, Text, inches, say};
use crate::reading::{Absent, Missing};
use crate::rules::{Finding, Limit, Verdict};
use crate::working::Table;

/// Setback and spacing are told rounded up to this: what can be ordered and drilled. Common practice, no source.
const TOLD_IN: f64 = 0.25;

/// What a rule says where there is no answer.
fn unanswered(open: &Absent) -> Finding {
    match open {
        Absent::Waits(missing) => {
            let mut each: Vec<_> = Vec::new();
            Missing::gather(&mut each, missing.iter().cloned());
            Finding::unmeasured(each)
        }
        Absent::NotApplicable(_) => open.into(),
        Absent::CannotBe(_) => Finding::from(open).remedy(mend::look(
            "Check the numbers of the mounting sheet against each other; `sternknee catalog show CLASS` has a set that fits together.")),
    }
}

/// The sweep that comes nearest to its limit, or lies farthest beyond it.
fn worst(all: &[Swept]) -> Option<&Swept> {
    all.iter().min_by(|a, b| {
        let room = |swept: &Swept| (swept.clearance.upper - swept.margin).value;
        room(a).total_cmp(&room(b))
    })
}

/// Contact fails, less than the margin warns, the rest passes for certain.
fn of_sweeps(all: &[Swept], remedy: impl Fn(&Swept) -> Remedy) -> Finding {
    let Some(worst) = worst(all) else {
        return Finding::not_applicable(Text::from("No engine is there to swing."));
    };
    let verdict = verdict(worst);
    let clearance = &worst.clearance;
    let found = if worst.touches() { clearance.upper } else { clearance.lower };
    let mut finding = Finding::new(
        verdict,
        say!("With ")
            .then(pose_words(&clearance.pose, worst))
            .then(Text::from(": "))
            .then(touch_words(clearance, worst))
            .then(first_contact(worst))
            .then(Text::from(".")),
    )
    .against(Measure::tape(found), Limit::AtLeast(Measure::tape(worst.margin)))
    .working(swept_sheet(worst));
    if all.len() > 1 {
        finding = finding.table(sweep_table(all));
    }
    if verdict != Verdict::Pass {
        finding = finding.remedy(remedy(worst));
    }
    finding
}

fn verdict(swept: &Swept) -> Verdict {
    if swept.touches() && !swept.taken {
        Verdict::Fail
    } else if swept.keeps() {
        Verdict::Pass
    } else {
        Verdict::Warn
    }
}

/// From where on it touches, where it does so in tilting up.
fn first_contact(swept: &Swept) -> Text {
    let from = swept.cure.as_ref().and_then(|cure| cure.touches_from);
    let from = from.filter(|tilt| swept.other.is_none() && *tilt > swept.scene.tilt.low());
    from.map_or(Text::default(), |tilt| say!("; tilting up, it first touches at {}", Measure::of(tilt)))
}

fn sweep_table(all: &[Swept]) -> Table {
    let rows = all
        .iter()
        .map(|swept| {
            vec![
                match &swept.other {
                    Some(other) => say!("{}, {}", &swept.label, other),
                    None => Text::from(swept.label.as_str()),
                },
                Text::from(Measure::of(swept.clearance.lower)),
                Text::from(Measure::of(swept.clearance.upper)),
                Text::from(swept.clearance.body.name.as_str()),
                Text::from(swept.clearance.other.name.as_str()),
            ]
        })
        .collect();
    Table::new("each of them", &["", "certified at least", "attained", "what", "and what"], rows)
}

/// An angle as a stop can be set: rounded down to a whole degree.
fn stop(angle: Angle) -> Measure {
    let degree = crate::quantity::degrees(1.0);
    Measure::of(degree * ((angle / degree).value + 1e-9).floor())
}

/// The shallowest setback plate. Common practice, no source.
const SHALLOWEST_IN: f64 = 4.0;
/// The deepest that one bolts to a transom without a bracket. Common practice, no source.
const DEEPEST_PLATE_IN: f64 = 12.0;

/// Setback, holes and limits that clear an engine of the boat, each by itself, as far as boat and parts allow them.
fn cures(case: &Case, swept: &Swept) -> Remedy {
    let none = || {
        mend::yard(
            "Neither setback nor height nor a limit within reason clears it: another bracket, another class, or another boat.",
        )
    };
    let Some(cure) = &swept.cure else {
        return none();
    };
    let hung = case.rig.after.engines().find(|(_, engine)| engine.label == swept.label);
    let cos = case.rig.job.transom.angle().reading().map_or(1.0, |angle| angle.value.value.cos());
    let mut ways: Vec<Remedy> = Vec::new();
    if let (Some(aft), Some((group, _))) = (cure.aft, hung) {
        ways.extend(set_back(group, aft * cos));
    }
    if let (Some(up), Some((group, engine))) = (cure.up, hung) {
        ways.extend(hung_higher(case, group, engine, up / cos));
    }
    match (cure.tilt.up_to, hung) {
        (Some(limit), Some((group, _))) if !cure.tilt.whole_range && limit > swept.scene.tilt.low() => {
            ways.push(mend::change(
                say!("stop the tilt at {} from upright (tilt_stop)", stop(limit)),
                [Change::told(format!("{}.tilt_stop", group.entry), stop(limit))],
            ));
        }
        _ => {}
    }
    match cure.steer.up_to {
        Some(limit) if !cure.steer.whole_range && limit.value > 0.0 => {
            ways.push(mend::care(say!("keep the helm within {} each way when she is tilted", stop(limit))))
        }
        _ => {}
    }
    if ways.is_empty() {
        return none();
    }
    one_of(say!("One of these clears it by {}: ", Measure::tape(swept.margin)), ways)
}

/// Several ways, each by itself.
fn one_of(before: Text, ways: Vec<Remedy>) -> Remedy {
    let words = Text::join(ways.iter().map(|way| way.words.clone()), "; or ");
    Remedy::new(before.then(words).then(Text::from(".")), ways.into_iter().flat_map(|way| way.ways))
}

/// An engine set farther aft: on its bracket, or on a plate, where there is one so deep.
fn set_back(group: &Group, by: Length) -> Option<Remedy> {
    let by = mend::up(by, TOLD_IN);
    let (entry, now) = (&group.entry, group.setback().reading()?.value);
    match &group.bracket {
        Some(bracket) if !group.is_lifted() => {
            let spec = [("setback", mend::exactly(now + by))];
            let mut changes = Change::like(&format!("{entry}.bracket"), &bracket.spec, &spec).to_vec();
            changes.push(Change::out(format!("{entry}.setback")));
            Some(mend::change(say!("set it {} farther aft, on a bracket of that setback", Measure::tape(by)), changes))
        }
        Some(_) => {
            let far = Change::to(format!("{entry}.setback"), mend::exactly(now + by));
            Some(mend::change(say!("set it {} farther aft", Measure::tape(by)), [far]))
        }
        None if by.exceeds(inches(DEEPEST_PLATE_IN)) => None,
        None => {
            let by = if by.exceeds(inches(SHALLOWEST_IN)) { by } else { inches(SHALLOWEST_IN) };
            let plate = format!("(described: (kind: setback_plate, setback: {}, drop: \"0 in\"))", mend::exactly(by));
            Some(mend::change(
                say!("set it {} aft on a setback plate", Measure::tape(by)),
                [Change::to(format!("{entry}.bracket"), plate)],
            ))
        }
    }
}

/// An engine hung so much higher along the transom, by whole rows: where its bracket has the row, and the plate's window allows
/// it.
fn hung_higher(case: &Case, group: &Group, engine: &Engine, up: Length) -> Option<Remedy> {
    if group.is_lifted() {
        return None;
    }
    let holes = ((up / inches(HOLE_ROW_STEP_IN)).value - 1e-9).ceil().max(1.0) as usize;
    let row = usize::from(engine.holes_up.reading().copied().unwrap_or(0)) + holes;
    let rows = Rows::of(case.rig, group, engine).ok()?;
    rows.allows(row).then(|| {
        mend::change(
            say!("hang it in the row {}", holes_up(row)),
            [Change::to(format!("{}.holes_up", group.entry), row.to_string())],
        )
    })
}
