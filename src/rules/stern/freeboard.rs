//! `stern/freeboard`

use super::so;
use crate::rules::mend;
use uom::si::f64::Length;

use super::{all_upright, height_sheet, heights_table, inboard, lost, put_back, too_low, worst};
use crate::case::Case;
use crate::case::float::{Crew, EdgePoint, Loaded};
use crate::job::{self, Category, EdgeKind};
use crate::quantity::{Dimensioned, Measure, Text, inches, say};
use crate::rig::Missing;
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};

rule! {
    /// How high the lowest point of the sheer stands above the water, in every loading with the crew
    /// inboard of the rail.
    ///
    /// **Why.** Freeboard is what is left between the sea and the cockpit.
    ///
    /// **Limit.** The least downflooding height of the design category: 0.5, 0.4, 0.3, 0.2 m for A to
    /// D; 0.2 m where the category is not known. 4 in (0.1 m) while more persons crowd into the aftmost place
    /// than it holds.
    ///
    /// **Source.** ISO 12217-1, least downflooding heights (values from memory), taken as practice; Common
    /// practice, no source (the crowd).
    ///
    /// **When it warns.** It fails where the sheer is under water, or she sinks or turns over: an open boat
    /// fills. Carry less, move weights away from the low corner, or hang less on the stern.
    FREEBOARD = Stern "stern/freeboard", judge;
}

/// Least height while the crew crowds at the stern. Common practice, no source.
const LEAST_CROWDED_IN: f64 = 4.0;

/// Least height in this loading, m. Source: ISO 12217-1, values from memory.
fn least(loaded: &Loaded, category: Option<Category>) -> Length {
    if loaded.crew == Crew::CrowdedAft {
        return inches(LEAST_CROWDED_IN);
    }
    Length::from_si(match category {
        Some(Category::A) => 0.5,
        Some(Category::B) => 0.4,
        Some(Category::C) => 0.3,
        Some(Category::D) | None => 0.2,
    })
}

fn judge(case: &Case) -> Judgement {
    let float = case.float()?;
    let edges: Vec<&EdgePoint> = float.edges_of(&[EdgeKind::Sheer]).collect();
    let inboard = all_upright(float, Verdict::Fail, inboard)?;
    let limit = |loaded: &Loaded| least(loaded, case.rig.job.boat.category);
    let Some(lowest) = worst(&inboard, &edges, &|loaded, _| Some(limit(loaded))) else {
        return Ok(Finding::unmeasured(vec![Missing::one(&job::SHEER)]));
    };
    let least = limit(lowest.loaded);
    let found = Measure::tape(lowest.height);
    let change = lost(lowest.loaded, lowest.edge)
        .filter(|lost| lost.si() > 0.0)
        .map(|lost| say!(", {} lower than before", Measure::tape(lost)))
        .unwrap_or_default();
    let under = lowest.height.si() <= 0.0;
    let verdict = match lowest.height < least {
        true if under => Verdict::Fail,
        true => Verdict::Warn,
        false => Verdict::Pass,
    };
    let (edge, loading) = (lowest.edge.name.as_str(), lowest.loaded.name.as_str());
    let words = if under {
        say!("The {} lies {} under water in `{}`", edge, Measure::tape(-lowest.height), loading)
    } else {
        say!("Least freeboard {} ({}) in `{}`", found, edge, loading)
    };
    let mut finding = Finding::new(verdict, words.then(change).then(Text::from(".")));
    if verdict != Verdict::Pass {
        let (remedy, table) = put_back(case.rig, float, &too_low(&inboard, &edges, &|loaded, _| Some(limit(loaded))));
        finding = finding.remedy(match remedy {
            Some(remedy) => so(say!("To keep {}: ", Measure::tape(least)), remedy),
            None => mend::care("Stowing forward is not enough: she is overloaded for her freeboard. Carry less."),
        });
        if let Some(table) = table {
            finding = finding.table(table);
        }
    }
    if let Some(floating) = lowest.state.floating() {
        finding = finding.working(height_sheet(&lowest, floating));
    }
    Ok(finding.against(found, Limit::AtLeast(Measure::tape(least))).table(heights_table(float, &[lowest.edge])))
}
