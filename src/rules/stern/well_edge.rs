//! `stern/well-edge`

use uom::si::f64::Mass;

use super::{
    Height, floated, height_sheet, heights_table, lost, missing, put_back, upright, worst,
};
use crate::case::Case;
use crate::case::float::{EdgePoint, Float};
use crate::job::{EdgeKind, tape};
use crate::physics::float::Floating;
use crate::quantity::{Dimensioned, Measure, Text, inches, say};
use crate::rules::rule::rule;
use crate::rules::{Finding, Limit, Verdict};

rule! {
    /// How high the lowest point where water comes in over the motorwell or the transom stands above
    /// the water, in every loading.
    ///
    /// **Why.** Stopped stern to the sea, or when the wake catches up, this is where she floods.
    ///
    /// **Limit.** At least 4 in at rest in still water, in every loading.
    ///
    /// **Source.** Common practice, no source (the limit); 33 CFR 183.3 (motorwell height: its lowest
    /// point of water ingress).
    ///
    /// **When it warns.** It fails where the edge is under water at rest. Take off the stern what the
    /// finding says, move weights forward, or raise the edge.
    WELL_EDGE = Stern "stern/well-edge", judge;
}

/// Height of the edge above still water at the least. Common practice, no source.
const LEAST_IN: f64 = 4.0;
/// More than anyone would hang on her stern, kg: where the search for the most ends.
const SEARCH_KG: f64 = 5000.0;

fn judge(case: &Case) -> Finding {
    let float = match floated(case) {
        Ok(float) => float,
        Err(finding) => return *finding,
    };
    let edges: Vec<&EdgePoint> = float.edges_of(&[EdgeKind::Well]).collect();
    if edges.is_empty() {
        return Finding::unmeasured(vec![missing(&tape::EDGES)]);
    }
    let loadings = match upright(float) {
        Ok(loadings) => loadings,
        Err(finding) => return *finding,
    };
    let least = inches(LEAST_IN);
    let Some(lowest) = worst(&loadings, &edges, &|_| least) else {
        return Finding::unmeasured(vec![missing(&tape::EDGES)]);
    };
    let found = Measure::tape(lowest.height);
    let name = lowest.edge.name.as_str();
    let loading = lowest.loaded.name.as_str();
    let change = lost(lowest.loaded, lowest.edge)
        .map(|lost| {
            if lost.si() >= 0.0 {
                say!(", {} lower than before", Measure::tape(lost))
            } else {
                say!(", {} higher than before", Measure::tape(-lost))
            }
        })
        .unwrap_or_default();
    let end = Text::from(".");
    let mut finding = if lowest.height.si() <= 0.0 {
        Finding::new(
            Verdict::Fail,
            say!(
                "The {} is {} under water in `{}`",
                name,
                Measure::tape(-lowest.height),
                loading
            )
            .then(change)
            .then(end),
        )
    } else {
        let verdict = if lowest.height < least {
            Verdict::Warn
        } else {
            Verdict::Pass
        };
        Finding::new(
            verdict,
            say!(
                "The {} stands {} above the water in `{}`",
                name,
                found,
                loading
            )
            .then(change)
            .then(end),
        )
    };
    let point = lowest.edge.point;
    let goal = |f: &Floating| f.height_above_water(&point).si() - least.si();
    let room = room_at_stern(float, &lowest, &goal);
    if finding.verdict == Verdict::Pass {
        if let Some(room) = room {
            finding.summary = finding.summary.then(say!(
                " The stern takes {} more at the engines' place before it comes down to {}.",
                Measure::of(room),
                Measure::tape(least)
            ));
        }
    } else {
        let (moved, table) = put_back(float, lowest.state, &goal);
        let less = room.map(|room| {
            say!(
                "Hang {} less on the stern (at most {} in all)",
                Measure::of(-room),
                Measure::of(
                    float
                        .on_stern(lowest.state)
                        .map_or(room, |(_, mass)| mass + room)
                )
            )
        });
        let ways: Vec<Text> = less.into_iter().chain(moved).collect();
        finding = finding.remedy(if ways.is_empty() {
            Text::from("Neither lighter engines nor stowing forward is enough: raise the edge.")
        } else {
            Text::join(ways, "; or: ").then(Text::from("."))
        });
        if let Some(table) = table {
            finding = finding.table(table);
        }
    }
    let mut sheet = crate::working::Sheet::default();
    if let Some(floating) = lowest.state.floating() {
        sheet.append(height_sheet(&lowest, floating));
    }
    finding
        .against(found, Limit::AtLeast(Measure::tape(least)))
        .table(heights_table(float, &edges))
        .working(sheet)
}

/// The weight that can still be hung at the engines' place (below zero: that must come off) until the
/// edge is at its limit.
fn room_at_stern(float: &Float, lowest: &Height, goal: &dyn Fn(&Floating) -> f64) -> Option<Mass> {
    let (place, hung) = float.on_stern(lowest.state)?;
    let spare = |from: f64, to: f64| {
        float.mass_at(
            lowest.state,
            &place,
            (Mass::from_si(from), Mass::from_si(to)),
            goal,
        )
    };
    if lowest.height.si() - inches(LEAST_IN).si() < 0.0 {
        return spare(-hung.si(), 0.0);
    }
    // She may turn over or sink on the way to the far end: come nearer until she does not.
    let mut most = SEARCH_KG;
    while most > 1.0 {
        if let Some(room) = spare(0.0, most) {
            return Some(room);
        }
        most *= 0.7;
    }
    None
}
