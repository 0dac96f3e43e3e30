//! `stern/well-edge`

use super::{Height, so};
use crate::rules::mend::{self, Change, Remedy};
use uom::si::f64::Length;

use super::{all_upright, height_sheet, heights_table, lost, put_back, room_at_stern, too_low, worst};
use crate::case::Case;
use crate::case::float::{Crew, EdgePoint, Loaded};
use crate::job::{self, EdgeKind};
use crate::physics::float::Floating;
use crate::quantity::{Dimensioned, Measure, Text, inches, say};
use crate::reading::reading;
use crate::rig::Missing;
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};

rule! {
    /// How high the lowest point where water comes in over the motorwell or the transom stands above
    /// the water, in every loading.
    ///
    /// **Why.** Stopped stern to the sea, or when the wake catches up, this is where she floods.
    ///
    /// **Limit.** At least 4 in at rest in still water, in every loading; 2 in while more persons crowd into
    /// the aftmost place than it holds.
    ///
    /// **Source.** Common practice, no source (the limits); 33 CFR 183.3 (motorwell height: its lowest
    /// point of water ingress).
    ///
    /// **When it warns.** It fails where the edge is under water at rest, or she sinks or turns over. Take
    /// off the stern what the finding says, move weights forward, or raise the edge.
    WELL_EDGE = Stern "stern/well-edge", judge;
}

/// Height of the edge above still water at the least. Common practice, no source.
const LEAST_IN: f64 = 4.0;
/// The same while the crew crowds at the stern. Common practice, no source.
const LEAST_CROWDED_IN: f64 = 2.0;

fn least(loaded: &Loaded) -> Length {
    inches(if loaded.crew == Crew::CrowdedAft { LEAST_CROWDED_IN } else { LEAST_IN })
}

fn judge(case: &Case) -> Judgement {
    let float = case.float()?;
    let edges: Vec<&EdgePoint> = float.edges_of(&[EdgeKind::Well]).collect();
    if edges.is_empty() {
        return Ok(Finding::unmeasured(vec![Missing::one(reading!(job::Job.edges))]));
    }
    let loadings = all_upright(float, Verdict::Fail, |_| true)?;
    let Some(lowest) = worst(&loadings, &edges, &|loaded, _| Some(least(loaded))) else {
        return Ok(Finding::unmeasured(vec![Missing::one(reading!(job::Job.edges))]));
    };
    let least = self::least(lowest.loaded);
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
            say!("The {} is {} under water in `{}`", name, Measure::tape(-lowest.height), loading)
                .then(change)
                .then(end),
        )
    } else {
        let verdict = if lowest.height < least { Verdict::Warn } else { Verdict::Pass };
        Finding::new(
            verdict,
            say!("The {} stands {} above the water in `{}`", name, found, loading).then(change).then(end),
        )
    };
    let point = lowest.edge.point;
    let goal = |f: &Floating| f.height_above_water(&point).si() - least.si();
    if finding.verdict == Verdict::Pass {
        if let Some(room) = room_at_stern(float, lowest.state, &goal) {
            finding.summary = finding.summary.then(say!(
                " The stern takes {} more at the engines' place before it comes down to {}.",
                Measure::of(room),
                Measure::tape(least)
            ));
        }
    } else {
        let (ways, table) =
            put_back(case.rig, float, &too_low(&loadings, &edges, &|loaded, _| Some(self::least(loaded))));
        finding = finding.remedy(match ways {
            Some(ways) => so(say!("To keep {}: ", Measure::tape(least)), ways),
            None => raised(&lowest, least),
        });
        if let Some(table) = table {
            finding = finding.table(table);
        }
    }
    let mut sheet = crate::working::Sheet::default();
    if let Some(floating) = lowest.state.floating() {
        sheet.append(height_sheet(&lowest, floating));
    }
    Ok(finding.against(found, Limit::AtLeast(Measure::tape(least))).table(heights_table(float, &edges)).working(sheet))
}

/// Step in which an edge is raised. Common practice, no source.
const RAISED_IN: f64 = 0.25;

/// The edge raised by what it lacks.
fn raised(lowest: &Height, least: Length) -> Remedy {
    let by = mend::well_up(least - lowest.height, RAISED_IN);
    let words = say!(
        "Neither lighter engines nor stowing forward is enough: raise the {} by {}.",
        lowest.edge.name.as_str(),
        Measure::tape(by)
    );
    match &lowest.edge.entry {
        Some(entry) => {
            let up = Length::from_si(lowest.edge.point.z) + by;
            mend::change(words, [Change::to(format!("{entry}.up"), mend::exactly(up))])
        }
        None => mend::yard(words),
    }
}
