//! `stern/bracket-immersion`

use nalgebra::Point3;
use uom::si::f64::Length;

use super::{floated, upright};
use crate::case::Case;
use crate::case::float::{BracketBox, Float, Loaded, State, bracket_foot};
use crate::job::BracketKind;
use crate::physics::float::{Floating, Hull};
use crate::quantity::{Dimensioned, Measure, Text, say};
use crate::rig::{Bracket, Group, Missing};
use crate::rules::rule::{given, rule};
use crate::rules::{Finding, Limit, Verdict};
use crate::working::{Sheet, Table, Term};

rule! {
    /// Where the bracket's lowest point lies against the water at rest, in every loading, and what its
    /// closed box carries there.
    ///
    /// **Why.** Open arms and plates under water drag and corrode; a closed box helps to carry the
    /// engines only as far as it is in the water, and drags when it is all under.
    ///
    /// **Limit.** An open bracket: not under water at rest. A closed box: not wholly under water.
    ///
    /// **Source.** Common practice, no source.
    ///
    /// **When it warns.** Mount the bracket higher, choose one with more buoyancy or less setback, or
    /// move weights forward.
    BRACKET_IMMERSION = Stern "stern/bracket-immersion", judge;
}

fn judge(case: &Case) -> Finding {
    let rig = case.rig;
    let brackets: Vec<(usize, &Group, &Bracket)> = rig
        .after
        .groups
        .iter()
        .enumerate()
        .filter_map(|(index, group)| Some((index, group, group.bracket.as_ref()?)))
        .collect();
    if brackets.is_empty() {
        return if rig.after.is_empty() {
            Finding::unmeasured(vec![rig.after.missing()])
        } else {
            Finding::not_applicable(Text::from("The engines hang on the transom itself."))
        };
    }
    let float = given!(floated(case));
    let loadings = given!(upright(float));
    let [_, boxes] = &float.boxes;
    let mut lacking: Vec<Missing> = Vec::new();
    let mut worst: Option<Finding> = None;
    for (index, group, bracket) in brackets {
        match bracket_foot(rig, group, bracket) {
            Ok(foot) => {
                let body = boxes.iter().find(|body| body.group == index);
                one(float, &loadings, bracket, body, &foot).keep_worse(&mut worst);
            }
            Err(missing) => Missing::gather(&mut lacking, missing),
        }
    }
    match worst {
        Some(finding) if lacking.is_empty() || finding.verdict < Verdict::Unmeasured => finding,
        _ => Finding::unmeasured(lacking),
    }
}

fn one(
    float: &Float,
    loadings: &[(&Loaded, &State, &Floating)],
    bracket: &Bracket,
    body: Option<&BracketBox>,
    foot: &Point3<f64>,
) -> Finding {
    let limit = body.map_or(Length::from_si(0.0), |body| -body.depth);
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
    let words = say!("The lowest point of `{}` ", name)
        .then(stands)
        .then(say!(" in `{}`", loaded.name.as_str()))
        .then(helps)
        .then(Text::from("."));
    let finding = if least < limit {
        Finding::new(Verdict::Warn, words).remedy(say!(
            "Mount it {} higher, or bring the stern up by as much (see stern/trim-change).",
            Measure::tape(limit - least)
        ))
    } else {
        Finding::new(Verdict::Pass, words)
    };
    let mut sheet = Sheet::default();
    if let Some(body) = body {
        let immersed = Hull::new(body.mesh.clone()).cut(&lies.plane).volume;
        sheet.set(
            "B",
            "what the box carries, cut exactly at the water plane",
            Term::styled("∇", immersed, crate::quantity::Style::Bulk) * Term::new("ρ", float.water),
        );
    }
    finding
        .against(Measure::tape(least), Limit::AtLeast(Measure::tape(limit)))
        .table(Table::new(&format!("lowest point of `{name}`"), &["loading", "above water", "its box carries"], rows))
        .working(sheet)
}
