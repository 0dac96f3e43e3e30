//! Swing: what the engines strike, tilting and steering, over their whole range.

mod cures;
mod cylinder;
mod full_tilt;
mod ground;
mod lifts_clear;
mod neighbour;
mod permitted_range;
mod steering_lock;
mod tie_bar;

use cures::{cures, one_of};

use crate::rules::mend::{self, Remedy};
use uom::si::f64::Angle;

use crate::case::swing::{Swept, pose_words, swept_sheet, swept_working, touch_words};
use crate::physics::swing::Clearance;
use crate::quantity::{Measure, Text, say};
use crate::reading::{Absent, Missing};
use crate::rules::{Finding, Limit, Rule, Verdict};
use crate::working::Table;

/// Its rules, in the order of the report.
pub(super) const RULES: &[&Rule] = &[
    &full_tilt::FULL_TILT,
    &steering_lock::STEERING_LOCK,
    &neighbour::NEIGHBOUR,
    &cylinder::CYLINDER,
    &tie_bar::TIE_BAR,
    &lifts_clear::LIFTS_CLEAR,
    &ground::GROUND,
    &permitted_range::PERMITTED_RANGE,
];

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
fn worst<'s>(all: impl IntoIterator<Item = &'s Swept>) -> Option<&'s Swept> {
    all.into_iter().min_by(|a, b| {
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
    // What keeps its distance is followed point by point in the working of the swing alone.
    let (corners, working) = match verdict {
        Verdict::Pass => (None, swept_sheet(worst)),
        _ => swept_working(worst),
    };
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
    .working(working);
    finding.tables.extend(corners);
    if all.len() > 1 {
        finding = finding.table(sweep_table(all));
    }
    finding = finding.each(besides(all, worst));
    if verdict != Verdict::Pass {
        finding = finding.remedy(remedy(worst));
    }
    finding
}

/// What the worst hides: how near each of the others comes, and what else comes too near.
fn besides(all: &[Swept], worst: &Swept) -> Vec<Text> {
    let same = |one: &Swept, other: &Swept| one.label == other.label && one.other == other.other;
    let mut told: Vec<&Swept> = Vec::new();
    for swept in all {
        if !same(swept, worst) && !told.iter().any(|other| same(other, swept)) {
            told.extend(self::worst(all.iter().filter(|other| same(swept, other))));
        }
    }
    let others = told.into_iter().map(|swept| nearest(swept, &swept.clearance));
    let also = all.iter().flat_map(|swept| swept.also.iter().map(move |other| nearest(swept, other)));
    others.chain(also).collect()
}

/// Where an engine comes how near to what: `With the port engine …: the leg comes within 3 in of the bracket.`
fn nearest(swept: &Swept, clearance: &Clearance) -> Text {
    say!("With ")
        .then(pose_words(&clearance.pose, swept))
        .then(Text::from(": "))
        .then(touch_words(clearance, swept))
        .then(Text::from("."))
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
