//! `stern/scuppers`

use uom::si::f64::Length;

use super::{floated, height_sheet, heights_table, lost, put_back, upright, worst};
use crate::case::Case;
use crate::case::float::EdgePoint;
use crate::job::{Category, EdgeKind, tape};
use crate::physics::float::Floating;
use crate::quantity::{Dimensioned, Measure, Text, inches, say};
use crate::rig::Missing;
use crate::rules::rule::{given, rule};
use crate::rules::{Finding, Limit, Verdict};

rule! {
    /// How high the cockpit sole and the scuppers' outlets stand above the water, in every loading.
    ///
    /// **Why.** A sole below the water, or scuppers under it, let water in instead of out: she settles
    /// by the stern, unnoticed, at the dock.
    ///
    /// **Limit.** Sole: 6, 4, 3, 2 in (0.15, 0.10, 0.075, 0.05 m) for design categories A to D, 2 in
    /// where the category is not known. Outlets: 1 in above the water.
    ///
    /// **Source.** ISO 11812:2001, sole heights (values from memory), taken as practice; Common practice,
    /// no source (the outlets).
    ///
    /// **When it warns.** Move weights forward, fit check valves that can be shut, raise the sole, or
    /// hang less on the stern.
    SCUPPERS = Stern "stern/scuppers", judge;
}

/// Height of an outlet above still water at the least. Common practice, no source.
const OUTLET_IN: f64 = 1.0;

/// Height of the sole above the water, m. Source: ISO 11812:2001, values from memory.
fn sole(category: Option<Category>) -> Length {
    Length::from_si(match category {
        Some(Category::A) => 0.15,
        Some(Category::B) => 0.10,
        Some(Category::C) => 0.075,
        Some(Category::D) | None => 0.05,
    })
}

fn judge(case: &Case) -> Finding {
    let float = given!(floated(case));
    let edges: Vec<&EdgePoint> = float.edges_of(&[EdgeKind::Sole, EdgeKind::Scupper]).collect();
    let loadings = given!(upright(float));
    let category = case.rig.boat.category;
    let limit = |kind| match kind {
        EdgeKind::Sole => sole(category),
        _ => inches(OUTLET_IN),
    };
    // A crew that crowds to one rail dips an outlet for a moment: that is no matter of draining.
    let steady: Vec<_> = loadings.iter().filter(|(loaded, ..)| !loaded.to_one_side).copied().collect();
    let Some(lowest) = worst(&steady, &edges, &limit) else {
        return Finding::unmeasured(vec![Missing::one(&tape::DRAINS)]);
    };
    let least = limit(lowest.edge.kind);
    let found = Measure::tape(lowest.height);
    let verdict = if lowest.height < least { Verdict::Warn } else { Verdict::Pass };
    let change = lost(lowest.loaded, lowest.edge)
        .filter(|lost| lost.si() > 0.0)
        .map(|lost| say!(", {} lower than before", Measure::tape(lost)))
        .unwrap_or_default();
    let stands = if lowest.height.si() < 0.0 {
        say!("lies {} under water", Measure::tape(-lowest.height))
    } else {
        say!("stands {} above the water", found)
    };
    let mut finding = Finding::new(
        verdict,
        say!("The {} ", lowest.edge.name.as_str())
            .then(stands)
            .then(say!(" in `{}`", lowest.loaded.name.as_str()))
            .then(change)
            .then(Text::from(".")),
    );
    if verdict == Verdict::Warn {
        let point = lowest.edge.point;
        let goal = |f: &Floating| f.height_above_water(&point).si() - least.si();
        let (remedy, table) = put_back(float, lowest.state, &goal);
        finding = finding.remedy(match remedy {
            Some(remedy) => say!("To keep {}: ", Measure::tape(least))
                .then(remedy)
                .then(Text::from(" Until then keep the scuppers' valves shut at rest.")),
            None => Text::from("Stowing forward is not enough: raise sole and outlets, or hang less on the stern."),
        });
        if let Some(table) = table {
            finding = finding.table(table);
        }
    }
    if let Some(floating) = lowest.state.floating() {
        finding = finding.working(height_sheet(&lowest, floating));
    }
    finding.against(found, Limit::AtLeast(Measure::tape(least))).table(heights_table(float, &edges))
}
