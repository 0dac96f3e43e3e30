//! `stern/bracket-immersion`

use super::{Wanted, put_back, so};
use crate::case::{Rows, holes_up, lean};
use crate::rig::Rig;
use crate::rules::mend::{self, Change, Remedy};
use nalgebra::Point3;
use uom::si::f64::Length;

use super::{Lying, all_upright, inboard, lasting};
use crate::case::Case;
use crate::case::float::{BracketBox, Float, bracket_foot};
use crate::job::{self, BracketKind};
use crate::physics::float::{Floating, Hull};
use crate::physics::height::running_water;
use crate::quantity::{Dimensioned, Measure, Text, say};
use crate::reading::reading;
use crate::rig::{Bracket, Group, Missing};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::{Sheet, Table, Term};

rule! {
    /// Where the bracket's lowest point lies against the water at her mooring and with the crew at their
    /// stations, and what its closed box carries there.
    ///
    /// **Why.** Open arms and plates under water drag and corrode; a closed box helps to carry the
    /// engines only as far as it is in the water, and drags when it is all under.
    ///
    /// **Limit.** Open arms: not under water at rest. A setback or jack plate lies in the water at rest: its
    /// lowest point stands over the water that leaves the transom under way, an inch higher for each 8 in of
    /// setback. A closed box: its bottom lies in the water, but it is not wholly under. With the crew crowded
    /// aft any may go under for a while.
    ///
    /// **Source.** Common practice, no source.
    ///
    /// **When it warns.** It warns too where she sinks or turns over. Mount the bracket higher, choose one
    /// with more buoyancy or less setback, or move weights forward.
    BRACKET_IMMERSION = Stern "stern/bracket-immersion", judge;
}

fn judge(case: &Case) -> Judgement {
    let rig = case.rig;
    let brackets: Vec<(usize, &Group, &Bracket)> = rig
        .after
        .groups
        .iter()
        .enumerate()
        .filter_map(|(index, group)| Some((index, group, group.bracket.as_ref()?)))
        .collect();
    if brackets.is_empty() {
        return Ok(if rig.after.is_empty() {
            Finding::unmeasured(vec![rig.after.missing()])
        } else {
            Finding::not_applicable(Text::from("The engines hang on the transom itself."))
        });
    }
    let float = case.float()?;
    let mut loadings = all_upright(float, Verdict::Warn, inboard)?;
    loadings.retain(|(loaded, ..)| lasting(loaded));
    let [_, boxes] = &float.boxes;
    let mut lacking: Vec<Missing> = Vec::new();
    let mut worst: Option<Finding> = None;
    for (index, group, bracket) in brackets {
        match bracket_foot(rig, group, bracket) {
            Ok(foot) => {
                let body = boxes.iter().find(|body| body.group == index);
                one(rig, float, &loadings, (group, bracket), body, &foot).keep_worse(&mut worst);
            }
            Err(missing) => Missing::gather(&mut lacking, missing),
        }
    }
    Ok(match worst {
        Some(finding) if lacking.is_empty() || finding.verdict < Verdict::Unmeasured => finding,
        _ => Finding::unmeasured(lacking),
    })
}

fn one(
    rig: &Rig,
    float: &Float,
    loadings: &[Lying],
    (group, bracket): (&Group, &Bracket),
    body: Option<&BracketBox>,
    foot: &Point3<f64>,
) -> Finding {
    let carries = |lies: &Floating| body.map(|body| Hull::new(body.mesh.clone()).cut(&lies.plane).volume * float.water);
    let height = |lies: &Floating| lies.height_above_water(foot);
    let rows = loadings
        .iter()
        .map(|(loaded, _, lies)| {
            vec![
                Text::from(loaded.name.as_str()),
                Measure::of(height(lies)).into(),
                carries(lies).map_or(Text::from("-"), |mass| Measure::of(mass).into()),
            ]
        })
        .collect();
    let lowest = loadings.iter().min_by(|(.., a), (.., b)| height(a).si().total_cmp(&height(b).si()));
    let Some((loaded, _, lies)) = lowest else {
        return Finding::not_applicable(Text::from("There is no loading to look at."));
    };
    let least = height(lies);
    let name = bracket.name.as_str();
    let stands = if least.si() < 0.0 {
        say!("lies {} under water", Measure::tape(-least))
    } else {
        say!("stands {} above the water", Measure::tape(least))
    };
    let helps = match (body, carries(lies)) {
        (Some(_), Some(mass)) if mass.si() > 0.0 => {
            say!("; its box carries {} there", Measure::of(mass))
        }
        (Some(_), _) => Text::from("; its buoyancy does not help at rest"),
        _ if bracket.spec.kind == Some(BracketKind::Box) => {
            Text::from("; its buoyancy is not counted, its volume is not given")
        }
        _ => Text::default(),
    };
    let words =
        say!("The lowest point of `{}` ", name).then(stands).then(say!(" in `{}`", loaded.name.as_str())).then(helps);
    let mut sheet = Sheet::default();
    if let Some(body) = body {
        let immersed = Hull::new(body.mesh.clone()).cut(&lies.plane).volume;
        sheet.set(
            "B",
            "what the box carries, cut exactly at the water plane",
            Term::styled("∇", immersed, crate::quantity::Style::Bulk) * Term::new("ρ", float.water),
        );
    }
    let table = Table::new(&format!("lowest point of `{name}`"), &["loading", "above water", "its box carries"], rows);
    let finding = match (bracket.spec.kind, body) {
        (Some(BracketKind::SetbackPlate | BracketKind::JackPlate), _) => {
            plate(rig, group, bracket, foot, words, &mut sheet)
        }
        (Some(BracketKind::Box), None) if least.si() < 0.0 => {
            let missing = vec![Missing {
                measurement: reading!(job::BracketSpec.buoyant_volume),
                of: Some(bracket.name.clone()),
            }];
            Finding {
                missing,
                ..Finding::new(Verdict::Unmeasured, words.then(Text::from(": it may be wholly under.")))
            }
        }
        _ => {
            let limit = body.map_or(Length::from_si(0.0), |body| -body.depth);
            let low = loadings.iter().filter(|(.., lies)| height(lies) < limit).map(|(_, state, _)| Wanted {
                state,
                goal: Box::new(move |lies: &Floating| (height(lies) - limit).si()),
            });
            let mut wanted: Vec<Wanted> = low.collect();
            wanted.sort_by(|a, b| {
                let at = |one: &Wanted| one.state.floating().map_or(0.0, |lies| (one.goal)(lies));
                at(a).total_cmp(&at(b))
            });
            at_rest((least, limit), words.then(Text::from(".")), || {
                out_of_the_water(rig, float, (group, bracket), limit - least, &wanted)
            })
        }
    };
    finding.table(table).working(sheet)
}

/// Arms, or a box, against the water at rest.
fn at_rest((height, limit): (Length, Length), words: Text, remedy: impl FnOnce() -> Remedy) -> Finding {
    let finding = if height < limit {
        Finding::new(Verdict::Warn, words).remedy(remedy())
    } else {
        Finding::new(Verdict::Pass, words)
    };
    finding.against(Measure::tape(height), Limit::AtLeast(Measure::tape(limit)))
}

/// A plate against the water that leaves the transom under way; at rest it lies in the water.
fn plate(rig: &Rig, group: &Group, bracket: &Bracket, foot: &Point3<f64>, words: Text, sheet: &mut Sheet) -> Finding {
    let setback = match bracket.setback.ask() {
        Ok(setback) => setback.value,
        Err(missing) => return Finding::unmeasured(vec![missing]),
    };
    let height = Length::from_si(foot.z);
    let limit = running_water(sheet, setback).value();
    let words = words.then(say!("; it stands {} above the bottom.", Measure::tape(height)));
    let finding = if height < limit {
        Finding::new(Verdict::Warn, words).remedy(higher(rig, group, bracket, limit - height).unwrap_or_else(|| {
            mend::yard("There it drags in the water that leaves the transom under way: ask for a shorter plate, or one that is made higher.")
        }))
    } else {
        Finding::new(Verdict::Pass, words)
    };
    finding.against(Measure::tape(height), Limit::AtLeast(Measure::tape(limit)))
}

/// Step in which a bracket is mounted higher. Common practice, no source.
const HIGHER_IN: f64 = 0.25;

/// The bracket mounted higher by so much, where its engines then hang in a row that the plate's window allows.
fn higher(rig: &Rig, group: &Group, bracket: &Bracket, by: Length) -> Option<Remedy> {
    let by = mend::well_up(by, HIGHER_IN);
    let mut changes = vec![Change::to(
        format!("{}.bracket.bottom", group.entry),
        mend::exactly(bracket.bottom.reading()?.value + by),
    )];
    changes.push(Change::to(format!("{}.drop", group.entry), mend::exactly(bracket.drop.reading()?.value - by)));
    let mut row = None;
    for engine in group.engines.iter().filter(|_| !group.is_lifted()) {
        row = Some(Rows::of(rig, group, engine).ok()?.best_shifted(by / lean(rig).cos())?);
    }
    let words = match row {
        Some(row) if group.engines.iter().any(|engine| engine.holes_up.reading().is_some()) => {
            changes.push(Change::to(format!("{}.holes_up", group.entry), row.to_string()));
            say!("Mount it {} higher, its engines {}.", Measure::tape(by), holes_up(row))
        }
        _ => say!("Mount it {} higher.", Measure::tape(by)),
    };
    Some(mend::change(words, changes))
}

/// The bracket mounted higher, or the stern brought up.
fn out_of_the_water(rig: &Rig, float: &Float, hung: (&Group, &Bracket), by: Length, wanted: &[Wanted]) -> Remedy {
    // A box that comes up carries less, and she goes down: no reckoning in one step.
    let higher = higher(rig, hung.0, hung.1, by).filter(|_| hung.1.spec.kind != Some(BracketKind::Box));
    let (up, _) = put_back(rig, float, wanted);
    match (higher, up) {
        (Some(higher), Some(up)) => higher.and_else(so(Text::from("Or bring the stern up: "), up)),
        (Some(one), None) => one,
        (None, Some(up)) => so(Text::from("To bring it up: "), up),
        (None, None) => {
            mend::yard("Ask for a bracket that is made higher, or with a larger box; the height of its engines stays.")
        }
    }
}
