//! `stern/bracket-immersion`

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
                one(float, &loadings, (group, bracket), body, &foot).keep_worse(&mut worst);
            }
            Err(missing) => Missing::gather(&mut lacking, missing),
        }
    }
    Ok(match worst {
        Some(finding) if lacking.is_empty() || finding.verdict < Verdict::Unmeasured => finding,
        _ => Finding::unmeasured(lacking),
    })
}

fn one(float: &Float, loadings: &[Lying], (group, bracket): (&Group, &Bracket), body: Option<&BracketBox>, foot: &Point3<f64>) -> Finding {
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
        (Some(BracketKind::SetbackPlate | BracketKind::JackPlate), _) => plate(group, bracket, foot, words, &mut sheet),
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
            at_rest(group, bracket, (least, limit), words.then(Text::from(".")))
        }
    };
    finding.table(table).working(sheet)
}

/// Arms, or a box, against the water at rest.
fn at_rest(group: &Group, bracket: &Bracket, (height, limit): (Length, Length), words: Text) -> Finding {
    let finding = if height < limit {
        Finding::new(Verdict::Warn, words).remedy(higher(
            group,
            bracket,
            limit - height,
            "Mount it {} higher with its engines a shaft longer or rows lower by as much, or bring the stern up by as much.",
        ))
    } else {
        Finding::new(Verdict::Pass, words)
    };
    finding.against(Measure::tape(height), Limit::AtLeast(Measure::tape(limit)))
}

/// A plate against the water that leaves the transom under way; at rest it lies in the water.
fn plate(group: &Group, bracket: &Bracket, foot: &Point3<f64>, words: Text, sheet: &mut Sheet) -> Finding {
    let setback = match bracket.setback.ask() {
        Ok(setback) => setback.value,
        Err(missing) => return Finding::unmeasured(vec![missing]),
    };
    let height = Length::from_si(foot.z);
    let limit = running_water(sheet, setback).value();
    let words = words.then(say!("; it stands {} above the bottom.", Measure::tape(height)));
    let finding = if height < limit {
        Finding::new(Verdict::Warn, words).remedy(higher(
            group,
            bracket,
            limit - height,
            "Mount it {} higher: there it drags in the water that leaves the transom under way.",
        ))
    } else {
        Finding::new(Verdict::Pass, words)
    };
    finding.against(Measure::tape(height), Limit::AtLeast(Measure::tape(limit)))
}

/// Step in which a bracket is mounted higher. Common practice, no source.
const HIGHER_IN: f64 = 0.25;

/// The bracket mounted higher; its engines come up with it.
fn higher(group: &Group, bracket: &Bracket, by: Length, template: &str) -> Remedy {
    let by = mend::up(by, HIGHER_IN);
    let mut changes = Vec::new();
    if let Some(bottom) = bracket.bottom.reading() {
        changes.push(Change::to(format!("{}.bracket.bottom", group.entry), mend::exactly(bottom.value + by)));
    }
    if let Some(drop) = bracket.drop.reading() {
        changes.push(Change::to(format!("{}.drop", group.entry), mend::exactly(drop.value - by)));
    }
    mend::change(say!(template, Measure::tape(by)), changes)
}
